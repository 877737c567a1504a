//! Problems with answers: what is wrong, with the numbers, and what to type instead.

use crate::Speaker;
use thinwright_core::field::{Field, Input};
use thinwright_core::plan::PlanError;
use thinwright_core::problem::{Into, Problem, ProblemKind};
use thinwright_quantity::{Kind, Length, ParseError, ParseErrorKind, unit_name};

impl Speaker<'_> {
    /// What is wrong at a field: a sentence that starts small and has no full stop.
    pub fn problem(&self, problem: &Problem) -> String {
        let field = problem.field.field;
        match &problem.kind {
            ProblemKind::Text(error) => {
                self.parse_error(field, self.answers.text(problem.field), error)
            }
            ProblemKind::Missing => format!("this is needed: {}", example(field, self)),
            ProblemKind::NoSuchChoice => {
                self.no_such_choice(field, self.answers.text(problem.field))
            }
            ProblemKind::TooSmall { value, least } => {
                let kind = kind(field);
                format!(
                    "{} is too small: at least {}",
                    self.value(kind, *value),
                    self.value(kind, *least)
                )
            }
            ProblemKind::TooLarge { value, greatest } => {
                let kind = kind(field);
                format!(
                    "{} is too large: at most {}",
                    self.value(kind, *value),
                    self.value(kind, *greatest)
                )
            }
            ProblemKind::NoWeb { .. }
            | ProblemKind::WebDisagrees { .. }
            | ProblemKind::WebTooThick { .. } => self.web_problem(&problem.kind),
            ProblemKind::DoesNotFit { size, room, into } => self.does_not_fit(*size, *room, *into),
            ProblemKind::SlotsMeet { rib } => {
                format!(
                    "the slots run into each other: the rib between them would be {}",
                    self.length(*rib)
                )
            }
            ProblemKind::SlotLeavesFloor { by } => {
                format!("the slots leave the recess floor by {}", self.length(*by))
            }
            ProblemKind::SlotMeetsBoss { by } => {
                format!("the slots run into the boss by {}", self.length(*by))
            }
            ProblemKind::Outline(error) => self.plan_error(error),
            ProblemKind::EmptyRack => "the rack is empty: put in at least one cutter".to_owned(),
            ProblemKind::GoodCutIncomplete => {
                "of a cut that runs well all six numbers are needed, or none".to_owned()
            }
            _ => "this answer does not fit the others".to_owned(),
        }
    }

    fn web_problem(&self, kind: &ProblemKind) -> String {
        let bare = |value: Length| self.bare(value);
        let unit = unit_name(Kind::Length, self.units);
        match *kind {
            ProblemKind::NoWeb {
                thickness,
                depth_a,
                depth_b,
            } => format!(
                "the two recesses leave no web: {} - {} - {} = {} {unit}",
                bare(thickness),
                bare(depth_a),
                bare(depth_b),
                bare(thickness - depth_a - depth_b),
            ),
            ProblemKind::WebDisagrees {
                thickness,
                depth_a,
                depth_b,
                web,
            } => format!(
                "the web does not agree: {} - {} - {} = {}, not {} {unit}; leave one of them empty",
                bare(thickness),
                bare(depth_a),
                bare(depth_b),
                bare(thickness - depth_a - depth_b),
                bare(web),
            ),
            ProblemKind::WebTooThick {
                thickness,
                depth,
                web,
            } => format!(
                "this web leaves nothing for the other recess: {} - {} - {} = {} {unit}",
                bare(thickness),
                bare(depth),
                bare(web),
                bare(thickness - depth - web),
            ),
            _ => String::new(),
        }
    }

    fn bare(&self, value: Length) -> String {
        let shown = self.length(value);
        let end = shown.find('\u{A0}').unwrap_or(shown.len());
        shown[..end].to_owned()
    }

    fn does_not_fit(&self, size: Length, room: Length, into: Into) -> String {
        let (size, room) = (self.length(size), self.length(room));
        match into {
            Into::Outline => format!("{size} does not fit into the outline, which has {room}"),
            Into::Recess => format!("{size} does not fit into the recess, which has {room}"),
            Into::Boss => format!("{size} does not fit into the boss, which has {room}"),
            Into::OwnLength => format!("{size} wide is more than the {room} that it is long"),
            Into::StickOut => {
                format!("{size} is more than the {room} that stick out of the collet")
            }
            Into::CutterRadius => format!("{size} is more than half the cutter's diameter, {room}"),
            Into::RecessSide => {
                format!("{size} is more than half the recess's shorter side, {room}")
            }
        }
    }

    fn no_such_choice(&self, field: Field, text: &str) -> String {
        match field.spec().input {
            Input::Choice(keys) => {
                let keys = keys.join(", ");
                format!("\u{201C}{text}\u{201D} is none of the choices: {keys}")
            }
            Input::Row(_) | Input::Text | Input::Quantity(_) => {
                format!("\u{201C}{text}\u{201D} is in no table; choose one from the list")
            }
        }
    }

    /// What is wrong with a text, and what to type instead.
    pub fn parse_error(&self, field: Field, text: &str, error: &ParseError) -> String {
        let part = text.get(error.at.clone()).unwrap_or(text).trim();
        let unit = unit_name(kind(field), self.units);
        match error.kind {
            ParseErrorKind::Empty => format!("this is needed: {}", example(field, self)),
            ParseErrorKind::NotANumber => {
                format!("\u{201C}{part}\u{201D} is not a number: {}", example(field, self))
            }
            ParseErrorKind::UnknownUnit => {
                format!("the unit \u{201C}{part}\u{201D} is not known: {}", or_none(unit))
            }
            ParseErrorKind::WrongUnit(_) => {
                format!("\u{201C}{part}\u{201D} measures something else: {}", or_none(unit))
            }
            ParseErrorKind::AmbiguousMil => {
                "\u{201C}mil\u{201D} is a millimetre to some and 0.001 in to others: type mm or thou".to_owned()
            }
            ParseErrorKind::AmbiguousComma => {
                let (whole, split) = (part.replace(',', ""), part.replace(',', "."));
                format!("is it {whole} or {split}? Type it without the comma")
            }
            ParseErrorKind::DivisionByZero => "a fraction over 0 is no number".to_owned(),
            ParseErrorKind::TooLarge => "this is too large to be meant".to_owned(),
            ParseErrorKind::NotWhole => "this must be a whole number".to_owned(),
            ParseErrorKind::Negative => "this cannot be below 0".to_owned(),
            _ => format!("this cannot be read: {}", example(field, self)),
        }
    }

    fn plan_error(&self, error: &PlanError) -> String {
        match error {
            PlanError::Crossing { .. } => {
                "the outline crosses itself: check corners and sizes".to_owned()
            }
            PlanError::HoleOutside { .. } => {
                "something inside reaches out of its outline".to_owned()
            }
            PlanError::HolesOverlap { .. } => "two things inside the outline overlap".to_owned(),
            PlanError::NoArea { .. } => "the outline encloses nothing".to_owned(),
            PlanError::TooFar { .. } => {
                "the outline is larger than anything that is computed here".to_owned()
            }
            other => format!("these sizes make no outline: {other}"),
        }
    }
}

/// The kind of a field's quantity.
pub(crate) fn kind(field: Field) -> Kind {
    match field.spec().input {
        Input::Quantity(kind) => kind,
        Input::Text | Input::Choice(_) | Input::Row(_) => Kind::Ratio,
    }
}

fn or_none(unit: &str) -> String {
    if unit.is_empty() {
        "type the number alone".to_owned()
    } else {
        format!("use {unit}, or the number alone")
    }
}

/// What could be typed.
fn example(field: Field, speaker: &Speaker<'_>) -> String {
    match kind(field) {
        Kind::Length | Kind::ShortLength => "type a length such as 6.35 mm or 1/4 in".to_owned(),
        Kind::Roughness => "type a roughness such as 6.3 µm".to_owned(),
        Kind::Count => "type a whole number such as 3".to_owned(),
        Kind::Ratio => "choose one".to_owned(),
        other => format!("type a number in {}", unit_name(other, speaker.units)),
    }
}
