use std::time::Instant;
use thinwright_mechanics::{engagement::Immersion, force::*, kienzle::Cutting};
fn main() {
    let c = Cutting {
        kc1_1: 6.5e8,
        mc: 0.25,
        h_ref: 1e-3,
        radial_ratio: 0.3,
        axial_ratio: 0.1,
        wear: 1.3,
    };
    for z in [1, 3, 4] {
        let m = Mill {
            d: 6e-3,
            z,
            helix: 0.5,
            runout: 1e-5,
            corner_radius: 0.0,
        };
        let t = Instant::now();
        let mut s = 0.0;
        for i in 0..10000 {
            let b = Bite {
                fz: 4e-5 + 1e-9 * i as f64,
                immersion: Immersion::slot(),
                ap: 1e-3,
            };
            s += forces(&m, &c, &b).peak_lateral;
        }
        println!("z {z}: {:?} {s}", t.elapsed() / 10000);
    }
    let t = Instant::now();
    let cat = thinwright_catalog::Catalog::builtin();
    println!("catalog {:?}", t.elapsed());
    let t = Instant::now();
    let c2 = cat.clone();
    println!("clone {:?} {}", t.elapsed(), c2.materials.len());
    use thinwright_plate::{Sheet, annulus::*};
    let sh = Sheet {
        e_mod: 7e10,
        nu: 0.33,
        rho: 2700.0,
        t: 4e-3,
    };
    for e in [InnerEdge::RigidFloating, InnerEdge::Clamped] {
        let a = Annulus {
            inner: 18e-3,
            outer: 70e-3,
            inner_edge: e,
        };
        let t = Instant::now();
        let r = softest(&sh, &a);
        println!("softest {:?} {:?}", t.elapsed(), r);
        let t = Instant::now();
        let r = first_frequency(&sh, &a);
        println!("freq {:?} {:?}", t.elapsed(), r);
    }
    use thinwright_core::plan::*;
    let reg = Region {
        outer: Contour::rectangle(Point::new(0., 0.), 96., 56., 8.),
        holes: vec![],
    };
    let area = Area::from_region(&reg, 0.005);
    let t = Instant::now();
    let w = narrowest_width(&area);
    println!("narrowest {:?} {w}", t.elapsed());
    let t = Instant::now();
    let w = widest_circle(&area);
    println!("widest {:?} {w:?}", t.elapsed());
    let t = Instant::now();
    let w = clearing(&area, 4.0, 3.2);
    println!("clearing {:?} {}", t.elapsed(), w.rings.len());
    let reg = Region {
        outer: Contour::circle(Point::new(0., 0.), 70.),
        holes: vec![Contour::circle(Point::new(0., 0.), 18.)],
    };
    let area = Area::from_region(&reg, 0.005);
    let t = Instant::now();
    let w = narrowest_width(&area);
    println!("narrowest {:?} {w}", t.elapsed());
    let t = Instant::now();
    let w = widest_circle(&area);
    println!("widest {:?} {w:?}", t.elapsed());
    let t = Instant::now();
    let w = clearing(&area, 3.0, 2.4);
    println!("clearing {:?} {}", t.elapsed(), w.rings.len());
    let t = Instant::now();
    let w = area.offset(-0.3);
    println!("offset {:?} {}", t.elapsed(), w.area_mm2());
}
