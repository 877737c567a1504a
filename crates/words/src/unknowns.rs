//! What is not known for sure, and how it can be known.

use crate::language::tr;
use thinwright_core::estimate::{Known, Unknown};

/// How an answer is known.
pub fn known(known: Known) -> &'static str {
    tr(match known {
        Known::Measured => "measured",
        Known::DataSheet => "data sheet",
        Known::Estimated => "estimated",
    })
}

/// What an unknown is called.
pub fn unknown_name(unknown: Unknown) -> &'static str {
    tr(match unknown {
        Unknown::Kc => "specific cutting force",
        Unknown::MachineStiffness => "stiffness of the machine",
        Unknown::Runout => "runout",
        Unknown::Thrust => "axis thrust",
        Unknown::Friction => "friction under the hold",
        Unknown::Grip => "clamping force",
        Unknown::BedStiffness => "stiffness of the backing",
        Unknown::Efficiency => "losses from motor to cutter",
        Unknown::Damping => "damping at the cutter",
        Unknown::Rupture => "strength of the cutter's material",
        Unknown::WebTone => "tone of the web",
    })
}

/// How to get to know it in a shop.
pub fn unknown_how(unknown: Unknown) -> &'static str {
    tr(match unknown {
        Unknown::Kc => {
            "read the spindle's power during a known cut, or take the figure of this very alloy"
        }
        Unknown::MachineStiffness => "push the spindle sideways with 50 N and read the dial",
        Unknown::Runout => "turn the cutter by hand against a dial, near the flutes",
        Unknown::Thrust => "pull an axis with a spring scale until it loses steps or stalls",
        Unknown::Friction => {
            "pull the clamped blank sideways with a spring scale; clean, dry faces hold best"
        }
        Unknown::Grip => "tighten with a torque wrench, and count every screw",
        Unknown::BedStiffness => "press on the backed web with a known weight and read the dial",
        Unknown::Efficiency => "compare the motor's power reading when cutting and when idling",
        Unknown::Damping => "tap the cutter and count how long it rings",
        Unknown::Rupture => "take it from the cutter maker's data sheet",
        Unknown::WebTone => "tap the bare web with a fingernail and listen with a phone's tuner",
    })
}
