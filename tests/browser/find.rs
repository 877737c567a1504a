//! Finds elements as a screen reader names them: by role and accessible name, computed by the browser itself.

use crate::devtools::devtools;
use crate::visit::Visit;
use fantoccini::Locator;
use fantoccini::elements::Element;
use serde_json::{Value, json};
use std::time::{Duration, Instant};

/// How long an element may take to appear.
const PATIENCE: Duration = Duration::from_secs(20);
/// How often one looks.
const INTERVAL: Duration = Duration::from_millis(25);

impl Visit {
    /// The one element of a role and a name, waited for.
    pub(crate) async fn by_role(&self, role: &str, name: &str) -> Element {
        let start = Instant::now();
        loop {
            let mut found = self.all_by_role(role, Some(name)).await;
            match found.len() {
                1 => return found.remove(0),
                0 if start.elapsed() < PATIENCE => tokio::time::sleep(INTERVAL).await,
                many => panic!("{many} elements with the role {role} and the name {name:?}"),
            }
        }
    }

    /// Every element of a role that a screen reader would tell of, in the page's order; a name narrows it.
    pub(crate) async fn all_by_role(&self, role: &str, name: Option<&str>) -> Vec<Element> {
        let document = devtools(
            &self.client,
            "Runtime.evaluate",
            json!({ "expression": "document" }),
        )
        .await;
        let mut query = json!({ "objectId": document["result"]["objectId"], "role": role });
        if let Some(name) = name {
            query["accessibleName"] = json!(name);
        }
        let answer = devtools(&self.client, "Accessibility.queryAXTree", query).await;
        let nodes = answer["nodes"].as_array().cloned().unwrap_or_default();
        let mut found = Vec::new();
        for node in nodes.iter().filter(|node| node["ignored"] == json!(false)) {
            found.push(self.element(node).await);
        }
        found
    }

    /// The element behind a node: marked by its number, then found by the mark.
    async fn element(&self, node: &Value) -> Element {
        let number = &node["backendDOMNodeId"];
        let object = devtools(
            &self.client,
            "DOM.resolveNode",
            json!({ "backendNodeId": number }),
        )
        .await;
        let mark = json!({
            "objectId": object["object"]["objectId"],
            "functionDeclaration": "function(n) { this.setAttribute('data-found', n); }",
            "arguments": [{ "value": number }],
        });
        devtools(&self.client, "Runtime.callFunctionOn", mark).await;
        self.client
            .find(Locator::Css(&format!("[data-found='{number}']")))
            .await
            .unwrap()
    }
}
