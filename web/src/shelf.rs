//! What is kept between visits. A text that cannot be read is put aside under a key of its own, never written over.

use crate::text;
use thinwright_jobfile::{JobFile, SavedMachine, Store};

/// Where the store is kept.
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
}

/// What was found at the start.
pub(crate) struct Found {
    pub(crate) job: Option<JobFile>,
    pub(crate) machines: Vec<SavedMachine>,
    /// Something to tell.
    pub(crate) news: Option<String>,
    /// Whether the key may be written to.
    pub(crate) writable: bool,
}

/// Reads what was kept.
pub(crate) fn fetch(shelf: &impl Shelf) -> Found {
    let nothing = |news, writable| Found {
        job: None,
        machines: Vec::new(),
        news,
        writable,
    };
    let Some(kept) = shelf.get(KEY) else {
        return nothing(None, true);
    };
    match Store::read(&kept) {
        Ok(store) => Found {
            job: Some(store.job),
            machines: store.machines,
            news: None,
            writable: true,
        },
        Err(damaged) => match put_aside(shelf, &damaged.text) {
            Some(key) => nothing(
                Some(text::kept_aside(&text::fault(&damaged.error), &key)),
                true,
            ),
            None => nothing(
                Some(text::not_kept_aside(&text::fault(&damaged.error))),
                false,
            ),
        },
    }
}

/// Keeps what there is; `false` when it was not taken.
pub(crate) fn keep(shelf: &impl Shelf, job: JobFile, machines: Vec<SavedMachine>) -> bool {
    shelf.put(KEY, &Store { job, machines }.write())
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
mod tests {
    use super::*;
    use std::cell::RefCell;
    use std::collections::BTreeMap;
    use thinwright_core::{Answers, Field, Known};
    use thinwright_quantity::UnitSystem;

    #[derive(Default)]
    struct Board(RefCell<BTreeMap<String, String>>, bool);

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
    }

    fn job() -> JobFile {
        let mut answers = Answers::new(UnitSystem::Inch);
        answers.set(Field::Thickness, " 1/4\"", Known::Measured);
        JobFile::new("", answers)
    }

    #[test]
    fn what_was_kept_comes_back() {
        let board = Board::default();
        let machine = SavedMachine::of("mine", &job().answers);
        assert!(keep(&board, job(), vec![machine.clone()]));
        let found = fetch(&board);
        assert_eq!(found.job, Some(job()));
        assert_eq!(found.machines, [machine]);
        assert!(found.news.is_none() && found.writable);
    }

    #[test]
    fn a_damaged_store_is_put_aside_and_reported() {
        let board = Board::default();
        board.put(KEY, "{broken");
        let found = fetch(&board);
        assert!(found.job.is_none() && found.news.is_some() && found.writable);
        assert_eq!(
            board.get("thinwright.damaged.1").as_deref(),
            Some("{broken")
        );
        keep(&board, job(), Vec::new());
        board.put(KEY, "broken again");
        fetch(&board);
        assert_eq!(
            board.get("thinwright.damaged.1").as_deref(),
            Some("{broken")
        );
        assert_eq!(
            board.get("thinwright.damaged.2").as_deref(),
            Some("broken again")
        );
        // The same again takes no room.
        fetch(&board);
        assert_eq!(board.get("thinwright.damaged.3"), None);
    }

    #[test]
    fn what_cannot_be_put_aside_is_not_written_over() {
        let full = Board(
            RefCell::new(BTreeMap::from([(KEY.to_owned(), "{broken".to_owned())])),
            true,
        );
        let found = fetch(&full);
        assert!(found.news.is_some() && !found.writable);
    }
}
