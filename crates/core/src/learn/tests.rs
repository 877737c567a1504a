//! Tests of the rule: what is true of it whatever was seen, and how often it is right on machines drawn by lot.

use super::seen::{Edge, Force, Give, Seen, Song, logistic};
use super::world::quantile;
use super::*;
use crate::estimate::{Estimate, Estimates, Known, UNKNOWNS};
use thinwright_catalog::{Catalog, Numbers};

mod untold;

/// Splitmix64: numbers that look drawn by lot and are the same in every run.
struct Lot(u64);

impl Lot {
    fn share(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^= z >> 31;
        f64::from(u32::try_from(z >> 32).unwrap()) / f64::from(u32::MAX)
    }

    /// Of a bell of spread 1: the sum of twelve, less six.
    fn bell(&mut self) -> f64 {
        (0..12).map(|_| self.share()).sum::<f64>() - 6.0
    }

    fn between(&mut self, low: f64, high: f64) -> f64 {
        low * libm::pow(high / low, self.share())
    }
}

fn numbers() -> Numbers {
    Catalog::builtin().numbers
}

/// A router in aluminium.
fn ranges() -> Estimates {
    let mut all: Estimates = [Estimate::exact(1.0, Known::Estimated); UNKNOWNS.len()];
    for (quantity, range) in Quantity::ALL.iter().zip([
        Estimate::range(0.5e6, 1.0e6, 3.0e6),
        Estimate::range(500.0e6, 700.0e6, 1000.0e6),
        Estimate::range(0.01, 0.025, 0.05),
    ]) {
        all[quantity.unknown() as usize] = range;
    }
    all
}

/// A step of a cutter that is five times as stiff as the machine, judged at likely values.
fn nothing_seen() -> Seen {
    Seen {
        at: World::likely(&ranges()),
        tip: 0.2e-6,
        song: None,
        give: None,
        edge: None,
        force: None,
    }
}

/// The same, with what it did at this step-down; its limit is 1 mm.
fn heard(sang: bool, depth_mm: f64) -> Seen {
    let song = Song {
        sang,
        depth: depth_mm * 1.0e-3,
        limit: 1.0e-3,
        damping: 0.025,
        other: 0.0,
        told: true,
    };
    Seen {
        song: Some(song),
        ..nothing_seen()
    }
}

fn gave(by_um: f64) -> Seen {
    let give = Give {
        give: by_um * 1.0e-6,
        force: 20.0,
        share: 0.1,
    };
    Seen {
        give: Some(give),
        ..nothing_seen()
    }
}

fn broke(broke: bool, share: f64) -> Seen {
    let edge = Edge {
        broke,
        stress: share * 2.0e9,
        rupture: 2.0e9,
    };
    Seen {
        edge: Some(edge),
        ..nothing_seen()
    }
}

fn forced(factor: f64) -> Seen {
    let force = Force { factor, share: 0.1 };
    Seen {
        force: Some(force),
        ..nothing_seen()
    }
}

fn learn(seen: &[Seen]) -> Taught {
    teach(&ranges(), &numbers(), seen)
}

/// How much of the width of a range, by ratio, is left.
fn left(taught: &Taught, quantity: Quantity) -> f64 {
    let (before, after) = taught.of(quantity);
    libm::log(after.1 / after.0) / libm::log(before.1 / before.0)
}

#[test]
fn nothing_seen_teaches_nothing() {
    for seen in [&[][..], &[nothing_seen()]] {
        let taught = learn(seen);
        for quantity in Quantity::ALL {
            assert!(
                (left(&taught, quantity) - 1.0).abs() < 1.0e-9,
                "{quantity:?}"
            );
        }
        assert!(taught.at_odds.is_empty());
    }
}

#[test]
fn what_held_far_below_the_limit_teaches_next_to_nothing() {
    let far = learn(&[heard(false, 0.1), broke(false, 0.1)]);
    for quantity in Quantity::ALL {
        assert!(left(&far, quantity) > 0.995, "{quantity:?} {far:?}");
    }
    let near = learn(&[heard(false, 2.5), heard(false, 2.5)]);
    assert!(left(&near, Quantity::Damping) < 0.9, "{near:?}");
}

#[test]
fn twice_teaches_more_than_once() {
    let once = learn(&[heard(false, 2.0)]);
    let twice = learn(&[heard(false, 2.0), heard(false, 2.0)]);
    for quantity in Quantity::ALL {
        assert!(left(&twice, quantity) <= left(&once, quantity));
    }
    assert!(left(&twice, Quantity::Damping) < left(&once, Quantity::Damping) - 0.02);
    assert!(left(&twice, Quantity::Stiffness) < left(&once, Quantity::Stiffness) - 0.02);
}

