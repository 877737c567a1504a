//! The drawing as a whole: section above, plan below (first angle), a section across the slots, title block.

use super::bow;
use super::cut::{self, Plane, Strip};
use super::cutting;
use super::dimension::{Side, Size, dimensions, room, rows_of};
use super::frame::{self, Entries};
use super::mark::{Letters, Mark, Stroke};
use super::moment::Moment;
use super::pen::{View, rectangle};
use super::place::LETTER;
use super::plan;
use super::scale::Scale;
use super::section;
use super::sizes::{self, Writer};
use thinwright_core::job::Job;
use thinwright_core::plan::Point;
use thinwright_core::task::Face;
use thinwright_words::drawing::{self as words, TitleField};

/// Room for plan and blank on paper, mm.
const PLAN: (f64, f64) = (136.0, 124.0);
/// Room for the section across the slots.
const ACROSS: (f64, f64) = (84.0, 30.0);
/// Between views, mm.
const APART: f64 = 7.0;
/// What the ends of a cutting plane take up beside a view, mm.
const PLANE_END: f64 = 7.0;
/// What the figures of short heights take up over a section, mm.
const UPRIGHT: f64 = 10.0;
/// Height of a section's title, mm.
const TITLE: f64 = 5.0;

/// A drawing ready to be shown.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Picture {
    pub(crate) height: f64,
    pub(crate) marks: Vec<Mark>,
    /// What it says to those who cannot see it.
    pub(crate) said: String,
}

/// The section across the slots, where the first one does not cross them.
struct Across {
    plane: Plane,
    strips: Vec<Strip>,
    scale: Scale,
    middle: f64,
}

/// Draws a job, with the step in hand if there is one.
pub(crate) fn picture(job: &Job, moment: Option<&Moment>) -> Picture {
    let part = &job.part;
    let write = Writer { units: job.units };
    let Some(blank) = part.blank.outer.bounds() else {
        return Picture {
            height: 2.0 * frame::MARGIN + frame::TITLE,
            marks: Vec::new(),
            said: String::new(),
        };
    };
    let scale = Scale::fitting((blank.width(), blank.height()), PLAN);
    let k = scale.factor();
    let middle = section::middle(part);
    let strips = cut::strips(part, middle);
    let crossed = section::crossed(&strips);
    let across = across(job, &strips, scale);
    // Sizes are set out twice: about nothing, to learn how much room they take, and in place.
    let free = View {
        origin: (0.0, 0.0),
        scale: k,
        mirrored: false,
    };
    let front = |view: &View| front_sizes(job, (view, write), &crossed, moment.is_some());
    let top = |view: &View| sizes::around(part, view, write);
    let (in_front, on_top) = (front(&free), top(&free));
    let beside = |side| {
        let front = room(rows_of(&in_front, side));
        front.max(PLANE_END + room(rows_of(&on_top, side)))
    };
    let width = blank.width() * k;
    let inside = frame::WIDTH - frame::MARGIN - frame::FILING;
    let spare = (inside - width - beside(Side::Left) - beside(Side::Right)).max(0.0);
    let x = frame::FILING + beside(Side::Left) + 0.5 * spare - k * blank.min.x;
    let (high, low) = (part.blank_heights.1.mm() * k, part.blank_heights.0.mm() * k);
    let over = |face: Face, side| {
        let cutter = moment.filter(|m| m.setup.face_up == face);
        let rows = room(rows_of(&in_front, side)).max(UPRIGHT);
        cutter.map_or(rows, |m| cutting::room(m, k).max(UPRIGHT))
    };
    let mut y = frame::MARGIN + 4.0 + TITLE;
    let mut marks = vec![title((x, y), words::section_title('A', None))];
    y += 3.5 + over(Face::A, Side::Above) + high;
    let view = View {
        origin: (x, y),
        ..free
    };
    match moment {
        Some(moment) => marks.extend(cutting::marks(job, moment, &strips, &view, write)),
        None => marks.extend(section::finished(part, &strips, &view)),
    }
    let corners =
        |view: &View, z: (f64, f64)| (view.at(blank.min.x, z.1), view.at(blank.max.x, z.0));
    let front_sizes = front(&view);
    let stock = (part.blank_heights.0.mm(), part.blank_heights.1.mm());
    marks.extend(dimensions(&front_sizes, corners(&view, stock)));
    y += -low + over(Face::B, Side::Below) + APART;
    if let Some(moment) = moment {
        marks.extend(legend(job, moment, k, &mut y));
        marks.extend(detail(job, moment, (&strips, scale, &view), &mut y));
    }
    // Leaders end over the plan.
    y += 16.0 + k * blank.max.y;
    let view = View {
        origin: (x, y),
        ..free
    };
    marks.extend(plan::edges(part, &view, (Face::A, true)));
    let ends = (
        blank.min.x - middle.through.x - 2.0 / k,
        blank.max.x - middle.through.x + 2.0 / k,
    );
    marks.extend(plan::cutting_plane(middle, ends, &view, "A"));
    let plan_sizes = top(&view);
    let (least, most) = corners(&view, (blank.min.y, blank.max.y));
    // Outside the ends of the cutting plane.
    let clear = ((least.0 - PLANE_END, least.1), (most.0 + PLANE_END, most.1));
    marks.extend(dimensions(&plan_sizes, clear));
    marks.extend(
        sizes::leaders(part, &view, write)
            .into_iter()
            .map(super::dimension::Leader::mark),
    );
    y += -k * blank.min.y + room(rows_of(&plan_sizes, Side::Below)) + APART;
    let mut all: Vec<Size> = front_sizes.into_iter().chain(plan_sizes).collect();
    if let Some(across) = across {
        let half = 0.5 * across_width(&across);
        let ends = (across.middle - half, across.middle + half);
        marks.extend(plan::cutting_plane(across.plane, ends, &view, "B"));
        marks.extend(across_view(job, &across, (&mut y, &mut all), write));
    }
    let height = y + frame::TITLE + frame::MARGIN;
    marks.extend(frame::frame(height));
    marks.extend(frame::title_block(height, &entries(job, scale)));
    let said: Vec<String> = all.into_iter().map(|s| s.name).collect();
    Picture {
        height,
        marks,
        said: words::drawing_said(&said, &scale.name()),
    }
}

