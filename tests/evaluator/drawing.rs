//! The part as drawn, read anew from the typed answers: circles and rounded rectangles with their closed formulas.

use core::f64::consts::PI;
use thinwright_core::field::Input;
use thinwright_core::{Answers, Field, Job};
use thinwright_quantity::parse;

/// A plain outline around the middle of the part, m.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Outline {
    Round {
        radius: f64,
    },
    Box {
        length: f64,
        width: f64,
        corner: f64,
    },
}

impl Outline {
    pub(crate) fn area(&self) -> f64 {
        match *self {
            Outline::Round { radius } => PI * radius * radius,
            Outline::Box {
                length,
                width,
                corner,
            } => length * width - (4.0 - PI) * corner * corner,
        }
    }

    pub(crate) fn edge(&self) -> f64 {
        match *self {
            Outline::Round { radius } => 2.0 * PI * radius,
            Outline::Box {
                length,
                width,
                corner,
            } => 2.0 * (length + width) - (8.0 - 2.0 * PI) * corner,
        }
    }

    /// The outline at a distance outside (or inside, below 0); sharp corners turn round outside only.
    pub(crate) fn moved(&self, out: f64) -> Outline {
        match *self {
            Outline::Round { radius } => Outline::Round {
                radius: (radius + out).max(0.0),
            },
            Outline::Box {
                length,
                width,
                corner,
            } => Outline::Box {
                length: (length + 2.0 * out).max(0.0),
                width: (width + 2.0 * out).max(0.0),
                corner: (corner + out).max(0.0),
            },
        }
    }

    /// The shortest way across, m.
    pub(crate) fn across(&self) -> f64 {
        match *self {
            Outline::Round { radius } => 2.0 * radius,
            Outline::Box { length, width, .. } => length.min(width),
        }
    }

    /// Signed distance to the edge, positive inside, m.
    pub(crate) fn inside(&self, (x, y): (f64, f64)) -> f64 {
        match *self {
            Outline::Round { radius } => radius - (x * x + y * y).sqrt(),
            Outline::Box {
                length,
                width,
                corner,
            } => {
                let (px, py) = (
                    x.abs() - (0.5 * length - corner),
                    y.abs() - (0.5 * width - corner),
                );
                let (ox, oy) = (px.max(0.0), py.max(0.0));
                let beyond = (ox * ox + oy * oy).sqrt();
                corner - (beyond + px.max(py).min(0.0))
            }
        }
    }
}

/// A recess: what is cleared, from its face down to its floor.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Hollow {
    pub(crate) plan: Outline,
    /// Height of its floor above face B, m.
    pub(crate) floor: f64,
}

/// A slot: its middle, the way it runs, and its size, m.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Slit {
    pub(crate) middle: (f64, f64),
    pub(crate) along: (f64, f64),
    pub(crate) length: f64,
    pub(crate) width: f64,
}

impl Slit {
    /// Length of its middle line, m.
    pub(crate) fn run(&self) -> f64 {
        self.length - self.width
    }

    /// A point of its middle line, from -1 at one end to 1 at the other.
    pub(crate) fn at(&self, share: f64) -> (f64, f64) {
        let by = 0.5 * share * self.run();
        (
            self.middle.0 + by * self.along.0,
            self.middle.1 + by * self.along.1,
        )
    }

    pub(crate) fn holds(&self, (x, y): (f64, f64)) -> bool {
        let (dx, dy) = (x - self.middle.0, y - self.middle.1);
        let along = dx * self.along.0 + dy * self.along.1;
        let aside = dx * self.along.1 - dy * self.along.0;
        let beyond = (along.abs() - 0.5 * self.run()).max(0.0);
        beyond * beyond + aside * aside <= 0.25 * self.width * self.width
    }
}

