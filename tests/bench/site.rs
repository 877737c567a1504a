//! A folder served, and a browser that looks at it.

use crate::devtools::devtools;
use crate::driver::Driver;
use crate::server::Server;
use fantoccini::Client;
use fantoccini::wd::TimeoutConfiguration;
use serde_json::{Value, json};
use std::path::PathBuf;
use std::sync::atomic::AtomicBool;
use std::time::Duration;

/// The longest that one script may wait for its answer: a slow job on a slow machine.
const PATIENCE: Duration = Duration::from_secs(300);

/// A browser at a folder that is served.
#[derive(Clone)]
pub(crate) struct Site {
    pub(crate) client: Client,
    pub(crate) address: String,
}

/// Serves a folder, opens a browser with an empty profile, its processor slowed so many times, and looks; the browser
/// is closed whatever comes of it.
pub(crate) async fn visit<T, F>(folder: PathBuf, slowed: u32, look: impl FnOnce(Site) -> F) -> T
where
    T: Send + 'static,
    F: Future<Output = T> + Send + 'static,
{
    let server = Server::bind(folder, 0..1).expect("a free port");
    let address = server.address();
    // As long as the bench runs.
    std::thread::spawn(move || server.run(&AtomicBool::new(true)));
    let driver = Driver::start();
    let client = driver.open(&[]).await;
    let site = Site {
        client: client.clone(),
        address,
    };
    let looking = look(site.clone());
    let told = tokio::spawn(async move {
        let timeouts = TimeoutConfiguration::new(Some(PATIENCE), None, None);
        let set = site.client.update_timeouts(timeouts).await;
        set.expect("timeouts are set");
        let rate = json!({ "rate": slowed });
        devtools(&site.client, "Emulation.setCPUThrottlingRate", rate).await;
        looking.await
    })
    .await;
    client.close().await.expect("the browser closes");
    told.unwrap_or_else(|failure| std::panic::resume_unwind(failure.into_panic()))
}

impl Site {
    /// Runs a script that is handed what takes its answer as its last argument.
    pub(crate) async fn wait_for(&self, script: &str, arguments: Vec<Value>) -> Value {
        let told = self.client.execute_async(script, arguments).await;
        told.unwrap_or_else(|e| panic!("script: {e}"))
    }

    /// Runs a script.
    pub(crate) async fn run(&self, script: &str, arguments: Vec<Value>) {
        let done = self.client.execute(script, arguments).await;
        done.unwrap_or_else(|e| panic!("script: {e}"));
    }

    /// Opens the page.
    pub(crate) async fn open(&self) {
        let opened = self.client.goto(&self.address).await;
        opened.unwrap_or_else(|e| panic!("{}: {e}", self.address));
    }
}
