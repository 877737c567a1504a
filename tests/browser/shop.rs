//! The shop: what is of one's own, two windows, everything in one file, and taking back.

use crate::keeping::things;
use crate::visit::{Visit, visit};
use fantoccini::Locator;
use fantoccini::actions::{InputSource as _, KeyAction, KeyActions};
use serde_json::json;
use std::path::PathBuf;
use std::time::Duration;

const OPEN: &str = "Jobs, machines, racks";
const CONTROL: char = '\u{E009}';
const SHIFT: char = '\u{E008}';

/// Keeps the file that is handed out, in place of the browser's own folder for downloads.
const CATCH: &str = "
    const create = URL.createObjectURL;
    URL.createObjectURL = blob => { globalThis.caught = blob; return create.call(URL, blob); };
    HTMLAnchorElement.prototype.click = function() { globalThis.caughtName = this.download; };";
const CAUGHT: &str = "
    const done = arguments[arguments.length - 1];
    globalThis.caught.text().then(text => done([globalThis.caughtName, text]));";

async fn click(visit: &Visit, name: &str) {
    visit.by_role("button", name).await.click().await.unwrap();
}

/// Waits for words in elements.
async fn shows(visit: &Visit, css: &str, what: &str) {
    for _ in 0..400 {
        if visit.texts(css).await.concat().contains(what) {
            return;
        }
        tokio::time::sleep(Duration::from_millis(25)).await;
    }
    panic!("{css} never shows {what:?}: {:?}", visit.texts(css).await);
}

/// Waits until the database holds this.
async fn holds(visit: &Visit, what: &str) {
    for _ in 0..400 {
        if things(visit)
            .await
            .iter()
            .any(|(_, text)| text.contains(what))
        {
            return;
        }
        tokio::time::sleep(Duration::from_millis(25)).await;
    }
    panic!("{what} was never kept");
}

/// Presses a key with others held down.
async fn chord(visit: &Visit, held: &[char], key: char) {
    let mut keys = KeyActions::new("chord".into());
    for &value in held {
        keys = keys.then(KeyAction::Down { value });
    }
    keys = keys
        .then(KeyAction::Down { value: key })
        .then(KeyAction::Up { value: key });
    for &value in held.iter().rev() {
        keys = keys.then(KeyAction::Up { value });
    }
    visit.client.perform_actions(keys).await.unwrap();
}

async fn line(visit: &Visit, css: &str, text: &str) {
    let line = visit.client.find(Locator::Css(css)).await.unwrap();
    line.clear().await.unwrap();
    line.send_keys(text).await.unwrap();
}

#[tokio::test]
async fn changes_are_taken_back_by_key_and_by_button() {
    visit("undo", |visit| async move {
        visit.settled().await;
        let before = (
            visit.typed("part.web").await,
            visit.typed("part.thickness").await,
        );
        visit.type_over("part.web", "4.25").await;
        visit.type_over("part.thickness", "31.5").await;
        // In the line that was just typed in, the whole of it goes back at once.
        chord(&visit, &[CONTROL], 'z').await;
        assert_eq!(visit.typed("part.thickness").await, before.1);
        click(&visit, "Undo: Web thickness").await;
        assert_eq!(visit.typed("part.web").await, before.0);
        chord(&visit, &[CONTROL, SHIFT], 'z').await;
        assert_eq!(visit.typed("part.web").await, "4.25");
        // Another job, and back.
        visit.open_sample("grille-frame").await;
        click(&visit, "Undo: back to the job before").await;
        visit.settled().await;
        assert_eq!(visit.typed("part.web").await, "4.25");
        visit.by_role("button", "Redo: on to the job after").await;
    })
    .await;
}

#[tokio::test]
async fn a_machine_is_kept_used_renamed_deleted_and_put_back() {
    visit("own-machine", |visit| async move {
        visit.settled().await;
        let feed = visit.typed("machine.speed-max").await;
        click(&visit, "Machines of your own").await;
        shows(&visit, ".shop", "No machine is kept yet.").await;
        click(&visit, "Save").await;
        shows(&visit, ".shop .field-problem", "A name is missing.").await;
        line(&visit, "#shop-save", "Router").await;
        click(&visit, "Save").await;
        shows(
            &visit,
            ".shop .message",
            "Kept in your shop: \u{201C}Router\u{201D}.",
        )
        .await;
        visit.no_barriers().await;
        visit.picture("shop-machines").await;
        click(&visit, "Rename: Router").await;
        line(&visit, ".shop-rename input", "Big router").await;
        visit.press(['\u{E007}']).await;
        shows(&visit, ".shop-list", "Big router").await;
        click(&visit, "Close").await;
        visit.type_over("machine.speed-max", "9000").await;
        visit.client.refresh().await.unwrap();
        visit.started().await;
        click(&visit, "Machines of your own").await;
        click(&visit, "Use: Big router").await;
        assert_eq!(visit.typed("machine.speed-max").await, feed);
        click(&visit, "Delete: Big router").await;
        shows(&visit, ".shop", "No machine is kept yet.").await;
        assert!(
            things(&visit)
                .await
                .iter()
                .all(|(_, text)| !text.contains("Big router"))
        );
        click(&visit, "Put back: Big router").await;
        visit.by_role("button", "Use: Big router").await;
        holds(&visit, "Big router").await;
    })
    .await;
}

