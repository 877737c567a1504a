//! The person's shop as the page knows it, and what comes of it: a job opened, something of one's own used.

use super::keep::pins;
use super::{Message, State};
use crate::text::shop as text;
use crate::units::restate;
use std::rc::Rc;
use thinwright_core::field::Group;
use thinwright_core::{Answers, FieldId};
use thinwright_jobfile::shop::{Content, Kind, Shop, Thing};
use thinwright_jobfile::{JobFile, samples};
use thinwright_words::Speaker;

/// Where the shop is kept.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) enum Where {
    /// In the browser's database.
    Database,
    /// In its small store.
    Small,
    /// Nowhere.
    #[default]
    Nowhere,
}

/// What the browser has said when it was asked to keep the shop even when it runs short of room.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) enum Lasting {
    /// It was not asked yet, or has not answered.
    #[default]
    NotAsked,
    Promised,
    Refused,
}

/// The shop, and what is known of where it is kept.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Stock {
    pub(crate) shop: Shop,
    pub(crate) place: Where,
    pub(crate) lasting: Lasting,
    /// What was taken out or replaced in this visit, the latest last.
    pub(crate) gone: Vec<Thing>,
}

/// What the store tells.
pub(crate) enum ShopNews {
    /// Everything that is there.
    All(Box<Shop>),
    /// A thing was kept.
    Put(Box<Thing>),
    /// The job in hand was kept: the id that was asked for, and the thing as it stands there now.
    Settled(Rc<str>, Box<Thing>),
    /// A thing was taken out.
    Gone(Box<Thing>),
    /// What the browser says of keeping.
    Lasting(bool),
}

impl State {
    /// The page begins with this shop, and with the job in hand under an id.
    pub(crate) fn begin(&mut self, stock: Stock, id: Option<&str>, seed: u64) {
        self.stock = Rc::new(stock);
        self.seed = seed;
        self.id = id.map_or_else(|| self.fresh_id(), Into::into);
    }

    /// Takes in what the store tells. None of it is a change that the person has made, except that a job which was in hand
    /// and is taken out makes room for another.
    pub(super) fn hear_shop(&mut self, news: ShopNews) {
        let mut stock = (*self.stock).clone();
        let mut gone = None;
        match news {
            ShopNews::All(shop) => stock.shop = *shop,
            ShopNews::Lasting(true) => stock.lasting = Lasting::Promised,
            ShopNews::Lasting(false) => stock.lasting = Lasting::Refused,
            ShopNews::Put(thing) => {
                stock.gone.retain(|g| !g.content.same(&thing.content));
                let before = stock.shop.take(&thing.id);
                let bare = |thing: &Thing| thing.content.renamed("");
                stock
                    .gone
                    .extend(before.filter(|before| !bare(before).same(&bare(&thing))));
                stock.shop.put(*thing);
            }
            ShopNews::Settled(asked, thing) => {
                if *asked != *thing.id {
                    self.moves += 1;
                    let name = thing.content.name().to_owned();
                    self.renumber(&asked, &thing.id.as_str().into(), &name);
                }
                stock.shop.put(*thing);
            }
            ShopNews::Gone(thing) => {
                stock.shop.take(&thing.id);
                gone = Some(thing.id.clone());
                stock.gone.push(*thing);
            }
        }
        self.stock = Rc::new(stock);
        if gone.as_deref() == Some(&*self.id) {
            self.open_another();
        }
    }

    /// What a page opens with when the job in hand is gone: the job that was changed last, or a sample.
    fn open_another(&mut self) {
        let before = self.moment();
        let latest = self.stock.shop.of(Kind::Job).next();
        match latest.map(|thing| thing.id.clone()) {
            Some(id) => self.open_job(&id),
            None => {
                let id = self.fresh_id();
                self.take_in_hand(samples()[0].job(), id);
            }
        }
        self.note(before, None);
    }

    /// Opens a job of the shop.
    pub(super) fn open_job(&mut self, id: &str) {
        if let Some(Content::Job(job)) = self.stock.shop.get(id).map(|t| &t.content) {
            let job = (**job).clone();
            self.take_in_hand(job, id.into());
        }
    }

    pub(super) fn take_in_hand(&mut self, job: JobFile, id: Rc<str>) {
        self.title = job.title;
        self.records = Rc::new(job.records);
        self.confirmed = Rc::new(job.confirmed);
        self.answers = Rc::new(job.answers);
        self.id = id;
        self.forget_shown();
        self.reread();
    }

    /// A new job: another part, on the same machine, of the same material, with the same cutters, held alike.
    pub(super) fn new_job(&mut self) {
        let mut answers = Answers::new(self.answers.units);
        let of_the_part = |id: &FieldId| {
            matches!(
                id.field.spec().group,
                Group::Part | Group::Pins | Group::StepPins
            )
        };
        for (id, answer) in self.answers.iter().filter(|(id, _)| !of_the_part(id)) {
            answers.set(*id, answer.text.clone(), answer.known);
        }
        let id = self.fresh_id();
        self.take_in_hand(JobFile::new("", answers), id);
    }

    /// Puts something of one's own in place of what the answers say of its kind.
    pub(super) fn use_own(&mut self, id: &str) {
        let Some(Content::Own(own)) = self.stock.shop.get(id).map(|t| t.content.clone()) else {
            return;
        };
        let units = self.answers.units;
        let own = own.restated(|answers| restate(answers, units));
        let before: Vec<FieldId> = pins(&self.answers).map(|(id, _)| id).collect();
        let speaker = Speaker::new(units, &self.catalog, &self.answers);
        let places: Vec<(FieldId, String)> =
            before.iter().map(|id| (*id, speaker.place(*id))).collect();
        self.change(None, |answers| {
            own.put_into(answers);
        });
        let gone = places.into_iter();
        let gone = gone.filter(|(id, _)| self.answers.text(*id).trim().is_empty());
        let gone: Vec<String> = gone.map(|(_, place)| place).collect();
        let text = if gone.is_empty() {
            text::used(&own.name)
        } else {
            text::used_and_let_go(&own.name, &gone)
        };
        self.tell(Message { text, alarm: false });
    }
}
