//! Cutters that are not in the rack: those of the catalog's series, tried on the job.

use crate::cache::Cache;
use crate::gain::{Geometry, What};
use crate::job::{Cutter, Job};
use crate::order::Plan;
use crate::solve::{Solver, WorkedPlan};
use crate::tally::Tally;
use crate::trials::{Tried, cheapest_of, compared, like};
use thinwright_catalog::{CutterKind, CutterMaterial, CutterRow};
use thinwright_quantity::{Duration, Length, UnitSystem};

/// Most single cutters that are tried by themselves.
const MOST_SINGLES: usize = 3;

/// What buying one cutter of the series would bring to the best plan: all are offered at once, then each that was
/// taken by itself.
pub(crate) fn gains(
    (job, best, solver): (&Job, &WorkedPlan, &Solver),
    (cache, tally): (&mut Cache, &Tally),
) -> Vec<Tried> {
    let kept = like(&best.plan);
    let again = || Solver::with_loads(solver.loads.clone());
    let with = |cutters: &[Cutter]| {
        let mut job = job.clone();
        job.rack.extend_from_slice(cutters);
        job
    };
    let offered = offered(job);
    let all = with(&offered);
    let Some(worked) = cheapest_of(&all, again(), (&kept, (&mut *cache, tally))) else {
        return Vec::new();
    };
    let mut taken = taken(&worked, &offered);
    taken.truncate(MOST_SINGLES);
    let single = |cutter: Cutter| {
        let job = with(std::slice::from_ref(&cutter));
        let worked = cheapest_of(&job, again(), (&kept, (&mut *cache, tally)))?;
        Some(compared(What::Buy(geometry(&cutter)), best, &worked))
    };
    taken.into_iter().filter_map(single).collect()
}

/// The one cutter of the series that makes a job possible that was not, if one alone does; the quickest of them.
pub(crate) fn that_frees(job: &Job, (cache, tally): (&mut Cache, &Tally)) -> Option<Tried> {
    let with = |cutters: &[Cutter]| {
        let mut job = job.clone();
        job.rack.extend_from_slice(cutters);
        job
    };
    let any = |_: &Plan| true;
    let offered = offered(job);
    let all = cheapest_of(
        &with(&offered),
        Solver::default(),
        (any, (&mut *cache, tally)),
    )?;
    let singles = taken(&all, &offered).into_iter().filter_map(|cutter| {
        let job = with(std::slice::from_ref(&cutter));
        let worked = cheapest_of(&job, Solver::default(), (any, (&mut *cache, tally)))?;
        Some((worked.rank(), cutter, worked))
    });
    let (price, cutter, worked) = singles.min_by_key(|s| s.0)?;
    let gain = crate::gain::Gain {
        what: What::Buy(geometry(&cutter)),
        time: Duration::from_si(worked.time),
        saved_s: 0.0,
        cleared: Vec::new(),
        turned: None,
    };
    Some((-price, gain))
}

/// The offered cutters that a plan takes, those with most to do first.
fn taken(worked: &WorkedPlan, offered: &[Cutter]) -> Vec<Cutter> {
    let time = |row: u8| -> f64 {
        worked
            .ways()
            .filter(|(_, way)| way.cutter == row)
            .map(|(_, way)| way.time)
            .sum()
    };
    let mut taken: Vec<(f64, Cutter)> = offered
        .iter()
        .map(|c| (time(c.row), c.clone()))
        .filter(|(time, _)| *time > 0.0)
        .collect();
    taken.sort_by(|a, b| b.0.total_cmp(&a.0));
    taken.into_iter().map(|t| t.1).collect()
}

/// The cutters of the series of the person's units that the rack has not.
fn offered(job: &Job) -> Vec<Cutter> {
    let series = match job.units {
        UnitSystem::Metric => "metric",
        UnitSystem::Inch => "inch",
    };
    let catalog = &job.tables.1;
    let free = job.rack.iter().map(|c| c.row).max().unwrap_or(0);
    let has = |row: &CutterRow| {
        job.rack.iter().any(|c| {
            (c.d - row.d.si()).abs() < 1.0e-6
                && c.z == row.flutes
                && (c.reach - row.reach.si()).abs() < 1.0e-4
        })
    };
    let rows = catalog
        .cutters
        .iter()
        .filter(|row| row.series == series && row.kind == CutterKind::EndMill && !has(row));
    let numbered = rows.zip(free.saturating_add(1)..u8::MAX);
    numbered
        .filter_map(|(row, number)| cutter(job, row, number))
        .collect()
}

/// A cutter of a series, held as short as its reach allows.
fn cutter(job: &Job, row: &CutterRow, number: u8) -> Option<Cutter> {
    Some(Cutter {
        row: number,
        drill: row.kind == CutterKind::Drill,
        d: row.d.si(),
        z: row.flutes,
        flute_length: row.flute_length.si(),
        reach: row.reach.si(),
        shank: row.shank_d.si(),
        stick_out: row.reach.si().max(row.flute_length.si()),
        corner: row.corner_radius.si(),
        helix: row.helix.si(),
        carbide: row.material == CutterMaterial::Carbide,
        centre_cutting: row.centre_cutting,
        material: job.tables.1.cutter_material(row.material)?.clone(),
        marked: None,
        ring: None,
    })
}

fn geometry(cutter: &Cutter) -> Geometry {
    Geometry {
        drill: cutter.drill,
        d: Length::from_si(cutter.d),
        flutes: cutter.z,
        flute_length: Length::from_si(cutter.flute_length),
        reach: Length::from_si(cutter.reach),
        shank: Length::from_si(cutter.shank),
        carbide: cutter.carbide,
    }
}
