//! The samples, named in the language that is spoken.

use thinwright_core::Field;
use thinwright_jobfile::{JobFile, Sample};
use thinwright_words::language::tr;

/// The job of a sample. Its names are answers from then on, and stay what they are in another language.
pub(crate) fn sample_job(sample: &Sample) -> JobFile {
    let mut job = sample.job();
    job.title = tr(&job.title).to_owned();
    let name = tr(job.answers.text(Field::Name.into())).to_owned();
    job.answers.set_text(Field::Name, name);
    job
}

#[cfg(test)]
mod tests {
    use super::*;
    use thinwright_jobfile::samples;
    use thinwright_words::language::{Dictionary, Language, speak};

    #[test]
    fn samples_bear_names_of_the_language_and_nothing_else_changes() {
        for sample in samples() {
            assert_eq!(sample_job(sample), sample.job());
        }
        let german = [("Filter cover".to_owned(), "Filterdeckel".to_owned())];
        speak(Language::German, Dictionary::new(german));
        let cover = Sample::by_id("filter-cover").unwrap();
        let mut expected = cover.job();
        expected.answers.set_text(Field::Name, "Filterdeckel");
        assert_eq!(sample_job(cover), expected);
        speak(Language::English, Dictionary::default());
    }
}
