//! Margins, defaults and factors that are chosen: one named number each, from one row each.
//!
//! To add one: a line in the list below, and a row of the same id in `shared/data/numbers.json`. A test finds what is missing.

use crate::error::{CatalogError, Fault};
use crate::range::Origin;
use crate::row::Row;

/// A row of the table of numbers.
#[derive(Clone, Debug, PartialEq)]
pub struct NumberRow {
    /// Id: the name of the field of [`Numbers`], with the unit at its end.
    pub id: String,
    /// The value, in `unit`.
    pub value: f64,
    /// Unit, `1` for a plain number.
    pub unit: String,
    /// Keys of the literature list.
    pub sources: Vec<String>,
    /// How it is known.
    pub known: Origin,
    /// What it is for.
    pub note: String,
}

impl NumberRow {
    /// Reads a row.
    pub(crate) fn read(mut row: Row) -> Result<NumberRow, CatalogError> {
        let standing = row.standing()?;
        let out = NumberRow {
            id: row.id(),
            value: row.number("value")?,
            unit: row.text("unit")?,
            sources: standing.sources,
            known: standing.known,
            note: standing.note,
        };
        row.hold(
            "unit",
            suffix(&out.unit).is_some_and(|end| out.id.ends_with(end)),
            Fault::NotAChoice,
        )?;
        row.hold("note", !out.note.is_empty(), Fault::Missing)?;
        row.hold(
            "id",
            NUMBER_IDS.contains(&out.id.as_str()),
            Fault::NotAChoice,
        )?;
        row.end()?;
        Ok(out)
    }
}

/// What the id of a number in this unit ends with.
fn suffix(unit: &str) -> Option<&'static str> {
    const SUFFIXES: &[(&str, &str)] = &[
        ("1", ""),
        ("mm", "_mm"),
        ("um", "_um"),
        ("deg", "_deg"),
        ("s", "_s"),
        ("min", "_min"),
        ("N", "_n"),
        ("m/min", "_m_per_min"),
        ("mm/min", "_mm_per_min"),
        ("m/s", "_m_per_s"),
        ("rpm", "_rpm"),
        ("in", "_in"),
        ("in/min", "_in_per_min"),
        ("Hz", "_hz"),
        ("K", "_k"),
        ("N/um", "_n_per_um"),
        ("N/mm2", "_n_per_mm2"),
        ("N/mm", "_n_per_mm"),
    ];
    SUFFIXES
        .iter()
        .find(|(name, _)| *name == unit)
        .map(|(_, end)| *end)
}

