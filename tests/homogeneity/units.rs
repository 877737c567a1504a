//! Other units of length, mass and time.

/// Powers of metre, kilogram and second.
pub(crate) type Dimension = [i32; 3];

pub(crate) const NUMBER: Dimension = [0, 0, 0];
pub(crate) const LENGTH: Dimension = [1, 0, 0];
pub(crate) const AREA: Dimension = [2, 0, 0];
pub(crate) const TIME: Dimension = [0, 0, 1];
pub(crate) const RATE: Dimension = [0, 0, -1];
pub(crate) const SPEED: Dimension = [1, 0, -1];
pub(crate) const ACCELERATION: Dimension = [1, 0, -2];
pub(crate) const FLOW: Dimension = [3, 0, -1];
pub(crate) const FORCE: Dimension = [1, 1, -2];
pub(crate) const TORQUE: Dimension = [2, 1, -2];
pub(crate) const POWER: Dimension = [2, 1, -3];
pub(crate) const STRESS: Dimension = [-1, 1, -2];
pub(crate) const STIFFNESS: Dimension = [0, 1, -2];
pub(crate) const COMPLIANCE: Dimension = [0, -1, 2];
pub(crate) const DENSITY: Dimension = [-3, 1, 0];

/// How many of the units in use make a metre, a kilogram, a second.
pub(crate) struct Units([f64; 3]);

impl Units {
    /// SI itself.
    pub(crate) const SI: Units = Units([1.0, 1.0, 1.0]);
    /// Units with nothing in common, the millimetre and the tonne, and one scaled at a time.
    pub(crate) const SOME: [Units; 5] = [
        Units([7.3, 0.019, 41.0]),
        Units([1.0e3, 1.0e-3, 1.0]),
        Units([39.370_078_7, 1.0, 1.0]),
        Units([1.0, 2.204_622_6, 1.0]),
        Units([1.0, 1.0, 1.0 / 60.0]),
    ];

    /// A value in SI, in these units.
    pub(crate) fn of(&self, si: f64, dimension: Dimension) -> f64 {
        si * self.factor(&dimension)
    }

    /// Factor by which numbers of a dimension grow.
    pub(crate) fn factor(&self, dimension: &Dimension) -> f64 {
        self.0
            .iter()
            .zip(dimension)
            .map(|(unit, power)| unit.powi(*power))
            .product()
    }

    /// A length given in millimetres.
    pub(crate) fn mm(&self, value: f64) -> f64 {
        self.of(value * 1.0e-3, LENGTH)
    }
}
