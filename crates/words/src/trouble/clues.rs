//! What speaks for a cause and against it, with figures.

use super::{repeats_name, sign_name, spot_name};
use crate::Speaker;
use crate::figures::written;
use crate::language::tr;
use crate::say;
use crate::{limit_name, sheet, utilisation};
use thinwright_core::strategy::Step;
use thinwright_core::trouble::{Clue, Known, Suspect};
use thinwright_core::vibration::Whose;
use thinwright_quantity::{Kind, Rounding, UnitSystem};

/// A share in whole per cent; something is never 0.
pub(super) fn percent(share: f64) -> String {
    let whole = (100.0 * share).round().max(1.0);
    let number = written(Kind::Count, whole, UnitSystem::Metric, Rounding::Nearest);
    format!("{number}\u{A0}%")
}

impl Speaker<'_> {
    /// How likely a cause is among all that fit.
    pub fn share(&self, suspect: &Suspect) -> String {
        say!("{share} of what is likely", share = percent(suspect.share))
    }

    /// A clue in words.
    pub fn clue(&self, clue: &Clue, step: &Step) -> String {
        let fits = clue.speaks_for;
        match clue.known {
            Known::Sign { sign, fit } if fits => say!(
                "The sign fits, as in {share} of such cases: {sign}.",
                share = percent(fit),
                sign = sign_name(sign)
            ),
            Known::Sign { sign, .. } => {
                say!("This sign belongs to something else: {sign}.", sign = sign_name(sign))
            }
            Known::Limit { limit, plausible } => self.limit_clue((limit, plausible), step),
            Known::NoLimitHere => tr("None of the limits that watch it applies in this step.").to_owned(),
            Known::Unwatched => tr("No limit watches it: only looking tells.").to_owned(),
            Known::Spot(spot) if fits => say!("It is at home {spot}.", spot = spot_name(spot)),
            Known::Spot(spot) => say!("It is seldom seen {spot}.", spot = spot_name(spot)),
            Known::Repeats(repeats) if fits => {
                say!("Whether it comes again fits: {repeats}.", repeats = repeats_name(repeats))
            }
            Known::Repeats(repeats) => say!(
                "Whether it comes again does not fit: {repeats}.",
                repeats = repeats_name(repeats)
            ),
            Known::Tone { heard, whose, own } => tone(
                whose,
                &self.frequency(heard),
                &self.frequency(own),
            ),
            Known::Pull { cut, held } if fits => say!(
                "The cut pulls along the cutter with {cut}. A badly kept collet was seen to hold {held} on a thick shank: it is how \
                 the cutter is clamped that counts.",
                cut = self.force(cut),
                held = self.force(held)
            ),
            Known::Pull { .. } => tr("The cut pushes the cutter into the collet.").to_owned(),
            Known::Carbide => tr("The cutter is carbide: at speed, blue chips are no harm. Watch the edge, not the colour.").to_owned(),
            Known::Form(form) if fits => {
                say!("The blank: {form}. It may hold stress inside.", form = sheet::form(form))
            }
            Known::Form(form) => {
                say!("The blank: {form}. It holds little stress.", form = sheet::form(form))
            }
            Known::Backlash(size) if fits => {
                say!("The axes have {size} of backlash.", size = self.short(size))
            }
            Known::Backlash(size) => say!(
                "The axes have only {size} of backlash, as far as is known.",
                size = self.short(size)
            ),
            Known::CutsLoose(true) => tr("This step cuts something free.").to_owned(),
            Known::CutsLoose(false) => tr("This step cuts nothing free.").to_owned(),
            Known::Tried(true) => tr("A change against it made it better.").to_owned(),
            Known::Tried(false) => tr("A change against it did not help.").to_owned(),
        }
    }

    /// How near a limit comes, likely and at worst, and what that makes of it.
    fn limit_clue(
        &self,
        (limit, plausible): (thinwright_core::limits::LimitId, f64),
        step: &Step,
    ) -> String {
        let Some(finding) = step.findings.iter().find(|f| f.limit == limit) else {
            return String::new();
        };
        say!(
            "{limit}: {likely} likely, {worst} at worst; exceeded with a plausibility of {plausible}. {finding}.",
            limit = crate::text::upper_first(limit_name(limit)),
            likely = utilisation(finding.at_likely.utilisation()),
            worst = utilisation(finding.utilisation()),
            plausible = percent(plausible),
            finding = crate::text::upper_first(&self.finding(finding))
        )
    }
}

fn tone(whose: Whose, heard: &str, own: &str) -> String {
    match whose {
        Whose::Cutter => say!(
            "The tone of {heard} is near that of the cutter, {own}.",
            heard,
            own
        ),
        Whose::Machine => say!(
            "The tone of {heard} is near that of the machine, {own}.",
            heard,
            own
        ),
        Whose::Web => say!(
            "The tone of {heard} is near that of the web, {own}.",
            heard,
            own
        ),
        Whose::Rib => say!(
            "The tone of {heard} is near that of the rib, {own}.",
            heard,
            own
        ),
    }
}
