//! What is read at the machine, of every sample: whole, in the order of the work, and no longer than a page.

use super::leaf::{Body, Leaf, leaves, strategy};
use super::room::Room;
use super::spot::{Part, Spot};
use crate::state::{Shown, Stage};
use std::rc::Rc;
use std::sync::OnceLock;
use thinwright_catalog::Catalog;
use thinwright_core::strategy::{Entry, Outcome, Step};
use thinwright_core::task::TaskKind;
use thinwright_core::{Answers, decide, read};
use thinwright_jobfile::{Ran, Record, samples};
use thinwright_words::lectern::{About, Line};
use thinwright_words::{Speaker, after_turn_over, before_start};

const PHONE: Room = Room {
    width: 360.0,
    height: 640.0,
    stop: true,
};
const DESK: Room = Room {
    width: 1440.0,
    height: 900.0,
    stop: false,
};

/// Outcomes of all samples, worked out once.
fn outcomes() -> &'static Vec<(Answers, Outcome)> {
    static OUTCOMES: OnceLock<Vec<(Answers, Outcome)>> = OnceLock::new();
    OUTCOMES.get_or_init(|| {
        let catalog = Catalog::builtin();
        let one = |answers: Answers| {
            let outcome = decide(&read(&answers, &catalog).unwrap());
            (answers, outcome)
        };
        samples().iter().map(|s| one(s.job().answers)).collect()
    })
}

