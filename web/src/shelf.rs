//! The browser's small store: texts under keys, taken at once. Tiny things live there, and drafts, and what earlier
//! versions kept. A text that cannot be read is put aside under a key of its own, never written over.

use crate::text;
use thinwright_jobfile::Store;

/// Where earlier versions kept everything.
const KEY: &str = "thinwright";
/// Where light or dark is kept.
pub(crate) const THEME_KEY: &str = "thinwright.theme";
/// Damaged stores that are kept aside at most.
const MOST_ASIDE: u32 = 20;

/// Texts under keys.
pub(crate) trait Shelf {
    /// The text at a key.
    fn get(&self, key: &str) -> Option<String>;
    /// Puts a text at a key; `false` when it was not taken.
    fn put(&self, key: &str, text: &str) -> bool;
    /// Takes a text away.
    fn take(&self, key: &str);
    /// The keys that begin so, in order.
    fn keys(&self, start: &str) -> Vec<String>;
}

/// What earlier versions kept, if it is still there; and something to tell. What cannot be read is put aside.
pub(crate) fn earlier(shelf: &impl Shelf) -> (Option<Store>, Option<String>) {
    let Some(kept) = shelf.get(KEY) else {
        return (None, None);
    };
    match Store::read(&kept) {
        Ok(store) => (Some(store), None),
        Err(damaged) => {
            let error = text::fault(&damaged.error);
            match put_aside(shelf, &damaged.text) {
                Some(key) => {
                    shelf.take(KEY);
                    (None, Some(text::kept_aside(&error, &key)))
                }
                None => (None, Some(text::not_kept_aside(&error))),
            }
        }
    }
}

/// What earlier versions kept stands in the shop by now.
pub(crate) fn taken_over(shelf: &impl Shelf) {
    shelf.take(KEY);
}

/// Copies a text to a key that is free, or that holds it already.
fn put_aside(shelf: &impl Shelf, text: &str) -> Option<String> {
    for number in 1..=MOST_ASIDE {
        let key = format!("{KEY}.damaged.{number}");
        match shelf.get(&key) {
            Some(there) if there == text => return Some(key),
            Some(_) => {}
            None => {
                return (shelf.put(&key, text) && shelf.get(&key).as_deref() == Some(text))
                    .then_some(key);
            }
        }
    }
    None
}

#[cfg(test)]
pub(crate) mod tests {
    use super::*;
    use std::cell::RefCell;
    use std::collections::BTreeMap;
    use thinwright_core::{Answers, Field, Known};
    use thinwright_jobfile::{JobFile, SavedMachine};
    use thinwright_quantity::UnitSystem;

    /// A shelf without a browser, and whether it is full.
    #[derive(Default)]
    pub(crate) struct Board(
        pub(crate) RefCell<BTreeMap<String, String>>,
        pub(crate) bool,
    );

    impl Shelf for Board {
        fn get(&self, key: &str) -> Option<String> {
            self.0.borrow().get(key).cloned()
        }
        fn put(&self, key: &str, text: &str) -> bool {
            let full = self.1;
            if !full {
                self.0.borrow_mut().insert(key.to_owned(), text.to_owned());
            }
            !full
        }
        fn take(&self, key: &str) {
            self.0.borrow_mut().remove(key);
        }
        fn keys(&self, start: &str) -> Vec<String> {
            let all = self.0.borrow();
            all.keys()
                .filter(|k| k.starts_with(start))
                .cloned()
                .collect()
        }
    }

    #[test]
    fn what_was_kept_comes_back_and_stays_until_it_is_taken_over() {
        let board = Board::default();
        let mut answers = Answers::new(UnitSystem::Inch);
        answers.set(Field::Thickness, " 1/4\"", Known::Measured);
        let store = Store {
            machines: vec![SavedMachine::of("mine", &answers)],
            job: JobFile::new("", answers),
        };
        board.put(KEY, &store.write());
        assert_eq!(earlier(&board), (Some(store.clone()), None));
        assert_eq!(earlier(&board), (Some(store), None));
        taken_over(&board);
        assert_eq!(earlier(&board), (None, None));
    }

    #[test]
    fn a_damaged_store_is_put_aside_and_reported() {
        let board = Board::default();
        let aside = |text: &str, number: u32| {
            board.put(KEY, text);
            let (store, news) = earlier(&board);
            assert!(store.is_none() && news.is_some());
            assert_eq!(board.get(KEY), None);
            let key = format!("{KEY}.damaged.{number}");
            assert_eq!(board.get(&key).as_deref(), Some(text));
        };
        aside("{broken", 1);
        aside("broken again", 2);
        // The same again takes no room.
        aside("{broken", 1);
        assert_eq!(board.keys("thinwright.damaged.").len(), 2);
    }

    #[test]
    fn what_cannot_be_put_aside_stays() {
        let there = BTreeMap::from([(KEY.to_owned(), "{broken".to_owned())]);
        let full = Board(RefCell::new(there), true);
        assert!(earlier(&full).1.is_some());
        assert_eq!(full.get(KEY).as_deref(), Some("{broken"));
    }
}
