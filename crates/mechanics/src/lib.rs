//! The cut and the cutter: kernels in SI, pure functions of f64.
//!
//! They know no part, no table and no words; the same input gives the same bits natively and in WASM. The modules stand
//! in the order in which they are best read: what the cutter meets, what it takes to cut it, what bends, what is left
//! behind, and then the single situations.
//!
//! | symbol | in words | unit | origin |
//! | --- | --- | --- | --- |
//! | `n` | spindle speed | 1/s | ISO 3002 |
//! | `vc` | surface speed | m/s | ISO 3002 |
//! | `fz`, `f` | feed per tooth (chip load), per revolution | m | ISO 3002 |
//! | `vf` | feed speed | m/s | ISO 3002 |
//! | `ae`, `ap` | stepover, step-down | m | ISO 3002 |
//! | `d`, `z` | cutter diameter, teeth | m, - | ISO 13399 (DC, ZEFP) |
//! | `re` | corner radius (in `rubbing`: edge radius) | m | ISO 13399 (RE) |
//! | `helix`, `kappa` | helix angle, lead angle of the edge | rad | ISO 13399 (FHA, KAPR) |
//! | `phi`, `phi_st`, `phi_ex` | immersion angle, entry, exit, from the normal left of the feed | rad | `altintas1995` |
//! | `h`, `hm` | chip thickness, its mean | m | ISO 3002 |
//! | `kc`, `kc1_1`, `mc` | specific cutting force, at 1 mm chip, exponent | Pa, Pa, - | `kienzle1952` |
//! | `h_ref` | the chip that `kc1_1` is stated for: 1 mm | m | `kienzle1952` |
//! | `radial_ratio`, `axial_ratio` | radial over tangential force; lift over tangential force at 30 degrees of helix | - | `altintas1995` |
//! | `q` | removal rate | m3/s | ISO 3002 |
//! | `pc`, `torque` | cutting power, torque | W, N m | ISO 3002 |
//! | `e_mod` | Young's modulus | Pa | ISO 80000-4 |
//! | `rho` | density | kg/m3 | ISO 80000-4 |
//! | `mu` | coefficient of friction | - | ISO 80000-4 |
//! | `accel` | acceleration along the path | m/s2 | ISO 80000-3 |
//!
//! Frame of forces: x along the feed of the cutter, y to its left, axial along the tool; forces are those of the cutter on
//! the work, axial positive where it presses down.
//!
//! Clashes are settled here: `fz` is always feed per tooth, never a force; `z` is always teeth, the axis is spelled
//! axial; `n` is never a count; `d` are diameters, radii are spelled out; `mc` is the exponent, torque is spelled out.
#![warn(missing_docs)]

mod math;

pub mod kinematics;

pub mod engagement;

pub mod chip;

pub mod kienzle;

pub mod force;

pub mod power;

pub mod spindle;

pub mod tool_beam;

pub mod surface;

pub mod rubbing;

pub mod entry;

pub mod slot;

pub mod corner;

pub mod push;
pub mod rib;

pub mod hold;

pub mod taylor;

pub mod time;
