//! Answers that cannot be: told at their places, all at once, while the last good strategy stays, marked as old.

use crate::person::{UP_TO_DATE, plain_blanks};
use crate::visit::{Visit, visit};

/// What is said to be wrong at a field, and that the entry itself says so too.
async fn wrong(visit: &Visit, key: &str) -> String {
    let entry = visit.field(key).await;
    let marked = entry.attr("aria-invalid").await.unwrap();
    assert_eq!(marked.as_deref(), Some("true"), "{key} is not marked");
    let id = format!("f-{}-wrong", key.replace('.', "-"));
    let described = entry.attr("aria-describedby").await.unwrap().unwrap();
    assert!(
        described.split(' ').any(|d| d == id),
        "{key} is described by {described:?}"
    );
    plain_blanks(&visit.texts(&format!("#{id}")).await.concat())
}

/// The strategy is there in full, and said and shown to be old.
async fn stale(visit: &Visit, steps: usize) {
    assert_eq!(visit.count(".step").await, steps);
    assert_eq!(visit.count(".route-stale").await, 1);
    let said = visit.status().await;
    assert!(said.contains("does not belong to these answers"), "{said}");
    let print = visit.by_role("button", "Print").await;
    assert!(
        !print.is_enabled().await.unwrap(),
        "an old strategy can be printed"
    );
}

#[tokio::test]
async fn recesses_that_leave_no_web_are_told_at_both_depths() {
    visit("no-web", |visit| async move {
        visit.settled().await;
        let steps = visit.count(".step").await;
        assert!(steps > 0);
        visit.type_over("part.thickness", "30").await;
        visit.type_over("part.web", "").await;
        visit.type_over("recess-a.depth", "18").await;
        visit.type_over("recess-b.depth", "14").await;
        for key in ["recess-a.depth", "recess-b.depth"] {
            let told = wrong(&visit, key).await;
            assert!(told.contains("30 - 18 - 14 = -2 mm"), "{key}: {told}");
        }
        stale(&visit, steps).await;
        visit.no_barriers().await;
        visit.picture("no-web").await;
        visit.type_over("recess-b.depth", "8").await;
        visit.settled().await;
        assert_eq!(visit.count("[aria-invalid]").await, 0);
    })
    .await;
}

#[tokio::test]
async fn all_that_is_wrong_is_told_at_once_and_stays_as_typed() {
    visit("all-wrong", |visit| async move {
        visit.settled().await;
        let steps = visit.count(".step").await;
        let good = visit.texts(".whole pre").await;
        let bad = [
            ("part.web", "six", "4"),
            ("part.thickness", "19 furlong", "19"),
            ("part.diameter", "-160", "160"),
        ];
        for (key, text, _) in bad {
            visit.type_over(key, text).await;
        }
        for (key, text, _) in bad {
            assert_eq!(visit.typed(key).await, text);
            let told = wrong(&visit, key).await;
            assert!(!told.is_empty(), "{key} says nothing");
        }
        let unit = wrong(&visit, "part.thickness").await;
        assert!(unit.contains("furlong"), "{unit}");
        // The list above the questions leads to each of them.
        assert_eq!(visit.count(".summary-list li").await, bad.len());
        visit
            .by_role("button", "Show them")
            .await
            .click()
            .await
            .unwrap();
        let focus = visit.client.active_element().await.unwrap();
        assert_eq!(focus.attr("id").await.unwrap().as_deref(), Some("problems"));
        stale(&visit, steps).await;
        for (key, _, mended) in bad {
            assert_ne!(visit.status().await, UP_TO_DATE);
            visit.type_over(key, mended).await;
        }
        visit.settled().await;
        assert_eq!(visit.texts(".whole pre").await, good);
    })
    .await;
}
