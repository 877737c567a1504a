//! Portable maths: `libm` everywhere, so that results do not depend on the platform.

pub(crate) use core::f64::consts::{FRAC_PI_2, PI, TAU};
pub(crate) use libm::{acos, cos, log as ln, pow, sin, tan};
