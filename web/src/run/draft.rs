//! A note that is being written: what was typed, and what it comes to.

use std::rc::Rc;
use thinwright_core::again::Values;
use thinwright_core::learn::{Force, Outcome, Run, Seen, seen};
use thinwright_core::strategy::{Step, Strategy};
use thinwright_core::{Cache, Job};
use thinwright_jobfile::{Ran, Record};
use thinwright_quantity::{
    Kind, Length, Rounding, Speed, SpindleSpeed, UnitSystem, format, format_bare, parse,
};
use thinwright_words::Speaker;
use thinwright_words::run::Went;

/// A number of the form: symbol and kind.
pub(super) const NUMBERS: [(&str, Kind); 4] = [
    ("n", Kind::SpindleSpeed),
    ("vf", Kind::FeedSpeed),
    ("ae", Kind::Length),
    ("ap", Kind::Length),
];

/// What was typed so far.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Draft {
    /// Which step, from 0 over all setups, if it is not the one that is open.
    pub(super) step: Option<usize>,
    /// Numbers that were really run, where they are others than the step's.
    pub(super) numbers: [Option<String>; 4],
    pub(super) went: Option<Went>,
    /// How far the wall is off.
    pub(super) off: String,
    pub(super) note: String,
    /// What a reading of the power says of the force.
    pub(super) force: Option<(Force, String)>,
}

/// What a draft comes to.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Noted {
    pub(super) record: Record,
    /// What it is judged by, if it teaches at all.
    pub(super) seen: Option<Seen>,
}

/// What is wrong with a draft.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Wrong {
    /// How it went is not said.
    Unsaid,
    /// A number is none.
    Number(usize),
    /// How far the wall is off is no length.
    Off,
}

impl Draft {
    /// The step that it is about.
    pub(super) fn index(&self, open: Option<usize>) -> usize {
        self.step.or(open).unwrap_or(0)
    }

    /// The text of a number: as typed, or the step's.
    pub(super) fn number(&self, at: usize, step: &Step, units: UnitSystem) -> String {
        self.numbers[at].clone().unwrap_or_else(|| {
            let si = told(step)[at];
            format_bare(NUMBERS[at].1, si, units, Rounding::Nearest)
        })
    }

    /// The numbers in SI.
    fn values(&self, step: &Step, units: UnitSystem) -> Result<Values, Wrong> {
        let mut si = told(step);
        for (at, text) in self.numbers.iter().enumerate() {
            let Some(text) = text else { continue };
            let value = parse(NUMBERS[at].1, text, units).ok();
            let value = value.filter(|v| v.is_finite() && *v > 0.0);
            si[at] = value.ok_or(Wrong::Number(at))?;
        }
        let own = Values::of(step);
        Ok(Values {
            n: kept(0, &self.numbers, own.n, SpindleSpeed::from_si(si[0])),
            vf: kept(1, &self.numbers, own.vf, Speed::from_si(si[1])),
            ae: kept(2, &self.numbers, own.ae, Length::from_si(si[2])),
            ap: kept(3, &self.numbers, own.ap, Length::from_si(si[3])),
        })
    }

    fn outcome(&self, error: f64, units: UnitSystem) -> Result<Outcome, Wrong> {
        Ok(match self.went.ok_or(Wrong::Unsaid)? {
            Went::Held => Outcome::Held,
            Went::Sang => Outcome::Sang,
            Went::Broke => Outcome::Broke,
            Went::Other => Outcome::Other,
            Went::Gave => {
                let by = parse(Kind::ShortLength, &self.off, units).ok();
                let by = by.filter(|v| v.is_finite() && *v > 0.0).ok_or(Wrong::Off)?;
                let share = (error / by).min(1.0);
                Outcome::Gave { by, share }
            }
        })
    }

    /// What it comes to.
    pub(super) fn noted(
        &self,
        (job, strategy, index): (&Job, &Strategy, usize),
        speaker: &Speaker<'_>,
        cache: &mut Cache,
    ) -> Result<Noted, Wrong> {
        let step = strategy.setups.iter().flat_map(|s| &s.steps).nth(index);
        let step = step.ok_or(Wrong::Unsaid)?;
        let values = self.values(step, speaker.units)?;
        // A wall is half of a width.
        let error = 0.5 * job.numbers.reading_width_um * 1.0e-6;
        let run = Run {
            values,
            outcome: self.outcome(error, speaker.units)?,
            force: self.force.as_ref().map(|f| f.0),
        };
        let seen = seen(job, strategy, index, &run, cache).filter(Seen::says_something);
        let (task, method) = speaker.step_noted(step);
        Ok(Noted {
            record: Record {
                step: step.number,
                task,
                method,
                outcome: self.went.map(ran),
                values: self.written(&values, speaker.units),
                note: self.note.trim().to_owned(),
                ..Record::default()
            },
            seen,
        })
    }

