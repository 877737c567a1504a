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

impl Visit {
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
