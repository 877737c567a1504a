//! An estimate as a range, and how a row is known.

/// An estimated value: its likely value between a low and a high end.
///
/// Units: those of `T`. Valid for: `low <= likely <= high`, which reading a table makes sure of.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Range<T> {
    /// The lower end.
    pub low: T,
    /// The likely value.
    pub likely: T,
    /// The upper end.
    pub high: T,
}

impl<T> Range<T> {
    /// The same range in another type, end by end. The function must be increasing.
    pub fn map<U>(self, convert: impl Fn(T) -> U) -> Range<U> {
        Range {
            low: convert(self.low),
            likely: convert(self.likely),
            high: convert(self.high),
        }
    }
}

/// How the numbers of a row are known.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Origin {
    /// Seen in the source that is named.
    Read,
    /// Worked out from what the source gives.
    Derived,
    /// Remembered from the source that is named; check before relying on it.
    Memory,
    /// What shops do; no published source.
    CommonPractice,
}

/// The words for an origin in the files.
pub(crate) const ORIGINS: &[(&str, Origin)] = &[
    ("read", Origin::Read),
    ("derived", Origin::Derived),
    ("memory", Origin::Memory),
    ("common practice", Origin::CommonPractice),
];
