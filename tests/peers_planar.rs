//! Planar geometry against the values of a general-purpose geometry library, in `shared/reference/planar.json`.

use serde_json::Value;
use thinwright_core::plan::{Area, Contour, Point, distance};

/// Chord error of the areas under test [mm].
const CHORD_MM: f64 = 0.002;

fn contour(step: &Value) -> Contour {
    let mm: Vec<f64> = step["mm"]
        .as_array()
        .expect("mm")
        .iter()
        .filter_map(Value::as_f64)
        .collect();
    let at = Point::new(mm[0], mm[1]);
    match step["shape"].as_str() {
        Some("circle") => Contour::circle(at, mm[2]),
        Some("slot") => Contour::slot(at, mm[2], mm[3], mm[4]),
        Some("rectangle") => {
            Contour::rectangle(Point::new(0.0, 0.0), mm[2], mm[3], 0.0).transform(mm[4], at)
        }
        Some("polygon") => Contour::polygon(
            &mm.chunks(2)
                .map(|p| Point::new(p[0], p[1]))
                .collect::<Vec<_>>(),
        ),
        other => panic!("no such shape: {other:?}"),
    }
}

fn area(steps: &Value) -> Area {
    steps
        .as_array()
        .expect("steps")
        .iter()
        .fold(Area::empty(), |area, step| {
            let next = Area::from_contour(&contour(step), CHORD_MM);
            match step["do"].as_str() {
                Some("union") => area.union(&next),
                Some("subtract") => area.subtract(&next),
                Some("intersect") => area.intersect(&next),
                other => panic!("no such step: {other:?}"),
            }
        })
}

/// Source: the library and its version stand in each case.
#[test]
fn areas_lengths_and_distances_agree() {
    let cases: Vec<Value> =
        serde_json::from_str(include_str!("../shared/reference/planar.json")).expect("JSON");
    let (mut compared, mut worst, mut wrong) = (0, (0.0, String::new()), Vec::new());
    for case in &cases {
        let inputs = &case["inputs"];
        let moved = area(&inputs["steps"]).offset(inputs["offset_mm"].as_f64().expect("offset"));
        for (name, expected) in case["expected"].as_object().expect("expected") {
            let value = match name.as_str() {
                "area" => moved.area_mm2(),
                "perimeter" => moved.perimeter_mm(),
                "loops" => f64::from(u32::try_from(moved.loop_count()).expect("few")),
                "distance" => distance(&area(&inputs["steps"]), &area(&inputs["other"])),
                other => panic!("no such value: {other}"),
            };
            let expected = expected["value"].as_f64().expect("value");
            let error = (value / expected - 1.0).abs();
            let at = format!("{} {name}: {value} for {expected}", case["id"]);
            if error > case["tolerance_rel"].as_f64().expect("tolerance") {
                wrong.push(at.clone());
            }
            if error > worst.0 {
                worst = (error, at);
            }
            compared += 1;
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
    assert!(compared >= 50, "{compared} compared, worst {worst:?}");
    #[allow(
        clippy::print_stdout,
        reason = "shown on request: cargo test -- --nocapture"
    )]
    {
        println!(
            "{compared} values compared, worst {:.1e} at {}",
            worst.0, worst.1
        );
    }
}
