//! The cutters at hand.

use super::Questions;
use super::cutter::CutterBox;
use crate::desk::use_desk;
use crate::hear::way_to_hear;
use crate::shop::ToShop;
use crate::state::Action;
use crate::text;
use thinwright_catalog::{Catalog, CutterRow};
use thinwright_core::field::{Field, FieldId, Group};
use thinwright_jobfile::shop::Kind;
use thinwright_quantity::UnitSystem;
use web_sys::HtmlSelectElement;
use yew::prelude::*;

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct RackProps {
    pub(crate) questions: Questions,
}

/// The rack.
#[component]
pub(crate) fn Rack(props: &RackProps) -> Html {
    let desk = use_desk();
    let starter = use_node_ref();
    let questions = &props.questions;
    let rows = questions.answers.rack_rows();
    let add = desk.on(|_: MouseEvent| Action::AddCutter);
    let add_starter = {
        let starter = starter.clone();
        desk.on_some(move |_: MouseEvent| {
            Some(Action::AddStarter(
                starter.cast::<HtmlSelectElement>()?.value(),
            ))
        })
    };
    let empty = questions
        .problem(FieldId::in_row(Field::CutterDiameter, 0))
        .filter(|_| rows == 0);
    html! {
        <fieldset class="group" id={text::anchor(Group::Cutters)}>
            <legend class="group-name">{ thinwright_words::group(Group::Cutters) }</legend>
            if let Some(empty) = empty {
                <p class="field-problem" id="f-cutter-1-diameter" tabindex="-1">
                    <span class="mark" aria-hidden="true">{ text::MARK }</span>{ empty }
                </p>
            }
            <ToShop kind={Kind::Rack} />
            <ol class="rack">
                { for (0..rows).map(|row| html! { <CutterBox key={row} {row} questions={questions.clone()} /> }) }
            </ol>
            { way_to_hear() }
            <div class="rack-add">
                <label class="field-label" for="starter">{ text::starter_rack() }</label>
                <div class="field-entry">
                    <select class="entry" id="starter" ref={starter}>
                        { starters(&desk.catalog, questions.answers.units) }
                    </select>
                    <button type="button" class="button" onclick={add_starter}>{ text::add_starter() }</button>
                </div>
                <button type="button" class="button button-wide" onclick={add}>{ text::add_cutter() }</button>
            </div>
        </fieldset>
    }
}

/// The starter racks, the one in the person's units first.
fn starters(catalog: &Catalog, units: UnitSystem) -> Html {
    let order = match units {
        UnitSystem::Metric => ["metric", "inch"],
        UnitSystem::Inch => ["inch", "metric"],
    };
    let group = |series: &'static str| {
        let row_units = if series == "inch" {
            UnitSystem::Inch
        } else {
            UnitSystem::Metric
        };
        let option = |row: &CutterRow| {
            html! { <option value={row.id.clone()}>{ text::starter_cutter(row, row_units) }</option> }
        };
        let rows = catalog.cutters.iter().filter(|row| row.series == series);
        html! { <optgroup label={text::series(series)}>{ rows.map(option).collect::<Html>() }</optgroup> }
    };
    order.into_iter().map(group).collect()
}