fn title(at: (f64, f64), text: String) -> Mark {
    Mark::Text(Letters {
        height: TITLE,
        ..Letters::middle(at, text)
    })
}

/// Sizes around the first section; with a step in hand only the heights.
fn front_sizes(
    job: &Job,
    (view, write): (&View, Writer),
    crossed: &[(f64, f64)],
    cutting: bool,
) -> Vec<Size> {
    let part = &job.part;
    let mut out = sizes::heights(part, view, write);
    if !cutting {
        out.extend(sizes::widths(part, view, write));
        if crossed.len() > 1 && crosswise(job) {
            let z = part.floor(Face::A).mm();
            out.extend(sizes::slot_widths(part, view, write, (crossed, z)));
        }
    }
    out
}

/// Whether the slots run across the first section.
fn crosswise(job: &Job) -> bool {
    let slot = job.part.slots.first();
    slot.is_some_and(|s| libm::cos(sizes::direction(s)).abs() < 0.5)
}

/// The section across the slots: through the middle of the first one, over its neighbours.
fn across(job: &Job, strips: &[Strip], scale: Scale) -> Option<Across> {
    let part = &job.part;
    let slot = part.slots.first()?;
    if section::crossed(strips).len() > 1 && crosswise(job) {
        return None;
    }
    let plane = Plane {
        through: Point::new(
            0.5 * (slot.ends.0.x + slot.ends.1.x),
            0.5 * (slot.ends.0.y + slot.ends.1.y),
        ),
        direction: sizes::direction(slot) + core::f64::consts::FRAC_PI_2,
    };
    let strips = cut::strips(part, plane);
    let crossed = section::crossed(&strips);
    // The first slot's neighbours: as long as the ribs between are not much wider than the narrowest.
    let wide = slot.width * 1.0e3;
    let near = part.rib.map_or(wide, |r| 1.6e3 * r);
    let first = crossed.iter().position(|c| c.0 <= 0.0 && 0.0 <= c.1)?;
    let (mut low, mut high) = (first, first);
    while low > 0 && crossed[low].0 - crossed[low - 1].1 < near {
        low -= 1;
    }
    while high + 1 < crossed.len() && crossed[high + 1].0 - crossed[high].1 < near {
        high += 1;
    }
    let side = 2.0 * wide;
    let window = (crossed[low].0 - side, crossed[high].1 + side);
    let strips: Vec<Strip> = strips.into_iter().filter_map(|s| clip(s, window)).collect();
    let height = part.floor(Face::A).mm() - part.floor(Face::B).mm();
    let larger = Scale::fitting((window.1 - window.0, height), ACROSS);
    let scale = if larger.factor() > scale.factor() {
        larger
    } else {
        scale
    };
    Some(Across {
        plane,
        strips,
        scale,
        middle: 0.5 * (window.0 + window.1),
    })
}

fn clip(strip: Strip, window: (f64, f64)) -> Option<Strip> {
    let x = (strip.x.0.max(window.0), strip.x.1.min(window.1));
    (x.0 < x.1).then_some(Strip { x, ..strip })
}

