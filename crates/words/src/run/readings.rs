//! Readings at the machine in words: what to read, and what it says.

use crate::Speaker;
use crate::language::tr;
use crate::say;
use thinwright_core::readings::{Removed, Said, Slot, Swing, Unreadable, Web};
use thinwright_quantity::Kind;

/// A reading that there is a form for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reading {
    /// Thickness of the web at centre and edge.
    Web,
    /// Width of a slot at top and bottom.
    Slot,
    /// Watts while cutting and idle.
    Power,
    /// Chips of a timed cut.
    Chips,
    /// Swing of a dial.
    Runout,
}

/// All of them, in order.
pub const READINGS: [Reading; 5] = [
    Reading::Web,
    Reading::Slot,
    Reading::Power,
    Reading::Chips,
    Reading::Runout,
];

impl Reading {
    /// Its name.
    pub fn name(self) -> &'static str {
        tr(match self {
            Reading::Web => "Web thickness at centre and edge",
            Reading::Slot => "Slot width at top and bottom",
            Reading::Power => "Spindle power while cutting and idle",
            Reading::Chips => "Chips of a timed cut",
            Reading::Runout => "Runout at the cutter",
        })
    }

    /// How to read it.
    pub fn how(self) -> &'static str {
        tr(match self {
            Reading::Web => {
                "Spindle stopped, web clean: a micrometer where it is softest, mostly in the middle, and beside the wall."
            }
            Reading::Slot => {
                "Of a slot cut with side passes of a narrower cutter: plug gauges or a caliper, at the top and at the bottom."
            }
            Reading::Power => {
                "A plug-in meter that shows true watts, not volt-amperes: steady in the cut, then idle at the same speed."
            }
            Reading::Chips => {
                "Cut dry for a timed minute, gather every chip, weigh them. The numbers of the step must be those of the cut."
            }
            Reading::Runout => {
                "Spindle stopped and unplugged: a dial test indicator against a ground pin at the real stick-out, turned by hand; the \
                 full swing."
            }
        })
    }

    /// The entries of its form: label and kind.
    pub fn entries(self) -> Vec<(&'static str, Kind)> {
        match self {
            Reading::Web => vec![
                (tr("Thickness at the centre"), Kind::Length),
                (tr("Thickness at the edge"), Kind::Length),
            ],
            Reading::Slot => vec![
                (tr("Width at the top"), Kind::Length),
                (tr("Width at the bottom"), Kind::Length),
            ],
            Reading::Power => vec![
                (tr("Power while cutting, W"), Kind::Ratio),
                (tr("Power idle, same speed, W"), Kind::Ratio),
            ],
            Reading::Chips => vec![
                (tr("Weight of the chips, g"), Kind::Ratio),
                (tr("Time of the cut"), Kind::Duration),
            ],
            Reading::Runout => vec![(tr("Full swing of the dial"), Kind::ShortLength)],
        }
    }
}

