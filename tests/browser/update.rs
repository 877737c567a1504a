//! A newer version of the page: told, taken when the page is loaded again, and never mixed with the older one.

use crate::visit::{Visit, pictures, visit_folder};
use fantoccini::Locator;
use serde_json::json;
use sha2::{Digest as _, Sha256};
use std::collections::BTreeSet;
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};

/// How long the browser may take to store a version, or to see a newer one.
const PATIENCE: Duration = Duration::from_secs(20);
const INTERVAL: Duration = Duration::from_millis(25);

/// The page looks for a newer version when it comes to the front.
const COME_TO_FRONT: &str = "document.dispatchEvent(new Event('visibilitychange'));";
/// The version, and what two of its files say of it: a style and a script.
const VERSION: &str = "return thinwright.version + ' ' + (globalThis.mark ?? 'first')
    + ' ' + (getComputedStyle(document.documentElement).getPropertyValue('--mark') || 'first');";
/// Files of ours that this load of the page has asked for.
const ASKED: &str = "return performance.getEntriesByType('resource').map(e => e.name)
    .filter(name => name.startsWith(location.origin)).map(name => new URL(name).pathname.slice(1));";
const STORES: &str =
    "const done = arguments[arguments.length - 1]; caches.keys().then(keys => done(keys.length));";
/// Whether a file is there, but for what the browser remembers of its own accord.
const STATUS: &str = "const done = arguments[arguments.length - 1];
    fetch(arguments[0], {cache: 'reload'}).then(answer => done(answer.status), () => done(0));";

/// The page in a folder of its own, where it can change.
fn site(name: &str) -> PathBuf {
    let folder = pictures().join(format!("site-{name}"));
    drop(std::fs::remove_dir_all(&folder));
    std::fs::create_dir_all(&folder).unwrap();
    for name in names(&crate::visit::built("dist")) {
        std::fs::copy(crate::visit::built("dist").join(&name), folder.join(&name)).unwrap();
    }
    folder
}

fn names(folder: &Path) -> BTreeSet<String> {
    let files = std::fs::read_dir(folder).unwrap();
    files
        .map(|f| f.unwrap().file_name().to_string_lossy().into_owned())
        .collect()
}

fn digest(content: &[u8]) -> String {
    let digest = Sha256::digest(content);
    digest.iter().take(8).map(|b| format!("{b:02x}")).collect()
}

/// Puts another version in the place of the one that is there, whose files are gone then; its new files by their names.
fn replace(folder: &Path, mark: &str) -> Vec<String> {
    let page = folder.join("index.html");
    let mut html = std::fs::read_to_string(&page).unwrap();
    let mut new = Vec::new();
    for old in names(folder) {
        let more = match old.split_once('-') {
            Some(("style", _)) => format!("\n:root {{ --mark: {mark}; }}\n"),
            Some(("boot", _)) => format!("\nglobalThis.mark = '{mark}';\n"),
            Some(("worker", _)) => format!("\n// {mark}\n"),
            _ => continue,
        };
        let mut content = std::fs::read(folder.join(&old)).unwrap();
        content.extend(more.as_bytes());
        let (stem, rest) = old.split_once('-').unwrap();
        let (_, ending) = rest.rsplit_once('.').unwrap();
        let name = format!("{stem}-{}.{ending}", digest(&content));
        std::fs::remove_file(folder.join(&old)).unwrap();
        std::fs::write(folder.join(&name), content).unwrap();
        html = html.replace(&old, &name);
        new.push(name);
    }
    assert_eq!(new.len(), 3, "{new:?}");
    let (before, rest) = html.split_once(" data-version=\"").unwrap();
    let (_, after) = rest.split_once('"').unwrap();
    let version = digest(format!("{before}{after}").as_bytes());
    let html = format!("{before} data-version=\"{version}\"{after}");
    std::fs::write(page, html).unwrap();
    new
}

impl Visit {
    /// Waits until a script says what is wanted.
    async fn until_said(&self, script: &str, wanted: serde_json::Value) {
        let start = Instant::now();
        loop {
            let said = self.client.execute_async(script, vec![]).await.unwrap();
            if said == wanted {
                return;
            }
            assert!(start.elapsed() < PATIENCE, "{script} says {said}");
            tokio::time::sleep(INTERVAL).await;
        }
    }

    /// Waits until the foot of the page says that it is kept.
    pub(crate) async fn kept_here(&self) {
        let start = Instant::now();
        while !self
            .texts(".foot")
            .await
            .concat()
            .contains("works without a network")
        {
            assert!(start.elapsed() < PATIENCE, "the page is not kept");
            tokio::time::sleep(INTERVAL).await;
        }
    }

