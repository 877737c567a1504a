//! The picture of a spectrum: level over frequency, the tones that were found, the lines of the spindle.

use super::analysis::LOWEST;
use crate::drawing::{Letters, Mark, Path, Stroke, draw, line, number, text_width};
use thinwright_sound::Column;
use thinwright_words::hear as words;
use thinwright_words::marked;
use yew::prelude::*;

/// The paper: on the narrowest screen 3 px a unit.
const WIDTH: f64 = 120.0;
const HEIGHT: f64 = 72.0;
const LETTER: f64 = 3.8;
/// The field of the picture: left, right, top, bottom.
const FIELD: (f64, f64, f64, f64) = (13.0, 118.0, 8.0, 60.0);
/// Figures of the axis of frequencies [1/s].
const FREQUENCIES: [f64; 7] = [100.0, 200.0, 500.0, 1000.0, 2000.0, 5000.0, 10_000.0];
/// What is shown below the highest level, and from figure to figure (dB).
const RANGE: f64 = 80.0;
const LEVELS: f64 = 20.0;
/// Lines closer than this run together.
const APART: f64 = 2.4;
/// Most tones that are named, and the size of their sign.
const NAMED: usize = 3;
const SIGN: f64 = 1.6;

/// The rates of turns and of teeth [1/s].
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Rates {
    pub(super) turns: f64,
    pub(super) teeth: f64,
}

/// Where things lie.
struct Field {
    highest: f64,
    top: f64,
}

impl Field {
    fn of(columns: &[Column]) -> Option<Field> {
        let level = columns.iter().map(|c| c.level);
        let most = level.fold(f64::NEG_INFINITY, f64::max);
        Some(Field {
            highest: columns.last()?.to,
            top: (most / LEVELS).ceil().clamp(-10.0, 2.0) * LEVELS,
        })
    }

    fn x(&self, frequency: f64) -> f64 {
        let share = libm::log(frequency / LOWEST) / libm::log(self.highest / LOWEST);
        FIELD.0 + (FIELD.1 - FIELD.0) * share
    }

    fn y(&self, level: f64) -> f64 {
        let share = ((self.top - level) / RANGE).clamp(0.0, 1.0);
        FIELD.2 + (FIELD.3 - FIELD.2) * share
    }

    fn has(&self, frequency: f64) -> bool {
        (LOWEST..=self.highest).contains(&frequency)
    }

    /// Multiples of a rate, as far as they do not run together.
    fn lines(&self, rate: f64) -> String {
        let mut path = Path::default();
        let mut multiple = rate;
        while rate > 0.0 && multiple <= self.highest {
            if self.has(multiple) {
                let x = self.x(multiple);
                if self.x(multiple + rate) - x < APART {
                    break;
                }
                path.segment((x, FIELD.2), (x, FIELD.3));
            }
            multiple += rate;
        }
        path.0
    }

    fn axes(&self) -> Vec<Mark> {
        let base = FIELD.3 + 1.2 * LETTER;
        let mut grid = Path::default();
        let mut out = Vec::new();
        for f in FREQUENCIES.into_iter().filter(|f| self.has(*f)) {
            let x = self.x(f);
            grid.segment((x, FIELD.3), (x, FIELD.3 + 1.0));
            let text = marked(&words::typed(f));
            let x = x.min(WIDTH - 0.5 * text_width(&text, LETTER));
            out.push(Mark::Text(letters((x, base), text, "middle")));
        }
        let mut level = self.top;
        while level >= self.top - RANGE {
            let y = self.y(level);
            grid.segment((FIELD.0 - 1.0, y), (FIELD.0, y));
            let text = words::figure(level);
            out.push(Mark::Text(letters(
                (FIELD.0 - 1.8, y + 0.35 * LETTER),
                text,
                "end",
            )));
            level -= LEVELS;
        }
        out.push(Mark::Line(Stroke::Narrow, grid.0));
        out.push(Mark::Line(
            Stroke::Wide,
            line((FIELD.0, FIELD.2), (FIELD.0, FIELD.3))
                + &line((FIELD.0, FIELD.3), (FIELD.1, FIELD.3)),
        ));
        let under = HEIGHT - 0.3 * LETTER;
        out.push(Mark::Text(letters(
            (FIELD.1, under),
            words::frequency_axis().into(),
            "end",
        )));
        out.push(Mark::Text(letters(
            (1.0, LETTER),
            words::level_axis().into(),
            "start",
        )));
        out
    }

