//! What a web is asked: its softest place, how far that gives, how it is strained there, its first tone.

use super::super::scene::Scene;
use super::super::stock::{self, Column, HAIR, Kind, side};
use super::plan::{self, Place, Plan};
use core::f64::consts::PI;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Mutex;
use thinwright_core::task::Face;
use thinwright_plate::fem::{Held, Layout, Plate, Stuff, Theory};

/// Shapes among which the first tone is sought.
const SHAPES: usize = 4;
/// Places whose node alone gives less than this share of the softest are passed over.
const TRIED: f64 = 0.85;
/// Least width behind a front that is looked at, as a share of the widest way: about an element.
const BAND: f64 = 0.06;
/// Places of a patch at which moments are taken: along each side of the square around it.
const ALONG: u32 = 9;

/// What a web answers.
#[derive(Clone, Copy, Debug)]
pub(super) struct Asked {
    /// Mean give of a patch as wide as the thinnest mill at the softest place of the floor, m/N; behind a front as far from
    /// it as that mill is wide, and as far as the cutter at hand is.
    pub(super) give: (f64, f64),
    /// First tone, Hz; none where it was not asked.
    pub(super) tone: f64,
    /// Bending stress under a patch as wide as the cutter at hand there, Pa/N: its mean, and in the middle.
    pub(super) stress: (f64, f64),
}

/// Heights of the stock and what they rest on.
#[derive(Clone, Debug)]
pub(super) struct State {
    columns: Vec<Column>,
    face: Face,
    squeezes: bool,
    bolted: bool,
    seat: f64,
    bed: f64,
    /// Behind a front: stock ahead of it, its way from the wall as a share of the widest.
    ahead: Option<(Vec<Column>, f64)>,
}

impl State {
    pub(super) fn of(scene: &Scene, columns: &[Column]) -> State {
        State {
            columns: columns.to_vec(),
            face: scene.stand.face,
            squeezes: scene.hold.squeezes,
            bolted: scene.stand.setup.boss_bolted,
            seat: scene.hold.seat,
            bed: 0.0,
            ahead: None,
        }
    }

    /// The same on a backing.
    pub(super) fn on(&self, bed: f64) -> State {
        State {
            bed,
            ..self.clone()
        }
    }

    /// The same with stock as it was before where the front has not come yet.
    pub(super) fn behind(&self, before: &[Column], share: f64) -> State {
        State {
            ahead: Some((before.to_vec(), share)),
            ..self.clone()
        }
    }

    /// The column of a place.
    fn column<'a>(&self, place: &Place, columns: &'a [Column]) -> Option<&'a Column> {
        let find = |kind: &Kind| columns.iter().find(|c| c.kind == *kind);
        // A mixture that the part does not have lies between two moved steps.
        let column = find(&place.kind).or_else(|| find(&place.drawn));
        column.filter(|c| c.solid())
    }

    /// The height at which a column looks at the spindle, upwards.
    fn surface(&self, column: &Column) -> f64 {
        match self.face {
            Face::A => column.top,
            Face::B => -column.bottom,
        }
    }

    /// What lies under a place, N/m3.
    fn rest(&self, place: &Place) -> f64 {
        let Some(column) = self.column(place, &self.columns) else {
            return 0.0;
        };
        let (bottom, top) = stock::extent(&self.columns);
        let (lifted, below) = match self.face {
            Face::A => (column.bottom - bottom, 1),
            Face::B => (top - column.top, 0),
        };
        let hollow = place.kind.hollow;
        if lifted < HAIR {
            let hangs = self.squeezes && (hollow[0] || hollow[1]);
            let loose = place.boss && !self.bolted;
            if hangs || loose { 0.0 } else { self.seat }
        } else if hollow[below] && !place.kind.slit {
            self.bed
        } else {
            0.0
        }
    }

    fn layout(&self, plan: &Plan) -> Layout {
        Layout {
            thickness: self.thickness(plan, |p| p.kind),
            // What the web rests on does not change with the front.
            bed: plan.of.iter().map(|place| self.rest(place)).collect(),
            held: vec![Held::Free; plan.grid.mesh().nodes.len()],
        }
    }

    /// Thickness of each triangle, m, with the steps where they are moved to, or where they are drawn.
    fn thickness(&self, plan: &Plan, kind: impl Fn(&Place) -> Kind) -> Vec<f64> {
        let front = self.front(plan);
        let of = |place: &Place| {
            let columns = match (&self.ahead, front) {
                (Some((before, _)), Some(front)) if place.depth[side(self.face)] < front => before,
                _ => &self.columns,
            };
            let at = Place {
                kind: kind(place),
                ..*place
            };
            self.column(&at, columns).map_or(0.0, Column::height)
        };
        plan.of.iter().map(of).collect()
    }

    /// For each triangle whether the cutter stands on it: on the floor, not on what lies deeper, and behind a front no
    /// further than it is wide.
    fn floor(&self, plan: &Plan, wide: f64) -> Vec<bool> {
        let face = side(self.face);
        let hollow = self
            .columns
            .iter()
            .filter(|c| c.kind.hollow[face] && c.solid());
        let highest = hollow
            .map(|c| self.surface(c))
            .fold(f64::NEG_INFINITY, f64::max);
        let front = self.front(plan);
        let widest = plan.of.iter().map(|p| p.depth[face]).fold(0.0, f64::max);
        let band = wide.max(BAND * widest);
        let on = |place: &Place| {
            let depth = place.depth[face];
            let column = self.column(place, &self.columns);
            let high = column.is_some_and(|c| highest - self.surface(c) < HAIR);
            high && depth >= 0.0 && front.is_none_or(|f| depth >= f && depth <= f + band)
        };
        plan.of.iter().map(on).collect()
    }

    /// How far from the wall the front stands, m.
    fn front(&self, plan: &Plan) -> Option<f64> {
        let depths = plan.of.iter().map(|p| p.depth[side(self.face)]);
        let (_, share) = self.ahead.as_ref()?;
        Some(share * depths.fold(0.0, f64::max))
    }
}

