//! A link as a QR code (ISO/IEC 18004): one path of squares.

use crate::text::links as text;
use qrcodegen::{Mask, QrCode, QrCodeEcc, QrSegment, Version};
use std::fmt::Write as _;
use thinwright_catalog::Numbers;
use thinwright_jobfile::LINK_START;
use yew::prelude::*;

/// Blank modules around a code (ISO/IEC 18004, 9.1; from memory).
const QUIET: i32 = 4;

/// A code, in modules, its blank border counted in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Code {
    /// Modules along an edge.
    pub(crate) size: u32,
    /// The dark ones as an SVG path.
    pub(crate) path: String,
}

/// The code of a link; nothing where a phone could not scan it from paper any more.
pub(crate) fn code(base: &str, fragment: &str, numbers: &Numbers) -> Option<Code> {
    let dense = fragment.strip_prefix(LINK_START)?;
    if !QrSegment::is_alphanumeric(dense) {
        return None;
    }
    // The address is bytes; what comes behind it is in letters that take less room.
    let start = format!("{base}#{LINK_START}");
    let parts = [
        QrSegment::make_bytes(start.as_bytes()),
        QrSegment::make_alphanumeric(dense),
    ];
    let most = numbers.code_most_version.clamp(1.0, 40.0);
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a version of the standard, just held to its bounds"
    )]
    let most = Version::new(most as u8);
    let made = [QrCodeEcc::Medium, QrCodeEcc::Low]
        .into_iter()
        .find_map(|ecc| {
            let all = Version::MIN;
            QrCode::encode_segments_advanced(&parts, ecc, all, most, None::<Mask>, true).ok()
        })?;
    let size = u32::try_from(made.size() + 2 * QUIET).ok()?;
    Some(Code {
        size,
        path: path(&made),
    })
}

/// Runs of dark modules, row by row.
fn path(code: &QrCode) -> String {
    let mut out = String::new();
    for y in 0..code.size() {
        let mut x = 0;
        while x < code.size() {
            let end = (x..code.size()).find(|x| !code.get_module(*x, y));
            let end = end.unwrap_or(code.size());
            if end > x {
                // Writing to a text cannot fail.
                let _ = write!(
                    out,
                    "M{} {}h{}v1h-{}z",
                    x + QUIET,
                    y + QUIET,
                    end - x,
                    end - x
                );
            }
            x = end + 1;
        }
    }
    out
}

impl Code {
    /// The drawing; `edge` is its length with its unit, if the style does not say it.
    pub(crate) fn draw(&self, class: &'static str, edge: Option<String>) -> Html {
        let view = format!("0 0 {0} {0}", self.size);
        html! {
            <svg {class} role="img" aria-label={text::code_name()} viewBox={view} width={edge.clone()} height={edge}
                shape-rendering="crispEdges">
                <rect width="100%" height="100%" fill="#fff" />
                <path d={self.path.clone()} fill="#000" />
            </svg>
        }
    }

    /// Its edge on paper, mm, its blank border counted in.
    pub(crate) fn edge_mm(&self, numbers: &Numbers) -> f64 {
        f64::from(self.size) * numbers.code_module_mm
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use thinwright_catalog::Catalog;
    use thinwright_jobfile::{LinkedJob, samples};

    #[test]
    fn samples_make_codes_that_are_scanned_from_paper() {
        let numbers = Catalog::builtin().numbers;
        for sample in samples() {
            let link = LinkedJob::of(&sample.job()).write().unwrap();
            let code = code("https://example.org/page/", &link, &numbers).unwrap();
            // Version 14 and its border.
            assert!(code.size <= 73 + 8, "{}: {}", sample.id, code.size);
            assert!(code.edge_mm(&numbers) < 35.0);
        }
    }

    #[test]
    fn what_is_too_much_for_paper_has_none() {
        let numbers = Catalog::builtin().numbers;
        let long = format!("j=1{}Z", "A".repeat(2000));
        assert_eq!(code("https://example.org/", &long, &numbers), None);
        assert_eq!(code("https://example.org/", "strategy", &numbers), None);
    }

    #[test]
    fn dark_modules_are_one_path() {
        let made = QrCode::encode_text("1", QrCodeEcc::Low).unwrap();
        let path = path(&made);
        // The corner's finder: seven dark modules in its first row, behind the border.
        assert!(path.starts_with("M4 4h7v1h-7z"), "{path}");
        let dark = (0..21).flat_map(|y| (0..21).map(move |x| (x, y)));
        let dark = dark.filter(|(x, y)| made.get_module(*x, *y)).count();
        let drawn = path
            .split('h')
            .skip(1)
            .filter_map(|p| p.split('v').next()?.parse::<usize>().ok());
        assert_eq!(drawn.sum::<usize>(), dark);
    }
}