#[test]
fn it_teaches_towards_the_right_side() {
    let (low, high) = (0, 1);
    let end = |seen: &[Seen], quantity, end| {
        let (before, after) = learn(seen).of(quantity);
        let pair = |e: (f64, f64)| [e.0, e.1][end];
        pair(after) / pair(before)
    };
    // What held deeper is stiffer, damps more, cuts easier; what sang shallower the other way.
    let deep = [heard(false, 2.5); 4];
    assert!(end(&deep, Quantity::Stiffness, low) > 1.05);
    assert!(end(&deep, Quantity::Damping, low) > 1.05);
    assert!(end(&deep, Quantity::Kc, high) < 0.999);
    let shallow = [heard(true, 0.5); 2];
    assert!(end(&shallow, Quantity::Stiffness, high) < 0.95);
    assert!(end(&shallow, Quantity::Damping, high) < 0.95);
    // Likely: 20 N on 0.2 and 1 um/N make 24 um.
    assert!(end(&[gave(11.0), gave(11.0)], Quantity::Stiffness, low) > 1.3);
    assert!(end(&[gave(50.0), gave(50.0)], Quantity::Stiffness, high) < 0.6);
    assert!(end(&[forced(0.8)], Quantity::Kc, high) < 0.95);
    assert!(end(&[forced(1.3)], Quantity::Kc, low) > 1.05);
    assert!(end(&[broke(true, 0.7); 2], Quantity::Kc, low) > 1.0);
}

#[test]
fn the_order_does_not_matter_to_the_last_bit() {
    let all = [
        heard(false, 1.2),
        heard(true, 2.0),
        gave(30.0),
        forced(1.1),
        broke(false, 0.6),
    ];
    let first = learn(&all);
    assert!(first.at_odds.is_empty());
    let mut lot = Lot(5);
    let mut order = all;
    for _ in 0..20 {
        // By lot: whatever sorting by numbers of no meaning gives.
        let mut drawn: Vec<(u64, Seen)> = order.map(|s| (lot.share().to_bits(), s)).to_vec();
        drawn.sort_by_key(|d| d.0);
        for (place, (_, seen)) in order.iter_mut().zip(drawn) {
            *place = seen;
        }
        assert_eq!(learn(&order).after, first.after);
    }
    // What is taken back is as if it had never been.
    assert_eq!(learn(&all[..4]).after, learn(&all[..4]).after);
    assert_ne!(learn(&all[..4]).after, first.after);
}

#[test]
fn it_never_widens() {
    let mut lot = Lot(11);
    for _ in 0..60 {
        let seen: Vec<Seen> = (0..5).map(|_| drawn(&mut lot, None)).collect();
        let taught = learn(&seen);
        for (before, after) in taught.before.iter().zip(taught.after) {
            assert!(after.0 >= before.low && after.1 <= before.high * (1.0 + 1.0e-12));
            assert!(after.0 <= after.1);
        }
    }
}

#[test]
fn what_cannot_both_be_is_told_and_teaches_nothing() {
    // Deep it held, shallow it sang.
    let odd = learn(&[heard(false, 2.5), heard(false, 2.5), heard(true, 0.25)]);
    assert_eq!(odd.at_odds, [2], "{odd:?}");
    for quantity in Quantity::ALL {
        assert!((left(&odd, quantity) - 1.0).abs() < 1.0e-12);
    }
    // No machine of this class gives so much, or so little.
    assert_eq!(learn(&[gave(400.0)]).at_odds, [0]);
    assert_eq!(learn(&[gave(2.0)]).at_odds, [0]);
    // One that sang and one that held at the same depth are no contradiction: that is what a limit is like.
    assert!(
        learn(&[heard(false, 1.0), heard(true, 1.0)])
            .at_odds
            .is_empty()
    );
}

#[test]
fn known_for_sure_stays_as_it_is() {
    let mut sure = ranges();
    sure[Quantity::Stiffness.unknown() as usize] = Estimate::exact(1.0e6, Known::Measured);
    let taught = teach(
        &sure,
        &numbers(),
        &[gave(30.0), heard(false, 2.5), heard(false, 2.5)],
    );
    assert_eq!(taught.of(Quantity::Stiffness).1, (1.0e6, 1.0e6));
    assert!(left(&taught, Quantity::Damping) < 1.0);
}

