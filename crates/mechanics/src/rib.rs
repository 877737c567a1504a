//! Ribs and thin walls sideways: slender beams. Plates of any outline are the business of `thinwright-plate`.

/// Compliance in the middle of a strip clamped at both ends, loaded sideways: L3 / (192 E I), I = height width3 / 12.
///
/// Units: Pa, m; m/N. Valid for: slender strips. Source: gere2004, fixed-end beam.
pub fn clamped_strip_compliance(e_mod: f64, width: f64, height: f64, length: f64) -> f64 {
    length.powi(3) / (192.0 * e_mod * inertia(width, height))
}

/// Compliance of the same strip at a distance `from_end`: a3 b3 / (3 L3 E I).
///
/// Units: Pa, (width, height) m, m, m; m/N. Valid for: slender strips; stiff at and beyond the ends.
/// Source: gere2004, fixed-end beam.
pub fn clamped_strip_compliance_at(
    e_mod: f64,
    section: (f64, f64),
    length: f64,
    from_end: f64,
) -> f64 {
    let (a, b) = (from_end.max(0.0), (length - from_end).max(0.0));
    (a * b / length).powi(3) / (3.0 * e_mod * inertia(section.0, section.1))
}

/// Compliance in the middle of the rib beside a slot while it is cut, its neighbour open: bending and shear of the rib, the
/// give of its roots, and that of the place where the cutter bears.
///
/// Units: Pa; slot's length over its round ends and width m; rib's width and height m; m/N. Valid for: ribs 2 to 8 mm wide
/// between slots of 30 and 50 mm, within 1 %. Source: Timoshenko's beam between fixed ends; reach of the roots and give
/// of the place fitted to plane-stress finite elements (`shared/reference/outlines.json`, ribs).
pub fn beside_slot((e_mod, nu): (f64, f64), slot: (f64, f64), (width, height): (f64, f64)) -> f64 {
    let free = slot.0 - slot.1 + SLOT_REACH * slot.1 + RIB_REACH * width;
    let slender = free / width;
    let shape = slender.powi(3) / 16.0 + 0.6 * (1.0 + nu) * slender + LOCAL_GIVE;
    shape / (e_mod * height)
}

/// First tone of that rib sideways: (4.730 / L)2 / (2 pi) sqrt(E I / (rho A)), over its free length as in [`beside_slot`].
///
/// Units: Pa, kg/m3; slot's length over its round ends and width m; rib's width m; Hz. Valid for: slender ribs (shear lowers
/// the tone of short ones). Source: Blevins, beam clamped at both ends (blevins1979, from memory).
pub fn beside_slot_tone((e_mod, density): (f64, f64), slot: (f64, f64), width: f64) -> f64 {
    let free = slot.0 - slot.1 + SLOT_REACH * slot.1 + RIB_REACH * width;
    let bending = width / (12.0_f64.sqrt() * free * free);
    CLAMPED * CLAMPED / core::f64::consts::TAU * bending * (e_mod / density).sqrt()
}

/// First root of cos x cosh x = 1.
const CLAMPED: f64 = 4.730_040_744_862_704;

/// Compliance at the side of a slot whose neighbour is not cut yet, or far away: the give of the place, m/N.
///
/// Units: Pa, m. Valid for: slots of 30 to 50 mm, 3 mm of cutter bearing. Source: as [`beside_slot`] (2.84 and 2.95).
pub fn beside_solid(e_mod: f64, height: f64) -> f64 {
    SOLID_GIVE / (e_mod * height)
}

/// How far a rib bends beyond the straight part of its slots: in slot widths, and in rib widths.
const SLOT_REACH: f64 = 0.39;
const RIB_REACH: f64 = 0.72;
/// Give of the place where a cutter bears on a rib, and on the side of a slot in the solid, over 1 / (E height).
const LOCAL_GIVE: f64 = 0.92;
const SOLID_GIVE: f64 = 2.95;

/// Greatest bending stress in that strip under a force in its middle: F L width / (16 I), at the ends and under the force.
///
/// Units: N, m; Pa. Valid for: slender strips. Source: gere2004, fixed-end beam (moment F L / 8).
pub fn clamped_strip_stress(force: f64, width: f64, height: f64, length: f64) -> f64 {
    force * length * width / (16.0 * inertia(width, height))
}

/// Compliance at the tip of a wall per bite length: 4 h3 / (E b t3), a cantilever of breadth b.
///
/// Units: Pa, m; m/N. Valid for: breadth that bends along with the bite; the wall beside it helps, so this is soft.
/// Source: gere2004, cantilever.
pub fn wall_tip_compliance(e_mod: f64, thickness: f64, height: f64, breadth: f64) -> f64 {
    4.0 * height.powi(3) / (e_mod * breadth * thickness.powi(3))
}

/// Second moment of area of a strip bent over its width.
fn inertia(width: f64, height: f64) -> f64 {
    height * width.powi(3) / 12.0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_middle_is_softest_and_the_wall_softens_with_the_cube() {
        let (e, section, length) = (7e10, (2e-3, 4e-3), 40e-3);
        let middle = clamped_strip_compliance(e, section.0, section.1, length);
        let at = |x| clamped_strip_compliance_at(e, section, length, x);
        assert!((at(20e-3) / middle - 1.0).abs() < 1e-12);
        assert!((at(5e-3) / at(35e-3) - 1.0).abs() < 1e-9 && at(5e-3) < middle);
        assert!(at(0.0).abs() < 1e-30);
        let ratio =
            wall_tip_compliance(e, 1e-3, 8e-3, 5e-3) / wall_tip_compliance(e, 2e-3, 8e-3, 5e-3);
        assert!((ratio - 8.0).abs() < 1e-12);
    }

    #[test]
    fn compliance_is_the_second_integral_of_the_moment() {
        // Unit load in the middle of a clamped strip: moment 1/8 L - x/2 from the end; deflection by summing slopes.
        let (e, width, height, length) = (7e10, 2e-3, 4e-3, 40e-3);
        let steps = 20_000;
        let dx = 0.5 * length / f64::from(steps);
        let (mut slope, mut deflection) = (0.0, 0.0);
        for i in 0..steps {
            let x = (f64::from(i) + 0.5) * dx;
            slope += (0.125 * length - 0.5 * x) / (e * inertia(width, height)) * dx;
            deflection += slope * dx;
        }
        let closed = clamped_strip_compliance(e, width, height, length);
        assert!((deflection / closed - 1.0).abs() < 1e-3);
        assert!(slope.abs() < 1e-9);
        let stress = clamped_strip_stress(10.0, width, height, length);
        let modulus = height * width * width / 6.0;
        assert!((stress / (10.0 * length / 8.0 / modulus) - 1.0).abs() < 1e-12);
    }
}
