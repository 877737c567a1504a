//! Choice keys in words, and names of table rows.

use crate::Speaker;
use crate::language::tr;
use crate::methods::method_name;
use crate::orders::order_name;
use thinwright_core::field::{Field, Input, Table};
use thinwright_core::methods::MethodId;
use thinwright_core::order::OrderId;

/// The label of a key of a choice field; the key itself where it is none.
pub fn choice(field: Field, key: &str) -> &str {
    label(field, key).unwrap_or(key)
}

/// The label of a key.
pub(crate) fn label(field: Field, key: &str) -> Option<&'static str> {
    Some(tr(match (field, key) {
        (Field::Shape, "round") => "round",
        (Field::Shape, "rectangular") => "rectangular",
        (Field::SlotPattern, "none") => "no slots",
        (Field::SlotPattern, "parallel") => "parallel, in a row",
        (Field::SlotPattern, "polar") => "in groups around the middle",
        (Field::Form, "unknown") => "not known",
        (Field::Form, "rolled") => "rolled plate or bar",
        (Field::Form, "stretched") => "rolled and stretched",
        (Field::Form, "cast") => "cast plate",
        (Field::Form, "extruded") => "extruded or drawn",
        (Field::CutterKind, "end-mill") => "end mill",
        (Field::CutterKind, "drill") => "drill",
        (Field::CutterMaterial, "carbide") => "carbide",
        (Field::CutterMaterial, "hss") => "high-speed steel",
        (Field::BossBolted | Field::CutterCentre, "yes") => "yes",
        (Field::BossBolted | Field::CutterCentre, "no") => "no",
        (Field::PinBacked | Field::PinBolted, "yes") => "yes",
        (Field::PinBacked | Field::PinBolted, "no") => "no",
        (Field::PinFirst, "a") => "face A",
        (Field::PinFirst, "b") => "face B",
        (Field::PinOrder, "slots-into-stock") => return Some(order_name(OrderId::SlotsIntoStock)),
        (Field::PinOrder, "slots-before-skim") => {
            return Some(order_name(OrderId::SlotsBeforeSkim));
        }
        (Field::PinOrder, "slots-last") => return Some(order_name(OrderId::SlotsLast)),
        (Field::PinMethod, key) => {
            let method = MethodId::all().find(|m| m.key() == key)?;
            return Some(method_name(method));
        }
        _ => return None,
    }))
}

impl Speaker<'_> {
    /// The name of a table's row; its id where there is none.
    pub fn row<'a>(&'a self, table: Table, id: &'a str) -> &'a str {
        let catalog = self.catalog;
        let name = match table {
            Table::Materials => catalog.material(id).map(|r| &r.name),
            Table::Machines => catalog.machine(id).map(|r| &r.name),
            Table::Holds => catalog.hold(id).map(|r| &r.name),
            Table::Backings => catalog.backing(id).map(|r| &r.name),
            Table::Clearings => catalog.clearing(id).map(|r| &r.name),
        };
        name.map_or(id, |name| tr(name))
    }

    /// An answer's text as a person reads it: choices and rows by name, all else as typed.
    pub fn answer<'a>(&'a self, field: Field, text: &'a str) -> &'a str {
        match field.spec().input {
            Input::Choice(_) => choice(field, text),
            Input::Row(table) => self.row(table, text),
            Input::Text | Input::Quantity(_) => text,
        }
    }
}
