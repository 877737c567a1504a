//! The shop without a store: what is kept, what stands beside what, what is told.

use super::*;
use crate::error::Wanted;
use crate::{JobFile, Record, SavedMachine, Store, samples};
use std::collections::BTreeMap;
use thinwright_core::answers::Answers;
use thinwright_core::estimate::Known;
use thinwright_core::field::{Field, FieldId};
use thinwright_quantity::UnitSystem;

const NOW: &str = "2026-11-26T02:30:00Z";

fn job(name: &str, web: &str) -> Content {
    let mut answers = Answers::new(UnitSystem::Metric);
    answers.set(Field::Name, name, Known::Estimated);
    answers.set(Field::Web, web, Known::Measured);
    let mut file = JobFile::new("", answers);
    file.records.push(Record::default());
    file.into()
}

fn own(kind: Kind, name: &str) -> Content {
    Content::Own(Own::of(kind, name, &crate::tests::full()).unwrap())
}

fn thing(id: &str, revision: u32, content: Content) -> Thing {
    Thing {
        revision,
        ..Thing::new(id, NOW, content)
    }
}

fn every_kind() -> Vec<Thing> {
    let of = |kind: Kind| match kind {
        Kind::Job => job("Plate", "3"),
        kind => own(kind, " Mine \u{201C}1\u{201D} "),
    };
    let each = Kind::ALL.iter().enumerate();
    each.map(|(at, kind)| thing(&format!("t-{at}"), 7, of(*kind)))
        .collect()
}

/// Ids that nothing has, one after the other.
fn fresh() -> impl FnMut() -> String {
    let mut last = 0;
    move || {
        last += 1;
        format!("new-{last}")
    }
}

#[test]
fn every_kind_comes_back_as_it_was() {
    for thing in every_kind() {
        let text = thing.write();
        assert_eq!(
            Thing::read_at(&thing.id, &text),
            Ok(thing.clone()),
            "{text}"
        );
        assert!(Thing::read_at("other", &text).is_err());
    }
    let all = every_kind();
    let file = ShopFile::read(ShopFile::write(&all).as_bytes()).unwrap();
    assert_eq!((file.things, file.left.len()), (all, 0));
}

#[test]
fn no_half_of_a_text_is_taken_for_a_whole() {
    for thing in every_kind() {
        let text = thing.write();
        let ends = text.char_indices().map(|(at, _)| at);
        for end in ends.take_while(|at| *at + 1 < text.len()) {
            assert!(Thing::read(&text[..end]).is_err(), "{}", &text[..end]);
        }
    }
}

#[test]
fn a_damaged_entry_of_a_file_leaves_the_others() {
    let text = ShopFile::write(&every_kind());
    let spoilt = text.replacen("\"revision\":7", "\"revision\":-7", 1);
    assert_ne!(spoilt, text);
    let file = ShopFile::read(spoilt.as_bytes()).unwrap();
    assert_eq!(file.things.len(), every_kind().len() - 1);
    assert_eq!(file.left[0].place, "things.1");
    assert!(matches!(&file.left[0].error, JobFileError::Not { place, .. } if place == "revision"));
    let strange = ShopFile::read(b"{\"thinwright_shop\": 2, \"things\": []}");
    assert!(matches!(strange, Err(JobFileError::Newer { .. })));
    assert!(ShopFile::read(b"{\"thinwright_shop\": 1}").is_err());
    assert!(ShopFile::read(b"[]").is_err());
}

#[test]
fn a_job_file_alone_is_one_thing() {
    let sample = samples()[0];
    let file = ShopFile::read(sample.text.as_bytes()).unwrap();
    assert!(file.things[0].content.same(&sample.job().into()));
    let broken = sample.text.replacen("\"units\"", "\"unit\"", 1);
    assert!(ShopFile::read(broken.as_bytes()).is_err());
}

#[test]
fn a_thing_names_its_fault() {
    let good = own(Kind::Material, "Mine");
    let text = thing("a", 1, good).write();
    let cases = [
        ("\"thinwright_thing\": 1", "\"thinwright_thing\": 2"),
        ("\"id\": \"a\"", "\"id\": \"A b\""),
        ("\"kind\": \"material\"", "\"kind\": \"lathe\""),
        ("\"kind\": \"material\"", "\"kind\": \"machine\""),
        ("\"revision\": 1", "\"revision\": 1.5"),
        ("\"own\"", "\"owner\""),
    ];
    for (from, to) in cases {
        let spoilt = text.replacen(from, to, 1);
        assert_ne!(spoilt, text, "{from}");
        assert!(Thing::read(&spoilt).is_err(), "{to}");
    }
}

