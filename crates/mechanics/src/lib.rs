//! The cut and the cutter: kernels in SI, pure functions of f64.
//!
//! They know no part, no table and no words; the same input gives the same bits natively and in WASM.
//!
//! | symbol | in words | unit | origin |
//! | --- | --- | --- | --- |
//! | `n` | spindle speed | 1/s | ISO 3002 |
//! | `vc` | surface speed | m/s | ISO 3002 |
//! | `fz` | feed per tooth (chip load) | m | ISO 3002 |
//! | `vf` | feed speed | m/s | ISO 3002 |
//! | `ae`, `ap` | stepover, step-down | m | ISO 3002 |
//! | `d`, `z` | cutter diameter, teeth | m, - | ISO 13399 (DC, ZEFP) |
//! | `phi`, `phi_st`, `phi_ex` | immersion angle, entry, exit | rad | altintas1995 |
//! | `h`, `hm`, `hmax` | chip thickness, mean, greatest | m | ISO 3002 |
//! | `kc`, `kc1_1`, `mc` | specific cutting force, at 1 mm chip, exponent | Pa, Pa, - | kienzle1952 |
//! | `ft`, `fr`, `fa` | force on a tooth: tangential, radial, axial | N | altintas1995 |
//! | `q` | removal rate | m3/s | ISO 3002 |
//! | `pc` | cutting power | W | ISO 3002 |
//! | `e_mod`, `nu` | Young's modulus, Poisson's ratio | Pa, - | ISO 80000-4 |
//! | `k` | stiffness | N/m | ISO 80000-4 |
//! | `ra`, `rz` | roughness | m | ISO 4287 |
//!
//! Clashes are settled here: `fz` is always feed per tooth, never a force; `z` is always teeth, the axis is spelled
//! axial; `n` is never a count; `d` are diameters, radii are spelled out.
#![warn(missing_docs)]

mod math;

pub mod chip;
pub mod corner;
pub mod engagement;
pub mod entry;
pub mod force;
pub mod hold;
pub mod kienzle;
pub mod kinematics;
pub mod power;
pub mod rib;
pub mod rubbing;
pub mod slot;
pub mod spindle;
pub mod surface;
pub mod taylor;
pub mod time;
pub mod tool_beam;
