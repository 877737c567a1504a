//! The shop: what the store tells, jobs opened, own things used.

use super::*;
use crate::state::{Difference, ShopNews};
use thinwright_core::field::Group;
use thinwright_core::pin::Place;
use thinwright_jobfile::shop::{Content, Own};

fn put(state: &mut State, id: &str, content: Content) -> Thing {
    let thing = Thing {
        revision: 1,
        ..Thing::new(id, "2026", content)
    };
    state.apply(Action::Shop(ShopNews::Put(Box::new(thing.clone()))));
    thing
}

fn own(state: &State, kind: Kind, name: &str) -> Content {
    Content::Own(Own::of(kind, name, &state.answers).unwrap())
}

#[test]
fn a_machine_of_ones_own_comes_back_in_either_unit() {
    let mut state = sample();
    state.apply(Action::Type(Field::FeedReliable.into(), "700".to_owned()));
    let machine = own(&state, Kind::Machine, "The router");
    put(&mut state, "m", machine);
    state.apply(Action::Type(Field::FeedReliable.into(), "300".to_owned()));
    state.apply(Action::Units(UnitSystem::Inch));
    state.apply(Action::UseOwn("m".to_owned()));
    let feed = state.job.as_ref().unwrap().machine.feed;
    assert!((feed - 0.7 / 60.0).abs() < 1.0e-12, "{feed}");
    state.apply(Action::Undo);
    let feed = state.job.as_ref().unwrap().machine.feed;
    assert!((feed - 0.3 / 60.0).abs() < 1.0e-12, "{feed}");
}

#[test]
fn another_rack_lets_go_of_what_was_pinned_to_the_one_before() {
    let mut state = sample();
    let rack = own(&state, Kind::Rack, "Drawer");
    put(&mut state, "r", rack);
    let rows = state.answers.rack_rows();
    let pin = FieldId::in_row(Field::PinCutter, Place::Slots.row());
    state.apply(Action::Keep(vec![(pin, "1".to_owned())]));
    state.apply(Action::CopyCutter(0));
    state.apply(Action::UseOwn("r".to_owned()));
    assert_eq!(state.answers.rack_rows(), rows);
    assert_eq!(state.answers.text(pin), "");
    let told = &state.messages.last().unwrap().text;
    assert!(
        told.contains("Drawer") && told.contains("Slots: cutter"),
        "{told}"
    );
}

#[test]
fn a_new_job_is_another_part_on_the_same_machine() {
    let mut state = sample();
    let (before, id) = (state.file(), state.id.clone());
    state.apply(Action::NewJob);
    assert!(state.id != id && state.records.is_empty() && state.title.is_empty());
    for (id, answer) in before.answers.iter() {
        let part = matches!(
            id.field.spec().group,
            Group::Part | Group::Pins | Group::StepPins
        );
        let now = state.answers.text(*id);
        assert_eq!(now, if part { "" } else { answer.text.as_str() });
    }
    assert_eq!(state.undoable(), Some(Difference::Job));
    state.apply(Action::Undo);
    assert_eq!((state.file(), &state.id), (before, &id));
}

#[test]
fn a_job_that_went_on_elsewhere_goes_on_here_under_its_new_id_and_name() {
    let mut state = sample();
    let (id, first) = (state.id.clone(), state.file());
    state.apply(Action::Type(Field::Web.into(), "3.1".to_owned()));
    let name = format!("{} (2)", first.name());
    let content = Content::from(state.file()).renamed(name.clone());
    let thing = Thing::new("t-2", "2026", content);
    state.apply(Action::Shop(ShopNews::Settled(id, Box::new(thing))));
    assert_eq!(
        (&*state.id, state.file().name(), state.moves),
        ("t-2", name.as_str(), 1)
    );
    // What was taken back then belongs to it, too.
    state.apply(Action::Undo);
    assert_eq!((&*state.id, state.file().name()), ("t-2", name.as_str()));
    assert_eq!(
        state.answers.text(Field::Web.into()),
        first.answers.text(Field::Web.into())
    );
    assert_eq!(state.undoable(), None);
}

#[test]
fn the_job_in_hand_that_is_deleted_makes_room_and_comes_back() {
    let mut state = sample();
    state.apply(Action::Type(Field::Web.into(), "3.1".to_owned()));
    let (mine, id) = (state.file(), state.id.clone());
    let other = put(
        &mut state,
        "other",
        thinwright_jobfile::samples()[1].job().into(),
    );
    let thing = put(&mut state, &id, mine.clone().into());
    state.apply(Action::Shop(ShopNews::Gone(Box::new(thing.clone()))));
    assert_eq!(*state.id, *other.id);
    assert!(state.stock.shop.get(&id).is_none());
    assert_eq!(state.stock.gone, std::slice::from_ref(&thing));
    state.apply(Action::Undo);
    assert_eq!((state.file(), &state.id), (mine, &id));
    // Once it is kept again, there is nothing to put back.
    state.apply(Action::Shop(ShopNews::Put(Box::new(thing))));
    assert!(state.stock.gone.is_empty());
}

#[test]
fn what_is_replaced_can_be_put_back_and_what_is_renamed_is_not_replaced() {
    let mut state = sample();
    let first = own(&state, Kind::Machine, "Router");
    let first = put(&mut state, "m", first);
    put(&mut state, "m", first.content.renamed("The router"));
    assert!(state.stock.gone.is_empty());
    state.apply(Action::Type(Field::FeedReliable.into(), "701".to_owned()));
    let second = own(&state, Kind::Machine, "The router");
    put(&mut state, "m", second);
    assert_eq!(
        state.stock.gone[0].content,
        first.content.renamed("The router")
    );
}

#[test]
fn a_file_that_the_shop_has_is_that_job() {
    let mut state = sample();
    let job = thinwright_jobfile::samples()[1].job();
    put(&mut state, "other", job.clone().into());
    state.apply(Action::Load(Box::new(job)));
    assert_eq!(&*state.id, "other");
    let mut changed = state.file();
    changed.answers.set_text(Field::Web, "9");
    state.apply(Action::Load(Box::new(changed)));
    assert_ne!(&*state.id, "other");
    state.apply(Action::Name("Nine".to_owned()));
    assert_eq!(state.file().name(), "Nine");
    state.apply(Action::OpenJob("other".to_owned()));
    assert_eq!(&*state.id, "other");
}
