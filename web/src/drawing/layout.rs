//! The drawing as a whole: section above, plan below (first angle), a section across the slots, title block.

use super::across::Across;
use super::bow;
use super::cut::{self, Plane, Strip};
use super::cutting;
use super::dimension::{Leader, Side, Size, dimensions, room, rows_of};
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
use thinwright_core::part::Part;
use thinwright_core::plan::Bounds;
use thinwright_core::task::Face;
use thinwright_words::drawing::{self as words, TitleField};
use thinwright_words::language::tr;

/// Room for plan and blank on paper, mm.
const PLAN: (f64, f64) = (136.0, 124.0);
/// Between views, mm.
const APART: f64 = 7.0;
/// What the ends of a cutting plane take up beside a view, mm.
const PLANE_END: f64 = 7.0;
/// What the figures of short heights take up over a section, mm.
const UPRIGHT: f64 = 10.0;
/// What leaders take up over the plan, mm.
const LEADERS: f64 = 16.0;
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

/// Draws a job, with the step in hand if there is one.
pub(crate) fn picture(job: &Job, moment: Option<&Moment>) -> Picture {
    let Some(blank) = job.part.blank.outer.bounds() else {
        return Picture {
            height: 2.0 * frame::MARGIN + frame::TITLE,
            marks: Vec::new(),
            said: String::new(),
        };
    };
    let mut layout = Layout::new(job, moment, blank);
    layout.front();
    let view = layout.top();
    layout.across(&view);
    layout.finish()
}

/// A drawing in the making, from the top of the paper downwards.
struct Layout<'a> {
    job: &'a Job,
    moment: Option<&'a Moment<'a>>,
    write: Writer,
    blank: Bounds,
    scale: Scale,
    plane: Plane,
    strips: Vec<Strip>,
    /// The part's origin about nothing, to learn how much room sizes take.
    free: View,
    /// Where the part's origin lies, and how far down the paper is used.
    x: f64,
    y: f64,
    marks: Vec<Mark>,
    sizes: Vec<Size>,
}

