//! The page opens: from a server, without one, and from a disk.

use crate::visit::{visit, visit_file};
use fantoccini::Locator;

/// The style sets it in capitals, and so the browser names it.
const NAME: &str = "THINWRIGHT";

#[tokio::test]
async fn it_opens_with_its_heading_and_without_barriers() {
    visit("opening", |visit| async move {
        visit.started().await;
        assert_eq!(
            visit.by_role("heading", NAME).await.text().await.unwrap(),
            NAME
        );
        visit.no_barriers().await;
        visit.picture("opening").await;
    })
    .await;
}

#[tokio::test]
async fn it_opens_again_when_the_network_is_gone() {
    visit("offline", |visit| async move {
        visit.started().await;
        visit.kept_here().await;
        visit.lose_network();
        visit.client.refresh().await.unwrap();
        visit.started().await;
        visit.by_role("heading", NAME).await;
        // The worker too is at hand, and works out something new.
        visit.settled().await;
        let before = visit.texts(".route").await;
        visit.type_over("part.web", "5 mm").await;
        visit.settled().await;
        assert_ne!(visit.texts(".route").await, before);
        // So are the other languages.
        for (name, tag) in [("Deutsch", "de"), ("Espa\u{F1}ol", "es")] {
            let list = visit.client.find(Locator::Css("#language")).await.unwrap();
            list.select_by_label(name).await.unwrap();
            let spoken = format!("html[lang='{tag}']");
            visit
                .client
                .wait()
                .for_element(Locator::Css(&spoken))
                .await
                .unwrap();
        }
        assert_eq!(visit.count(".message").await, 0);
    })
    .await;
}

#[tokio::test]
async fn it_opens_as_one_file_from_a_disk() {
    visit_file("file", |visit| async move {
        visit.started().await;
        visit.by_role("heading", NAME).await;
        // It says which version it is, and promises nothing that it cannot keep.
        let foot = visit.texts(".foot").await.concat();
        assert!(
            foot.contains(env!("CARGO_PKG_VERSION")) && foot.contains(", build "),
            "{foot}"
        );
        assert!(foot.contains("One file"), "{foot}");
        visit.no_barriers().await;
        visit.picture("file").await;
    })
    .await;
}

/// The checks above would be empty if the policy were not in force.
#[tokio::test]
async fn an_inline_script_is_refused() {
    visit("policy", |visit| async move {
        visit.started().await;
        let inline = "const s = document.createElement('script'); s.textContent = 'globalThis.ranInline = true'; \
                      document.head.append(s); return globalThis.ranInline === undefined;";
        assert_eq!(visit.client.execute(inline, vec![]).await.unwrap(), serde_json::json!(true));
        // The refusal itself is told in the console: read it here, so that it does not count as a fault.
        let told = crate::devtools::log(&visit.client, "browser").await;
        assert!(told.iter().any(|entry| entry["message"].to_string().contains("Content Security Policy")), "{told:?}");
    })
    .await;
}
