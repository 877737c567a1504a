//! Risks that have to be confirmed, and the stop mark until they are.

use thinwright_core::confirm::Confirmation;
use thinwright_words::language::tr;
use thinwright_words::{say, sheet};

texts! {
    heading: "To confirm before the sheet is printed";
    why: "Each of these can kill. Tick it when it is dealt with here, as the machine's manual, local rules and qualified people \
        want it. Until then the sheet and the view at the machine carry a stop mark.";
    stop: "STOP";
}

/// What a risk is called.
pub(crate) fn name(risk: &Confirmation) -> &'static str {
    match risk.caution.as_str() {
        "magnesium_fire" => tr("Magnesium burns."),
        "titanium_fire" => tr("Titanium burns."),
        "fibre_dust" => tr("Fibre dust."),
        "loose_piece" => tr("A piece comes free."),
        "cutter_over_speed" => tr("Cutter above its marked speed."),
        _ => tr("Danger."),
    }
}

/// The steps at which a risk arises.
pub(crate) fn steps(numbers: &[u32]) -> Option<String> {
    match numbers {
        [] => None,
        [only] => Some(say!("(Step {step})", step = only)),
        several => Some(say!(
            "(Steps {steps})",
            steps = sheet::step_numbers(several)
        )),
    }
}

/// What is open, in words.
pub(crate) fn not_confirmed(open: &[Confirmation]) -> String {
    let names: Vec<&str> = open.iter().map(name).collect();
    say!("STOP: not confirmed. {names}", names = names.join(" "))
}
