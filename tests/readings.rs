//! Readings at the machine: from a known machine a reading is made forwards, and what it then says must hold the truth; and
//! examples that can be reckoned by hand.
#![cfg(test)]

mod core_cases;

use core_cases::{Lot, answers, job};
use std::sync::OnceLock;
use thinwright_core::estimate::Unknown;
use thinwright_core::job::Job;
use thinwright_core::readings::{
    ChipWeight, SlotWidth, SpindleLoad, Unreadable, WebThickness, chip_weight, runout, slot_width,
    spindle_load, web_thickness,
};
use thinwright_core::strategy::Step;
use thinwright_core::{Outcome, decide};
use thinwright_mechanics::tool_beam::{Beam, compliance_at};

const DRAWN: usize = 200;

/// A sample, and every step of its strategy.
fn sample() -> &'static (Job, Vec<Step>) {
    thread_local! { static ONCE: OnceLock<&'static (Job, Vec<Step>)> = const { OnceLock::new() }; }
    ONCE.with(|once| {
        *once.get_or_init(|| {
            let job = job(&answers("mirror-back-plate", &[]));
            let Outcome::Feasible(strategy) = decide(&job) else {
                panic!("refused")
            };
            let steps = strategy.setups.into_iter().flat_map(|s| s.steps).collect();
            Box::leak(Box::new((job, steps)))
        })
    })
}

fn with_web() -> (&'static Job, &'static Step) {
    let (job, steps) = sample();
    let step = steps
        .iter()
        .find(|s| s.web.is_some() && s.loads.mean_axial.si().abs() > 0.1);
    (job, step.expect("a step on a web"))
}

#[test]
fn a_web_that_was_measured_tells_how_much_it_gave() {
    let (job, step) = with_web();
    let numbers = &job.numbers;
    let web = step.web.as_ref().unwrap();
    let give = step.loads.mean_axial.si() / web.stiffness.si();
    let mut lot = Lot(1);
    let one = numbers.reading_thickness_um * 1.0e-6;
    let mut told = 0;
    for _ in 0..DRAWN {
        let factor = 0.3 + 40.0 * lot.share();
        // Two errors of seven tenths each are together no more than the root of squares of two whole ones.
        let mut errors = [0.0; 2];
        errors.fill_with(|| 0.7 * one * (2.0 * lot.share() - 1.0));
        let edge = web.thickness.si() + errors[0];
        let centre = web.thickness.si() + factor * give + errors[1];
        let said = web_thickness(WebThickness { centre, edge }, step, numbers).unwrap();
        assert!((said.reckoned - give).abs() < 1.0e-15);
        if let Some(range) = said.factor {
            told += 1;
            assert!(range.low <= range.high);
            assert!(range.holds(factor), "{factor} {range:?}");
        } else {
            assert!((factor * give).abs() <= 3.0 * one);
        }
    }
    assert!(told > DRAWN / 3, "{told}");
}

#[test]
fn a_web_set_too_high_is_told_apart_from_one_that_gave() {
    let (job, step) = with_web();
    let web = step.web.as_ref().unwrap().thickness.si();
    let numbers = &job.numbers;
    let high = WebThickness {
        centre: web + 40.0e-6,
        edge: web + 40.0e-6,
    };
    let said = web_thickness(high, step, numbers).unwrap();
    assert!((said.height.unwrap() - 40.0e-6).abs() < 1.0e-12);
    assert_eq!(said.factor, None);
    let true_to_size = WebThickness {
        centre: web,
        edge: web,
    };
    assert_eq!(
        web_thickness(true_to_size, step, numbers).unwrap().height,
        None
    );
    for centre in [0.0, -1.0, f64::NAN, f64::INFINITY] {
        let read = WebThickness { centre, edge: web };
        assert!(matches!(
            web_thickness(read, step, numbers),
            Err(Unreadable::Impossible { .. })
        ));
    }
    let inch = WebThickness {
        centre: web * 25.4,
        edge: web,
    };
    assert!(matches!(
        web_thickness(inch, step, numbers),
        Err(Unreadable::TooFar { .. })
    ));
    let facing = sample().1.iter().find(|s| s.web.is_none()).unwrap();
    let read = WebThickness {
        centre: web,
        edge: web,
    };
    assert_eq!(
        web_thickness(read, facing, numbers),
        Err(Unreadable::NothingReckoned)
    );
}

