//! Numbers that look drawn by lot and are the same on every machine.

/// A row of numbers that its seed alone decides: splitmix64.
///
/// Source: G. L. Steele, D. Lea, C. H. Flood, "Fast splittable pseudorandom number generators", OOPSLA 2014.
#[derive(Clone, Debug)]
pub struct Lot(u64);

impl Lot {
    /// The row of a seed.
    pub fn new(seed: u64) -> Lot {
        Lot(seed)
    }

    /// The next number, any of 2^64.
    pub fn draw(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    /// From `low` to `high`, both included; `low` where there is nothing between them.
    pub fn from_to(&mut self, low: i64, high: i64) -> i64 {
        let span = u64::try_from(high.saturating_sub(low)).unwrap_or(0);
        let above = self.draw() % span.saturating_add(1).max(1);
        low + i64::try_from(above).unwrap_or(0)
    }

    /// Happens so often in a hundred.
    pub fn chance(&mut self, percent: i64) -> bool {
        self.from_to(1, 100) <= percent
    }

    /// One of these.
    ///
    /// # Panics
    /// If there is none.
    pub fn of<'a, T>(&mut self, all: &'a [T]) -> &'a T {
        let last = i64::try_from(all.len()).unwrap_or(i64::MAX) - 1;
        &all[usize::try_from(self.from_to(0, last)).unwrap_or(0)]
    }

    /// One of these, each as often as its weight says.
    ///
    /// # Panics
    /// If there is none.
    pub fn weighted<T: Copy>(&mut self, all: &[(i64, T)]) -> T {
        let sum: i64 = all.iter().map(|(weight, _)| weight).sum();
        let mut left = self.from_to(1, sum);
        for (weight, one) in all {
            left -= weight;
            if left <= 0 {
                return *one;
            }
        }
        all[all.len() - 1].1
    }
}
