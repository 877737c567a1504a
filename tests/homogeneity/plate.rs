//! The kernels of thin plates: closed forms and series, then one plate by finite elements.

use crate::units::*;
use crate::{Kernel, one};
use thinwright_plate::annulus::{self, Annulus, Boss, InnerEdge};
use thinwright_plate::fem::{Grid, Held, Layout, Plate, Stuff, Theory};
use thinwright_plate::mesh::{Fineness, Loop, LoopKind, Mesh, mesh};
use thinwright_plate::ritz::{Panel, Ritz};
use thinwright_plate::strip::{self, Strip};
use thinwright_plate::{Sheet, bed, disc, rectangle, stress};

/// Deflection per pressure, stress per force, bed, slope per force.
const PER_PRESSURE: Dimension = [2, -1, 2];
const PER_AREA: Dimension = [-2, 0, 0];
const BED: Dimension = [-2, 1, -2];
const SLOPE: Dimension = [-1, -1, 2];

/// Functions that make or hand over, and give no number of their own.
pub(crate) const PLAIN: &[&str] = &[
    "fem::new",
    "fem::new",
    "fem::patch",
    "fem::mesh",
    "fem::layout",
    "fem::weighed",
    "fem::heavier",
    "ritz::new",
    "ritz::floor",
    "ritz::wall",
];

fn sheet(u: &Units) -> Sheet {
    Sheet {
        e_mod: u.of(69e9, STRESS),
        nu: 0.33,
        rho: u.of(2700.0, DENSITY),
        t: u.mm(3.0),
    }
}

fn all(name: &'static str, values: Vec<f64>, dimension: Dimension) -> Kernel {
    (name, values.into_iter().map(|v| (v, dimension)).collect())
}

pub(crate) fn discs(u: &Units) -> Vec<Kernel> {
    let (s, radius, r) = (sheet(u), u.mm(90.0), u.mm(5.0));
    let edge = stress::rectangle_centre(&s, (radius, u.mm(70.0)), r).unwrap();
    let tones = disc::frequencies(&s, radius, 4).unwrap();
    let compliances = [
        ("disc::compliance", disc::compliance(&s, radius, r)),
        (
            "disc::compliance_supported",
            disc::compliance_supported(&s, radius),
        ),
        (
            "disc::patch_compliance",
            disc::patch_compliance(&s, radius, r),
        ),
        (
            "disc::patch_shear_compliance",
            disc::patch_shear_compliance(&s, radius, r),
        ),
    ];
    let mut found: Vec<Kernel> = compliances
        .into_iter()
        .map(|(name, value)| one(name, value.unwrap(), COMPLIANCE))
        .collect();
    let uniform = disc::uniform_compliance(&s, radius).unwrap();
    let supported = disc::uniform_compliance_supported(&s, radius).unwrap();
    let first = disc::first_frequency(&s, radius).unwrap();
    let [centre, rim] =
        [stress::disc_centre, stress::disc_edge].map(|of| of(&s, radius, r).unwrap());
    found.extend([
        one("disc::uniform_compliance", uniform, PER_PRESSURE),
        one(
            "disc::uniform_compliance_supported",
            supported,
            PER_PRESSURE,
        ),
        one("disc::first_frequency", first, RATE),
        all("disc::frequencies", tones, RATE),
        one("stress::disc_centre", centre, PER_AREA),
        one("stress::disc_edge", rim, PER_AREA),
        one("stress::rectangle_centre", edge, PER_AREA),
        one("sheet::rigidity", s.rigidity(), TORQUE),
    ]);
    found
}

pub(crate) fn rings(u: &Units) -> Vec<Kernel> {
    let s = sheet(u);
    let ring = Annulus {
        inner: u.mm(18.0),
        outer: u.mm(90.0),
        inner_edge: InnerEdge::RigidFloating,
    };
    let boss = Boss::cylinder(&s, ring.inner, u.mm(20.0));
    let (at, most) = annulus::softest(&s, &ring).unwrap();
    let under = annulus::compliance(&s, &ring, u.mm(50.0)).unwrap();
    let tones = annulus::frequencies(&s, &ring, &boss, (1, 2)).unwrap();
    let first = annulus::first_frequency(&s, &ring).unwrap();
    let uniform = annulus::uniform_compliance(&s, &ring).unwrap();
    let on_boss = annulus::boss_compliance(&s, &ring).unwrap();
    vec![
        one("annulus::compliance", under, COMPLIANCE),
        one("annulus::boss_compliance", on_boss, COMPLIANCE),
        ("annulus::softest", vec![(at, LENGTH), (most, COMPLIANCE)]),
        one("annulus::uniform_compliance", uniform, PER_PRESSURE),
        one("annulus::first_frequency", first, RATE),
        all("annulus::frequencies", tones, RATE),
        (
            "annulus::cylinder",
            vec![(boss.mass, [0, 1, 0]), (boss.inertia, [2, 1, 0])],
        ),
    ]
}

