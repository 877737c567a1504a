//! What is kept, in words.

use super::{plain_blanks, speak};
use crate::Speaker;
use thinwright_core::answers::Answers;
use thinwright_core::estimate::Known;
use thinwright_core::field::{Field, FieldId};
use thinwright_core::gain::{Gain, What};
use thinwright_core::pin::Place;
use thinwright_core::strategy::{Outcome, Refusal};
use thinwright_core::task::TaskKind;
use thinwright_quantity::{Duration, UnitSystem};

fn at_slots(field: Field) -> FieldId {
    FieldId::in_row(field, Place::Slots.row())
}

/// Answers with a cutter in the first row of the rack, and this kept.
fn keeping(kept: &[(FieldId, &str)], check: impl FnOnce(&Speaker<'_>)) {
    let fill = |answers: &mut Answers| {
        let diameter = FieldId::in_row(Field::CutterDiameter, 0);
        answers.set(diameter, "4", Known::DataSheet);
        for (id, text) in kept {
            answers.set(*id, *text, Known::Estimated);
        }
    };
    speak(UnitSystem::Metric, fill, check);
}

#[test]
fn a_kept_choice_is_told_with_its_place_and_value() {
    let told = [
        (
            at_slots(Field::PinCutter),
            "1",
            "Slots: cutter: 4 mm end mill",
        ),
        (
            at_slots(Field::PinSpeed),
            "12000",
            "Slots: spindle speed: 12 000 rpm",
        ),
        (
            at_slots(Field::PinSpeed),
            "fast",
            "Slots: spindle speed: fast",
        ),
        (Field::PinFirst.into(), "b", "Face cut first: face B"),
        (at_slots(Field::PinCutter), "0", "Slots: cutter: 0"),
    ];
    for (id, text, words) in told {
        keeping(&[(id, text)], |speaker| {
            assert_eq!(plain_blanks(&speaker.kept(id)), words);
        });
    }
}

#[test]
fn a_step_and_the_whole_job_say_what_is_kept_of_them() {
    let kept = [
        (at_slots(Field::PinCutter), "1"),
        (at_slots(Field::PinFeed), "500"),
        (at_slots(Field::PinStepover), " "),
        (Field::PinMostSpeed.into(), "12000"),
    ];
    keeping(&kept, |speaker| {
        let slots = speaker.kept_at(Place::Slots);
        assert_eq!(slots.as_deref(), Some("Kept by hand: cutter and feed."));
        assert_eq!(speaker.kept_at(Place::Bore), None);
        let job: Vec<String> = speaker
            .kept_of_job()
            .iter()
            .map(|k| plain_blanks(k))
            .collect();
        assert_eq!(job, ["No spindle speed above: 12 000 rpm"]);
    });
}

#[test]
fn letting_go_of_what_refuses_a_job_is_told_with_the_time_then() {
    let (guilty, other) = (at_slots(Field::PinSpeed), at_slots(Field::PinFeed));
    let gain = Gain {
        what: What::LetGo(guilty),
        time: Duration::s(3000.0),
        saved_s: 0.0,
        cleared: Vec::new(),
        turned: None,
    };
    let refusal = Outcome::Refused(Box::new(Refusal {
        task: TaskKind::SlotsThrough,
        tried: Vec::new(),
        conflict: Vec::new(),
        gains: vec![gain],
        changes: Vec::new(),
        orders: Vec::new(),
    }));
    keeping(&[(guilty, "100"), (other, "1")], |speaker| {
        let price = |id| plain_blanks(&speaker.price(id, &refusal));
        assert_eq!(price(guilty), "let go: possible, 50 min in all");
        assert!(price(other).contains("does not make the job possible"));
    });
}
