//! What can be done with a job: samples, files, paper and print.

use super::file::{open_file, save_file};
use crate::browser;
use crate::desk::use_desk;
use crate::lectern::WayIn;
use crate::select::Select;
use crate::state::{Action, Theme};
use crate::text;
use thinwright_jobfile::{JobFile, samples};
use web_sys::{HtmlInputElement, HtmlSelectElement};
use yew::prelude::*;

/// The samples.
#[component]
pub(super) fn Samples() -> Html {
    let desk = use_desk();
    let onchange = desk.on_some(|event: Event| {
        let list = event.target_unchecked_into::<HtmlSelectElement>();
        let sample = usize::try_from(list.selected_index() - 1)
            .ok()
            .and_then(|at| samples().get(at))?;
        list.set_selected_index(0);
        Some(Action::Load(Box::new(text::sample_job(sample))))
    });
    let name = |sample: &thinwright_jobfile::Sample| {
        html! { <option>{ text::sample_job(sample).name().to_owned() }</option> }
    };
    html! {
        <div class="title-cell">
            <label class="title-label" for="sample">{ text::sample() }</label>
            <select class="entry" id="sample" {onchange}>
                <option selected=true>{ text::choose_sample() }</option>
                { samples().iter().map(name).collect::<Html>() }
            </select>
        </div>
    }
}

#[derive(Clone, PartialEq, Properties)]
pub(super) struct FilesProps {
    pub(super) file: Callback<(), JobFile>,
}

/// Opening and saving.
#[component]
pub(super) fn Files(props: &FilesProps) -> Html {
    let desk = use_desk();
    let picker = use_node_ref();
    let open = {
        let picker = picker.clone();
        Callback::from(move |_: MouseEvent| {
            if let Some(picker) = picker.cast::<HtmlInputElement>() {
                picker.click();
            }
        })
    };
    let picked =
        Callback::from(move |event: Event| open_file(&desk, &event.target_unchecked_into()));
    let save = props.file.reform(|_: MouseEvent| ());
    let save = Callback::from(move |event: MouseEvent| save_file(&save.emit(event)));
    html! {
        <div class="title-cell" role="group" aria-label={text::file()}>
            <span class="title-label" aria-hidden="true">{ text::file() }</span>
            <div class="buttons">
                <button type="button" class="button" onclick={open}>{ text::open() }</button>
                <input class="away" type="file" accept=".json,application/json" tabindex="-1" aria-hidden="true"
                    ref={picker} onchange={picked} />
                <button type="button" class="button" onclick={save}>{ text::save() }</button>
            </div>
        </div>
    }
}

#[derive(Clone, PartialEq, Properties)]
pub(super) struct PaperProps {
    pub(super) theme: Theme,
    pub(super) printable: bool,
}

/// Printing, and light or dark.
#[component]
pub(super) fn Paper(props: &PaperProps) -> Html {
    let themes = [
        (Theme::System, "system", text::theme_system()),
        (Theme::Light, "light", text::theme_light()),
        (Theme::Dark, "dark", text::theme_dark()),
    ];
    let desk = use_desk();
    let on_choose = desk.on_some(move |chosen: String| {
        let theme = themes.into_iter().find(|(_, key, _)| *key == chosen)?.0;
        Some(Action::Dress(theme))
    });
    let entries = themes
        .map(|(_, key, name)| (key.into(), name.into()))
        .into();
    let chosen = themes
        .into_iter()
        .find(|(theme, ..)| *theme == props.theme)
        .map_or("", |(_, key, _)| key);
    html! {
        <>
            <div class="title-cell">
                <label class="title-label" for="theme">{ text::theme() }</label>
                <Select id="theme" entries={vec![("".into(), entries)]} {chosen} {on_choose} />
            </div>
            <div class="title-cell" role="group" aria-label={text::sheet()}>
                <span class="title-label" aria-hidden="true">{ text::sheet() }</span>
                <div class="buttons">
                    <button type="button" class="button button-strong" disabled={!props.printable}
                        onclick={Callback::from(|_: MouseEvent| browser::print())}>{ text::print() }</button>
                    <WayIn open={props.printable} />
                </div>
            </div>
        </>
    }
}
