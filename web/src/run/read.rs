//! A reading that was typed, and what it says.

use super::PartProps;
use thinwright_core::again::Values;
use thinwright_core::learn::{Force, Outcome, Run, seen};
use thinwright_core::readings::{
    ChipWeight, SlotWidth, SpindleLoad, Unreadable, WebThickness, chip_weight, runout, slot_width,
    spindle_load, web_thickness,
};
use thinwright_core::strategy::{Step, Strategy};
use thinwright_core::{Cache, Job};
use thinwright_quantity::{Kind, UnitSystem, parse};
use thinwright_words::Speaker;
use thinwright_words::run::Reading;

/// What a reading can be used for.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Use {
    /// The note: the wall is off by so much, m.
    Off(f64),
    /// The note: what the force really is.
    Force(Force),
    /// The answer: the runout, m.
    Runout(f64),
}

/// What a reading says.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Told {
    pub(super) lines: Vec<String>,
    pub(super) to_use: Option<Use>,
}

/// What is held against it.
pub(super) struct Against<'a> {
    pub(super) job: &'a Job,
    pub(super) strategy: &'a Strategy,
    pub(super) index: usize,
    pub(super) step: &'a Step,
}

impl<'a> Against<'a> {
    pub(super) fn of(props: &'a PartProps) -> Option<Against<'a>> {
        let (job, strategy) = props.ran.strategy()?;
        let index = props.draft.index(props.ran.step);
        let step = strategy.setups.iter().flat_map(|s| &s.steps).nth(index)?;
        Some(Against {
            job,
            strategy,
            index,
            step,
        })
    }

    /// Mean push on the wall at likely values, N; 0 where there is none.
    fn push(&self, cache: &mut Cache) -> f64 {
        let outcome = Outcome::Gave {
            by: 1.0e-6,
            share: 0.0,
        };
        let run = Run {
            values: Values::of(self.step),
            outcome,
            force: None,
        };
        let seen = seen(self.job, self.strategy, self.index, &run, cache);
        seen.and_then(|s| s.give).map_or(0.0, |give| give.force)
    }
}

/// The numbers of a form, if all are there; the place of the first that is none.
pub(super) fn numbers(
    reading: Reading,
    texts: &[String],
    units: UnitSystem,
) -> Result<Option<Vec<f64>>, usize> {
    let mut all = Vec::new();
    for (at, (_, kind)) in reading.entries().into_iter().enumerate() {
        let text = texts.get(at).map_or("", |t| t.trim());
        if text.is_empty() {
            return Ok(None);
        }
        // Watts are what a meter shows; a unit may stand behind them all the same.
        let value = parse(kind, text, units).or_else(|e| match reading {
            Reading::Power => parse(Kind::Power, text, units),
            _ => Err(e),
        });
        all.push(value.map_err(|_| at)?);
    }
    Ok(Some(all))
}

/// What the numbers of a reading say.
pub(super) fn told(
    reading: Reading,
    values: &[f64],
    against: &Against<'_>,
    (speaker, cache): (&Speaker<'_>, &mut Cache),
) -> Result<Told, String> {
    let (job, step) = (against.job, against.step);
    let numbers = &job.numbers;
    let plain = |lines| Told {
        lines,
        to_use: None,
    };
    let refuse = |kind: Kind| move |why: Unreadable| speaker.unreadable(kind, &why);
    match (reading, values) {
        (Reading::Web, &[centre, edge]) => {
            let read = WebThickness { centre, edge };
            let web = web_thickness(read, step, numbers).map_err(refuse(Kind::Length))?;
            Ok(plain(speaker.web_read(&web)))
        }
        (Reading::Slot, &[top, bottom]) => {
            slot(against, (top, bottom), (speaker, cache)).map_err(refuse(Kind::Length))
        }
        (Reading::Power, &[cutting, idle]) => {
            let read = SpindleLoad {
                cutting,
                idle,
                feed_share: 1.0,
            };
            let factor = spindle_load(read, step, job.material.mc, numbers);
            let factor = factor.map_err(refuse(Kind::Power))?;
            let force = Force {
                factor: factor.likely,
                share: factor.share().min(1.0),
            };
            Ok(Told {
                lines: speaker.power_read(&factor),
                to_use: Some(Use::Force(force)),
            })
        }
        (Reading::Chips, &[grams, time]) => {
            let read = ChipWeight {
                weight: grams * 1.0e-3,
                time,
                density: job.material.density.si(),
                reckoned: step.ap.si() * step.ae.si() * step.vf.si(),
            };
            let removed = chip_weight(read, numbers).map_err(refuse(Kind::Ratio))?;
            Ok(plain(speaker.chips_read(&removed)))
        }
        (Reading::Runout, &[swing]) => {
            let z = job.rack.iter().find(|c| c.row == step.cutter);
            let z = z.map_or(1, |c| c.z);
            let found = runout(swing, step.fz.si(), z, numbers);
            let found = found.map_err(refuse(Kind::ShortLength))?;
            let aims = (numbers.trouble_runout_fine, numbers.trouble_runout_fair);
            Ok(Told {
                lines: speaker.swing_read(&found, aims),
                to_use: Some(Use::Runout(swing)),
            })
        }
        _ => Err(refuse(Kind::Ratio)(Unreadable::NothingReckoned)),
    }
}

fn slot(
    against: &Against<'_>,
    (top, bottom): (f64, f64),
    (speaker, cache): (&Speaker<'_>, &mut Cache),
) -> Result<Told, Unreadable> {
    let (job, step) = (against.job, against.step);
    let slots = job.part.slots.first();
    let slots = slots.filter(|_| {
        use thinwright_core::task::TaskKind::{SlotsBlind, SlotsThrough};
        matches!(step.task, SlotsBlind | SlotsThrough)
    });
    let cutter = job.rack.iter().find(|c| c.row == step.cutter);
    let (slot, cutter) = slots.zip(cutter).ok_or(Unreadable::NothingReckoned)?;
    let read = SlotWidth {
        top,
        bottom,
        asked: slot.width,
        ap: step.ap.si(),
    };
    let said = slot_width(read, against.push(cache), cutter, job)?;
    Ok(Told {
        lines: speaker.slot_read(&said),
        to_use: said.chain.map(|_| Use::Off(said.short)),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use thinwright_catalog::Catalog;
    use thinwright_core::{Outcome as Found, decide, read};

    fn texts(all: &[&str]) -> Vec<String> {
        all.iter().map(|t| (*t).to_owned()).collect()
    }

    #[test]
    fn what_is_typed_is_read_in_its_unit() {
        let of = |reading, all: &[&str]| numbers(reading, &texts(all), UnitSystem::Metric);
        assert_eq!(
            of(Reading::Power, &["350", "120 W"]),
            Ok(Some(vec![350.0, 120.0]))
        );
        assert_eq!(of(Reading::Power, &["350", ""]), Ok(None));
        assert_eq!(of(Reading::Power, &["350", "much"]), Err(1));
        assert_eq!(of(Reading::Chips, &["2.7", "1"]), Ok(Some(vec![2.7, 60.0])));
        let swing = of(Reading::Runout, &["0.02"]).unwrap().unwrap();
        assert!((swing[0] - 20.0e-6).abs() < 1.0e-12);
    }

    #[test]
    fn every_reading_says_something_of_some_step() {
        let catalog = Catalog::builtin();
        let answers = thinwright_jobfile::samples()[0].job().answers;
        let job = read(&answers, &catalog).unwrap();
        let Found::Feasible(strategy) = decide(&job) else {
            panic!("refused")
        };
        let speaker = Speaker::new(answers.units, &catalog, &answers);
        let steps = || strategy.setups.iter().flat_map(|s| &s.steps);
        let said = |reading, values: &[f64]| {
            let mut any = Vec::new();
            for (index, step) in steps().enumerate() {
                let against = Against {
                    job: &job,
                    strategy: &strategy,
                    index,
                    step,
                };
                let mut cache = Cache::default();
                match told(reading, values, &against, (&speaker, &mut cache)) {
                    Ok(told) => any.push(told),
                    Err(why) => assert!(!why.is_empty()),
                }
            }
            any
        };
        let web = steps().find_map(|s| s.web.as_ref()).unwrap().thickness.si();
        assert!(!said(Reading::Web, &[web + 30.0e-6, web]).is_empty());
        let wide = job.part.slots[0].width;
        let slots = said(Reading::Slot, &[wide - 20.0e-6, wide - 60.0e-6]);
        assert!(slots.iter().any(|t| matches!(t.to_use, Some(Use::Off(_)))) || slots.is_empty());
        let power = said(Reading::Power, &[150.0, 60.0]);
        assert!(
            power
                .iter()
                .all(|t| matches!(t.to_use, Some(Use::Force(_))))
        );
        assert!(!power.is_empty());
        assert!(!said(Reading::Chips, &[2.7, 60.0]).is_empty());
        let swings = said(Reading::Runout, &[10.0e-6]);
        assert_eq!(swings.len(), steps().count());
        assert_eq!(swings[0].to_use, Some(Use::Runout(10.0e-6)));
        assert!(said(Reading::Web, &[f64::NAN, 0.0]).is_empty());
    }
}
