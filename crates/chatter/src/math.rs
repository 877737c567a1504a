//! Portable functions and the little complex arithmetic that the stability of two modes needs.

pub(crate) fn sin(x: f64) -> f64 {
    libm::sin(x)
}

pub(crate) fn cos(x: f64) -> f64 {
    libm::cos(x)
}

pub(crate) fn acos(x: f64) -> f64 {
    libm::acos(x)
}

pub(crate) fn atan2(y: f64, x: f64) -> f64 {
    libm::atan2(y, x)
}

pub(crate) fn exp(x: f64) -> f64 {
    libm::exp(x)
}

/// A complex number.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Complex {
    pub(crate) re: f64,
    pub(crate) im: f64,
}

impl Complex {
    pub(crate) fn new(re: f64, im: f64) -> Self {
        Self { re, im }
    }

    pub(crate) fn times(self, other: Self) -> Self {
        Self::new(
            self.re * other.re - self.im * other.im,
            self.re * other.im + self.im * other.re,
        )
    }

    pub(crate) fn scale(self, factor: f64) -> Self {
        Self::new(self.re * factor, self.im * factor)
    }

    pub(crate) fn plus(self, other: Self) -> Self {
        Self::new(self.re + other.re, self.im + other.im)
    }

    pub(crate) fn minus(self, other: Self) -> Self {
        Self::new(self.re - other.re, self.im - other.im)
    }

    /// One over it.
    pub(crate) fn inverse(self) -> Self {
        let size = self.norm2();
        Self::new(self.re / size, -self.im / size)
    }

    /// Square of the absolute value.
    pub(crate) fn norm2(self) -> f64 {
        self.re * self.re + self.im * self.im
    }

    /// The root whose real part is not negative.
    pub(crate) fn sqrt(self) -> Self {
        let size = self.norm2().sqrt();
        let re = (0.5 * (size + self.re)).max(0.0).sqrt();
        let im = (0.5 * (size - self.re)).max(0.0).sqrt();
        Self::new(re, if self.im < 0.0 { -im } else { im })
    }
}
