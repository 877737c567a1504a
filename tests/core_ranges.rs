//! The advised numbers against what catalogues print and shops run: `shared/reference/ranges.json`.
#![cfg(test)]

mod core_cases;
mod practice;

use core_cases::job;
use practice::compare::{self, Group};
use practice::values::Cut;
use practice::{jobs, ranges, reasons, table};
use thinwright_catalog::Catalog;
use thinwright_core::decide;
use thinwright_core::strategy::Outcome;

const REASONS: &str = include_str!("practice/reasons.txt");
/// Fewer lines would mean that ranges have lost their steps.
const LEAST_GROUPS: usize = 250;

#[test]
#[allow(clippy::print_stdout, reason = "the differences are for people")]
fn what_is_advised_is_near_practice_or_says_why_not() {
    let rows = ranges::rows();
    let unknown = compare::unknown_methods(&rows);
    assert!(unknown.is_empty(), "{unknown:?}");
    let mut reasons = reasons::read(REASONS);
    let mut groups: Vec<Group> = Vec::new();
    let mut wrong = Vec::new();
    let mut refused = Vec::new();
    for case in jobs::all() {
        let job = job(&case.answers);
        let strategy = match decide(&job) {
            Outcome::Feasible(strategy) => strategy,
            Outcome::Refused(refusal) => {
                refused.push((case, refusal));
                continue;
            }
        };
        for (index, setup) in strategy.setups.iter().enumerate() {
            for step in &setup.steps {
                let first = index == 0;
                let cut = Cut {
                    job: &job,
                    setup,
                    first,
                    step,
                };
                compare::gather(&mut groups, &rows, &case.place, &cut);
            }
        }
    }
    compare::tables(&mut groups, &rows, &Catalog::builtin());
    for (case, refusal) in &refused {
        let mut words = vec!["refused"];
        words.extend(case.name.split(' '));
        if reasons::find(&mut reasons, &words).is_none() {
            println!("refused {}: {:?} ", case.name, refusal.task);
            wrong.push(format!("refused {}", case.name));
        }
    }
    let order: Vec<&str> = rows.iter().map(|row| row.id.as_str()).collect();
    let rank = |g: &Group| order.iter().position(|id| *id == g.row.id);
    groups.sort_by_key(rank);
    let (text, complaints) = table::table(&rows, &groups, &mut reasons);
    wrong.extend(complaints);
    wrong.extend(table::keep(&text));
    let idle = reasons::idle(&reasons);
    assert!(wrong.is_empty(), "without a reason: {wrong:#?}");
    assert!(idle.is_empty(), "reasons for nothing: {idle:#?}");
    assert!(groups.len() >= LEAST_GROUPS, "{}", groups.len());
}

/// A value held against a row.
fn made_up(row: &ranges::Row, value: f64) -> Group<'_> {
    let mut group = Group::new(row, "fz", "mm", "mill");
    group.span = row.says[0].2.at(6.0);
    group.add(value, String::new, |_| false);
    group
}

#[test]
fn a_difference_without_a_reason_is_noticed_and_a_reason_without_one() {
    let rows = ranges::rows();
    // 0.027 to 0.12 mm.
    let row = rows
        .iter()
        .find(|r| r.id == "chip-router-aluminium-6")
        .unwrap();
    let told = |value: f64, text: &str| {
        let mut reasons = reasons::read(text);
        let (_, complaints) = table::table(&rows, &[made_up(row, value)], &mut reasons);
        (complaints.len(), reasons::idle(&reasons).len())
    };
    let reason = "chip-router-aluminium-6 fz * above up to 3: a chip that is thick on purpose";
    assert_eq!(told(0.23, ""), (0, 0));
    assert_eq!(told(0.25, ""), (1, 0));
    assert_eq!(told(0.25, reason), (0, 0));
    assert_eq!(told(0.37, reason), (1, 0), "further than the reason goes");
    assert_eq!(told(0.23, reason), (0, 1));
    assert_eq!(told(0.01, reason), (1, 1), "the other side");
}

#[test]
fn a_printed_table_is_read_between_its_diameters_and_not_beyond() {
    let rows = ranges::rows();
    let row = rows
        .iter()
        .find(|r| r.id == "speeds-tungaloy-alloy")
        .unwrap();
    let says = &row.says.iter().find(|s| s.0 == "fz").unwrap().2;
    let at = |d: f64| says.at(d).map(|s| (s.low.unwrap(), s.high.unwrap()));
    // Printed: 0.05 to 0.09 at 8 mm, 0.07 to 0.12 at 10 mm; the least diameter is 5 mm.
    let (low, high) = at(9.0).unwrap();
    assert!((low - 0.06).abs() < 1.0e-9 && (high - 0.105).abs() < 1.0e-9);
    assert_eq!(at(8.0), Some((0.05, 0.09)));
    assert_eq!(at(4.0), None);
    assert_eq!(at(26.0), None);
}