#[tokio::test]
async fn two_windows_keep_both() {
    visit("two-windows", |visit| async move {
        visit.settled().await;
        visit.type_over("part.web", "4.25").await;
        holds(&visit, "\"4.25\"").await;
        let first = visit.client.window().await.unwrap();
        let second = visit.client.new_window(false).await.unwrap().handle;
        visit.client.switch_to_window(second).await.unwrap();
        visit.client.goto(&visit.address).await.unwrap();
        visit.settled().await;
        assert_eq!(visit.typed("part.web").await, "4.25");
        visit.type_over("part.web", "4.5").await;
        holds(&visit, "\"4.5\"").await;
        visit.client.switch_to_window(first).await.unwrap();
        shows(&visit, ".message-alarm", "was changed in another window").await;
        assert_eq!(visit.typed("part.web").await, "4.25");
        visit.type_over("part.web", "4.75").await;
        shows(&visit, ".message-alarm", "Both are kept").await;
        let all = things(&visit).await;
        let count = |what: &str| all.iter().filter(|(_, text)| text.contains(what)).count();
        assert_eq!(
            (all.len(), count("\"4.5\""), count("\"4.75\"")),
            (2, 1, 1),
            "{all:?}"
        );
        // Each goes on with its own.
        visit.type_over("part.web", "4.8").await;
        holds(&visit, "\"4.8\"").await;
        visit.client.refresh().await.unwrap();
        visit.settled().await;
        assert_eq!(visit.typed("part.web").await, "4.8");
        assert_eq!(things(&visit).await.len(), 2);
    })
    .await;
}

fn written(name: &str, text: &str) -> PathBuf {
    let folder = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join("files");
    std::fs::create_dir_all(&folder).unwrap();
    let file = folder.join(name);
    std::fs::write(&file, text).unwrap();
    file
}

fn contents(all: Vec<(String, String)>) -> Vec<String> {
    let mut ids: Vec<String> = all.into_iter().map(|(id, _)| id).collect();
    ids.sort();
    ids
}

#[tokio::test]
async fn everything_goes_into_one_file_and_comes_back() {
    const CLEAR: &str = "
        const done = arguments[arguments.length - 1];
        localStorage.clear();
        sessionStorage.clear();
        const asked = indexedDB.deleteDatabase('thinwright');
        asked.onsuccess = () => done(true);
        asked.onerror = asked.onblocked = () => done(false);";
    visit("one-file", |visit| async move {
        visit.settled().await;
        visit.type_over("part.web", "4.25").await;
        click(&visit, "Racks of your own").await;
        line(&visit, "#shop-save", "Drawer").await;
        click(&visit, "Save").await;
        shows(&visit, ".shop-list", "Drawer").await;
        holds(&visit, "\"4.25\"").await;
        let before = things(&visit).await;
        visit.run(CATCH, json!(null)).await;
        click(&visit, "Save all").await;
        let caught = visit.client.execute_async(CAUGHT, vec![]).await.unwrap();
        assert!(
            caught[0].as_str().unwrap().starts_with("thinwright-20"),
            "{caught}"
        );
        let file = written("shop.json", caught[1].as_str().unwrap());
        let cleared = visit.client.execute_async(CLEAR, vec![]).await.unwrap();
        assert_eq!(
            cleared,
            json!(true),
            "the page does not let go of its database"
        );
        visit.client.refresh().await.unwrap();
        visit.settled().await;
        assert_eq!(things(&visit).await.len(), 0);
        click(&visit, OPEN).await;
        for count in [
            "2 brought in, 0 here already",
            "0 brought in, 2 here already",
        ] {
            let picker = visit
                .client
                .find(Locator::Css(".shop input[type=file]"))
                .await
                .unwrap();
            picker.send_keys(file.to_str().unwrap()).await.unwrap();
            shows(&visit, ".shop .message", count).await;
            holds(&visit, "Drawer").await;
        }
        assert_eq!(contents(things(&visit).await), contents(before));
        click(
            &visit,
            "Open: Ventilated back plate for a small telescope mirror",
        )
        .await;
        click(&visit, "Close").await;
        visit.settled().await;
        assert_eq!(visit.typed("part.web").await, "4.25");
    })
    .await;
}
