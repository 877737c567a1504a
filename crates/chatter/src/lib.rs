//! Stability of milling: will the cut sing?
//!
//! Modes of cutter, machine and work in any direction, a circular tooth path, no helix, equal pitch. The check is that of
//! [`floquet`]: exact over one tooth period. The **zero-order** solution (the force variation averaged over a tooth
//! period) is kept as a quick preview and as a part of [`any_speed`]: at light radial cuts its limit at one speed can be unsafe
//! by up to 3.4 times, because an interrupted cut has period-doubling lobes that the average does not know.
//!
//! | symbol | words | SI unit | origin |
//! |---|---|---|---|
//! | `k`, `zeta`, `omega_n` | stiffness, damping ratio, natural angular frequency of a mode | N/m, -, rad/s | common |
//! | `phi_st`, `phi_ex` | angle at which a tooth enters and leaves, from the normal to the feed | rad | `altintas1995` |
//! | `kt`, `kr_ratio` | tangential cutting coefficient; radial over tangential | Pa, - | `altintas1995` |
//! | `z` | teeth | - | ISO 13399 |
//! | `a_lim` | limit depth (axial) | m | `altintas1995` |
//!
//! x is the feed direction, y the normal to it; up-milling enters at 0, down-milling leaves at pi.
#![warn(missing_docs)]

pub mod any_speed;
pub mod directional;
pub mod edge;
pub mod floor;
pub mod floquet;
pub mod lobe;
mod math;
pub mod mode;
pub mod process_damping;
pub mod speed;
pub mod zero_order;

pub use any_speed::quiet_at_any_speed;
pub use directional::{Directional, directional, down_milling, slotting, up_milling};
pub use edge::Edge;
pub use mode::{Cut, Mode};
pub use zero_order::{quiet_depth, quiet_depth_one_mode};
