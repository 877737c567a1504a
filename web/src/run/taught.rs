//! What the machine has taught so far: its ranges with and without.

use super::RanProps;
use crate::desk::use_desk;
use crate::state::Action;
use crate::text;
use thinwright_core::learn::forgotten;
use thinwright_core::read;
use thinwright_words::run as words;
use yew::prelude::*;

#[derive(Clone, PartialEq, Properties)]
pub(super) struct TaughtProps {
    pub(super) ran: RanProps,
}

/// Ranges before and after.
pub(super) fn table(rows: &[[String; 3]]) -> Html {
    let row = |[name, before, after]: &[String; 3]| {
        html! { <tr><th scope="row">{ name }</th><td>{ before }</td><td>{ after }</td></tr> }
    };
    let columns = [words::quantity(), words::before(), words::after()];
    html! {
        <table class="trouble-table">
            <thead><tr>{ for columns.map(|c| html! { <th scope="col">{ c }</th> }) }</tr></thead>
            <tbody>{ for rows.iter().map(row) }</tbody>
        </table>
    }
}

/// What was taught.
#[component]
pub(super) fn TaughtView(props: &TaughtProps) -> Html {
    let desk = use_desk();
    let ran = &props.ran;
    let rows = {
        let catalog = desk.catalog.clone();
        let units = (ran.answers.clone(), desk.language);
        use_memo(units, move |(answers, _)| {
            let bare = forgotten(answers);
            let same = bare == **answers;
            let jobs = (!same)
                .then(|| read(&bare, &catalog).ok().zip(read(answers, &catalog).ok()))
                .flatten();
            let speaker = thinwright_words::Speaker::new(answers.units, &catalog, answers);
            let rows = jobs.map_or_else(Vec::new, |(bare, job)| speaker.ranges(&bare, &job));
            (rows, same)
        })
    };
    let (rows, nothing) = &*rows;
    let speaker = ran.speaker(&desk.catalog);
    let problem = |(id, problem): &(thinwright_core::FieldId, AttrValue)| {
        html! {
            <p class="field-problem">
                <span class="mark" aria-hidden="true">{ text::MARK }</span>{ speaker.place(*id) }{ ": " }{ problem.clone() }
            </p>
        }
    };
    let forget = desk.on(|_: MouseEvent| Action::ForgetTaught);
    html! {
        <div class="ran-taught" id="taught" tabindex="-1">
            <h3 class="part-name">{ words::taught() }</h3>
            { for ran.problems.iter().map(problem) }
            if *nothing {
                <p class="part">{ words::taught_nothing_yet() }</p>
            } else {
                if !rows.is_empty() { { table(rows) } }
                <p class="part">{ words::learned_use() }</p>
                <div class="buttons">
                    <button type="button" class="button" onclick={forget} aria-describedby="ran-forget">{ words::forget() }</button>
                    <span class="part" id="ran-forget">{ words::forget_why() }</span>
                </div>
            }
        </div>
    }
}
