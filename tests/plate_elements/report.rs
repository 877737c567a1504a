//! What is kept of the comparison: a text, its data, and two drawings in `shared/reference`.

use crate::chart::{Line, chart};
use crate::problem::{Curve, OnMesh, Problem, Result};
use std::fmt::Write;
use std::path::Path;

/// Set to write what is kept instead of comparing with it.
const UPDATE: &str = "UPDATE_CONVERGENCE";
/// Error of the rib at which the elements are compared, and a closer one.
const AT: [f64; 2] = [0.03, 0.015];
const HEADER: &str = "# How the plate element converges, and why it was chosen

Written by `tests/plate_elements.rs`, never by hand: `UPDATE_CONVERGENCE=1 cargo test -p workspace-tests --test plate_elements`.
Data: `convergence.json`. Errors are relative to the limit of the three-node element, extrapolated from two meshes that are
finer than any shown; on problem (c) the limits are within 1 % of those of an independent program, on the disc of the closed form.

Two shear-flexible triangles on the same meshes of the project's own mesher: that of the crate (three nodes, nine unknowns, discrete
shear on its sides) and a plain quadratic one (six nodes, eighteen unknowns, integrated in full). Work is multiplications of factoring
in an envelope, ordered the same way for both; it stands for time without a clock. The time itself, beside the programs of
`tests/peers`, is measured by `cargo xtask bench`.

Meshes are named by their greatest edge and the elements across a rib. Round lines are chords in both, which makes a coarse boss
small and its neighbourhood soft: errors of the boss that have the other sign come from there.
";

/// Where a curve reaches an error for the last time: unknowns and work, between meshes on logarithmic scales.
#[allow(clippy::cast_precision_loss, reason = "counts")]
pub(crate) fn reaches(curve: &Curve, value: usize, error: f64) -> Option<(f64, f64)> {
    let of = |mesh: &OnMesh| mesh.errors[value].abs();
    let pairs = curve.meshes.windows(2);
    let pair = pairs
        .rev()
        .find(|pair| of(&pair[0]) > error && of(&pair[1]) <= error)?;
    let share = libm::log(of(&pair[0]) / error) / libm::log(of(&pair[0]) / of(&pair[1]));
    let between = |a: f64, b: f64| a * libm::pow(b / a, share);
    let unknowns = between(pair[0].unknowns as f64, pair[1].unknowns as f64);
    Some((unknowns, between(pair[0].work, pair[1].work)))
}

fn percent(share: f64) -> String {
    format!("{:+.1}", 100.0 * share)
}

fn mesh_name(mesh: (f64, f64)) -> String {
    format!("{} mm, {}", 1e3 * mesh.0, mesh.1)
}

fn all_percent(shares: &[f64]) -> String {
    let shown: Vec<String> = shares.iter().map(|s| percent(*s)).collect();
    shown.join(" | ")
}

/// Both elements at the same error of the rib.
fn summary(all: &[(Problem, Result)]) -> String {
    let mut text = String::from(
        "\n## At the same error\n\nUnknowns and multiplications at which the error of the rib (on the disc: of the middle) falls to 3 % and to 1.5 %.\n\n\
         | problem | error | unknowns, three nodes | unknowns, six | work, three | work, six |\n|---|---|---|---|---|---|\n",
    );
    for (problem, result) in all {
        for error in AT {
            let [three, six] = [&result.linear, &result.quadratic].map(|curve| {
                reaches(curve, problem.rib, error).map_or(
                    ["not on these meshes".to_owned(), "-".to_owned()],
                    |(u, w)| [format!("{u:.0}"), format!("{w:.1e}")],
                )
            });
            writeln!(
                text,
                "| {} | {} % | {} | {} | {} | {} |",
                problem.title,
                100.0 * error,
                three[0],
                six[0],
                three[1],
                six[1]
            )
            .unwrap();
        }
    }
    text + "
The element of the crate was chosen for what the page asks: a few per cent on ribs at once. On parts with slots it reaches 3 % with
seven tenths of the unknowns and half of the work, and it can go further down: on the coarsest mesh that has the outline at all it
has a quarter of the unknowns and a twentieth of the work. It does not win everywhere: a single rib by itself takes the
quadratic element fewer unknowns; at 1.5 % the two are about even on parts with slots, and closer than that the quadratic one is
ahead, as its error falls faster.

What two meshes tell of the error is right within a tenth of it on ribs from two elements across on. Between one and two
elements across it tells half of it: ribs remain 3 to 4 % too stiff then.
"
}

