//! What is kept between visits, and what happens when it cannot be read.

use crate::visit::{Visit, visit};
use serde_json::json;

const KEY: &str = "thinwright";
const ASIDE: &str = "thinwright.damaged.1";

async fn kept(visit: &Visit, key: &str) -> Option<String> {
    let found = visit
        .run("return localStorage.getItem(arguments[0]);", json!(key))
        .await;
    found.as_str().map(str::to_owned)
}

#[tokio::test]
async fn answers_come_back_as_they_were_typed() {
    visit("kept", |visit| async move {
        visit.settled().await;
        let typed = [
            ("part.thickness", "19,0 mm"),
            ("part.web", "3/16 in"),
            ("part.diameter", "about 160"),
        ];
        for (key, text) in typed {
            visit.type_over(key, text).await;
        }
        visit.client.refresh().await.unwrap();
        visit.started().await;
        for (key, text) in typed {
            assert_eq!(visit.typed(key).await, text);
        }
    })
    .await;
}

#[tokio::test]
async fn what_cannot_be_read_is_put_aside_and_told() {
    visit("damaged", |visit| async move {
        visit.settled().await;
        let damaged = "{\"thinwright_store\": 1, \"job\": {\"answ";
        let spoil = format!("localStorage.setItem('{KEY}', arguments[0]);");
        visit.run(&spoil, json!(damaged)).await;
        visit.client.refresh().await.unwrap();
        visit.settled().await;
        let told = visit.texts(".message-alarm").await.concat();
        assert!(
            told.contains("cannot be read") && told.contains(ASIDE),
            "{told}"
        );
        assert_eq!(kept(&visit, ASIDE).await.as_deref(), Some(damaged));
        // The sample is open; what is typed from now on is kept, and what was put aside stays.
        visit.type_over("part.web", "4.5").await;
        visit.settled().await;
        visit.client.refresh().await.unwrap();
        visit.settled().await;
        assert_eq!(visit.typed("part.web").await, "4.5");
        assert_eq!(kept(&visit, ASIDE).await.as_deref(), Some(damaged));
        assert_eq!(visit.count(".message-alarm").await, 0);
    })
    .await;
}