impl Speaker<'_> {
    fn span(&self, kind: Kind, said: &Said) -> String {
        if said.high.is_infinite() {
            return say!("at least {value}", value = self.value(kind, said.low));
        }
        say!(
            "{from} to {to}",
            from = self.value(kind, said.low),
            to = self.value(kind, said.high)
        )
    }

    /// What a web says.
    pub fn web_read(&self, web: &Web) -> Vec<String> {
        let short = |si: f64| self.value(Kind::ShortLength, si.abs());
        let mut lines = Vec::new();
        lines.push(if web.bow.abs() <= web.error {
            say!(
                "Centre and edge are alike within {error}: the web did not give by more.",
                error = short(web.error)
            )
        } else if web.bow > 0.0 {
            say!(
                "The centre is {bow} thicker: it went down under the cutter and came back.",
                bow = short(web.bow)
            )
        } else {
            say!(
                "The centre is {bow} thinner: it was pulled up by the helix, or a backing stood out there.",
                bow = short(web.bow)
            )
        });
        lines.push(say!(
            "Reckoned for this step: {give}.",
            give = short(web.reckoned)
        ));
        if let Some(factor) = &web.factor {
            let times = self.span(Kind::Ratio, factor);
            lines.push(if factor.holds(1.0) {
                say!(
                    "That is {times} times what was reckoned: web and force are as they were taken.",
                    times
                )
            } else if factor.low > 1.0 {
                say!(
                    "That is {times} times what was reckoned: either the backing does not touch, or the push is greater. Look at the \
                     backing and the edge of the cutter first.",
                    times
                )
            } else {
                say!(
                    "That is {times} times what was reckoned: the web stands better, or the push is less.",
                    times
                )
            });
        }
        if let Some(height) = web.height {
            lines.push(if height > 0.0 {
                say!(
                    "The edge, where nothing gives, is {off} too thick: heights are set too high, or dirt lay under the part.",
                    off = short(height)
                )
            } else {
                say!(
                    "The edge, where nothing gives, is {off} too thin: heights are set too low, or the cutter was pulled out of its collet.",
                    off = short(height)
                )
            });
        }
        lines
    }

    /// What a slot says.
    pub fn slot_read(&self, slot: &Slot) -> Vec<String> {
        let short = |si: f64| self.value(Kind::ShortLength, si.abs());
        let mut lines = Vec::new();
        lines.push(match &slot.force {
            None => say!(
                "The walls lean by no more than can be read ({error}).",
                error = short(slot.error)
            ),
            Some(force) => say!(
                "Each wall leans by {lean}: a side force of {force} bends this cutter so.",
                lean = short(slot.lean),
                force = self.span(Kind::Force, force)
            ),
        });
        if let Some(factor) = &slot.force_factor {
            lines.push(say!(
                "That is {times} times the force that was reckoned. If the spindle tilts, some of the lean is the machine's.",
                times = self.span(Kind::Ratio, factor)
            ));
        }
        match (&slot.chain, &slot.machine) {
            (Some(chain), Some(machine)) => {
                lines.push(say!(
                    "Each wall is short by {short}: cutter and machine together have {chain}.",
                    short = short(slot.short),
                    chain = self.span(Kind::Stiffness, chain)
                ));
                lines.push(say!(
                    "Without the cutter that leaves {machine} for the machine.",
                    machine = self.span(Kind::Stiffness, machine)
                ));
            }
            _ => lines.push(say!(
                "The walls stand where they should within {error}: stiffer than can be read.",
                error = short(slot.error)
            )),
        }
        lines
    }

    /// What a power says: cutting force over what was reckoned.
    pub fn power_read(&self, factor: &Said) -> Vec<String> {
        let times = self.span(Kind::Ratio, factor);
        let meaning = if factor.holds(1.0) {
            tr("That agrees with the table.")
        } else if factor.low > 1.0 {
            tr(
                "Cutting takes more than was reckoned: a worn edge, built-up metal or packed chips come first; then the alloy.",
            )
        } else {
            tr(
                "Cutting takes less than was reckoned, or less is cut than was set: look at the feed knob first.",
            )
        };
        vec![
            say!(
                "60 to 80 % of the watts above idle reach the cutter: the cutting force is {times} times what was reckoned.",
                times
            ),
            meaning.to_owned(),
        ]
    }

    /// What chips say.
    pub fn chips_read(&self, removed: &Removed) -> Vec<String> {
        let per_minute = 60.0e6;
        let rate = Said {
            low: removed.rate.low * per_minute,
            likely: removed.rate.likely * per_minute,
            high: removed.rate.high * per_minute,
        };
        let share = self.span(Kind::Ratio, &removed.share);
        let meaning = if removed.share.holds(1.0) {
            tr("Feed and depth are what they should be.")
        } else if removed.share.high < 1.0 {
            tr(
                "Less was removed: the feed knob stands below 100 %, depth or width was lost, time went into moves without cutting, or chips \
                got away.",
            )
        } else {
            tr(
                "More was removed: the feed knob stands above 100 %, the cut is deeper than set, or the chips are wet.",
            )
        };
        vec![
            say!(
                "Removed: {rate} cm\u{B3}/min, {share} times what the numbers say.",
                rate = self.span(Kind::Ratio, &rate),
                share
            ),
            meaning.to_owned(),
        ]
    }

    /// What a swing says.
    pub fn swing_read(&self, swing: &Swing, (fine, fair): (f64, f64)) -> Vec<String> {
        let percent = |share: f64| self.value(Kind::Ratio, (share * 100.0).round());
        if swing.alone {
            return vec![say!(
                "A single flute shares with none: runout only widens its circle, and a slot by {runout} at most.",
                runout = self.value(Kind::ShortLength, swing.runout.likely)
            )];
        }
        let mut lines = vec![say!(
            "{runout} is {share} % of the feed per tooth; the heaviest tooth cuts {times} times its share.",
            runout = self.value(Kind::ShortLength, swing.runout.likely),
            share = percent(swing.share.likely),
            times = self.value(Kind::Ratio, swing.heaviest)
        )];
        lines.push(if swing.idle_tooth {
            tr("One tooth does hardly any work: clean and re-seat the collet, turn the cutter in it, read again.").to_owned()
        } else if swing.share.likely <= fine {
            say!("That is good: careful shops aim at {fine} %.", fine = percent(fine))
        } else if swing.share.likely <= fair {
            say!(
                "Shops aim at {fine} or at {fair} %: it will do; the loads of the step are reckoned with it.",
                fine = percent(fine),
                fair = percent(fair)
            )
        } else {
            say!(
                "Shops aim at {fair} % at most: clean and re-seat the collet, turn the cutter in it, read again; or feed more per tooth.",
                fair = percent(fair)
            )
        });
        lines
    }

    /// Why a reading says nothing.
    pub fn unreadable(&self, kind: Kind, why: &Unreadable) -> String {
        let value = |si: f64| self.value(kind, si);
        match *why {
            Unreadable::Impossible { value: v, least } => say!(
                "{value} cannot be: at least {least}.",
                value = value(v),
                least = value(least)
            ),
            Unreadable::Above { value: v, whole } => say!(
                "{value} is more than {whole}: the two look exchanged.",
                value = value(v),
                whole = value(whole)
            ),
            Unreadable::BelowError { value: v, error } => say!(
                "The difference of {value} is less than the instrument's error of {error}: it says nothing.",
                value = value(v),
                error = value(error)
            ),
            Unreadable::TooFar { ratio, most } => say!(
                "That is {ratio} times what was reckoned; more than {most} times, or less than one part in {most}, is a slip of the unit, \
                 of the reading or of the set-up.",
                ratio = self.value(Kind::Ratio, ratio),
                most = self.value(Kind::Ratio, most)
            ),
            _ => tr("This step has nothing to hold that against: choose another step.").to_owned(),
        }
    }
}
