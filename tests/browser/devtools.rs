//! Commands of `ChromeDriver` that the `WebDriver` standard does not have.

use fantoccini::Client;
use fantoccini::wd::WebDriverCompatibleCommand;
use serde_json::{Value, json};
use url::{ParseError, Url};

/// One POST to a path under the session.
#[derive(Debug)]
struct Post {
    path: &'static str,
    body: Value,
}

impl WebDriverCompatibleCommand for Post {
    fn endpoint(&self, base: &Url, session: Option<&str>) -> Result<Url, ParseError> {
        base.join(&format!(
            "session/{}/{}",
            session.unwrap_or_default(),
            self.path
        ))
    }

    fn method_and_body(&self, _: &Url) -> (http::Method, Option<String>) {
        (http::Method::POST, Some(self.body.to_string()))
    }
}

/// A command of the browser's debugging protocol, and its answer.
pub(crate) async fn devtools(client: &Client, command: &str, parameters: Value) -> Value {
    let post = Post {
        path: "goog/cdp/execute",
        body: json!({ "cmd": command, "params": parameters }),
    };
    client
        .issue_cmd(post)
        .await
        .unwrap_or_else(|e| panic!("{command}: {e}"))
}

/// What a log of the browser holds since it was last read.
pub(crate) async fn log(client: &Client, kind: &str) -> Vec<Value> {
    let post = Post {
        path: "se/log",
        body: json!({ "type": kind }),
    };
    let entries = client
        .issue_cmd(post)
        .await
        .unwrap_or_else(|e| panic!("log {kind}: {e}"));
    entries
        .as_array()
        .cloned()
        .unwrap_or_else(|| panic!("log {kind} is no list: {entries}"))
}
