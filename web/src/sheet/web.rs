//! The web on paper: the map of the step in which it is softest, small, with the values of its lines.

use super::Topic;
use crate::drawing::{draw, moment, number};
use crate::map::{Paper, Shows, chart, key, softest_step};
use thinwright_core::WebPicture;
use thinwright_core::task::Face;
use thinwright_quantity::Length;
use thinwright_words::map::{self as words, Place};
use yew::prelude::*;

/// Paper of the map, mm; letters as small as any on the sheet.
const PAPER: Paper = Paper {
    width: 38.0,
    height: 38.0,
    letter: 2.65,
};

/// The map; nothing while there is none.
pub(super) fn map(topic: &Topic, picture: Option<&WebPicture>) -> Html {
    drawn(topic, picture).unwrap_or_default()
}

fn drawn(topic: &Topic, picture: Option<&WebPicture>) -> Option<Html> {
    let (picture, step) = (picture?, softest_step(topic.strategy)?);
    let moment = moment(topic.job, topic.strategy, step)?;
    let speaker = &topic.speaker;
    let gauge = words::gauge(speaker.units, picture.most);
    let face = moment.setup.face_up;
    let shows = Shows::Gives(picture, gauge);
    let chart = chart(topic.job, &moment, &shows, (face, PAPER))?;
    let view_box = format!("0 0 {} {}", number(chart.width), number(chart.height));
    // As the operator has it: turned over about the y axis, what was left is right.
    let turned = if face == Face::B { -1.0 } else { 1.0 };
    let place = (
        Length::mm(turned * picture.softest.x),
        Length::mm(picture.softest.y),
    );
    let softest = words::row(&gauge, picture.most).join(", ");
    Some(html! {
        <div class="sheet-web">
            <h3>{ words::sheet_heading(moment.step, face) }</h3>
            <div class="sheet-web-beside">
                <svg class="map map-paper" viewBox={view_box} role="img" aria-label={words::name()}
                    xmlns="http://www.w3.org/2000/svg">
                    { draw(&chart.marks, None, None) }
                </svg>
                <div>
                    <p>{ words::lines_caption(&gauge) }</p>
                    <p class="sheet-web-key" aria-hidden="true">{ key(picture, &gauge) }</p>
                    <p>{ format!("{} ({}): {softest}", words::place_name(Place::Softest), speaker.web_place(place)) }</p>
                    if let Some(web) = &moment.step.web { <p>{ speaker.tone(picture, web) }</p> }
                </div>
            </div>
        </div>
    })
}
