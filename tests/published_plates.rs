//! Thin plates against handbooks and independent computations: `shared/reference/plates.json`.
#![cfg(test)]

mod agreement;
#[path = "published_plates/elements.rs"]
mod elements;
mod plates;

use agreement::{Answer, Row};
use core::f64::consts::PI;
use thinwright_plate::annulus::{self, Annulus, Boss, InnerEdge};
use thinwright_plate::ritz::{Edge, Panel, Ritz};
use thinwright_plate::strip::{self, Strip};
use thinwright_plate::{Sheet, disc, rectangle};

/// A sheet of rigidity 1 and mass per area 1.
fn unit_sheet(row: &Row) -> Sheet {
    let nu = row.input_or("nu", 0.3);
    Sheet {
        e_mod: 12.0 * (1.0 - nu * nu),
        nu,
        rho: 1.0,
        t: 1.0,
    }
}

fn sheet(row: &Row) -> Sheet {
    Sheet {
        e_mod: row.input("E"),
        nu: row.input("nu"),
        rho: row.input("rho"),
        t: row.input("t"),
    }
}

/// 12 (1 - nu^2): turns a factor over D into one over E t^3.
fn over_e(sheet: &Sheet) -> f64 {
    12.0 * (1.0 - sheet.nu * sheet.nu)
}

fn one(name: &'static str, value: f64) -> Option<Answer> {
    Some(vec![(name, vec![value])])
}

fn parameters(frequencies: &[f64]) -> Vec<f64> {
    frequencies.iter().map(|f| 2.0 * PI * f).collect()
}

fn disc_case(row: &Row) -> Option<Answer> {
    let unit = unit_sheet(row);
    match row.id.as_str() {
        "pubDisc-clampedUniform" => one("k", disc::uniform_compliance(&unit, 1.0).unwrap()),
        "pubDisc-SSUniform" => one("k", disc::uniform_compliance_supported(&unit, 1.0).unwrap()),
        "pubDiscFreq-1" | "pubDiscFreq-2" => {
            // (0,0) (1,0) (2,0) | (0,1) (3,0) (1,1), each pair of equal modes once.
            let mut all = parameters(&disc::frequencies(&unit, 1.0, 10).unwrap());
            all.dedup_by(|p, q| (*p - *q).abs() < 1e-9);
            let from = if row.id.ends_with('1') { 0 } else { 3 };
            Some(vec![("lambda2", all[from..from + 3].to_vec())])
        }
        id if id.starts_with("a-K-") => one(
            "w",
            row.input("F") * disc::compliance(&sheet(row), row.input("R"), row.input("r")).unwrap(),
        ),
        id if id.starts_with("aF-K-") => Some(vec![(
            "f",
            disc::frequencies(&sheet(row), row.input("R"), 6).unwrap(),
        )]),
        "aM-t5" => {
            let (sheet, radius, patch) = (sheet(row), row.input("R"), row.input("patch_radius"));
            let bending = disc::patch_compliance(&sheet, radius, patch).unwrap();
            let shear = disc::patch_shear_compliance(&sheet, radius, patch).unwrap();
            one("w", row.input("F") * (bending + shear))
        }
        _ => None,
    }
}

fn annulus_case(row: &Row) -> Option<Answer> {
    let unit = unit_sheet(row);
    let ring = |inner_edge| Annulus {
        inner: row.input("b_over_a"),
        outer: 1.0,
        inner_edge,
    };
    let lowest = |ring: &Annulus| {
        let first = |n| annulus::frequencies(&unit, ring, &Boss::default(), (n, 1)).unwrap()[0];
        Some(vec![(
            "lambda2",
            parameters(&[first(0), first(1), first(2), first(3)]),
        )])
    };
    let id = row.id.as_str();
    if id.starts_with("pubRigidBoss") {
        let inner = 1.0 / row.input("a_over_b");
        let ring = Annulus {
            inner,
            outer: 1.0,
            inner_edge: InnerEdge::RigidFloating,
        };
        return one(
            "k",
            over_e(&unit) * annulus::boss_compliance(&unit, &ring).unwrap(),
        );
    }
    if id.starts_with("pubAnnulusCFUniform") {
        return one(
            "K",
            annulus::uniform_compliance(&unit, &ring(InnerEdge::Free)).unwrap(),
        );
    }
    if id.starts_with("pubAnnulusFreqCF") {
        return lowest(&ring(InnerEdge::Free));
    }
    if id.starts_with("pubAnnulusFreqCC") {
        return lowest(&ring(InnerEdge::Clamped));
    }
    id.starts_with("b-K-").then(|| floating_boss(row))
}