impl<'a> Layout<'a> {
    fn new(job: &'a Job, moment: Option<&'a Moment<'a>>, blank: Bounds) -> Layout<'a> {
        let scale = Scale::fitting((blank.width(), blank.height()), PLAN);
        let plane = section::middle(&job.part);
        let mut layout = Layout {
            job,
            moment,
            write: Writer { units: job.units },
            scale,
            strips: cut::strips(&job.part, plane),
            plane,
            free: View {
                origin: (0.0, 0.0),
                scale: scale.factor(),
                mirrored: false,
            },
            x: 0.0,
            y: frame::MARGIN + 4.0 + TITLE,
            marks: Vec::new(),
            sizes: Vec::new(),
            blank,
        };
        layout.x = layout.middle();
        layout
    }

    /// Where the origin lies across the paper, so that what stands on both sides has room.
    fn middle(&self) -> f64 {
        let (front, top) = (self.front_sizes(&self.free), self.top_sizes(&self.free));
        let beside = |side| room(rows_of(&front, side)).max(PLANE_END + room(rows_of(&top, side)));
        let (left, right) = (beside(Side::Left), beside(Side::Right));
        let k = self.scale.factor();
        let inside = frame::WIDTH - frame::MARGIN - frame::FILING;
        let spare = (inside - self.blank.width() * k - left - right).max(0.0);
        frame::FILING + left + 0.5 * spare - k * self.blank.min.x
    }

    fn view(&self) -> View {
        View {
            origin: (self.x, self.y),
            ..self.free
        }
    }

    fn top_sizes(&self, view: &View) -> Vec<Size> {
        sizes::around(&self.job.part, view, self.write)
    }

    /// Sizes around the first section; with a step in hand only the heights.
    fn front_sizes(&self, view: &View) -> Vec<Size> {
        let part = &self.job.part;
        let mut out = sizes::heights(part, view, self.write);
        if self.moment.is_none() {
            out.extend(sizes::widths(part, view, self.write));
            let crossed = section::crossed(&self.strips);
            if crossed.len() > 1 && crosswise(part) {
                let z = part.floor(Face::A).mm();
                out.extend(sizes::slot_widths(part, view, self.write, (&crossed, z)));
            }
        }
        out
    }

    /// Room over or under the section, for sizes or for the cutter that comes from there.
    fn room_on(&self, face: Face, side: Side) -> f64 {
        let cutter = self.moment.filter(|m| m.setup.face_up == face);
        let room = match cutter {
            Some(moment) => cutting::room(moment, self.scale.factor()),
            None => room(rows_of(&self.front_sizes(&self.free), side)),
        };
        room.max(UPRIGHT)
    }

    fn corners(&self, view: &View, y: (f64, f64)) -> ((f64, f64), (f64, f64)) {
        (
            view.at(self.blank.min.x, y.1),
            view.at(self.blank.max.x, y.0),
        )
    }

    /// The section through the middle, or the step in hand there.
    fn front(&mut self) {
        let part = &self.job.part;
        let k = self.scale.factor();
        let stock = (part.blank_heights.0.mm(), part.blank_heights.1.mm());
        let name = words::section_title('A', None);
        self.marks.push(title((self.x, self.y), name));
        self.y += 3.5 + self.room_on(Face::A, Side::Above) + k * stock.1;
        let view = self.view();
        self.marks.extend(match self.moment {
            Some(moment) => cutting::marks(self.job, moment, &self.strips, &view, self.write),
            None => section::finished(part, &self.strips, &view),
        });
        let sizes = self.front_sizes(&view);
        let corners = self.corners(&view, stock);
        self.marks.extend(dimensions(&sizes, corners));
        self.sizes.extend(sizes);
        self.y += self.room_on(Face::B, Side::Below) + APART - k * stock.0;
        if let Some(moment) = self.moment {
            self.marks.extend(legend(self.job, moment, k, &mut self.y));
            let place = (&self.strips[..], self.scale, &view);
            self.marks
                .extend(detail(self.job, moment, place, &mut self.y));
        }
    }

    /// The plan; gives its view.
    fn top(&mut self) -> View {
        let part = &self.job.part;
        let (k, blank) = (self.scale.factor(), self.blank);
        self.y += LEADERS + k * blank.max.y;
        let view = self.view();
        self.marks.extend(plan::edges(part, &view, (Face::A, true)));
        let middle = self.plane.through.x;
        let ends = (
            blank.min.x - middle - 2.0 / k,
            blank.max.x - middle + 2.0 / k,
        );
        self.marks
            .extend(plan::cutting_plane(self.plane, ends, &view, "A"));
        let sizes = self.top_sizes(&view);
        let (least, most) = self.corners(&view, (blank.min.y, blank.max.y));
        // Outside the ends of the cutting plane.
        let clear = ((least.0 - PLANE_END, least.1), (most.0 + PLANE_END, most.1));
        self.marks.extend(dimensions(&sizes, clear));
        let leaders = sizes::leaders(part, &view, self.write);
        self.marks.extend(leaders.into_iter().map(Leader::mark));
        self.y += room(rows_of(&sizes, Side::Below)) + APART - k * blank.min.y;
        self.sizes.extend(sizes);
        view
    }

    /// The section across the slots, where the first one does not cross them.
    fn across(&mut self, plan: &View) {
        let crossed = section::crossed(&self.strips).len() > 1 && crosswise(&self.job.part);
        if crossed {
            return;
        }
        let Some(across) = Across::of(&self.job.part, self.scale) else {
            return;
        };
        let ends = across.ends();
        self.marks
            .extend(plan::cutting_plane(across.plane, ends, plan, "B"));
        self.y += TITLE;
        let name = words::section_title('B', Some(&across.scale.name()));
        self.marks.push(title((frame::CENTRE, self.y), name));
        let (marks, sizes, bottom) = across.draw(&self.job.part, self.y + 2.0, self.write);
        self.marks.extend(marks);
        self.sizes.extend(sizes);
        self.y = bottom + APART;
    }

    fn finish(mut self) -> Picture {
        let height = self.y + frame::TITLE + frame::MARGIN;
        self.marks.extend(frame::frame(height));
        let entries = entries(self.job, self.scale);
        self.marks.extend(frame::title_block(height, &entries));
        let said: Vec<String> = self.sizes.into_iter().map(|s| s.name).collect();
        Picture {
            height,
            marks: self.marks,
            said: words::drawing_said(&said, &self.scale.name()),
        }
    }
}

fn title(at: (f64, f64), text: String) -> Mark {
    Mark::Text(Letters {
        height: TITLE,
        ..Letters::middle(at, text)
    })
}

/// Whether the slots run across the first section.
fn crosswise(part: &Part) -> bool {
    let slot = part.slots.first();
    slot.is_some_and(|s| libm::cos(sizes::direction(s)).abs() < 0.5)
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
    let centre = frame::CENTRE;
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
        std::iter::once((first, LETTER)).chain(words::step_legend().map(|l| (l.to_owned(), 3.0)));
    // Its line is kept free until the web has been looked at: nothing below may move.
    let bowing = moment.step.web.is_some().then(|| {
        let bow = bow::give(job, moment, scale);
        (
            bow.map_or_else(String::new, |bow| words::bow(job.units, &bow)),
            3.0,
        )
    });
    lines
        .chain(bowing)
        .map(|(text, height)| {
            *y += 1.5 * height;
            Mark::Text(Letters::start((frame::FILING + 4.0, *y), text, height))
        })
        .filter(|mark| !matches!(mark, Mark::Text(l) if l.text.is_empty()))
        .collect()
}

fn entries(job: &Job, scale: Scale) -> Entries {
    vec![
        (TitleField::Title, job.name.clone()),
        (TitleField::Material, tr(&job.material.name).to_owned()),
        (TitleField::Scale, scale.name()),
        (TitleField::Units, words::unit_word(job.units).to_owned()),
        (TitleField::Sheet, words::sheet_of(1, 1)),
    ]
}
