//! Golden strategies: what is said of each sample, word for word.
//!
//! A change of a number or a sentence shows here as a changed line. `UPDATE_GOLDEN=1` writes the files anew; a person
//! reads the difference before it is committed. The files are the program's own output: they guard against change, not
//! against error, which is the work of the published checks.

use std::fs;
use std::path::PathBuf;
use thinwright_catalog::Catalog;
use thinwright_core::{Outcome, advise, read};
use thinwright_jobfile::{Sample, samples};
use thinwright_words::{Speaker, plain};

/// The outcome of a sample, and what is said of it.
fn said(sample: &Sample) -> (Outcome, String) {
    let catalog = Catalog::builtin();
    let answers = sample.job().answers;
    let job =
        read(&answers, &catalog).unwrap_or_else(|problems| panic!("{}: {problems:?}", sample.id));
    let outcome = advise(&job);
    let text = plain(&Speaker::new(answers.units, &catalog, &answers), &outcome);
    (outcome, text)
}

fn check(id: &str) {
    let sample = Sample::by_id(id).unwrap_or_else(|| panic!("no sample {id}"));
    let (outcome, text) = said(sample);
    let feasible = matches!(outcome, Outcome::Feasible(_));
    assert_eq!(feasible, id != "impossible", "{id}\n{text}");
    let path = PathBuf::from(env!("CARGO_MANIFEST_DIR"))
        .join("golden")
        .join(format!("{id}.txt"));
    if std::env::var_os("UPDATE_GOLDEN").is_some() {
        fs::write(&path, &text).unwrap_or_else(|e| panic!("{}: {e}", path.display()));
        return;
    }
    let golden = fs::read_to_string(&path).unwrap_or_else(|e| panic!("{}: {e}", path.display()));
    let first = text
        .lines()
        .zip(golden.lines())
        .enumerate()
        .find(|(_, (now, then))| now != then);
    if let Some((line, (now, then))) = first {
        panic!(
            "{id}.txt, line {}:\nwas {then}\nis  {now}\nUPDATE_GOLDEN=1 writes it anew",
            line + 1
        );
    }
    assert_eq!(
        text.lines().count(),
        golden.lines().count(),
        "{id}.txt has another length"
    );
}

#[test]
fn mirror_back_plate() {
    check("mirror-back-plate");
}

#[test]
fn grille_frame() {
    check("grille-frame");
}

#[test]
fn filter_cover() {
    check("filter-cover");
}

#[test]
fn impossible() {
    check("impossible");
}

#[test]
fn every_sample_has_a_golden_file() {
    let folder = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("golden");
    let mut there: Vec<String> = fs::read_dir(folder)
        .expect("the folder of golden files")
        .filter_map(|e| e.ok().and_then(|e| e.file_name().into_string().ok()))
        .collect();
    there.sort();
    let mut wanted: Vec<String> = samples().iter().map(|s| format!("{}.txt", s.id)).collect();
    wanted.sort();
    assert_eq!(there, wanted);
}
