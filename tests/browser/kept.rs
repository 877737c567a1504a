//! Choices that the person keeps: set where the value stands, priced, typed anew, wrong, gone with their cutter, on paper.

use crate::paper::{Paper, sentences};
use crate::person::{ENTER, plain_blanks};
use crate::visit::{Visit, visit};
use fantoccini::Locator;
use serde_json::json;
use thinwright_core::field::{Field, FieldId};
use thinwright_core::pin::Place;

/// The name in job files of a choice kept at a place.
fn key(field: Field, place: Place) -> String {
    FieldId::in_row(field, place.row()).key()
}

/// Presses the button of a value of the step at a place, by what the button says.
async fn press(visit: &Visit, step: &str, says: &str) {
    let script = "
        const [step, says] = arguments[0];
        const card = [...document.querySelectorAll('.step')].find(s => s.querySelector('.step-title').textContent.startsWith(step));
        const button = [...card.querySelectorAll('.keep')].find(b => b.getAttribute('aria-label').startsWith(says));
        button.focus();
        button.click();
        return true;";
    assert_eq!(visit.run(script, json!([step, says])).await, json!(true));
}

/// Chooses the entry of a list by its first letters.
async fn choose(visit: &Visit, key: &str, entry: &str) {
    let list = visit.field(key).await;
    let options = list.find_all(Locator::Css("option")).await.unwrap();
    for option in options {
        if option.text().await.unwrap().starts_with(entry) {
            option.click().await.unwrap();
            return;
        }
    }
    panic!("{key} has no entry {entry:?}");
}

/// What the list of kept choices says: one text a line.
async fn kept(visit: &Visit) -> Vec<String> {
    let lines = visit.texts(".kept-line").await;
    lines.iter().map(|l| plain_blanks(l)).collect()
}

/// Spindle speeds of all steps, 1/min.
async fn speeds(visit: &Visit) -> Vec<f64> {
    let texts = visit.texts(".number:nth-child(2) .number-value").await;
    let plain = texts
        .iter()
        .map(|t| plain_blanks(t).replace([' ', 'r', 'p', 'm'], ""));
    plain.map(|t| t.parse().unwrap()).collect()
}

#[tokio::test]
async fn a_cutter_is_kept_and_has_its_price() {
    visit("kept-cutter", |visit| async move {
        visit.settled().await;
        assert_eq!(kept(&visit).await, [""; 0]);
        press(&visit, "Clear the recess", "keep cutter").await;
        visit.settled().await;
        let told = kept(&visit).await;
        assert!(
            told.len() == 1 && told[0].contains("Clearing recess A: cutter"),
            "{told:?}"
        );
        assert_eq!(visit.count(".number-kept").await, 1);
        choose(&visit, &key(Field::PinCutter, Place::ClearingA), "2:").await;
        visit.settled().await;
        let told = kept(&visit).await;
        assert!(
            told[0].contains("let go:") && told[0].contains("less"),
            "{told:?}"
        );
        let cutter = visit.texts(".number-kept").await;
        assert!(
            cutter.len() == 1 && plain_blanks(&cutter[0]).starts_with("3 mm"),
            "{cutter:?}"
        );
        visit.no_barriers().await;
        visit.picture("kept-cutter").await;
        // It comes back when the page is opened again, and goes when it is let go.
        visit.client.refresh().await.unwrap();
        visit.settled().await;
        assert_eq!(kept(&visit).await, told);
        let name = "let go of Clearing recess A: cutter";
        let let_go = visit.by_role("button", name).await;
        let_go.click().await.unwrap();
        visit.settled().await;
        assert_eq!(kept(&visit).await, [""; 0]);
    })
    .await;
}

#[tokio::test]
async fn no_speed_above_another_plans_anew() {
    visit("kept-speed", |visit| async move {
        visit.settled().await;
        assert!(speeds(&visit).await.iter().any(|n| *n > 12_000.0));
        let most = FieldId::from(Field::PinMostSpeed).key();
        visit.type_over(&most, "12000").await;
        visit.press([ENTER]).await;
        visit.settled().await;
        let speeds = speeds(&visit).await;
        assert!(speeds.iter().all(|n| *n <= 12_000.0), "{speeds:?}");
        let told = kept(&visit).await;
        assert!(
            told[0].contains("12 000 rpm") && told[0].contains("less"),
            "{told:?}"
        );
        let changed = visit.texts(".changed dt").await;
        assert!(changed.contains(&"time in all".to_owned()), "{changed:?}");
    })
    .await;
}

#[tokio::test]
async fn what_is_kept_wrong_is_told_at_its_place_and_nothing_is_lost() {
    visit("kept-wrong", |visit| async move {
        visit.settled().await;
        let steps = visit.count(".step").await;
        press(&visit, "Clear the recess", "keep spindle speed").await;
        visit.settled().await;
        let speed = key(Field::PinSpeed, Place::ClearingA);
        let good = visit.typed(&speed).await;
        visit.type_over(&speed, "fast").await;
        visit.press([ENTER]).await;
        visit
            .until("an answer to mend", |said| said.contains("to mend"))
            .await;
        let entry = visit.field(&speed).await;
        let marked = entry.attr("aria-invalid").await.unwrap();
        assert_eq!(marked.as_deref(), Some("true"));
        let described = entry.attr("aria-describedby").await.unwrap().unwrap();
        let told = visit.texts(&format!("#{described}")).await.concat();
        assert!(!told.is_empty());
        assert_eq!(visit.typed(&speed).await, "fast");
        assert_eq!(visit.count(".step").await, steps);
        // The list above the questions leads to it.
        let link = visit
            .client
            .find(Locator::Css(".summary-list a"))
            .await
            .unwrap();
        assert!(link.text().await.unwrap().contains("spindle speed"));
        link.click().await.unwrap();
        let focus = visit.client.active_element().await.unwrap();
        assert_eq!(
            focus.attr("id").await.unwrap(),
            entry.attr("id").await.unwrap()
        );
        visit.no_barriers().await;
        visit.type_over(&speed, &good).await;
        visit.press([ENTER]).await;
        visit.settled().await;
        assert_eq!(visit.count("[aria-invalid]").await, 0);
    })
    .await;
}

#[tokio::test]
async fn a_cutter_that_goes_takes_its_pin_along_and_the_page_says_so() {
    visit("kept-gone", |visit| async move {
        visit.settled().await;
        let pin = key(Field::PinCutter, Place::ClearingA);
        press(&visit, "Clear the recess", "keep cutter").await;
        visit.settled().await;
        let row = visit.typed(&pin).await;
        let out = "document.querySelectorAll('.cutter')[arguments[0] - 1].querySelectorAll('.buttons button')[1].click();";
        visit.run(out, json!(row.parse::<u32>().unwrap())).await;
        visit.settled().await;
        assert_eq!(kept(&visit).await, [""; 0]);
        let told = visit.texts(".message").await.concat();
        assert!(told.contains("what was kept of it") && told.contains("cutter"), "{told}");
    })
    .await;
}

#[tokio::test]
async fn what_is_kept_is_marked_on_paper() {
    visit("kept-paper", |visit| async move {
        visit.settled().await;
        press(&visit, "Clear the recess", "keep feed").await;
        visit.settled().await;
        visit.confirmed().await;
        let pages = visit.printed("kept-paper", Paper::A4).await;
        assert!(pages.len() <= 2, "{} pages", pages.len());
        let read = plain_blanks(&sentences("kept-paper", Paper::A4));
        assert!(read.contains("Kept by hand: feed."), "{read}");
    })
    .await;
}
