//! Every limit once more: what cannot be kept may not be told as kept, and what is told must be what is found.

use super::bites::{Bite, Place};
use super::loads::Loads;
use super::scene::Scene;
use super::{Complaints, advice, quality, stops, web};
use thinwright_core::limits::{LimitId, Severity};
use thinwright_core::strategy::Finding;

/// Share by which utilisations may differ: closed areas and distances here, flattened outlines there.
const AGREES: f64 = 0.01;
/// Utilisations under this are far away from any limit: how they differ says nothing.
const FAR: f64 = 0.05;

/// A utilisation: what it surely is, and the most that a cautious reader may reckon with.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Use {
    pub(crate) sure: f64,
    pub(crate) most: f64,
    /// Where in the step it surely is so, if that depends on a bite.
    pub(crate) at: Option<Place>,
}

/// The greatest of something over the bites: that are surely met, and of all; and where it surely is so great.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Peak {
    pub(crate) sure: f64,
    pub(crate) most: f64,
    pub(crate) at: Place,
}

impl Peak {
    pub(crate) fn times(self, factor: f64) -> Peak {
        Peak {
            sure: self.sure * factor,
            most: self.most * factor,
            ..self
        }
    }
}

/// Demand over what is allowed.
fn over(demand: f64, allowed: f64) -> f64 {
    let share = if demand <= 0.0 { 0.0 } else { demand / allowed };
    if share >= 0.0 { share } else { f64::INFINITY }
}

impl Use {
    pub(crate) fn one(demand: f64, allowed: f64) -> Use {
        let share = over(demand, allowed);
        Use {
            sure: share,
            most: share,
            at: None,
        }
    }

    /// From a demand of bites and what is allowed.
    pub(crate) fn of(demand: Peak, allowed: f64) -> Use {
        Use::between(demand, (allowed, allowed))
    }

    /// The same, with what is surely allowed and the least that may be.
    pub(crate) fn between(demand: Peak, allowed: (f64, f64)) -> Use {
        let (sure, most) = (over(demand.sure, allowed.0), over(demand.most, allowed.1));
        Use {
            sure,
            most: most.max(sure),
            at: Some(demand.at),
        }
    }
}

/// The utilisation of a limit at the bad ends; nothing where it does not apply.
pub(crate) fn found(scene: &Scene, limit: LimitId) -> Option<Use> {
    stops::found(scene, limit)
        .or_else(|| quality::found(scene, limit))
        .or_else(|| advice::found(scene, limit))
}

/// Holds every limit against a step and against what is told of it.
pub(crate) fn check(scene: &Scene, out: &mut Complaints) {
    let (step, number) = (scene.step, scene.step.number);
    for limit in LimitId::all() {
        let spec = limit.spec();
        let told = step.findings.iter().find(|f| f.limit == limit);
        if told.is_some_and(|f| f.severity != spec.severity) {
            out.add(
                "severity that is not the limit's",
                number,
                0.0,
                spec.key.to_owned(),
            );
        }
        let told = told.map(Finding::utilisation);
        let found = found(scene, limit);
        // Loads are named by where they arise, everything else by its limit.
        let name = match found.and_then(|f| f.at) {
            Some(at) if !web::decides(scene, limit) => format!("{at:?} of {:?}", step.method),
            _ => spec.key.to_owned(),
        };
        let figures = figures(spec.key, found, told);
        let refuses = matches!(spec.severity, Severity::Stop | Severity::Quality);
        let sure = found.map_or(0.0, |f| f.sure);
        if refuses && sure > 1.0 + AGREES {
            out.add(format!("broken: {name}"), number, sure, figures.clone());
        }
        if let Some(told) = told.filter(|t| refuses && *t > 1.0) {
            out.add(
                format!("told as broken: {name}"),
                number,
                told,
                figures.clone(),
            );
        }
        match (found, told) {
            (Some(f), None) if f.sure > FAR => {
                out.add(format!("not told: {name}"), number, f.sure, figures);
            }
            (None, Some(told)) => {
                out.add(format!("told without cause: {name}"), number, told, figures);
            }
            (Some(f), Some(told)) if f.sure > FAR && told < f.sure * (1.0 - AGREES) => {
                out.add(
                    format!("milder than found: {name}"),
                    number,
                    f.sure / told,
                    figures,
                );
            }
            (Some(f), Some(told)) if told > FAR && told > f.most * (1.0 + AGREES) => {
                out.add(
                    format!("harsher than found: {name}"),
                    number,
                    told / f.most,
                    figures,
                );
            }
            _ => {}
        }
    }
}

fn figures(key: &str, found: Option<Use>, told: Option<f64>) -> String {
    let told = told.map_or("nothing".to_owned(), |t| format!("{t:.3}"));
    let found = found.map_or("nothing".to_owned(), |f| {
        if f.most > f.sure * (1.0 + AGREES) {
            format!("{:.3} to {:.3}", f.sure, f.most)
        } else {
            format!("{:.3}", f.sure)
        }
    });
    format!("{key} {found} found, {told} told")
}

/// The greatest of something over the bites.
pub(crate) fn greatest(scene: &Scene, of: impl Fn(&Bite, &Loads) -> f64) -> Peak {
    let mut peak = Peak {
        sure: 0.0,
        most: 0.0,
        at: Place::Straight,
    };
    for (bite, loads) in &scene.bites {
        let value = of(bite, loads);
        peak.most = peak.most.max(value);
        if bite.sure && value > peak.sure {
            (peak.sure, peak.at) = (value, bite.place);
        }
    }
    peak
}
