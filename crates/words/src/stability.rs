//! Will a step sing: what is known, how deep it stays quiet, which speeds are good.

mod chart;
mod push;

pub use chart::{Sign, TABLE, TABLE_COLUMNS, WORKING_OUT, depth_axis, speed_axis, tick};

use crate::Speaker;
use crate::utilisation;
use thinwright_core::stability::{LimitReport, ModeReport, SpeedReport, StabilityReport};
use thinwright_core::strategy::Step;
use thinwright_core::vibration::{Axis, TipKnown, Whose};
use thinwright_quantity::{
    Kind, Length, Rounding, UnitSystem, format as written, format_bare, unit_name,
};

/// Name of the section.
pub const NAME: &str = "Will it sing?";
/// Name of the fold with the push test.
pub const PUSH: &str = "Push test: measure instead of guess";
/// How singing sounds and looks.
const LISTEN_FOR: &str = "Listen for a pure tone that rises out of the beat of the teeth; look for regular slanting marks where it was cut.";
/// Why a speed at which the web drums is none for finishing it.
const WHY_NOT_DRUM: &str = "Where a speed drums the web, finish the web at another: the teeth push it in step with its own tone, so it swings \
    and comes out uneven although nothing sings. Keep a little off that peak.";

/// Nobody cuts less deep than this, m.
const LEAST: f64 = 1.0e-5;

/// A share in per cent.
fn percent(share: f64) -> String {
    let value = (1000.0 * share).round() / 10.0;
    let number = format_bare(Kind::Ratio, value, UnitSystem::Metric, Rounding::Nearest);
    format!("{number}\u{A0}%")
}

/// How many times as much.
fn times(ratio: f64) -> String {
    let digits = if ratio < 10.0 { 10.0 } else { 1.0 };
    let value = (digits * ratio).round() / digits;
    format_bare(Kind::Ratio, value, UnitSystem::Metric, Rounding::Nearest)
}

fn owner(whose: Whose) -> &'static str {
    match whose {
        Whose::Cutter => "the cutter",
        Whose::Machine => "the machine",
        Whose::Web => "the web",
        Whose::Rib => "the rib",
    }
}

