//! The only reader of `shared/data`: materials, machines, cutters, holding, numbers and cautions.
//!
//! Every row names its sources and how it is known; every number in a file carries its unit in the name of its field.
//! Nothing here computes, and nothing outside this crate sees the files or their format.
#![warn(missing_docs)]

mod builtin;
mod catalog;
mod caution;
mod cutter;
mod cutter_material;
mod dictionary;
mod error;
mod hold;
mod literature;
mod machine;
mod material;
mod numbers;
mod range;
mod row;
#[cfg(test)]
mod tests;
mod trouble;

pub use catalog::{Catalog, DataFile};
pub use caution::{CautionRow, CautionScope};
pub use cutter::{CutterKind, CutterMaterial, CutterRow};
pub use cutter_material::CutterMaterialRow;
pub use dictionary::dictionary;
pub use error::{CatalogError, Fault};
pub use hold::{BackingRow, ClearingRow, Grip, HoldRow};
pub use literature::LiteratureEntry;
pub use machine::MachineRow;
pub use material::{ChipLoad, Iso513, MaterialRow, StockForm};
pub use numbers::{NUMBER_IDS, NumberRow, Numbers};
pub use range::{Origin, Range};
pub use trouble::TroubleRow;
