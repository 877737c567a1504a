//! Where dimension lines go: in rows beside a view, the short ones inside, none over another.

/// Height of the lettering, mm (ISO 3098).
pub(crate) const LETTER: f64 = 3.5;
/// Length of an arrowhead, mm.
pub(crate) const ARROW: f64 = 3.0;
/// Width of a letter over its height, on average and on the safe side.
const LETTER_WIDTH: f64 = 0.62;
/// Least gap between what stands in one row, mm.
const GAP: f64 = 1.5;

/// A dimension line along one direction of the paper, before it has a row.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Span {
    /// Its two ends, the lesser first, mm on paper.
    pub(crate) ends: (f64, f64),
    /// Width of its text, mm.
    pub(crate) text: f64,
}

/// How a dimension line is set out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Placed {
    /// Row, 0 nearest to the view.
    pub(crate) row: usize,
    /// Arrows and text stand outside the two ends, because there is no room between.
    pub(crate) outside: bool,
    /// Middle of the text along the line.
    pub(crate) text_at: f64,
}

/// Width of a text, mm.
pub(crate) fn text_width(text: &str, letter: f64) -> f64 {
    let letters = text.chars().filter(|c| *c != '\u{202F}').count();
    #[allow(clippy::cast_precision_loss, reason = "texts are short")]
    let letters = letters as f64;
    letters * letter * LETTER_WIDTH
}

impl Span {
    /// A span between two places in any order.
    pub(crate) fn new(a: f64, b: f64, text: &str) -> Span {
        Span {
            ends: (a.min(b), a.max(b)),
            text: text_width(text, LETTER),
        }
    }

    fn length(&self) -> f64 {
        self.ends.1 - self.ends.0
    }

    fn outside(&self) -> bool {
        self.length() < self.text + 2.0 * ARROW
    }

    /// Middle of the text: between the ends, or beyond the end that the text is to stand at.
    fn text_at(&self, beyond: f64) -> f64 {
        if !self.outside() {
            return 0.5 * (self.ends.0 + self.ends.1);
        }
        let reach = 1.5 * ARROW + 0.5 * self.text;
        if beyond > 0.0 {
            self.ends.1 + reach
        } else {
            self.ends.0 - reach
        }
    }

    /// All that the line takes up in its row.
    pub(crate) fn extent(&self, beyond: f64) -> (f64, f64) {
        if !self.outside() {
            return self.ends;
        }
        let (least, most) = (self.ends.0 - 2.0 * ARROW, self.ends.1 + 2.0 * ARROW);
        let text = self.text_at(beyond);
        (
            least.min(text - 0.5 * self.text),
            most.max(text + 0.5 * self.text),
        )
    }
}

/// Gives each span a row. `beyond` says on which end (+1 or -1) text stands that does not fit between the ends.
pub(crate) fn rows(spans: &[Span], beyond: f64) -> Vec<Placed> {
    let mut order: Vec<usize> = (0..spans.len()).collect();
    order.sort_by(|a, b| spans[*a].length().total_cmp(&spans[*b].length()));
    let mut taken: Vec<Vec<(f64, f64)>> = Vec::new();
    let mut placed = vec![
        Placed {
            row: 0,
            outside: false,
            text_at: 0.0,
        };
        spans.len()
    ];
    for index in order {
        let span = &spans[index];
        let (least, most) = span.extent(beyond);
        let free =
            |row: &Vec<(f64, f64)>| row.iter().all(|t| most + GAP < t.0 || t.1 + GAP < least);
        // A longer one never goes inside a shorter one that it spans: extension lines would cross it.
        let above = taken
            .iter()
            .rposition(|row| row.iter().any(|t| t.0 < most && least < t.1));
        let from = above.map_or(0, |row| row + 1);
        let row = (from..taken.len())
            .find(|row| free(&taken[*row]))
            .unwrap_or(taken.len());
        if row == taken.len() {
            taken.push(Vec::new());
        }
        taken[row].push((least, most));
        placed[index] = Placed {
            row,
            outside: span.outside(),
            text_at: span.text_at(beyond),
        };
    }
    placed
}

/// How many rows are in use.
pub(crate) fn row_count(placed: &[Placed]) -> usize {
    placed.iter().map(|p| p.row + 1).max().unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn apart(spans: &[Span], beyond: f64) {
        let placed = rows(spans, beyond);
        for i in 0..spans.len() {
            for j in 0..i {
                let (a, b) = (spans[i].extent(beyond), spans[j].extent(beyond));
                let meets = a.0 < b.1 && b.0 < a.1;
                assert!(!meets || placed[i].row != placed[j].row, "{i} over {j}");
                let longer = spans[i].length() > spans[j].length();
                assert!(
                    !meets || (placed[i].row > placed[j].row) == longer,
                    "{i} crosses {j}"
                );
            }
        }
    }

    #[test]
    fn nothing_stands_over_another() {
        let mut seed = 5_u64;
        let mut next = || {
            seed = seed
                .wrapping_mul(6_364_136_223_846_793_005)
                .wrapping_add(1_442_695_040_888_963_407);
            f64::from(u32::try_from(seed >> 44).unwrap()) / f64::from(1_u32 << 20)
        };
        for _ in 0..200 {
            let spans: Vec<Span> = (0..7)
                .map(|_| Span::new(100.0 * next(), 100.0 * next(), "12.5"))
                .collect();
            apart(&spans, 1.0);
            apart(&spans, -1.0);
        }
    }

    #[test]
    fn a_short_span_keeps_its_text_outside() {
        let placed = rows(
            &[Span::new(10.0, 12.5, "5"), Span::new(0.0, 50.0, "100")],
            1.0,
        );
        assert!(placed[0].outside && placed[0].text_at > 12.5 + ARROW);
        assert!(!placed[1].outside && (placed[1].text_at - 25.0).abs() < 1e-12);
        assert_eq!((placed[0].row, placed[1].row), (0, 1));
        assert_eq!(row_count(&placed), 2);
    }

    #[test]
    fn spans_side_by_side_share_a_row() {
        let placed = rows(
            &[Span::new(0.0, 20.0, "5"), Span::new(30.0, 60.0, "8")],
            1.0,
        );
        assert_eq!(row_count(&placed), 1);
    }
}
