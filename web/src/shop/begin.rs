//! The shop as it is found when the page opens: the database, or what stands for it; what earlier versions kept, and drafts
//! that were never kept, taken over; and the job that was in hand.

use super::asked;
use super::database;
use super::keeper::{Keeper, fresh_id};
use super::place::{Fault, Place};
use super::small::{self, OPEN, THING};
use crate::browser::LocalShelf;
use crate::shelf::{self, Shelf};
use crate::state::{Lasting, Message, Stock, Where};
use crate::text::shop as text;
use thinwright_jobfile::shop::{Content, Kind, Shop, Thing, Told, from_store, merge};
use thinwright_jobfile::{JobFile, Sample, samples};

/// How long the database may take to answer before the page opens without it, ms.
const PATIENCE: i32 = 3000;
/// Drafts of other windows that are older than this are nobody's any more, ms.
const OLD: f64 = 120_000.0;

/// What a page begins with.
#[derive(Clone, PartialEq)]
pub(crate) struct Begun {
    pub(crate) keeper: Keeper,
    pub(crate) stock: Stock,
    /// The job to open, and its id if it has one.
    pub(crate) job: JobFile,
    pub(crate) id: Option<String>,
    pub(crate) news: Vec<Message>,
    /// What ids are drawn from.
    pub(crate) seed: u64,
}

/// Finds everything.
pub(crate) async fn begin() -> Begun {
    let shelf = LocalShelf::new();
    let mut news = Vec::new();
    let (place, texts) = find(&shelf, &mut news).await;
    let mut shop = Shop::sort(texts);
    let before = asked::from_session(super::TAB);
    let tab = format!("{:016x}", asked::lot());
    asked::put_in_session(super::TAB, &tab);
    take_over_drafts(&place, &shelf, before.as_deref(), &mut shop, &mut news).await;
    let first = take_over_earlier(&place, &shelf, &mut shop, &mut news).await;
    if !shop.unread.is_empty() {
        news.push(alarm(text::unread(shop.unread.len())));
    }
    let open = asked::from_session(OPEN).or_else(|| shelf.get(OPEN));
    let (id, job) = in_hand(&shop, first, open.as_deref());
    Begun {
        stock: Stock {
            place: match place {
                Place::Database(_) => Where::Database,
                Place::Small => Where::Small,
                Place::Nowhere => Where::Nowhere,
            },
            lasting: match shelf.get(super::STAY).as_deref() {
                Some("yes") => Lasting::Promised,
                Some("no") => Lasting::Refused,
                _ => Lasting::NotAsked,
            },
            shop,
            gone: Vec::new(),
        },
        keeper: Keeper::new(place, tab),
        job,
        id,
        news,
        seed: asked::lot(),
    }
}

/// The best place there is, and all that it holds.
async fn find(shelf: &LocalShelf, news: &mut Vec<Message>) -> (Place, Vec<(String, String)>) {
    let opened = async {
        let place = Place::Database(database::open().await?);
        let texts = place.all().await?;
        Ok((place, texts))
    };
    let fault = match asked::at_most(PATIENCE, opened).await {
        Some(Ok(found)) => return found,
        Some(Err(fault)) => fault,
        None => Fault::Silent,
    };
    let works = shelf.put(super::TRIAL, "1");
    shelf.take(super::TRIAL);
    let why = text::fault(&fault);
    if works {
        news.push(Message {
            text: text::in_small_store(&why),
            alarm: !matches!(fault, Fault::Missing(_)),
        });
        (Place::Small, small::all(shelf))
    } else {
        news.push(alarm(text::kept_nowhere(&why)));
        (Place::Nowhere, Vec::new())
    }
}

/// Drafts that were never kept, and what a visit without a database has kept, go into the shop.
async fn take_over_drafts(
    place: &Place,
    shelf: &LocalShelf,
    tab: Option<&str>,
    shop: &mut Shop,
    news: &mut Vec<Message>,
) {
    let mut waiting = small::drafts(shelf, tab, &asked::date(-OLD));
    if matches!(place, Place::Database(_)) {
        let keys = shelf.keys(THING).into_iter();
        waiting.extend(keys.filter_map(|key| shelf.get(&key).map(|text| (key, text))));
    }
    for (key, text) in waiting {
        let Ok(thing) = Thing::read(&text) else {
            // Left where it is, and shown with what else cannot be read.
            shop.unread.extend(Shop::sort([(key, text)]).unread);
            continue;
        };
        let names = shop.names(thing.content.kind());
        let settled = match place.keep(&thing, &fresh_id(), &names).await {
            Ok(settled) => settled,
            Err(fault) => {
                // It is shown, its draft stays, and it is tried again at the next visit.
                let name = thing.content.name();
                news.push(alarm(text::thing_not_kept(name, &text::fault(&fault))));
                shop.put(thing);
                continue;
            }
        };
        if let Told::Both { name } = &settled.told {
            news.push(alarm(text::kept_both(name)));
        }
        shop.put(settled.thing);
        shelf.take(&key);
    }
}

/// What earlier versions kept goes into the shop; the job that they had in hand comes back.
async fn take_over_earlier(
    place: &Place,
    shelf: &LocalShelf,
    shop: &mut Shop,
    news: &mut Vec<Message>,
) -> Option<(Option<String>, JobFile)> {
    let (store, damaged) = shelf::earlier(shelf);
    news.extend(damaged.map(alarm));
    let store = store?;
    let job = store.job.clone();
    let mut number = 0;
    let things = from_store(store, &asked::date(0.0), || {
        // The same in every window that takes it over.
        number += 1;
        format!("earlier-{number}")
    });
    let own = |thing: &Thing| super::sample_of(&thing.content).is_none();
    let things: Vec<Thing> = things.into_iter().filter(own).collect();
    let merged = merge(&shop.things, things, fresh_id);
    for (before, now) in &merged.renamed {
        news.push(alarm(text::came_renamed(before, now)));
    }
    let mut all_kept = true;
    for thing in merged.put {
        let names = shop.names(thing.content.kind());
        match place.keep(&thing, &fresh_id(), &names).await {
            Ok(settled) => shop.put(settled.thing),
            Err(_) => {
                all_kept = false;
                shop.put(thing);
            }
        }
    }
    if all_kept {
        shelf::taken_over(shelf);
    }
    let content = Content::from(job.clone());
    let same = shop.of(Kind::Job).find(|t| t.content.same(&content));
    let id = same.map(|thing| thing.id.clone());
    Some((id, job))
}

/// The job to open: what earlier versions had in hand, or what this window or the last one had, or what was changed last, or
/// a sample.
fn in_hand(
    shop: &Shop,
    first: Option<(Option<String>, JobFile)>,
    open: Option<&str>,
) -> (Option<String>, JobFile) {
    if let Some(first) = first {
        return first;
    }
    if let Some(sample) = open.and_then(super::sample_by_name) {
        return (None, sample.job());
    }
    let named = open.and_then(|id| shop.get(id));
    match named.or_else(|| shop.of(Kind::Job).next()) {
        Some(thing) => match &thing.content {
            Content::Job(job) => (Some(thing.id.clone()), (**job).clone()),
            Content::Own(_) => (None, first_sample().job()),
        },
        None => (None, first_sample().job()),
    }
}

fn first_sample() -> &'static Sample {
    &samples()[0]
}

fn alarm(text: String) -> Message {
    Message { text, alarm: true }
}