    /// Version and marks of this load; every file that it asked for belongs to one version.
    async fn version_of(&self, files: &BTreeSet<String>) -> String {
        let asked = self.run(ASKED, json!(null)).await;
        let asked: BTreeSet<String> = serde_json::from_value(asked).unwrap();
        assert!(asked.len() > 4, "{asked:?}");
        let strangers: Vec<_> = asked
            .iter()
            .filter(|f| !f.is_empty() && !files.contains(*f))
            .collect();
        assert!(strangers.is_empty(), "{strangers:?} of another version");
        let version = self.run(VERSION, json!(null)).await;
        version.as_str().unwrap().to_owned()
    }
}

#[tokio::test]
async fn a_newer_version_is_told_and_taken_when_the_page_is_loaded_again() {
    let folder = site("update");
    visit_folder("update", folder.clone(), |visit| async move {
        let first_files = names(&folder);
        visit.settled().await;
        visit.kept_here().await;
        let first = visit.version_of(&first_files).await;
        assert!(first.ends_with(" first first"), "{first}");
        // Half of the next is there: one of its files says something else, as on a network that wants a login first.
        let new = replace(&folder, "second");
        let good = std::fs::read(folder.join(&new[0])).unwrap();
        std::fs::write(folder.join(&new[0]), "<h1>Log in</h1>").unwrap();
        visit.client.refresh().await.unwrap();
        visit.until_said(STORES, json!(3)).await;
        visit.settled().await;
        assert_eq!(visit.version_of(&first_files).await, first);
        assert_eq!(visit.count(".newer").await, 0);
        // All of it is there.
        std::fs::write(folder.join(&new[0]), good).unwrap();
        visit.run(COME_TO_FRONT, json!(null)).await;
        let notice = Locator::Css(".newer button");
        visit
            .client
            .wait()
            .at_most(PATIENCE)
            .for_element(notice)
            .await
            .unwrap();
        visit.no_barriers().await;
        visit.picture("newer").await;
        // Another tab opens it; this one goes on with its own, whose files the server no longer has.
        let here = visit.client.window().await.unwrap();
        let other = visit.client.new_window(true).await.unwrap().handle;
        visit.client.switch_to_window(other).await.unwrap();
        visit.client.goto(&visit.address).await.unwrap();
        visit.settled().await;
        let second = visit.version_of(&names(&folder)).await;
        assert!(second.ends_with(" second second"), "{second}");
        visit.client.close_window().await.unwrap();
        visit.client.switch_to_window(here).await.unwrap();
        assert_eq!(visit.version_of(&first_files).await, first);
        for file in first_files.difference(&names(&folder)) {
            let status = visit
                .client
                .execute_async(STATUS, vec![json!(format!("./{file}"))])
                .await;
            assert_eq!(status.unwrap(), json!(200), "{file} is gone");
        }
        taken(&visit, &folder, &second).await;
    })
    .await;
}

/// The button takes the newer version, which stays when the network goes.
async fn taken(visit: &Visit, folder: &Path, second: &str) {
    visit.type_over("part.web", "5 mm").await;
    visit.settled().await;
    let reload = visit.by_role("button", "Reload").await;
    reload.click().await.unwrap();
    let start = Instant::now();
    while !visit
        .run(VERSION, json!(null))
        .await
        .as_str()
        .unwrap_or_default()
        .ends_with("second second")
    {
        assert!(
            start.elapsed() < PATIENCE,
            "the newer version does not come"
        );
        tokio::time::sleep(INTERVAL).await;
    }
    visit.settled().await;
    assert_eq!(visit.typed("part.web").await, "5 mm");
    assert_eq!(visit.version_of(&names(folder)).await, second);
    visit.kept_here().await;
    assert_eq!(visit.count(".newer").await, 0);
    visit.lose_network();
    visit.client.refresh().await.unwrap();
    visit.settled().await;
    assert_eq!(visit.version_of(&names(folder)).await, second);
}

#[tokio::test]
async fn what_a_network_says_in_the_servers_place_is_not_taken_for_the_page() {
    let folder = site("login");
    visit_folder("login", folder.clone(), |visit| async move {
        let files = names(&folder);
        visit.settled().await;
        visit.kept_here().await;
        let version = visit.version_of(&files).await;
        std::fs::write(folder.join("index.html"), "<!doctype html><h1>Log in</h1>").unwrap();
        for _ in 0..2 {
            visit.client.refresh().await.unwrap();
            visit.settled().await;
            visit.kept_here().await;
            assert_eq!(visit.version_of(&files).await, version);
        }
        visit.until_said(STORES, json!(2)).await;
        assert_eq!(visit.count(".newer").await, 0);
    })
    .await;
}