    /// The numbers as they are written down.
    fn written(&self, values: &Values, units: UnitSystem) -> Vec<(String, String)> {
        let si = [
            values.n.si(),
            values.vf.si(),
            values.ae.si(),
            values.ap.si(),
        ];
        let each = NUMBERS.iter().zip(si).map(|((symbol, kind), si)| {
            let text = format(*kind, si, units, Rounding::Nearest);
            ((*symbol).to_owned(), text)
        });
        let mut all: Vec<(String, String)> = each.collect();
        if self.went == Some(Went::Gave) {
            let by = parse(Kind::ShortLength, &self.off, units).unwrap_or_default();
            let text = format(Kind::ShortLength, by, units, Rounding::Nearest);
            all.push(("off".to_owned(), text));
        }
        if let Some((_, text)) = &self.force {
            all.push(("force".to_owned(), text.clone()));
        }
        all
    }
}

/// A number that was not touched stays to the last bit.
fn kept<T>(at: usize, typed: &[Option<String>; 4], own: T, other: T) -> T {
    match typed[at] {
        None => own,
        Some(_) => other,
    }
}

fn told(step: &Step) -> [f64; 4] {
    [step.n.si(), step.vf.si(), step.ae.si(), step.ap.si()]
}

fn ran(went: Went) -> Ran {
    match went {
        Went::Held => Ran::Held,
        Went::Sang => Ran::Sang,
        Went::Gave => Ran::Bent,
        Went::Broke => Ran::Broke,
        Went::Other => Ran::Other,
    }
}

/// How it went, of a record.
pub(super) fn went(ran: Ran) -> Went {
    match ran {
        Ran::Held => Went::Held,
        Ran::Sang => Went::Sang,
        Ran::Bent => Went::Gave,
        Ran::Broke => Went::Broke,
        Ran::Other => Went::Other,
    }
}

/// What a strategy is worked out again with: kept between two looks at the same job.
#[derive(Clone, Default)]
pub(super) struct Books(pub(super) Rc<std::cell::RefCell<Cache>>);

impl PartialEq for Books {
    fn eq(&self, other: &Books) -> bool {
        Rc::ptr_eq(&self.0, &other.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use thinwright_catalog::Catalog;
    use thinwright_core::{Outcome as Found, decide, read};

    #[test]
    fn a_draft_says_what_was_run() {
        let catalog = Catalog::builtin();
        let answers = thinwright_jobfile::samples()[0].job().answers;
        let job = read(&answers, &catalog).unwrap();
        let Found::Feasible(strategy) = decide(&job) else {
            panic!("refused")
        };
        let speaker = Speaker::new(answers.units, &catalog, &answers);
        let mut cache = Cache::default();
        let mut noted = |draft: &Draft| draft.noted((&job, &strategy, 0), &speaker, &mut cache);
        let mut draft = Draft::default();
        assert_eq!(noted(&draft), Err(Wrong::Unsaid));
        draft.went = Some(Went::Gave);
        assert_eq!(noted(&draft), Err(Wrong::Off));
        draft.off = "0.03 mm".to_owned();
        let gave = noted(&draft).unwrap();
        assert_eq!(gave.record.outcome, Some(Ran::Bent));
        assert_eq!(
            gave.record.values[4],
            ("off".to_owned(), "0.03\u{A0}mm".to_owned())
        );
        draft.went = Some(Went::Held);
        draft.numbers[3] = Some("two".to_owned());
        assert_eq!(noted(&draft), Err(Wrong::Number(3)));
        draft.numbers[3] = Some("0.5".to_owned());
        draft.note = "  quiet \n".to_owned();
        let held = noted(&draft).unwrap();
        assert_eq!(held.record.note, "quiet");
        assert_eq!(held.record.values[3].1, "0.5\u{A0}mm");
        let song = held.seen.unwrap().song.unwrap();
        assert!(!song.sang && (song.depth - 0.5e-3).abs() < 1.0e-9);
        // Something else teaches nothing and is noted.
        draft.went = Some(Went::Other);
        assert_eq!(noted(&draft).unwrap().seen, None);
        for (went_in, ran_in) in [(Went::Sang, Ran::Sang), (Went::Broke, Ran::Broke)] {
            draft.went = Some(went_in);
            assert_eq!(noted(&draft).unwrap().record.outcome, Some(ran_in));
            assert_eq!(went(ran_in), went_in);
        }
    }
}
