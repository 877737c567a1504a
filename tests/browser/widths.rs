//! From a phone to a wall: nothing runs out of the window, and no barrier in light nor dark.

use crate::devtools::devtools;
use crate::visit::{Visit, visit};
use fantoccini::Locator;
use serde_json::json;

/// Widths of the window: phone, tablet, small and large desk, and twice a wide screen.
const WIDTHS: &[u32] = &[360, 390, 820, 1024, 1280, 1440, 1800, 3840];
const HEIGHT: u32 = 900;

/// How far the document is wider than the window, and what sticks out.
const TOO_WIDE: &str = "
    const over = document.documentElement.scrollWidth - window.innerWidth;
    const out = [...document.querySelectorAll('body *')]
        .filter(e => over > 0 && e.getBoundingClientRect().right > window.innerWidth + 1)
        .map(e => e.tagName + '.' + e.className);
    return {over: Math.max(over, 0), width: window.innerWidth, out: out.slice(0, 5)};";

async fn resize(visit: &Visit, width: u32) {
    let metrics =
        json!({ "width": width, "height": HEIGHT, "deviceScaleFactor": 1, "mobile": false });
    devtools(&visit.client, "Emulation.setDeviceMetricsOverride", metrics).await;
}

async fn dress(visit: &Visit, theme: &'static str) {
    let list = visit.client.find(Locator::Css("#theme")).await.unwrap();
    list.select_by_label(theme).await.unwrap();
    let worn = "return document.documentElement.dataset.theme;";
    assert_eq!(visit.run(worn, json!(null)).await, json!(theme));
}

#[tokio::test]
async fn it_fits_every_window_in_light_and_dark() {
    visit("widths", |visit| async move {
        visit.settled().await;
        let open = "document.querySelectorAll('.step-button')[arguments[0]].click();";
        visit.run(open, json!(3)).await;
        assert!(visit.count(".finding").await > 0);
        // Kept and typed anew, everything takes the most room.
        for value in 0..5 {
            let keep = "document.querySelectorAll('.step')[3].querySelectorAll('.keep')[arguments[0]].click();";
            visit.run(keep, json!(value)).await;
            visit.settled().await;
        }
        for theme in ["light", "dark"] {
            dress(&visit, theme).await;
            for &width in WIDTHS {
                resize(&visit, width).await;
                let found = visit.run(TOO_WIDE, json!(null)).await;
                assert_eq!(found, json!({ "over": 0, "width": width, "out": [] }));
                visit.no_barriers().await;
                visit.picture(&format!("{theme}-{width}")).await;
            }
        }
    })
    .await;
}
