//! What a sheet says beside what stands there now.

use crate::strategy::said;
use crate::text::links as text;
use crate::units::restate;
use std::collections::BTreeSet;
use thinwright_catalog::Catalog;
use thinwright_core::{Answers, FieldId};
use thinwright_jobfile::{JobFile, LinkedJob};
use thinwright_words::{Speaker, known};

/// An answer that differs: its place, what the sheet says, what stands there now.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Row {
    pub(crate) place: String,
    pub(crate) sheet: String,
    pub(crate) now: String,
}

/// What a job that came by link is to the one in hand.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Meeting {
    /// The same answers.
    Same,
    /// The same job with other answers.
    Changed,
    /// Another job.
    Other,
}

/// How a job that came by link meets the one in hand.
pub(crate) fn meet(linked: &LinkedJob, present: &JobFile) -> Meeting {
    let name = linked.file().name().to_owned();
    if linked.digest() == thinwright_jobfile::digest(&present.answers) {
        Meeting::Same
    } else if !name.is_empty() && name == present.name() {
        Meeting::Changed
    } else {
        Meeting::Other
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
            ("4 mm", "5 mm")
        );
        assert!(told[1].now.ends_with("measured"), "{told:?}");
        assert!(told[2].place.starts_with("Cutter 2"), "{told:?}");
    }

    #[test]
    fn a_link_meets_the_job_in_hand() {
        let present = samples()[0].job();
        let mut linked = LinkedJob::of(&present);
        assert_eq!(meet(&linked, &present), Meeting::Same);
        linked.answers.set_text(Field::Web, "5");
        assert_eq!(meet(&linked, &present), Meeting::Changed);
        assert_eq!(meet(&linked, &samples()[1].job()), Meeting::Other);
        let (mut nameless, mut other) = (samples()[0].job(), samples()[1].job());
        for job in [&mut nameless, &mut other] {
            job.title.clear();
            job.answers.set_text(Field::Name, " ");
        }
        assert_eq!(meet(&LinkedJob::of(&nameless), &other), Meeting::Other);
    }
}
