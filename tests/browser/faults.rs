//! What may go wrong unseen: messages in the console, requests to another host, barriers to people.

use crate::devtools::log;
use crate::visit::Visit;
use fantoccini::Client;
use serde_json::{Value, json};

/// Finds barriers of accessibility. Source: axecore (its rules for WCAG 2.2, A and AA, and good practice).
const AXE: &str = include_str!("vendor/axe.min.js");

/// Runs it on the whole page and tells each violation and the elements that show it.
const RUN_AXE: &str = "
    const done = arguments[arguments.length - 1];
    axe.run(document, {resultTypes: ['violations']}).then(
        found => done({rules: found.passes.length, violations: found.violations.map(
            v => v.id + ': ' + v.help + ' at ' + v.nodes.map(n => n.target.join(' ')).join(', '))}),
        error => done({rules: 0, violations: [String(error)]}));";

impl Visit {
    /// Demands that no rule finds a barrier.
    pub(crate) async fn no_barriers(&self) {
        self.client.execute(AXE, vec![]).await.expect("axe loads");
        let found = self
            .client
            .execute_async(RUN_AXE, vec![])
            .await
            .expect("axe runs");
        assert_eq!(found["violations"], json!([]));
        assert!(
            found["rules"].as_u64() > Some(0),
            "no rule found anything to look at"
        );
    }
}

/// Demands that the console holds no error and that no request left for another host.
pub(crate) async fn none_told(client: &Client, address: &str) {
    let console = log(client, "browser").await;
    let errors = errors(&console);
    assert!(errors.is_empty(), "{errors:#?}");
    let asked = requests(&log(client, "performance").await);
    assert!(
        asked.iter().any(|url| url.starts_with(address)),
        "the log misses the page itself: {asked:#?}"
    );
    let strangers: Vec<&String> = asked.iter().filter(|url| !own(url, address)).collect();
    assert!(strangers.is_empty(), "{strangers:#?}");
}

fn errors(console: &[Value]) -> Vec<&str> {
    console
        .iter()
        .filter(|entry| entry["level"] == json!("SEVERE"))
        .filter_map(|entry| entry["message"].as_str())
        .collect()
}

/// Addresses that the page asked for.
fn requests(performance: &[Value]) -> Vec<String> {
    let messages = performance
        .iter()
        .filter_map(|entry| serde_json::from_str::<Value>(entry["message"].as_str()?).ok());
    let sent =
        messages.filter(|event| event["message"]["method"] == json!("Network.requestWillBeSent"));
    sent.filter_map(|event| {
        Some(
            event["message"]["params"]["request"]["url"]
                .as_str()?
                .to_owned(),
        )
    })
    .collect()
}

fn own(url: &str, address: &str) -> bool {
    url.starts_with(address) || url.starts_with("data:") || url.starts_with("blob:")
}

#[test]
fn a_request_to_another_host_is_noticed() {
    let message = r#"{"message": {"method": "Network.requestWillBeSent", "params": {"request": {"url": "https://example.org/a.js"}}}}"#;
    let asked = requests(&[json!({ "message": message })]);
    assert_eq!(asked, ["https://example.org/a.js"]);
    assert!(!own(&asked[0], "http://127.0.0.1:1/"));
    assert!(own("http://127.0.0.1:1/a.js", "http://127.0.0.1:1/"));
}

#[test]
fn an_error_in_the_console_is_noticed() {
    let console = [
        json!({ "level": "INFO", "message": "a" }),
        json!({ "level": "SEVERE", "message": "b" }),
    ];
    assert_eq!(errors(&console), ["b"]);
}
