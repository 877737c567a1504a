//! The section across a group of slots: only the web, broken off on both sides, to a scale of its own.

use super::cut::{self, Plane, Strip};
use super::dimension::{Side, Size, dimensions, room, rows_of};
use super::frame;
use super::mark::{Mark, Stroke};
use super::pen::View;
use super::scale::Scale;
use super::section;
use super::sizes::{self, Writer};
use thinwright_core::part::Part;
use thinwright_core::plan::Point;
use thinwright_core::task::Face;

/// Room on paper, mm.
const ROOM: (f64, f64) = (84.0, 30.0);
/// Ribs up to so many times the narrowest belong to the same group.
const NEAR: f64 = 1.6;

/// Such a section.
pub(super) struct Across {
    pub(super) plane: Plane,
    pub(super) scale: Scale,
    strips: Vec<Strip>,
}

impl Across {
    /// Through the middle of the first slot, over its neighbours; nothing without slots.
    pub(super) fn of(part: &Part, than: Scale) -> Option<Across> {
        let slot = part.slots.first()?;
        let (a, b) = slot.ends;
        let plane = Plane {
            through: Point::new(0.5 * (a.x + b.x), 0.5 * (a.y + b.y)),
            direction: sizes::direction(slot) + core::f64::consts::FRAC_PI_2,
        };
        let strips = cut::strips(part, plane);
        let crossed = section::crossed(&strips);
        let wide = slot.width * 1.0e3;
        let near = part.rib.map_or(wide, |r| NEAR * 1.0e3 * r);
        let first = crossed.iter().position(|c| c.0 <= 0.0 && 0.0 <= c.1)?;
        let (mut low, mut high) = (first, first);
        while low > 0 && crossed[low].0 - crossed[low - 1].1 < near {
            low -= 1;
        }
        while high + 1 < crossed.len() && crossed[high + 1].0 - crossed[high].1 < near {
            high += 1;
        }
        let window = (crossed[low].0 - 2.0 * wide, crossed[high].1 + 2.0 * wide);
        let height = part.floor(Face::A).mm() - part.floor(Face::B).mm();
        let own = Scale::fitting((window.1 - window.0, height), ROOM);
        let scale = if own.factor() > than.factor() {
            own
        } else {
            than
        };
        let strips = strips.into_iter().filter_map(|s| clip(s, window)).collect();
        Some(Across {
            plane,
            scale,
            strips,
        })
    }

    /// Where it begins and ends along its plane.
    pub(super) fn ends(&self) -> (f64, f64) {
        match (self.strips.first(), self.strips.last()) {
            (Some(a), Some(b)) => (a.x.0, b.x.1),
            _ => (0.0, 0.0),
        }
    }

    /// Draws it below a level of the paper: marks, sizes, and how far down it reaches.
    pub(super) fn draw(
        &self,
        part: &Part,
        level: f64,
        write: Writer,
    ) -> (Vec<Mark>, Vec<Size>, f64) {
        let k = self.scale.factor();
        let (low, high) = (part.floor(Face::B).mm(), part.floor(Face::A).mm());
        let (left, right) = self.ends();
        let crossed = section::crossed(&self.strips);
        let view_at = |y: f64| View {
            origin: (frame::CENTRE - 0.5 * k * (left + right), y + k * high),
            scale: k,
            mirrored: false,
        };
        let sizes_at = |view: &View| sizes::slot_widths(part, view, write, (&crossed, high));
        let top = level + room(rows_of(&sizes_at(&view_at(0.0)), Side::Above));
        let view = view_at(top);
        let blocks = cut::finished(part, &self.strips);
        let mut edges = section::broken(&blocks, &view);
        edges += &section::behind(&blocks, &view);
        let mut marks = vec![
            Mark::Line(Stroke::Hatch, section::hatching(&blocks, &view, true)),
            Mark::Line(Stroke::Wide, edges),
        ];
        let sizes = sizes_at(&view);
        let corners = (view.at(left, high), view.at(right, low));
        marks.extend(dimensions(&sizes, corners));
        (marks, sizes, top + k * (high - low))
    }
}

fn clip(strip: Strip, window: (f64, f64)) -> Option<Strip> {
    let x = (strip.x.0.max(window.0), strip.x.1.min(window.1));
    (x.0 < x.1).then_some(Strip { x, ..strip })
}
