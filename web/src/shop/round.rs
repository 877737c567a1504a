//! The job in hand on its way into the shop, one keeping after the other: which is waiting, from which revision it was made,
//! and where it goes on when another stands in its place.

use std::collections::BTreeMap;
use thinwright_jobfile::shop::{Shop, Thing};

/// What is under way.
#[derive(Default)]
pub(super) struct Round {
    /// What the page has in hand, to be kept next.
    waiting: Option<Thing>,
    /// What the page had in hand last.
    hand: Option<Thing>,
    busy: bool,
    /// The revisions that this page knows, by id.
    known: BTreeMap<String, u32>,
    /// Jobs that go on under another id, one after the other.
    moved: Vec<(String, String)>,
    /// Jobs of which it was told that they were changed elsewhere.
    told: Vec<String>,
}

impl Round {
    /// The page has this in hand: the thing as it is to be kept, with the revision that it was made from. Nothing where it
    /// stands in the shop as it is. The page has heard of so many jobs that go on under another id.
    pub(super) fn take_up(&mut self, mut thing: Thing, shop: &Shop, heard: usize) -> Option<Thing> {
        for (from, to) in self.moved.iter().skip(heard) {
            if *from == thing.id {
                thing.id.clone_from(to);
            }
        }
        let there = shop.get(&thing.id);
        let there = there.filter(|there| there.content.same(&thing.content));
        if let Some(there) = there {
            self.known.insert(thing.id.clone(), there.revision);
        }
        thing.revision = self.revision(&thing.id);
        self.hand = Some(thing.clone());
        let idle = !self.busy && self.waiting.is_none();
        if there.is_some() && idle {
            return None;
        }
        self.waiting = Some(thing.clone());
        Some(thing)
    }

    fn revision(&self, id: &str) -> u32 {
        self.known.get(id).copied().unwrap_or(0)
    }

    /// What is to be kept now, unless a keeping is under way.
    pub(super) fn start(&mut self) -> Option<Thing> {
        if self.busy {
            return None;
        }
        let mut thing = self.waiting.take()?;
        thing.revision = self.revision(&thing.id);
        self.busy = true;
        Some(thing)
    }

    /// It was kept: what was asked, and what stands there now.
    pub(super) fn kept(&mut self, asked: &str, thing: &Thing) {
        self.busy = false;
        self.known.insert(thing.id.clone(), thing.revision);
        if asked != thing.id {
            self.moved.push((asked.to_owned(), thing.id.clone()));
            for held in [&mut self.waiting, &mut self.hand].into_iter().flatten() {
                if held.id == asked {
                    held.id.clone_from(&thing.id);
                }
            }
        }
        self.told.retain(|id| id != asked);
    }

    /// It was taken out: it is not kept again unless it comes into hand again.
    pub(super) fn forget(&mut self, id: &str) {
        self.waiting.take_if(|thing| thing.id == id);
        self.known.remove(id);
    }

    /// It was not kept: it waits for the next try, unless something newer does.
    pub(super) fn failed(&mut self, thing: Thing) {
        self.busy = false;
        self.waiting.get_or_insert(thing);
    }