fn across_width(across: &Across) -> f64 {
    match (across.strips.first(), across.strips.last()) {
        (Some(a), Some(b)) => b.x.1 - a.x.0,
        _ => 0.0,
    }
}

/// Draws the section across the slots: only the web, broken off on both sides.
fn across_view(
    job: &Job,
    across: &Across,
    (y, all): (&mut f64, &mut Vec<Size>),
    write: Writer,
) -> Vec<Mark> {
    let part = &job.part;
    let k = across.scale.factor();
    let centre = 0.5 * (frame::FILING + frame::WIDTH - frame::MARGIN);
    *y += TITLE;
    let mut marks = vec![title(
        (centre, *y),
        words::section_title('B', Some(&across.scale.name())),
    )];
    let crossed = section::crossed(&across.strips);
    let (low, high) = (part.floor(Face::B).mm(), part.floor(Face::A).mm());
    let view_at = |y: f64| View {
        origin: (centre - k * across.middle, y + k * high),
        scale: k,
        mirrored: false,
    };
    let sizes_at = |view: &View| sizes::slot_widths(part, view, write, (&crossed, high));
    *y += 2.0 + room(rows_of(&sizes_at(&view_at(0.0)), Side::Above));
    let view = view_at(*y);
    let blocks = cut::finished(part, &across.strips);
    marks.push(Mark::Line(
        Stroke::Hatch,
        section::hatching(&blocks, &view, true),
    ));
    let mut edges = section::broken(&blocks, &view);
    edges += &section::behind(&blocks, &view);
    marks.push(Mark::Line(Stroke::Wide, edges));
    let half = 0.5 * across_width(across);
    let least = view.at(across.middle - half, high);
    let most = view.at(across.middle + half, low);
    let sizes = sizes_at(&view);
    marks.extend(dimensions(&sizes, (least, most)));
    all.extend(sizes);
    *y += k * (high - low) + APART;
    marks
}

/// The cutter's place enlarged, and where it lies in the section.
fn detail(
    job: &Job,
    moment: &Moment,
    (strips, than, section): (&[Strip], Scale, &View),
    y: &mut f64,
) -> Vec<Mark> {
    let Some(detail) = cutting::detail(job, moment, strips, than) else {
        return Vec::new();
    };
    let ((x, z), (half_x, half_z)) = (detail.middle, detail.half);
    let corners = |view: &View| {
        (
            view.at(x - half_x, z + half_z),
            view.at(x + half_x, z - half_z),
        )
    };
    let (a, b) = corners(section);
    let mut out = vec![
        Mark::Line(Stroke::Narrow, rectangle(a, b)),
        Mark::Text(Letters::start((a.0 - 4.0, b.1 + 1.0), "C", LETTER)),
    ];
    let k = detail.scale.factor();
    let centre = 0.5 * (frame::FILING + frame::WIDTH - frame::MARGIN);
    *y += APART + 1.0;
    out.push(title(
        (centre, *y),
        words::detail_title('C', &detail.scale.name()),
    ));
    *y += 3.0;
    let view = View {
        origin: (centre - k * x, *y + k * (z + half_z)),
        scale: k,
        mirrored: false,
    };
    let (a, b) = corners(&view);
    out.push(Mark::Window {
        corners: (a, b),
        marks: cutting::detailed(job, moment, strips, &view),
    });
    out.push(Mark::Line(Stroke::Narrow, rectangle(a, b)));
    *y = b.1 + APART;
    out
}

/// What the step in hand is, and what its lines mean.
fn legend(job: &Job, moment: &Moment, scale: f64, y: &mut f64) -> Vec<Mark> {
    let d = moment.cutter.map(|c| thinwright_quantity::Length::m(c.d));
    let first = words::step_shown(job.units, moment.step, d);
    let lines =
        std::iter::once((first, LETTER)).chain(words::STEP_LEGEND.map(|l| (l.to_owned(), 3.0)));
    let bowing =
        bow::give(moment, scale).map(|(give, factor)| (words::bow(job.units, give, factor), 3.0));
    lines
        .chain(bowing)
        .map(|(text, height)| {
            *y += 1.5 * height;
            Mark::Text(Letters::start((frame::FILING + 4.0, *y), text, height))
        })
        .collect()
}

fn entries(job: &Job, scale: Scale) -> Entries {
    vec![
        (TitleField::Title, job.name.clone()),
        (TitleField::Material, job.material.name.clone()),
        (TitleField::Scale, scale.name()),
        (TitleField::Units, words::unit_word(job.units).to_owned()),
        (TitleField::Sheet, words::sheet_of(1, 1)),
    ]
}
