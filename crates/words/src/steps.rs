//! A step in words: its title, the values to type, its loads, its binding finding.

use crate::Speaker;
use crate::language::tr;
use crate::limits::limit_name;
use crate::methods::method_name;
use crate::say;
use crate::tasks::task_name;
use crate::text::upper_first;
use crate::verdicts::{utilisation, verdict};
use thinwright_core::limits::{LIMITS, Needs, Severity};
use thinwright_core::methods::MethodId;
use thinwright_core::strategy::{Finding, Loads, Step};
use thinwright_quantity::{Kind, Length};

/// A value as it is typed into a path program.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TypedValue {
    /// What it is called.
    pub label: &'static str,
    /// Symbol of ISO 3002, if there is one.
    pub symbol: &'static str,
    /// Value with its unit.
    pub value: String,
}

impl Speaker<'_> {
    /// A step's title: `Clear the recess: offset passes, level by level`.
    pub fn step(&self, step: &Step) -> String {
        format!(
            "{}: {}",
            upper_first(task_name(step.task)),
            method_name(step.method)
        )
    }

    /// The values to type, in the order in which path programs ask.
    pub fn typed_values(&self, step: &Step) -> Vec<TypedValue> {
        let v = |label, symbol, value| TypedValue {
            label,
            symbol,
            value,
        };
        let mut out = vec![
            v(tr("cutter"), "", self.cutter(step.cutter)),
            v(tr("spindle speed"), "n", self.spindle_speed(step.n)),
            v(tr("feed"), "vf", self.feed(step.vf)),
            v(tr("stepover"), "ae", self.length(step.ae)),
            v(tr("step-down"), "ap", self.length(step.ap)),
            v(
                tr("levels"),
                "",
                self.value(Kind::Count, f64::from(step.levels)),
            ),
            v(tr("from height"), "z", self.length(step.z.0)),
            v(tr("to height"), "z", self.length(step.z.1)),
        ];
        let nothing = Length::from_si(0.0);
        if step.leave.0 > nothing {
            out.push(v(tr("leave on walls"), "", self.length(step.leave.0)));
        }
        if step.leave.1 > nothing {
            out.push(v(tr("leave on the floor"), "", self.length(step.leave.1)));
        }
        out.push(v(tr("entry"), "", self.entry(&step.entry)));
        if let Some(tabs) = self.tabs(step) {
            out.push(v(tr("tabs"), "", tabs));
        }
        if let Some(feed) = step.opening_feed {
            out.push(v(
                tr("feed of the first pass of each level"),
                "vf",
                self.feed(feed),
            ));
        }
        if let Some(feed) = step.corner_feed {
            out.push(v(tr("feed in corners"), "vf", self.feed(feed)));
        }
        out.push(v(
            tr("feed per tooth that follows"),
            "fz",
            self.short(step.fz),
        ));
        out.push(v(
            tr("surface speed that follows"),
            "vc",
            self.surface_speed(step.vc),
        ));
        out
    }

    /// The tabs that keep hold of the part, where a step leaves some.
    pub fn tabs(&self, step: &Step) -> Option<String> {
        let numbers = &self.catalog.numbers;
        (step.method == MethodId::OutlineTabs).then(|| {
            say!(
                "{count} left, {width} wide and {height} high",
                count = self.value(Kind::Count, numbers.tab_count),
                width = self.length(Length::mm(numbers.tab_width_mm)),
                height = self.length(Length::mm(numbers.tab_height_mm))
            )
        })
    }

    /// The same to be copied into another program: numbers with a point.
    pub fn block_to_copy(&self, step: &Step) -> String {
        self.to_a_program().block(step)
    }

    /// The values to type as one block, a line each.
    pub fn block(&self, step: &Step) -> String {
        let lines = self.typed_values(step).into_iter().map(|v| {
            let symbol = if v.symbol.is_empty() {
                String::new()
            } else {
                format!(" {}", v.symbol)
            };
            format!("{}{symbol}: {}\n", v.label, v.value)
        });
        lines.collect()
    }

    /// The finding that binds a step: the closest of those that are kept and that its numbers can reach.
    pub fn binding<'s>(&self, step: &'s Step) -> Option<&'s Finding> {
        self.closest(step).into_iter().next()
    }

    /// The finding that would bind next.
    pub fn next<'s>(&self, step: &'s Step) -> Option<&'s Finding> {
        self.closest(step).into_iter().nth(1)
    }

    /// The limits that are kept and that the numbers of a step can reach, the closest first.
    fn closest<'s>(&self, step: &'s Step) -> Vec<&'s Finding> {
        let moves = |f: &Finding| {
            let limit = LIMITS.iter().find(|l| l.id == f.limit);
            limit.is_some_and(|l| l.needs != Needs::Cutter)
        };
        let kept = |f: &&Finding| {
            let broken = f.severity == Severity::Advice && f.utilisation() > 1.0;
            f.severity <= Severity::Advice && !broken && moves(f)
        };
        let mut kept: Vec<&Finding> = step.findings.iter().filter(kept).collect();
        kept.sort_by(|a, b| b.utilisation().total_cmp(&a.utilisation()));
        kept
    }

    /// The warnings of a step: advice that is not kept, the worst first.
    pub fn warnings<'s>(&self, step: &'s Step) -> Vec<&'s Finding> {
        let broken = |f: &&Finding| f.severity == Severity::Advice && f.utilisation() > 1.0;
        let mut warnings: Vec<&Finding> = step.findings.iter().filter(broken).collect();
        warnings.sort_by(|a, b| b.utilisation().total_cmp(&a.utilisation()));
        warnings
    }

    /// A finding on one line: `web softness 1.12, warning: the web is ...`.
    pub fn finding_line(&self, finding: &Finding) -> String {
        format!(
            "{} {}, {}: {}",
            limit_name(finding.limit),
            utilisation(finding.utilisation()),
            verdict(finding, self.catalog.numbers.utilisation_holds),
            self.finding(finding)
        )
    }

    /// What the cut does, at likely values.
    pub fn loads(&self, loads: &Loads) -> String {
        let force = self.force(loads.mean_axial.abs());
        let axial = if loads.mean_axial.si() < 0.0 {
            say!("lifts with {force}", force)
        } else {
            say!("pushes down with {force}", force)
        };
        say!(
            "sideways {mean} on average, {peak} at the peak; {axial}; {power} at the spindle; chip {mean_chip} mean, {greatest} \
             greatest; bend {bend}; stress in the cutter {stress}",
            mean = self.force(loads.mean_lateral),
            peak = self.force(loads.peak_lateral),
            axial,
            power = self.power(loads.power),
            mean_chip = self.short(loads.chip.0),
            greatest = self.short(loads.chip.1),
            bend = self.short(loads.deflection),
            stress = self.stress(loads.stress)
        )
    }
}