    /// A sign over each tone; the strongest are named.
    fn tones(&self, tones: &[(f64, f64)]) -> Vec<Mark> {
        let mut signs = Path::default();
        let mut named: Vec<(f64, f64)> = Vec::new();
        let mut out = Vec::new();
        for (f, level) in tones.iter().copied().filter(|t| self.has(t.0)) {
            let (x, y) = (self.x(f), self.y(level) - 0.6);
            signs.polygon(&[
                (x, y),
                (x - 0.5 * SIGN, y - SIGN),
                (x + 0.5 * SIGN, y - SIGN),
            ]);
            let text = marked(&words::typed(f));
            let half = 0.5 * text_width(&text, LETTER);
            let at = x.clamp(FIELD.0 + half, FIELD.1 - half);
            let free = named.iter().all(|(other, h)| (other - at).abs() > h + half);
            if named.len() < NAMED && free {
                named.push((at, half));
                let at = (at, (y - SIGN - 0.8).max(FIELD.2 - 0.5));
                out.push(Mark::Text(letters(at, text, "middle")));
            }
        }
        out.push(Mark::Line(Stroke::Ink, signs.0));
        out
    }
}

fn letters(at: (f64, f64), text: String, anchor: &'static str) -> Letters {
    Letters {
        anchor,
        ..Letters::start(at, text, LETTER)
    }
}

/// Everything on the paper; `tones` are frequency and level, the strongest first.
fn marks(columns: &[Column], tones: &[(f64, f64)], rates: Option<Rates>) -> Vec<Mark> {
    let Some(field) = Field::of(columns) else {
        return Vec::new();
    };
    let mut curve = Path::default();
    for (i, column) in columns.iter().enumerate() {
        let middle = libm::sqrt(column.from * column.to);
        let at = (field.x(middle), field.y(column.level));
        if i == 0 {
            curve.to(at);
        } else {
            curve.line(at);
        }
    }
    let mut out = Vec::new();
    if let Some(rates) = rates {
        out.push(Mark::Line(Stroke::Contour, field.lines(rates.turns)));
        out.push(Mark::Line(Stroke::Index, field.lines(rates.teeth)));
    }
    out.push(Mark::Line(Stroke::Open, curve.0));
    out.extend(field.axes());
    out.extend(field.tones(tones));
    out
}

/// The picture, with a sentence for those who cannot see it.
pub(super) fn picture(columns: &[Column], tones: &[(f64, f64)], rates: Option<Rates>) -> Html {
    let (Some(first), Some(last)) = (columns.first(), columns.last()) else {
        return html! {};
    };
    let peak = tones.first().map(|t| t.0);
    let said = words::spectrum_said(first.from, last.to, peak);
    let view_box = format!("0 0 {} {}", number(WIDTH), number(HEIGHT));
    html! {
        <svg class="ear" viewBox={view_box} role="img" aria-label={said} xmlns="http://www.w3.org/2000/svg">
            { draw(&marks(columns, tones, rates), None, None) }
        </svg>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn columns() -> Vec<Column> {
        let edge = |i: f64| 100.0 * libm::pow(120.0, i / 50.0);
        let column = |i: u32| Column {
            from: edge(f64::from(i)),
            to: edge(f64::from(i + 1)),
            level: -70.0 + if i == 25 { 40.0 } else { 0.0 },
        };
        (0..50).map(column).collect()
    }

    #[test]
    fn everything_lies_on_the_paper() {
        let rates = Rates {
            turns: 150.0,
            teeth: 300.0,
        };
        let marks = marks(&columns(), &[(1130.0, -30.0), (101.0, -70.0)], Some(rates));
        let mut texts = 0;
        for mark in &marks {
            if let Mark::Text(letters) = mark {
                let (x, y) = letters.at;
                assert!(
                    (0.0..=WIDTH).contains(&x) && (0.0..=HEIGHT).contains(&y),
                    "{letters:?}"
                );
                texts += 1;
            }
        }
        assert!(texts > 7 + 4 + 2, "{texts}");
    }

    #[test]
    fn lines_stop_before_they_run_together() {
        let field = Field::of(&columns()).unwrap();
        let count = |rate: f64| field.lines(rate).matches('M').count();
        assert!(count(150.0) > 5 && count(150.0) < 60, "{}", count(150.0));
        assert!(count(300.0) < count(150.0) + 5);
        assert_eq!(count(2.0), 0, "slow turns are a grey wall");
        assert_eq!(count(0.0), 0);
    }

    #[test]
    fn names_do_not_run_into_each_other() {
        let field = Field::of(&columns()).unwrap();
        let tones = [(1000.0, -30.0), (1040.0, -32.0), (4000.0, -40.0)];
        let named = field.tones(&tones);
        let named = named.iter().filter(|m| matches!(m, Mark::Text(_)));
        assert_eq!(named.count(), 2);
        assert!(marks(&[], &tones, None).is_empty());
    }
}
