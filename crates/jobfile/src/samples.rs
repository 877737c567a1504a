//! The samples: full job files that page, command line and tests share.

use crate::job::JobFile;

/// A sample job.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Sample {
    /// Name: the file's, without its ending.
    pub id: &'static str,
    /// The job file.
    pub text: &'static str,
}

macro_rules! samples {
    ($($id:literal),*) => {
        &[$(Sample { id: $id, text: include_str!(concat!("../../../shared/samples/", $id, ".json")) },)*]
    };
}

const SAMPLES: &[Sample] = samples![
    "mirror-back-plate",
    "grille-frame",
    "filter-cover",
    "impossible"
];

/// All samples; the first is the one that a page opens with.
pub fn samples() -> &'static [Sample] {
    SAMPLES
}

impl Sample {
    /// The sample of a name.
    pub fn by_id(id: &str) -> Option<&'static Sample> {
        SAMPLES.iter().find(|s| s.id == id)
    }

    /// The sample read.
    ///
    /// # Panics
    /// Never in a build that passed its tests: `every_sample_is_read_and_written_alike`.
    pub fn job(&self) -> JobFile {
        JobFile::read(self.text.as_bytes()).expect("every_sample_is_read_and_written_alike")
    }
}