/// Something seen by lot, of a machine if one is given: what it then does is drawn as the rule says.
fn drawn(lot: &mut Lot, machine: Option<&World>) -> Seen {
    let rules = numbers();
    let pick = lot.share();
    let slip = lot.share() < rules.learn_slip;
    let mut seen = nothing_seen();
    let Some(machine) = machine else {
        return match pick {
            p if p < 0.5 => heard(lot.share() < 0.5, lot.between(0.2, 4.0)),
            p if p < 0.8 => gave(lot.between(5.0, 100.0)),
            _ => forced(lot.between(0.5, 1.6)),
        };
    };
    let force = machine.kc / seen.at.kc;
    let chain = |k: f64| seen.tip + 1.0 / k;
    if pick < 0.6 {
        let depth = lot.between(0.3, 4.0);
        let damped = |z: f64| z * (1.0 + z);
        let limit = damped(machine.damping) / damped(seen.at.damping) * chain(seen.at.stiffness)
            / chain(machine.stiffness)
            / force;
        let sings = lot.share() < logistic(depth / limit, rules.learn_song_spread);
        return heard(sings != slip, depth);
    }
    let off = libm::exp(lot.bell() * libm::hypot(rules.learn_give_spread, 0.1));
    if pick < 0.8 && !slip {
        return gave(20.0 * force * chain(machine.stiffness) * 1.0e6 * off);
    }
    seen = forced(force * libm::exp(lot.bell() * libm::hypot(rules.learn_force_spread, 0.1)));
    seen
}

/// On 200 machines drawn from their ranges, after six steps each: how often the truth lies in what was learned, how often
/// what is true is refused, and how much narrower the ranges have become.
#[test]
fn it_is_right_as_often_as_it_says() {
    const MACHINES: u32 = 200;
    let mut lot = Lot(2026);
    let ranges = ranges();
    let (mut right, mut refused) = ([0_u32; 3], 0_u32);
    let mut width = [0.0; 3];
    for _ in 0..MACHINES {
        let truth = Quantity::ALL.map(|q| quantile(&ranges[q.unknown() as usize], lot.share()));
        let machine = World::of(truth);
        let seen: Vec<Seen> = (0..6).map(|_| drawn(&mut lot, Some(&machine))).collect();
        let taught = learn(&seen);
        refused += u32::from(!taught.at_odds.is_empty());
        for (i, quantity) in Quantity::ALL.into_iter().enumerate() {
            let (_, (low, high)) = taught.of(quantity);
            right[i] += u32::from(low <= truth[i] && truth[i] <= high);
            width[i] += left(&taught, quantity) / f64::from(MACHINES);
        }
    }
    let stated = f64::from(MACHINES) * (1.0 - numbers().learn_tail);
    for (i, quantity) in Quantity::ALL.iter().enumerate() {
        assert!(f64::from(right[i]) >= stated, "{quantity:?} {right:?}");
    }
    // Refusals of what is true are rare, and something is learned.
    assert!(
        f64::from(refused) < 0.25 * f64::from(MACHINES),
        "{refused} refused"
    );
    assert!(
        width[0] < 0.9 && width[1] < 0.9 && width[2] < 0.95,
        "{width:?}"
    );
}

#[test]
fn numbers_come_back_and_nonsense_is_left_out() {
    let whole = Seen {
        song: heard(true, 1.0).song,
        give: gave(12.0).give,
        edge: broke(true, 0.4).edge,
        force: forced(1.2).force,
        ..nothing_seen()
    };
    assert_eq!(Seen::from_numbers(&whole.numbers()), Some(whole));
    let bare = nothing_seen();
    assert_eq!(Seen::from_numbers(&bare.numbers()), Some(bare));
    assert!(!bare.says_something() && whole.says_something());
    assert_eq!(Seen::from_numbers(&[]), None);
    for wrong in [f64::NAN, f64::INFINITY, -1.0, 0.0] {
        let mut numbers = whole.numbers();
        for entry in &mut numbers {
            if entry.0 == "song-limit" || entry.0 == "give" {
                entry.1 = wrong;
            }
        }
        let read = Seen::from_numbers(&numbers).unwrap();
        assert_eq!((read.song, read.give), (None, None), "{wrong}");
        assert_eq!(read.edge, whole.edge);
        let mut numbers = whole.numbers();
        numbers[1].1 = wrong;
        assert_eq!(Seen::from_numbers(&numbers), None, "{wrong}");
    }
}

#[test]
fn likelihoods_are_chances() {
    let mut lot = Lot(3);
    let rules = numbers();
    for _ in 0..2000 {
        let world = World::of([
            lot.between(1.0e3, 1.0e9),
            lot.between(1.0e6, 1.0e10),
            lot.between(1.0e-4, 0.5),
        ]);
        let seen = drawn(&mut lot, None);
        let p = seen.likelihood(&world, &rules);
        assert!(p > 0.0 && p <= 1.0, "{seen:?} {world:?} {p}");
        // Sang and held are all that there is.
        if let Some(song) = seen.song {
            let other = Seen {
                song: Some(Song {
                    sang: !song.sang,
                    ..song
                }),
                ..seen
            };
            assert!((p + other.likelihood(&world, &rules) - 1.0).abs() < 1.0e-12);
        }
    }
}
