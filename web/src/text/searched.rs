//! Words about the search and about what is kept.

use crate::state::Standing;
use thinwright_quantity::{Kind, Rounding, UnitSystem};
use thinwright_words::language::tr;
use thinwright_words::{say, written};

texts! {
    under_stale: "Working it out; below stands the strategy of the answers before.";
    under_first: "Working it out; below stands the best so far, checked as it stands.";
    under_none: "Working it out.";
    under_lists: "The strategy belongs to these answers; what would help is still being worked out.";
    stopped: "Stopped early: checked as it stands, perhaps not the fastest.";
    stopped_lists: "The strategy belongs to these answers; what would help was not worked out to the end.";
    stopped_stale: "Stopped before there was a strategy for these answers.";
    stop: "Stop";
    stop_search: "Stop working it out";
    go_on: "Go on";
    go_on_search: "Go on working it out";
    lists_come: "What would help is still being worked out.";
    lists_cut: "What would help was not worked out to the end.";
    keep: "keep";
    let_go: "let go";
    keep_order: "keep this one";
    searched: "search";
    nothing_kept: "Nothing: everything is searched. \u{201C}keep\u{201D} beside a value of a step keeps that value.";
    price_comes: "what it costs is not worked out yet";
    to_mend: "to mend";
    method: "method";
    binds: "binds:";
    next: "next:";
    possible: "Would make it possible";
    to_field: "Enter it";
}

/// How many figures of a count people read.
const DIGITS: f64 = 100.0;
const MILLION: f64 = 1.0e6;

/// A large count, to three figures: `41 300`, `1.24 million`.
fn count(n: f64) -> String {
    let plain = |kind, x| written(kind, x, UnitSystem::Metric, Rounding::Nearest);
    if n >= MILLION {
        return say!(
            "{n}\u{A0}million",
            n = plain(Kind::Ratio, rounded(n / MILLION))
        );
    }
    plain(Kind::Count, rounded(n))
}

/// A number to three figures.
fn rounded(x: f64) -> f64 {
    let mut step = 1.0;
    while x / step >= 10.0 * DIGITS {
        step *= 10.0;
    }
    while x > 0.0 && x / step < DIGITS && step > 0.01 {
        step /= 10.0;
    }
    (x / step).round() * step
}

/// How much of the ground is covered, and the best time so far:
/// `1.24 million combinations, all but 41 300 ruled out in groups`.
pub(crate) fn covered(standing: &Standing, share: Option<u32>, best: Option<&str>) -> String {
    let mut parts = Vec::new();
    parts.extend(share.map(|percent| say!("{percent}\u{A0}%", percent)));
    if standing.candidates > 0.0 {
        parts.push(say!(
            "{all} combinations, all but {rest} ruled out in groups",
            all = count(standing.candidates),
            rest = count(standing.looked_at.min(standing.candidates))
        ));
    }
    parts.extend(best.map(|time| say!("best so far {time}", time)));
    parts.join("; ")
}

pub(crate) fn keep_value(what: &str, value: &str, step: u32) -> String {
    say!("keep {what} {value}, step {step}", what, value, step)
}

pub(crate) fn let_go_at(what: &str, step: u32) -> String {
    say!("let go of {what}, step {step}", what, step)
}

pub(crate) fn let_go_of(place: &str) -> String {
    say!("let go of {place}", place)
}

pub(crate) fn keep_order_named(order: &str) -> String {
    say!("keep this one: {order}", order)
}

pub(crate) fn kept_at(place: &str) -> String {
    say!("Kept by you: {place}", place)
}

pub(crate) fn at_step(number: u32) -> String {
    say!("step\u{A0}{number}", number)
}

pub(crate) fn numbered(number: &str, name: &str) -> String {
    format!("{number}: {name}")
}

pub(crate) fn kept_job(count: usize) -> String {
    match count {
        0 => tr("For the whole job: nothing").to_owned(),
        count => say!("For the whole job: {count}", count),
    }
}

pub(crate) fn let_go_with(cutter: &str, gone: &[String]) -> String {
    say!(
        "With the {cutter} went what was kept of it: {gone}.",
        cutter,
        gone = gone.join("; ")
    )
}

/// Heading of the limits that a refusal names.
pub(crate) fn conflict(limits: usize) -> &'static str {
    if limits == 1 {
        tr("Stands in the way")
    } else {
        tr("Cannot be had together")
    }
}

pub(crate) fn enter(what: &str) -> String {
    say!("Enter it: {what}", what)
}

pub(crate) fn further(count: usize) -> String {
    say!("Further: {count}", count)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn counts_are_told_in_three_figures() {
        let plain = |n| count(n).replace(['\u{A0}', '\u{202F}'], " ");
        let told = [
            (0.0, "0"),
            (7.0, "7"),
            (946.0, "946"),
            (41_349.0, "41 300"),
            (999_999.0, "1 000 000"),
            (1_236_000.0, "1.24 million"),
            (151_000_000.0, "151 million"),
        ];
        for (n, words) in told {
            assert_eq!(plain(n), words);
        }
    }

    #[test]
    fn what_is_covered_is_told_as_far_as_it_is_known() {
        let standing = Standing {
            share: 0.4,
            candidates: 2000.0,
            looked_at: 500.0,
        };
        let told =
            covered(&standing, Some(40), Some("12 min")).replace(['\u{A0}', '\u{202F}'], " ");
        assert_eq!(
            told,
            "40 %; 2000 combinations, all but 500 ruled out in groups; best so far 12 min"
        );
        assert_eq!(covered(&Standing::default(), None, None), "");
    }
}
