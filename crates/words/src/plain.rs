//! A whole outcome as plain text: for the command line, for files, for comparing.

use crate::Speaker;
use crate::checks::{after_turn_over, before_start, cautions_heading, heights, hold_points};
use crate::gains::GAIN_KINDS;
use crate::language::tr;
use crate::limits::limit_name;
use crate::orders::{order_why, telling};
use crate::say;
use crate::sheet;
use crate::text::{plural, upper_first};
use crate::verdicts::utilisation;
use thinwright_core::field::{Field, Input, Table};
use thinwright_core::limits::Severity;
use thinwright_core::strategy::{
    Defaulted, Finding, OrderReport, Outcome, Refusal, Setup, Step, Strategy,
};

use thinwright_quantity::{Kind, Stress, parse};

/// Lines of a text, with indents.
struct Lines(String);

impl Lines {
    fn put(&mut self, indent: usize, text: &str) {
        for _ in 0..indent {
            self.0.push_str("  ");
        }
        // What keeps number and unit together on a page is a plain blank in a terminal.
        self.0.extend(text.chars().map(|c| {
            if matches!(c, '\u{A0}' | '\u{202F}') {
                ' '
            } else {
                c
            }
        }));
        self.0.push('\n');
    }

    fn heading(&mut self, text: &str) {
        self.0.push('\n');
        self.put(0, text);
    }

    fn rest(&mut self, count: u32) {
        if count > 0 {
            let others = plural(count, "other", "others");
            self.put(
                1,
                &say!("and {others} of the same kinds, none better", others),
            );
        }
    }

    fn list(&mut self, heading: &str, items: &[String]) {
        if !items.is_empty() {
            self.heading(heading);
            for item in items {
                self.put(1, &format!("- {item}"));
            }
        }
    }
}

/// The whole outcome in plain text.
pub fn plain(speaker: &Speaker<'_>, outcome: &Outcome) -> String {
    let mut lines = Lines(String::new());
    lines.put(0, &title(speaker));
    match outcome {
        Outcome::Feasible(strategy) => feasible(speaker, strategy, &mut lines),
        Outcome::Refused(refusal) => refused(speaker, refusal, &mut lines),
    }
    lines.0
}

fn title(speaker: &Speaker<'_>) -> String {
    let text = |field: Field| speaker.answers.text(field.into()).trim();
    let name = if text(Field::Name).is_empty() {
        sheet::no_name()
    } else {
        text(Field::Name)
    };
    let material = speaker.row(Table::Materials, text(Field::Material));
    let machine = speaker.row(Table::Machines, text(Field::Machine));
    let known = [name, material, machine]
        .into_iter()
        .filter(|t| !t.is_empty());
    known.collect::<Vec<_>>().join("; ")
}

fn feasible(speaker: &Speaker<'_>, strategy: &Strategy, lines: &mut Lines) {
    lines.put(0, &speaker.summary(strategy));
    lines.put(0, heights());
    for (number, setup) in strategy.setups.iter().enumerate() {
        setup_lines(speaker, number + 1, setup, lines);
    }
    if let Some(budget) = &strategy.turn_over {
        lines.heading(sheet::turning());
        lines.put(1, &speaker.turn_over(budget));
    }
    if let Some(error) = &strategy.web_error {
        lines.heading(tr("The web"));
        lines.put(1, &speaker.web_unknown(error));
    }
    orders(speaker, &strategy.orders, lines);
    for kind in GAIN_KINDS {
        lines.list(kind.heading(), &speaker.gains(&strategy.gains, kind));
    }
    lines.list(sheet::assumed(), &speaker.defaults(strategy));
    lines.list(cautions_heading(), &speaker.cautions(strategy));
    let owned = |items: &[&str]| items.iter().map(|s| (*s).to_owned()).collect::<Vec<_>>();
    lines.list(sheet::before_start(), &owned(&before_start()));
    lines.list(tr("Stop and look"), &owned(&hold_points()));
    if strategy.setups.len() > 1 {
        lines.list(sheet::after_turn(), &owned(&after_turn_over()));
    }
}

impl Speaker<'_> {
    /// A strategy in one line.
    pub fn summary(&self, strategy: &Strategy) -> String {
        let count = |n: usize| u32::try_from(n).unwrap_or(u32::MAX);
        let steps = strategy.setups.iter().map(|s| s.steps.len()).sum();
        say!(
            "{setups}, {steps}, {cutter_changes}, {time} in all",
            setups = plural(count(strategy.setups.len()), "setup", "setups"),
            steps = plural(count(steps), "step", "steps"),
            cutter_changes = plural(strategy.cutter_changes, "cutter change", "cutter changes"),
            time = self.time(strategy.time)
        )
    }

    /// What was assumed, a line each.
    pub fn defaults(&self, strategy: &Strategy) -> Vec<String> {
        let value = |d: &Defaulted| {
            // The core gives quantities in the job's own units.
            let kind = crate::problems::kind(d.field.field);
            match (
                d.field.field.spec().input,
                parse(kind, &d.value, self.answers.units),
            ) {
                (Input::Quantity(_), Ok(si)) => self.value(kind, si),
                _ => self.answer(d.field.field, &d.value).to_owned(),
            }
        };
        let each = strategy.defaults.iter();
        let each = each.map(|d| format!("{}: {}", self.place(d.field), value(d)));
        self.assumed_force().into_iter().chain(each).collect()
    }

    /// For a material without published cutting force: what was assumed.
    fn assumed_force(&self) -> Option<String> {
        let id = self.answers.text(Field::Material.into()).trim();
        let material = self.catalog.material(id).filter(|m| !m.kc_published)?;
        if !self.answers.text(Field::Kc.into()).trim().is_empty() {
            return None;
        }
        let stress = |s: Stress| self.value(Kind::Stress, s.si());
        Some(say!(
            "No cutting force is published for {material}: {low} to {high} was assumed, from the energy that such cuts take",
            material = tr(&material.name),
            low = stress(material.kc1_1.low),
            high = stress(material.kc1_1.high)
        ))
    }
}

