//! Will a step sing: what is known, how deep it stays quiet, which speeds are good.

mod chart;
mod push;
mod speeds;

pub use chart::{Sign, depth_axis, speed_axis, table, table_columns, tick, working_out};

use crate::Speaker;
use crate::figures::{bare, unit, written};
use crate::language::tr;
use crate::say;
use crate::utilisation;
use thinwright_core::stability::{LimitReport, ModeReport, StabilityReport};
use thinwright_core::strategy::Step;
use thinwright_core::vibration::{Axis, TipKnown, Whose};
use thinwright_quantity::{Kind, Length, Rounding, UnitSystem};

/// Name of the section.
pub fn name() -> &'static str {
    tr("Will it sing?")
}
/// Name of the fold with the push test.
pub fn push() -> &'static str {
    tr("Push test: measure instead of guess")
}
/// How singing sounds and looks.
fn listen_for() -> &'static str {
    tr(
        "Listen for a pure tone that rises out of the beat of the teeth; look for regular slanting marks where it was cut.",
    )
}
/// Nobody cuts less deep than this, m.
const LEAST: f64 = 1.0e-5;

/// A share in per cent.
fn percent(share: f64) -> String {
    let value = (1000.0 * share).round() / 10.0;
    let number = bare(Kind::Ratio, value, UnitSystem::Metric, Rounding::Nearest);
    format!("{number}\u{A0}%")
}

/// How many times as much.
fn times(ratio: f64) -> String {
    let digits = if ratio < 10.0 { 10.0 } else { 1.0 };
    let value = (digits * ratio).round() / digits;
    bare(Kind::Ratio, value, UnitSystem::Metric, Rounding::Nearest)
}

fn owner(whose: Whose) -> &'static str {
    tr(match whose {
        Whose::Cutter => "the cutter",
        Whose::Machine => "the machine",
        Whose::Web => "the web",
        Whose::Rib => "the rib",
    })
}

/// The tone of what vibrates.
fn that_of(whose: Whose) -> &'static str {
    tr(match whose {
        Whose::Cutter => "that of the cutter",
        Whose::Machine => "that of the machine",
        Whose::Web => "that of the web",
        Whose::Rib => "that of the rib",
    })
}

fn way(axes: &[Axis]) -> &'static str {
    tr(match axes {
        [Axis::X] => "along X",
        [Axis::Y] => "along Y",
        [Axis::Z] => "along the cutter",
        _ => "sideways",
    })
}

