//! What no limit of a strategy looks at, though the drawing, the tables or the trade say something about it.

use super::scene::Scene;
use super::{Complaints, holding, limits, loads::Loads, stops};
use thinwright_core::limits::{LimitId, Severity};
use thinwright_mechanics::kienzle::Cutting;

pub(crate) fn check(scene: &Scene, out: &mut Complaints) {
    turning(scene, out);
    wide_tables(scene, out);
    together(scene, out);
}

/// One screw in the middle does not keep the part from turning.
fn turning(scene: &Scene, out: &mut Complaints) {
    let Some(holds) = holding::turning(scene) else {
        return;
    };
    // The sideways force at the edge of what is cut.
    let arm = match (scene.slots(), scene.hollow()) {
        (true, _) => 0.0,
        (false, Some(hollow)) => 0.5 * hollow.plan.across(),
        (false, None) => 0.5 * scene.drawing.outline.across(),
    };
    let asked = stops::pulls(scene).0.sure * arm;
    if asked > holds {
        let figures = format!("{asked:.1} N m asked, {holds:.1} N m held");
        out.add(
            "beyond: turning about the one screw",
            scene.step.number,
            asked / holds,
            figures,
        );
    }
}

fn refusing() -> impl Iterator<Item = LimitId> {
    let refuses = |s: Severity| matches!(s, Severity::Stop | Severity::Quality);
    LimitId::all().filter(move |l| refuses(l.spec().severity))
}

/// What a limit surely is used by; 0 where it does not apply.
fn sure(scene: &Scene, limit: LimitId) -> f64 {
    limits::found(scene, limit).map_or(0.0, |u| u.sure)
}

/// The same step in another light: complaints of limits that break there, and did not before.
fn broken_there(scene: &Scene, there: &Scene, rule: &str, out: &mut Complaints) {
    for limit in refusing() {
        let (here, now) = (sure(scene, limit), sure(there, limit));
        if here <= 1.0 && now > 1.0 {
            let key = limit.spec().key;
            let figures = format!("{key} {here:.3}, there {now:.3}");
            out.add(format!("beyond: {rule}"), scene.step.number, now, figures);
        }
    }
}

/// Ranges of the tables of which only the likely value is used.
fn wide_tables(scene: &Scene, out: &mut Complaints) {
    let row = &scene.job.material;
    let with = |cutting: Cutting| {
        let mut there = scene.like();
        for (bite, loads) in &mut there.bites {
            *loads = Loads::in_material(scene, bite, &cutting);
        }
        there
    };
    let radial = with(Cutting {
        radial_ratio: row.radial_ratio.high,
        ..scene.cutting()
    });
    broken_there(scene, &radial, "the table's greatest radial force", out);
    for (axial_ratio, rule) in [
        (row.axial_ratio.low, "the table's least axial force"),
        (row.axial_ratio.high, "the table's greatest axial force"),
    ] {
        let axial = with(Cutting {
            axial_ratio,
            ..scene.cutting()
        });
        broken_there(scene, &axial, rule, out);
    }
    let chips = sure(scene, LimitId::ChipRoom) * row.bulk_factor.high / row.bulk_factor.likely;
    if chips > 1.0 && sure(scene, LimitId::ChipRoom) <= 1.0 {
        let figures = format!("{chips:.3}");
        out.add(
            "beyond: the table's loosest chips",
            scene.step.number,
            chips,
            figures,
        );
    }
}

/// What the cutter errs by in a slot's width, and what the rib beside it gives on top.
fn together(scene: &Scene, out: &mut Complaints) {
    let width = sure(scene, LimitId::SlotWidth);
    let sum = width + sure(scene, LimitId::RibSoftness);
    if width <= 1.0 && sum > 1.0 {
        let figures = format!("{sum:.3} with the rib's give");
        let rule = "beyond: cutter and rib together";
        out.add(rule, scene.step.number, sum, figures);
    }
}
