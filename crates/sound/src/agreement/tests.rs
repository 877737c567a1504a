use super::*;

fn tap(frequency: f64, damping: Option<f64>) -> Tap {
    Tap {
        at: 0.0,
        frequency,
        damping,
        above: 20.0,
        clipped: false,
    }
}

fn taps(frequencies: &[f64]) -> Vec<Tap> {
    frequencies.iter().map(|f| tap(*f, None)).collect()
}

#[test]
fn the_largest_group_is_taken_whatever_its_order() {
    let heard = taps(&[1010.0, 400.0, 1000.0, 2000.0, 1005.0, 2001.0, 995.0]);
    let agreed = agreement(&heard, 0.02).expect("four agree");
    assert_eq!(agreed.count, 4);
    assert!((agreed.frequency - 1002.5).abs() < 1e-9);
    assert!((agreed.spread - (1010.0 / 995.0 - 1.0)).abs() < 1e-12);
}

#[test]
fn the_share_is_of_the_whole_group() {
    // Each neighbour is within 2 %, the ends are not.
    let agreed = agreement(&taps(&[1000.0, 1015.0, 1030.0]), 0.02).expect("two agree");
    assert_eq!(agreed.count, 2);
    let agreed = agreement(&taps(&[1000.0, 1010.0, 1019.0]), 0.02).expect("three agree");
    assert_eq!(agreed.count, 3);
    assert!((agreed.frequency - 1010.0).abs() < 1e-9);
}

#[test]
fn among_equals_the_closest_is_taken() {
    let agreed = agreement(&taps(&[500.0, 508.0, 900.0, 901.0]), 0.02).expect("two agree");
    assert!((agreed.frequency - 900.5).abs() < 1e-9);
}

#[test]
fn one_alone_agrees_with_nobody() {
    for alone in [vec![], taps(&[700.0]), taps(&[700.0, 800.0, 1000.0])] {
        assert_eq!(agreement(&alone, 0.02), None);
    }
    for within in [-1.0, f64::NEG_INFINITY, f64::NAN] {
        assert_eq!(agreement(&taps(&[700.0, 700.0]), within), None);
    }
    assert_eq!(agreement(&taps(&[f64::NAN, -1.0, 0.0]), 0.02), None);
    let same = agreement(&taps(&[700.0, 700.0]), 0.0).expect("two agree");
    assert_eq!(same.count, 2);
}

#[test]
fn damping_is_told_where_most_have_one() {
    let with = |dampings: &[Option<f64>]| {
        let heard: Vec<Tap> = dampings.iter().map(|d| tap(800.0, *d)).collect();
        agreement(&heard, 0.02).expect("all agree").damping
    };
    assert_eq!(with(&[Some(0.02), Some(0.01), Some(0.03)]), Some(0.02));
    assert_eq!(with(&[Some(0.02), None, Some(0.04)]), Some(0.03));
    assert_eq!(with(&[Some(0.02), None]), None);
    assert_eq!(with(&[None, None]), None);
}