static KNOWN: Mutex<BTreeMap<String, Option<Asked>>> = Mutex::new(BTreeMap::new());

/// The web of a scene in a state.
pub(super) fn asked(scene: &Scene, state: &State) -> Option<Asked> {
    let material = &scene.job.material;
    let stuff = Stuff {
        e_mod: material.e_mod.si(),
        nu: material.nu,
        rho: material.density.si(),
    };
    let mills = scene.job.rack.iter().filter(|c| !c.drill).map(|c| c.d);
    let thinnest = 0.5 * mills.fold(f64::INFINITY, f64::min);
    let own = 0.5 * scene.cutter.d;
    let plan = plan::key(scene.drawing);
    let key = format!("{plan} {state:?} {stuff:?} {thinnest} {own}");
    if let Some(known) = KNOWN.lock().ok()?.get(&key) {
        return *known;
    }
    let found = plan::plan(scene.drawing).and_then(|p| ask(&p, state, &stuff, (thinnest, own)));
    KNOWN.lock().ok()?.insert(key, found);
    found
}

fn ask(plan: &Plan, state: &State, stuff: &Stuff, radii: (f64, f64)) -> Option<Asked> {
    let layout = state.layout(plan);
    let mut plate = Plate::new(&plan.grid, stuff, layout, Theory::ShearFlexible).ok()?;
    let (at, most) = softest(&mut plate, plan, &state.floor(plan, 2.0 * radii.1), radii.0)?;
    let least = match state.ahead {
        Some(_) => softest(&mut plate, plan, &state.floor(plan, 2.0 * radii.0), radii.0)?.1,
        None => most,
    };
    let hangs = state.bed <= 0.0 && state.ahead.is_none();
    let stress = stress(&plate, plan, (at, radii.1))?;
    // The boss weighs what is drawn, wherever its foot is put for stiffness.
    let drawn = state.thickness(plan, |p| p.drawn);
    let tone = hangs.then(|| plate.weighed(&drawn).tones::<SHAPES>(1));
    let tone = tone.and_then(|tones| tones.first().map(|t| t.frequency));
    Some(Asked {
        give: (least, most),
        tone: tone.unwrap_or(0.0),
        stress,
    })
}

/// The softest node of these triangles under the thinnest mill.
fn softest(plate: &mut Plate, plan: &Plan, on: &[bool], thinnest: f64) -> Option<([f64; 2], f64)> {
    let mesh = plan.grid.mesh();
    let nodal = plate.nodal_compliance();
    let mut floor = vec![false; mesh.nodes.len()];
    for (nodes, _) in mesh.triangles.iter().zip(on).filter(|(_, on)| **on) {
        nodes.iter().for_each(|n| floor[*n as usize] = true);
    }
    let on = |n: &usize| floor[*n];
    let most = (0..nodal.len())
        .filter(on)
        .fold(0.0, |most: f64, n| most.max(nodal[n]));
    let mut best: Option<([f64; 2], f64)> = None;
    for node in (0..nodal.len()).filter(on) {
        if nodal[node] < TRIED * most {
            continue;
        }
        let at = mesh.nodes[node];
        let Some(patch) = plate.patch(at, thinnest) else {
            continue;
        };
        let give = plate.compliance(&patch);
        if best.is_none_or(|b| give > b.1) {
            best = Some((at, give));
        }
    }
    best
}

/// The greater main stress of the mean moments under a patch, and that in its middle, Pa/N.
///
/// Moments are even over a triangle. Where triangles are wider than the patch, moments grow towards it as in any plate, by
/// (1 + nu) / 4 pi times the logarithm of the ratio of radii; in the middle of an even load they are (1 + nu) / 16 pi above
/// their mean (timoshenko1959, art. 16).
fn stress(plate: &Plate, plan: &Plan, (at, radius): ([f64; 2], f64)) -> Option<(f64, f64)> {
    let unknowns = plate.deflection(&plate.patch(at, radius)?);
    let (mut sum, mut bending, mut count) = ([0.0; 3], 0.0, 0.0);
    let mut under = BTreeSet::new();
    let step = 2.0 * radius / f64::from(ALONG);
    for i in 0..ALONG {
        for k in 0..ALONG {
            let by = [i, k].map(|j| (f64::from(j) + 0.5) * step - radius);
            let found = plan.grid.locate([at[0] + by[0], at[1] + by[1]]);
            let Some((triangle, _)) =
                found.filter(|_| by[0] * by[0] + by[1] * by[1] < radius * radius)
            else {
                continue;
            };
            let t = plate.layout().thickness[triangle];
            if t <= 0.0 {
                continue;
            }
            under.insert(triangle);
            for (sum, m) in sum.iter_mut().zip(plate.moment(&unknowns, triangle)) {
                *sum += 6.0 * m / (t * t);
            }
            bending += 6.0 / (t * t);
            count += 1.0;
        }
    }
    let bears = count * step * step;
    let wide: f64 = under.iter().map(|t| plan.grid.area(*t)).sum();
    let [x, y, xy] = sum.map(|s| s / count);
    let mean = 0.5 * (x + y).abs() + libm::hypot(0.5 * (x - y), xy);
    let nu = (1.0 + plate.nu()) * bending / count;
    let grown = mean + nu / (8.0 * PI) * libm::log(wide / bears).max(0.0);
    Some((grown, grown + nu / (16.0 * PI)))
}