pub(crate) fn beds(u: &Units) -> Vec<Kernel> {
    let (s, k0) = (sheet(u), u.of(5e9, BED));
    let of = |of: fn(&Sheet, f64) -> Result<f64, _>| of(&s, k0).unwrap();
    let layer = bed::layer_stiffness(s.e_mod, s.t).unwrap();
    vec![
        one("bed::compliance", of(bed::compliance), COMPLIANCE),
        one(
            "bed::characteristic_length",
            of(bed::characteristic_length),
            LENGTH,
        ),
        one("bed::contact_radius", of(bed::contact_radius), LENGTH),
        one("bed::layer_stiffness", layer, BED),
        one("bed::first_frequency", of(bed::first_frequency), RATE),
    ]
}

pub(crate) fn rectangles(u: &Units) -> Vec<Kernel> {
    use rectangle::*;
    let (s, a, b) = (sheet(u), u.mm(140.0), u.mm(90.0));
    let at = (u.mm(40.0), u.mm(30.0));
    let uniform =
        [uniform_compliance, uniform_compliance_supported].map(|of| of(&s, a, b).unwrap());
    let supported = compliance_supported(&s, (a, b), at).unwrap();
    let first = first_frequency(&s, a, b).unwrap();
    vec![
        one(
            "rectangle::compliance",
            compliance(&s, (a, b), at).unwrap(),
            COMPLIANCE,
        ),
        one(
            "rectangle::compliance_centre",
            compliance_centre(&s, a, b).unwrap(),
            COMPLIANCE,
        ),
        one("rectangle::compliance_supported", supported, COMPLIANCE),
        one("rectangle::uniform_compliance", uniform[0], PER_PRESSURE),
        one(
            "rectangle::uniform_compliance_supported",
            uniform[1],
            PER_PRESSURE,
        ),
        one("rectangle::first_frequency", first, RATE),
        all(
            "rectangle::frequencies",
            frequencies(&s, a, b, 3).unwrap(),
            RATE,
        ),
    ]
}

pub(crate) fn strips(u: &Units) -> Vec<Kernel> {
    let (s, length, width) = (sheet(u), u.mm(60.0), u.mm(30.0));
    let rib = Strip { length, width };
    let wall = Ritz::new(&s, &Panel::wall(length, width)).unwrap();
    let first = strip::first_frequency(&s, &rib).unwrap();
    let upright = strip::cantilever_first_frequency(&s, &rib).unwrap();
    let under = strip::compliance(&s, &rib, u.mm(20.0)).unwrap();
    let tip = strip::cantilever_compliance(&s, &rib).unwrap();
    let edge = strip::long_edge_compliance(&s, width).unwrap();
    let corner = wall.compliance(length, width).unwrap();
    vec![
        one("strip::compliance", under, COMPLIANCE),
        one("strip::first_frequency", first, RATE),
        one("strip::cantilever_compliance", tip, COMPLIANCE),
        one("strip::cantilever_first_frequency", upright, RATE),
        one("strip::long_edge_compliance", edge, COMPLIANCE),
        one("ritz::compliance", corner, COMPLIANCE),
        all("ritz::parameters", wall.parameters(3).unwrap(), NUMBER),
        all("ritz::frequencies", wall.frequencies(&s, 3).unwrap(), RATE),
    ]
}

