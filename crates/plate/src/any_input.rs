//! No input, however odd, gives a panic, a value that is not finite, or a negative compliance.

use crate::annulus::{self, Annulus, Boss, InnerEdge};
use crate::fem::{Grid, Held, Layout, Plate, Stuff, Theory};
use crate::mesh::{Fineness, Loop, LoopKind, Mesh, mesh};
use crate::ritz::{Edge, Panel, Ritz};
use crate::strip::Strip;
use crate::{PlateError, Sheet, bed, disc, rectangle, stress, strip};

/// Values that have broken other programs, and plain ones.
const ODD: [f64; 14] = [
    0.0,
    -0.0,
    -1.0,
    f64::NAN,
    f64::INFINITY,
    f64::NEG_INFINITY,
    f64::MIN_POSITIVE,
    5e-324,
    f64::MAX,
    1e-9,
    1e-3,
    0.03,
    0.09,
    1.0,
];
const PLAIN: [f64; 4] = [1e-3, 0.02, 0.03, 0.09];
const DRAWS: u32 = 3000;

/// A plain generator of repeatable draws (Knuth's linear congruential one of 64 bits, from memory).
struct Draw(u64);

impl Draw {
    fn next(&mut self) -> usize {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        usize::try_from(self.0 >> 40).unwrap()
    }

    fn length(&mut self) -> f64 {
        if self.next().is_multiple_of(4) {
            ODD[self.next() % ODD.len()]
        } else {
            PLAIN[self.next() % PLAIN.len()]
        }
    }

    fn sheet(&mut self) -> Sheet {
        let plain = Sheet {
            e_mod: 69e9,
            nu: 0.33,
            rho: 2700.0,
            t: 3e-3,
        };
        match self.next() % 12 {
            0 => Sheet {
                e_mod: self.length(),
                ..plain
            },
            1 => Sheet {
                nu: self.length(),
                ..plain
            },
            2 => Sheet {
                rho: self.length(),
                ..plain
            },
            3 => Sheet {
                t: self.length(),
                ..plain
            },
            _ => plain,
        }
    }
}

fn sound(value: Result<f64, PlateError>) -> bool {
    value.map_or(true, |v| v.is_finite() && v >= 0.0)
}

#[test]
fn round_plates_take_anything() {
    let mut draw = Draw(1);
    for _ in 0..DRAWS {
        let (sheet, a, b, c) = (draw.sheet(), draw.length(), draw.length(), draw.length());
        assert!(sound(disc::compliance(&sheet, a, b)), "{sheet:?} {a} {b}");
        assert!(
            sound(disc::patch_compliance(&sheet, a, b)),
            "{sheet:?} {a} {b}"
        );
        assert!(
            sound(disc::patch_shear_compliance(&sheet, a, b)),
            "{sheet:?} {a} {b}"
        );
        assert!(sound(disc::first_frequency(&sheet, a)), "{sheet:?} {a}");
        assert!(
            sound(stress::disc_centre(&sheet, a, b)),
            "{sheet:?} {a} {b}"
        );
        assert!(sound(stress::disc_edge(&sheet, a, b)), "{sheet:?} {a} {b}");
        assert!(sound(bed::compliance(&sheet, a)), "{sheet:?} {a}");
        let edges = [
            InnerEdge::Free,
            InnerEdge::RigidFloating,
            InnerEdge::Clamped,
        ];
        let ring = Annulus {
            inner: a,
            outer: b,
            inner_edge: edges[draw.next() % 3],
        };
        assert!(
            sound(annulus::compliance(&sheet, &ring, c)),
            "{sheet:?} {ring:?} {c}"
        );
        assert!(
            sound(annulus::boss_compliance(&sheet, &ring)),
            "{sheet:?} {ring:?}"
        );
        assert!(
            sound(annulus::uniform_compliance(&sheet, &ring)),
            "{sheet:?} {ring:?}"
        );
        let boss = Boss {
            mass: c,
            inertia: draw.length(),
        };
        let first = annulus::frequencies(&sheet, &ring, &boss, (0, 1)).map(|f| f[0]);
        assert!(sound(first), "{sheet:?} {ring:?} {boss:?}");
    }
}

#[test]
fn straight_plates_take_anything() {
    let mut draw = Draw(2);
    for _ in 0..DRAWS / 10 {
        let (sheet, a, b) = (draw.sheet(), draw.length(), draw.length());
        let (x, y) = (draw.length(), draw.length());
        assert!(
            sound(rectangle::compliance(&sheet, (a, b), (x, y))),
            "{sheet:?} {a} {b} {x} {y}"
        );
        assert!(
            sound(rectangle::compliance_supported(&sheet, (a, b), (x, y))),
            "{sheet:?} {a} {b} {x} {y}"
        );
        assert!(
            sound(rectangle::uniform_compliance(&sheet, a, b)),
            "{sheet:?} {a} {b}"
        );
        assert!(
            sound(rectangle::first_frequency(&sheet, a, b)),
            "{sheet:?} {a} {b}"
        );
        let rib = Strip {
            length: a,
            width: b,
        };
        assert!(
            sound(strip::compliance(&sheet, &rib, x)),
            "{sheet:?} {rib:?} {x}"
        );
        assert!(
            sound(strip::first_frequency(&sheet, &rib)),
            "{sheet:?} {rib:?}"
        );
        let edges = [Edge::Free, Edge::Supported, Edge::Clamped];
        let mut pair = || (edges[draw.next() % 3], edges[draw.next() % 3]);
        let panel = Panel {
            a,
            b,
            x_edges: pair(),
            y_edges: pair(),
        };
        if let Ok(ritz) = Ritz::new(&sheet, &panel) {
            assert!(sound(ritz.compliance(x, y)), "{sheet:?} {panel:?} {x} {y}");
            assert!(
                sound(ritz.frequencies(&sheet, 1).map(|f| f[0])),
                "{sheet:?} {panel:?}"
            );
        }
    }
}

