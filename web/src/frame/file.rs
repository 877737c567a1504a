//! Job files to and from the person's disk.

use crate::browser;
use crate::desk::Desk;
use crate::state::{Action, Message};
use crate::text;
use thinwright_jobfile::JobFile;
use web_sys::HtmlInputElement;
use yew::Callback;

/// Opens the file that was picked, or says what is wrong with it.
pub(super) fn open_file(desk: &Desk, picker: &HtmlInputElement) {
    let Some(file) = picker.files().and_then(|files| files.get(0)) else {
        return;
    };
    let (desk, name) = (desk.clone(), file.name());
    browser::read_file(
        &file,
        Callback::from(move |bytes: Option<Vec<u8>>| {
            let (message, job) = opened(&name, bytes.as_deref());
            if let Some(job) = job {
                desk.say(Action::Load(Box::new(job)));
            }
            desk.say(Action::Tell(message));
        }),
    );
    // The same file can be picked again.
    picker.set_value("");
}

/// What a file holds, and what to say about it.
fn opened(name: &str, bytes: Option<&[u8]>) -> (Message, Option<JobFile>) {
    let alarm = |text: String| Message { text, alarm: true };
    let Some(bytes) = bytes else {
        return (alarm(text::not_read().to_owned()), None);
    };
    match JobFile::read(bytes) {
        Ok(job) => {
            let told = if job.edited() {
                text::opened_edited(name)
            } else {
                text::opened(name)
            };
            (
                Message {
                    text: told,
                    alarm: false,
                },
                Some(job),
            )
        }
        Err(error) => (alarm(text::not_opened(name, &text::fault(&error))), None),
    }
}

/// Hands the job to the person as a file.
pub(super) fn save_file(job: &JobFile) {
    browser::download(&file_name(job.name()), &job.write());
}

/// A name that every disk takes.
fn file_name(name: &str) -> String {
    let plain = name
        .chars()
        .map(|c| if c.is_alphanumeric() { c } else { ' ' })
        .collect::<String>();
    let words: Vec<String> = plain.split_whitespace().map(str::to_lowercase).collect();
    if words.is_empty() {
        "job.json".to_owned()
    } else {
        format!("{}.json", words.join("-"))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_are_fit_for_a_disk() {
        assert_eq!(
            file_name("Mirror: back plate / 2"),
            "mirror-back-plate-2.json"
        );
        assert_eq!(file_name(" ../"), "job.json");
    }

    #[test]
    fn a_broken_file_is_refused_by_name_and_place() {
        let (message, job) = opened("a.json", Some(b"{\"thinwright_job\": 1, \"answers\": 3}"));
        assert!(job.is_none() && message.alarm);
        assert!(message.text.contains("a.json"), "{}", message.text);
        assert!(opened("a.json", None).0.alarm);
    }

    #[test]
    fn a_sample_opens() {
        let sample = thinwright_jobfile::samples()[0];
        let (message, job) = opened("s.json", Some(sample.text.as_bytes()));
        assert!(job.is_some() && !message.alarm);
    }
}
