//! How the part is held and backed, and how chips leave.

use super::reader::Reader;
use crate::field::Field;
use crate::job::Holding;
use crate::part::Part;

/// Reads the holding; `None` after a problem.
pub(super) fn read(reader: &mut Reader, part: Option<&Part>) -> Option<Holding> {
    let catalog = reader.catalog;
    let first = reader.row(Field::HoldFirst, "screws_rim", |id| catalog.hold(id));
    let same = first
        .as_ref()
        .map_or("screws_rim".to_owned(), |h| h.id.clone());
    let second = reader.row(Field::HoldSecond, &same, |id| catalog.hold(id));
    let backing = reader.row(Field::Backing, "none", |id| catalog.backing(id));
    let chips = reader.row(Field::Chips, "air", |id| catalog.clearing(id));
    let bolted = reader.choice(Field::BossBolted, 0) == 1;
    let quantity = reader.count(Field::Quantity, (1, 1_000_000), 1);
    let none = catalog.backing("none")?.clone();
    let backing = backing?;
    let has_boss = part.is_some_and(|p| p.recesses.iter().any(|r| !r.region.holes.is_empty()));
    let mut backings = vec![none];
    if backing.id != "none" {
        backings.push(backing);
    }
    Some(Holding {
        first: first?,
        second: second?,
        backings,
        boss_bolted: bolted && has_boss,
        chips: chips?,
        quantity,
    })
}
