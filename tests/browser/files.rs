//! Job files: opened from the disk, refused with the place of the fault, saved so that they read back alike.

use crate::visit::{Visit, visit};
use fantoccini::Locator;
use serde_json::json;
use std::path::PathBuf;
use thinwright_core::Field;
use thinwright_jobfile::{JobFile, Sample};

/// Keeps the file that is handed out, in place of the browser's own folder for downloads.
pub(crate) const CATCH: &str = "
    const create = URL.createObjectURL;
    URL.createObjectURL = blob => { globalThis.caught = blob; return create.call(URL, blob); };
    HTMLAnchorElement.prototype.click = function() { globalThis.caughtName = this.download; };";

/// What was caught.
pub(crate) const CAUGHT: &str = "
    const done = arguments[arguments.length - 1];
    globalThis.caught.text().then(text => done([globalThis.caughtName, text]));";

/// A file of a test on the disk.
fn file(name: &str, text: &str) -> PathBuf {
    let folder = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join("files");
    std::fs::create_dir_all(&folder).unwrap();
    let file = folder.join(name);
    std::fs::write(&file, text).unwrap();
    file
}

/// Picks a file, as the dialogue of the browser would.
async fn pick(visit: &Visit, file: &std::path::Path) {
    let picker = visit
        .client
        .find(Locator::Css("input[type=file]"))
        .await
        .unwrap();
    picker.send_keys(file.to_str().unwrap()).await.unwrap();
}

/// The message that comes, and is then put away.
async fn told(visit: &Visit) -> String {
    let message = visit
        .client
        .wait()
        .for_element(Locator::Css(".message"))
        .await
        .unwrap();
    let said = visit.texts(".message span").await.concat();
    let away = message.find(Locator::Css("button")).await.unwrap();
    away.click().await.unwrap();
    said
}

#[tokio::test]
async fn a_job_file_opens_and_is_saved_as_it_was() {
    visit("job-file", |visit| async move {
        visit.settled().await;
        let mut job = Sample::by_id("filter-cover").unwrap().job();
        job.answers.set_text(Field::Thickness, "16,0");
        pick(&visit, &file("cover.json", &job.write())).await;
        let said = told(&visit).await;
        assert!(
            said.contains("Opened") && said.contains("cover.json"),
            "{said}"
        );
        visit.settled().await;
        assert_eq!(visit.typed("part.thickness").await, "16,0");
        visit.run(CATCH, json!(null)).await;
        visit.by_role("button", "Save").await.click().await.unwrap();
        let caught = visit.client.execute_async(CAUGHT, vec![]).await.unwrap();
        assert_eq!(caught[0], json!("pump-filter-cover.json"));
        let saved = JobFile::read(caught[1].as_str().unwrap().as_bytes()).unwrap();
        assert_eq!((&saved.title, &saved.answers), (&job.title, &job.answers));
        assert!(!saved.edited(), "the file does not know its own answers");
    })
    .await;
}

#[tokio::test]
async fn a_broken_file_is_refused_and_changes_nothing() {
    visit("broken-file", |visit| async move {
        visit.settled().await;
        let good = (
            visit.texts(".whole pre").await,
            visit.typed("part.name").await,
        );
        let sample = Sample::by_id("filter-cover").unwrap().text;
        let half: String = sample.chars().take(400).collect();
        let line = format!("line {}", half.lines().count());
        let unknown = sample.replacen("part.width", "part.widht", 1);
        let cases = [
            ("half.json", half, line.as_str()),
            ("unknown.json", unknown, "part.widht"),
            ("other.json", "{\"a\": 1}".to_owned(), "thinwright_job"),
        ];
        for (name, text, place) in cases {
            pick(&visit, &file(name, &text)).await;
            let said = told(&visit).await;
            assert!(
                said.contains(name) && said.contains(place),
                "{name}, {place}: {said}"
            );
            visit.settled().await;
            let now = (
                visit.texts(".whole pre").await,
                visit.typed("part.name").await,
            );
            assert_eq!(now, good);
        }
    })
    .await;
}
