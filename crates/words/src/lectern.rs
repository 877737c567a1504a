//! What is read beside the machine, step by step: what comes before a step, what to measure after it, and what the knobs
//! of the machine make of its numbers.

use crate::Speaker;
use crate::language::tr;
use crate::say;
use crate::sheet::hold_point;
use crate::steps::TypedValue;
use crate::text::upper_first;
use thinwright_core::again::{Again, Values};
use thinwright_core::job::Job;
use thinwright_core::strategy::{Entry, Finding, Step, Strategy};
use thinwright_core::task::TaskKind;
use thinwright_core::vibration::TipKnown;
use thinwright_quantity::{Kind, Length, Speed, SpindleSpeed};

/// The cutter and the four numbers come first of what is typed.
const CUTTER_AND_FOUR: usize = 5;

/// What a line is about; the page gives each its own shape.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum About {
    /// The cutter that goes in or stays in.
    Cutter,
    /// Stop here, check or measure, then go on.
    Stop,
    /// What can hurt somebody.
    Caution,
    /// Anything else.
    Plain,
}

/// One thing to read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Line {
    /// What it is about.
    pub about: About,
    /// A whole sentence.
    pub text: String,
}

/// A number in large digits.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Figure {
    /// Symbol of ISO 3002.
    pub symbol: &'static str,
    /// What it is called.
    pub name: &'static str,
    /// The number as it is typed, with its decimal mark.
    pub number: String,
    /// Its unit.
    pub unit: String,
}

fn line(about: About, text: impl Into<String>) -> Line {
    let text = text.into();
    Line { about, text }
}

