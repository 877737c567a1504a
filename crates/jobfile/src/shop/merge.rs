//! Bringing in what comes from elsewhere: a file, or the store of an earlier version.

use super::content::{Kind, Own};
use super::names::free_name;
use super::thing::Thing;
use crate::store::Store;

/// What is to be kept of what came.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Merged {
    /// To be kept, each under an id that nothing has.
    pub put: Vec<Thing>,
    /// How many were there already.
    pub same: usize,
    /// Those that got another name, since theirs was taken: name before, name now.
    pub renamed: Vec<(String, String)>,
}

/// Brings in what comes: the same content once; another content under the same name beside it, renamed. `fresh` gives an
/// id that nothing has.
pub fn merge(there: &[Thing], come: Vec<Thing>, mut fresh: impl FnMut() -> String) -> Merged {
    let mut merged = Merged::default();
    let mut all: Vec<Thing> = there.to_vec();
    for thing in come {
        if all.iter().any(|t| t.content.same(&thing.content)) {
            merged.same += 1;
            continue;
        }
        let of_kind = all
            .iter()
            .filter(|t| t.content.kind() == thing.content.kind());
        let taken: Vec<String> = of_kind.map(|t| t.content.name().to_owned()).collect();
        let (before, name) = (
            thing.content.name().to_owned(),
            free_name(thing.content.name(), &taken),
        );
        let renamed = name != before;
        let id_taken = all.iter().any(|t| t.id == thing.id);
        let id = if id_taken { fresh() } else { thing.id.clone() };
        let new = thing.copied(id, renamed.then(|| name.clone()));
        if renamed {
            merged.renamed.push((before, name));
        }
        all.push(new.clone());
        merged.put.push(new);
    }
    merged
}

/// The things of the one text that earlier versions kept: the job in hand first, then the machines.
pub fn from_store(store: Store, changed: &str, mut fresh: impl FnMut() -> String) -> Vec<Thing> {
    let job = store.job.into();
    let machines = store.machines.into_iter();
    let machines = machines.filter_map(|m| Own::of(Kind::Machine, m.name, &m.answers));
    let contents = std::iter::once(job).chain(machines.map(super::content::Content::Own));
    contents
        .map(|content| Thing::new(fresh(), changed, content))
        .collect()
}
