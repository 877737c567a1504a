//! The page by keyboard alone: every control of the way in is reached, and one sees where one is.

use crate::person::{ENTER, TAB, UP_TO_DATE};
use crate::visit::{Visit, visit};
use serde_json::{Value, json};

/// Presses of the tabulator that surely lead through the whole page.
const MOST_STOPS: usize = 400;

/// Where the focus is: name of the element, and whether an outline (in the drawing: the frame of the figure) shows it.
const FOCUS: &str = "
    const e = document.activeElement;
    if (e === document.body) return null;
    const frame = e.querySelector('.touch');
    const style = getComputedStyle(frame || e);
    const seen = frame ? style.stroke !== 'none' && parseFloat(style.strokeWidth) > 0
        : style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) >= 2;
    const group = e.closest('fieldset');
    return {id: e.id, words: e.getAttribute('aria-label') || e.textContent.trim().slice(0, 60),
        group: group ? group.id : '', tag: e.tagName, seen};";

/// Every control of the first group that is in the open.
const FIRST_GROUP: &str = "
    const group = document.querySelector('.group');
    const open = e => { const d = e.closest('details'); return !d || d.open || e.tagName === 'SUMMARY'; };
    return [...group.querySelectorAll('input, select, button, summary')].filter(open)
        .map(e => e.id || e.textContent.trim().slice(0, 60));";

/// Goes on by tabulator until it is where it is wanted.
async fn on_to(visit: &Visit, stops: &mut Vec<Value>, wanted: impl Fn(&Value) -> bool) {
    for _ in 0..MOST_STOPS {
        visit.press([TAB]).await;
        let focus = visit.run(FOCUS, json!(null)).await;
        if focus.is_null() {
            continue;
        }
        assert_eq!(
            focus["seen"],
            json!(true),
            "the focus cannot be seen: {focus}"
        );
        let there = wanted(&focus);
        stops.push(focus);
        if there {
            return;
        }
    }
    panic!("not reached; the stops were {stops:#?}");
}

#[tokio::test]
async fn every_control_is_reached_by_the_tabulator() {
    visit("keyboard", |visit| async move {
        visit.settled().await;
        let mut stops = Vec::new();
        on_to(&visit, &mut stops, |at| {
            at["words"] == json!("Skip to the strategy")
        })
        .await;
        on_to(&visit, &mut stops, |at| at["words"] == json!("mm")).await;
        on_to(&visit, &mut stops, |at| at["words"] == json!("inch")).await;
        on_to(&visit, &mut stops, |at| at["id"] == json!("sample")).await;
        on_to(&visit, &mut stops, |at| at["words"] == json!("Save")).await;
        let first: Vec<String> =
            serde_json::from_value(visit.run(FIRST_GROUP, json!(null)).await).unwrap();
        assert!(first.len() > 4, "{first:?}");
        for control in &first {
            on_to(&visit, &mut stops, |at| {
                at["id"] == json!(control) || at["words"] == json!(control)
            })
            .await;
        }
        // In reading order, and each once.
        let in_group = stops
            .iter()
            .filter(|at| at["group"] == stops[stops.len() - 1]["group"]);
        assert_eq!(in_group.count(), first.len());
    })
    .await;
}

#[tokio::test]
async fn a_step_opens_and_units_change_without_a_pointer() {
    visit("keyboard-step", |visit| async move {
        visit.settled().await;
        let mut stops = Vec::new();
        on_to(&visit, &mut stops, |at| at["words"] == json!("inch")).await;
        visit.press([ENTER]).await;
        let pressed = visit.client.active_element().await.unwrap();
        assert_eq!(
            pressed.attr("aria-pressed").await.unwrap().as_deref(),
            Some("true")
        );
        // What was typed keeps its meaning.
        assert_eq!(visit.typed("part.web").await, "4\u{A0}mm");
        visit.settled().await;
        assert_eq!(visit.count(".finding").await, 0);
        visit
            .run("document.getElementById('strategy').focus();", json!(null))
            .await;
        on_to(&visit, &mut stops, |at| {
            at["tag"] == json!("BUTTON") && at["words"].to_string().contains("Face the blank")
        })
        .await;
        visit.press([ENTER]).await;
        let step = visit.client.active_element().await.unwrap();
        assert_eq!(
            step.attr("aria-expanded").await.unwrap().as_deref(),
            Some("true")
        );
        assert!(visit.count(".finding").await > 0, "no finding is shown");
        visit.no_barriers().await;
        visit.press([ENTER]).await;
        assert_eq!(visit.count(".finding").await, 0);
        assert_eq!(visit.status().await, UP_TO_DATE);
    })
    .await;
}
