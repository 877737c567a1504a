//! Scales of ISO 5455: 1, 2 and 5 times a power of ten, so that a part fits its place on the paper.

/// Size on paper over size in reality, as two whole numbers of which one is 1.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Scale {
    paper: u32,
    real: u32,
}

/// The scales from large to small; ISO 5455, table 1.
const SCALES: [Scale; 19] = [
    scale(100, 1),
    scale(50, 1),
    scale(20, 1),
    scale(10, 1),
    scale(5, 1),
    scale(2, 1),
    scale(1, 1),
    scale(1, 2),
    scale(1, 5),
    scale(1, 10),
    scale(1, 20),
    scale(1, 50),
    scale(1, 100),
    scale(1, 200),
    scale(1, 500),
    scale(1, 1000),
    scale(1, 2000),
    scale(1, 5000),
    scale(1, 10_000),
];

const fn scale(paper: u32, real: u32) -> Scale {
    Scale { paper, real }
}

impl Scale {
    /// The largest scale at which a size fits into a room, both width and height, mm; the smallest of all if none does.
    pub(crate) fn fitting(size: (f64, f64), room: (f64, f64)) -> Scale {
        let fits = |s: &Scale| size.0 * s.factor() <= room.0 && size.1 * s.factor() <= room.1;
        let smallest = SCALES[SCALES.len() - 1];
        SCALES.into_iter().find(fits).unwrap_or(smallest)
    }

    /// Size on paper over size in reality.
    pub(crate) fn factor(self) -> f64 {
        f64::from(self.paper) / f64::from(self.real)
    }

    /// As it is written: `1:2`.
    pub(crate) fn name(self) -> String {
        format!("{}:{}", self.paper, self.real)
    }
}

/// A factor of 1, 2 or 5 times a power of ten, at or below a wish; 1 at least.
pub(crate) fn exaggeration(wish: f64) -> f64 {
    let mut best = 1.0;
    let mut decade = 1.0;
    while decade <= 1.0e9 {
        for step in [1.0, 2.0, 5.0] {
            if step * decade <= wish {
                best = step * decade;
            }
        }
        decade *= 10.0;
    }
    best
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_scale_is_the_largest_standard_one_that_fits() {
        let check = |size, room, name: &str| {
            assert_eq!(Scale::fitting(size, room).name(), name);
        };
        check((200.0, 30.0), (130.0, 130.0), "1:2");
        check((130.0, 30.0), (130.0, 130.0), "1:1");
        check((30.0, 130.1), (130.0, 130.0), "1:2");
        check((65.0, 65.0), (130.0, 130.0), "2:1");
        check((0.1, 0.1), (130.0, 130.0), "100:1");
        check((1.0e9, 1.0), (130.0, 130.0), "1:10000");
    }

    #[test]
    fn what_is_chosen_fits_and_the_next_larger_does_not() {
        let mut size = 0.9;
        while size < 5.0e5 {
            let chosen = Scale::fitting((size, 1.0e-6), (130.0, 130.0));
            assert!(chosen.factor() * size <= 130.0);
            let larger = SCALES.iter().rev().find(|s| s.factor() > chosen.factor());
            assert!(larger.is_none_or(|s| s.factor() * size > 130.0), "{size}");
            size *= 1.37;
        }
    }

    #[test]
    fn exaggeration_is_round_and_never_more_than_wished() {
        let check = |wish: f64, factor: f64| {
            assert!((exaggeration(wish) - factor).abs() < 1e-9, "{wish}");
        };
        check(0.3, 1.0);
        check(199.0, 100.0);
        check(200.0, 200.0);
        check(7000.0, 5000.0);
        check(f64::NAN, 1.0);
    }
}
