//! A second look at a finished strategy, from the formulas and the drawing alone.
//!
//! Nothing here calls what the search is made of: the sizes are read anew from the typed answers, heights are followed on
//! sampled columns of stock, engagements, loads, limits and times are worked out again on top of the kernels. Where what
//! is told could be read in two ways, both are worked out, and what is told must lie between them.

mod advice;
mod beyond;
mod bites;
mod drawing;
mod fit;
mod heights;
mod holding;
mod limits;
mod loads;
mod opened;
mod quality;
mod scene;
mod stock;
mod stops;
mod time;
mod travel;
mod typed;
mod web;

use drawing::Drawing;
pub(crate) use opened::Open;
use scene::Scene;
use thinwright_catalog::Catalog;
use thinwright_core::strategy::Strategy;
use thinwright_core::{Answers, read};

/// Something that is told and does not stand up.
#[derive(Clone, Debug)]
pub(crate) struct Complaint {
    /// The rule that is broken: words that are the same for every job.
    pub(crate) rule: String,
    /// Number of the step; 0 for the strategy as a whole.
    pub(crate) step: u32,
    /// By how much: 1 is just not broken.
    pub(crate) by: f64,
    /// The figures.
    pub(crate) figures: String,
}

/// Gathers complaints.
#[derive(Default)]
pub(crate) struct Complaints(pub(crate) Vec<Complaint>);

impl Complaints {
    fn add(&mut self, rule: impl Into<String>, step: u32, by: f64, figures: String) {
        self.0.push(Complaint {
            rule: rule.into(),
            step,
            by,
            figures,
        });
    }

    /// Complains unless two numbers are the same to a share.
    fn same(&mut self, rule: &str, step: u32, (ours, told): (f64, f64), share: f64) {
        if (ours - told).abs() > share * ours.abs().max(told.abs()) + 1.0e-12 {
            self.add(
                rule,
                step,
                told / ours,
                format!("{told} told, {ours} found"),
            );
        }
    }

    /// Complains unless a number lies between two others, widened by a share.
    fn between(
        &mut self,
        (rule, step): (&str, u32),
        told: f64,
        (low, high): (f64, f64),
        share: f64,
    ) {
        if told < low * (1.0 - share) - 1.0e-12 {
            self.add(
                format!("{rule}, too low"),
                step,
                low / told,
                format!("{told} told, at least {low} found"),
            );
        } else if told > high * (1.0 + share) + 1.0e-12 || told.is_nan() {
            self.add(
                format!("{rule}, too high"),
                step,
                told / high,
                format!("{told} told, at most {high} found"),
            );
        }
    }
}

/// Everything about a strategy that does not stand up; what takes long only in a thorough look.
pub(crate) fn evaluate(
    answers: &Answers,
    catalog: &Catalog,
    told: &Strategy,
    thorough: bool,
) -> Vec<Complaint> {
    let mut out = Complaints::default();
    let job = match read(answers, catalog) {
        Ok(job) => job,
        Err(problems) => {
            out.add(
                "answers that cannot be read",
                0,
                0.0,
                format!("{problems:?}"),
            );
            return out.0;
        }
    };
    let drawing = Drawing::read(answers, &job);
    let followed = heights::follow(&job, &drawing, told, &mut out);
    for stand in followed.iter().filter(|s| s.goes_down()) {
        let Some(cutter) = job.rack.iter().find(|c| c.row == stand.step.cutter) else {
            let figures = format!("row {}", stand.step.cutter);
            out.add(
                "cutter that is not in the rack",
                stand.step.number,
                0.0,
                figures,
            );
            continue;
        };
        let scene = Scene::new(&job, &drawing, stand, cutter);
        typed::check(&scene, &mut out);
        fit::check(&scene, &mut out);
        travel::check(&scene, &mut out);
        time::step(&scene, &mut out);
        limits::check(&scene, &mut out);
        web::check(&scene, thorough, &mut out);
        beyond::check(&scene, &mut out);
    }
    time::check(&job, told, &followed, &mut out);
    out.0
}
