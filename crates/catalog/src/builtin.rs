//! The files that are built in.

use crate::catalog::DataFile;

macro_rules! files {
    ($($name:literal),* $(,)?) => {
        /// Every table of `shared/data`.
        pub(crate) const FILES: &[DataFile<'static>] = &[$(DataFile {
            name: $name,
            text: include_str!(concat!("../../../shared/data/", $name)),
        }),*];
    };
}

files![
    "materials/steel.json",
    "materials/stainless.json",
    "materials/cast-iron.json",
    "materials/non-ferrous.json",
    "materials/heat-resistant.json",
    "materials/hardened.json",
    "materials/plastics.json",
    "materials/wood.json",
    "machines.json",
    "cutter-materials.json",
    "cutters-metric.json",
    "cutters-inch.json",
    "drills.json",
    "holds.json",
    "backings.json",
    "clearings.json",
    "numbers.json",
    "cautions.json",
    "trouble.json",
];

/// The literature list.
pub(crate) const LITERATURE: &str = include_str!("../../../shared/data/literature.bib");
