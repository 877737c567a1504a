//! What is said of jobs, word for word, in every language: nothing of it is English.

use super::OTHERS;
use super::dictionaries::{dictionary, said};
use std::collections::BTreeSet;
use thinwright_catalog::Catalog;
use thinwright_core::answers::Answers;
use thinwright_core::estimate::UNKNOWNS;
use thinwright_core::field::{FIELDS, FieldId, Group, Input};
use thinwright_core::limits::{LimitId, Severity};
use thinwright_core::methods::MethodId;
use thinwright_core::{Outcome, advise, read};
use thinwright_jobfile::samples;
use thinwright_words::language::{Dictionary, Language, missed, speak};
use thinwright_words::{
    Speaker, choice, field, group, limit_meaning, limit_name, method_how, method_name, plain,
    severity, unknown_how, unknown_name,
};
use workspace_tests::jobs::random_jobs;

/// Jobs drawn by lot beside the samples.
const DRAWN: u64 = 20;
/// No unit, symbol or axis has so many letters in a row.
const LEAST_WORD: usize = 4;
/// What a letter becomes in the language that nobody speaks.
const LETTER: char = '\u{A4}';
/// What may be typed instead of what a field wants.
const SLIPS: [&str; 12] = [
    "", "x", "-1", "0", "1e9", "1e99", "1,234", "3 kg", "3 q", "1 mil", "1/0", "2.5",
];

/// Answers, and what becomes of them.
struct Job {
    answers: Answers,
    outcome: Outcome,
}

fn jobs(catalog: &Catalog) -> Vec<Job> {
    let samples = samples().iter().map(|sample| sample.job().answers);
    let drawn = random_jobs(DRAWN).map(|(_, answers)| answers);
    let worked = samples.chain(drawn).map(|answers| {
        let job = read(&answers, catalog).unwrap_or_else(|p| panic!("{p:?}"));
        let outcome = advise(&job);
        Job { answers, outcome }
    });
    worked.collect()
}

/// Everything that has a name, and all that can be wrong with an answer.
fn names(catalog: &Catalog, answers: &Answers) -> Vec<String> {
    let speaker = Speaker::new(answers.units, catalog, answers);
    let mut out = Vec::new();
    for spec in FIELDS {
        let words = field(spec.field);
        out.extend([words.label, words.why, group(spec.group)].map(str::to_owned));
        if let Input::Choice(keys) = spec.input {
            out.extend(keys.iter().map(|key| choice(spec.field, key).to_owned()));
        }
    }
    for limit in LimitId::all() {
        out.extend([limit_name(limit), limit_meaning(limit)].map(str::to_owned));
    }
    for method in MethodId::all() {
        out.extend([method_name(method), method_how(method)].map(str::to_owned));
    }
    for unknown in UNKNOWNS {
        out.extend([unknown_name(unknown), unknown_how(unknown)].map(str::to_owned));
    }
    let severities = [
        Severity::Stop,
        Severity::Quality,
        Severity::Advice,
        Severity::Listen,
    ];
    out.extend(severities.map(|s| severity(s).to_owned()));
    out.extend(
        catalog
            .cautions
            .iter()
            .map(|row| speaker.caution(&row.id).to_owned()),
    );
    out.extend(slips(catalog, answers));
    out
}

/// What is said of answers with one of them spoilt.
fn slips(catalog: &Catalog, answers: &Answers) -> Vec<String> {
    let mut out = Vec::new();
    let answered = answers.iter().map(|(id, _)| *id);
    for id in answered.chain(whole()) {
        for slip in SLIPS {
            let mut spoilt = answers.clone();
            spoilt.set_text(id, slip);
            let Err(problems) = read(&spoilt, catalog) else {
                continue;
            };
            let speaker = Speaker::new(spoilt.units, catalog, &spoilt);
            // What was typed, and keys of choices, are told as they are.
            let told = problems
                .iter()
                .map(|p| (speaker.place(p.field), speaker.problem(p)));
            out.extend(told.flat_map(|(place, problem)| [place, problem]));
        }
    }
    out
}