/// The part and its blank.
#[derive(Clone, Debug)]
pub(crate) struct Drawing {
    pub(crate) outline: Outline,
    pub(crate) blank: Outline,
    pub(crate) thickness: f64,
    /// Stock above each face, m.
    pub(crate) face: f64,
    /// Face A, face B.
    pub(crate) hollows: [Option<Hollow>; 2],
    /// Diameters, 0 for none.
    pub(crate) boss: f64,
    pub(crate) bore: f64,
    pub(crate) slits: Vec<Slit>,
    /// What stands between two slots that lie side by side, m.
    pub(crate) rib: Option<f64>,
}

/// A second recess less deep than this is what rounding of inches leaves of a part that has one, m.
const ROUNDING: f64 = 5.0e-6;

struct Typed<'a>(&'a Answers);

impl Typed<'_> {
    fn number(&self, field: Field) -> Option<f64> {
        let text = self.0.text(field.into());
        let Input::Quantity(kind) = field.spec().input else {
            return None;
        };
        parse(kind, text, self.0.units).ok()
    }

    fn or(&self, field: Field, otherwise: f64) -> f64 {
        self.number(field).unwrap_or(otherwise)
    }

    fn is(&self, field: Field, word: &str) -> bool {
        self.0.text(field.into()).trim() == word
    }
}

impl Drawing {
    pub(crate) fn read(answers: &Answers, job: &Job) -> Drawing {
        let typed = Typed(answers);
        let numbers = &job.numbers;
        let round = !typed.is(Field::Shape, "rectangular");
        let outline = if round {
            Outline::Round {
                radius: 0.5 * typed.or(Field::Diameter, 0.0),
            }
        } else {
            Outline::Box {
                length: typed.or(Field::Length, 0.0),
                width: typed.or(Field::Width, 0.0),
                corner: typed.or(Field::OuterCorner, 0.0),
            }
        };
        let around = typed.or(Field::BlankAround, numbers.blank_around_mm * 1.0e-3);
        let (length, width) = match outline {
            Outline::Round { radius } => (2.0 * radius, 2.0 * radius),
            Outline::Box { length, width, .. } => (length, width),
        };
        let blank = Outline::Box {
            length: length + 2.0 * around,
            width: width + 2.0 * around,
            corner: 0.0,
        };
        let thickness = typed.or(Field::Thickness, 0.0);
        let (a, b) = depths(&typed, thickness);
        let plan_a = recess(&typed, round, None);
        let plan_b = recess(&typed, round, Some(plan_a));
        let hollow = |plan, floor| Hollow { plan, floor };
        let slits = slits(&typed);
        Drawing {
            rib: rib(&typed, &slits),
            outline,
            blank,
            thickness,
            face: typed.or(Field::BlankFace, numbers.blank_face_mm * 1.0e-3),
            hollows: [
                Some(hollow(plan_a, thickness - a)),
                (b >= ROUNDING).then(|| hollow(plan_b, b)),
            ],
            boss: typed.or(Field::Boss, 0.0),
            bore: typed.or(Field::Bore, 0.0),
            slits,
        }
    }

    pub(crate) fn two_sided(&self) -> bool {
        self.hollows[1].is_some()
    }

    /// Whether the boss stands at a place.
    pub(crate) fn on_boss(&self, (x, y): (f64, f64)) -> bool {
        x * x + y * y < 0.25 * self.boss * self.boss
    }
}

/// Depths of both recesses from what is given of depths and web, m.
fn depths(typed: &Typed, thickness: f64) -> (f64, f64) {
    let given = [Field::DepthA, Field::DepthB, Field::Web].map(|f| typed.number(f));
    match given {
        [Some(a), Some(b), _] => (a, b),
        [Some(a), None, web] => (a, web.map_or(0.0, |w| thickness - a - w)),
        [None, b, web] => {
            let b = b.unwrap_or(0.0);
            (thickness - b - web.unwrap_or(0.0), b)
        }
    }
}