impl Speaker<'_> {
    /// All that is said of it, a line each; the first trial by ear comes last.
    pub fn song(&self, step: &Step) -> Vec<String> {
        let Some(report) = &step.stability else {
            return Vec::new();
        };
        let mut out = vec![self.tip_known(report), self.voices(&report.modes)];
        if report.known > TipKnown::Nothing {
            out.extend(self.here(report));
            out.push(self.sings(report));
            out.push(self.any_speed(report));
            out.extend(self.good_speeds(report));
            out.extend(self.rubbing(report, step));
        } else {
            out.push(self.any_speed(report));
            out.push(self.may_sing(report));
        }
        out.extend(self.worth_measuring(report));
        if let Some(listen) = step.listen.as_ref().filter(|l| l.planned > l.quiet) {
            let trial = say!("First trial: {listen}.", listen = self.listen(listen));
            out.push(format!("{trial} {}", listen_for()));
        }
        out
    }

    /// The same in one short line for paper, where a frequency is known: the sheet has two pages.
    pub fn song_short(&self, report: &StabilityReport) -> Option<String> {
        let here = report.here.filter(|_| report.known > TipKnown::Nothing)?;
        let mut out = if here >= report.top {
            say!("Quiet beyond {depth}", depth = self.depth(report.top))
        } else if here.si() < LEAST {
            say!("Quiet only below {depth}", depth = self.least())
        } else {
            say!("Quiet to {depth}", depth = self.depth(here))
        };
        if let Some(limit) = &report.limit {
            out = say!(
                "{quiet}, sings from {depth}",
                quiet = out,
                depth = self.depth(limit.depth)
            );
        }
        if let Some(best) = report.speeds.first() {
            out = say!(
                "{told}; best near {speed}",
                told = out,
                speed = self.spindle_speed(best.n)
            );
        }
        Some(out + ".")
    }

    /// Whether it may sing as far as is known.
    pub fn may_it_sing(&self, report: &StabilityReport) -> bool {
        report.cut.ap > report.here.unwrap_or(report.quiet.0)
    }

    /// A depth that was worked out: what must not be exceeded, in three digits and one unit, so that it compares.
    fn depth(&self, value: Length) -> String {
        let number = bare(Kind::ShortLength, value.si(), self.units, Rounding::Down);
        format!("{number}\u{A0}{}", unit(Kind::ShortLength, self.units))
    }

    /// The least depth that is told.
    fn least(&self) -> String {
        written(Kind::Length, LEAST, self.units, Rounding::Nearest)
    }

    /// Up to a depth; what is less than a cut is not told in figures.
    fn quietly(&self, depth: Length) -> String {
        if depth.si() < LEAST {
            say!("only below {depth}", depth = self.least())
        } else {
            say!("up to {depth}", depth = self.depth(depth))
        }
    }

    /// Up to a depth; beyond the top of the chart nobody has looked.
    fn up_to(&self, depth: Length, top: Length) -> String {
        if depth < top {
            self.quietly(depth)
        } else {
            say!("beyond {depth}", depth = self.depth(top))
        }
    }

    fn tip_known(&self, report: &StabilityReport) -> String {
        tr(match report.known {
            TipKnown::Nothing => {
                "The tone of the cutter in its collet is not known, so no speed can be picked: what is told holds at any speed."
            }
            TipKnown::Frequency => {
                "The tone of the cutter is known, so good speeds can be told. How stiff it stands is an estimate: depths are advice."
            }
            TipKnown::Measured => {
                "Tone and stiffness at the cutter were measured: speeds and depths are chosen by them. Damping and cutting force are still \
                 estimates, so nothing is refused for it."
            }
        })
        .to_owned()
    }

    /// What vibrates, as it was reckoned.
    fn voices(&self, modes: &[ModeReport]) -> String {
        let mut told: Vec<(ModeReport, Vec<Axis>)> = Vec::new();
        for mode in modes {
            let alike = |m: &ModeReport| {
                ModeReport {
                    axis: m.axis,
                    ..*mode
                } == *m
            };
            match told.iter_mut().find(|(first, _)| alike(first)) {
                Some((_, axes)) => axes.push(mode.axis),
                None => told.push((*mode, vec![mode.axis])),
            }
        }
        let each = told.iter().map(|(mode, axes)| {
            let (whose, way) = (owner(mode.whose), way(axes));
            let stiffness = self.stiffness(mode.stiffness);
            let damping = percent(mode.damping);
            match mode.frequency {
                None => say!(
                    "{whose} {way}, {stiffness}, damping {damping}",
                    whose,
                    way,
                    stiffness,
                    damping
                ),
                Some(f) => say!(
                    "{whose} {way}, {stiffness} at {frequency}, damping {damping}",
                    whose,
                    way,
                    stiffness,
                    frequency = self.frequency(f),
                    damping
                ),
            }
        });
        let each: Vec<String> = each.collect();
        say!("Reckoned with {vibrating}.", vibrating = each.join("; "))
    }

    fn any_speed(&self, report: &StabilityReport) -> String {
        let (bad, likely) = report.quiet;
        say!(
            "At any speed it is quiet {bad} at the bad end of what is not known, {likely} at likely values.",
            bad = self.quietly(bad),
            likely = self.quietly(likely)
        )
    }

    fn may_sing(&self, report: &StabilityReport) -> String {
        let planned = self.length(report.cut.ap);
        if report.cut.ap <= report.quiet.0 {
            return say!(
                "{planned} is planned: it stays quiet as far as can be told.",
                planned
            );
        }
        if report.cut.ap <= report.quiet.1 {
            say!(
                "{planned} is planned: it may sing, though not at likely values. Shops cut deeper than this every day, so it \
                 is no reason to hold back, only to go there by ear.",
                planned
            )
        } else {
            say!(
                "{planned} is planned: it may sing. Shops cut deeper than this every day, so it is no reason to hold back, \
                 only to go there by ear.",
                planned
            )
        }
    }

    fn here(&self, report: &StabilityReport) -> Option<String> {
        let here = report.here?;
        let spread = percent(self.catalog.numbers.tap_spread);
        let quiet = say!(
            "At {speed} it is quiet {up_to_depth}: {share} of what comes out, with the tone {spread} off to the worse side.",
            speed = self.spindle_speed(report.cut.n),
            up_to_depth = self.up_to(here, report.top),
            share = percent(report.share),
            spread
        );
        let planned = self.length(report.cut.ap);
        let share = report.cut.ap.si() / here.si();
        let told = match here < report.top {
            true if share > 1.0 => say!(
                "{planned} is planned, {share} times that",
                planned,
                share = times(share)
            ),
            true => say!(
                "{planned} is planned, {share} of that",
                planned,
                share = utilisation(share)
            ),
            false => say!("{planned} is planned", planned),
        };
        Some(match (self.may_it_sing(report), report.known) {
            (false, _) => format!("{quiet} {told}."),
            (true, TipKnown::Measured) => {
                let sings = say!("{told}: it will sing, as far as can be told.", told);
                format!("{quiet} {sings}")
            }
            (true, _) => {
                let sings = say!("{told}: it may sing.", told);
                format!("{quiet} {sings}")
            }
        })
    }

    /// Where it sings first at its speed, and how.
    fn sings(&self, report: &StabilityReport) -> String {
        let Some(limit) = &report.limit else {
            return say!(
                "With the tone just as it was heard, nothing sings at this speed up to {depth}.",
                depth = self.depth(report.top)
            );
        };
        say!(
            "With the tone just as it was heard, it sings from {depth} on: {how}.",
            depth = self.depth(limit.depth),
            how = self.how(limit)
        )
    }

    fn how(&self, limit: &LimitReport) -> String {
        let tone = self.frequency(limit.frequency);
        if limit.flip {
            say!(
                "every other tooth cuts deep, and {whose} swings near {tone}",
                whose = owner(limit.whose),
                tone
            )
        } else {
            say!(
                "a tone of its own near {tone}, {that_of_whom}",
                tone,
                that_of_whom = that_of(limit.whose)
            )
        }
    }

    fn rubbing(&self, report: &StabilityReport, step: &Step) -> Option<String> {
        let slow = report.damped_below?;
        let slow_speed = self.surface_speed(slow);
        Some(if step.vc < slow {
            say!(
                "Not counted on: below some {speed} the flank of the edge may rub the swing away; this cut is slower, which may \
                 be why it runs more quietly than told here.",
                speed = slow_speed
            )
        } else {
            say!(
                "Not counted on: below some {speed} the flank of the edge may rub the swing away; this cut is faster.",
                speed = slow_speed
            )
        })
    }

    /// What would tell more.
    fn worth_measuring(&self, report: &StabilityReport) -> Option<String> {
        let pushed = self
            .answers
            .iter()
            .any(|(id, a)| id.key().starts_with("push.") && !a.text.trim().is_empty());
        let wanted = tr(match report.known {
            TipKnown::Nothing if pushed => {
                "To know more, tap the cutter in its collet, at rest and unplugged, and enter its tone: then good speeds can be \
                 picked."
            }
            TipKnown::Nothing => {
                "To know more, tap the cutter in its collet, at rest and unplugged, and enter its tone: then good speeds can be \
                 picked; and make the push test: then depths are more than a guess."
            }
            TipKnown::Frequency => {
                "To know more, make the push test: then depths are more than a guess."
            }
            TipKnown::Measured => return None,
        });
        Some(wanted.to_owned())
    }
}