/// The questions of the whole job.
fn whole() -> Vec<FieldId> {
    let rows = [Group::Cutters, Group::StepPins];
    let of_job = FIELDS.iter().filter(|spec| !rows.contains(&spec.group));
    of_job.map(|spec| FieldId::from(spec.field)).collect()
}

/// All texts, in the language that is spoken.
fn told(catalog: &Catalog, jobs: &[Job]) -> Vec<String> {
    let mut out: Vec<String> = jobs
        .iter()
        .map(|job| {
            let speaker = Speaker::new(job.answers.units, catalog, &job.answers);
            plain(&speaker, &job.outcome)
        })
        .collect();
    out.extend(names(catalog, &jobs[0].answers));
    out
}

/// The dictionary of the language that nobody speaks: a mark for every letter, and the places as they are.
fn nobodys() -> Dictionary {
    let veiled = |english: &str| -> String {
        let mut place = false;
        let veil = english.chars().map(|c| {
            match c {
                '{' => place = true,
                '}' => place = false,
                _ => {}
            }
            if !place && c.is_alphabetic() {
                LETTER
            } else {
                c
            }
        });
        veil.collect()
    };
    Dictionary::new(said().into_iter().map(|english| {
        let veiled = veiled(&english);
        (english, veiled)
    }))
}

/// Words of a text that are nobody's.
fn english(text: &str, typed: &BTreeSet<String>) -> Vec<String> {
    let words = text.split(|c: char| !c.is_alphabetic());
    let words = words.filter(|w| w.len() >= LEAST_WORD && !typed.contains(*w));
    words.map(str::to_owned).collect()
}

/// Words that the person typed, and keys, which are told between quotes.
fn typed(jobs: &[Job]) -> BTreeSet<String> {
    let texts = jobs
        .iter()
        .flat_map(|job| job.answers.iter().map(|(_, a)| a.text.clone()));
    let keys = FIELDS.iter().filter_map(|spec| match spec.input {
        Input::Choice(keys) => Some(keys.iter().map(|k| (*k).to_owned())),
        _ => None,
    });
    let all: Vec<String> = texts.chain(keys.flatten()).collect();
    let words = all
        .iter()
        .flat_map(|t| t.split(|c: char| !c.is_alphabetic()));
    words.map(str::to_owned).collect()
}

#[test]
fn whatever_is_said_of_a_job_is_said_in_every_language() {
    let catalog = Catalog::builtin();
    let jobs = jobs(&catalog);
    speak(Language::German, nobodys());
    let typed = typed(&jobs);
    let mut left = BTreeSet::new();
    for text in told(&catalog, &jobs) {
        left.extend(
            english(&text, &typed)
                .into_iter()
                .map(|w| format!("{w} in: {}", line(&text, &w))),
        );
    }
    let unknown = missed();
    speak(Language::English, Dictionary::default());
    assert!(
        left.is_empty(),
        "{} words past the dictionary\n{}",
        left.len(),
        joined(&left)
    );
    assert!(
        unknown.is_empty(),
        "said and not found in the source\n{}",
        unknown.join("\n")
    );
    for language in OTHERS {
        speak(language, dictionary(language));
        let texts = told(&catalog, &jobs);
        let missed = missed();
        speak(Language::English, Dictionary::default());
        assert!(texts.iter().all(|t| !t.is_empty()));
        assert!(
            missed.is_empty(),
            "{}: {} texts in English\n{}",
            language.tag(),
            missed.len(),
            missed.join("\n")
        );
    }
}

fn line<'a>(text: &'a str, word: &str) -> &'a str {
    text.lines().find(|l| l.contains(word)).unwrap_or(text)
}

fn joined(lines: &BTreeSet<String>) -> String {
    lines.iter().cloned().collect::<Vec<_>>().join("\n")
}

#[test]
fn a_word_past_the_dictionary_is_found() {
    let typed = BTreeSet::from(["Frame".to_owned()]);
    let text = format!("Frame: {LETTER}{LETTER} 3 mm/min, with {LETTER}, lost");
    assert_eq!(english(&text, &typed), ["with", "lost"]);
}
