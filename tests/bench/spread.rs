//! Median, 95th percentile and worst.

/// Of many figures.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Spread {
    pub(crate) median: f64,
    pub(crate) p95: f64,
    pub(crate) worst: f64,
}

/// Nearest rank; zeros of nothing.
pub(crate) fn spread(figures: impl IntoIterator<Item = f64>) -> Spread {
    let mut sorted: Vec<f64> = figures.into_iter().collect();
    sorted.sort_by(f64::total_cmp);
    let at = |percent: usize| {
        let rank = (sorted.len() * percent).div_ceil(100).max(1);
        sorted.get(rank - 1).copied().unwrap_or_default()
    };
    Spread {
        median: at(50),
        p95: at(95),
        worst: at(100),
    }
}

#[test]
fn the_nearest_rank_is_taken() {
    let of = |count: u32| spread((1..=count).rev().map(f64::from));
    let want = |median, p95, worst| Spread { median, p95, worst };
    assert_eq!(of(1), want(1.0, 1.0, 1.0));
    assert_eq!(of(4), want(2.0, 4.0, 4.0));
    assert_eq!(of(200), want(100.0, 190.0, 200.0));
}
