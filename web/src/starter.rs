//! Cutters of the starter racks as answers.

use thinwright_catalog::{CutterKind, CutterMaterial, CutterRow};
use thinwright_core::field::{Field, FieldId, Input};
use thinwright_core::{Answers, Known};
use thinwright_quantity::{Kind, Rounding, UnitSystem, format_bare};

/// The texts of a cutter's fields, as a person would type them.
pub(crate) fn texts(row: &CutterRow, units: UnitSystem) -> Vec<(Field, String)> {
    let number = |field: Field, si: f64| {
        let kind = match field.spec().input {
            Input::Quantity(kind) => kind,
            Input::Text | Input::Choice(_) | Input::Row(_) => Kind::Ratio,
        };
        (field, format_bare(kind, si, units, Rounding::Nearest))
    };
    let word = |field, word: &str| (field, word.to_owned());
    let drill = row.kind == CutterKind::Drill;
    // The shortest stick-out that keeps the whole reach.
    let stick_out = row.reach.si().max(row.flute_length.si());
    let mut out = vec![
        word(Field::CutterKind, if drill { "drill" } else { "end-mill" }),
        number(Field::CutterDiameter, row.d.si()),
        number(Field::CutterFlutes, f64::from(row.flutes)),
        number(Field::CutterFluteLength, row.flute_length.si()),
        number(Field::CutterReach, row.reach.si()),
        number(Field::CutterShank, row.shank_d.si()),
        number(Field::CutterStickOut, stick_out),
        word(
            Field::CutterMaterial,
            if row.material == CutterMaterial::Carbide {
                "carbide"
            } else {
                "hss"
            },
        ),
    ];
    if !drill {
        out.push(number(Field::CutterCorner, row.corner_radius.si()));
        out.push(number(Field::CutterHelix, row.helix.si()));
        out.push(word(
            Field::CutterCentre,
            if row.centre_cutting { "yes" } else { "no" },
        ));
    }
    out
}

/// Puts a cutter at the end of the rack; nothing when the rack is full.
pub(crate) fn add(answers: &mut Answers, row: &CutterRow) {
    if let Some(at) = answers.add_cutter() {
        for (field, text) in texts(row, answers.units) {
            answers.set(FieldId::in_row(field, at), text, Known::DataSheet);
        }
    }
}

/// Puts a copy of a cutter at the end of the rack; nothing when the rack is full.
pub(crate) fn copy(answers: &mut Answers, row: u8) {
    let source = answers.iter().filter(|(id, _)| id.row == Some(row));
    let source: Vec<_> = source
        .map(|(id, answer)| (id.field, answer.clone()))
        .collect();
    if let Some(at) = answers.add_cutter() {
        for (field, answer) in source {
            answers.set(FieldId::in_row(field, at), answer.text, answer.known);
        }
    }
}
