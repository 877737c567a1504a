//! From the part's millimetres to paths on paper.

use thinwright_core::plan::{Contour, Edge, Point, Region};

/// Where a view lies on the paper: millimetres to the right and down from its upper left corner.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct View {
    /// Where the origin of the part lies.
    pub(crate) origin: (f64, f64),
    /// Size on paper over size in reality.
    pub(crate) scale: f64,
    /// Turned over about the upright axis: seen from face B.
    pub(crate) mirrored: bool,
}

impl View {
    /// A place of the part on paper; y (or height) points up there and down here.
    pub(crate) fn at(&self, x: f64, y: f64) -> (f64, f64) {
        (self.x(x), self.y(y))
    }

    pub(crate) fn x(&self, x: f64) -> f64 {
        let x = if self.mirrored { -x } else { x };
        self.origin.0 + self.scale * x
    }

    pub(crate) fn y(&self, y: f64) -> f64 {
        self.origin.1 - self.scale * y
    }

    fn point(&self, p: Point) -> (f64, f64) {
        self.at(p.x, p.y)
    }

    /// A contour as a path, arcs as arcs.
    pub(crate) fn contour(&self, contour: &Contour) -> String {
        let mut path = Path::default();
        path.to(self.point(contour.start));
        for (from, edge) in contour.pieces() {
            match *edge {
                Edge::Line { to } => path.line(self.point(to)),
                Edge::Arc { to, centre, ccw } => self.arc(&mut path, (from, to), centre, ccw),
            }
        }
        path.close();
        path.0
    }

    /// A region with its holes as one path.
    pub(crate) fn region(&self, region: &Region) -> String {
        let holes = region.holes.iter().map(|h| self.contour(h));
        std::iter::once(self.contour(&region.outer))
            .chain(holes)
            .collect()
    }

    /// In two halves: an arc of SVG can be no full circle.
    fn arc(&self, path: &mut Path, (from, to): (Point, Point), centre: Point, ccw: bool) {
        let radius = from.distance(centre);
        let (a, b) = (minus(from, centre), minus(to, centre));
        let mut sweep = libm::atan2(a.x * b.y - a.y * b.x, a.x * b.x + a.y * b.y);
        if ccw && sweep <= 1e-9 {
            sweep += core::f64::consts::TAU;
        } else if !ccw && sweep >= -1e-9 {
            sweep -= core::f64::consts::TAU;
        }
        let (sin, cos) = (libm::sin(0.5 * sweep), libm::cos(0.5 * sweep));
        let middle = Point::new(
            centre.x + a.x * cos - a.y * sin,
            centre.y + a.x * sin + a.y * cos,
        );
        // The paper's y points down, so counter-clockwise stays so only in a mirrored view.
        let clockwise_on_paper = ccw == self.mirrored;
        for end in [middle, to] {
            path.arc(radius * self.scale, clockwise_on_paper, self.point(end));
        }
    }
}

fn minus(a: Point, b: Point) -> Point {
    Point::new(a.x - b.x, a.y - b.y)
}

/// A path in the making.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(crate) struct Path(pub(crate) String);

impl Path {
    pub(crate) fn to(&mut self, p: (f64, f64)) {
        self.0 += &format!("M{} {}", number(p.0), number(p.1));
    }

    pub(crate) fn line(&mut self, p: (f64, f64)) {
        self.0 += &format!("L{} {}", number(p.0), number(p.1));
    }

    /// An arc of less than half a circle, or half of one.
    pub(crate) fn arc(&mut self, radius: f64, clockwise: bool, to: (f64, f64)) {
        let r = number(radius);
        self.0 += &format!(
            "A{r} {r} 0 0 {} {} {}",
            u8::from(clockwise),
            number(to.0),
            number(to.1)
        );
    }

    /// A curve that leaves towards a place and arrives from there.
    pub(crate) fn curve(&mut self, by: (f64, f64), to: (f64, f64)) {
        let [a, b, c, d] = [by.0, by.1, to.0, to.1].map(number);
        self.0 += &format!("Q{a} {b} {c} {d}");
    }

    pub(crate) fn close(&mut self) {
        self.0.push('Z');
    }

    /// A straight line by itself.
    pub(crate) fn segment(&mut self, a: (f64, f64), b: (f64, f64)) {
        self.to(a);
        self.line(b);
    }

    /// A closed outline.
    pub(crate) fn polygon(&mut self, points: &[(f64, f64)]) {
        if let Some((first, rest)) = points.split_first() {
            self.to(*first);
            rest.iter().for_each(|p| self.line(*p));
            self.close();
        }
    }
}

/// A line between two places as a path.
pub(crate) fn line(a: (f64, f64), b: (f64, f64)) -> String {
    let mut path = Path::default();
    path.segment(a, b);
    path.0
}

/// An upright rectangle between two corners as a path.
pub(crate) fn rectangle(a: (f64, f64), b: (f64, f64)) -> String {
    let mut path = Path::default();
    path.polygon(&[a, (b.0, a.1), b, (a.0, b.1)]);
    path.0
}

/// A number of a path: hundredths of a millimetre.
pub(crate) fn number(value: f64) -> String {
    let text = format!("{value:.2}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" { "0" } else { text }.to_owned()
}

/// Centre and radius of a contour that is one full circle.
pub(crate) fn circle(contour: &Contour) -> Option<(Point, f64)> {
    let mut found: Option<(Point, f64)> = None;
    for (from, edge) in contour.pieces() {
        let Edge::Arc { centre, .. } = *edge else {
            return None;
        };
        let radius = from.distance(centre);
        let near = 1.0e-6 * radius.max(1.0);
        match found {
            Some((c, r)) if c.distance(centre) > near || (r - radius).abs() > near => return None,
            _ => found = Some((centre, radius)),
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    const VIEW: View = View {
        origin: (50.0, 40.0),
        scale: 0.5,
        mirrored: false,
    };

    #[test]
    fn a_circle_is_two_arcs_on_paper() {
        let circle = Contour::circle(Point::new(0.0, 0.0), 20.0);
        let path = VIEW.contour(&circle);
        assert!(path.matches('A').count() >= 2 && path.ends_with('Z'));
        // Every end lies on the circle of 10 mm about (50, 40).
        for arc in path.trim_end_matches('Z').split('A').skip(1) {
            let numbers: Vec<f64> = arc
                .split([' ', 'M', 'L'])
                .map(|n| n.parse().unwrap())
                .collect();
            assert!((numbers[0] - 10.0).abs() < 0.01);
            let (x, y): (f64, f64) = (numbers[5] - 50.0, numbers[6] - 40.0);
            assert!(((x * x + y * y).sqrt() - 10.0).abs() < 0.02, "{arc}");
        }
    }

    #[test]
    fn only_full_circles_count_as_round() {
        let middle = Point::new(3.0, -2.0);
        let found = super::circle(&Contour::circle(middle, 7.5)).unwrap();
        assert!(found.0.distance(middle) < 1e-9 && (found.1 - 7.5).abs() < 1e-9);
        assert!(super::circle(&Contour::rectangle(middle, 20.0, 10.0, 2.0)).is_none());
        assert!(super::circle(&Contour::slot(middle, 20.0, 4.0, 0.3)).is_none());
    }

    #[test]
    fn paper_points_down_and_mirrors_about_the_upright() {
        let mirrored = View {
            mirrored: true,
            ..VIEW
        };
        assert_eq!(number(VIEW.x(10.0)), "55");
        assert_eq!(number(mirrored.x(10.0)), "45");
        assert_eq!(number(VIEW.y(10.0)), "35");
        assert_eq!(number(-0.001), "0");
    }
}
