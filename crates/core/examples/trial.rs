use std::time::Instant;
use thinwright_core::field::Field as F;
use thinwright_core::*;
fn main() {
    let cat = thinwright_catalog::Catalog::builtin();
    let which = std::env::args().nth(1).unwrap_or("a".into());
    let mut a = Answers::new(Default::default());
    let mut put = |f: F, t: &str| a.set(f, t, Known::Estimated);
    match which.as_str() {
        "a" | "a3" | "a5" => {
            for (f, t) in [
                (F::Shape, "round"),
                (F::Diameter, "160"),
                (F::Thickness, "19"),
                (F::DepthA, "9"),
                (
                    F::Web,
                    if which == "a3" {
                        "3"
                    } else if which == "a5" {
                        "5"
                    } else {
                        "4"
                    },
                ),
                (F::RecessDiameterA, "140"),
                (F::Boss, "36"),
                (F::Bore, "10"),
                (F::SlotPattern, "polar"),
                (F::SlotGroups, "6"),
                (F::SlotsPerGroup, "3"),
                (F::SlotWidth, "4"),
                (F::SlotLength, "30"),
                (F::SlotPitch, "8"),
                (F::SlotInner, "29"),
                (F::Material, "al_6082_t6"),
                (F::Machine, "screw_router"),
                (F::HoldFirst, "frame_screws"),
                (F::HoldSecond, "frame_screws"),
                (F::Backing, "plug"),
                (F::BossBolted, "yes"),
                (F::Chips, "air"),
            ] {
                put(f, t);
            }
        }
        "b" => {
            for (f, t) in [
                (F::Shape, "rectangular"),
                (F::Length, "220"),
                (F::Width, "140"),
                (F::Thickness, "12"),
                (F::DepthA, "8.5"),
                (F::RecessLengthA, "184"),
                (F::RecessWidthA, "104"),
                (F::RecessCornerA, "6"),
                (F::SlotPattern, "parallel"),
                (F::SlotsPerGroup, "14"),
                (F::SlotWidth, "4"),
                (F::SlotLength, "80"),
                (F::SlotPitch, "10"),
                (F::BlankFace, "0"),
                (F::Material, "pom_c"),
                (F::Machine, "belt_router"),
                (F::HoldFirst, "frame_screws"),
                (F::Chips, "air"),
            ] {
                put(f, t);
            }
        }
        "c" => {
            for (f, t) in [
                (F::Shape, "rectangular"),
                (F::Length, "120"),
                (F::Width, "80"),
                (F::Thickness, "16"),
                (F::DepthA, "6"),
                (F::DepthB, "5"),
                (F::RecessLengthA, "96"),
                (F::RecessWidthA, "56"),
                (F::RecessCornerA, "8"),
                (F::SlotPattern, "parallel"),
                (F::SlotsPerGroup, "6"),
                (F::SlotWidth, "5"),
                (F::SlotLength, "40"),
                (F::SlotPitch, "12"),
                (F::BlankFace, "1"),
                (F::BlankAround, "2.5"),
                (F::Material, "steel_s235"),
                (F::Machine, "benchtop_mill"),
                (F::HoldFirst, "vise"),
                (F::Chips, "mist"),
            ] {
                put(f, t);
            }
        }
        _ => {
            for (f, t) in [
                (F::Shape, "round"),
                (F::Diameter, "120"),
                (F::Thickness, "40"),
                (F::DepthA, "22"),
                (F::DepthB, "14"),
                (F::RecessDiameterA, "100"),
                (F::SlotPattern, "polar"),
                (F::SlotGroups, "6"),
                (F::SlotsPerGroup, "1"),
                (F::SlotWidth, "2"),
                (F::SlotLength, "24"),
                (F::SlotInner, "24"),
                (F::Material, "al_6082_t6"),
                (F::Machine, "screw_router"),
                (F::HoldFirst, "frame_screws"),
                (F::Chips, "air"),
            ] {
                put(f, t);
            }
        }
    }
    let rack: &[[&str; 8]] = match which.as_str() {
        "a" | "a3" | "a5" => &[
            ["end-mill", "6", "1", "22", "22", "6", "26", "0"],
            ["end-mill", "3", "1", "12", "12", "3", "14", "0"],
        ],
        "b" => &[
            ["end-mill", "6", "1", "22", "22", "6", "26", "0"],
            ["end-mill", "1/8 in", "1", "12", "12", "1/8 in", "16", "0"],
        ],
        "c" => &[
            ["end-mill", "8", "4", "19", "19", "8", "28", "0.5"],
            ["end-mill", "4", "3", "11", "11", "6", "20", "0"],
            ["drill", "4.5", "2", "40", "40", "4.5", "45", "0"],
        ],
        _ => &[
            ["end-mill", "2", "2", "6", "7", "6", "38", "0"],
            ["end-mill", "6", "1", "25", "38", "6", "42", "0"],
        ],
    };
    for (i, r) in rack.iter().enumerate() {
        for (f, t) in [
            F::CutterKind,
            F::CutterDiameter,
            F::CutterFlutes,
            F::CutterFluteLength,
            F::CutterReach,
            F::CutterShank,
            F::CutterStickOut,
            F::CutterCorner,
        ]
        .iter()
        .zip(r)
        {
            a.set(FieldId::in_row(*f, i as u8), *t, Known::DataSheet);
        }
    }
    let t = Instant::now();
    let job = match read(&a, &cat) {
        Ok(j) => j,
        Err(p) => {
            for p in p {
                println!("{} {:?}", p.field.key(), p.kind);
            }
            return;
        }
    };
    println!("read {:?}", t.elapsed());
    let t = Instant::now();
    let out = advise(&job);
    println!("advise {:?}", t.elapsed());
    match out {
        Outcome::Feasible(s) => {
            println!(
                "time {:.0} min changes {}",
                s.time.to_minutes(),
                s.cutter_changes
            );
            for o in s.orders.iter().take(8) {
                println!(
                    "  {:?} {:?} back {} bolt {} {:?}",
                    o.order, o.first, o.backing, o.boss_bolted, o.verdict
                );
            }
            for su in &s.setups {
                println!(
                    "SETUP {:?} {} {} bolt {} stock {:.2}",
                    su.face_up,
                    su.hold,
                    su.backing,
                    su.boss_bolted,
                    su.stock.to_mm()
                );
                for st in &su.steps {
                    println!(
                        "  {} {:?} {:?} cutter {} n {:.0} vf {:.0} fz {:.3} ae {:.2} ap {:.2} x{} z {:.2}->{:.2} t {:.1} min Fpk {:.0} Fm {:.0} Fz {:.1} P {:.0} {:?}",
                        st.number,
                        st.task,
                        st.method,
                        st.cutter,
                        st.n.to_rpm(),
                        st.vf.to_mm_per_min(),
                        st.fz.to_mm(),
                        st.ae.to_mm(),
                        st.ap.to_mm(),
                        st.levels,
                        st.z.0.to_mm(),
                        st.z.1.to_mm(),
                        st.time.to_minutes(),
                        st.loads.peak_lateral.to_n(),
                        st.loads.mean_lateral.to_n(),
                        st.loads.mean_axial.to_n(),
                        st.loads.power.to_w(),
                        st.entry
                    );
                    for f in st.findings.iter().take(4) {
                        println!(
                            "        {:?} {:.2} (likely {:.2}) {:?} {:?}",
                            f.limit,
                            f.utilisation(),
                            f.at_likely.utilisation(),
                            f.set_by,
                            f.remedies.first()
                        );
                    }
                    if let Some(w) = &st.web {
                        println!(
                            "        web t {:.2} k {:.2} bare {:.2} chain {:.2} f {:.0} pass {:.0}",
                            w.thickness.to_mm(),
                            w.stiffness.to_n_per_um(),
                            w.unbacked.to_n_per_um(),
                            w.chain.to_n_per_um(),
                            w.frequency.to_hz(),
                            w.tooth_passing.to_hz()
                        );
                    }
                    if let Some(l) = &st.listen {
                        println!(
                            "        listen quiet {:.3} start {:.2} inc {:.2}",
                            l.quiet.to_mm(),
                            l.start.to_mm(),
                            l.increment.to_mm()
                        );
                    }
                    for c in &st.considered {
                        println!("        - {:?} {} {:?}", c.method, c.cutter, c.verdict);
                    }
                }
            }
        }
        Outcome::Refused(r) => {
            println!("REFUSED {:?}", r.task);
            for t in &r.tried {
                println!("  {:?} {} {:?}", t.method, t.cutter, t.verdict);
            }
            for c in &r.changes {
                println!("  change {} {:.5} -> {:.5}", c.field.key(), c.from, c.to);
            }
        }
    }
}