/// A recess from above; that of face B is like face A's where nothing is typed.
fn recess(typed: &Typed, round: bool, like: Option<Outline>) -> Outline {
    let of = |a: Field, b: Field| if like.is_some() { b } else { a };
    let (l, w, c) = match like {
        Some(Outline::Round { radius }) => (2.0 * radius, 2.0 * radius, radius),
        Some(Outline::Box {
            length,
            width,
            corner,
        }) => (length, width, corner),
        None => (0.0, 0.0, 0.0),
    };
    if round {
        return Outline::Round {
            radius: 0.5 * typed.or(of(Field::RecessDiameterA, Field::RecessDiameterB), l),
        };
    }
    Outline::Box {
        length: typed.or(of(Field::RecessLengthA, Field::RecessLengthB), l),
        width: typed.or(of(Field::RecessWidthA, Field::RecessWidthB), w),
        corner: typed.or(of(Field::RecessCornerA, Field::RecessCornerB), c),
    }
}

#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a count of at most a few hundred"
)]
fn slits(typed: &Typed) -> Vec<Slit> {
    let count = |field| typed.or(field, 1.0) as u32;
    let polar = typed.is(Field::SlotPattern, "polar");
    if !polar && !typed.is(Field::SlotPattern, "parallel") {
        return Vec::new();
    }
    let (length, width) = (
        typed.or(Field::SlotLength, 0.0),
        typed.or(Field::SlotWidth, 0.0),
    );
    let (per, pitch) = (count(Field::SlotsPerGroup), typed.or(Field::SlotPitch, 0.0));
    let (groups, out) = if polar {
        let inner = typed.or(Field::SlotInner, 0.0);
        (count(Field::SlotGroups), inner + 0.5 * length)
    } else {
        (1, 0.0)
    };
    let mut all = Vec::new();
    for group in 0..groups {
        // A row of parallel slots runs along y; a polar group along its ray, the first along x.
        let turn = if polar {
            2.0 * PI * f64::from(group) / f64::from(groups)
        } else {
            0.5 * PI
        };
        let along = (libm::cos(turn), libm::sin(turn));
        for k in 0..per {
            let aside = pitch * (f64::from(k) - 0.5 * f64::from(per - 1));
            all.push(Slit {
                middle: (
                    out * along.0 - aside * along.1,
                    out * along.1 + aside * along.0,
                ),
                along,
                length,
                width,
            });
        }
    }
    all
}

/// The least that stands between two slots, m: by points along both middle lines.
fn rib(typed: &Typed, slits: &[Slit]) -> Option<f64> {
    const POINTS: u32 = 40;
    let mut least = f64::INFINITY;
    for (i, a) in slits.iter().enumerate() {
        for b in &slits[i + 1..] {
            let far = apart(a.middle, b.middle) - a.length - b.length;
            if far > least {
                continue;
            }
            for k in 0..=POINTS {
                let p = a.at(f64::from(k) / f64::from(POINTS) * 2.0 - 1.0);
                least = least.min(to_line(b, p).min(least));
                let p = b.at(f64::from(k) / f64::from(POINTS) * 2.0 - 1.0);
                least = least.min(to_line(a, p).min(least));
            }
        }
    }
    let width = typed.or(Field::SlotWidth, 0.0);
    least.is_finite().then_some(least - width)
}

/// Distance of two points, m.
pub(crate) fn apart(a: (f64, f64), b: (f64, f64)) -> f64 {
    ((a.0 - b.0) * (a.0 - b.0) + (a.1 - b.1) * (a.1 - b.1)).sqrt()
}

/// Distance of a point to a slot's middle line, m.
fn to_line(slit: &Slit, p: (f64, f64)) -> f64 {
    let (dx, dy) = (p.0 - slit.middle.0, p.1 - slit.middle.1);
    let along = dx * slit.along.0 + dy * slit.along.1;
    let half = 0.5 * slit.run();
    let foot = along.clamp(-half, half);
    apart(
        p,
        (
            slit.middle.0 + foot * slit.along.0,
            slit.middle.1 + foot * slit.along.1,
        ),
    )
}