#[test]
fn kept_where_nothing_or_the_same_revision_stands() {
    let mine = thing("a", 0, job("Plate", "3"));
    let first = settle(None, &mine, "spare", &[]);
    assert!(first.write && first.told == Told::Kept && first.thing.revision == 1);
    let mut changed = first.thing.clone();
    changed.content = job("Plate", "3.5");
    let second = settle(Some(&first.thing.write()), &changed, "spare", &[]);
    assert_eq!((second.told, second.thing.revision), (Told::Kept, 2));
    // Taken out elsewhere meanwhile: what is in hand is not lost.
    let again = settle(None, &second.thing, "spare", &[]);
    assert_eq!((again.told, again.thing.revision), (Told::Again, 3));
}

#[test]
fn two_who_change_the_same_are_both_kept() {
    let start = thing("a", 4, job("Plate", "3"));
    let (mut one, mut two) = (start.clone(), start.clone());
    one.content = job("Plate", "3.5");
    two.content = job("Plate", "2.5");
    let first = settle(Some(&start.write()), &one, "spare-1", &[]);
    let second = settle(
        Some(&first.thing.write()),
        &two,
        "spare-2",
        &["Plate (2)".to_owned()],
    );
    assert_eq!(second.thing.id, "spare-2");
    let name = "Plate (3)".to_owned();
    assert_eq!(second.thing.content.name(), name);
    assert_eq!(second.told, Told::Both { name });
    // Who has found the same by themselves takes over its revision.
    let same = settle(
        Some(&first.thing.write()),
        &thing("a", 1, one.content),
        "spare",
        &[],
    );
    assert_eq!(
        (same.told, same.write, same.thing.revision),
        (Told::Same, false, 5)
    );
}

#[test]
fn what_cannot_be_read_is_put_aside_and_what_is_newer_is_left() {
    let mine = thing("a", 3, job("Plate", "3"));
    let damaged = settle(Some("{broken"), &mine, "spare", &[]);
    assert_eq!(damaged.aside.as_deref(), Some("{broken"));
    assert!(damaged.write && damaged.thing.id == "a" && damaged.thing.revision == 4);
    let newer = mine
        .write()
        .replacen("\"thinwright_thing\": 1", "\"thinwright_thing\": 9", 1);
    let beside = settle(Some(&newer), &mine, "spare", &[]);
    assert!(beside.aside.is_none() && beside.thing.id == "spare");
    assert!(matches!(beside.told, Told::Newer(_)));
    let within = mine
        .write()
        .replacen("\"thinwright_job\": 2", "\"thinwright_job\": 99", 1);
    assert_ne!(within, mine.write());
    assert!(matches!(
        settle(Some(&within), &mine, "spare", &[]).told,
        Told::Newer(_)
    ));
}

#[test]
fn only_what_is_known_is_taken_out() {
    let mine = thing("a", 3, own(Kind::Rack, "Mine"));
    assert_eq!(take_away(Some(&mine.write()), &mine), TakenAway::Out);
    assert_eq!(take_away(None, &mine), TakenAway::Gone);
    let other = thing("a", 4, own(Kind::Rack, "Yours"));
    assert_eq!(take_away(Some(&other.write()), &mine), TakenAway::Left);
    assert_eq!(take_away(Some("{"), &mine), TakenAway::Left);
}

/// Two windows that change, keep and take out in turns drawn by lot: whatever was ever kept is there in the end, unless it
/// was taken out or changed by somebody who had it in hand.
#[test]
fn nothing_is_lost_between_two_windows() {
    let mut lot = 1_u64;
    let mut draw = move |of: u64| {
        lot = lot
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (lot >> 33) % of
    };
    for round in 0..200 {
        let mut store: BTreeMap<String, String> = BTreeMap::new();
        let start = settle(None, &thing("a", 0, job("Plate", "0")), "x", &[]).thing;
        store.insert("a".to_owned(), start.write());
        let mut windows = [start.clone(), start];
        for turn in 0..12 {
            let at = usize::try_from(draw(2)).unwrap();
            let before = store.clone();
            windows[at].content = job("Plate", &format!("{round}-{turn}"));
            let mine = &windows[at];
            let there = store.get(&mine.id).cloned();
            let settled = settle(there.as_deref(), mine, &format!("s-{turn}"), &[]);
            if settled.write {
                store.insert(settled.thing.id.clone(), settled.thing.write());
            }
            // What it replaced is what this window had kept there itself.
            for (id, text) in before {
                if store[&id] != text {
                    assert_eq!(Thing::read(&text).unwrap().revision, mine.revision);
                }
            }
            let kept = Thing::read(&store[&settled.thing.id]).unwrap();
            assert_eq!(kept.content.name(), settled.thing.content.name());
            windows[at] = settled.thing;
        }
        assert!(
            store.len() <= 2,
            "each window keeps one job from its first change on"
        );
    }
}