/// A rectangle with a slot, as the mesher takes it.
fn meshed(u: &Units) -> Mesh {
    let line = |points: &[[f64; 2]], kind| Loop {
        points: points.iter().map(|p| p.map(|mm| u.mm(mm))).collect(),
        kind,
    };
    let outer = [[-1.0, -2.0], [79.0, -2.0], [79.0, 48.0], [-1.0, 48.0]];
    let slot = [[20.0, 20.0], [50.0, 21.0], [50.0, 25.0], [20.0, 24.0]];
    let fineness = Fineness {
        most: u.mm(9.0),
        across: 1.0,
        least: u.mm(0.5),
        most_nodes: 5000,
    };
    let loops = [line(&outer, LoopKind::Outer), line(&slot, LoopKind::Line)];
    mesh(&loops, &fineness).unwrap()
}

/// What stands where on a grid, and what it is made of.
fn stood(u: &Units, grid: &Grid) -> (Layout, Stuff) {
    let count = grid.mesh().triangles.len();
    let held = grid.mesh().nodes.iter().map(|p| {
        if p[0] < u.mm(0.0) {
            Held::Clamped
        } else {
            Held::Free
        }
    });
    let layout = Layout {
        thickness: (0..count)
            .map(|t| u.mm(if t % 7 == 0 { 4.0 } else { 3.0 }))
            .collect(),
        bed: vec![u.of(1e8, BED); count],
        held: held.collect(),
    };
    let s = sheet(u);
    let stuff = Stuff {
        e_mod: s.e_mod,
        nu: s.nu,
        rho: s.rho,
    };
    (layout, stuff)
}

pub(crate) fn elements(u: &Units) -> Vec<Kernel> {
    let made = meshed(u);
    // Roundings may number the nodes otherwise.
    let places = [0, 1]
        .map(|d| made.nodes.iter().map(|p| p[d]).sum())
        .to_vec();
    // The same triangles in all units, lest a rounding choose others.
    let nodes = meshed(&Units::SI)
        .nodes
        .iter()
        .map(|p| p.map(|v| u.of(v, LENGTH)))
        .collect();
    let triangles = meshed(&Units::SI).triangles;
    let grid = Grid::new(Mesh { nodes, triangles }).unwrap();
    let (layout, stuff) = stood(u, &grid);
    let heavier: Vec<f64> = layout.thickness.iter().map(|t| 1.5 * t).collect();
    let doubled = vec![2.0; heavier.len()];
    let mut plate = Plate::new(&grid, &stuff, layout, Theory::ShearFlexible).unwrap();
    let patch = plate.patch([u.mm(60.0), u.mm(12.0)], u.mm(4.0)).unwrap();
    let other = plate.patch([u.mm(30.0), u.mm(33.0)], u.mm(3.0)).unwrap();
    let compliance = plate.compliance(&patch);
    let unknowns = plate.deflection(&patch);
    let freest = unknowns
        .iter()
        .max_by(|a, b| a[0].total_cmp(&b[0]))
        .unwrap();
    let moved = freest.iter().copied().zip([COMPLIANCE, SLOPE, SLOPE]);
    let (mean, radius) = plate.mean_moment(&unknowns, &patch);
    let mut mean: Vec<(f64, Dimension)> = mean.iter().map(|m| (*m, NUMBER)).collect();
    mean.push((radius, LENGTH));
    let (triangle, shares) = grid.locate([u.mm(33.0), u.mm(8.0)]).unwrap();
    let softest = plate.nodal_compliance().into_iter().fold(0.0, f64::max);
    let corners = grid.corners(triangle).into_iter().flatten().collect();
    let between = plate.between(&patch, &other);
    let moment = plate.moment(&unknowns, triangle).to_vec();
    vec![
        all("mesh::mesh", places, LENGTH),
        one("fem::compliance", compliance, COMPLIANCE),
        ("fem::deflection", moved.collect()),
        one("fem::between", between, COMPLIANCE),
        all("fem::moment", moment, NUMBER),
        ("fem::mean_moment", mean),
        one("fem::nodal_compliance", softest, COMPLIANCE),
        one("fem::nu", plate.nu(), NUMBER),
        all("fem::corners", corners, LENGTH),
        one("fem::area", grid.area(triangle), AREA),
        all("fem::middle", grid.middle(triangle).to_vec(), LENGTH),
        all("fem::locate", shares.to_vec(), NUMBER),
        one(
            "fem::tones",
            plate.weighed(&heavier).heavier(&doubled).tones::<5>(1)[0].frequency,
            RATE,
        ),
    ]
}
