//! The table of what is advised beside what is printed or run: `shared/reference/PRACTICE.md`.

use super::compare::{FACTOR, Group};
use super::ranges::Row;
use super::reasons::{self, Reason};
use std::fmt::Write;
use std::path::{Path, PathBuf};

/// Set to write the table instead of comparing with it.
const UPDATE: &str = "UPDATE_PRACTICE";
const HEADER: &str = "# What is advised beside what is printed and what shops run

Written by a test, never by hand: `UPDATE_PRACTICE=1 cargo test -p workspace-tests --test core_ranges`.

The ranges stand in `ranges.json`, those of printed tables in `mechanics.json`. They are compared with the samples and with a
plain part, 120 x 80 x 10 with a recess of 6 and slots through a web of 4, in every material on machines that cut it.
A place is a sample or a class of machines. *Off* is the factor to the nearest end of the range; a value outside only
because the spindle or the feed of the machine ends there is counted apart. A difference of more than a factor of 2 has
its reason in `tests/practice/reasons.txt`.
";

/// Three digits are enough to see what moved.
fn short(value: f64) -> String {
    let rounded: f64 = format!("{value:.2e}").parse().unwrap();
    format!("{rounded}")
}

fn practice(group: &Group) -> String {
    let Some(span) = group.span else {
        return group.word.clone();
    };
    let unit = if group.unit.is_empty() {
        String::new()
    } else {
        format!(" {}", group.unit)
    };
    match (span.low.map(short), span.high.map(short)) {
        (Some(low), Some(high)) if low == high => format!("{low}{unit}"),
        (Some(low), Some(high)) => format!("{low} to {high}{unit}"),
        (Some(low), None) => format!("from {low}{unit}"),
        (None, Some(high)) => format!("to {high}{unit}"),
        (None, None) => "-".to_owned(),
    }
}

fn ours(group: &Group) -> String {
    if !group.words.is_empty() {
        let mut words: Vec<&str> = group.words.iter().map(String::as_str).collect();
        words.sort_unstable();
        words.dedup();
        return words.join(", ");
    }
    let least = group.values.iter().copied().fold(f64::INFINITY, f64::min);
    let most = group.values.iter().copied().fold(0.0, f64::max);
    let (least, most) = (short(least), short(most));
    let count = group.values.len();
    let values = if least == most {
        least
    } else {
        format!("{least} to {most}")
    };
    if count > 1 {
        format!("{values} ({count})")
    } else {
        values
    }
}

fn off(group: &Group) -> String {
    let mut said = Vec::new();
    for (by, word) in [(group.below, "under"), (group.above, "over")] {
        if by > 1.005 {
            said.push(format!("{by:.1} {word}"));
        }
    }
    if group.ended > 0 {
        said.push(format!("{} at the machine's end", group.ended));
    }
    if group.other_words() > 0 {
        said.push("another".to_owned());
    }
    if said.is_empty() {
        "inside".to_owned()
    } else {
        said.join("; ")
    }
}

/// The table, and what is wrong with it: differences without a reason.
pub(crate) fn table(
    rows: &[Row],
    groups: &[Group],
    reasons: &mut [Reason],
) -> (String, Vec<String>) {
    let (mut complaints, mut text) = (Vec::new(), String::new());
    let mut open = 0;
    let mut topics: Vec<&str> = groups.iter().map(|g| g.row.topic.as_str()).collect();
    topics.sort_unstable();
    topics.dedup();
    for topic in topics {
        write!(text, "\n## {topic}\n\n| range | place | quantity | practice | ours | off | why | source |\n|---|---|---|---|---|---|---|---|\n").unwrap();
        for group in groups.iter().filter(|g| g.row.topic == topic) {
            let (mut why, mut wrong) = (Vec::new(), false);
            for difference in group.differences() {
                match reasons::of(reasons, group, difference) {
                    Some(reason) => {
                        wrong |= reason.open();
                        why.push(reason.why.clone());
                    }
                    None => complaints.push(complaint(group, difference)),
                }
            }
            open += usize::from(wrong);
            let d = group
                .d
                .map_or(String::new(), |d| format!(" at {} mm", short(d)));
            writeln!(
                text,
                "| {} | {} | {}{d} | {} | {} | {} | {} | {} ({}) |",
                group.row.id,
                group.place,
                group.quantity,
                practice(group),
                ours(group),
                off(group),
                why.join("; "),
                group.row.source,
                known(group)
            )
            .unwrap();
        }
    }
    let met = |row: &&Row| !groups.iter().any(|g| g.row.id == row.id);
    let unmet: Vec<&str> = rows.iter().filter(met).map(|r| r.id.as_str()).collect();
    write!(
        text,
        "\n## Ranges that no step met\n\n{}\n",
        unmet.join(", ")
    )
    .unwrap();
    let whole = format!("{HEADER}\n{}{text}", summary(groups, open));
    (whole, complaints)
}

/// How a range is known, and what a reader must know of it.
fn known(group: &Group) -> String {
    let row = group.row;
    if row.note.is_empty() {
        row.known.clone()
    } else {
        format!("{}; {}", row.known, row.note)
    }
}

fn complaint(group: &Group, (side, by): (&str, f64)) -> String {
    let d = group
        .d
        .map_or(String::new(), |d| format!(" at {} mm", short(d)));
    let worst = match side {
        "below" => &group.worst[0],
        _ => &group.worst[1],
    };
    format!(
        "{} {} {} {side} up to {by:.2}{d}: {} of practice, {} here; {worst}",
        group.row.id,
        group.quantity,
        group.place.replace(' ', "-"),
        practice(group),
        ours(group)
    )
}

fn summary(groups: &[Group], open: usize) -> String {
    let worst = |g: &Group| g.below.max(g.above);
    let values: usize = groups.iter().map(|g| g.values.len() + g.words.len()).sum();
    let inside = groups
        .iter()
        .filter(|g| worst(g) <= 1.005 && g.other_words() == 0)
        .count();
    let near = groups.iter().filter(|g| g.differences().is_empty()).count() - inside;
    format!(
        "{values} values in {} groups: {inside} inside (or at the machine's end), {near} within a factor of {FACTOR}, {} \
         beyond it: {} with a reason, {open} not right yet.\n",
        groups.len(),
        groups.len() - inside - near,
        groups.len() - inside - near - open
    )
}

fn place() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../shared/reference/PRACTICE.md")
}

/// Compares the table with the one that is kept, or writes it; a complaint if they differ.
pub(crate) fn keep(text: &str) -> Option<String> {
    if std::env::var_os(UPDATE).is_some() {
        std::fs::write(place(), text).unwrap();
        return None;
    }
    let kept = std::fs::read_to_string(place()).unwrap_or_default();
    (kept != text)
        .then(|| format!("PRACTICE.md tells something else: write it anew with {UPDATE}=1"))
}
