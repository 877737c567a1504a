//! When it goes wrong, in words: everything that can be told is told, whole, and with its figures.
#![cfg(test)]

mod core_cases;

use core_cases::answers;
use thinwright_catalog::Catalog;
use thinwright_core::strategy::{Outcome, Step, Strategy};
use thinwright_core::trouble::{
    Act, Against, Cause, Group, Repeats, Said, Sign, Spot, advise, rank,
};
use thinwright_core::{Cache, Job, decide, read};
use thinwright_quantity::{Frequency, Length, UnitSystem};
use thinwright_words::Speaker;
use thinwright_words::trouble as words;

fn steps(strategy: &Strategy) -> Vec<&Step> {
    strategy.setups.iter().flat_map(|s| &s.steps).collect()
}

/// A sentence that is whole: no place left open, no figure that is none, and no double full stop.
fn whole(text: &str) {
    assert!(!text.trim().is_empty());
    for bad in ["{", "}", "NaN", "inf", "..", " .", ": ."] {
        assert!(!text.contains(bad), "{bad}: {text}");
    }
}

#[test]
fn names_are_there_and_tell_things_apart() {
    let mut signs: Vec<&str> = Sign::all().map(words::sign_name).collect();
    let mut causes: Vec<&str> = Cause::all().map(words::cause_name).collect();
    let mut acts: Vec<&str> = Cause::all()
        .filter_map(Cause::act)
        .map(words::act_name)
        .collect();
    signs
        .iter()
        .chain(&causes)
        .chain(&acts)
        .for_each(|text| whole(text));
    Cause::all().for_each(|cause| whole(words::cause_what(cause)));
    Group::ALL
        .into_iter()
        .for_each(|group| whole(words::sign_group(group)));
    Spot::ALL
        .into_iter()
        .for_each(|spot| whole(words::spot_name(spot)));
    Repeats::ALL
        .into_iter()
        .for_each(|repeats| whole(words::repeats_name(repeats)));
    for names in [&mut signs, &mut causes] {
        let count = names.len();
        names.sort_unstable();
        names.dedup();
        assert_eq!(names.len(), count);
    }
    acts.sort_unstable();
    acts.dedup();
    // Stress and clamps ask for the same, and so do heat and chips.
    assert_eq!(
        acts.len() + 2,
        Cause::all().filter(|c| c.act().is_some()).count()
    );
}

#[test]
fn everything_that_is_told_of_a_step_is_whole() {
    let catalog = Catalog::builtin();
    for id in ["mirror-back-plate", "grille-frame"] {
        let answers = answers(id, &[]);
        let job: Job = read(&answers, &catalog).unwrap();
        let Outcome::Feasible(strategy) = decide(&job) else {
            panic!("{id}")
        };
        let mut cache = Cache::default();
        let units = if id == "grille-frame" {
            UnitSystem::Inch
        } else {
            UnitSystem::Metric
        };
        let speaker = Speaker::new(units, &catalog, &answers);
        for (at, step) in steps(&strategy).into_iter().enumerate().step_by(2) {
            let said = Said {
                signs: Sign::all().map(|sign| (sign, 1.0)).collect(),
                spot: Some(Spot::ALL[at % Spot::ALL.len()]),
                repeats: Some(Repeats::ALL[at % Repeats::ALL.len()]),
                tone: Some(Frequency::from_si(1850.0)),
                tried: vec![(Cause::ToolSings, at % 4 == 0)],
            };
            let suspects = rank(&job, step, &said);
            assert_eq!(suspects.len(), Cause::all().count());
            for suspect in &suspects {
                whole(&speaker.share(suspect));
                whole(&speaker.decides(suspect.cause, step));
                suspect
                    .clues
                    .iter()
                    .for_each(|clue| whole(&speaker.clue(clue, step)));
                let against = Against {
                    tone: said.tone,
                    ..suspect.cause.into()
                };
                let advice = advise(&job, (&strategy, at), &against, &mut cache).unwrap();
                for change in advice.change.iter().chain(&advice.aside) {
                    whole(&speaker.moved(change));
                    whole(&speaker.not_taken(change));
                    let rows = speaker.moved_rows(change);
                    assert!(rows.len() >= 4);
                    rows.iter()
                        .for_each(|row| [&row.from, &row.to].into_iter().for_each(|t| whole(t)));
                    speaker
                        .moved_limits(change)
                        .iter()
                        .for_each(|line| whole(line));
                }
                speaker.divided(&advice).iter().for_each(|line| whole(line));
            }
        }
        whole(&speaker.act(Act::ClearChips, Some(Length::mm(3.0))));
    }
}
