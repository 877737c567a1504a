//! The shop in the browser's small store, for browsers that give the page no database; and drafts: what was just typed,
//! until it is kept.

use crate::shelf::Shelf;
use thinwright_jobfile::shop::{Settled, TakenAway, Thing, settle, take_away};

/// Before the ids of things.
pub(super) const THING: &str = "thinwright.thing.";
/// Before the numbers of texts put aside.
pub(super) const ASIDE: &str = "thinwright.aside.";
/// Before the tab and the id of a draft.
const DRAFT: &str = "thinwright.draft.";
/// Where the job that a tab has in hand is named.
pub(super) const OPEN: &str = "thinwright.open";
/// Most texts put aside.
const MOST_ASIDE: u32 = 100;

/// All things and all that was put aside: key and text.
pub(super) fn all(shelf: &impl Shelf) -> Vec<(String, String)> {
    let text = |key: String, start: &str| {
        let text = shelf.get(&key)?;
        let id = key.strip_prefix(start).unwrap_or(&key).to_owned();
        Some((if start == THING { id } else { key }, text))
    };
    let of = |start: &'static str| {
        let keys = shelf.keys(start).into_iter();
        keys.filter_map(move |key| text(key, start))
    };
    of(THING).chain(of(ASIDE)).collect()
}

/// Keeps a thing; nothing when it was not taken.
pub(super) fn keep(
    shelf: &impl Shelf,
    mine: &Thing,
    spare: &str,
    taken: &[String],
) -> Option<Settled> {
    let there = shelf.get(&format!("{THING}{}", mine.id));
    let settled = settle(there.as_deref(), mine, spare, taken);
    if let Some(text) = &settled.aside
        && !put_aside(shelf, text)
    {
        return None;
    }
    let key = format!("{THING}{}", settled.thing.id);
    let kept = !settled.write || shelf.put(&key, &settled.thing.write());
    kept.then_some(settled)
}

fn put_aside(shelf: &impl Shelf, text: &str) -> bool {
    let keys = (1..=MOST_ASIDE).map(|number| format!("{ASIDE}{number}"));
    let mut free = keys.filter(|key| shelf.get(key).is_none());
    free.next().is_some_and(|key| shelf.put(&key, text))
}

/// Takes a thing out.
pub(super) fn out(shelf: &impl Shelf, known: &Thing) -> TakenAway {
    let key = format!("{THING}{}", known.id);
    let taken = take_away(shelf.get(&key).as_deref(), known);
    if taken == TakenAway::Out {
        shelf.take(&key);
    }
    taken
}

/// Takes out what cannot be read, if it is still the same.
pub(super) fn drop_unread(shelf: &impl Shelf, key: &str, text: &str) {
    for key in [format!("{THING}{key}"), key.to_owned()] {
        if shelf.get(&key).as_deref() == Some(text) {
            shelf.take(&key);
        }
    }
}

/// Where a tab has the draft of a job.
pub(super) fn draft_key(tab: &str, id: &str) -> String {
    format!("{DRAFT}{tab}.{id}")
}

/// The drafts that a tab takes over when it begins: those that it left itself, and those that are older than `old`, so
/// that no other tab can be about to keep them.
pub(super) fn drafts(shelf: &impl Shelf, tab: Option<&str>, old: &str) -> Vec<(String, String)> {
    let own = tab.map(|tab| draft_key(tab, ""));
    let mine = |key: &str| own.as_deref().is_some_and(|own| key.starts_with(own));
    let all = shelf.keys(DRAFT).into_iter();
    let all = all.filter_map(|key| shelf.get(&key).map(|text| (key, text)));
    all.filter(|(key, text)| {
        mine(key) || Thing::read(text).is_ok_and(|thing| *thing.changed < *old)
    })
    .collect()
}

