//! What the fuzzer has found on its way, held against every reader again: each file of the corpus leads somewhere that no
//! other leads to.
#![cfg(test)]

#[path = "fuzz/targets.rs"]
mod targets;

use std::path::PathBuf;
use targets::TARGETS;
use thinwright_jobfile::{JobFile, LinkedJob, samples};

/// Most bytes of the corpus.
const MOST_BYTES: usize = 1_000_000;

fn folder(target: &str) -> PathBuf {
    let here = PathBuf::from(env!("CARGO_MANIFEST_DIR"));
    here.join("fuzz/corpus").join(target)
}

fn inputs(target: &str) -> Vec<Vec<u8>> {
    let folder = std::fs::read_dir(folder(target)).unwrap();
    let mut files: Vec<PathBuf> = folder.map(|f| f.unwrap().path()).collect();
    files.sort();
    files.iter().map(|f| std::fs::read(f).unwrap()).collect()
}

#[test]
fn every_reader_holds_over_its_corpus() {
    let mut bytes = 0;
    for (name, target) in TARGETS {
        let all = inputs(name);
        assert!(all.len() >= 20, "{name}: {} inputs", all.len());
        for input in &all {
            target(input);
        }
        bytes += all.iter().map(Vec::len).sum::<usize>();
    }
    assert!(bytes < MOST_BYTES, "{bytes} bytes");
}

#[test]
fn the_corpora_are_read_and_refused() {
    // A corpus that only knocks at the door would say little: some of it is read well.
    let jobs = inputs("job");
    let read = jobs.iter().filter(|b| JobFile::read(b).is_ok()).count();
    assert!(read > 5 && read < jobs.len(), "{read} of {}", jobs.len());
    let links = inputs("link");
    let fragments = links.iter().filter_map(|b| targets::fragment(b));
    let read = fragments.filter(|f| LinkedJob::read(f).is_ok()).count();
    assert!(read > 5 && read < links.len(), "{read} of {}", links.len());
}

#[test]
fn every_reader_holds_over_every_sample() {
    for sample in samples() {
        for (_, target) in TARGETS {
            target(sample.text.as_bytes());
        }
    }
}

/// Puts the first inputs of a search into the corpus.
#[test]
#[ignore = "writes the first inputs: only where a corpus is begun anew"]
fn first_inputs() {
    for (name, _) in TARGETS {
        std::fs::create_dir_all(folder(name)).unwrap();
        for (number, bytes) in targets::first(name).iter().enumerate() {
            std::fs::write(folder(name).join(format!("first-{number}")), bytes).unwrap();
        }
    }
}
