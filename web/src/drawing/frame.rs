//! The sheet around the views: frame, title block with its fields, sign of first-angle projection.

use super::mark::{Letters, Mark, Stroke};
use super::pen::{Path, line, rectangle};
use thinwright_words::drawing::{TitleField, title_label};

/// Width of the paper, mm: A4 upright.
pub(crate) const WIDTH: f64 = 210.0;
/// Margins: the wider one for filing (ISO 5457).
pub(crate) const FILING: f64 = 14.0;
pub(crate) const MARGIN: f64 = 8.0;
/// Middle of the frame.
pub(crate) const CENTRE: f64 = 0.5 * (FILING + WIDTH - MARGIN);
/// Height of the title block.
pub(crate) const TITLE: f64 = 26.0;

/// What the title block says.
pub(crate) type Entries = Vec<(TitleField, String)>;

/// Frame with its centring marks.
pub(crate) fn frame(height: f64) -> Vec<Mark> {
    let (a, b) = ((FILING, MARGIN), (WIDTH - MARGIN, height - MARGIN));
    let mut marks = Path::default();
    let (x, y) = (0.5 * (a.0 + b.0), 0.5 * (a.1 + b.1));
    marks.segment((x, 2.0), (x, a.1 + 2.5));
    marks.segment((x, b.1 - 2.5), (x, height - 2.0));
    marks.segment((2.0, y), (a.0 + 2.5, y));
    marks.segment((b.0 - 2.5, y), (WIDTH - 2.0, y));
    vec![
        Mark::Line(Stroke::Frame, rectangle(a, b)),
        Mark::Line(Stroke::Frame, marks.0),
    ]
}

/// The title block along the lower edge of the frame: two rows of fields.
pub(crate) fn title_block(height: f64, entries: &Entries) -> Vec<Mark> {
    let (left, right) = (FILING, WIDTH - MARGIN);
    let (top, bottom) = (height - MARGIN - TITLE, height - MARGIN);
    let middle = 0.5 * (top + bottom);
    let mut out = vec![
        Mark::Line(Stroke::Wide, line((left, top), (right, top))),
        Mark::Line(Stroke::Narrow, line((left, middle), (right, middle))),
    ];
    // Above: title, material, sign. Below: the short ones.
    let wide = [
        (TitleField::Title, left, 92.0),
        (TitleField::Material, left + 92.0, 66.0),
    ];
    for (field, x, width) in wide {
        out.extend(cell(field, entries, (x, top), width));
        out.push(Mark::Line(
            Stroke::Narrow,
            line((x + width, top), (x + width, middle)),
        ));
    }
    out.extend(first_angle((left + 158.0 + 15.0, 0.5 * (top + middle))));
    let below = [
        (TitleField::Scale, 30.0),
        (TitleField::Units, 30.0),
        (TitleField::Drawn, 44.0),
        (TitleField::Date, 50.0),
        (TitleField::Sheet, 34.0),
    ];
    let mut x = left;
    for (field, width) in below {
        out.extend(cell(field, entries, (x, middle), width));
        x += width;
        if x < right - 1.0 {
            out.push(Mark::Line(Stroke::Narrow, line((x, middle), (x, bottom))));
        }
    }
    out
}

fn cell(field: TitleField, entries: &Entries, at: (f64, f64), width: f64) -> Vec<Mark> {
    let label = Letters::start((at.0 + 1.2, at.1 + 3.4), title_label(field), 2.5);
    let mut out = vec![Mark::Text(label)];
    if let Some((_, text)) = entries.iter().find(|e| e.0 == field) {
        let height = if field == TitleField::Title { 5.0 } else { 3.5 };
        // What is too long for its field is cut, with a sign that it is.
        let most = width / (height * 0.62) - 1.0;
        let mut shown: String = text.clone();
        #[allow(clippy::cast_precision_loss, reason = "texts are short")]
        while shown.chars().count() as f64 > most && !shown.is_empty() {
            shown.pop();
        }
        if shown != *text {
            shown.pop();
            shown.push('\u{2026}');
        }
        out.push(Mark::Text(Letters::start(
            (at.0 + 1.6, at.1 + 10.0),
            shown,
            height,
        )));
    }
    out
}

/// The sign of first-angle projection (ISO 5456-2): a truncated cone from the side, and to its right from the left.
fn first_angle((x, y): (f64, f64)) -> Vec<Mark> {
    const BIG: f64 = 3.5;
    const SMALL: f64 = 1.75;
    const LONG: f64 = 7.0;
    let (cone, eye) = (x - 10.5, x + 4.0);
    let mut wide = Path::default();
    wide.polygon(&[
        (cone, y - SMALL),
        (cone + LONG, y - BIG),
        (cone + LONG, y + BIG),
        (cone, y + SMALL),
    ]);
    for radius in [SMALL, BIG] {
        wide.to((eye - radius, y));
        wide.arc(radius, true, (eye + radius, y));
        wide.arc(radius, true, (eye - radius, y));
    }
    let mut centre = Path::default();
    centre.segment((cone - 1.5, y), (cone + LONG + 1.5, y));
    centre.segment((eye - BIG - 1.5, y), (eye + BIG + 1.5, y));
    centre.segment((eye, y - BIG - 1.5), (eye, y + BIG + 1.5));
    vec![
        Mark::Line(Stroke::Wide, wide.0),
        Mark::Line(Stroke::Centre, centre.0),
    ]
}