/// Does something with each strategy and its pages in a window.
fn each(room: Room, then: impl Fn(&Shown, &Speaker<'_>, &[Leaf])) {
    let catalog = Catalog::builtin();
    let told = |outcome: &Outcome| matches!(outcome, Outcome::Feasible(_));
    for (answers, outcome) in outcomes().iter().filter(|(_, o)| told(o)) {
        let shown = Shown {
            job: Rc::new(read(answers, &catalog).unwrap()),
            answers: Rc::new(answers.clone()),
            outcome: Rc::new(outcome.clone()),
            stage: Stage::Final,
            generation: 1,
        };
        let speaker = Speaker::new(answers.units, &catalog, answers);
        let leaves = leaves((&shown, &[]), &speaker, room);
        then(&shown, &speaker, &leaves);
    }
}

fn steps(shown: &Shown) -> Vec<&Step> {
    let strategy = strategy(shown);
    strategy
        .iter()
        .flat_map(|s| &s.setups)
        .flat_map(|s| &s.steps)
        .collect()
}

/// All sentences of a part of a step.
fn lines(leaves: &[Leaf], step: usize, part: Part) -> Vec<Line> {
    let own = leaves
        .iter()
        .filter(|leaf| leaf.spot.step == step && leaf.spot.part == part);
    let lines = own.flat_map(|leaf| match &leaf.body {
        Body::Lines(lines) | Body::After(lines) => lines.clone(),
        Body::Ticks(_) | Body::Numbers | Body::Values(_) => Vec::new(),
    });
    lines.collect()
}

#[test]
fn every_page_has_its_place_and_comes_once() {
    for room in [PHONE, DESK] {
        each(room, |shown, _, leaves| {
            let spots: Vec<Spot> = leaves.iter().map(|leaf| leaf.spot).collect();
            let mut sorted = spots.clone();
            sorted.sort();
            sorted.dedup();
            assert_eq!(spots, sorted);
            // A part's pages are counted whole.
            for leaf in leaves {
                let last = Spot {
                    page: leaf.pages - 1,
                    ..leaf.spot
                };
                let beyond = Spot {
                    page: leaf.pages,
                    ..leaf.spot
                };
                assert!(spots.contains(&last) && !spots.contains(&beyond));
            }
            let numbers = leaves.iter().filter(|l| l.body == Body::Numbers);
            assert_eq!(numbers.count(), steps(shown).len());
        });
    }
}

#[test]
fn the_cutter_is_told_and_its_change_exactly_where_it_changes() {
    each(PHONE, |shown, speaker, leaves| {
        let mut last = None;
        for (at, step) in steps(shown).into_iter().enumerate() {
            let said = lines(leaves, at, Part::Before);
            let cutters: Vec<&Line> = said.iter().filter(|l| l.about == About::Cutter).collect();
            let drilled = matches!(step.entry, Entry::Drilled { .. });
            assert_eq!(cutters.len(), 1 + usize::from(drilled));
            let (cutter, text) = (
                speaker.cutter(step.cutter),
                &cutters[cutters.len() - 1].text,
            );
            assert!(text.contains(&cutter), "{text}");
            let stays = last == Some(step.cutter) && !drilled;
            assert_eq!(text.starts_with("The cutter stays in"), stays, "{text}");
            if !stays {
                let out = speaker.length(thinwright_quantity::Length::from_si(
                    shown
                        .job
                        .rack
                        .iter()
                        .find(|c| c.row == step.cutter)
                        .unwrap()
                        .stick_out,
                ));
                assert!(text.contains(&out) && text.contains("height"), "{text}");
            }
            last = Some(step.cutter);
        }
    });
}

#[test]
fn every_caution_and_every_check_is_read() {
    each(PHONE, |shown, speaker, leaves| {
        let strategy = strategy(shown).unwrap();
        let said = |lines: Vec<Line>, id: &String| {
            let text = speaker.caution(id);
            lines
                .iter()
                .any(|l| l.about == About::Caution && l.text == text)
        };
        for id in &strategy.cautions {
            assert!(said(lines(leaves, 0, Part::Cautions), id), "{id}");
        }
        let mut skims = 0;
        for (at, step) in steps(shown).into_iter().enumerate() {
            for id in &step.cautions {
                assert!(said(lines(leaves, at, Part::Before), id), "{id}");
            }
            let stops = |part| {
                lines(leaves, at, part)
                    .into_iter()
                    .filter(|l| l.about == About::Stop)
            };
            skims += usize::from(step.task == TaskKind::FloorSkim);
            let hold = matches!(
                step.task,
                TaskKind::FloorSkim | TaskKind::SlotsThrough | TaskKind::OutlineFinish
            );
            assert_eq!(stops(Part::Before).count(), usize::from(hold));
            if step.task == TaskKind::FloorSkim {
                let both = stops(Part::After)
                    .any(|l| l.text.contains("centre") && l.text.contains("edge"));
                assert!(both);
            }
        }
        assert!(skims > 0);
        let boxes = |part: Part| {
            let own = leaves.iter().filter(move |leaf| leaf.spot.part == part);
            let boxes = own.map(|leaf| match &leaf.body {
                Body::Ticks(items) => items.len(),
                Body::Lines(_) | Body::Numbers | Body::Values(_) | Body::After(_) => 0,
            });
            boxes.sum::<usize>()
        };
        let setups = strategy.setups.len();
        assert_eq!(boxes(Part::Start), setups * before_start().len());
        assert_eq!(boxes(Part::Turned), (setups - 1) * after_turn_over().len());
    });
}

#[test]
fn the_finished_web_is_measured_once_it_is_there_and_again_at_the_end() {
    each(DESK, |shown, speaker, leaves| {
        let web = speaker.value(thinwright_quantity::Kind::Length, shown.job.part.web());
        let count = steps(shown).len();
        let measured: Vec<usize> = (0..count)
            .filter(|at| {
                let after = lines(leaves, *at, Part::After);
                after
                    .iter()
                    .any(|l| l.text.contains("Measure the web") && l.text.contains(&web))
            })
            .collect();
        assert_eq!(measured.len(), 1, "{measured:?}");
        let floors = steps(shown).into_iter().enumerate();
        let last = floors
            .filter(|(_, s)| s.task == TaskKind::FloorSkim)
            .map(|(at, _)| at)
            .max();
        assert_eq!(measured.first().copied(), last);
        let end = lines(leaves, count - 1, Part::After);
        assert!(
            end.iter()
                .any(|l| l.text.contains("After unclamping") && l.text.contains(&web))
        );
    });
}

#[test]
fn numbers_and_what_stands_beside_them_are_all_that_is_typed() {
    each(DESK, |shown, speaker, _| {
        for step in steps(shown) {
            let figures = speaker.figures(step);
            let typed = speaker.typed_values(step);
            for figure in &figures {
                let whole = format!("{}\u{A0}{}", figure.number, figure.unit);
                let same = |v: &&thinwright_words::TypedValue| {
                    v.symbol == figure.symbol && v.value == whole
                };
                assert!(typed.iter().any(|v| same(&v)), "{figure:?}");
            }
            let beside = speaker.beside_numbers(step);
            // Cutter and figures stand elsewhere; the rest is here, nothing twice.
            let rest = &typed[1 + figures.len()..];
            assert!(beside.starts_with(rest) && beside.len() <= rest.len() + 1);
            let four = ["n", "ae", "ap"];
            assert!(beside.iter().all(|v| !four.contains(&v.symbol)));
        }
    });
}

#[test]
fn what_was_run_here_is_read_before_it_is_run_again() {
    each(DESK, |shown, speaker, _| {
        let steps = steps(shown);
        let (task, method) = speaker.step_noted(steps[0]);
        let record = |note: &str, taken_back| Record {
            date: "2026-11-02".to_owned(),
            step: steps[0].number,
            task: task.clone(),
            method: method.clone(),
            outcome: Some(Ran::Held),
            values: vec![("n".to_owned(), "9000 rpm".to_owned())],
            note: note.to_owned(),
            taken_back,
            ..Record::default()
        };
        let records = [
            record("dull", false),
            record("sharp", false),
            record("wrong", true),
        ];
        let leaves = leaves((shown, &records), speaker, DESK);
        let said = lines(&leaves, 0, Part::Before);
        let said = said.iter().filter(|l| l.text.contains("2026-11-02"));
        let said: Vec<&str> = said.map(|l| l.text.as_str()).collect();
        assert_eq!(said.len(), 1);
        assert!(
            said[0].contains("sharp") && said[0].contains("9000 rpm"),
            "{said:?}"
        );
    });
}

#[test]
fn less_room_takes_more_pages() {
    let count = |room| {
        let total = std::cell::Cell::new(0);
        each(room, |_, _, leaves| total.set(total.get() + leaves.len()));
        total.get()
    };
    assert!(count(PHONE) > count(DESK));
}
