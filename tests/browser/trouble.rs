//! When it goes wrong: from a step to its likely causes, a change tried and asked after, and taken back.

use crate::person::{ENTER, plain_blanks};
use crate::visit::{Visit, visit};
use serde_json::json;
use thinwright_core::trouble::Sign;
use thinwright_words::trouble as words;

const SPACE: char = ' ';

/// Waits until a selector finds something.
async fn wait_for(visit: &Visit, css: &str) {
    for _ in 0..400 {
        if visit.count(css).await > 0 {
            return;
        }
        tokio::time::sleep(std::time::Duration::from_millis(25)).await;
    }
    panic!("{css} does not come");
}

/// Moves the focus to an element and presses a key on it.
async fn on(visit: &Visit, css: &str, key: char) {
    let script = "const e = document.querySelector(arguments[0]); e.focus(); return document.activeElement === e;";
    assert_eq!(visit.run(script, json!(css)).await, json!(true), "{css}");
    visit.press([key]).await;
}

/// The id of what has the focus.
async fn focus(visit: &Visit) -> String {
    let id = visit
        .run("return document.activeElement.id;", json!(null))
        .await;
    id.as_str().unwrap_or_default().to_owned()
}

/// The figures of the change that is offered: name, now, then.
async fn offered(visit: &Visit) -> Vec<[String; 3]> {
    let script = "return [...document.querySelectorAll('.trouble-table tbody tr')].map(r => [...r.children].map(c => c.textContent));";
    let rows: Vec<[String; 3]> =
        serde_json::from_value(visit.run(script, json!(null)).await).unwrap();
    rows.iter()
        .map(|row| row.each_ref().map(|t| plain_blanks(t)))
        .collect()
}

/// The values of the step that is open.
async fn values(visit: &Visit) -> Vec<String> {
    let texts = visit.texts(".step-open .number-value").await;
    texts.iter().map(|t| plain_blanks(t)).collect()
}

/// Something that hurts comes with its caution, and goes with it.
async fn cautioned(visit: &Visit) {
    let broke = format!("#trouble-{}", Sign::BrokeShank.key());
    on(visit, &broke, SPACE).await;
    wait_for(visit, "[role=alert]").await;
    assert!(
        visit
            .texts("[role=alert]")
            .await
            .contains(&words::make_safe().to_owned())
    );
    on(visit, &broke, SPACE).await;
}

#[tokio::test]
async fn a_squeal_leads_to_a_change_that_can_be_taken_back() {
    visit("trouble", |visit| async move {
        visit.settled().await;
        // By keyboard: the step, its button, a sign.
        on(&visit, ".step:nth-child(2) .step-button", ENTER).await;
        wait_for(&visit, ".trouble-way").await;
        let before = values(&visit).await;
        on(&visit, ".trouble-way", ENTER).await;
        assert_eq!(focus(&visit).await, "trouble-stop");
        assert_eq!(visit.count(".suspect").await, 0);
        on(&visit, &format!("#trouble-{}", Sign::Squeal.key()), SPACE).await;
        wait_for(&visit, ".suspect-open").await;
        let shares = visit.texts(".suspect .step-time").await;
        assert!(shares.len() >= 3, "{shares:?}");
        cautioned(&visit).await;
        wait_for(&visit, ".trouble-table").await;
        visit.no_barriers().await;
        visit.picture("trouble").await;
        let change = offered(&visit).await;
        assert_eq!(change[0][1], before[1], "{change:?} {before:?}");
        assert!(
            change.iter().any(|[_, now, then]| now != then),
            "{change:?}"
        );
        let told = visit.texts(".suspect-inside button.button-strong").await;
        assert_eq!(told, [words::try_it()]);
        on(&visit, ".suspect-inside button.button-strong", ENTER).await;
        // One change at a time: nothing is offered until it is told what happened.
        wait_for(&visit, "#trouble-after").await;
        visit.settled().await;
        assert_eq!(visit.count(".suspect").await, 0);
        assert_eq!(focus(&visit).await, "trouble-after");
        let now = values(&visit).await;
        let then: Vec<String> = change[..4].iter().map(|row| row[2].clone()).collect();
        assert_eq!(
            now[1..5],
            then[..],
            "the strategy takes the change over as it was told"
        );
        visit.no_barriers().await;
        visit.picture("trouble-after").await;
        let back = visit.by_role("button", words::take_back()).await;
        back.click().await.unwrap();
        wait_for(&visit, ".suspect-open").await;
        visit.settled().await;
        assert_eq!(values(&visit).await, before);
        assert_eq!(visit.count(".number-kept").await, 0);
        // What did not help is told, and not offered first again.
        let tried = visit.texts(".trouble .part-list").await.concat();
        assert!(tried.contains(words::no_better()), "{tried}");
    })
    .await;
}