/// What was asked for is kept: its draft goes. A draft of something newer stays, as made from what is kept now.
pub(super) fn draft_kept(shelf: &impl Shelf, tab: &str, asked: &Thing, kept: &Thing) {
    let key = draft_key(tab, &asked.id);
    let draft = shelf.get(&key).and_then(|text| Thing::read(&text).ok());
    shelf.take(&key);
    if let Some(draft) = draft.filter(|draft| !draft.content.same(&asked.content)) {
        let draft = Thing {
            id: kept.id.clone(),
            revision: kept.revision,
            ..draft
        };
        shelf.put(&draft_key(tab, &kept.id), &draft.write());
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::shelf::tests::Board;
    use thinwright_core::{Answers, Field};
    use thinwright_jobfile::JobFile;
    use thinwright_jobfile::shop::{Shop, Told};
    use thinwright_quantity::UnitSystem;

    fn job(id: &str, web: &str, changed: &str) -> Thing {
        let mut answers = Answers::new(UnitSystem::Metric);
        answers.set_text(Field::Name, "Plate");
        answers.set_text(Field::Web, web);
        Thing::new(id, changed, JobFile::new("", answers).into())
    }

    #[test]
    fn kept_in_the_small_store_and_taken_out() {
        let board = Board::default();
        let first = keep(&board, &job("a", "3", "1"), "s", &[]).unwrap();
        board.put("thinwright.thing.b", "{broken");
        let mine = Thing {
            id: "b".to_owned(),
            ..job("b", "4", "2")
        };
        let second = keep(&board, &mine, "s", &[]).unwrap();
        assert!(matches!(second.told, Told::Aside(_)));
        let shop = Shop::sort(all(&board));
        assert_eq!((shop.things.len(), shop.unread.len()), (2, 1));
        assert_eq!(shop.unread[0].text, "{broken");
        drop_unread(&board, &shop.unread[0].key, &shop.unread[0].text);
        assert_eq!(out(&board, &first.thing), TakenAway::Out);
        assert_eq!(out(&board, &first.thing), TakenAway::Gone);
        assert_eq!(all(&board).len(), 1);
    }

    #[test]
    fn what_a_full_store_does_not_take_is_said() {
        let full = Board(Default::default(), true);
        assert!(keep(&full, &job("a", "3", "1"), "s", &[]).is_none());
        let there =
            std::collections::BTreeMap::from([("thinwright.thing.a".to_owned(), "{".to_owned())]);
        let full = Board(std::cell::RefCell::new(there), true);
        assert!(keep(&full, &job("a", "3", "1"), "s", &[]).is_none());
        assert_eq!(full.get("thinwright.thing.a").as_deref(), Some("{"));
    }

    #[test]
    fn a_draft_goes_when_it_is_kept_and_a_newer_one_follows() {
        let board = Board::default();
        let (asked, newer) = (job("a", "3", "1"), job("a", "4", "2"));
        let kept = Thing {
            revision: 7,
            ..asked.copied("b", None)
        };
        board.put(&draft_key("t", "a"), &asked.write());
        draft_kept(&board, "t", &asked, &kept);
        assert!(board.0.borrow().is_empty());
        board.put(&draft_key("t", "a"), &newer.write());
        draft_kept(&board, "t", &asked, &kept);
        let found = drafts(&board, Some("t"), "0");
        let draft = Thing::read(&found[0].1).unwrap();
        assert_eq!(
            (found.len(), draft.id.as_str(), draft.revision),
            (1, "b", 7)
        );
        assert!(draft.content.same(&newer.content));
    }

    #[test]
    fn drafts_of_other_tabs_are_left_while_they_are_fresh() {
        let board = Board::default();
        for (tab, id, changed) in [("t", "a", "9"), ("u", "b", "9"), ("u", "c", "1")] {
            board.put(&draft_key(tab, id), &job(id, "3", changed).write());
        }
        board.put(&draft_key("u", "d"), "{broken");
        let keys = |tab| {
            let found = drafts(&board, tab, "5").into_iter();
            found.map(|(key, _)| key).collect::<Vec<_>>()
        };
        let (own, old) = (draft_key("t", "a"), draft_key("u", "c"));
        assert_eq!(keys(Some("t")), [own, old.clone()]);
        assert_eq!(keys(None), [old]);
    }
}
