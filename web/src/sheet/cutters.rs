//! The cutters to lay out, with the steps that take them.

use super::Topic;
use thinwright_core::job::Cutter;
use thinwright_quantity::Kind;
use thinwright_words::sheet as words;
use yew::prelude::*;

pub(super) fn table(topic: &Topic) -> Html {
    let used = |row: u8| -> Vec<u32> {
        let steps = topic.steps().filter(|s| s.uses(row));
        steps.map(|s| s.number).collect()
    };
    let cutters = topic.job.rack.iter().map(|c| (c, used(c.row)));
    let rows = cutters.filter(|(_, steps)| !steps.is_empty());
    html! {
        <table class="sheet-cutters">
            <caption>{ words::cutter_caption(topic.speaker.units) }</caption>
            <thead>
                <tr>{ for words::cutter_columns().map(|c| html! { <th scope="col">{ c }</th> }) }</tr>
            </thead>
            <tbody>{ for rows.map(|(cutter, steps)| row(topic, cutter, &steps)) }</tbody>
        </table>
    }
}

fn row(topic: &Topic, cutter: &Cutter, steps: &[u32]) -> Html {
    let size = |m: f64| topic.bare(Kind::Length, m);
    let cells = [
        size(cutter.d),
        cutter.z.to_string(),
        size(cutter.flute_length),
        size(cutter.stick_out),
        size(cutter.corner),
    ];
    html! {
        <tr>
            <th scope="row">{ words::cutter_row(cutter) }</th>
            { for cells.into_iter().map(|c| html! { <td class="sheet-number">{ c }</td> }) }
            <td>{ words::cutter_made_of(cutter) }</td>
            <td>{ words::step_numbers(steps) }</td>
        </tr>
    }
}