/// The beam of a plain rod: what a hand calculation takes a cutter for.
fn rod(d: f64, length: f64, e_mod: f64) -> Beam {
    Beam {
        e_mod,
        shank_d: d,
        flute_d_eff: d,
        flute_length: 0.5 * length,
        stick_out: length,
        neck_d: 0.0,
        neck_length: 0.0,
    }
}

#[test]
fn a_slot_that_was_measured_tells_stiffness_and_force() {
    let (job, _) = sample();
    let mut lot = Lot(2);
    let kc = &job.estimates[Unknown::Kc as usize];
    let numbers = &job.numbers;
    let mut leaned = 0;
    for _ in 0..DRAWN {
        let mut cutter = lot.of(&job.rack).clone();
        if cutter.drill {
            continue;
        }
        // The cutter as a plain rod of carbide: closed form, F x^2 (3 L - x) / 6 E I.
        cutter.shank = cutter.d;
        cutter.reach = cutter.flute_length;
        cutter.material.effective_diameter_ratio = 1.0;
        let (length, e_mod) = (cutter.stick_out, cutter.material.e_mod.si());
        let i_area = core::f64::consts::PI * cutter.d.powi(4) / 64.0;
        let ap = 0.8 * cutter.flute_length;
        let arm = length - 0.5 * ap;
        let bent = |x: f64| match x <= arm {
            true => x * x * (3.0 * arm - x) / (6.0 * e_mod * i_area),
            false => arm * arm * (3.0 * x - arm) / (6.0 * e_mod * i_area),
        };
        let by_hand = bent(length) - bent(length - ap);
        let beam = rod(cutter.d, length, e_mod);
        let own = compliance_at(&beam, 0.5 * ap, 0.0) - compliance_at(&beam, 0.5 * ap, ap);
        assert!((own / by_hand - 1.0).abs() < 1.0e-9, "{own} {by_hand}");
        let force = 5.0 + 200.0 * lot.share();
        let factor = (kc.low + lot.share() * (kc.high - kc.low)) / kc.likely;
        let machine = 0.5e6 + 3.0e6 * lot.share();
        let tip = length.powi(3) / (3.0 * e_mod * i_area);
        let short = factor * force * (tip + 1.0 / machine);
        let lean = factor * force * by_hand;
        let asked = 2.0 * cutter.d;
        let error = numbers.reading_width_um * 1.0e-6;
        let mut off = || 0.7 * error * (2.0 * lot.share() - 1.0);
        let read = SlotWidth {
            top: asked - 2.0 * (short - lean) + off(),
            bottom: asked - 2.0 * short + off(),
            asked,
            ap,
        };
        let Ok(said) = slot_width(read, force, &cutter, job) else {
            continue;
        };
        if let Some(range) = said.force_factor {
            leaned += 1;
            assert!(range.holds(factor), "{factor} {range:?}");
        }
        if let Some(range) = said.chain {
            let truth = 1.0 / (tip + 1.0 / machine);
            assert!(range.holds(truth), "{truth} {range:?}");
            let alone = said.machine.unwrap();
            assert!(alone.holds(machine), "{machine} {alone:?}");
        }
    }
    assert!(leaned > 10, "{leaned}");
}

