//! Prints the page and reads the paper.

use crate::visit::{Visit, pictures};
use fantoccini::wd::{PrintConfigurationBuilder, PrintSize};
use std::path::PathBuf;
use std::process::Command;

/// The two sheet sizes that a shop's printer holds.
#[derive(Clone, Copy)]
pub(crate) enum Paper {
    A4,
    Letter,
}

impl Paper {
    fn name(self) -> &'static str {
        match self {
            Paper::A4 => "a4",
            Paper::Letter => "letter",
        }
    }
}

/// How long a tick may take to be drawn, and between two looks.
const PATIENCE: std::time::Duration = std::time::Duration::from_secs(20);
const INTERVAL: std::time::Duration = std::time::Duration::from_millis(50);

impl Visit {
    /// Confirms every risk that is asked about, so that no stop mark lies under the text.
    pub(crate) async fn confirmed(&self) {
        const TICK: &str = "document.querySelectorAll('.confirm input:not(:checked)').forEach(box => box.click());";
        self.run(TICK, serde_json::json!(null)).await;
        let start = std::time::Instant::now();
        while self.count(".stop-words").await > 0 {
            assert!(start.elapsed() < PATIENCE, "a stop mark stays");
            tokio::time::sleep(INTERVAL).await;
            self.run(TICK, serde_json::json!(null)).await;
        }
    }

    /// Prints without backgrounds, as browsers do unless told otherwise; the text of each page, laid out as printed.
    pub(crate) async fn printed(&self, name: &str, paper: Paper) -> Vec<String> {
        let size = match paper {
            Paper::A4 => PrintSize::A4,
            Paper::Letter => PrintSize::US_LETTER,
        };
        let configuration = PrintConfigurationBuilder::default()
            .size(size)
            .background(false)
            .build()
            .unwrap();
        let pdf = self
            .client
            .print(configuration)
            .await
            .expect("the page prints");
        std::fs::write(file(name, paper), pdf).unwrap();
        let text = read(name, paper, &["-layout"]);
        // A form feed ends each page.
        text.trim_end_matches('\u{c}')
            .split('\u{c}')
            .map(str::to_owned)
            .collect()
    }
}

/// The text of what was printed, sentence after sentence, in place of line beside line.
pub(crate) fn sentences(name: &str, paper: Paper) -> String {
    read(name, paper, &[]).replace('\u{c}', "\n")
}

fn file(name: &str, paper: Paper) -> PathBuf {
    pictures().join(format!("{name}-{}.pdf", paper.name()))
}

fn read(name: &str, paper: Paper, how: &[&str]) -> String {
    let text = Command::new("pdftotext")
        .args(how)
        .arg(file(name, paper))
        .arg("-")
        .output()
        .expect("pdftotext is on the PATH");
    assert!(
        text.status.success(),
        "{}",
        String::from_utf8_lossy(&text.stderr)
    );
    String::from_utf8(text.stdout).unwrap()
}
