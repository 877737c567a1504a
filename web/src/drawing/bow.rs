//! The web as it bows under the cutter, exaggerated by a factor that is said.

use super::cut::{self, Strip};
use super::mark::{Mark, Stroke};
use super::moment::Moment;
use super::pen::{Path, View};
use super::scale::exaggeration;
use thinwright_core::job::Job;
use thinwright_core::task::Face;
use thinwright_quantity::Length;

/// How large the bow of the web is wished on paper, mm.
const BOW: f64 = 4.0;
/// Chords of its curve.
const BOW_CHORDS: u32 = 48;

/// How the web gives way under the mean thrust, m, and the factor that makes it visible at a scale.
pub(crate) fn give(moment: &Moment, scale: f64) -> Option<(Length, f64)> {
    let web = moment.step.web.as_ref()?;
    let give = Length::m(moment.step.loads.mean_axial.si() / web.stiffness.si());
    let seen = give.to_mm().abs() * scale;
    (seen.is_finite() && seen > 1.0e-9).then(|| (give, exaggeration(BOW / seen)))
}

/// The far side of the web as it bows, exaggerated: from wall to wall, or to the boss if that is bolted down.
pub(super) fn bow(job: &Job, moment: &Moment, strips: &[Strip], view: &View) -> Option<Mark> {
    let (give, factor) = give(moment, view.scale)?;
    let recessed = |s: &Strip| s.cell.recess.0 || s.cell.recess.1;
    let web: Vec<Strip> = strips
        .iter()
        .filter(|s| recessed(s) && !s.cell.slot && !s.cell.bore)
        .cloned()
        .collect();
    let blocks = cut::stock(&job.part, &moment.after, &web);
    let (down, far) = match moment.setup.face_up {
        Face::A => (-1.0, blocks.iter().map(|b| b.z.0).reduce(f64::min)?),
        Face::B => (1.0, blocks.iter().map(|b| b.z.1).reduce(f64::max)?),
    };
    let spans: Vec<(f64, f64)> = if moment.setup.boss_bolted {
        let runs = strips.chunk_by(|a, b| recessed(a) == recessed(b));
        runs.filter(|run| recessed(&run[0]))
            .map(|run| (run[0].x.0, run[run.len() - 1].x.1))
            .collect()
    } else {
        vec![(web.first()?.x.0, web.last()?.x.1)]
    };
    let mut path = Path::default();
    for (a, b) in spans {
        for k in 0..=BOW_CHORDS {
            let share = f64::from(k) / f64::from(BOW_CHORDS);
            let shape = libm::sin(core::f64::consts::PI * share);
            let z = far + down * give.to_mm() * factor * shape * shape;
            let p = view.at(a + (b - a) * share, z);
            if k == 0 { path.to(p) } else { path.line(p) }
        }
    }
    Some(Mark::Line(Stroke::Bent, path.0))
}
