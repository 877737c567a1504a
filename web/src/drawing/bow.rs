//! The web as it bows under the cutter at its softest place, exaggerated by a factor that is said.

use super::cut::{self, Block, Strip};
use super::mark::{Mark, Stroke};
use super::moment::Moment;
use super::pen::{Path, View};
use super::scale::exaggeration;
use super::section;
use crate::map::{Run, along};
use thinwright_core::job::Job;
use thinwright_core::task::Face;
use thinwright_quantity::Length;
use thinwright_words::drawing::Bow;

/// How large the bow of the web is wished on paper, mm.
const BOW: f64 = 4.0;

/// How the web bows along the section, mm downwards from the spindle.
fn bowed(job: &Job, moment: &Moment) -> Option<Vec<Run>> {
    let web = moment.web.as_ref()?;
    let force = moment.step.loads.mean_axial.si();
    let bow: Vec<f64> = web.bow.iter().map(|b| b * force * 1.0e3).collect();
    let plane = section::middle(&job.part);
    let runs = along(web, &bow, (plane.through, plane.direction));
    (!runs.is_empty()).then_some(runs)
}

/// How far it bows along the section at most, and the factor that makes it visible at a scale.
pub(crate) fn give(job: &Job, moment: &Moment, scale: f64) -> Option<Bow> {
    let runs = bowed(job, moment)?;
    let web = moment.web.as_ref()?;
    let force = moment.step.loads.mean_axial.si();
    let places = runs.iter().flatten().map(|p| p.1.abs());
    let here = places.fold(0.0, f64::max);
    let seen = here * scale;
    (seen.is_finite() && seen > 1.0e-9).then(|| Bow {
        most: Length::m(force * web.most),
        here: Length::mm(here),
        factor: exaggeration(BOW / seen),
    })
}

/// The far sides of web and boss as they bow, exaggerated.
pub(super) fn bow(job: &Job, moment: &Moment, strips: &[Strip], view: &View) -> Option<Mark> {
    let factor = give(job, moment, view.scale)?.factor;
    let recessed = |s: &Strip| s.cell.recess.0 || s.cell.recess.1;
    let first = strips.iter().position(recessed)?;
    let last = strips.iter().rposition(recessed)?;
    let blocks = cut::stock(&job.part, &moment.after, &strips[first..=last]);
    let (down, far): (f64, fn(&Block) -> f64) = match moment.setup.face_up {
        Face::A => (-1.0, |b| b.z.0),
        Face::B => (1.0, |b| b.z.1),
    };
    let runs = bowed(job, moment)?;
    let mut path = Path::default();
    for block in &blocks {
        for run in &runs {
            let inside = |p: &&(f64, f64)| block.x.0 <= p.0 && p.0 <= block.x.1;
            let ends = [block.x.0, block.x.1].map(|x| value(run, x).map(|v| (x, v)));
            let [left, right] = ends;
            let places = left
                .into_iter()
                .chain(run.iter().filter(inside).copied())
                .chain(right);
            for (k, (x, mm)) in places.enumerate() {
                let p = view.at(x, far(block) + down * mm * factor);
                if k == 0 { path.to(p) } else { path.line(p) }
            }
        }
    }
    (!path.0.is_empty()).then_some(Mark::Line(Stroke::Bent, path.0))
}

/// The value of a run at a place, if it reaches there.
fn value(run: &Run, x: f64) -> Option<f64> {
    let pair = run.windows(2).find(|w| w[0].0 <= x && x <= w[1].0)?;
    let [(a, v), (b, w)] = [pair[0], pair[1]];
    let share = if b > a { (x - a) / (b - a) } else { 0.0 };
    Some(v + share * (w - v))
}
