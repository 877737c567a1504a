//! Jobs drawn by lot, one for each seed: parts of our family on the machines, in the materials and with the cutters of
//! the tables. The same seed gives the same job on every machine.

mod lot;
mod part;
mod rack;
mod sheet;
mod shop;

pub use lot::Lot;
use sheet::Sheet;
use std::sync::OnceLock;
use thinwright_catalog::Catalog;
use thinwright_core::{Answers, read};

/// So often a job is drawn anew before the generator is said to be broken.
const MOST_DRAWS: u32 = 200;

/// The built-in tables, read once.
fn catalog() -> &'static Catalog {
    static CATALOG: OnceLock<Catalog> = OnceLock::new();
    CATALOG.get_or_init(Catalog::builtin)
}

/// The job of a seed, and how often it was drawn anew until its sizes agreed with each other.
///
/// # Panics
/// If no draw of many can be read, which is a fault of the generator.
pub fn drawn(seed: u64) -> (Answers, u32) {
    for redraws in 0..MOST_DRAWS {
        // Seeds that follow each other must not give rows that do.
        let mut seeds = Lot::new(seed ^ (u64::from(redraws) << 48));
        let answers = draw(&mut Lot::new(seeds.draw()));
        if read(&answers, catalog()).is_ok() {
            return (answers, redraws);
        }
    }
    panic!("seed {seed}: {MOST_DRAWS} draws and none can be read");
}

/// The job of a seed; it can be read.
pub fn random_answers(seed: u64) -> Answers {
    drawn(seed).0
}

/// So many jobs, each with its seed: those of the seeds from 0 on.
pub fn random_jobs(count: u64) -> impl Iterator<Item = (u64, Answers)> {
    (0..count).map(|seed| (seed, random_answers(seed)))
}

fn draw(lot: &mut Lot) -> Answers {
    let mut sheet = Sheet::new(lot.chance(35));
    let shop = shop::draw(lot, catalog());
    let part = part::draw(lot, &mut sheet);
    rack::draw(lot, &mut sheet, catalog(), &part, &shop);
    shop.write(lot, &mut sheet, &part);
    sheet.answers
}