fn setup_lines(speaker: &Speaker<'_>, number: usize, setup: &Setup, lines: &mut Lines) {
    lines.heading(&sheet::setup_heading(speaker, number, setup));
    for step in &setup.steps {
        step_lines(speaker, step, lines);
    }
}

fn step_lines(speaker: &Speaker<'_>, step: &Step, lines: &mut Lines) {
    let time = speaker.time(step.time);
    lines.put(
        1,
        &say!(
            "Step {number}. {step} ({time}, path {path})",
            time,
            number = step.number,
            step = speaker.step(step),
            path = speaker.path(step.path)
        ),
    );
    for value in speaker.block(step).lines() {
        lines.put(2, value);
    }
    if let Some(finding) = speaker.binding(step) {
        finding_lines(speaker, tr("binding"), finding, step, lines);
    }
    if let Some(finding) = speaker.next(step) {
        lines.put(
            2,
            &say!("next: {finding}", finding = speaker.finding_line(finding)),
        );
    }
    for finding in speaker.warnings(step) {
        finding_lines(speaker, tr("not kept"), finding, step, lines);
    }
    let all: Vec<String> = step
        .findings
        .iter()
        .filter(|f| f.severity != Severity::Listen)
        .map(|f| format!("{} {}", limit_name(f.limit), utilisation(f.utilisation())))
        .collect();
    lines.put(2, &say!("limits: {limits}", limits = all.join(", ")));
    lines.put(
        2,
        &say!("loads: {loads}", loads = speaker.loads(&step.loads)),
    );
    vibration_lines(speaker, step, lines);
    for considered in &step.considered {
        lines.put(
            2,
            &say!(
                "set aside: {way}",
                way = speaker.considered(considered, Some(step))
            ),
        );
    }
}

/// What gives way under the cut, what may sing, and how to go there by ear.
fn vibration_lines(speaker: &Speaker<'_>, step: &Step, lines: &mut Lines) {
    if let Some(web) = &step.web {
        lines.put(2, &say!("web: {web}", web = speaker.web(web)));
    }
    if let Some(rib) = &step.rib {
        lines.put(2, &say!("ribs: {ribs}", ribs = speaker.ribs(rib)));
    }
    let song = step.stability.as_ref();
    if let Some(song) = song.and_then(|s| speaker.song_short(s)) {
        lines.put(2, &say!("stability: {told}", told = song));
    }
    if let Some(listen) = &step.listen {
        lines.put(
            2,
            &say!("listen: {listen}", listen = speaker.listen(listen)),
        );
    }
}

fn finding_lines(
    speaker: &Speaker<'_>,
    what: &str,
    finding: &Finding,
    step: &Step,
    lines: &mut Lines,
) {
    lines.put(2, &format!("{what}: {}", speaker.finding_line(finding)));
    for remedy in &finding.remedies {
        lines.put(
            3,
            &say!(
                "would help: {remedy}",
                remedy = speaker.remedy(remedy, step)
            ),
        );
    }
}

fn orders(speaker: &Speaker<'_>, orders: &[OrderReport], lines: &mut Lines) {
    let Some(chosen) = orders.first() else {
        return;
    };
    lines.heading(tr("Orders worked out"));
    let why = order_why(chosen.order);
    lines.put(
        1,
        &say!(
            "chosen: {order}: {figures}; {why}",
            why,
            order = speaker.order(chosen),
            figures = speaker.order_figures(chosen)
        ),
    );
    let (told, rest) = telling(orders);
    for other in told.into_iter().skip(1) {
        lines.put(
            1,
            &say!(
                "set aside: {order}: {why}",
                order = speaker.order(other),
                why = speaker.set_aside(other)
            ),
        );
    }
    lines.rest(rest);
}

fn refused(speaker: &Speaker<'_>, refusal: &Refusal, lines: &mut Lines) {
    lines.put(0, &speaker.refusal(refusal));
    lines.list(tr("Cannot be had together"), &speaker.conflict(refusal));
    let gains: Vec<String> = refusal.gains.iter().map(|g| speaker.frees(g)).collect();
    lines.list(tr("Would make it possible"), &gains);
    let changes: Vec<String> = refusal
        .changes
        .iter()
        .map(|c| upper_first(&speaker.change(c)))
        .collect();
    lines.list(
        tr("Single changes that would help, the smallest first"),
        &changes,
    );
    let tried: Vec<String> = refusal
        .tried
        .iter()
        .map(|c| speaker.considered(c, None))
        .collect();
    lines.list(tr("Tried"), &tried);
    let (told, rest) = telling(&refusal.orders);
    let orders: Vec<String> = told
        .into_iter()
        .map(|o| format!("{}: {}", speaker.order(o), speaker.order_figures(o)))
        .collect();
    lines.list(tr("Orders worked out"), &orders);
    lines.rest(rest);
}