fn curves(problem: &Problem, result: &Result) -> String {
    let names = problem.values.join(" | ");
    let rule = "---|".repeat(problem.values.len());
    let mut text = format!(
        "\n## {}\n\nErrors in per cent, negative: too stiff, or a tone too low.\n\n| nodes of an element | mesh | unknowns | work | {names} |\n|---|---|---|---|{rule}\n",
        problem.title
    );
    for (element, curve) in [(3, &result.linear), (6, &result.quadratic)] {
        for mesh in &curve.meshes {
            writeln!(
                text,
                "| {element} | {} | {} | {:.1e} | {} |",
                mesh_name(mesh.fine),
                mesh.unknowns,
                mesh.work,
                all_percent(&mesh.errors)
            )
            .unwrap();
        }
    }
    writeln!(
        text,
        "\nWhat has to be added to the coarser of two meshes, and what both tell of it (the error falling with one over the number of nodes):\n\n\
         | coarse | fine | | {names} |\n|---|---|---|{rule}"
    )
    .unwrap();
    for e in &result.estimates {
        let (from, to) = (mesh_name(e.from), mesh_name(e.to));
        writeln!(text, "| {from} | {to} | is | {} |", all_percent(&e.truth)).unwrap();
        writeln!(text, "| | | told | {} |", all_percent(&e.estimate)).unwrap();
    }
    text
}

fn quoted(shares: &[f64]) -> String {
    let shown: Vec<String> = shares.iter().map(|s| format!("{s:.4}")).collect();
    format!("[{}]", shown.join(", "))
}

/// The same as data: shares, m, and counts.
fn data(all: &[(Problem, Result)]) -> String {
    let mut blocks = Vec::new();
    for (problem, result) in all {
        let names: Vec<String> = problem.values.iter().map(|v| format!("\"{v}\"")).collect();
        for (element, curve) in [(3, &result.linear), (6, &result.quadratic)] {
            let meshes: Vec<String> = curve
                .meshes
                .iter()
                .map(|m| {
                    format!(
                        "    {{\"most_m\": {}, \"across\": {}, \"nodes\": {}, \"unknowns\": {}, \"multiplications\": {:.3e}, \"errors\": {}}}",
                        m.fine.0, m.fine.1, m.nodes, m.unknowns, m.work, quoted(&m.errors)
                    )
                })
                .collect();
            blocks.push(format!(
                "  {{\"problem\": \"{}\", \"nodes_of_an_element\": {element}, \"values\": [{}], \"meshes\": [\n{}\n  ]}}",
                problem.name,
                names.join(", "),
                meshes.join(",\n")
            ));
        }
    }
    format!("[\n{}\n]\n", blocks.join(",\n"))
}

#[allow(clippy::cast_precision_loss, reason = "a count of unknowns")]
fn drawing(problem: &Problem, result: &Result) -> String {
    let points = |curve: &Curve, value: usize| -> Vec<(f64, f64)> {
        let of = |m: &OnMesh| (m.unknowns as f64, m.errors[value].abs());
        curve.meshes.iter().map(of).collect()
    };
    let mut lines: Vec<Line> = problem
        .drawn
        .iter()
        .map(|&value| Line {
            name: problem.values[value].to_owned(),
            dashed: false,
            points: points(&result.linear, value),
        })
        .collect();
    lines.push(Line {
        name: "rib, six-node element".to_owned(),
        dashed: true,
        points: points(&result.quadratic, problem.rib),
    });
    chart(&format!("Error of {}", problem.title), &lines)
}

/// Writes what is kept, or complains of what differs.
pub(crate) fn keep(all: &[(Problem, Result)]) {
    let mut text = HEADER.to_owned() + &summary(all);
    for (problem, result) in all {
        text += &curves(problem, result);
        if !problem.drawn.is_empty() {
            writeln!(
                text,
                "\n![{}](convergence-{}.svg)",
                problem.title, problem.name
            )
            .unwrap();
        }
    }
    let mut files = vec![
        ("CONVERGENCE.md".to_owned(), text),
        ("convergence.json".to_owned(), data(all)),
    ];
    for (problem, result) in all.iter().filter(|(problem, _)| !problem.drawn.is_empty()) {
        files.push((
            format!("convergence-{}.svg", problem.name),
            drawing(problem, result),
        ));
    }
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../shared/reference");
    for (name, text) in files {
        let path = folder.join(&name);
        if std::env::var_os(UPDATE).is_some() {
            std::fs::write(path, text).unwrap();
        } else {
            let kept = std::fs::read_to_string(path).unwrap_or_default();
            assert!(
                kept == text,
                "shared/reference/{name} tells something else: write it anew with {UPDATE}=1"
            );
        }
    }
}
