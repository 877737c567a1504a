//! Changes of numbers: what is changed, the numbers before and after, and what becomes of the limits.

use super::clues::percent;
use crate::language::tr;
use crate::say;
use crate::text::upper_first;
use crate::{Speaker, limit_name, utilisation};
use thinwright_core::limits::Severity;
use thinwright_core::trouble::{Advice, Change, Move, Shift};
use thinwright_quantity::{Kind, Length};

/// A number of a step, before and after.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Row {
    /// What it is.
    pub name: &'static str,
    /// Its symbol; empty where it has none.
    pub symbol: &'static str,
    /// Before.
    pub from: String,
    /// After.
    pub to: String,
}

impl Row {
    /// Whether it changes as it is read.
    pub fn changes(&self) -> bool {
        self.from != self.to
    }
}

/// What is left of a utilisation after a change, as a share.
fn left(shift: &Shift) -> String {
    let share = shift.after / shift.before;
    // What was nothing, or cannot be told, stays as it is.
    percent(if share.is_finite() { share } else { 1.0 })
}

/// What is changed.
pub fn move_name(step: Move) -> &'static str {
    tr(match step {
        Move::Shorter => "Let the cutter stand out less",
        Move::OtherSpeed => "Another spindle speed",
        Move::FeedUpSpeedDown => "More feed per tooth at a lower speed",
        Move::BothDown => "Less feed per tooth at a lower speed",
        Move::HalfDepth => "Half the step-down",
        Move::HalfWidth => "Half the stepover",
        Move::MoreFeed => "More feed per tooth",
        Move::LessFeed => "Less feed per tooth",
        Move::SlowerTurns => "Fewer turns at the same feed",
        Move::SlowerEdge => "A lower surface speed",
        Move::FasterTurns => "More turns at the same feed",
        Move::Back => "Back the web",
        Move::Bolt => "Bolt the boss down",
        Move::Reseat => "Less runout",
    })
}

impl Speaker<'_> {
    /// What is changed, with what is aimed at.
    pub fn moved(&self, change: &Change) -> String {
        let name = move_name(change.step);
        match change.aim {
            Some((_, aim)) => say!(
                "{change}: {aim} or less at the tip",
                change = name,
                aim = self.short(Length::from_si(aim))
            ),
            None => name.to_owned(),
        }
    }

    /// The numbers before and after: those that a person types, and the time.
    pub fn moved_rows(&self, change: &Change) -> Vec<Row> {
        let (a, b) = (&change.from, &change.to);
        let row = |name, symbol, from: String, to: String| Row {
            name,
            symbol,
            from,
            to,
        };
        let count = |n: u32| self.value(Kind::Count, f64::from(n));
        let rows = [
            row(
                tr("spindle speed"),
                "n",
                self.spindle_speed(a.n),
                self.spindle_speed(b.n),
            ),
            row(tr("feed"), "vf", self.feed(a.vf), self.feed(b.vf)),
            row(
                tr("feed per tooth"),
                "fz",
                self.short(a.fz),
                self.short(b.fz),
            ),
            row(tr("stepover"), "ae", self.length(a.ae), self.length(b.ae)),
            row(tr("step-down"), "ap", self.length(a.ap), self.length(b.ap)),
            row(tr("levels"), "", count(a.levels), count(b.levels)),
            row(
                tr("stick-out"),
                "",
                self.length(a.stick_out),
                self.length(b.stick_out),
            ),
            row(tr("time"), "", self.time(a.time), self.time(b.time)),
        ];
        let always = ["n", "vf", "ae", "ap"];
        let told = |row: &Row| always.contains(&row.symbol) || row.changes();
        rows.into_iter().filter(told).collect()
    }

    /// What becomes of the limits, a line each: that behind the cause first, then what breaks, then what moves.
    pub fn moved_limits(&self, change: &Change) -> Vec<String> {
        let own = change.own.iter().map(|own| self.shift(own));
        let (breaks, moves): (Vec<&Shift>, Vec<&Shift>) =
            change.others.iter().partition(|s| s.breaks());
        let breaks = breaks.into_iter().map(|shift| self.breaks(shift));
        own.chain(breaks)
            .chain(moves.into_iter().map(|shift| self.shift(shift)))
            .collect()
    }

    /// Why a change was set aside, or what it would do.
    pub fn not_taken(&self, change: &Change) -> String {
        let what = self.moved(change);
        let refused = change
            .others
            .iter()
            .chain(&change.own)
            .find(|s| s.refuses());
        match (refused, change.own) {
            (Some(broken), _) => say!(
                "{change}: it would break a limit. {why}.",
                change = what,
                why = self.reached(broken)
            ),
            (None, Some(own)) => say!(
                "{change}: {limit} comes to {share} of what it is now.",
                change = what,
                limit = limit_name(own.limit),
                share = left(&own)
            ),
            (None, None) => say!("{change}: no limit says what it brings.", change = what),
        }
    }

    /// What is said where practice is divided, and the figures decide; nothing where it is not.
    pub fn divided(&self, advice: &Advice) -> Option<String> {
        let all: Vec<&Change> = advice.change.iter().chain(&advice.aside).collect();
        let at = |step: Move| all.iter().find(|c| c.step == step).copied();
        let reached = |step: Move| at(step).and_then(|c| c.own).map(|own| left(&own));
        if let (Some(up), Some(down)) = (reached(Move::FeedUpSpeedDown), reached(Move::BothDown)) {
            return Some(say!(
                "Practice is divided whether the feed per tooth goes up or down against a tone. Worked out here: the limit behind it \
                 comes to {up} of what it is now with more feed, to {down} with less.",
                up,
                down
            ));
        }
        let seat = at(Move::Reseat)?;
        let share = seat.aim?.1 / seat.from.fz.si();
        let numbers = &self.catalog.numbers;
        let (fine, fair) = (
            percent(numbers.trouble_runout_fine),
            percent(numbers.trouble_runout_fair),
        );
        Some(if share > numbers.trouble_runout_fine * 1.5 {
            say!(
                "Shops aim at a runout of {fine} or of {fair} of the feed per tooth. Worked out here: with {fair} every other limit \
                 stands as it does with less.",
                fine,
                fair
            )
        } else {
            say!(
                "Shops aim at a runout of {fine} or of {fair} of the feed per tooth. Worked out here: {fine} is worth the trouble, as a \
                 limit is near that runout moves, or {fair} is reached already.",
                fine,
                fair
            )
        })
    }

    /// A limit before and after, and what it means then.
    fn shift(&self, shift: &Shift) -> String {
        say!(
            "{limit}: {before} now, {after} then. {why}.",
            limit = upper_first(limit_name(shift.limit)),
            before = utilisation(shift.before),
            after = utilisation(shift.after),
            why = self.reached(shift)
        )
    }

    fn breaks(&self, shift: &Shift) -> String {
        let told = self.shift(shift);
        match shift.limit.spec().severity {
            Severity::Stop | Severity::Quality => say!("It breaks a limit. {told}", told),
            Severity::Advice => say!("It leaves a warning. {told}", told),
            Severity::Listen => say!("Listen for it. {told}", told),
        }
    }

    /// What a limit asks for and allows, after.
    fn reached(&self, shift: &Shift) -> String {
        match &shift.measure {
            Some(measure) => upper_first(&self.measure(shift.limit, measure)),
            None => tr("It does not apply any more").to_owned(),
        }
    }
}
