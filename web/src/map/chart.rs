//! A map drawn: the plan of a step with what is known of its web.

use super::ground::{Ground, Paper};
use super::{give, tone};
use crate::drawing::{Mark, Moment};
use thinwright_core::task::Face;
use thinwright_core::{Job, WebPicture};
use thinwright_words::map::{self as words, Gauge};

/// What a map shows.
pub(crate) enum Shows<'a> {
    /// What the web gives, read in a gauge.
    Gives(&'a WebPicture, Gauge),
    /// Its lowest tone.
    Tone(&'a WebPicture),
    /// Nothing yet, or nothing at all: words in its place.
    Words(&'a str),
}

/// A map ready to be shown.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Chart {
    pub(crate) marks: Vec<Mark>,
    pub(crate) width: f64,
    pub(crate) height: f64,
}

/// Draws a map on its paper, seen from a face; its size depends on the part alone.
pub(crate) fn chart(
    job: &Job,
    moment: &Moment,
    shows: &Shows,
    (seen_from, paper): (Face, Paper),
) -> Option<Chart> {
    let ground = Ground::new(job, seen_from, paper)?;
    let (mut marks, over) = match shows {
        Shows::Gives(picture, gauge) => give::marks(picture, gauge, &ground),
        Shows::Tone(picture) => tone::marks(picture, &ground)
            .unwrap_or_else(|| (Vec::new(), vec![ground.words(words::no_tone_here())])),
        Shows::Words(text) => (Vec::new(), vec![ground.words(text)]),
    };
    marks.extend(ground.edges(job, moment));
    marks.extend(over);
    Some(Chart {
        marks,
        width: paper.width,
        height: ground.height,
    })
}