#[test]
fn a_slot_that_cannot_be_is_refused() {
    let (job, _) = sample();
    let cutter = job.rack.iter().find(|c| !c.drill).unwrap();
    let asked = 1.5 * cutter.d;
    let good = SlotWidth {
        top: asked,
        bottom: asked,
        asked,
        ap: 1.0e-3,
    };
    assert_eq!(slot_width(good, 20.0, cutter, job).unwrap().chain, None);
    let narrow = SlotWidth {
        bottom: 0.9 * cutter.d,
        ..good
    };
    let impossible = |read| {
        matches!(
            slot_width(read, 20.0, cutter, job),
            Err(Unreadable::Impossible { .. })
        )
    };
    assert!(impossible(narrow));
    assert!(impossible(SlotWidth {
        top: f64::NAN,
        ..good
    }));
    assert!(impossible(SlotWidth { ap: 0.0, ..good }));
    let bell = SlotWidth {
        bottom: asked + 0.2e-3,
        ..good
    };
    assert!(matches!(
        slot_width(bell, 20.0, cutter, job),
        Err(Unreadable::Above { .. })
    ));
    assert_eq!(
        slot_width(good, 0.0, cutter, job),
        Err(Unreadable::NothingReckoned)
    );
}

#[test]
fn watts_tell_the_cutting_force() {
    let (job, steps) = sample();
    let numbers = &job.numbers;
    let mc = job.material.mc;
    let step = steps
        .iter()
        .max_by(|a, b| a.loads.power.si().total_cmp(&b.loads.power.si()))
        .unwrap();
    let mut lot = Lot(3);
    let mut told = 0;
    for _ in 0..DRAWN {
        let factor = 0.5 + 1.5 * lot.share();
        let efficiency = 0.6 + 0.2 * lot.share();
        let feed_share: f64 = 0.5 + lot.share();
        let idle = 20.0 + 200.0 * lot.share();
        let fed = libm::pow(feed_share, 1.0 - mc);
        let cutting = idle + factor * step.loads.power.si() * fed / efficiency;
        let share = numbers.reading_power_share;
        let read = SpindleLoad {
            cutting: cutting * (1.0 + share * (lot.share() - 0.5)),
            idle: idle * (1.0 + share * (lot.share() - 0.5)),
            feed_share,
        };
        match spindle_load(read, step, mc, numbers) {
            Ok(said) => {
                told += 1;
                assert!(said.holds(factor), "{factor} {said:?}");
            }
            Err(Unreadable::BelowError { value, error }) => assert!(value <= error),
            Err(error) => panic!("{error:?}"),
        }
    }
    assert!(told > DRAWN / 4, "{told}");
}

#[test]
fn watts_by_hand() {
    // Of 300 W above idle, 180 to 240 W cut (60 to 80 %). The meter's 5 % of 500 and of 200 W are 27 W together.
    let (job, steps) = sample();
    let mut step = steps[0].clone();
    step.loads.power = thinwright_quantity::Power::from_si(210.0);
    let read = SpindleLoad {
        cutting: 500.0,
        idle: 200.0,
        feed_share: 1.0,
    };
    let said = spindle_load(read, &step, 0.2, &job.numbers).unwrap();
    let error = 0.05 * libm::hypot(500.0, 200.0);
    assert!((said.likely - 1.0).abs() < 1.0e-12);
    assert!((said.low - 0.6 * (300.0 - error) / 210.0).abs() < 1.0e-12);
    assert!((said.high - 0.8 * (300.0 + error) / 210.0).abs() < 1.0e-12);
    let refused = |cutting, idle| {
        let read = SpindleLoad {
            cutting,
            idle,
            feed_share: 1.0,
        };
        spindle_load(read, &step, 0.2, &job.numbers).unwrap_err()
    };
    let above = Unreadable::Above {
        value: 300.0,
        whole: 200.0,
    };
    assert_eq!(refused(200.0, 300.0), above);
    assert!(matches!(
        refused(205.0, 200.0),
        Unreadable::BelowError { .. }
    ));
    assert!(matches!(refused(9000.0, 10.0), Unreadable::TooFar { .. }));
    assert!(matches!(
        refused(f64::NAN, 0.0),
        Unreadable::Impossible { .. }
    ));
    assert!(matches!(
        refused(100.0, -1.0),
        Unreadable::Impossible { .. }
    ));
}

