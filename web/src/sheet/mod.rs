//! The sheet for the operator: a checked strategy on paper, at most two pages for an ordinary part. A refusal has no sheet.

mod closing;
mod code;
mod cutters;
mod head;
mod later;
mod setup;
mod web;

pub(crate) use later::{Paper, PaperProps};

use crate::confirm;
use crate::desk::use_desk;
use crate::share::base;
use crate::state::{Shown, Stage, State};
use std::rc::Rc;
use thinwright_core::confirm::Confirmation;
use thinwright_core::strategy::{Step, Strategy};
use thinwright_core::{Answers, Job, Outcome, WebPicture};
use thinwright_jobfile::Record;
use thinwright_quantity::{Kind, Length, Rounding};
use thinwright_words::{Speaker, bare};
use yew::prelude::*;

/// What belongs on the sheet beside the strategy.
#[derive(Clone, PartialEq)]
pub(crate) struct Stamp {
    /// Title of the job.
    pub(crate) title: String,
    /// Where its code leads to.
    pub(crate) base: Option<String>,
    /// Risks that the person has confirmed.
    pub(crate) confirmed: Rc<Vec<String>>,
    /// What was run, and stands on the sheet in place of empty rows.
    pub(crate) records: Rc<Vec<Record>>,
}

impl Stamp {
    pub(crate) fn of(state: &State) -> Stamp {
        Stamp {
            title: state.title.clone(),
            base: base(),
            confirmed: state.confirmed.clone(),
            records: state.records.clone(),
        }
    }
}

/// What the sheet shows.
#[derive(Clone, Properties)]
pub(crate) struct SheetProps {
    pub(crate) shown: Shown,
    /// The web where it is softest, once it has been looked at.
    pub(crate) web: Option<Rc<WebPicture>>,
    /// What else belongs on the sheet.
    pub(crate) stamp: Stamp,
}

impl PartialEq for SheetProps {
    fn eq(&self, other: &SheetProps) -> bool {
        let same_web = same(&self.web, &other.web);
        self.shown == other.shown && same_web && self.stamp == other.stamp
    }
}

/// Whether two pictures are the very same.
fn same(a: &Option<Rc<WebPicture>>, b: &Option<Rc<WebPicture>>) -> bool {
    a.as_ref().map(Rc::as_ptr) == b.as_ref().map(Rc::as_ptr)
}

/// What every part of the sheet speaks of.
struct Topic<'a> {
    speaker: Speaker<'a>,
    job: &'a Rc<Job>,
    outcome: &'a Rc<Outcome>,
    strategy: &'a Strategy,
    answers: &'a Answers,
    stage: Stage,
    stamp: &'a Stamp,
    /// Risks that are not confirmed.
    open: Vec<Confirmation>,
}

impl Topic<'_> {
    /// A value without its unit, which stands in the caption.
    fn bare(&self, kind: Kind, si: f64) -> String {
        bare(kind, si, self.speaker.units, Rounding::Nearest)
    }

    fn length(&self, value: Length) -> String {
        self.bare(Kind::Length, value.si())
    }

    /// A length that must not be exceeded.
    fn length_down(&self, value: Length) -> String {
        bare(Kind::Length, value.si(), self.speaker.units, Rounding::Down)
    }

    fn steps(&self) -> impl Iterator<Item = &Step> {
        self.strategy.setups.iter().flat_map(|s| &s.steps)
    }
}

/// The sheet.
#[component]
pub(crate) fn Sheet(props: &SheetProps) -> Html {
    let desk = use_desk();
    let shown = &props.shown;
    let Outcome::Feasible(strategy) = shown.outcome.as_ref() else {
        return html! {};
    };
    let topic = Topic {
        speaker: Speaker::new(shown.job.units, &desk.catalog, &shown.answers),
        job: &shown.job,
        outcome: &shown.outcome,
        strategy,
        answers: &shown.answers,
        stage: shown.stage,
        stamp: &props.stamp,
        open: confirm::open(shown, &props.stamp.confirmed),
    };
    let setups = (0..strategy.setups.len()).map(|index| setup::block(&topic, index));
    // The page's own main part is not on paper, this one not on the screen.
    html! {
        <main class="sheet">
            { head::head(&topic) }
            { setups.collect::<Html>() }
            { cutters::table(&topic) }
            { closing::closing(&topic, web::map(&topic, props.web.as_deref())) }
        </main>
    }
}
