//! Every field, limit, method, task and choice has words of its own.

use super::speak;
use crate::choices::label;
use crate::{
    choice, field, limit_meaning, limit_name, method_how, method_name, order_name, order_why,
    severity, task_name, task_why, unknown_how, unknown_name,
};
use std::collections::BTreeMap;
use thinwright_core::estimate::UNKNOWNS;
use thinwright_core::field::{FIELDS, GROUPS, Group, Input};
use thinwright_core::limits::{LimitId, Severity};
use thinwright_core::methods::MethodId;
use thinwright_core::order::OrderId;
use thinwright_core::strategy::Measure;
use thinwright_core::task::TaskKind;
use thinwright_quantity::UnitSystem;

/// Texts that are there and all different.
fn distinct<'a>(what: &str, texts: impl Iterator<Item = (String, &'a str)>) {
    let mut seen: BTreeMap<&str, String> = BTreeMap::new();
    for (of, text) in texts {
        assert!(!text.trim().is_empty(), "{what} of {of} is empty");
        assert_eq!(text.trim(), text, "{what} of {of} has blanks at its ends");
        assert!(
            !text.contains("  "),
            "{what} of {of} has two blanks in a row"
        );
        if let Some(other) = seen.insert(text, of.clone()) {
            panic!("{what} of {of} and of {other} are the same: {text}");
        }
    }
    assert!(seen.len() > 3, "{what}: only {} texts", seen.len());
}

#[test]
fn every_field_is_asked_in_its_own_words() {
    // What is kept is never asked: it stands beside what it keeps, under the name of its place.
    let asked = || FIELDS.iter().filter(|s| GROUPS.contains(&s.group));
    distinct(
        "label",
        asked().map(|s| (s.key.to_owned(), field(s.field).label)),
    );
    distinct(
        "reason",
        asked().map(|s| (s.key.to_owned(), field(s.field).why)),
    );
    distinct(
        "group",
        GROUPS
            .iter()
            .map(|g: &Group| (format!("{g:?}"), crate::group(*g))),
    );
}

#[test]
fn reasons_fit_on_a_line() {
    for spec in FIELDS {
        let text = field(spec.field);
        assert!(text.why.chars().count() <= 80, "{}: {}", spec.key, text.why);
        assert!(text.why.ends_with('.'), "{}: {}", spec.key, text.why);
        assert!(!text.label.ends_with('.'), "{}: {}", spec.key, text.label);
    }
}

#[test]
fn every_choice_has_a_label() {
    for spec in FIELDS {
        if let Input::Choice(keys) = spec.input {
            for key in keys {
                assert!(
                    label(spec.field, key).is_some(),
                    "{} {key} has no label",
                    spec.key
                );
            }
            let mut labels: Vec<&str> = keys.iter().map(|k| choice(spec.field, k)).collect();
            labels.sort_unstable();
            labels.dedup();
            assert_eq!(labels.len(), keys.len(), "{}", spec.key);
        }
    }
}

#[test]
fn every_limit_has_its_own_words() {
    distinct(
        "name",
        LimitId::all().map(|l| (l.spec().key.to_owned(), limit_name(l))),
    );
    distinct(
        "meaning",
        LimitId::all().map(|l| (l.spec().key.to_owned(), limit_meaning(l))),
    );
}

#[test]
fn every_limit_shows_both_numbers() {
    speak(
        UnitSystem::Metric,
        |_| {},
        |speaker| {
            for limit in LimitId::all() {
                let scale = 1.0 / speaker.value(limit.spec().kind, 1.0).len() as f64;
                let measure = Measure {
                    demand: 3.0 * scale,
                    allowed: 7.0 * scale,
                };
                let text = speaker.measure(limit, &measure);
                for si in [measure.demand, measure.allowed] {
                    let shown = speaker.of_limit(limit, si);
                    assert!(
                        text.contains(&shown),
                        "{limit:?}: {shown} is not in: {text}"
                    );
                }
                assert!(
                    !text.contains(limit_meaning(limit)),
                    "{limit:?} holds, but: {text}"
                );
                let broken = Measure {
                    demand: 7.0 * scale,
                    allowed: 3.0 * scale,
                };
                assert!(
                    speaker
                        .measure(limit, &broken)
                        .ends_with(limit_meaning(limit)),
                    "{limit:?}"
                );
            }
        },
    );
}

#[test]
fn methods_and_tasks_have_words() {
    distinct(
        "name",
        MethodId::all().map(|m| (m.key().to_owned(), method_name(m))),
    );
    distinct(
        "way",
        MethodId::all().map(|m| (m.key().to_owned(), method_how(m))),
    );
    let tasks = [
        TaskKind::Facing,
        TaskKind::Bore,
        TaskKind::Clearing,
        TaskKind::FloorSkim,
        TaskKind::WallSkim,
        TaskKind::SlotsThrough,
        TaskKind::SlotsBlind,
        TaskKind::OutlineGroove,
        TaskKind::OutlineFinish,
    ];
    distinct(
        "name",
        tasks.iter().map(|t| (format!("{t:?}"), task_name(*t))),
    );
    distinct(
        "reason",
        tasks.iter().map(|t| (format!("{t:?}"), task_why(*t))),
    );
}

#[test]
fn orders_unknowns_and_severities_have_words() {
    let orders = [
        OrderId::OneFace,
        OrderId::SlotsIntoStock,
        OrderId::SlotsBeforeSkim,
        OrderId::SlotsLast,
        OrderId::NoSlots,
    ];
    distinct(
        "name",
        orders.iter().map(|o| (format!("{o:?}"), order_name(*o))),
    );
    distinct(
        "reason",
        orders.iter().map(|o| (format!("{o:?}"), order_why(*o))),
    );
    distinct(
        "name",
        UNKNOWNS
            .iter()
            .map(|u| (format!("{u:?}"), unknown_name(*u))),
    );
    distinct(
        "how",
        UNKNOWNS.iter().map(|u| (format!("{u:?}"), unknown_how(*u))),
    );
    let severities = [
        Severity::Stop,
        Severity::Quality,
        Severity::Advice,
        Severity::Listen,
    ];
    distinct(
        "severity",
        severities.iter().map(|s| (format!("{s:?}"), severity(*s))),
    );
}
