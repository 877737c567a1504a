//! What no limit of a strategy looks at, though the drawing, the tables or the trade say something about it.

use super::bites::{self, Place};
use super::scene::Scene;
use super::{Complaints, holding, limits, loads::Loads, quality, stops};
use thinwright_core::limits::{LimitId, Severity};
use thinwright_core::methods::MethodId;
use thinwright_mechanics::kienzle::Cutting;

pub(crate) fn check(scene: &Scene, out: &mut Complaints) {
    area(scene, out);
    turning(scene, out);
    untold(scene, out);
    wide_tables(scene, out);
    margins(scene, out);
    both_sides(scene, out);
}

/// A hold that sticks holds only where the part lies on.
fn area(scene: &Scene, out: &mut Complaints) {
    let (peak, lift) = stops::pulls(scene);
    let holds = |whole: bool| holding::capacity(scene, lift.sure, whole);
    let (here, whole) = (peak.sure / holds(false), peak.sure / holds(true));
    if holding::sticks(scene) && here > 1.0 && whole <= 1.0 {
        let figures = format!("{whole:.3} on the whole outline, {here:.3} on what lies on");
        let rule = "beyond: grip where only rim and boss lie on";
        out.add(rule, scene.step.number, here, figures);
    }
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

/// Bites that the step does not tell of.
fn untold(scene: &Scene, out: &mut Complaints) {
    for bite in bites::untold(scene) {
        let mut there = scene.like();
        there.bites.push((bite, Loads::of(scene, &bite)));
        let rule = match bite.place {
            Place::Opening => "the opening at the typed feed",
            _ => "sharp turns of the inner passes",
        };
        broken_there(scene, &there, rule, out);
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

/// Margins that the table of numbers states and no limit takes.
fn margins(scene: &Scene, out: &mut Complaints) {
    let numbers = &scene.job.numbers;
    let number = scene.step.number;
    let told = |limit: LimitId| {
        let finding = scene.step.findings.iter().find(|f| f.limit == limit);
        finding.map_or(0.0, |f| f.utilisation())
    };
    let thrust = told(LimitId::AxisThrust) * numbers.thrust_safety;
    if thrust > 1.0 {
        let figures = format!("{thrust:.3} with {}", numbers.thrust_safety);
        out.add(
            "beyond: the thrust that a table keeps back",
            number,
            thrust,
            figures,
        );
    }
    let power = told(LimitId::SpindlePower) / numbers.power_reserve;
    if power > 1.0 {
        let figures = format!("{power:.3} with {}", numbers.power_reserve);
        out.add(
            "beyond: the power that a table keeps back",
            number,
            power,
            figures,
        );
    }
}

/// A slot has two sides: both may be off, and the rib beside it gives on top.
fn both_sides(scene: &Scene, out: &mut Complaints) {
    let number = scene.step.number;
    let width = sure(scene, LimitId::SlotWidth);
    let sided = matches!(scene.step.method, MethodId::SidePasses | MethodId::Peeling);
    if sided && width <= 1.0 && 2.0 * width > 1.0 {
        let figures = format!("{:.3} if each side is off as far", 2.0 * width);
        out.add("beyond: both sides of a slot", number, 2.0 * width, figures);
    }
    let sum = width + quality::found(scene, LimitId::RibSoftness).map_or(0.0, |u| u.sure);
    if width <= 1.0 && sum > 1.0 {
        let figures = format!("{sum:.3} with the rib's give");
        out.add("beyond: cutter and rib together", number, sum, figures);
    }
}