macro_rules! numbers {
    ($($name:ident: $doc:literal;)*) => {
        /// Every chosen number, each in the unit that its name ends with (none: a plain number).
        #[derive(Clone, Copy, Debug, PartialEq)]
        pub struct Numbers { $(#[doc = $doc] pub $name: f64,)* }

        /// The names of all fields of [`Numbers`], in order: the ids that the table must have.
        pub const NUMBER_IDS: &[&str] = &[$(stringify!($name)),*];

        impl Numbers {
            /// Gathers the numbers from their rows.
            pub(crate) fn gather(rows: &[NumberRow]) -> Result<Numbers, CatalogError> {
                let value = |id: &str| rows.iter().find(|row| row.id == id).map(|row| row.value)
                    .ok_or_else(|| CatalogError::NoSuchRow { table: "numbers", row: id.to_owned() });
                Ok(Numbers { $($name: value(stringify!($name))?,)* })
            }
        }
    };
}

numbers! {
    // Verdicts.
    utilisation_holds: "Utilisation up to which a finding holds; above it is tight, above 1 it fails.";
    hold_safety: "Holding force over the greatest cutting force.";
    tool_breakage_safety: "Rupture strength over the bending stress in the cutter.";
    web_stress_safety: "Yield strength over the stress in web and ribs.";
    stability_share: "Share of the linear stability limit that is used at most.";
    // The cutter's state.
    worn_edge: "Factor on cutting force at the end of an edge's life, where the material has none of its own.";
    runout_on_radius: "Share of the total indicated runout that one tooth gets on its radius.";
    thin_chip_energy: "Factor on cutting energy for chips thinner than the next number.";
    thin_chip_um: "Chip thickness under which the factor on energy applies.";
    // Allowances.
    rough_allowance_mm: "Left on floors and walls by roughing.";
    rough_allowance_most_mm: "Larger allowance on walls that is tried too.";
    floor_allowance_most_mm: "Larger allowance on floors that is tried too.";
    floor_allowance_mm: "Left on the floor for its skim.";
    finish_ae_mm: "Stepover of the wall skim.";
    skim_depth_mm: "Step-down of the floor skim.";
    safe_skin_mm: "Least of the allowance that must remain for the finish to cut after roughing has deflected.";
    allowance_over_deflection: "Allowance over the deflection predicted for roughing.";
    overtravel_mm: "Depth past the web when a slot breaks through into a backing.";
    slot_overdepth_mm: "Depth past the web, above floor allowance and Z error, when a slot is cut into stock that is removed later.";
    outline_overlap_mm: "Depth past the plane of turning over at which the outline groove of the first side ends.";
    tab_height_mm: "Height of the tabs that keep hold of the part.";
    tab_width_mm: "Width of a tab.";
    tab_count: "Tabs on an outline.";
    skin_mm: "Skin left under a slug or an outline until the last pass.";
    // Clearances.
    shank_clearance_mm: "Least gap from shank to wall.";
    nut_clearance_mm: "Least gap from collet nut to stock.";
    safe_lift_mm: "Lift above the stock between cuts.";
    clamp_lift_mm: "Lift above the highest clamp or screw.";
    // Entries.
    helix_over_d_least: "Least diameter of an entry helix over the cutter's.";
    helix_over_d_most: "Greatest diameter of an entry helix over the cutter's.";
    helix_over_d: "Diameter of an entry helix over the cutter's, to start with.";
    ramp_feed: "Feed in a ramp or helix over feed in the plane.";
    plunge_feed: "Feed straight down with a cutter that cuts to its centre, over feed in the plane.";
    break_through_feed: "Feed at break-through over the usual feed.";
    corner_feed: "Least feed in a corner over the usual feed.";
    // Slots and recesses.
    slot_depth_over_d: "Depth of a full-width pass over diameter, at most, on a stiff machine.";
    slot_depth_over_width_plain: "Depth to width of a slot up to which nothing special is needed.";
    slot_depth_over_width_care: "Depth to width of a slot from which it needs special care.";
    slot_depth_over_width_avoid: "Depth to width of a slot to avoid.";
    slot_cutter_share_least: "Least cutter diameter over slot width for side passes.";
    slot_cutter_share: "Cutter diameter over slot width for side passes, to start with.";
    slot_cutter_share_most: "Greatest cutter diameter over slot width for side passes.";
    peel_cutter_share_most: "Greatest cutter diameter over slot width for peeling loops.";
    peel_ae_over_d_least: "Least side bite of peeling loops over diameter.";
    peel_ae_over_d_most: "Greatest side bite of peeling loops over diameter.";
    peel_ap_over_d_most: "Greatest depth of peeling loops over diameter.";
    slot_speed: "Surface speed in a full-width slot over that in side milling.";
    end_drill_under_mm: "Slot width less the diameter of the drill for its ends, at least.";
    drill_point_over_d: "Length of a drill's point over its diameter.";
    corner_cutter_share: "Cutter radius over corner radius, at most, for a corner without a spike.";
    stepover_over_d_least: "Least stepover of clearing over diameter.";
    stepover_over_d_rough: "Stepover of clearing over diameter, to start with.";
    stepover_over_d_most: "Stepover of clearing over diameter, at most, so that no ridge is left.";
    skim_stepover_over_d: "Stepover of the floor skim over diameter.";
    // Reach and stiffness.
    reach_over_d_plain: "Stick-out over diameter up to which nothing special is needed, carbide.";
    reach_over_d_plain_hss: "Stick-out over diameter up to which nothing special is needed, high-speed steel.";
    reach_over_d_avoid: "Stick-out over diameter to avoid, carbide.";
    grip_length_over_shank: "Shank length in the collet over shank diameter, at least.";
    contact_compliance: "Share of a cutter's bending compliance that its clamping adds.";
    // Web.
    span_over_web_care: "Span over web thickness from which care is needed.";
    span_over_web_backing: "Span over web thickness from which a backing is expected.";
    span_over_web_full: "Span over web thickness from which full backing is needed.";
    wall_step_over_thickness: "Step-down beside a finished rib or wall over its thickness, at most.";
    web_tone_low: "The web's first tone over what is worked out, at least.";
    web_tone_high: "The web's first tone over what is worked out, at most.";
    web_tone_share: "Closeness of tooth rate or a low harmonic to the web's tone at which it is listened for, as a share of the tone.";
    web_damping: "Damping ratio of a web without backing.";
    web_lift_mm: "Lift of a web that is not bonded, where no tolerance was asked.";
    wall_lean_mm: "Lean of a wall over a step-down, where no tolerance was asked.";
    // Practice.
    reference_kc_n_per_mm2: "Specific cutting force kc1.1 of the aluminium in which the machines' ladder of practice is given.";
    reference_mc: "Exponent mc that goes with the reference.";
    least_step_down_mm: "The least step-down that is tried.";
    sharp_corner_mm: "Radius that a corner called sharp has in truth.";
    runout_to_feed: "Total indicated runout over feed per tooth, at most, with more than one tooth.";
    // Push and tap tests.
    push_arm_mm: "How far below the collet nut a push test is made, when nobody says.";
    push_rod_modulus_n_per_mm2: "Elastic modulus of the rod of a push test.";
    push_dial_um: "Error of the dial in a push test.";
    push_scale_share: "Error of the scale in a push test, as a share.";
    push_spread_least: "Uncertainty of a push test, at least.";
    push_spread_most: "Uncertainty of a push test, at most: what is left of a reading that the dial hardly shows.";
    tap_spread: "Error of a tapped frequency, as a share to both sides.";
    tap_count: "Taps that have to agree.";
    tap_damping_factor: "A damping ratio heard by microphone may be so many times too great or too small.";
    tone_error_cost: "Error of a frequency whose cost in depth is told, as a share.";
    heard_match: "A tone heard while cutting is taken for a vibration whose frequency is within this share.";
    process_damping_n_per_mm: "Coefficient of process damping C, low end.";
    // Listening.
    listen_start_share: "Start depth of the listen ladder over the depth that is planned.";
    listen_increment_share: "Increment of the listen ladder over the depth that is planned.";
    speed_move: "Change of spindle speed to try against a tone, as a share.";
    // Errors of position.
    backlash_climb_um: "Backlash above which conventional milling is preferred for roughing.";
    seat_error_um: "Error of a seat from dirt and burr.";
    touch_error_um: "Error of a Z touch.";
    pin_error_um: "Error of a turn-over on reamed pins.";
    deflection_scatter: "Scatter of a finishing deflection from cut to cut, as a share of it.";
    // Defaults of the blank and of tolerances.
    blank_around_mm: "Blank over the part all around, when nobody says.";
    blank_face_mm: "Blank over the part on each face, when nobody says.";
    web_tolerance_mm: "Tolerance of the web, plus or minus, when nobody says.";
    slot_tolerance_mm: "Tolerance of the slot width, plus or minus, when nobody says.";
    flatness_mm: "Flatness, when nobody says.";
    // Time.
    turn_over_s: "Time to turn the part over and find the datum again.";
    face_time_s: "Time to set up and start.";
    lift_s: "Time lost at each lift, beside the travel.";
    bolt_boss_s: "Time to bolt the boss down.";
    worth_least_s: "Time that a change must save, or be worth in warnings, to be told.";
    buy_share: "Share of the whole time that a cutter must save to be worth buying.";
    warning_least_s: "Time that a broken warning is reckoned to cost at least.";
    warning_price_s: "Time that a warning broken by its whole limit is reckoned to cost when plans are compared.";
    // The page.
    undo_steps: "Changes that can be taken back.";
    keep_after_s: "Rest after a change before the job is kept in the shop.";
    // What people type, and how well they know it.
    own_figure_spread: "Spread of a figure from a data sheet, to both sides.";
    measured_spread: "Spread of a figure that was measured, to both sides.";
    guess_spread: "Spread of a figure that is an estimate, to both sides.";
    typed_speed_step_rpm: "Step in which spindle speeds are typed.";
    typed_feed_step_mm_per_min: "Step in which feeds are typed.";
    typed_feed_step_in_per_min: "Step in which feeds are typed in inches.";
    typed_depth_step_mm: "Step in which step-downs and stepovers are typed.";
    typed_depth_step_in: "Step in which step-downs and stepovers are typed in inches.";
    usual_helix_deg: "Helix angle of an end mill when nobody says.";
    drill_feed_over_d: "Feed per turn of a small drill over its diameter.";
    peck_over_d: "Depth after which a drill is lifted to clear chips, over its diameter.";
    fast_cutter_m_per_min: "Surface speed at the machine's top speed from which a cutter's own limit matters.";
    // What was run, and what it teaches.
    learn_tail: "A tail of a range is cut off where what was seen has left it at most this share of its plausibility.";
    learn_conflict: "What was seen disagrees where it was less likely than this.";
    learn_slip: "Chance that something was noted wrong, or that something else was at work.";
    learn_song_spread: "Spread of the logarithm of the depth at which a step sings (scale of a logistic curve).";
    learn_untold_spread: "The same where no tone is known: the lobes that are not known are in it too.";
    learn_untold_reach: "Scale of the logistic distribution of the logarithm of the depth that really stays quiet, over that worked out without a tone.";
    learn_lobe_gain: "Depth at which a step sings at some speed over that which is quiet at any, usually.";
    learn_give_spread: "Spread of the logarithm of a deflection that the force model leaves beside kc.";
    learn_break_spread: "Spread of the logarithm of the stress at which a cutter breaks (scale of a logistic curve).";
    learn_force_spread: "Spread of the logarithm of a measured cutting force that the force model leaves beside kc.";
    // Readings at the machine.
    reading_thickness_um: "Error of a thickness read with a micrometer or a good caliper.";
    reading_width_um: "Error of a slot width read with plug gauges or a good caliper.";
    reading_power_share: "Error of a power meter that shows true watts, as a share.";
    reading_power_least: "Least share of the power drawn that reaches the cutter.";
    reading_power_most: "Greatest share of the power drawn that reaches the cutter.";
    reading_chips_share: "Error of weighing the chips of a timed cut, as a share.";
    reading_runout_um: "Error of a dial test indicator.";
    reading_odd: "Ratio of read to reckoned, or its inverse, beyond which it is the reading or the set-up that is wrong.";
    // A job as a code on the sheet.
    code_module_mm: "Edge of a module of the code on paper.";
    code_most_version: "Greatest version of the code that is printed.";
    // When it goes wrong.
    trouble_model_spread: "Spread of the logarithm of a utilisation that the model itself leaves.";
    trouble_worst_quantile: "How many standard deviations the bad end of what is unknown lies from the likely value.";
    trouble_unwatched: "How plausible a cause is that no limit watches.";
    trouble_least: "How plausible a cause stays whose limits are far away.";
    trouble_unfit: "Fit of a sign that does not belong to a cause.";
    trouble_elsewhere: "Factor on a cause seen where it is not at home, or not as often as it would.";
    trouble_tone_off: "Factor on a cause when the tone that was heard belongs to something else.";
    trouble_worth: "Share by which a change must ease the limit behind a cause.";
    trouble_speed_least: "Least move of the spindle speed against a tone, as a share.";
    trouble_speed_most: "Greatest move of the spindle speed against a tone, as a share.";
    trouble_trial: "Share by which feed and speed are moved on trial.";
    trouble_halved: "Factor on step-down or stepover when they are taken back.";
    trouble_hot_speed: "Share by which the surface speed goes down for a hot edge.";
    trouble_runout_fine: "Runout over feed per tooth that careful shops aim at.";
    trouble_runout_fair: "Runout over feed per tooth that other shops aim at.";
    trouble_chip_um: "Thickness from which a chip can be seen as one.";
    trouble_exit_feed_um: "Least feed per tooth against burrs in non-ferrous metals.";
    trouble_clear_over_d: "Depth after which a slot is left and cleared, over the diameter of the cutter.";
    trouble_pull_out_n: "Pull along the cutter that a badly kept collet was seen to hold.";
}
