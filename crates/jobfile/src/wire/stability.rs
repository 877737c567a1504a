//! Whether a step will sing, and the chart of it.

use super::{wire_struct, wire_word};
use thinwright_core::stability::{
    CutReport, LimitReport, Lobes, ModeReport, SpeedReport, StabilityReport,
};
use thinwright_core::vibration::{Axis, TipKnown, Whose};

wire_word!(Whose { "cutter" Cutter, "machine" Machine, "web" Web, "rib" Rib, });
wire_word!(Axis { "x" X, "y" Y, "z" Z, });
wire_word!(TipKnown { "nothing" Nothing, "frequency" Frequency, "measured" Measured, });

wire_struct!(StabilityReport {
    "tip_known" known,
    "modes" modes,
    "cut" cut,
    "share" share,
    "quiet_worst_likely_m" quiet,
    "limit" limit,
    "here_m" here,
    "speeds" speeds,
    "tone_error" tone_error,
    "damped_below_m_per_s" damped_below,
    "top_m" top,
    "range_per_s" range,
});

wire_struct!(ModeReport {
    "whose" whose,
    "axis" axis,
    "stiffness_n_per_m" stiffness,
    "damping" damping,
    "frequency_hz" frequency,
});

wire_struct!(CutReport {
    "n_per_s" n,
    "ap_m" ap,
    "teeth" z,
    "arc_rad" arc,
    "kt_pa" kt,
    "kr_ratio" kr_ratio,
    "corner_m" corner,
});

wire_struct!(LimitReport {
    "depth_m" depth,
    "flip" flip,
    "whose" whose,
    "frequency_hz" frequency,
});

wire_struct!(SpeedReport {
    "n_per_s" n,
    "depth_m" depth,
    "off_m" off,
    "drums" drums,
});

wire_struct!(Lobes {
    "speeds_per_s" speeds,
    "limit_m" limit,
    "flip" flip,
});
