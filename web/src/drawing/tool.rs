//! The cutter to scale: flutes with their corner radius, neck, shank, collet nut.

use super::cut::Block;
use super::dimension::{Side, dimensions};
use super::mark::{Mark, Stroke};
use super::moment::Moment;
use super::pen::{Path, View, line};
use super::sizes::Writer;
use thinwright_core::job::Cutter;
use thinwright_core::task::{Face, TaskKind};
use thinwright_core::{Field, FieldId};

/// How much of the collet nut is shown, mm.
pub(super) const NUT: f64 = 8.0;
/// Where the cutter's axis is: at the wall of the widest place that it works in.
pub(super) fn axis(moment: &Moment, cutter: &Cutter, taken: &[Block]) -> f64 {
    let d = cutter.d * 1.0e3;
    let wide = |b: &Block| b.x.1 - b.x.0;
    let wall = moment.step.leave.0.to_mm();
    let widest = taken.iter().max_by(|a, b| wide(a).total_cmp(&wide(b)));
    widest.map_or(0.0, |b| match moment.step.task {
        TaskKind::WallSkim => b.x.0 + 0.5 * d,
        _ if wide(b) > d + 2.0 * wall => b.x.0 + wall + 0.5 * d,
        _ => 0.5 * (b.x.0 + b.x.1),
    })
}

/// Up for the cutter.
fn up(moment: &Moment) -> f64 {
    match moment.setup.face_up {
        Face::A => 1.0,
        Face::B => -1.0,
    }
}

/// Half the width of shank and collet nut as drawn, mm.
fn half_widths(cutter: &Cutter) -> (f64, f64) {
    let shank = 0.5e3 * cutter.shank;
    (shank, (2.2 * shank).max(0.5e3 * cutter.d))
}

/// The cutter at the end of its cut.
pub(super) fn tool(moment: &Moment, cutter: &Cutter, taken: &[Block], view: &View) -> Vec<Mark> {
    let d = cutter.d * 1.0e3;
    let axis = axis(moment, cutter, taken);
    let (up, tip) = (up(moment), moment.to.mm());
    let at = |x: f64, z: f64| view.at(axis + x, tip + up * z);
    let (flutes, out) = (cutter.flute_length * 1.0e3, cutter.stick_out * 1.0e3);
    let reach = (cutter.reach * 1.0e3).max(flutes).min(out.max(flutes));
    let nut = NUT;
    let (shank, half_nut) = half_widths(cutter);
    let mut body = Path::default();
    body.polygon(&fluted(cutter, &at));
    body.polygon(&[
        at(-0.46 * d, flutes),
        at(0.46 * d, flutes),
        at(0.46 * d, reach),
        at(-0.46 * d, reach),
    ]);
    body.polygon(&[
        at(-shank, reach),
        at(shank, reach),
        at(shank, out),
        at(-shank, out),
    ]);
    body.polygon(&[
        at(-half_nut, out),
        at(half_nut, out),
        at(half_nut, out + nut),
        at(-half_nut, out + nut),
    ]);
    let mut twist = Path::default();
    let turn = (d / libm::tan(cutter.helix.clamp(0.35, 1.2))).max(0.2 * d);
    let mut z = 0.0;
    while z < flutes && turn > 0.0 {
        let top = (z + turn).min(flutes);
        twist.segment(at(-0.5 * d, z), at(-0.5 * d + d * (top - z) / turn, top));
        z += turn;
    }
    vec![
        Mark::Line(Stroke::Cutter, body.0),
        Mark::Line(Stroke::Narrow, twist.0),
        Mark::Line(
            Stroke::Centre,
            line(
                at(0.0, -4.0 / view.scale),
                at(0.0, out + nut + 2.0 / view.scale),
            ),
        ),
    ]
}

/// How far the cutter stands out, as a size.
pub(super) fn stick_out(
    moment: &Moment,
    cutter: &Cutter,
    taken: &[Block],
    view: &View,
    write: Writer,
) -> Mark {
    let (axis, up, tip) = (axis(moment, cutter, taken), up(moment), moment.to.mm());
    let at = |x: f64, z: f64| view.at(axis + x, tip + up * z);
    let (half, out) = (0.5e3 * cutter.d, cutter.stick_out * 1.0e3);
    let (shank, half_nut) = half_widths(cutter);
    let id = FieldId::in_row(Field::CutterStickOut, cutter.row);
    let size = write.size(
        Side::Right,
        (at(half, 0.0), at(half_nut, out)),
        ("", out),
        id,
    );
    let right = half.max(shank).max(half_nut);
    let mut marks = dimensions(&[size], (at(-right, out), at(right, 0.0)));
    marks.remove(0)
}

/// The fluted part with its corner radius.
fn fluted(cutter: &Cutter, at: &impl Fn(f64, f64) -> (f64, f64)) -> Vec<(f64, f64)> {
    let (half, top) = (0.5e3 * cutter.d, cutter.flute_length * 1.0e3);
    if cutter.drill {
        // Point angle of a common drill: 118 degrees.
        let point = half / libm::tan(59.0_f64.to_radians());
        return vec![
            at(0.0, 0.0),
            at(half, point),
            at(half, top),
            at(-half, top),
            at(-half, point),
        ];
    }
    let r = (cutter.corner * 1.0e3).min(half);
    let round = |sign: f64, k: i32| {
        let angle = core::f64::consts::FRAC_PI_2 * f64::from(k) / 6.0;
        at(
            sign * (half - r + r * libm::sin(angle)),
            r - r * libm::cos(angle),
        )
    };
    let right = (0..=6).map(|k| round(1.0, k));
    let left = (0..=6).rev().map(|k| round(-1.0, k));
    right
        .chain([at(half, top), at(-half, top)])
        .chain(left)
        .collect()
}
