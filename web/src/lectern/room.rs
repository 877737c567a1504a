//! How large letters are in a window, and how much then goes on a page, so that nothing is ever scrolled.
//!
//! Digits: ISO 9241-303 prefers 20 to 22 minutes of arc for reading without strain, and wants 16 at least. At 1.5 m, 22
//! minutes are 1500 mm x 22 / 3438 = 9.6 mm: 36 px of style at 96 to the inch, and 60 px on a telephone, where about 160 go
//! to the inch. The style sheet makes digits as large as their field lets it, which is more; the browser tests measure it.
//! Sentences are read before the start, with the screen near.

use super::ears::listen;
use std::ops::Range;
use yew::prelude::*;

/// The inside of a window, px.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Room {
    pub(crate) width: f64,
    pub(crate) height: f64,
    /// A stop mark stands above what is read.
    pub(crate) stop: bool,
}

/// Sizes of letters, px: each has its class in the style sheet.
const SIZES: [u32; 9] = [18, 20, 22, 26, 30, 36, 44, 54, 64];
/// About so many letters go across, and so many lines down, where letters may grow with the window.
const ACROSS: f64 = 42.0;
const DOWN: f64 = 20.0;
/// Width of a letter, of a heavy one, and height of a line, over the size of letters: wide lettering, so that narrower leaves
/// room.
const LETTER: f64 = 0.54;
const HEAVY: f64 = 0.62;
const LINE: f64 = 1.35;
/// Between two sentences, in lines.
const GAP: f64 = 0.55;
/// Heights and widths as in the style sheet, px: the bar on top, the bar below or the columns at the sides, the stop mark, edges, the
/// mark before a sentence, a line that is ticked off.
const TOP: f64 = 56.0;
const BOTTOM: f64 = 72.0;
const SIDE: f64 = 96.0;
const STOP: f64 = 64.0;
const EDGE: f64 = 16.0;
const SIGN: f64 = 2.2;
const TICK: f64 = 56.0;
const WAYS: f64 = 136.0;

/// What a page holds beside sentences.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Holds {
    /// Nothing.
    Sentences,
    /// Each sentence has a box to tick.
    Ticks,
    /// Two ways to somewhere else stand below.
    Ways,
}

impl Room {
    /// The window's.
    fn of_window() -> Option<(f64, f64)> {
        let window = web_sys::window()?;
        let width = window.inner_width().ok()?.as_f64()?;
        Some((width, window.inner_height().ok()?.as_f64()?))
    }

    /// Whether the ways on and back stand at the sides, not below.
    pub(crate) fn lies(&self) -> bool {
        self.width > 1.1 * self.height
    }

    /// Room for what is read, px.
    fn inside(&self) -> (f64, f64) {
        let (sides, bottom) = if self.lies() {
            (2.0 * SIDE, 0.0)
        } else {
            (0.0, BOTTOM)
        };
        let stop = if self.stop { STOP } else { 0.0 };
        (
            (self.width - sides - 2.0 * EDGE).max(1.0),
            (self.height - TOP - bottom - EDGE - stop).max(1.0),
        )
    }

    /// Size of letters, px.
    pub(crate) fn letters(&self) -> u32 {
        let (width, height) = self.inside();
        let fits = (width / (ACROSS * LETTER)).min(height / (DOWN * LINE));
        let fitting = SIZES.iter().rev().find(|size| f64::from(**size) <= fits);
        *fitting.unwrap_or(&SIZES[0])
    }

    /// How sentences of so many letters go on pages under a heading of so many, in order.
    pub(crate) fn pages(
        &self,
        heading: usize,
        sentences: &[usize],
        holds: Holds,
    ) -> Vec<Range<usize>> {
        let size = f64::from(self.letters());
        let (width, height) = self.inside();
        let lines = |letters: usize, letter: f64, width: f64| {
            #[allow(clippy::cast_precision_loss, reason = "letters of a sentence")]
            let letters = letters as f64;
            (letters * letter * size / width).ceil().max(1.0)
        };
        let line = LINE * size;
        let (least, below) = match holds {
            Holds::Sentences => (0.0, 0.0),
            Holds::Ticks => (TICK, 0.0),
            Holds::Ways => (0.0, WAYS),
        };
        let room = height - (lines(heading, HEAVY, width) + GAP) * line - below;
        let high = |letters: usize| {
            let text = lines(letters, LETTER, (width - SIGN * size).max(1.0)) * line;
            text.max(least) + GAP * line
        };
        let mut pages = Vec::new();
        let (mut from, mut used) = (0, 0.0);
        for (at, letters) in sentences.iter().enumerate() {
            let high = high(*letters);
            if at > from && used + high > room {
                pages.push(from..at);
                (from, used) = (at, 0.0);
            }
            used += high;
        }
        if from < sentences.len() {
            pages.push(from..sentences.len());
        }
        pages
    }
}

/// The room that the window gives, followed as it changes.
#[hook]
pub(crate) fn use_room(stop: bool) -> Room {
    // A telephone's, until the window is asked.
    let size = use_state_eq(|| Room::of_window().unwrap_or((360.0, 640.0)));
    let now = size.setter();
    use_effect_with((), move |()| {
        let ear = listen(&["resize"], move |_| {
            if let Some(size) = Room::of_window() {
                now.set(size);
            }
        });
        move || drop(ear)
    });
    let (width, height) = *size;
    Room {
        width,
        height,
        stop,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const WINDOWS: [(f64, f64); 6] = [
        (360.0, 640.0),
        (390.0, 844.0),
        (844.0, 390.0),
        (820.0, 1180.0),
        (1440.0, 900.0),
        (3840.0, 2160.0),
    ];

    fn room((width, height): (f64, f64)) -> Room {
        Room {
            width,
            height,
            stop: false,
        }
    }

    #[test]
    fn letters_grow_with_the_window_and_are_never_small() {
        let sizes = WINDOWS.map(|w| room(w).letters());
        assert_eq!(sizes[0], 18);
        assert!(sizes.iter().all(|s| *s >= 18), "{sizes:?}");
        assert!(sizes[3] >= 26 && sizes[5] == 64, "{sizes:?}");
        assert_eq!(room((1.0, 1.0)).letters(), 18);
    }

    #[test]
    fn every_sentence_is_on_one_page_in_its_order() {
        let sentences: Vec<usize> = (0..40).map(|k| 20 + 13 * (k % 9)).collect();
        for window in WINDOWS {
            for holds in [Holds::Sentences, Holds::Ticks, Holds::Ways] {
                let pages = room(window).pages(40, &sentences, holds);
                let all: Vec<usize> = pages.iter().cloned().flatten().collect();
                assert_eq!(all, (0..40).collect::<Vec<_>>(), "{window:?}");
                assert!(pages.iter().all(|p| !p.is_empty()));
            }
        }
    }

    #[test]
    fn more_goes_on_a_page_where_there_is_more_room() {
        let sentences = [90; 12];
        let pages = |window| room(window).pages(40, &sentences, Holds::Ticks).len();
        assert!(pages(WINDOWS[0]) > pages(WINDOWS[3]));
        assert!(pages(WINDOWS[2]) > 1);
        assert!(room(WINDOWS[4]).pages(40, &[], Holds::Ticks).is_empty());
        // What is longer than a page still has one of its own.
        assert_eq!(
            room(WINDOWS[0])
                .pages(40, &[9000, 10], Holds::Sentences)
                .len(),
            2
        );
    }
}
