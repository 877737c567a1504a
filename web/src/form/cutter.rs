//! One cutter of the rack: its name, and folded under it what is known of it.

use super::Questions;
use super::group::{boxes, folded};
use super::shown::shown;
use crate::desk::use_desk;
use crate::state::Action;
use crate::text;
use thinwright_core::FieldId;
use thinwright_core::field::{FIELDS, Group};
use thinwright_words::Speaker;
use yew::prelude::*;

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct CutterProps {
    pub(crate) row: u8,
    pub(crate) questions: Questions,
}

/// One cutter.
#[component]
pub(crate) fn CutterBox(props: &CutterProps) -> Html {
    let desk = use_desk();
    let (row, questions) = (props.row, &props.questions);
    let speaker = Speaker::new(questions.answers.units, &desk.catalog, &questions.answers);
    let name = speaker.cutter(row);
    let asked = |first: bool| {
        let of_group = FIELDS
            .iter()
            .filter(move |s| s.group == Group::Cutters && s.asked_first == first);
        of_group
            .filter(|s| shown(&questions.answers, FieldId::in_row(s.field, row)))
            .collect::<Vec<_>>()
    };
    let (first, more) = (asked(true), asked(false));
    let wrong = questions
        .problems
        .keys()
        .filter(|id| id.row == Some(row))
        .count();
    let lit = questions.lit.is_some_and(|id| id.row == Some(row));
    html! {
        <li class="rack-row">
            <details class={classes!("cutter", lit.then_some("field-lit"))}>
                <summary class="cutter-name">
                    <span class="cutter-number">{ u32::from(row) + 1 }</span>
                    <span>{ name.clone() }</span>
                    if wrong > 0 { <span class="flag">{ text::so_many_to_mend(wrong) }</span> }
                </summary>
                <div class="fields">{ boxes(questions, &first, Some(row)) }</div>
                { folded(questions, &more, Some(row)) }
                <div class="buttons">
                    <button type="button" class="button" aria-label={text::copy_cutter_named(&name)}
                        onclick={desk.on(move |_: MouseEvent| Action::CopyCutter(row))}>{ text::copy_cutter() }</button>
                    <button type="button" class="button" aria-label={text::remove_cutter_named(&name)}
                        onclick={desk.on(move |_: MouseEvent| Action::RemoveCutter(row))}>{ text::remove_cutter() }</button>
                </div>
            </details>
        </li>
    }
}
