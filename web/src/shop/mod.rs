//! The person's shop on the page: what is kept between visits, carried into the browser's store and out of it, and shown.

mod asked;
mod back;
mod begin;
mod database;
mod hand;
mod jobs;
mod keeper;
mod own;
mod panel;
mod place;
mod round;
mod row;
mod small;
mod whole;

pub(crate) use back::{Back, BackProps, use_back_keys};
pub(crate) use begin::{Begun, begin};
pub(crate) use hand::use_hand;
pub(crate) use keeper::Keeper;
pub(crate) use own::ToShop;
pub(crate) use panel::{Shop, ShopProps};
pub(crate) use place::Fault;

use thinwright_jobfile::shop::{Content, Thing};
use thinwright_jobfile::{Sample, samples};

/// Where it is noted what the browser said when it was asked to keep things.
const STAY: &str = "thinwright.stay";
/// Where a window keeps its own number.
const TAB: &str = "thinwright.tab";
/// Where it is tried whether the small store takes anything.
const TRIAL: &str = "thinwright.trial";
/// Before the name of a sample, where a job in hand is named.
const SAMPLE: &str = "sample.";

/// The sample that a job still is, untouched.
fn sample_of(content: &Content) -> Option<&'static Sample> {
    let mut all = samples().iter();
    all.find(|sample| Content::from(sample.job()).same(content))
}

fn sample_by_name(open: &str) -> Option<&'static Sample> {
    Sample::by_id(open.strip_prefix(SAMPLE)?)
}

/// What a thing is called on the page.
fn named(thing: &Thing) -> String {
    let name = thing.content.name();
    if name.is_empty() {
        crate::text::shop::untitled().to_owned()
    } else {
        name.to_owned()
    }
}
