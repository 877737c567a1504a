//! How much of a search goes into webs, and how long a picture of a web takes. The same code natively and as WASM; the clock
//! is the caller's.

use crate::trial::job;
use thinwright_catalog::Catalog;
use thinwright_core::part::{Part, State};
use thinwright_core::task::Face;
use thinwright_core::{Cache, Detail, Job, Progress, Search, Sight, picture, read};
use thinwright_quantity::Length;

/// Figures of a job.
pub(crate) const FIGURES: usize = 8;
/// Runs of which the quickest counts.
const RUNS: usize = 3;

/// Of one job: webs worked out; ms until the strategy was final and until all was told, nothing known before; the same
/// when all its webs were known and nothing else; ms of a picture with its meshes, of a coarse one, of a fine one, 0 if
/// there is none.
pub(crate) fn webs(index: usize, catalog: &Catalog, now: impl Fn() -> f64) -> [f64; FIGURES] {
    let of = |index| read(&job(index).1, catalog).expect("samples can be read");
    let (this, other) = (of(index), of(usize::from(index == 0)));
    let mut least = [f64::INFINITY; FIGURES];
    for _ in 0..RUNS {
        let (all, cache, worked_out) = search(&this, Cache::default(), &now);
        // Another part: shapes and lengths are let go, webs are kept.
        let cache = Search::new(other.clone(), cache).into_cache();
        let (known, _, again) = search(&this, cache, &now);
        assert!(again < 0.5, "{again} webs were forgotten");
        let seen = match worked_out > 0.0 {
            true => pictures(&this, &now),
            false => [0.0; 3],
        };
        let figures = [
            worked_out, all[0], all[1], known[0], known[1], seen[0], seen[1], seen[2],
        ];
        for (least, figure) in least.iter_mut().zip(figures) {
            *least = least.min(figure);
        }
    }
    least
}

/// Searches to the end: ms until the strategy was final and until all was told, what is known then, and webs worked out.
fn search(job: &Job, cache: Cache, now: &impl Fn() -> f64) -> ([f64; 2], Cache, f64) {
    let from = now();
    let mut search = Search::new(job.clone(), cache);
    search.decide();
    let checked = now() - from;
    while !matches!(search.advance(u64::MAX), Progress::Done(_)) {}
    let done = now() - from;
    #[allow(clippy::cast_precision_loss, reason = "a small count")]
    let webs = search.effort().webs as f64;
    ([checked, done], search.into_cache(), webs)
}

/// Pictures of the finished part: the first with all that is made once for a plan, a coarse and a fine one after it.
fn pictures(job: &Job, now: &impl Fn() -> f64) -> [f64; 3] {
    let mills = job.rack.iter().filter(|c| !c.drill).map(|c| 0.5 * c.d);
    let mut sight = Sight {
        state: finished(&job.part),
        up: job.part.recesses.last().map_or(Face::A, |r| r.face),
        second: true,
        bolted: false,
        backing: 0,
        patch: Length::m(mills.fold(0.01, f64::min)),
        detail: Detail::Coarse,
    };
    let mut cache = Cache::default();
    [Detail::Coarse, Detail::Coarse, Detail::Fine].map(|detail| {
        sight.detail = detail;
        let from = now();
        let seen = picture(job, &sight, &mut cache);
        seen.map_or(0.0, |_| now() - from)
    })
}

/// The part with everything cut but its outline.
fn finished(part: &Part) -> State {
    let (low, high) = (part.face_height(Face::B), part.face_height(Face::A));
    let cut = |recessed, face| match recessed {
        true => part.floor(face),
        false => part.face_height(face),
    };
    let stock = part.cells.iter().map(|cell| match cell.slot || cell.bore {
        true => (low, low),
        false if cell.outline => (cut(cell.recess.1, Face::B), cut(cell.recess.0, Face::A)),
        false => (low, high),
    });
    State {
        stock: stock.collect(),
    }
}
