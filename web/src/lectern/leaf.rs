//! What is read at the machine, page after page: from the strategy, in the order of the work.

use super::room::{Holds, Room};
use super::spot::{Part, Spot};
use crate::run::outcome_of;
use crate::state::Shown;
use crate::text::lectern as text;
use std::ops::Range;
use thinwright_core::Outcome;
use thinwright_core::strategy::{Setup, Step, Strategy};
use thinwright_jobfile::Record;
use thinwright_words::lectern::{About, AtEnd, Line, last_time};
use thinwright_words::{Speaker, TypedValue, after_turn_over, before_start, sheet};

/// A box to tick: setup, part, and which line of it.
pub(crate) type Tick = (usize, Part, usize);

/// What stands on a page.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Body {
    /// Sentences.
    Lines(Vec<Line>),
    /// Sentences with a box to tick.
    Ticks(Vec<(Tick, String)>),
    /// The numbers of the step.
    Numbers,
    /// Values that are set beside them.
    Values(Vec<TypedValue>),
    /// What is measured after the step, and the ways to say how it went.
    After(Vec<Line>),
}

/// A page.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Leaf {
    pub(crate) spot: Spot,
    /// Which setup, from 0.
    pub(crate) setup: usize,
    /// Pages of this part.
    pub(crate) pages: usize,
    /// What it is about.
    pub(crate) heading: String,
    pub(crate) body: Body,
}

/// The strategy that is shown.
pub(super) fn strategy(shown: &Shown) -> Option<&Strategy> {
    match &*shown.outcome {
        Outcome::Feasible(strategy) => Some(strategy),
        Outcome::Refused(_) => None,
    }
}

/// A step of the strategy that is shown, from 0 over all setups.
pub(super) fn step(shown: &Shown, at: usize) -> Option<&Step> {
    let setups = strategy(shown)?.setups.iter();
    setups.flat_map(|s| &s.steps).nth(at)
}

/// Everything there is to read.
pub(super) fn leaves(
    (shown, records): (&Shown, &[Record]),
    speaker: &Speaker<'_>,
    room: Room,
) -> Vec<Leaf> {
    let Some(strategy) = strategy(shown) else {
        return Vec::new();
    };
    let mut writer = Writer {
        shown,
        records,
        speaker,
        room,
        strategy,
        out: Vec::new(),
    };
    let mut first = 0;
    for (number, setup) in strategy.setups.iter().enumerate() {
        if setup.steps.is_empty() {
            continue;
        }
        writer.setup(number, first, setup);
        for step in &setup.steps {
            writer.step(number, first, step);
            first += 1;
        }
    }
    writer.out
}

/// What was run the last time at the place of a step, unless that was taken back.
fn last_run(records: &[Record], speaker: &Speaker<'_>, step: &Step) -> Option<Line> {
    let (task, _) = speaker.step_noted(step);
    let here =
        |r: &&Record| r.task == task && r.step == step.number && !r.taken_back && !r.elsewhere;
    let record = records.iter().rev().find(here)?;
    let values = record.values.iter();
    let values = values.map(|(name, value)| format!("{name}\u{A0}{value}"));
    let mut said: Vec<String> = outcome_of(record).map(str::to_owned).into_iter().collect();
    said.extend(values);
    said.extend((!record.note.is_empty()).then(|| record.note.clone()));
    Some(last_time(&record.date, &said))
}

struct Writer<'a> {
    shown: &'a Shown,
    records: &'a [Record],
    speaker: &'a Speaker<'a>,
    room: Room,
    strategy: &'a Strategy,
    out: Vec<Leaf>,
}

