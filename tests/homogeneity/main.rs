//! Every kernel of the mechanics, of plates and of stability in other units: scale metre, kilogram and second by any factors, and each result must
//! scale by its declared dimension. What a typed system of units would refuse, this refuses.
#![cfg(test)]

mod chatter;
mod cut;
mod plate;
mod situation;
mod units;

use std::path::{Path, PathBuf};
use units::{Dimension, Units};

/// The crates whose public functions are kernels.
const KERNELS: [&str; 3] = ["mechanics", "plate", "chatter"];

/// A kernel's name, and its results with their dimensions when its inputs are in other units.
type Kernel = (&'static str, Vec<(f64, Dimension)>);

/// A kernel with a single result.
fn one(name: &'static str, value: f64, dimension: Dimension) -> Kernel {
    (name, vec![(value, dimension)])
}

/// Every kernel at one set of units, in the order of the modules.
fn kernels(units: &Units) -> Vec<Kernel> {
    let modules: [fn(&Units) -> Vec<Kernel>; 27] = [
        cut::kinematics,
        cut::engagement,
        cut::chip,
        cut::kienzle,
        cut::force,
        cut::power,
        cut::spindle,
        cut::tool_beam,
        situation::surface,
        situation::rubbing,
        situation::entry,
        situation::slot,
        situation::corner,
        situation::rib,
        situation::hold,
        situation::taylor,
        situation::time,
        situation::push,
        plate::discs,
        plate::rings,
        plate::beds,
        plate::rectangles,
        plate::strips,
        plate::elements,
        chatter::cuts,
        chatter::averaged,
        chatter::floquet,
    ];
    modules.iter().flat_map(|module| module(units)).collect()
}

/// The kernels whose results do not scale as declared: name, place of the result, factor found over factor declared.
fn complaints(of: impl Fn(&Units) -> Vec<Kernel>, units: &Units) -> Vec<String> {
    /// Tables are summed with powers of nine digits, maxima are searched to seven.
    const TOLERANCE: f64 = 1.0e-7;
    let mut found = Vec::new();
    for ((name, plain), (_, scaled)) in of(&Units::SI).iter().zip(of(units)) {
        for (i, ((a, dimension), (b, _))) in plain.iter().zip(scaled).enumerate() {
            let ratio = b / (a * units.factor(dimension));
            if !(a.is_finite() && *a != 0.0 && (ratio - 1.0).abs() <= TOLERANCE) {
                found.push(format!("{name} [{i}]: {a} becomes {b}, ratio {ratio}"));
            }
        }
    }
    found
}

#[test]
fn every_kernel_scales_by_its_dimension() {
    for units in Units::SOME {
        let found = complaints(kernels, &units);
        assert!(found.is_empty(), "{}", found.join("\n"));
    }
}

#[test]
fn a_wrong_formula_is_caught() {
    // Frequency from stiffness over mass, upside down; and a length that forgot to scale.
    let wrong = |units: &Units| -> Vec<Kernel> {
        let (k, m) = (units.of(5e6, units::STIFFNESS), units.of(0.1, [0, 1, 0]));
        vec![
            ("upside down", vec![((m / k).sqrt(), units::RATE)]),
            (
                "forgotten",
                vec![(units.of(0.01, units::LENGTH) + 0.001, units::LENGTH)],
            ),
            ("right", vec![((k / m).sqrt(), units::RATE)]),
        ]
    };
    assert_eq!(complaints(wrong, &Units::SOME[0]).len(), 2);
}

/// All Rust files under a folder.
fn sources(folder: &Path) -> Vec<PathBuf> {
    let mut found = Vec::new();
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            found.extend(sources(&path));
        } else if path.extension().is_some_and(|end| end == "rs") {
            found.push(path);
        }
    }
    found
}

/// Names of the public functions in a text, methods too.
fn public_functions(text: &str) -> impl Iterator<Item = &str> {
    text.lines().filter_map(|line| {
        let rest = line.trim_start().strip_prefix("pub ")?;
        let rest = rest.strip_prefix("const ").unwrap_or(rest);
        let rest = rest.strip_prefix("fn ")?;
        rest.split(|c: char| !(c.is_alphanumeric() || c == '_'))
            .next()
    })
}

/// Public functions of a crate, each behind the module that it stands in; one that two types have, twice.
fn written(name: &str) -> Vec<String> {
    let top = Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("../crates/{name}/src"));
    let mut written = Vec::new();
    for path in sources(&top) {
        let module = path.strip_prefix(&top).unwrap().with_extension("");
        let module = module.components().next().unwrap().as_os_str();
        let module = module.to_str().unwrap().to_owned();
        let text = std::fs::read_to_string(&path).unwrap();
        written.extend(public_functions(&text).map(|name| format!("{module}::{name}")));
    }
    written
}

/// What stands in the first list and not, or not as often, in the other.
fn beyond(first: &[String], other: &[String]) -> Vec<String> {
    let mut left = other.to_vec();
    let missing = first.iter().filter(|name| {
        let found = left.iter().position(|other| other == *name);
        found.map(|at| left.swap_remove(at)).is_none()
    });
    missing.cloned().collect()
}

#[test]
fn every_public_function_is_registered() {
    let written: Vec<String> = KERNELS.iter().flat_map(|name| written(name)).collect();
    let registered: Vec<String> = kernels(&Units::SI)
        .iter()
        .map(|(name, _)| *name)
        .chain(plate::PLAIN.iter().copied())
        .map(str::to_owned)
        .collect();
    let missing = beyond(&written, &registered);
    assert!(missing.is_empty(), "not registered: {missing:?}");
    let gone = beyond(&registered, &written);
    assert!(gone.is_empty(), "registered but not there: {gone:?}");
}

#[test]
fn a_function_that_is_not_registered_is_missed() {
    let registered: Vec<String> = kernels(&Units::SI)
        .iter()
        .map(|(name, _)| (*name).to_owned())
        .collect();
    for name in written("chatter") {
        let mut fewer = registered.clone();
        let at = fewer.iter().position(|other| *other == name).unwrap();
        fewer.swap_remove(at);
        assert_eq!(beyond(&written("chatter"), &fewer), [name]);
    }
}

#[test]
fn public_functions_are_found_in_a_text() {
    let text = "pub fn one(x: f64) -> f64 {\n    pub const fn two() {}\npub(crate) fn three() {}\nfn four() {}\npub struct Five;";
    assert_eq!(public_functions(text).collect::<Vec<_>>(), ["one", "two"]);
}
