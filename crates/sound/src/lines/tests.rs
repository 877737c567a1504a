use super::*;

fn origin(frequency: f64, n: f64, z: u32) -> Origin {
    lines(frequency, n, z, 0.01).expect("numbers").origin
}

#[test]
fn what_the_cut_repeats_is_on_its_lines() {
    // 6000 1/min, three teeth: lines of teeth at 300, 600 ... , of the speed at 100, 200 ...
    assert_eq!(origin(300.0, 100.0, 3), Origin::Teeth);
    assert_eq!(origin(1495.0, 100.0, 3), Origin::Teeth);
    assert_eq!(origin(402.0, 100.0, 3), Origin::Revolution);
    assert_eq!(origin(750.0, 100.0, 3), Origin::Off);
    assert_eq!(origin(1950.0, 100.0, 3), Origin::Off);
}

#[test]
fn dense_lines_say_nothing() {
    // The room for error of 1 % fills half of the distance at 25 times the rate.
    assert_eq!(origin(2449.0, 100.0, 3), Origin::Off);
    assert_eq!(origin(2551.0, 100.0, 3), Origin::NotTeeth);
    assert_eq!(origin(2701.0, 100.0, 3), Origin::Teeth);
    assert_eq!(origin(7501.0, 100.0, 3), Origin::Unclear);
    assert_eq!(origin(1234.0, 10.0, 1), Origin::Unclear);
}

#[test]
fn the_nearest_lines_are_told() {
    let found = lines(740.0, 100.0, 4, 0.01).expect("numbers");
    assert!((found.revolution.multiple - 7.0).abs() < 1e-12);
    assert!((found.revolution.off - 40.0 / 740.0).abs() < 1e-12);
    assert!((found.teeth.multiple - 2.0).abs() < 1e-12);
    assert!((found.teeth.frequency - 800.0).abs() < 1e-12);
    assert!((found.teeth.filled - 2.0 * 7.4 / 400.0).abs() < 1e-12);
}

#[test]
fn a_tone_below_the_first_line_is_measured_from_it() {
    let found = lines(50.0, 100.0, 2, 0.01).expect("numbers");
    assert!((found.teeth.multiple - 1.0).abs() < 1e-12);
    assert_eq!(found.origin, Origin::Off);
}

#[test]
fn the_room_for_error_is_a_share() {
    // 1 % of the speed moves the tenth line by 1 % of its frequency.
    for speed in [99.1, 100.9] {
        let found = lines(3000.0, speed, 3, 0.01).expect("numbers");
        assert_eq!(found.origin, Origin::Teeth, "{found:?}");
    }
    assert_eq!(
        lines(3000.0, 98.5, 3, 0.01).expect("numbers").origin,
        Origin::NotTeeth
    );
}

#[test]
fn no_number_no_line() {
    for bad in [0.0, -1.0, f64::NAN, f64::INFINITY] {
        assert_eq!(lines(bad, 100.0, 3, 0.01), None);
        assert_eq!(lines(500.0, bad, 3, 0.01), None);
        assert_eq!(lines(500.0, 100.0, 3, bad), None);
    }
    assert_eq!(lines(500.0, 100.0, 0, 0.01), None);
}
