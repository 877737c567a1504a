//! Step-down times stepover, over the diameter squared, within what is done every day on such machines.
//!
//! The ladder is for aluminium; other materials are set against it by cutting energy: specific cutting force at the
//! step's own chip thickness. A cut that runs well on this very machine replaces the ladder where it goes further.

use super::{Limit, LimitId, Move, Moves, Needs};
use crate::case::cutting;
use crate::strategy::{Lever, Measure};
use crate::task::TaskKind;
use thinwright_mechanics::chip::mean_chip_thickness;
use thinwright_mechanics::kienzle::specific_cutting_force;

pub(super) const LIMIT: Limit = Limit {
    id: LimitId::Practice,
    source: "commonpractice",
    needs: Needs::Numbers,
    moves: Moves::STILL.fz(Move::OneWay),
    bad_ends: &[],
    levers: &[Lever::StepDown, Lever::Stepover],
    measure: |case| {
        if case.shape.task.kind == TaskKind::FloorSkim || case.cutter.drill {
            return None;
        }
        let (job, d, numbers) = (case.job, case.cutter.d, &case.job.numbers);
        let chip =
            |fz: f64, ae: f64, d: f64| mean_chip_thickness(fz, ae, d, core::f64::consts::FRAC_PI_2);
        let here = chip(case.choice.fz, case.choice.ae, d);
        let aluminium = numbers.reference_kc_n_per_mm2
            * 1.0e6
            * libm::pow(here / 1.0e-3, -numbers.reference_mc);
        let kc = |h: f64| specific_cutting_force(&cutting(job), h) / job.material.wear_factor;
        let ladder = job.machine.class.practice.1 * aluminium / kc(here);
        let proved = job.good_cut.map_or(0.0, |good| {
            // Force goes with section times kc; section over diameter squared is what carries over to another cutter.
            let chip = chip(good.vf / (good.n * f64::from(good.z)), good.ae, good.d);
            good.ae * good.ap / (good.d * good.d) * kc(chip) / kc(here)
        });
        Some(Measure {
            demand: case.choice.ap * case.choice.ae / (d * d),
            allowed: ladder.max(proved),
        })
    },
};
