//! The sheet that a plate is made of, and what can be wrong with a question about it.

/// Material and thickness of a plate.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sheet {
    /// Young's modulus \[Pa\].
    pub e_mod: f64,
    /// Poisson's ratio \[-\].
    pub nu: f64,
    /// Density \[kg/m^3\].
    pub rho: f64,
    /// Thickness \[m\].
    pub t: f64,
}

impl Sheet {
    /// Bending rigidity D = E t^3 / (12 (1 - nu^2)) \[N m\].
    #[must_use]
    pub fn rigidity(&self) -> f64 {
        self.e_mod * self.t * self.t * self.t / (12.0 * (1.0 - self.nu * self.nu))
    }

    /// Rigidity, once the sheet has been found possible.
    pub(crate) fn checked_rigidity(&self) -> Result<f64, PlateError> {
        for value in [self.e_mod, self.rho, self.t] {
            positive(value)?;
        }
        if !(self.nu > -1.0 && self.nu <= 0.5) {
            return Err(PlateError::Poisson { nu: self.nu });
        }
        positive(self.rigidity())
    }

    /// Frequency \[Hz\] that belongs to a parameter `lambda2` on the length `a` \[m\].
    pub(crate) fn frequency(&self, lambda2: f64, a: f64) -> Result<f64, PlateError> {
        let root = (self.rigidity() / (self.rho * self.t)).sqrt();
        settled(lambda2 / (2.0 * core::f64::consts::PI * a * a) * root)
    }
}

/// Why a plate gives no answer.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub enum PlateError {
    /// A length, modulus or density is not a positive finite number.
    NotPositive {
        /// What was given.
        value: f64,
    },
    /// Poisson's ratio outside -1 < nu <= 0.5.
    Poisson {
        /// What was given.
        nu: f64,
    },
    /// A ratio of lengths is outside the range in which the method is sound.
    Ratio {
        /// The ratio met.
        value: f64,
        /// Least ratio allowed.
        least: f64,
        /// Greatest ratio allowed.
        most: f64,
    },
    /// The load does not stand on the plate.
    OffPlate {
        /// The coordinate that is outside \[m\].
        at: f64,
    },
    /// The series or the search did not settle within its limit of steps.
    NotSettled,
}

/// The value, if it is a positive finite number.
pub(crate) fn positive(value: f64) -> Result<f64, PlateError> {
    if value > 0.0 && value.is_finite() {
        Ok(value)
    } else {
        Err(PlateError::NotPositive { value })
    }
}

/// The ratio, if it lies between `least` and `most`.
pub(crate) fn ratio_within(value: f64, least: f64, most: f64) -> Result<f64, PlateError> {
    if value >= least && value <= most {
        Ok(value)
    } else {
        Err(PlateError::Ratio { value, least, most })
    }
}

/// The coordinate, if it lies between `low` and `high` \[m\].
pub(crate) fn on_plate(at: f64, low: f64, high: f64) -> Result<f64, PlateError> {
    if at >= low && at <= high {
        Ok(at)
    } else {
        Err(PlateError::OffPlate { at })
    }
}

/// The result, unless it came out non-finite.
pub(crate) fn settled(value: f64) -> Result<f64, PlateError> {
    if value.is_finite() {
        Ok(value)
    } else {
        Err(PlateError::NotSettled)
    }
}
