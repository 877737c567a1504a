//! Risks that have to be confirmed: until they are, every page of the sheet carries a stop mark.

use crate::paper::Paper;
use crate::person::plain_blanks;
use crate::visit::{Visit, visit};
use serde_json::json;

const MARK: &str = "STOP: not confirmed.";

/// How many printed pages carry the mark, of how many.
async fn marked(visit: &Visit) -> (usize, usize) {
    let pages = visit.printed("confirm", Paper::A4).await;
    let marked = pages
        .iter()
        .filter(|page| plain_blanks(page).contains(MARK))
        .count();
    (marked, pages.len())
}

async fn boxes(visit: &Visit) -> Vec<bool> {
    let script = "return [...document.querySelectorAll('.confirm input')].map(b => b.checked);";
    serde_json::from_value(visit.run(script, json!(null)).await).unwrap()
}

/// Ticks the first box that is not.
async fn tick(visit: &Visit) {
    let script = "[...document.querySelectorAll('.confirm input')].find(b => !b.checked).click();";
    visit.run(script, json!(null)).await;
}

#[tokio::test]
async fn the_sheet_carries_a_stop_mark_until_all_is_confirmed() {
    visit("confirm", |visit| async move {
        visit.settled().await;
        assert_eq!(boxes(&visit).await, [false]);
        visit.no_barriers().await;
        assert_eq!(marked(&visit).await, (2, 2));
        tick(&visit).await;
        while marked(&visit).await != (0, 2) {
            tokio::task::yield_now().await;
        }
        // What was confirmed is still there after a visit; another material brings another risk, and asks for that alone.
        visit.client.refresh().await.unwrap();
        visit.settled().await;
        assert_eq!(boxes(&visit).await, [true]);
        let list = visit.field("material.row").await;
        list.select_by_value("magnesium_az91").await.unwrap();
        visit.settled().await;
        assert_eq!(boxes(&visit).await.iter().filter(|b| **b).count(), 1);
        let (marked, pages) = marked(&visit).await;
        assert!(marked == pages && pages > 0, "{marked} of {pages}");
    })
    .await;
}