#[test]
fn merging_twice_is_merging_once() {
    let all = every_kind();
    let first = merge(&[], all.clone(), fresh());
    assert_eq!(first.put.len(), all.len());
    let second = merge(&first.put, all.clone(), fresh());
    assert_eq!((second.put.len(), second.same), (0, all.len()));
}

#[test]
fn the_same_name_with_other_content_stands_beside() {
    let there = [thing("a", 1, job("Plate", "3"))];
    let come = vec![
        thing("a", 9, job("Plate", "4")),
        thing("b", 9, job("Plate", "3")),
    ];
    let merged = merge(&there, come, fresh());
    assert_eq!((merged.put.len(), merged.same), (1, 1));
    assert_eq!(
        merged.renamed,
        [("Plate".to_owned(), "Plate (2)".to_owned())]
    );
    assert_eq!(
        (merged.put[0].id.as_str(), merged.put[0].revision),
        ("new-1", 0)
    );
    // Names of another kind are no matter.
    let machine = thing("m", 1, own(Kind::Machine, "Plate"));
    assert!(merge(&there, vec![machine], fresh()).renamed.is_empty());
}

#[test]
fn names_count_on() {
    let taken = |names: &[&str]| names.iter().map(|n| (*n).to_owned()).collect::<Vec<_>>();
    assert_eq!(free_name("A", &taken(&["B"])), "A");
    assert_eq!(free_name("A", &taken(&["A", "A (2)", "A (4)"])), "A (3)");
    assert_eq!(free_name("A (2)", &taken(&["A (2)"])), "A (3)");
    assert_eq!(free_name("A (x)", &taken(&["A (x)"])), "A (x) (2)");
    let most = format!("A ({})", u32::MAX);
    assert_ne!(free_name(&most, std::slice::from_ref(&most)), "");
}

#[test]
fn the_store_of_before_becomes_things() {
    let answers = crate::tests::full();
    let store = Store {
        job: JobFile::new("T", answers.clone()),
        machines: vec![SavedMachine::of("Router", &answers)],
    };
    let read = Store::read(&store.write()).unwrap();
    let things = from_store(read, NOW, fresh());
    assert!(things[0].content.same(&store.job.into()));
    let router = Own::of(Kind::Machine, "Router", &answers).unwrap();
    assert!(things[1].content.same(&Content::Own(router)));
}

#[test]
fn own_things_replace_their_group_and_nothing_else() {
    let full = crate::tests::full();
    let mut empty = Answers::new(UnitSystem::Inch);
    empty.set(Field::PinCutter, "1", Known::Estimated);
    for kind in &Kind::ALL[1..] {
        let own = Own::of(*kind, "x", &full).unwrap();
        let mut answers = full.clone();
        answers.set(Field::Name, "kept", Known::Estimated);
        assert!(own.put_into(&mut answers));
        let mut bare = empty.clone();
        bare.set(Field::Name, "kept", Known::Estimated);
        bare.set(
            FieldId::in_row(Field::CutterDiameter, 5),
            "9",
            Known::Estimated,
        );
        bare.set(Field::Power, "9", Known::Estimated);
        assert!(own.put_into(&mut bare));
        for (id, answer) in full.iter().filter(|(id, _)| kind.holds(id.field)) {
            assert_eq!(bare.text(*id), answer.text);
        }
        assert_eq!(bare.text(Field::Name.into()), "kept");
        let gone = FieldId::in_row(Field::CutterDiameter, 5);
        assert_eq!(bare.text(gone).is_empty(), *kind == Kind::Rack);
        let mut metric = Answers::new(UnitSystem::Metric);
        assert!(!own.put_into(&mut metric) && metric.iter().next().is_none());
    }
}

#[test]
fn a_store_is_sorted_into_what_can_be_read_and_what_cannot() {
    let mut older = thing("j-1", 1, job("Old", "1"));
    older.changed = "2025".to_owned();
    let newer = thing("j-2", 1, job("New", "1"));
    let texts = [
        ("x".to_owned(), newer.write()),
        ("j-1".to_owned(), older.write()),
        ("j-2".to_owned(), newer.write()),
        ("y".to_owned(), String::new()),
    ];
    let shop = Shop::sort(texts);
    assert_eq!(shop.names(Kind::Job), ["New", "Old"]);
    let unread: Vec<&str> = shop.unread.iter().map(|u| u.key.as_str()).collect();
    assert_eq!(unread, ["x", "y"]);
    let elsewhere = JobFileError::Not {
        place: "id".to_owned(),
        wanted: Wanted::KnownName,
    };
    assert_eq!(shop.unread[0].error, elsewhere);
}
