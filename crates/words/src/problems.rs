//! Problems with answers: what is wrong, with the numbers, and what to type instead.

use crate::Speaker;
use crate::figures::unit;
use crate::language::tr;
use crate::say;
use thinwright_core::field::{Field, Input};
use thinwright_core::plan::PlanError;
use thinwright_core::problem::{Into, Problem, ProblemKind};
use thinwright_quantity::{Kind, Length, ParseError, ParseErrorKind};

impl Speaker<'_> {
    /// What is wrong at a field: a sentence that starts small and has no full stop.
    pub fn problem(&self, problem: &Problem) -> String {
        let field = problem.field.field;
        match &problem.kind {
            ProblemKind::Text(error) => {
                self.parse_error(field, self.answers.text(problem.field), error)
            }
            ProblemKind::Missing => {
                say!("this is needed: {example}", example = example(field, self))
            }
            ProblemKind::NoSuchChoice => {
                self.no_such_choice(field, self.answers.text(problem.field))
            }
            ProblemKind::TooSmall { value, least } => {
                let kind = kind(field);
                say!(
                    "{value} is too small: at least {least}",
                    value = self.value(kind, *value),
                    least = self.value(kind, *least)
                )
            }
            ProblemKind::TooLarge { value, greatest } => {
                let kind = kind(field);
                say!(
                    "{value} is too large: at most {greatest}",
                    value = self.value(kind, *value),
                    greatest = self.value(kind, *greatest)
                )
            }
            ProblemKind::NoWeb { .. }
            | ProblemKind::WebDisagrees { .. }
            | ProblemKind::WebTooThick { .. } => self.web_problem(&problem.kind),
            ProblemKind::DoesNotFit { size, room, into } => self.does_not_fit(*size, *room, *into),
            ProblemKind::SlotsMeet { rib } => {
                say!(
                    "the slots run into each other: the rib between them would be {rib}",
                    rib = self.length(*rib)
                )
            }
            ProblemKind::SlotLeavesFloor { by } => {
                say!(
                    "the slots leave the recess floor by {by}",
                    by = self.length(*by)
                )
            }
            ProblemKind::SlotMeetsBoss { by } => {
                say!("the slots run into the boss by {by}", by = self.length(*by))
            }
            ProblemKind::Outline(error) => self.plan_error(error),
            ProblemKind::EmptyRack => {
                tr("the rack is empty: put in at least one cutter").to_owned()
            }
            ProblemKind::GoodCutIncomplete => {
                tr("of a cut that runs well all six numbers are needed, or none").to_owned()
            }
            _ => tr("this answer does not fit the others").to_owned(),
        }
    }

    fn web_problem(&self, kind: &ProblemKind) -> String {
        let bare = |value: Length| self.bare(value);
        let unit = unit(Kind::Length, self.units);
        match *kind {
            ProblemKind::NoWeb {
                thickness,
                depth_a,
                depth_b,
            } => say!(
                "the two recesses leave no web: {thickness} - {depth_a} - {depth_b} = {rest} {unit}",
                unit,
                thickness = bare(thickness),
                depth_a = bare(depth_a),
                depth_b = bare(depth_b),
                rest = bare(thickness - depth_a - depth_b)
            ),
            ProblemKind::WebDisagrees {
                thickness,
                depth_a,
                depth_b,
                web,
            } => say!(
                "the web does not agree: {thickness} - {depth_a} - {depth_b} = {rest}, not {web} {unit}; leave one of them empty",
                unit,
                thickness = bare(thickness),
                depth_a = bare(depth_a),
                depth_b = bare(depth_b),
                rest = bare(thickness - depth_a - depth_b),
                web = bare(web)
            ),
            ProblemKind::WebTooThick {
                thickness,
                depth,
                web,
            } => say!(
                "this web leaves nothing for the other recess: {thickness} - {depth} - {web} = {rest} {unit}",
                unit,
                thickness = bare(thickness),
                depth = bare(depth),
                web = bare(web),
                rest = bare(thickness - depth - web)
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
            Into::Outline => say!(
                "{size} does not fit into the outline, which has {room}",
                size,
                room
            ),
            Into::Recess => say!(
                "{size} does not fit into the recess, which has {room}",
                size,
                room
            ),
            Into::Boss => say!(
                "{size} does not fit into the boss, which has {room}",
                size,
                room
            ),
            Into::OwnLength => say!(
                "{size} wide is more than the {room} that it is long",
                size,
                room
            ),
            Into::StickOut => {
                say!(
                    "{size} is more than the {room} that stick out of the collet",
                    size,
                    room
                )
            }
            Into::CutterRadius => say!(
                "{size} is more than half the cutter's diameter, {room}",
                size,
                room
            ),
            Into::RecessSide => {
                say!(
                    "{size} is more than half the recess's shorter side, {room}",
                    size,
                    room
                )
            }
        }
    }

    fn no_such_choice(&self, field: Field, text: &str) -> String {
        match field.spec().input {
            Input::Choice(keys) => {
                let keys = keys.join(", ");
                say!(
                    "\u{201C}{text}\u{201D} is none of the choices: {keys}",
                    text,
                    keys
                )
            }
            Input::Row(_) | Input::Text | Input::Quantity(_) => {
                say!(
                    "\u{201C}{text}\u{201D} is in no table; choose one from the list",
                    text
                )
            }
        }
    }

    /// What is wrong with a text, and what to type instead.
    pub fn parse_error(&self, field: Field, text: &str, error: &ParseError) -> String {
        let part = text.get(error.at.clone()).unwrap_or(text).trim();
        let unit = unit(kind(field), self.units);
        match error.kind {
            ParseErrorKind::Empty => say!("this is needed: {example}", example = example(field, self)),
            ParseErrorKind::NotANumber => {
                say!("\u{201C}{part}\u{201D} is not a number: {example}", part, example = example(field, self))
            }
            ParseErrorKind::UnknownUnit => {
                say!("the unit \u{201C}{part}\u{201D} is not known: {what_to_type}", part, what_to_type = or_none(unit))
            }
            ParseErrorKind::WrongUnit(_) => {
                say!("\u{201C}{part}\u{201D} measures something else: {what_to_type}", part, what_to_type = or_none(unit))
            }
            ParseErrorKind::AmbiguousMil => {
                tr("\u{201C}mil\u{201D} is a millimetre to some and 0.001 in to others: type mm or thou").to_owned()
            }
            ParseErrorKind::AmbiguousComma => {
                let (whole, split) = (part.replace(',', ""), part.replace(',', "."));
                say!("is it {whole} or {split}? Type it without the comma", whole, split)
            }
            ParseErrorKind::DivisionByZero => tr("a fraction over 0 is no number").to_owned(),
            ParseErrorKind::TooLarge => tr("this is too large to be meant").to_owned(),
            ParseErrorKind::NotWhole => tr("this must be a whole number").to_owned(),
            ParseErrorKind::Negative => tr("this cannot be below 0").to_owned(),
            _ => say!("this cannot be read: {example}", example = example(field, self)),
        }
    }

    fn plan_error(&self, error: &PlanError) -> String {
        match error {
            PlanError::Crossing { .. } => {
                tr("the outline crosses itself: check corners and sizes").to_owned()
            }
            PlanError::HoleOutside { .. } => {
                tr("something inside reaches out of its outline").to_owned()
            }
            PlanError::HolesOverlap { .. } => {
                tr("two things inside the outline overlap").to_owned()
            }
            PlanError::NoArea { .. } => tr("the outline encloses nothing").to_owned(),
            PlanError::TooFar { .. } => {
                tr("the outline is larger than anything that is computed here").to_owned()
            }
            other => say!("these sizes make no outline: {other}", other),
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
        tr("type the number alone").to_owned()
    } else {
        say!("use {unit}, or the number alone", unit)
    }
}

/// What could be typed.
fn example(field: Field, speaker: &Speaker<'_>) -> String {
    match kind(field) {
        Kind::Length | Kind::ShortLength => {
            tr("type a length such as 6.35 mm or 1/4 in").to_owned()
        }
        Kind::Roughness => tr("type a roughness such as 6.3 µm").to_owned(),
        Kind::Count => tr("type a whole number such as 3").to_owned(),
        Kind::Ratio => tr("choose one").to_owned(),
        other => say!("type a number in {unit}", unit = unit(other, speaker.units)),
    }
}
