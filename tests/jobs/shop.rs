//! Machine, material, holding: any row of the tables, most often those that go together in a shop.

use super::Lot;
use super::part::Drawn;
use super::sheet::{Sheet, decimal};
use thinwright_catalog::{Catalog, Iso513, MachineRow, MaterialRow};
use thinwright_core::{Field, Known};

/// Where the part is cut, and from what.
pub(super) struct Shop {
    material: &'static MaterialRow,
    machine: &'static MachineRow,
    catalog: &'static Catalog,
    /// The machine has little power and speed is all it has.
    pub(super) router: bool,
}

/// Groups of materials, by how often they are drawn.
const GROUPS: &[(i64, Iso513)] = &[
    (42, Iso513::N),
    (20, Iso513::O),
    (16, Iso513::P),
    (8, Iso513::M),
    (7, Iso513::K),
    (4, Iso513::S),
    (3, Iso513::H),
];
/// Stiffness from which a machine is a mill, N/m: between the tables' routers and its mills.
const MILL: f64 = 2.0e6;

pub(super) fn draw(lot: &mut Lot, catalog: &'static Catalog) -> Shop {
    let group = lot.weighted(GROUPS);
    let of_group: Vec<&MaterialRow> = catalog
        .materials
        .iter()
        .filter(|row| row.iso513 == group)
        .collect();
    let material = *lot.of(&of_group);
    let soft = matches!(group, Iso513::N | Iso513::O);
    let router = |row: &MachineRow| row.stiffness.likely.si() < MILL;
    // What is hard to cut seldom comes to a router.
    let anywhere = soft || lot.chance(6);
    let machines: Vec<&MachineRow> = catalog
        .machines
        .iter()
        .filter(|row| anywhere || !router(row))
        .collect();
    let machine = *lot.of(&machines);
    Shop {
        material,
        machine,
        catalog,
        router: router(machine),
    }
}

impl Shop {
    /// Writes everything but the part and the rack.
    pub(super) fn write(&self, lot: &mut Lot, sheet: &mut Sheet, part: &Drawn) {
        sheet.known(Known::Estimated);
        sheet.text(Field::Material, self.material.id.as_str());
        let forms = ["unknown", "rolled", "stretched", "cast", "extruded"];
        sheet.text(Field::Form, *lot.of(&forms));
        if lot.chance(8) {
            let kc = self.material.kc1_1.likely.si() * 1.0e-6;
            sheet.text(Field::Kc, format!("{kc:.0} N/mm2"));
        }
        sheet.text(Field::Machine, self.machine.id.as_str());
        self.own_figures(lot, sheet);
        self.holding(lot, sheet, part);
    }

    /// What a person knows of the machine beyond its class.
    fn own_figures(&self, lot: &mut Lot, sheet: &mut Sheet) {
        let machine = self.machine;
        let share = |lot: &mut Lot, si: f64| si * [0.6, 0.8, 1.0, 1.25][part_of_four(lot)];
        let known = [Known::Measured, Known::DataSheet, Known::Estimated];
        if lot.chance(35) {
            sheet.known(Known::DataSheet);
            let rpm = share(lot, machine.n_max.si() * 60.0);
            sheet.text(Field::SpeedMax, format!("{rpm:.0}"));
        }
        if lot.chance(25) {
            let plate = machine.curve.iter().map(|p| p.1.si()).fold(0.0, f64::max);
            let kw = share(lot, plate * 1.0e-3);
            sheet.text(Field::Power, format!("{kw:.2} kW"));
        }
        if lot.chance(25) {
            let mm_per_min = share(lot, machine.feed_reliable.si() * 6.0e4);
            sheet.text(Field::FeedReliable, format!("{mm_per_min:.0} mm/min"));
        }
        if lot.chance(25) {
            sheet.known(*lot.of(&known));
            let n_per_um = share(lot, machine.stiffness.likely.si() * 1.0e-6);
            sheet.text(Field::Stiffness, format!("{n_per_um:.2} N/um"));
        }
        if lot.chance(15) {
            sheet.known(*lot.of(&known));
            let um = share(lot, machine.runout.likely.si() * 1.0e6);
            sheet.text(Field::Runout, format!("{um:.0} um"));
        }
        sheet.known(Known::Estimated);
    }

    fn holding(&self, lot: &mut Lot, sheet: &mut Sheet, part: &Drawn) {
        let suits = |hold: &&thinwright_catalog::HoldRow| {
            let shape = if part.round {
                hold.suits_round
            } else {
                hold.suits_rectangular
            };
            shape
                && (part.boss > 0 || !hold.needs_boss)
                && !hold.fails_on.contains(&self.material.id)
        };
        // The first hold leaves the face free where stock is faced off it.
        let stock = *lot.of(&[0, 0, 50, 50, 100]);
        let any = lot.chance(10);
        let holds: Vec<_> = self.catalog.holds.iter().collect();
        let fitting = |free: bool| -> Vec<_> {
            let all = holds.iter().copied();
            all.filter(|hold| any || suits(hold) && (!free || hold.face_free))
                .collect()
        };
        let first = *lot.of(&fitting(stock > 0));
        sheet.text(Field::HoldFirst, first.id.as_str());
        if part.two_sided {
            let second = *lot.of(&fitting(stock > 0));
            sheet.text(Field::HoldSecond, second.id.as_str());
        }
        sheet.length(Field::BlankFace, stock);
        if lot.chance(80) {
            let around = *lot.of(&[250, 500, 1000, 1500]);
            sheet.length(Field::BlankAround, around);
        }
        let backing = lot.of(&self.catalog.backings);
        if part.two_sided || lot.chance(20) {
            sheet.text(Field::Backing, backing.id.as_str());
        }
        if part.boss > 0 && lot.chance(40) {
            sheet.text(Field::BossBolted, "yes");
        }
        let clearings = &self.catalog.clearings;
        sheet.text(Field::Chips, lot.of(clearings).id.as_str());
        if lot.chance(40) {
            sheet.text(Field::Quantity, lot.from_to(1, 30).to_string());
        }
        if lot.chance(15) {
            let backlash = lot.from_to(0, 8);
            sheet.text(Field::Backlash, format!("{} mm", decimal(backlash, 2)));
        }
    }
}

fn part_of_four(lot: &mut Lot) -> usize {
    *lot.of(&[0, 1, 2, 3])
}
