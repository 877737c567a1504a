//! What would help a finding, with its size.

use crate::Speaker;
use crate::language::tr;
use crate::problems::kind;
use crate::say;
use thinwright_core::field::{Field, FieldId};
use thinwright_core::strategy::{Lever, Remedy, Step};
use thinwright_quantity::{Kind, parse};

/// What a lever is called.
pub(crate) fn lever_name(lever: Lever) -> &'static str {
    tr(match lever {
        Lever::StickOut => "stick-out",
        Lever::StepDown => "step-down",
        Lever::Stepover => "stepover",
        Lever::FeedPerTooth => "feed per tooth",
        Lever::SpindleSpeed => "spindle speed",
        Lever::Flutes => "flutes",
        Lever::CornerRadius => "corner radius",
        Lever::WebThickness => "web",
        Lever::Grip => "grip",
        Lever::Backing => "a backing under the web",
        Lever::BoltedBoss => "the boss bolted down",
        Lever::Clearing => "better chip clearing",
    })
}

/// The kind of a lever's value; `None` for what is there or not.
pub(crate) fn lever_kind(lever: Lever) -> Option<Kind> {
    match lever {
        Lever::StickOut
        | Lever::StepDown
        | Lever::Stepover
        | Lever::CornerRadius
        | Lever::WebThickness => Some(Kind::Length),
        Lever::FeedPerTooth => Some(Kind::ShortLength),
        Lever::SpindleSpeed => Some(Kind::SpindleSpeed),
        Lever::Flutes => Some(Kind::Count),
        Lever::Grip => Some(Kind::Force),
        Lever::Backing | Lever::BoltedBoss | Lever::Clearing => None,
    }
}

impl Speaker<'_> {
    /// A remedy of a step's finding: `step-down 0.3 mm instead of 0.5 mm: 0.42`.
    pub fn remedy(&self, remedy: &Remedy, step: &Step) -> String {
        let lever = lever_name(remedy.lever);
        let then = crate::utilisation(remedy.utilisation);
        let Some(kind) = lever_kind(remedy.lever) else {
            return format!("{lever}: {then}");
        };
        let to = self.value(kind, remedy.to);
        match self.now(remedy.lever, step) {
            Some(now) => say!(
                "{lever} {to} instead of {now}: {utilisation}",
                lever,
                to,
                now = self.value(kind, now),
                utilisation = then
            ),
            None => format!("{lever} {to}: {then}"),
        }
    }

    /// Where a lever stands in a step, SI.
    fn now(&self, lever: Lever, step: &Step) -> Option<f64> {
        let typed = |field: Field| {
            let text = self.answers.text(FieldId::in_row(field, step.cutter));
            parse(kind(field), text, self.answers.units).ok()
        };
        match lever {
            Lever::StickOut => typed(Field::CutterStickOut),
            Lever::StepDown => Some(step.ap.si()),
            Lever::Stepover => Some(step.ae.si()),
            Lever::FeedPerTooth => Some(step.fz.si()),
            Lever::SpindleSpeed => Some(step.n.si()),
            Lever::Flutes => typed(Field::CutterFlutes),
            Lever::CornerRadius => typed(Field::CutterCorner),
            Lever::WebThickness => step.web.as_ref().map(|w| w.thickness.si()),
            Lever::Grip | Lever::Backing | Lever::BoltedBoss | Lever::Clearing => None,
        }
    }
}