impl Writer<'_> {
    /// Pages of one part under one heading.
    fn put<T: Clone>(
        &mut self,
        (setup, step, part): (usize, usize, Part),
        heading: &str,
        items: &[T],
        said: (impl Fn(&T) -> usize, impl Fn(&[T], Range<usize>) -> Body),
    ) {
        let lengths: Vec<usize> = items.iter().map(&said.0).collect();
        let kind = match part {
            Part::Turned | Part::Start => Holds::Ticks,
            Part::After => Holds::Ways,
            _ => Holds::Sentences,
        };
        let pages = self.room.pages(heading.chars().count(), &lengths, kind);
        let count = pages.len();
        for (page, range) in pages.into_iter().enumerate() {
            self.out.push(Leaf {
                spot: Spot { step, part, page },
                setup,
                pages: count,
                heading: heading.to_owned(),
                body: (said.1)(items, range),
            });
        }
    }

    fn lines(&mut self, place: (usize, usize, Part), heading: &str, lines: &[Line]) {
        let length = |line: &Line| line.text.chars().count();
        let body = |lines: &[Line], range: Range<usize>| Body::Lines(lines[range].to_vec());
        self.put(place, heading, lines, (length, body));
    }

    fn ticks(&mut self, (setup, step, part): (usize, usize, Part), heading: &str, lines: &[&str]) {
        let body = |lines: &[&str], range: Range<usize>| {
            let from = range.start;
            let of = lines[range].iter().enumerate();
            Body::Ticks(
                of.map(|(k, text)| ((setup, part, from + k), (*text).to_owned()))
                    .collect(),
            )
        };
        let length = |line: &&str| line.chars().count();
        self.put((setup, step, part), heading, lines, (length, body));
    }

    fn setup(&mut self, number: usize, first: usize, setup: &Setup) {
        let speaker = self.speaker;
        let line = |about: About| move |text: String| Line { about, text };
        if number == 0 {
            let cautions = self.strategy.cautions.iter();
            let cautions = cautions.map(|id| speaker.caution(id).to_owned());
            let cautions: Vec<Line> = cautions.map(line(About::Caution)).collect();
            let heading = text::cautions_of_job();
            self.lines((number, first, Part::Cautions), heading, &cautions);
        }
        let heading = sheet::setup_heading(speaker, number + 1, setup);
        let datum = sheet::datum(speaker, &self.shown.job, setup, number == 0);
        let datum: Vec<Line> = datum.into_iter().map(line(About::Plain)).collect();
        if number > 0 {
            let heading = text::after_turning();
            self.ticks((number, first, Part::Turned), heading, &after_turn_over());
        }
        self.lines((number, first, Part::Setup), &heading, &datum);
        self.ticks(
            (number, first, Part::Start),
            text::before_start(),
            &before_start(),
        );
    }

    fn step(&mut self, setup: usize, at: usize, step: &Step) {
        let (speaker, job) = (self.speaker, &self.shown.job);
        let last = at.checked_sub(1).and_then(|at| self::step(self.shown, at));
        let heading = speaker.step(step);
        let mut before = speaker.before_numbers(job, step, last);
        before.extend(last_run(self.records, speaker, step));
        self.lines((setup, at, Part::Before), &heading, &before);
        self.out.push(Leaf {
            spot: Spot {
                step: at,
                part: Part::Numbers,
                page: 0,
            },
            setup,
            pages: 1,
            heading: heading.clone(),
            body: Body::Numbers,
        });
        let values = speaker.beside_numbers(step);
        let length = |v: &TypedValue| v.label.chars().count() + v.value.chars().count() + 4;
        let body =
            |values: &[TypedValue], range: Range<usize>| Body::Values(values[range].to_vec());
        self.put(
            (setup, at, Part::More),
            text::beside(),
            &values,
            (length, body),
        );
        let mut after = speaker.after_step(job, step, AtEnd::of(self.strategy, at));
        if after.is_empty() {
            after.push(speaker.after_any());
        }
        let length = |line: &Line| line.text.chars().count();
        let body = |lines: &[Line], range: Range<usize>| Body::After(lines[range].to_vec());
        let heading = text::stop_and_measure();
        self.put((setup, at, Part::After), heading, &after, (length, body));
    }
}
