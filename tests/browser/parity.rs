//! The page says what the command line says, letter for letter: one computation, natively and in the browser.

use crate::visit::{visit, visit_file};
use std::fs;
use std::path::Path;

/// What is said of a sample outside the browser: the test `golden` holds it to what is computed natively.
fn golden(id: &str) -> String {
    let file = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("golden")
        .join(format!("{id}.txt"));
    fs::read_to_string(&file).unwrap_or_else(|e| panic!("{}: {e}", file.display()))
}

/// The first line in which two texts differ.
fn same(id: &str, page: &str, native: &str) {
    let both = page.lines().zip(native.lines());
    if let Some((at, (page, native))) = both.enumerate().find(|(_, (a, b))| a != b) {
        panic!("{id}, line {}:\npage   {page}\nnative {native}", at + 1);
    }
    assert_eq!(page, native, "{id}: one of the two is longer");
}

#[tokio::test]
async fn the_page_says_what_is_said_natively() {
    visit("parity", |visit| async move {
        visit.settled().await;
        for sample in thinwright_jobfile::samples() {
            visit.open_sample(sample.id).await;
            let page = visit.texts(".whole pre").await.concat();
            same(sample.id, &page, &golden(sample.id));
        }
    })
    .await;
}

#[tokio::test]
async fn the_file_on_a_disk_says_the_same() {
    visit_file("parity-file", |visit| async move {
        visit.settled().await;
        let first = thinwright_jobfile::samples()[0].id;
        let page = visit.texts(".whole pre").await.concat();
        same(first, &page, &golden(first));
    })
    .await;
}
