//! What a sheet says beside what stands there now.

use crate::strategy::said;
use crate::text::links as text;
use crate::units::restate;
use std::collections::BTreeSet;
use thinwright_catalog::Catalog;
use thinwright_core::{Answers, FieldId};
use thinwright_jobfile::shop::{Content, Kind, Shop, Thing};
use thinwright_jobfile::{JobFile, LinkedJob, digest};
use thinwright_words::{Speaker, known};

/// An answer that differs: its place, what the sheet says, what stands there now.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Row {
    pub(crate) place: String,
    pub(crate) sheet: String,
    pub(crate) now: String,
}

/// What a job that came by link is to those that there are.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Meeting {
    /// The same answers as one that there is.
    Same(Which),
    /// Other answers than one of the same name.
    Changed(Which),
    /// Another job.
    Other,
}

/// A job that there is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Which {
    /// The one in hand.
    InHand,
    /// One of the shop, by its id.
    Kept(String),
}

/// How a job that came by link meets the one in hand and those of the shop: the same answers before the same name, what
/// is in hand before what is kept.
pub(crate) fn meet(linked: &LinkedJob, present: &JobFile, shop: &Shop) -> Meeting {
    let (name, stamp) = (linked.file().name().to_owned(), linked.digest());
    let same = |job: &JobFile| digest(&job.answers) == stamp;
    let named = |job: &JobFile| !name.is_empty() && name == job.name();
    let kept = |fits: &dyn Fn(&JobFile) -> bool| {
        let thing = shop.of(Kind::Job).find(|t| job(t).is_some_and(fits))?;
        Some(Which::Kept(thing.id.clone()))
    };
    if same(present) {
        Meeting::Same(Which::InHand)
    } else if let Some(which) = kept(&|job| same(job) && named(job)) {
        Meeting::Same(which)
    } else if named(present) {
        Meeting::Changed(Which::InHand)
    } else {
        kept(&named).map_or(Meeting::Other, Meeting::Changed)
    }
}

/// The job of a thing of the shop.
pub(crate) fn job(thing: &Thing) -> Option<&JobFile> {
    match &thing.content {
        Content::Job(job) => Some(job),
        Content::Own(_) => None,
    }
}

/// What differs, in the order of the questionnaire; only what means something else, however it is written.
pub(crate) fn rows(catalog: &Catalog, sheet: &Answers, now: &Answers) -> Vec<Row> {
    let sheet = restate(sheet, now.units);
    let (before, after) = (
        Speaker::new(now.units, catalog, &sheet),
        Speaker::new(now.units, catalog, now),
    );
    let places = sheet.iter().chain(now.iter()).map(|(id, _)| *id);
    let places: BTreeSet<FieldId> = places.collect();
    let row = |id: FieldId| {
        let (mut old, mut new) = (said(&before, id), said(&after, id));
        let how = (sheet.known(id), now.known(id));
        if id.field.spec().known_matters && how.0 != how.1 {
            old = text::value_known(&old, known(how.0));
            new = text::value_known(&new, known(how.1));
        }
        (old != new).then(|| Row {
            place: after.place(id),
            sheet: old,
            now: new,
        })
    };
    places.into_iter().filter_map(row).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use thinwright_core::{Field, Known};
    use thinwright_jobfile::samples;
    use thinwright_quantity::UnitSystem;

    #[test]
    fn only_what_means_something_else_is_told() {
        let catalog = Catalog::builtin();
        let sheet = samples()[0].job().answers;
        assert_eq!(
            rows(&catalog, &sheet, &restate(&sheet, UnitSystem::Inch)),
            []
        );
        let mut now = sheet.clone();
        now.set_text(Field::Web, "4.0");
        assert_eq!(rows(&catalog, &sheet, &now), []);
        now.set_text(Field::Web, "5");
        now.set(
            Field::Stiffness,
            now.text(Field::Stiffness.into()).to_owned(),
            Known::Measured,
        );
        now.set_text(FieldId::in_row(Field::CutterStickOut, 1), "");
        let told = rows(&catalog, &sheet, &now);
        assert_eq!(told.len(), 3, "{told:?}");
        assert_eq!(
            (told[0].sheet.as_str(), told[0].now.as_str()),
            ("4\u{A0}mm", "5\u{A0}mm")
        );
        assert!(told[1].now.ends_with("measured"), "{told:?}");
        assert!(told[2].place.starts_with("Cutter 2"), "{told:?}");
    }

    #[test]
    fn a_link_meets_the_job_in_hand_and_those_of_the_shop() {
        let present = samples()[0].job();
        let mut shop = Shop::default();
        let mut linked = LinkedJob::of(&present);
        assert_eq!(meet(&linked, &present, &shop), Meeting::Same(Which::InHand));
        linked.answers.set_text(Field::Web, "5");
        assert_eq!(
            meet(&linked, &present, &shop),
            Meeting::Changed(Which::InHand)
        );
        let other = samples()[1].job();
        assert_eq!(meet(&linked, &other, &shop), Meeting::Other);
        let kept = Which::Kept("j-1".to_owned());
        shop.put(Thing::new("j-1", "", Content::from(present.clone())));
        assert_eq!(meet(&linked, &other, &shop), Meeting::Changed(kept.clone()));
        let linked = LinkedJob::of(&present);
        assert_eq!(meet(&linked, &other, &shop), Meeting::Same(kept));
    }

    #[test]
    fn jobs_without_a_name_are_not_taken_for_each_other() {
        let (mut nameless, mut other) = (samples()[0].job(), samples()[1].job());
        for job in [&mut nameless, &mut other] {
            job.title.clear();
            job.answers.set_text(Field::Name, " ");
        }
        let met = meet(&LinkedJob::of(&nameless), &other, &Shop::default());
        assert_eq!(met, Meeting::Other);
    }
}
