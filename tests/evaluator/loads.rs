//! What a bite weighs: forces with the likely runout and with the greatest, how far the cutter gives, what it bears.

use super::bites::Bite;
use super::scene::Scene;
use thinwright_core::estimate::Unknown;
use thinwright_core::job::Cutter;
use thinwright_mechanics::force::{self, Forces, Mill};
use thinwright_mechanics::kienzle::Cutting;
use thinwright_mechanics::tool_beam::{self, Beam};

/// Loads of one bite at the likely cutting force.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Loads {
    /// With the likely runout.
    pub(crate) likely: Forces,
    /// With the greatest runout.
    pub(crate) uneven: Forces,
}

impl Loads {
    pub(crate) fn of(scene: &Scene, bite: &Bite) -> Loads {
        Loads::in_material(scene, bite, &scene.cutting())
    }

    /// The loads of a bite in a material.
    pub(crate) fn in_material(scene: &Scene, bite: &Bite, cutting: &Cutting) -> Loads {
        let runout = scene.estimate(Unknown::Runout);
        let with = |indicated: f64| {
            let cutter = scene.cutter;
            let mill = Mill {
                d: cutter.d,
                z: cutter.z,
                helix: cutter.helix,
                // Half of what the dial shows is eccentricity.
                runout: 0.5 * indicated,
                corner_radius: cutter.corner,
            };
            let bite = force::Bite {
                fz: scene.step.fz.si() * bite.share,
                immersion: bite.immersion,
                ap: bite.ap,
            };
            force::forces(&mill, cutting, &bite)
        };
        let likely = with(runout.likely);
        let uneven = if scene.cutter.z > 1 && runout.high > runout.likely {
            with(runout.high)
        } else {
            likely
        };
        Loads { likely, uneven }
    }

    /// The greater of a force's size with either runout.
    pub(crate) fn most(&self, of: impl Fn(&Forces) -> f64) -> f64 {
        of(&self.likely).max(of(&self.uneven))
    }
}

/// The cutter as a bar held in its collet: flutes thinner by their grooves, a neck where the reach goes beyond them, the
/// shank.
pub(crate) fn beam(cutter: &Cutter) -> Beam {
    let necked = cutter.shank > cutter.d && cutter.reach > cutter.flute_length;
    let neck = if necked {
        (cutter.reach.min(cutter.stick_out) - cutter.flute_length).max(0.0)
    } else {
        0.0
    };
    Beam {
        e_mod: cutter.material.e_mod.si(),
        shank_d: cutter.shank,
        flute_d_eff: cutter.d * cutter.material.effective_diameter_ratio,
        flute_length: cutter.flute_length.min(cutter.stick_out),
        stick_out: cutter.stick_out,
        neck_d: if necked { cutter.d } else { 0.0 },
        neck_length: neck,
    }
}

/// Give of the cutter's tip, m/N.
pub(crate) fn tip(scene: &Scene) -> f64 {
    tool_beam::tip_compliance(&beam(scene.cutter))
}

/// Give of cutter and machine together at a stiffness of the machine, m/N.
pub(crate) fn chain(scene: &Scene, machine: f64) -> f64 {
    tip(scene) + 1.0 / machine
}

/// Bending stress at the weakest place under a force at the middle of a bite, Pa/N.
pub(crate) fn stress(scene: &Scene, bite: &Bite) -> f64 {
    tool_beam::root_stress(&beam(scene.cutter), 1.0, 0.5 * bite.ap)
}
