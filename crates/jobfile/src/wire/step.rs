//! A step, its findings and what was set aside for it.

use super::{wire_enum, wire_struct};
use thinwright_core::methods::Rejection;
use thinwright_core::strategy::{
    Considered, Entry, Finding, Listen, Loads, Measure, Remedy, RibReport, Step, Verdict, WebReport,
};

wire_struct!(Step {
    "number" number,
    "task" task,
    "method" method,
    "cutter_row_from_0" cutter,
    "n_per_s" n,
    "vf_m_per_s" vf,
    "fz_m" fz,
    "vc_m_per_s" vc,
    "ae_m" ae,
    "ap_m" ap,
    "levels" levels,
    "z_from_to_m" z,
    "leave_wall_floor_m" leave,
    "entry" entry,
    "opening_feed_m_per_s" opening_feed,
    "corner_feed_m_per_s" corner_feed,
    "time_s" time,
    "path_m" path,
    "loads" loads,
    "web" web,
    "rib" rib,
    "findings" findings,
    "considered" considered,
    "stability" stability,
    "listen" listen,
    "cautions" cautions,
});

wire_enum!(Entry {
    "side" Side {}
    "helix" Helix {
        "hole_m" hole hole,
        "centre_circle_m" centre_circle centre_circle,
        "pitch_m" pitch pitch,
        "angle_rad" angle angle,
        "centre_feed_m_per_s" centre_feed centre_feed,
    }
    "zigzag" Zigzag { "angle_rad" angle angle, "feed_m_per_s" feed feed, }
    "drilled" Drilled {
        "hole_m" hole hole,
        "drill" drill drill,
        "n_per_s" n n,
        "feed_m_per_s" feed feed,
        "peck_m" peck peck,
    }
    "plunge" Plunge { "feed_m_per_s" feed feed, "peck_m" peck peck, }
});

wire_struct!(Loads {
    "peak_lateral_n" peak_lateral,
    "mean_lateral_n" mean_lateral,
    "mean_axial_n" mean_axial,
    "torque_n_m" torque,
    "power_w" power,
    "chip_mean_greatest_m" chip,
    "deflection_m" deflection,
    "stress_pa" stress,
});

wire_struct!(WebReport {
    "thickness_m" thickness,
    "stiffness_n_per_m" stiffness,
    "unbacked_n_per_m" unbacked,
    "chain_n_per_m" chain,
    "frequency_hz" frequency,
    "tooth_passing_hz" tooth_passing,
    "softest_from_middle_m" softest,
    "other_way_n_per_m" other_way,
    "mesh_error" error,
});

wire_struct!(RibReport { "open_n_per_m" open, "solid_n_per_m" solid, });

wire_struct!(Measure {
    "demand_si" demand,
    "allowed_si" allowed,
});

wire_struct!(Finding {
    "limit" limit,
    "severity" severity,
    "at_likely" at_likely,
    "at_worst" at_worst,
    "set_by" set_by,
    "remedies" remedies,
});

wire_struct!(Remedy {
    "lever" lever,
    "to_si" to,
    "utilisation" utilisation,
});

wire_struct!(Considered {
    "method" method,
    "cutter_row_from_0" cutter,
    "verdict" verdict,
});

wire_enum!(Verdict {
    "slower" Slower { "time_s" 0 time, }
    "warned" Warned { "limit" limit limit, "utilisation" utilisation utilisation, "time_s" time time, }
    "unfit" Unfit { "why" 0 why, }
    "breaks" Breaks { "limit" limit limit, "measure" measure measure, }
});

wire_enum!(Rejection {
    "not-for-this" NotForThis {}
    "not-a-drill" NotADrill {}
    "no-drill" NoDrill {}
    "too-wide" TooWide { "measure" 0 measure, }
    "too-narrow" TooNarrow { "measure" 0 measure, }
    "corner-too-tight" CornerTooTight { "measure" 0 measure, }
    "not-centre-cutting" NotCentreCutting {}
    "no-room-to-enter" NoRoomToEnter { "measure" 0 measure, }
    "pinned" Pinned {}
});

wire_struct!(Listen {
    "quiet_m" quiet,
    "start_m" start,
    "increment_m" increment,
    "planned_m" planned,
});
