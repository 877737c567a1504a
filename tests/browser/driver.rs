//! Starts a driver and a browser, and ends both.

use fantoccini::{Client, ClientBuilder};
use hyper_util::client::legacy::connect::HttpConnector;
use serde_json::json;
use std::io::{BufRead as _, BufReader};
use std::path::PathBuf;
use std::process::{Child, Command, Stdio};

/// Chromium asks no host of its own accord, and runs as root.
const FLAGS: &[&str] = &[
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--disable-dev-shm-usage",
    // A page that still glides to its place cannot be clicked at.
    "--force-prefers-reduced-motion",
    "--window-size=1280,900",
    // Whatever the machine speaks.
    "--accept-lang=en",
];

/// Most tries to start a driver.
const STARTS: u32 = 5;

/// A driver's process, ended when dropped.
pub(crate) struct Driver {
    process: Child,
    address: String,
}

impl Driver {
    /// Starts one on a port that it chooses itself. Two that start at once may choose the same: the loser ends, and
    /// another is started.
    pub(crate) fn start() -> Driver {
        (0..STARTS)
            .find_map(|_| Driver::try_start())
            .expect("chromedriver names its port")
    }

    fn try_start() -> Option<Driver> {
        let mut process = Command::new("chromedriver")
            .arg("--port=0")
            .stdout(Stdio::piped())
            .spawn()
            .expect("chromedriver is on the PATH");
        let stdout = BufReader::new(process.stdout.take().unwrap());
        let mut lines = stdout.lines().map_while(Result::ok);
        let port = lines.find_map(|line| {
            line.split_once("successfully on port ")
                .map(|(_, port)| port.trim_end_matches('.').to_owned())
        });
        // Whatever else it says is read and dropped, so that it never waits for a reader.
        std::thread::spawn(move || lines.for_each(drop));
        let Some(port) = port else {
            drop(process.wait());
            return None;
        };
        Some(Driver {
            process,
            address: format!("http://127.0.0.1:{port}"),
        })
    }

    /// Opens a browser with an empty profile, and with flags of a test's own.
    pub(crate) async fn open(&self, more: &[String]) -> Client {
        let flags = FLAGS.iter().map(ToString::to_string);
        let flags: Vec<String> = flags.chain(more.iter().cloned()).collect();
        let capabilities = json!({
            "goog:chromeOptions": { "binary": chromium(), "args": flags },
            "goog:loggingPrefs": { "browser": "ALL", "performance": "ALL" },
        });
        ClientBuilder::new(HttpConnector::new())
            .capabilities(capabilities.as_object().unwrap().clone())
            .connect(&self.address)
            .await
            .expect("the browser starts")
    }
}

impl Drop for Driver {
    fn drop(&mut self) {
        drop(self.process.kill());
        drop(self.process.wait());
    }
}

fn chromium() -> PathBuf {
    let path = std::env::var_os("PATH").unwrap_or_default();
    let mut folders = std::env::split_paths(&path);
    folders
        .find_map(|folder| Some(folder.join("chromium")).filter(|file| file.is_file()))
        .expect("chromium is on the PATH")
}