    /// Whether what is there now has gone on elsewhere, and the person has not been told; told is told.
    pub(super) fn overtaken(&mut self, shop: &Shop) -> Option<String> {
        let hand = self.hand.as_ref()?;
        let there = shop.get(&hand.id)?;
        let newer = there.revision > self.revision(&hand.id);
        let differs = newer && !there.content.same(&hand.content);
        if !differs || self.told.contains(&hand.id) {
            return None;
        }
        self.told.push(hand.id.clone());
        Some(there.content.name().to_owned())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use thinwright_core::{Answers, Field};
    use thinwright_jobfile::JobFile;
    use thinwright_jobfile::shop::settle;
    use thinwright_quantity::UnitSystem;

    fn job(web: &str) -> Thing {
        let mut answers = Answers::new(UnitSystem::Metric);
        answers.set_text(Field::Name, "Plate");
        answers.set_text(Field::Web, web);
        Thing::new("a", "", JobFile::new("", answers).into())
    }

    /// Keeps what waits where `shop` is the store.
    fn keep(round: &mut Round, shop: &mut Shop, spare: &str) -> Option<Thing> {
        let mine = round.start()?;
        let there = shop.get(&mine.id).map(Thing::write);
        let settled = settle(there.as_deref(), &mine, spare, &[]);
        if settled.write {
            shop.put(settled.thing.clone());
        }
        round.kept(&mine.id, &settled.thing);
        Some(settled.thing)
    }

    #[test]
    fn one_window_counts_on() {
        let (mut round, mut shop) = (Round::default(), Shop::default());
        for (count, web) in ["1", "2", "3"].into_iter().enumerate() {
            assert!(round.take_up(job(web), &shop, 0).is_some());
            let kept = keep(&mut round, &mut shop, "s").unwrap();
            assert_eq!((kept.id.as_str(), kept.revision as usize), ("a", count + 1));
        }
        assert!(round.take_up(job("3"), &shop, 0).is_none());
        assert!(round.start().is_none());
    }

    #[test]
    fn what_comes_while_one_is_kept_is_kept_next() {
        let (mut round, shop) = (Round::default(), Shop::default());
        round.take_up(job("1"), &shop, 0);
        let first = round.start().unwrap();
        // Even where it is again as it stood in the shop.
        assert!(round.take_up(job("2"), &shop, 0).is_some());
        assert!(round.start().is_none());
        round.kept(
            "a",
            &Thing {
                revision: 1,
                ..first
            },
        );
        let second = round.start().unwrap();
        assert_eq!(
            (second.revision, second.content.same(&job("2").content)),
            (1, true)
        );
        round.failed(second.clone());
        assert_eq!(round.start(), Some(second));
    }

    #[test]
    fn two_windows_go_on_with_a_job_each() {
        let (mut one, mut two, mut shop) = (Round::default(), Round::default(), Shop::default());
        one.take_up(job("1"), &shop, 0);
        keep(&mut one, &mut shop, "s1");
        // The other window opens what is there.
        assert!(two.take_up(job("1"), &shop, 0).is_none());
        one.take_up(job("2"), &shop, 0);
        keep(&mut one, &mut shop, "s2");
        assert_eq!(two.overtaken(&shop).as_deref(), Some("Plate"));
        assert_eq!(two.overtaken(&shop), None);
        two.take_up(job("3"), &shop, 0);
        let beside = keep(&mut two, &mut shop, "s3").unwrap();
        assert_eq!(
            (beside.id.as_str(), beside.content.name()),
            ("s3", "Plate (2)")
        );
        // It goes on there, though its page may not have heard of the new id yet.
        two.take_up(job("4"), &shop, 0);
        assert_eq!(keep(&mut two, &mut shop, "s4").unwrap().id, "s3");
        one.take_up(job("5"), &shop, 0);
        assert_eq!(keep(&mut one, &mut shop, "s5").unwrap().revision, 3);
        assert_eq!(shop.things.len(), 2);
        assert_eq!(one.overtaken(&shop), None);
    }

    #[test]
    fn a_job_taken_back_into_hand_is_not_written_over_what_went_on() {
        let (mut round, mut shop) = (Round::default(), Shop::default());
        round.take_up(job("1"), &shop, 0);
        keep(&mut round, &mut shop, "s1");
        // Elsewhere it goes on, and the list here shows that.
        let elsewhere = Thing {
            revision: 2,
            ..job("2")
        };
        shop.put(elsewhere.clone());
        round.take_up(job("1.5"), &shop, 0);
        let kept = keep(&mut round, &mut shop, "s2").unwrap();
        assert_eq!(kept.id, "s2");
        assert_eq!(shop.get("a"), Some(&elsewhere));
        // Opened from the list, once the page knows where its own went on, it is changed in its place.
        assert!(round.take_up(job("2"), &shop, 1).is_none());
        round.take_up(job("2.5"), &shop, 1);
        assert_eq!(keep(&mut round, &mut shop, "s3").unwrap().revision, 3);
    }
}
