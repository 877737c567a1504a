//! What is true of any plate, on meshes of the project's own mesher.
#![cfg(test)]

mod plates;

use plates::{ALUMINIUM, Fine, Place, Plan, Shape};
use thinwright_plate::fem::{Grid, Held, Layout, Plate, Theory};
use thinwright_plate::rectangle;

const FINE: Fine = (0.003, 3.0);
/// Radius of the patches, m.
const PATCH: f64 = 0.0025;
/// What is equal but for the mesh, where edges are as long as a patch is wide (0.9 % was seen).
const MESH: f64 = 0.015;
/// What half a millimetre of rim still holds, of all that a clamp does.
const THIN_RIM: f64 = 0.06;
/// Roundings.
const ROUNDING: f64 = 1e-9;

/// A disc with a boss and four groups of two slots: symmetric about both axes and both diagonals.
fn disc() -> Plan {
    let slot = |k: u32| {
        let angle = f64::from(k / 2) * core::f64::consts::FRAC_PI_2;
        let (sin, cos) = (libm::sin(angle), libm::cos(angle));
        let y = if k.is_multiple_of(2) { -0.004 } else { 0.004 };
        let turned = |x: f64| [x * cos - y * sin, x * sin + y * cos];
        Shape::Slot {
            from: turned(0.026),
            to: turned(0.05),
            width: 0.004,
        }
    };
    Plan::even(Shape::circle([0.0, 0.0], 0.06), 0.003, Held::Clamped)
        .with(Shape::circle([0.0, 0.0], 0.012), 0.012)
        .slotted((0..8).map(slot).collect())
}

/// Places on the floor: a rib, open web, near the rim, near the boss.
const PLACES: [Place; 4] = [[0.038, 0.0], [0.028, 0.026], [0.0, 0.055], [0.018, 0.004]];

fn compliances(grid: &Grid, layout: Layout, places: &[Place]) -> Vec<f64> {
    let mut plate = Plate::new(grid, &ALUMINIUM, layout, Theory::ShearFlexible).unwrap();
    let mut of = |at: &Place| {
        let patch = plate.patch(*at, PATCH).unwrap();
        plate.compliance(&patch)
    };
    places.iter().map(&mut of).collect()
}

fn first_tone(grid: &Grid, layout: Layout) -> f64 {
    let plate = Plate::new(grid, &ALUMINIUM, layout, Theory::ShearFlexible).unwrap();
    plate.tones::<5>(1)[0].frequency
}

/// Every value of the first is at most that of the second.
fn never_softer(stiff: &[f64], soft: &[f64]) {
    for (stiff, soft) in stiff.iter().zip(soft) {
        assert!(*stiff <= soft * (1.0 + ROUNDING), "{stiff} {soft}");
    }
}

#[test]
fn closing_slots_one_after_another_never_softens() {
    let plan = disc();
    let grid = plan.grid(FINE);
    let open = plan.layout(&grid);
    let mut last = compliances(&grid, open.clone(), &PLACES);
    let loosest = last.clone();
    for count in (0..8).rev() {
        let mut some = plan.clone();
        some.slots.truncate(count);
        let now = compliances(&grid, some.layout(&grid), &PLACES);
        never_softer(&now, &last);
        last = now;
    }
    // The rib stiffens by much, not by a rounding.
    assert!(last[0] < 0.7 * loosest[0], "{last:?} {loosest:?}");
}

#[test]
fn a_thicker_web_boss_or_bed_never_softens() {
    let plan = disc();
    let grid = plan.grid(FINE);
    let before = compliances(&grid, plan.layout(&grid), &PLACES);
    for region in 0..2 {
        let mut thicker = plan.clone();
        thicker.regions[region].thickness *= 1.2;
        never_softer(&compliances(&grid, thicker.layout(&grid), &PLACES), &before);
        let mut last = before.clone();
        for bed in [1e9, 1e10, 1e11, 1e12] {
            let mut bedded = plan.clone();
            bedded.regions[region].bed = bed;
            let now = compliances(&grid, bedded.layout(&grid), &PLACES);
            never_softer(&now, &last);
            last = now;
        }
    }
}

#[test]
fn closed_slots_are_a_plain_plate() {
    let mut closed = disc();
    closed.slots.clear();
    // The lines of the slots stay in the mesh, the slots do not stay in the plate.
    let grid = disc().grid(FINE);
    let filled = compliances(&grid, closed.layout(&grid), &PLACES);
    let tone = first_tone(&grid, closed.layout(&grid));
    let plain = closed.grid((0.003, 1.0));
    let expected = compliances(&plain, closed.layout(&plain), &PLACES);
    for (found, expected) in filled.iter().zip(&expected) {
        assert!((found / expected - 1.0).abs() < MESH, "{found} {expected}");
    }
    let expected = first_tone(&plain, closed.layout(&plain));
    assert!(
        (tone / expected - 1.0).abs() < 0.5 * MESH,
        "{tone} {expected}"
    );
}

#[test]
fn a_symmetric_part_has_a_symmetric_map() {
    let plan = disc();
    let grid = plan.grid(FINE);
    for [x, y] in PLACES {
        let images = [
            [x, y],
            [-x, y],
            [x, -y],
            [-x, -y],
            [y, x],
            [-y, x],
            [y, -x],
            [-y, -x],
        ];
        let all = compliances(&grid, plan.layout(&grid), &images);
        for one in &all {
            assert!((one / all[0] - 1.0).abs() < MESH, "[{x}, {y}]: {all:?}");
        }
    }
}