#[test]
fn chips_of_a_minute_by_hand() {
    // 2.7 g of aluminium in a minute are 1 cm3/min; brass of 8.5 and steel of 7.85 g/cm3 alike.
    let (job, _) = sample();
    let per_minute = 1.0e-6 / 60.0;
    for density in [2.7, 8.5, 7.85] {
        let read = ChipWeight {
            weight: density * 1.0e-3,
            time: 60.0,
            density: density * 1.0e3,
            reckoned: 2.0 * per_minute,
        };
        let said = chip_weight(read, &job.numbers).unwrap();
        assert!((said.rate.likely / per_minute - 1.0).abs() < 1.0e-12);
        assert!((said.share.likely - 0.5).abs() < 1.0e-12);
        assert!(
            (said.share.low - 0.45).abs() < 1.0e-12 && (said.share.high - 0.55).abs() < 1.0e-12
        );
        // The scale may be a tenth off.
        let heavier = ChipWeight {
            weight: 1.1 * read.weight,
            ..read
        };
        assert!(chip_weight(heavier, &job.numbers).unwrap().share.low < 0.5);
        for wrong in [
            ChipWeight { time: 0.0, ..read },
            ChipWeight {
                weight: f64::NAN,
                ..read
            },
            ChipWeight {
                weight: -1.0,
                ..read
            },
        ] {
            let error = chip_weight(wrong, &job.numbers).unwrap_err();
            assert!(matches!(error, Unreadable::Impossible { .. }));
        }
    }
}

#[test]
fn runout_by_hand() {
    let (job, _) = sample();
    let numbers = &job.numbers;
    let um = 1.0e-6;
    // Two teeth, 20 um a tooth, 5 um of swing: the one takes 25, the other 15.
    let said = runout(5.0 * um, 20.0 * um, 2, numbers).unwrap();
    assert!((said.heaviest - 1.25).abs() < 1.0e-12 && !said.idle_tooth);
    assert!((said.share.likely - 0.25).abs() < 1.0e-12);
    // As much swing as feed per tooth: one tooth does it all.
    let said = runout(20.0 * um, 20.0 * um, 2, numbers).unwrap();
    assert!((said.heaviest - 2.0).abs() < 1.0e-12 && said.idle_tooth);
    let more = runout(60.0 * um, 20.0 * um, 2, numbers).unwrap();
    assert!((more.heaviest - 2.0).abs() < 1.0e-12);
    // One tooth does it all anyhow, and evenly.
    let single = runout(60.0 * um, 20.0 * um, 1, numbers).unwrap();
    assert!((single.heaviest - 1.0).abs() < 1.0e-12 && !single.idle_tooth);
    // Four teeth on an offset circle, tooth by tooth: radii e cos(phase + i 90 deg), e half the swing.
    let mut lot = Lot(4);
    for _ in 0..DRAWN {
        let (z, swing) = (2 + lot.below(5), 10.0 * um * lot.share());
        let fz = 30.0 * um;
        let said = runout(swing, fz, u32::try_from(z).unwrap(), numbers).unwrap();
        let mut most: f64 = 0.0;
        for phase in 0..3600 {
            let angle = |i: usize| {
                #[allow(clippy::cast_precision_loss, reason = "a few teeth")]
                let i = i as f64;
                f64::from(phase) * core::f64::consts::TAU / 3600.0
                    + core::f64::consts::TAU * i / f64::from(u32::try_from(z).unwrap())
            };
            let chip = fz + 0.5 * swing * (libm::cos(angle(1)) - libm::cos(angle(0)));
            most = most.max(chip / fz);
        }
        assert!(
            (said.heaviest - most).abs() < 1.0e-4,
            "{} {most}",
            said.heaviest
        );
        assert!(said.runout.holds(swing));
    }
    assert!(matches!(
        runout(-1.0, 20.0 * um, 2, numbers),
        Err(Unreadable::Impossible { .. })
    ));
    assert_eq!(
        runout(1.0e-6, 0.0, 2, numbers),
        Err(Unreadable::NothingReckoned)
    );
}
