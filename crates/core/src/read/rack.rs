//! The rack: one cutter a row, gaps filled in.

use super::machine::{SPEED, TONE};
use super::reader::Reader;
use crate::field::{Field, FieldId};
use crate::job::{Cutter, Ring};
use crate::problem::{Into, ProblemKind};
use thinwright_catalog::CutterMaterial;
use thinwright_quantity::Length;

const DIAMETER: (f64, f64) = (1.0e-4, 0.1);
const LENGTH: (f64, f64) = (1.0e-4, 0.5);
const DAMPING: (f64, f64) = (1.0e-4, 0.3);
const HELIX: (f64, f64) = (0.0, 1.3);

/// Reads the rack; rows with problems are left out, and the problems stand.
pub(super) fn read(reader: &mut Reader) -> Vec<Cutter> {
    let rows = reader.answers.rack_rows();
    if rows == 0 {
        reader.problem(
            FieldId::in_row(Field::CutterDiameter, 0),
            ProblemKind::EmptyRack,
        );
    }
    (0..rows).filter_map(|row| cutter(reader, row)).collect()
}

fn cutter(reader: &mut Reader, row: u8) -> Option<Cutter> {
    let at = |field| FieldId::in_row(field, row);
    let numbers = reader.catalog.numbers;
    let drill = reader.choice(at(Field::CutterKind), 0) == 1;
    let d = reader.needed(at(Field::CutterDiameter), DIAMETER);
    let z = reader.count(at(Field::CutterFlutes), (1, 20), 2);
    let flute_length = reader.needed(at(Field::CutterFluteLength), LENGTH);
    let reach = flute_length.and_then(|f| reader.or_silent(at(Field::CutterReach), LENGTH, f));
    let shank = d.and_then(|d| reader.or_silent(at(Field::CutterShank), DIAMETER, d));
    let stick_out = reader.needed(at(Field::CutterStickOut), LENGTH);
    let corner = reader.or_silent(at(Field::CutterCorner), (0.0, 0.05), 0.0);
    let helix = reader.or_silent(
        at(Field::CutterHelix),
        HELIX,
        numbers.usual_helix_deg.to_radians(),
    );
    let carbide = reader.choice(at(Field::CutterMaterial), 0) == 0;
    let centre_cutting = reader.choice(at(Field::CutterCentre), 0) == 0;
    let marked = reader.typed(at(Field::CutterMarked), SPEED);
    let ring = ring(reader, row);
    let material = if carbide {
        CutterMaterial::Carbide
    } else {
        CutterMaterial::Hss
    };
    let material = reader.catalog.cutter_material(material)?.clone();
    let cutter = Cutter {
        row,
        drill,
        d: d?,
        z,
        flute_length: flute_length?,
        reach: reach?,
        shank: shank?,
        stick_out: stick_out?,
        corner: corner?,
        helix: helix?,
        carbide,
        centre_cutting,
        material,
        marked,
        ring,
    };
    consistent(reader, row, &cutter).then_some(cutter)
}

/// How a cutter rings: along X, along Y if it was tapped there too, and how fast that dies down.
fn ring(reader: &mut Reader, row: u8) -> Option<Ring> {
    let at = |field| FieldId::in_row(field, row);
    let along = reader.typed(at(Field::CutterTone), TONE);
    let across = reader.typed(at(Field::CutterToneAcross), TONE);
    let damping = reader.typed(at(Field::CutterDamping), DAMPING);
    let frequency = (along.or(across)?, across.or(along)?);
    Some(Ring { frequency, damping })
}

/// Lengths that must lie inside each other.
fn consistent(reader: &mut Reader, row: u8, cutter: &Cutter) -> bool {
    let mut good = true;
    // A reach that was left empty is the flute length, which has its own problem: one message is enough.
    let no_reach = reader.empty(FieldId::in_row(Field::CutterReach, row));
    let mut check = |field, size: f64, room: f64, into| {
        if size > room + 1.0e-9 {
            let kind = ProblemKind::DoesNotFit {
                size: Length::from_si(size),
                room: Length::from_si(room),
                into,
            };
            reader.problem(FieldId::in_row(field, row), kind);
            good = false;
        }
    };
    check(
        Field::CutterFluteLength,
        cutter.flute_length,
        cutter.stick_out,
        Into::StickOut,
    );
    if !no_reach {
        check(
            Field::CutterReach,
            cutter.reach,
            cutter.stick_out,
            Into::StickOut,
        );
    }
    check(
        Field::CutterCorner,
        cutter.corner,
        cutter.d / 2.0,
        Into::CutterRadius,
    );
    good
}
