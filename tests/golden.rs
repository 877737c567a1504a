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
    compare(id, &text);
}

/// Holds a text against its file.
fn compare(id: &str, text: &str) {
    let path = PathBuf::from(env!("CARGO_MANIFEST_DIR"))
        .join("golden")
        .join(format!("{id}.txt"));
    if std::env::var_os("UPDATE_GOLDEN").is_some() {
        fs::write(&path, text).unwrap_or_else(|e| panic!("{}: {e}", path.display()));
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
    wanted.push("orders.txt".to_owned());
    wanted.sort();
    assert_eq!(there, wanted);
}

/// Sample, what is answered otherwise, and what that is.
type Turn = (
    &'static str,
    &'static [(&'static str, &'static str)],
    &'static str,
);

/// Answers that turn the order of the work or the way of holding.
const TURNS: &[Turn] = &[
    ("mirror-back-plate", &[], "as it is"),
    ("mirror-back-plate", &[("part.web", "3")], "a web of 3 mm"),
    (
        "mirror-back-plate",
        &[("part.web", "1.5")],
        "a web of 1.5 mm",
    ),
    (
        "mirror-back-plate",
        &[("part.web", "1.5"), ("holding.backing", "none")],
        "a web of 1.5 mm, no backing at hand",
    ),
    (
        "mirror-back-plate",
        &[("part.web", "1.5"), ("holding.boss-bolted", "no")],
        "a web of 1.5 mm, the boss not bored for a bolt",
    ),
    (
        "mirror-back-plate",
        &[
            ("part.web", "1.5"),
            ("slots.per-group", "4"),
            ("slots.pitch", "7"),
        ],
        "a web of 1.5 mm, four slots in a group for three, closer",
    ),
    (
        "mirror-back-plate",
        &[
            ("part.web", "2"),
            ("machine.class", "machining_centre"),
            ("machine.stiffness", ""),
        ],
        "a web of 2 mm, on a machining centre",
    ),
    ("filter-cover", &[], "as it is"),
    (
        "filter-cover",
        &[
            ("part.web", "1.5"),
            ("recess-a.depth", "8"),
            ("recess-b.depth", "6.5"),
        ],
        "a web of 1.5 mm",
    ),
    (
        "filter-cover",
        &[
            ("part.web", "1.5"),
            ("recess-a.depth", "8"),
            ("recess-b.depth", "6.5"),
            ("holding.backing", "filler"),
        ],
        "a web of 1.5 mm, any backing at hand",
    ),
];

/// What is chosen, and what the first others are set aside for.
fn orders(turn: &Turn) -> String {
    let (id, changes, what) = turn;
    let catalog = Catalog::builtin();
    let mut answers = Sample::by_id(id).expect("a sample").job().answers;
    for (key, text) in *changes {
        let field = thinwright_core::FieldId::by_key(key).expect("a field");
        answers.set_text(field, *text);
    }
    let job = read(&answers, &catalog).unwrap_or_else(|p| panic!("{what}: {p:?}"));
    let Outcome::Feasible(strategy) = advise(&job) else {
        panic!("{id}, {what}: refused");
    };
    let speaker = Speaker::new(answers.units, &catalog, &answers);
    let mut lines = format!("{id}, {what}\n");
    let chosen = &strategy.orders[0];
    let figures = speaker.order_figures(chosen);
    lines += &format!("  chosen: {}: {figures}\n", speaker.order(chosen));
    for other in thinwright_words::telling(&strategy.orders)
        .0
        .iter()
        .skip(1)
        .take(6)
    {
        lines += &format!(
            "  set aside: {}: {}\n",
            speaker.order(other),
            speaker.set_aside(other)
        );
    }
    lines
}

#[test]
fn one_answer_turns_the_order() {
    let texts: Vec<String> = TURNS.iter().map(orders).collect();
    let chosen = |text: &str| {
        let line = text.lines().nth(1).unwrap();
        line.split(": ").nth(1).unwrap().to_owned()
    };
    // More than a file that stays the same: each sample has answers that choose otherwise.
    let mut kinds: Vec<String> = texts.iter().map(|t| chosen(t)).collect();
    kinds.sort();
    kinds.dedup();
    assert!(kinds.len() >= 4, "{kinds:?}");
    compare("orders", &texts.join("\n"));
}