fn floating_boss(row: &Row) -> Answer {
    let sheet = sheet(row);
    let ring = Annulus {
        inner: row.input("boss_r"),
        outer: row.input("R"),
        inner_edge: InnerEdge::RigidFloating,
    };
    // The reference adds the boss's mass to the plate, without the turning inertia of its height.
    let mass = Boss::cylinder(&sheet, ring.inner, row.input("boss_height_for_mass")).mass;
    let boss = Boss {
        mass,
        inertia: 0.25 * mass * ring.inner * ring.inner,
    };
    let under = |r: &f64| {
        let at_boss = *r < ring.inner;
        let compliance = if at_boss {
            annulus::boss_compliance(&sheet, &ring)
        } else {
            annulus::compliance(&sheet, &ring, *r)
        };
        row.input("F") * compliance.unwrap()
    };
    let mut all = Vec::new();
    for n in 0..4 {
        for f in annulus::frequencies(&sheet, &ring, &boss, (n, 2)).unwrap() {
            all.push(f);
            if n > 0 {
                all.push(f);
            }
        }
    }
    all.sort_by(f64::total_cmp);
    all.truncate(6);
    vec![("w", row.list("r").iter().map(under).collect()), ("f", all)]
}

fn rectangle_case(row: &Row) -> Option<Answer> {
    let unit = unit_sheet(row);
    let id = row.id.as_str();
    if id.starts_with("pubClampRectUniform") {
        return one(
            "k",
            rectangle::uniform_compliance(&unit, 1.0, row.input("b_over_a")).unwrap(),
        );
    }
    if id.starts_with("pubClampRectPoint") {
        return one(
            "k",
            rectangle::compliance_centre(&unit, 1.0, row.input("b_over_a")).unwrap(),
        );
    }
    if id.starts_with("pubSSRectUniform") {
        let w = rectangle::uniform_compliance_supported(&unit, row.input("a_over_b"), 1.0).unwrap();
        return one("k", over_e(&unit) * w);
    }
    if id.starts_with("pubSSRectPoint") {
        let a = row.input("a_over_b");
        let w = rectangle::compliance_supported(&unit, (a, 1.0), (0.5 * a, 0.5)).unwrap();
        return one("k", over_e(&unit) * w);
    }
    if id.starts_with("pubCCCC") {
        let ratio = row.input("a_over_b");
        // In terms of the side a, the longer one.
        let all = parameters(&rectangle::frequencies(&unit, ratio, 1.0, 6).unwrap());
        return Some(vec![(
            "lambda2",
            all.iter().map(|v| v * ratio * ratio).collect(),
        )]);
    }
    if id == "pubClampedSq-handbook" {
        let all = rectangle::frequencies(&sheet(row), row.input("a"), row.input("a"), 6).unwrap();
        return Some(vec![("omega", parameters(&all))]);
    }
    id.starts_with("d-K-plain").then(|| {
        let (sheet, sides) = (sheet(row), (row.input("Lx"), row.input("Ly")));
        let under = |at: &[f64]| {
            row.input("F") * rectangle::compliance(&sheet, sides, (at[0], at[1])).unwrap()
        };
        let f = rectangle::frequencies(&sheet, sides.0, sides.1, 6).unwrap();
        vec![
            ("w", row.list("points").chunks(2).map(under).collect()),
            ("f", f),
        ]
    })
}

fn panel_case(row: &Row) -> Option<Answer> {
    let unit = unit_sheet(row);
    let id = row.id.as_str();
    let free = (Edge::Free, Edge::Free);
    if id == "pubCFFFsq-free" {
        let panel = Panel {
            a: 1.0,
            b: 1.0,
            x_edges: free,
            y_edges: free,
        };
        return Some(vec![(
            "lambda2",
            Ritz::new(&unit, &panel).unwrap().parameters(5).unwrap(),
        )]);
    }
    if id.starts_with("ownCFFF") {
        let panel = Panel {
            a: row.input("a_over_b"),
            b: 1.0,
            x_edges: (Edge::Clamped, Edge::Free),
            y_edges: free,
        };
        return Some(vec![(
            "lambda2",
            Ritz::new(&unit, &panel).unwrap().parameters(4).unwrap(),
        )]);
    }
    if id == "pubStrip-1" {
        let strip = Strip {
            length: 1.0,
            width: 1.0,
        };
        let sheet = Sheet {
            e_mod: 12.0,
            nu: 0.0,
            rho: 1.0,
            t: 1.0,
        };
        let f = strip::first_frequency(&sheet, &strip).unwrap();
        return Some(vec![
            ("k", vec![strip::compliance(&sheet, &strip, 0.5).unwrap()]),
            ("lambda1", parameters(&[f])),
        ]);
    }
    id.starts_with("e-K-").then(|| {
        let (sheet, length, height) = (sheet(row), row.input("L"), row.input("H"));
        let ritz = Ritz::new(&sheet, &Panel::wall(length, height)).unwrap();
        let under =
            |share: f64| vec![row.input("F") * ritz.compliance(share * length, height).unwrap()];
        vec![
            ("w_mid", under(0.5)),
            ("w_corner", under(0.0)),
            ("w_quarter", under(0.25)),
            ("f", ritz.frequencies(&sheet, 4).unwrap()),
        ]
    })
}

#[test]
fn plates_agree_with_what_is_published() {
    agreement::run("plates.json", &[], |row| {
        disc_case(row)
            .or_else(|| annulus_case(row))
            .or_else(|| rectangle_case(row))
            .or_else(|| panel_case(row))
            .or_else(|| elements::disc_case(row))
            .or_else(|| elements::slotted_disc_case(row))
            .or_else(|| elements::floor_case(row))
            .or_else(|| elements::wall_case(row))
            .or_else(|| elements::stepped_case(row))
    });
}
