use std::time::Instant;
fn main() {
    use thinwright_core::plan::*;
    for reg in [
        Region {
            outer: Contour::circle(Point::new(0., 0.), 50.),
            holes: vec![],
        },
        Region {
            outer: Contour::circle(Point::new(0., 0.), 70.),
            holes: vec![Contour::circle(Point::new(0., 0.), 18.)],
        },
    ] {
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
        let w = clearing(&area, 1.0, 0.3);
        println!("clearing {:?} {}", t.elapsed(), w.rings.len());
        let t = Instant::now();
        let w = validate_region(&reg);
        println!("validate {:?} {}", t.elapsed(), w.len());
        let t = Instant::now();
        let w = area.offset(-0.3);
        println!("offset {:?} {}", t.elapsed(), w.area_mm2());
        let s = Area::from_contour(&Contour::slot(Point::new(40., 0.), 24., 2., 0.), 0.005);
        let t = Instant::now();
        let w = arrange(&[
            area.clone(),
            s.clone(),
            Area::from_contour(&Contour::circle(Point::new(0., 0.), 80.), 0.005),
        ]);
        println!("arrange {:?} {}", t.elapsed(), w.cells.len());
        let t = Instant::now();
        let w = distance(&area, &s);
        println!("distance {:?} {}", t.elapsed(), w);
        let t = Instant::now();
        let w = distance(&area, &area);
        println!("distance2 {:?} {}", t.elapsed(), w);
    }
}