impl Speaker<'_> {
    /// What is done and known before a step starts: its cutter, where to stop and check, its cautions. `last` is the step
    /// before it, whichever setup that is in.
    pub fn before_numbers(&self, job: &Job, step: &Step, last: Option<&Step>) -> Vec<Line> {
        let mut out = self.cutter_lines(job, step, last);
        if let Some(point) = hold_point(step.task) {
            out.push(line(About::Stop, upper_first(point)));
        }
        let cautions = step.cautions.iter();
        out.extend(cautions.map(|id| line(About::Caution, self.caution(id))));
        let warnings = self.warnings(step).into_iter();
        out.extend(warnings.map(|w| line(About::Caution, upper_first(&self.finding_line(w)))));
        out
    }

    /// Which cutter, and whether it has to be changed.
    fn cutter_lines(&self, job: &Job, step: &Step, last: Option<&Step>) -> Vec<Line> {
        let mut out = Vec::new();
        if let Entry::Drilled { drill, .. } = step.entry {
            let cutter = self.cutter_in(job, drill);
            let text = say!(
                "First drill the holes of the way in: put in {cutter}.",
                cutter
            );
            out.push(line(About::Cutter, text));
        }
        let stays = out.is_empty() && last.is_some_and(|l| l.cutter == step.cutter);
        let text = if stays {
            let cutter = self.cutter(step.cutter);
            say!("The cutter stays in: {cutter}.", cutter)
        } else {
            let cutter = self.cutter_in(job, step.cutter);
            say!(
                "Change the cutter: put in {cutter}. Set its height again.",
                cutter
            )
        };
        out.push(line(About::Cutter, text));
        out
    }

    /// A cutter by its place in the rack, with how far it sticks out.
    fn cutter_in(&self, job: &Job, row: u8) -> String {
        let number = u32::from(row) + 1;
        let cutter = self.cutter(row);
        match job.rack.iter().find(|c| c.row == row) {
            Some(c) => say!(
                "number {number}, {cutter}, sticking out {length}",
                number,
                cutter,
                length = self.length(Length::from_si(c.stick_out))
            ),
            None => say!("number {number}, {cutter}", number, cutter),
        }
    }

    /// The four numbers of a step.
    pub fn figures(&self, step: &Step) -> [Figure; 4] {
        self.four(step.n, step.vf, (step.ap, step.ae))
    }

    fn four(&self, n: SpindleSpeed, vf: Speed, (ap, ae): (Length, Length)) -> [Figure; 4] {
        let figure = |symbol, name, kind, si| {
            // A no-break space parts number and unit, a thin one groups of digits.
            let said = self.value(kind, si);
            let (number, unit) = said.rsplit_once('\u{A0}').unwrap_or((&said, ""));
            Figure {
                symbol,
                name,
                number: number.to_owned(),
                unit: unit.to_owned(),
            }
        };
        [
            figure("n", tr("spindle speed"), Kind::SpindleSpeed, n.si()),
            figure("vf", tr("feed"), Kind::FeedSpeed, vf.si()),
            figure("ap", tr("step-down"), Kind::Length, ap.si()),
            figure("ae", tr("stepover"), Kind::Length, ae.si()),
        ]
    }

    /// Where to stop after a step, and what to measure there; nothing where nothing new can be measured. `at` says which
    /// setup of how many, and whether it is the last step of all.
    pub fn after_step(&self, job: &Job, step: &Step, at: AtEnd) -> Vec<Line> {
        let mut out = Vec::new();
        let mut stop = |text: String| out.push(line(About::Stop, text));
        match step.task {
            TaskKind::Facing => stop(tr(
                "Measure how thick the stock is now, and write it down: every depth counts from this face.",
            ).to_owned()),
            TaskKind::Bore => stop(tr(
                "Measure the bore: it is the datum of everything that follows.",
            ).to_owned()),
            TaskKind::FloorSkim if at.web_is_finished => stop(say!(
                "Measure the web at its centre and at its edge: {wanted} is wanted at both. What differs is what the web \
                 gave way under the cut.",
                wanted = self.wanted_web(job)
            )),
            TaskKind::FloorSkim => stop(tr(
                "Measure how deep the floor lies at its centre and at its edge, and write both down: the web is counted \
                 from there.",
            ).to_owned()),
            TaskKind::WallSkim => stop(tr(
                "Measure the recess across, at the top and at the floor, before anything is unclamped.",
            ).to_owned()),
            TaskKind::SlotsThrough | TaskKind::SlotsBlind => {
                if let Some(slot) = job.part.slots.first() {
                    let wanted = self.with_tolerance(slot.width, job.wanted.slot);
                    stop(say!(
                        "Measure the width of a slot at its top and at its bottom: {wanted} is wanted. Narrower below: the \
                         cutter leaned.",
                        wanted
                    ));
                }
            }
            TaskKind::Clearing | TaskKind::OutlineGroove | TaskKind::OutlineFinish => {}
        }
        if at.last_of_all {
            stop(say!(
                "After unclamping, measure the web at its centre and at its edge again, and whether it is flat: {wanted} is \
                 wanted.",
                wanted = self.wanted_web(job)
            ));
        }
        out
    }

    /// After a step that leaves nothing to measure.
    pub fn after_any(&self) -> Line {
        let text = tr(
            "Nothing has to be measured here. Look at the chips, the edge of the cutter and what holds the part.",
        );
        line(About::Plain, text)
    }

    fn wanted_web(&self, job: &Job) -> String {
        self.with_tolerance(job.part.web(), job.wanted.web)
    }

    /// A length in m with its tolerance, if one is asked for.
    fn with_tolerance(&self, size: f64, tolerance: Option<f64>) -> String {
        let size = self.value(Kind::Length, size);
        match tolerance {
            Some(t) => format!("{size} \u{B1} {}", self.value(Kind::ShortLength, t)),
            None => size,
        }
    }

    /// What is set beside the four numbers: levels, heights, what is left, the way in, other feeds; and how to listen.
    pub fn beside_numbers(&self, step: &Step) -> Vec<TypedValue> {
        let first = self.typed_values(step).into_iter();
        let mut out: Vec<TypedValue> = first.skip(CUTTER_AND_FOUR).collect();
        if let Some(value) = self.by_ear(step) {
            out.push(TypedValue {
                label: tr("by ear"),
                symbol: "",
                value,
            });
        }
        out
    }

    /// How to listen in a step whose depth may sing.
    fn by_ear(&self, step: &Step) -> Option<String> {
        let ladder = step.listen.filter(|l| l.planned > l.quiet)?;
        // Where a frequency is known and it is quiet, there is nothing to listen for.
        let song = step.stability.as_ref();
        let known = song.is_some_and(|r| r.known > TipKnown::Nothing && !self.may_it_sing(r));
        (!known).then(|| self.listen(&ladder))
    }

    /// What cuts, and in how many levels.
    pub fn cutter_and_levels(&self, step: &Step) -> String {
        let cutter = self.cutter(step.cutter);
        match step.levels {
            1 => say!("{cutter}; one level", cutter),
            levels => say!("{cutter}; {levels} levels", cutter, levels),
        }
    }

    /// Where the knobs stand, in per cent, and what then runs.
    pub fn knobs_at(&self, feed: u32, speed: u32, values: Values) -> String {
        say!(
            "Knobs: feed {feed}\u{A0}%, spindle {speed}\u{A0}%: {n}, {vf}.",
            feed,
            speed,
            n = self.spindle_speed(values.n),
            vf = self.feed(values.vf)
        )
    }

    /// What turned knobs make of a step: `values` are what then runs, `again` what the limits say of it, if they were asked.
    pub fn with_knobs(&self, step: &Step, values: Values, again: Option<&Again>) -> Vec<Line> {
        let runs = say!(
            "The machine then runs at {speed} and {feed}.",
            speed = self.spindle_speed(values.n),
            feed = self.feed(values.vf)
        );
        let mut out = vec![line(About::Plain, runs)];
        let Some(again) = again else {
            let text = tr("What the limits say of that is not worked out: take it as unchecked.");
            out.push(line(About::Caution, text));
            return out;
        };
        let per_tooth = say!(
            "Each tooth takes {now} instead of {planned}.",
            now = self.short(again.fz),
            planned = self.short(step.fz)
        );
        out.push(line(About::Plain, per_tooth));
        let broken: Vec<&Finding> = again.broken(step).collect();
        if broken.is_empty() {
            let text = tr("Held against every limit again: none is broken that was not before.");
            out.push(line(About::Plain, text));
        }
        out.extend(broken.into_iter().map(|finding| {
            let text = upper_first(&self.finding_line(finding));
            line(About::Caution, text)
        }));
        out
    }
}

/// What was run the last time at the same place: how it went, the values and the note as they were written down.
pub fn last_time(date: &str, said: &[String]) -> Line {
    let said = said.join("; ");
    let text = match date.trim() {
        "" => say!("The last time here: {said}", said),
        date => say!("The last time here, {date}: {said}", date, said),
    };
    line(About::Plain, text)
}

/// Where in the job a step ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct AtEnd {
    /// The web has its thickness now: no recess is to come.
    pub web_is_finished: bool,
    /// Nothing is to come.
    pub last_of_all: bool,
}

impl AtEnd {
    /// The end of a step of a strategy, counted from 0 over all setups.
    pub fn of(strategy: &Strategy, at: usize) -> AtEnd {
        let steps = || strategy.setups.iter().flat_map(|s| &s.steps);
        let floors = steps().skip(at + 1);
        let to_come = |s: &Step| matches!(s.task, TaskKind::Clearing | TaskKind::FloorSkim);
        AtEnd {
            web_is_finished: !floors.into_iter().any(to_come),
            last_of_all: at + 1 == steps().count(),
        }
    }
}
