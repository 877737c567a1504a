//! Comparisons of real strategies.

use super::*;
use crate::state::Stage;
use std::rc::Rc;
use thinwright_core::{Answers, Field, advise, read};
use thinwright_jobfile::samples;

fn shown(catalog: &Catalog, change: impl FnOnce(&mut Answers)) -> Shown {
    let mut answers = samples()[0].job().answers;
    change(&mut answers);
    let job = read(&answers, catalog).unwrap();
    let outcome = Rc::new(advise(&job));
    Shown {
        answers: Rc::new(answers),
        job: Rc::new(job),
        outcome,
        stage: Stage::Whole,
        generation: 0,
    }
}

#[test]
fn a_thinner_web_is_told_with_both_stiffnesses() {
    let catalog = Catalog::builtin();
    let thick = shown(&catalog, |a| a.set_text(Field::Web, "5"));
    let thin = shown(&catalog, |a| a.set_text(Field::Web, "3"));
    let lines = changed(&catalog, &thick, &thin, UnitSystem::Metric);
    let (what, how) = &lines[0];
    assert_eq!(what, "Web thickness");
    assert_eq!(how.replace('\u{A0}', " "), "3 mm; before: 5 mm");
    for line in [text::web_stiffness(), text::web_stiffness_alone()] {
        let stiffness = lines.iter().find(|(what, _)| what == line);
        let (_, how) = stiffness.unwrap();
        assert_eq!(how.matches("N/µm").count(), 2, "{how}");
    }
}

#[test]
fn the_same_strategy_has_no_changes() {
    let catalog = Catalog::builtin();
    let one = shown(&catalog, |_| {});
    assert!(changed(&catalog, &one, &one.clone(), UnitSystem::Inch).is_empty());
}
