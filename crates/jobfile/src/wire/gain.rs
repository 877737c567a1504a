//! What a change would bring.

use super::{wire_enum, wire_struct};
use thinwright_core::gain::{Gain, Geometry, Turned, What};

wire_enum!(What {
    "measure" Measure { "unknown" 0 unknown, }
    "one-more-flute" OneMoreFlute { "cutter_row_from_0" row row, "flutes" flutes flutes, }
    "hold-shorter" HoldShorter { "cutter_row_from_0" row row, "stick_out_m" stick_out stick_out, }
    "buy" Buy { "cutter" 0 cutter, }
    "back" Back { "backing" 0 backing, }
    "bolt-boss" BoltBoss {}
    "clear-chips" ClearChips { "clearing" 0 clearing, }
    "let-go" LetGo { "field" 0 field, }
});

wire_struct!(Geometry {
    "drill" drill,
    "d_m" d,
    "flutes" flutes,
    "flute_length_m" flute_length,
    "reach_m" reach,
    "shank_m" shank,
    "carbide" carbide,
});

wire_struct!(Turned {
    "task" task,
    "lever" lever,
    "from_si" from,
    "to_si" to,
});

wire_struct!(Gain {
    "what" what,
    "time_s" time,
    "saved_s" saved_s,
    "cleared" cleared,
    "turned" turned,
});