/// A loop of a few points that are mostly plain.
fn line(draw: &mut Draw, kind: LoopKind) -> Loop {
    let (x, y) = (0.1 * draw.length(), 0.1 * draw.length());
    let (dx, dy) = (draw.length(), draw.length());
    let mut points = vec![[x, y], [x + dx, y], [x + dx, y + dy], [x, y + dy]];
    match draw.next() % 8 {
        0 => points.truncate(draw.next() % 4),
        1 => points.swap(1, 2),
        2 => points.extend_from_within(..2),
        3 => points.push([draw.length(), draw.length()]),
        _ => {}
    }
    Loop { points, kind }
}

fn any_mesh(draw: &mut Draw) -> Option<Mesh> {
    let kinds = [LoopKind::Line, LoopKind::Hole, LoopKind::Outer];
    let mut loops = vec![line(draw, LoopKind::Outer)];
    for _ in 0..draw.next() % 4 {
        let kind = kinds[draw.next() % 30 / 14];
        loops.push(line(draw, kind));
    }
    let plain = Fineness {
        most: 0.01,
        across: 1.0,
        least: 5e-4,
        most_nodes: 2000,
    };
    let fineness = match draw.next() % 8 {
        0 => Fineness {
            most: draw.length(),
            ..plain
        },
        1 => Fineness {
            across: draw.length(),
            ..plain
        },
        2 => Fineness {
            least: draw.length(),
            ..plain
        },
        _ => plain,
    };
    mesh(&loops, &fineness).ok()
}

fn any_layout(draw: &mut Draw, mesh: &Mesh) -> Layout {
    let count = mesh.triangles.len();
    let mut layout = Layout {
        thickness: vec![0.003; count],
        bed: vec![0.0; count],
        held: vec![Held::Clamped; mesh.nodes.len()],
    };
    let start = draw.next() % mesh.nodes.len();
    layout.held[start..].fill(Held::Free);
    for _ in 0..draw.next() % 4 {
        layout.thickness[draw.next() % count] = draw.length();
        layout.bed[draw.next() % count] = 1e10 * draw.length();
        layout.held[draw.next() % mesh.nodes.len()] = Held::Supported;
    }
    if draw.next().is_multiple_of(16) {
        layout.bed.truncate(draw.next() % count);
    }
    layout
}

#[test]
fn finite_elements_take_anything() {
    let mut draw = Draw(3);
    let mut asked = 0;
    for _ in 0..DRAWS {
        let Some(mesh) = any_mesh(&mut draw) else {
            continue;
        };
        // A hole may take all of the plate.
        let bare = mesh.triangles.is_empty();
        let Ok(grid) = Grid::new(mesh) else {
            assert!(bare, "a mesh of our own is not sound");
            continue;
        };
        let layout = any_layout(&mut draw, grid.mesh());
        let sheet = draw.sheet();
        let stuff = Stuff {
            e_mod: sheet.e_mod,
            nu: sheet.nu,
            rho: sheet.rho,
        };
        let theory = [Theory::ShearFlexible, Theory::Thin][draw.next() % 2];
        let Ok(mut plate) = Plate::new(&grid, &stuff, layout.clone(), theory) else {
            continue;
        };
        let near = grid.mesh().nodes[draw.next() % grid.mesh().nodes.len()];
        let place = [near[0] + 1e-3 * draw.length(), near[1]];
        let radius = 0.1 * draw.length();
        let seen = (stuff, theory, place, radius, &layout.thickness);
        if let Some(patch) = plate.patch(place, radius) {
            let value = plate.compliance(&patch);
            assert!(value.is_finite() && value >= 0.0, "{value} {seen:?}");
            let (moment, _) = plate.mean_moment(&plate.deflection(&patch), &patch);
            assert!(moment.iter().all(|m| m.is_finite()), "{moment:?} {seen:?}");
            asked += 1;
        }
        let all = plate.nodal_compliance();
        assert!(all.iter().all(|c| c.is_finite() && *c >= 0.0), "{seen:?}");
        for tone in plate.tones::<5>(2) {
            assert!(tone.frequency.is_finite(), "{seen:?}");
            assert!(tone.shape.iter().all(|w| w.is_finite()), "{seen:?}");
        }
    }
    assert!(asked > 100, "only {asked} were asked");
}
