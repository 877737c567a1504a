//! Answers to a job: every text is read, every gap filled from a table, every problem found at once.

mod depths;
mod fits;
mod holding;
mod machine;
mod part;
mod pins;
mod push;
mod rack;
mod reader;

use crate::answers::Answers;
use crate::estimate::{Estimate, Estimates, Known, UNKNOWNS, Unknown};
use crate::field::Field;
use crate::grip;
use crate::job::{Form, Grid, Job};
use crate::learn;
use crate::pin::kept_allowances;
use crate::problem::Problem;
use crate::quiet_book::QuietBook;
pub(crate) use reader::Reader;
use thinwright_catalog::{Catalog, MaterialRow};
use thinwright_quantity::UnitSystem;

/// Reads the answers into a job.
///
/// # Errors
/// Every problem of every field, in the order of the questionnaire.
pub fn read(answers: &Answers, catalog: &Catalog) -> Result<Job, Vec<Problem>> {
    let mut reader = Reader::new(answers, catalog);
    let name = answers.text(Field::Name.into()).trim().to_owned();
    let part = part::read(&mut reader);
    let wanted = part::tolerances(&mut reader);
    let material = reader.row(Field::Material, "al_6082_t6", |id| catalog.material(id));
    let form = form(&mut reader);
    let mut machine = machine::read(&mut reader);
    let good_cut = machine::good_cut(&mut reader);
    let rack = rack::read(&mut reader);
    let pins = pins::read(&mut reader, machine.as_mut().map(|m| &mut m.0), &rack);
    let holding = holding::read(&mut reader, part.as_ref());
    let (Some(part), Some(material), Some((machine, known)), Some(holding)) =
        (part, material, machine, holding)
    else {
        return Err(reader.problems());
    };
    let mut estimates: Estimates = [Estimate::exact(1.0, Known::Estimated); UNKNOWNS.len()];
    let mut put = |unknown: Unknown, estimate: Estimate| estimates[unknown as usize] = estimate;
    put(Unknown::Kc, kc(&mut reader, &material));
    put(Unknown::MachineStiffness, known.stiffness);
    put(Unknown::Runout, known.runout);
    put(Unknown::Thrust, known.thrust);
    put(Unknown::Efficiency, range(&machine.class.efficiency, 1.0));
    put(Unknown::Damping, range(&machine.class.damping, 1.0));
    put(Unknown::Friction, range(&holding.second.friction, 1.0));
    put(
        Unknown::Grip,
        grip::clamping(&holding.second, part.outline_area.area_mm2()),
    );
    put(Unknown::Rupture, rupture(&rack));
    let (low, high) = (catalog.numbers.web_tone_low, catalog.numbers.web_tone_high);
    put(Unknown::WebTone, Estimate::range(low, 1.0, high));
    let untaught = learn::narrow(&mut reader, &mut estimates, &material);
    let problems = reader.problems();
    if !problems.is_empty() {
        return Err(problems);
    }
    Ok(Job {
        name,
        units: answers.units,
        part,
        steepest: libm::tan(material.ramp.1.si()),
        material,
        form,
        machine,
        rack,
        holding,
        wanted,
        estimates,
        untaught: untaught.map(Box::new),
        settled: [false; UNKNOWNS.len()],
        good_cut,
        grid: grid(answers.units, catalog),
        numbers: kept_allowances(&pins, &catalog.numbers),
        pins,
        defaults: reader.defaults(),
        quiet: QuietBook::default(),
        tables: std::rc::Rc::new((answers.clone(), catalog.clone())),
    })
}

/// A range of a table as an estimate.
pub(crate) fn range(range: &thinwright_catalog::Range<f64>, scale: f64) -> Estimate {
    Estimate::range(range.low * scale, range.likely * scale, range.high * scale)
}

/// Specific cutting force: the person's own figure with a small spread, or the table's range.
fn kc(reader: &mut Reader, material: &MaterialRow) -> Estimate {
    let table = Estimate::range(
        material.kc1_1.low.si(),
        material.kc1_1.likely.si(),
        material.kc1_1.high.si(),
    );
    let share = reader.catalog.numbers.own_figure_spread;
    reader
        .estimate(Field::Kc, (1.0e6, 2.0e10), share)
        .unwrap_or(table)
}

/// The widest spread of rupture strength in the rack, as a factor on the likely value.
fn rupture(rack: &[crate::job::Cutter]) -> Estimate {
    let ratios = rack.iter().map(|c| {
        let r = &c.material.rupture_strength;
        (r.low.si() / r.likely.si(), r.high.si() / r.likely.si())
    });
    let (low, high) = ratios.fold((1.0, 1.0), |(l, h): (f64, f64), (a, b)| {
        (l.min(a), h.max(b))
    });
    Estimate::range(low, 1.0, high)
}

fn form(reader: &mut Reader) -> Form {
    match reader.choice(Field::Form, 0) {
        1 => Form::Rolled,
        2 => Form::Stretched,
        3 => Form::Cast,
        4 => Form::Extruded,
        _ => Form::Unknown,
    }
}

/// The steps in which numbers are typed.
fn grid(units: UnitSystem, catalog: &Catalog) -> Grid {
    const INCH: f64 = 0.0254;
    let numbers = &catalog.numbers;
    let n = numbers.typed_speed_step_rpm / 60.0;
    match units {
        UnitSystem::Metric => Grid {
            n,
            vf: numbers.typed_feed_step_mm_per_min * 1.0e-3 / 60.0,
            depth: numbers.typed_depth_step_mm * 1.0e-3,
        },
        UnitSystem::Inch => Grid {
            n,
            vf: numbers.typed_feed_step_in_per_min * INCH / 60.0,
            depth: numbers.typed_depth_step_in * INCH,
        },
    }
}