#[test]
fn work_is_mutual_over_slots_bosses_and_beds() {
    let mut plan = disc();
    plan.regions[0].bed = 3e9;
    plan.edge = Held::Free;
    let grid = plan.grid(FINE);
    let plate = Plate::new(&grid, &ALUMINIUM, plan.layout(&grid), Theory::ShearFlexible).unwrap();
    let patches = PLACES.map(|at| plate.patch(at, PATCH).unwrap());
    let most = patches
        .iter()
        .map(|p| plate.between(p, p))
        .fold(0.0, f64::max);
    for a in &patches {
        for b in &patches {
            let (there, back) = (plate.between(a, b), plate.between(b, a));
            assert!((there - back).abs() < ROUNDING * most, "{there} {back}");
            // Nobody gives way more under a load elsewhere than the mean of what both give under their own.
            let own = plate.between(a, a) * plate.between(b, b);
            assert!(there * there <= own * (1.0 + ROUNDING));
        }
    }
}

#[test]
fn nodes_that_are_held_or_open_do_not_give() {
    let plan = disc();
    let grid = plan.grid(FINE);
    let layout = plan.layout(&grid);
    let held = layout.held.clone();
    let plate = Plate::new(&grid, &ALUMINIUM, layout, Theory::ShearFlexible).unwrap();
    let nodal = plate.nodal_compliance();
    let most = nodal.iter().copied().fold(0.0, f64::max);
    let softest = plan.thickness(grid.mesh().nodes[nodal.iter().position(|c| *c >= most).unwrap()]);
    // The softest node is on the web, not on what is held, and gives as a web does.
    assert!(
        softest < 0.004 && most < 1e-5 && most > 1e-8,
        "{softest} {most}"
    );
    for (at, compliance) in held.iter().zip(&nodal) {
        assert!(*at == Held::Free || *compliance <= 0.0, "{compliance}");
    }
}

/// Sides of a floor and breadth of its rim, m; thickness of the floor.
const FLOOR: [f64; 2] = [0.1, 0.07];
const RIM: f64 = 0.008;
const WEB: f64 = 0.003;
const MIDDLE: Place = [0.05, 0.035];
const FLOOR_FINE: Fine = (0.004, 1.0);

/// A floor in a rim of this thickness on a bed.
fn rimmed(rim: f64, bed: f64) -> Plan {
    let high = FLOOR.map(|side| side + RIM);
    let mut plan = Plan::even(Shape::rect([-RIM, -RIM], high, 0.0), rim, Held::Free)
        .with(Shape::rect([0.0, 0.0], FLOOR, 0.0), WEB);
    plan.regions[0].bed = bed;
    plan
}

fn middle_and_tone(grid: &Grid, layout: Layout) -> [f64; 2] {
    let tone = first_tone(grid, layout.clone());
    [compliances(grid, layout, &[MIDDLE])[0], tone]
}

/// The floor alone.
fn alone(edge: Held) -> [f64; 2] {
    let plan = Plan::even(Shape::rect([0.0, 0.0], FLOOR, 0.0), WEB, edge);
    let grid = plan.grid(FLOOR_FINE);
    middle_and_tone(&grid, plan.layout(&grid))
}

#[test]
fn the_ends_of_how_a_floor_may_be_held_are_those_of_the_series() {
    let sheet = thinwright_plate::Sheet {
        e_mod: ALUMINIUM.e_mod,
        nu: ALUMINIUM.nu,
        rho: ALUMINIUM.rho,
        t: WEB,
    };
    let (sides, at) = ((FLOOR[0], FLOOR[1]), (MIDDLE[0], MIDDLE[1]));
    let clamped = rectangle::compliance(&sheet, sides, at).unwrap();
    let supported = rectangle::compliance_supported(&sheet, sides, at).unwrap();
    for (edge, series) in [(Held::Clamped, clamped), (Held::Supported, supported)] {
        let found = alone(edge)[0];
        assert!((found / series - 1.0).abs() < MESH, "{found} {series}");
    }
}

#[test]
fn an_elastic_rim_is_between_a_clamp_and_a_simple_support() {
    let [clamped, supported] = [Held::Clamped, Held::Supported].map(alone);
    let mut last = clamped;
    // The rim may turn but not sink: the thinner it is, the less it keeps the floor from turning with it.
    for rim in [0.016, 0.006, 0.003, 0.0015, 0.0005] {
        let plan = rimmed(rim, 0.0);
        let grid = plan.grid(FLOOR_FINE);
        let mut layout = plan.layout(&grid);
        for (held, [x, y]) in layout.held.iter_mut().zip(&grid.mesh().nodes) {
            let inside = x.min(*y).min(FLOOR[0] - x).min(FLOOR[1] - y);
            if inside < 1e-9 {
                *held = Held::Supported;
            }
        }
        let now = middle_and_tone(&grid, layout);
        assert!(now[0] > last[0] && now[0] < supported[0], "{rim}: {now:?}");
        assert!(now[1] < last[1] && now[1] > supported[1], "{rim}: {now:?}");
        last = now;
    }
    // From one end nearly to the other.
    assert!(
        (last[0] / supported[0] - 1.0).abs() < THIN_RIM,
        "{last:?} {supported:?}"
    );
}

#[test]
fn a_rim_on_a_softer_bed_holds_less() {
    let clamped = alone(Held::Clamped);
    let mut last = clamped;
    // From steel to rubber.
    for bed in [1e14, 1e12, 1e11, 1e10] {
        let plan = rimmed(0.016, bed);
        let grid = plan.grid(FLOOR_FINE);
        let now = middle_and_tone(&grid, plan.layout(&grid));
        assert!(
            now[0] > last[0] && now[1] < last[1],
            "{bed}: {now:?} {last:?}"
        );
        last = now;
    }
    assert!(last[0] > 1.1 * clamped[0], "{last:?} {clamped:?}");
}
