//! A small sketch of a setup for the printed sheet: plan and section as the operator sees them, datum and zero marked.

use super::cut;
use super::mark::{Letters, Mark, Stroke, draw};
use super::moment::around_setup;
use super::pen::{Path, View, line, number};
use super::plan;
use super::section;
use crate::language::use_language;
use std::rc::Rc;
use thinwright_core::job::Job;
use thinwright_core::strategy::{Outcome, Strategy};
use thinwright_core::task::Face;
use thinwright_words::sheet as words;
use yew::prelude::*;

/// Paper of a sketch, mm.
const WIDTH: f64 = 46.0;
const ROOM: (f64, f64) = (34.0, 27.0);
/// Around the views.
const EDGE: f64 = 5.0;

#[derive(Clone, Properties)]
pub(crate) struct SketchProps {
    pub(crate) job: Rc<Job>,
    pub(crate) outcome: Rc<Outcome>,
    /// Which setup, counted from 0.
    pub(crate) setup: usize,
}

impl PartialEq for SketchProps {
    fn eq(&self, other: &SketchProps) -> bool {
        Rc::ptr_eq(&self.job, &other.job)
            && Rc::ptr_eq(&self.outcome, &other.outcome)
            && self.setup == other.setup
    }
}

/// The sketch.
#[component]
pub(crate) fn Sketch(props: &SketchProps) -> Html {
    use_language();
    let Outcome::Feasible(strategy) = props.outcome.as_ref() else {
        return html! {};
    };
    let Some((marks, height)) = marks(&props.job, strategy, props.setup) else {
        return html! {};
    };
    let said = strategy.setups.get(props.setup).map(words::sketch_said);
    let view_box = format!("0 0 {} {}", number(WIDTH), number(height));
    html! {
        <svg class="sketch" viewBox={view_box} role="img" aria-label={said} xmlns="http://www.w3.org/2000/svg">
            { draw(&marks, None, None) }
        </svg>
    }
}

fn marks(job: &Job, strategy: &Strategy, index: usize) -> Option<(Vec<Mark>, f64)> {
    let part = &job.part;
    let setup = strategy.setups.get(index)?;
    let (before, after) = around_setup(job, strategy, index)?;
    let blank = part.blank.outer.bounds()?;
    // A sketch fills its room; it is not to a standard scale, and says so.
    let k = (ROOM.0 / blank.width()).min(ROOM.1 / blank.height());
    let up = setup.face_up;
    let x = 0.5 * WIDTH;
    // The section is turned over about the y axis with the part: left becomes right, top becomes bottom.
    let (low, high) = (part.blank_heights.0.mm(), part.blank_heights.1.mm());
    let strips = cut::strips(part, section::middle(part));
    let flip = |blocks: Vec<cut::Block>| match up {
        Face::A => blocks,
        Face::B => {
            let turned = blocks.iter().rev().map(|b| cut::Block {
                x: (-b.x.1, -b.x.0),
                z: (low + high - b.z.1, low + high - b.z.0),
            });
            turned.collect()
        }
    };
    let (old, new) = (
        flip(cut::stock(part, &before, &strips)),
        flip(cut::stock(part, &after, &strips)),
    );
    let view = View {
        // The sign of zero height stands higher than a thin section.
        origin: (x, (6.0 - k * (high - low)).max(1.0) + k * high),
        scale: k,
        mirrored: false,
    };
    let mut out = vec![
        Mark::Line(Stroke::Blank, section::outline(&old, &view)),
        Mark::Line(Stroke::Hatch, section::hatching(&new, &view, true)),
        Mark::Line(Stroke::Wide, section::outline(&new, &view)),
    ];
    let bed = old.iter().map(|b| b.z.0).fold(f64::INFINITY, f64::min);
    out.extend(zero_height(&view, (blank.max.x, bed)));
    let under = view.y(bed) + EDGE;
    let plan_view = View {
        origin: (x, under + k * blank.max.y),
        scale: k,
        mirrored: up == Face::B,
    };
    out.extend(plan::edges(
        part,
        &plan_view,
        (up, part.slots_begun(&after)),
    ));
    out.extend(datum(&plan_view));
    out.extend(axes(&plan_view, (blank.max.x, blank.max.y)));
    let height = plan_view.y(blank.min.y) + EDGE;
    let caption = words::sketch_caption(up);
    out.push(Mark::Text(Letters {
        height: 2.8,
        ..Letters::middle((x, height - 1.0), caption)
    }));
    Some((out, height))
}

/// The sign of zero height, at the bed beside the part.
fn zero_height(view: &View, (x, z): (f64, f64)) -> Vec<Mark> {
    let at = (view.x(x) + 4.0, view.y(z));
    let mut head = Path::default();
    head.polygon(&[at, (at.0 - 1.2, at.1 - 2.2), (at.0 + 1.2, at.1 - 2.2)]);
    vec![
        Mark::Line(
            Stroke::Narrow,
            line((view.x(-x) - 3.0, at.1), (at.0 + 3.0, at.1)),
        ),
        Mark::Line(Stroke::Ink, head.0),
        Mark::Text(Letters::start((at.0 - 1.6, at.1 - 3.0), "z0", 2.8)),
    ]
}

/// Names of the axes' zeros, at the ends of the centre lines.
fn axes(view: &View, (x, y): (f64, f64)) -> Vec<Mark> {
    let right = (view.origin.0 + view.scale * x + 1.0, view.y(0.0) + 1.0);
    let above = (view.x(0.0), view.y(y) - 1.0);
    vec![
        Mark::Text(Letters::start(right, "y0", 2.8)),
        Mark::Text(Letters {
            height: 2.8,
            ..Letters::middle(above, "x0")
        }),
    ]
}

/// The datum: a circle in quarters.
fn datum(view: &View) -> Vec<Mark> {
    const R: f64 = 1.5;
    let (x, y) = view.at(0.0, 0.0);
    let mut ring = Path::default();
    ring.to((x - R, y));
    ring.arc(R, true, (x + R, y));
    ring.arc(R, true, (x - R, y));
    let mut quarters = Path::default();
    for way in [1.0, -1.0] {
        quarters.to((x, y));
        quarters.line((x + way * R, y));
        quarters.arc(R, false, (x, y - way * R));
        quarters.close();
    }
    vec![
        Mark::Line(Stroke::Narrow, ring.0),
        Mark::Line(Stroke::Ink, quarters.0),
    ]
}