fn way(axes: &[Axis]) -> &'static str {
    match axes {
        [Axis::X] => " along X",
        [Axis::Y] => " along Y",
        [Axis::Z] => " along the cutter",
        _ => " sideways",
    }
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
            out.push(format!(
                "First trial: {}. {LISTEN_FOR}",
                self.listen(listen)
            ));
        }
        out
    }

    /// The same in one short line for paper, where a frequency is known: the sheet has two pages.
    pub fn song_short(&self, report: &StabilityReport) -> Option<String> {
        let here = report.here.filter(|_| report.known > TipKnown::Nothing)?;
        let mut out = format!("Quiet {}", self.up_to(here, report.top)).replace("up to", "to");
        if let Some(limit) = &report.limit {
            out += &format!(", sings from {}", self.depth(limit.depth));
        }
        if let Some(best) = report.speeds.first() {
            out += &format!("; best near {}", self.spindle_speed(best.n));
        }
        Some(out + ".")
    }

    /// Whether it may sing as far as is known.
    pub fn may_it_sing(&self, report: &StabilityReport) -> bool {
        report.cut.ap > report.here.unwrap_or(report.quiet.0)
    }

    /// A depth that was worked out: what must not be exceeded, in three digits and one unit, so that it compares.
    fn depth(&self, value: Length) -> String {
        let number = format_bare(Kind::ShortLength, value.si(), self.units, Rounding::Down);
        format!("{number}\u{A0}{}", unit_name(Kind::ShortLength, self.units))
    }

    /// Up to a depth; what is less than a cut is not told in figures.
    fn quietly(&self, depth: Length) -> String {
        if depth.si() < LEAST {
            let least = written(Kind::Length, LEAST, self.units, Rounding::Nearest);
            format!("only below {least}")
        } else {
            format!("up to {}", self.depth(depth))
        }
    }

    /// Up to a depth; beyond the top of the chart nobody has looked.
    fn up_to(&self, depth: Length, top: Length) -> String {
        if depth < top {
            self.quietly(depth)
        } else {
            format!("beyond {}", self.depth(top))
        }
    }

    fn tip_known(&self, report: &StabilityReport) -> String {
        match report.known {
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
        }
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
            let at = mode
                .frequency
                .map_or_else(String::new, |f| format!(" at {}", self.frequency(f)));
            format!(
                "{}{}, {}{at}, damping {}",
                owner(mode.whose),
                way(axes),
                self.stiffness(mode.stiffness),
                percent(mode.damping),
            )
        });
        let each: Vec<String> = each.collect();
        format!("Reckoned with {}.", each.join("; "))
    }

    fn any_speed(&self, report: &StabilityReport) -> String {
        let (bad, likely) = report.quiet;
        format!(
            "At any speed it is quiet {} at the bad end of what is not known, {} at likely values.",
            self.quietly(bad),
            self.quietly(likely),
        )
    }

    fn may_sing(&self, report: &StabilityReport) -> String {
        let planned = self.length(report.cut.ap);
        if report.cut.ap <= report.quiet.0 {
            return format!("{planned} is planned: it stays quiet as far as can be told.");
        }
        let likely = if report.cut.ap <= report.quiet.1 {
            ", though not at likely values"
        } else {
            ""
        };
        format!(
            "{planned} is planned: it may sing{likely}. Shops cut deeper than this every day, so it is no reason to hold \
             back, only to go there by ear."
        )
    }

    fn here(&self, report: &StabilityReport) -> Option<String> {
        let here = report.here?;
        let spread = percent(self.catalog.numbers.tap_spread);
        let mut out = format!(
            "At {} it is quiet {}: {} of what comes out, with the tone {spread} off to the worse side.",
            self.spindle_speed(report.cut.n),
            self.up_to(here, report.top),
            percent(report.share),
        );
        let planned = self.length(report.cut.ap);
        let share = report.cut.ap.si() / here.si();
        let used = match here < report.top {
            true if share > 1.0 => format!(", {} times that", times(share)),
            true => format!(", {} of that", utilisation(share)),
            false => String::new(),
        };
        let then = match (self.may_it_sing(report), report.known) {
            (false, _) => "",
            (true, TipKnown::Measured) => ": it will sing, as far as can be told",
            (true, _) => ": it may sing",
        };
        out += &format!(" {planned} is planned{used}{then}.");
        Some(out)
    }

    /// Where it sings first at its speed, and how.
    fn sings(&self, report: &StabilityReport) -> String {
        let Some(limit) = &report.limit else {
            return format!(
                "With the tone just as it was heard, nothing sings at this speed up to {}.",
                self.depth(report.top)
            );
        };
        format!(
            "With the tone just as it was heard, it sings from {} on: {}.",
            self.depth(limit.depth),
            self.how(limit)
        )
    }

    fn how(&self, limit: &LimitReport) -> String {
        let (whose, tone) = (owner(limit.whose), self.frequency(limit.frequency));
        if limit.flip {
            format!("every other tooth cuts deep, and {whose} swings near {tone}")
        } else {
            format!("a tone of its own near {tone}, that of {whose}")
        }
    }

    fn good_speeds(&self, report: &StabilityReport) -> Vec<String> {
        if report.speeds.is_empty() {
            return vec!["No other speed of machine and cutter is quiet much deeper.".to_owned()];
        }
        let mut out: Vec<String> = report
            .speeds
            .iter()
            .map(|s| self.good_speed(s, report))
            .collect();
        if report.speeds.iter().any(|s| s.drums) {
            out.push(WHY_NOT_DRUM.to_owned());
        }
        out
    }

    fn good_speed(&self, speed: &SpeedReport, report: &StabilityReport) -> String {
        let mut out = format!(
            "Good speed: {}, quiet {}",
            self.spindle_speed(speed.n),
            self.up_to(speed.depth, report.top)
        );
        let error = percent(report.tone_error);
        if speed.off < speed.depth.min(report.top) {
            let lost = Length::from_si(speed.depth.min(report.top).si() - speed.off.si());
            out += &format!("; the tone {error} off costs {} of it", self.depth(lost));
        } else {
            out += &format!("; the tone {error} off costs nothing");
        }
        if speed.drums {
            out += "; the web drums there";
        }
        out + "."
    }

    fn rubbing(&self, report: &StabilityReport, step: &Step) -> Option<String> {
        let slow = report.damped_below?;
        let here = if step.vc < slow {
            "this cut is slower, which may be why it runs more quietly than told here"
        } else {
            "this cut is faster"
        };
        Some(format!(
            "Not counted on: below some {} the flank of the edge may rub the swing away; {here}.",
            self.surface_speed(slow)
        ))
    }

    /// What would tell more.
    fn worth_measuring(&self, report: &StabilityReport) -> Option<String> {
        let tap = "tap the cutter in its collet, at rest and unplugged, and enter its tone: then good speeds can be picked";
        let push = "make the push test: then depths are more than a guess";
        let pushed = self
            .answers
            .iter()
            .any(|(id, a)| id.key().starts_with("push.") && !a.text.trim().is_empty());
        let wanted: Vec<&str> = match report.known {
            TipKnown::Nothing if pushed => vec![tap],
            TipKnown::Nothing => vec![tap, push],
            TipKnown::Frequency => vec![push],
            TipKnown::Measured => vec![],
        };
        (!wanted.is_empty()).then(|| format!("To know more, {}.", wanted.join("; and ")))
    }
}
