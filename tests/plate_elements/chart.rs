//! Error against unknowns, both logarithmic, as a drawing in black on white.

use std::fmt::Write;

const WIDTH: f64 = 680.0;
const HEIGHT: f64 = 420.0;
/// Left, right, top, bottom of what is plotted; names stand to the right of it.
const FRAME: [f64; 4] = [64.0, 500.0, 34.0, 366.0];
/// Least distance of two names.
const APART: f64 = 17.0;

/// A line of the chart.
pub(crate) struct Line {
    pub(crate) name: String,
    pub(crate) dashed: bool,
    /// Unknowns, and error as a share; the sign is left out.
    pub(crate) points: Vec<(f64, f64)>,
}

/// Round values 1, 2, 5 with their decades, and the two that enclose all values.
struct Axis {
    low: f64,
    high: f64,
    marks: Vec<f64>,
}

impl Axis {
    fn around(values: impl Iterator<Item = f64>) -> Axis {
        let (mut least, mut most) = (f64::INFINITY, 0.0_f64);
        for value in values {
            least = least.min(value);
            most = most.max(value);
        }
        let all = (-6..8).flat_map(|d| [1.0, 2.0, 5.0].map(|m| m * libm::pow(10.0, f64::from(d))));
        let round: Vec<f64> = all.collect();
        let tiny = 1e-9;
        let low = *round.iter().rfind(|m| **m <= least * (1.0 + tiny)).unwrap();
        let high = *round.iter().find(|m| **m >= most * (1.0 - tiny)).unwrap();
        let marks = round.into_iter().filter(|m| *m >= low && *m <= high);
        Axis {
            low,
            high,
            marks: marks.collect(),
        }
    }

    fn at(&self, value: f64, (from, to): (f64, f64)) -> f64 {
        from + (to - from) * libm::log(value / self.low) / libm::log(self.high / self.low)
    }
}

/// A number without what it does not need.
fn short(value: f64) -> String {
    let text = format!("{value:.3}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

/// A mark of each line: filled, open, square, and so on.
fn mark(index: usize, x: f64, y: f64) -> String {
    match index % 5 {
        0 => format!("<circle cx=\"{x:.1}\" cy=\"{y:.1}\" r=\"3.6\"/>"),
        1 => format!("<circle cx=\"{x:.1}\" cy=\"{y:.1}\" r=\"3.6\" fill=\"#fff\"/>"),
        2 => format!(
            "<rect x=\"{:.1}\" y=\"{:.1}\" width=\"7\" height=\"7\"/>",
            x - 3.5,
            y - 3.5
        ),
        3 => format!(
            "<rect x=\"{:.1}\" y=\"{:.1}\" width=\"7\" height=\"7\" fill=\"#fff\"/>",
            x - 3.5,
            y - 3.5
        ),
        _ => format!(
            "<path d=\"M{x:.1} {:.1}l4.6 8h-9.2z\" fill=\"#fff\"/>",
            y - 5.0
        ),
    }
}

fn grid(text: &mut String, (unknowns, errors): (&Axis, &Axis)) {
    let [left, right, top, bottom] = FRAME;
    for value in &unknowns.marks {
        let x = unknowns.at(*value, (left, right));
        writeln!(
            text,
            "<path class=\"g\" d=\"M{x:.1} {top}V{bottom}\"/><text x=\"{x:.1}\" y=\"{:.1}\" text-anchor=\"middle\">{}</text>",
            bottom + 18.0,
            short(*value)
        )
        .unwrap();
    }
    for value in &errors.marks {
        let y = errors.at(*value, (bottom, top));
        writeln!(
            text,
            "<path class=\"g\" d=\"M{left} {y:.1}H{right}\"/><text x=\"{:.1}\" y=\"{:.1}\" text-anchor=\"end\">{} %</text>",
            left - 8.0,
            y + 4.0,
            short(100.0 * value)
        )
        .unwrap();
    }
}

/// The chart; `note` stands above it.
pub(crate) fn chart(note: &str, lines: &[Line]) -> String {
    let [left, right, top, bottom] = FRAME;
    let all = || lines.iter().flat_map(|line| &line.points);
    let unknowns = Axis::around(all().map(|p| p.0));
    let errors = Axis::around(all().map(|p| p.1));
    let mut text = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {WIDTH} {HEIGHT}\" font-family=\"sans-serif\" font-size=\"12\">\n\
         <style>path{{fill:none}}.g{{stroke:#ccc}}.l,.m{{stroke:#000;stroke-width:1.4}}.m path{{stroke:#000}}</style>\n\
         <rect width=\"{WIDTH}\" height=\"{HEIGHT}\" fill=\"#fff\"/>\n<text x=\"{left}\" y=\"18\">{note}</text>\n"
    );
    grid(&mut text, (&unknowns, &errors));
    let mut names: Vec<(f64, f64, &str)> = Vec::new();
    for (index, line) in lines.iter().enumerate() {
        let place = |p: &(f64, f64)| {
            (
                unknowns.at(p.0, (left, right)),
                errors.at(p.1, (bottom, top)),
            )
        };
        let places: Vec<(f64, f64)> = line.points.iter().map(place).collect();
        let way: Vec<String> = places
            .iter()
            .map(|(x, y)| format!("{x:.1} {y:.1}"))
            .collect();
        let dash = if line.dashed {
            " stroke-dasharray=\"5 4\""
        } else {
            ""
        };
        writeln!(text, "<path class=\"l\"{dash} d=\"M{}\"/>", way.join("L")).unwrap();
        let marks: String = places.iter().map(|(x, y)| mark(index, *x, *y)).collect();
        writeln!(text, "<g class=\"m\">{marks}</g>").unwrap();
        if let Some((x, y)) = places.last() {
            names.push((*y, *x, &line.name));
        }
    }
    names.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut free = 0.0_f64;
    for (y, x, name) in names {
        let at = y.max(free);
        free = at + APART;
        writeln!(
            text,
            "<path class=\"g\" d=\"M{:.1} {y:.1}L{:.1} {at:.1}\"/><text x=\"{:.1}\" y=\"{:.1}\">{name}</text>",
            x + 6.0,
            right + 8.0,
            right + 12.0,
            at + 4.0
        )
        .unwrap();
    }
    let middle = 0.5 * (left + right);
    writeln!(
        text,
        "<text x=\"{middle}\" y=\"{:.1}\" text-anchor=\"middle\">unknowns</text>\n</svg>",
        bottom + 40.0
    )
    .unwrap();
    text
}
