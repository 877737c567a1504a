//! How the part is held and backed, and how chips leave.

use super::reader::Reader;
use crate::field::Field;
use crate::job::Holding;
use crate::part::Part;
use thinwright_catalog::BackingRow;

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
    let backing = backing?;
    let material = reader
        .answers
        .text(Field::Material.into())
        .trim()
        .to_owned();
    let has_boss = part.is_some_and(|p| p.recesses.iter().any(|r| !r.region.holes.is_empty()));
    // Who can make one backing can make every one that takes no longer: all of them are tried.
    let easier = |b: &&BackingRow| {
        b.id == backing.id || (b.setup <= backing.setup && !b.fails_on.contains(&material))
    };
    let backings = catalog.backings.iter().filter(easier).cloned().collect();
    Some(Holding {
        first: first?,
        second: second?,
        backings,
        boss_bolted: bolted && has_boss,
        chips: chips?,
        quantity,
    })
}
