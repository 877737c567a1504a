//! The entry of a question: a line to type on, or a list to choose from.

use super::field::FieldProps;
use crate::desk::Desk;
use crate::select::{Entries, Select};
use crate::state::Action;
use crate::text;
use thinwright_catalog::{Catalog, Iso513};
use thinwright_core::Known;
use thinwright_core::field::{Input, Table};
use thinwright_words::language::tr;
use web_sys::HtmlInputElement;
use yew::prelude::*;

/// The entry of a question.
pub(super) fn control(desk: &Desk, props: &FieldProps, element: &str, described: String) -> Html {
    let typed: AttrValue = props.text.trim().to_owned().into();
    let (entries, chosen) = match props.id.field.spec().input {
        Input::Text | Input::Quantity(_) => return line(desk, props, element, described),
        Input::Choice(keys) => {
            let words = |key: &'static str| {
                thinwright_words::choice(props.id.field, key)
                    .to_owned()
                    .into()
            };
            let entries = keys
                .iter()
                .map(|key| (AttrValue::from(*key), words(key)))
                .collect();
            let first = keys.first().copied().map(AttrValue::from);
            (
                vec![("".into(), entries)],
                if typed.is_empty() {
                    first.unwrap_or(typed)
                } else {
                    typed
                },
            )
        }
        Input::Row(table) => {
            let mut entries = rows(&desk.catalog, table);
            // Always there, so that what was chosen can be left to the table again.
            entries.insert(
                0,
                (
                    "".into(),
                    vec![("".into(), left_open(&entries, props).into())],
                ),
            );
            (entries, typed)
        }
    };
    let id = props.id;
    let on_choose = desk.on(move |key: String| Action::Type(id, key));
    html! {
        <Select
            id={element.to_owned()} described={described} wrong={props.problem.is_some()}
            {entries} {chosen} {on_choose}
        />
    }
}

/// What an open row field means.
fn left_open(entries: &Entries, props: &FieldProps) -> String {
    let Some(default) = &props.default else {
        return text::as_above().to_owned();
    };
    let all = entries.iter().flat_map(|(_, group)| group);
    let name = all
        .into_iter()
        .find(|(id, _)| id == default)
        .map_or(default, |(_, name)| name);
    text::table_gives(name)
}

fn line(desk: &Desk, props: &FieldProps, element: &str, described: String) -> Html {
    let id = props.id;
    let oninput = desk.on(move |event: InputEvent| {
        Action::Type(
            id,
            event.target_unchecked_into::<HtmlInputElement>().value(),
        )
    });
    let number = matches!(id.field.spec().input, Input::Quantity(_));
    let placeholder = props.told_default();
    html! {
        <input
            id={element.to_owned()}
            class={classes!("entry", number.then_some("entry-number"))}
            type="text"
            value={props.text.clone()}
            placeholder={placeholder}
            spellcheck="false"
            autocapitalize="off"
            aria-describedby={described}
            aria-invalid={props.problem.is_some().then_some("true")}
            {oninput}
        />
    }
}

/// The rows of a table to choose from.
fn rows(catalog: &Catalog, table: Table) -> Entries {
    let pair = |id: &String, name: &str| {
        (
            AttrValue::from(id.clone()),
            AttrValue::from(tr(name).to_owned()),
        )
    };
    let one = |rows: Vec<(AttrValue, AttrValue)>| vec![("".into(), rows)];
    match table {
        Table::Materials => {
            let groups = [
                Iso513::P,
                Iso513::M,
                Iso513::K,
                Iso513::N,
                Iso513::S,
                Iso513::H,
                Iso513::O,
            ];
            let of = |group: Iso513| catalog.materials.iter().filter(move |r| r.iso513 == group);
            let group = |g: Iso513| {
                (
                    text::iso_513(g).into(),
                    of(g).map(|r| pair(&r.id, &r.name)).collect(),
                )
            };
            groups.map(group).into()
        }
        Table::Machines => one(catalog
            .machines
            .iter()
            .map(|r| pair(&r.id, &r.name))
            .collect()),
        Table::Holds => one(catalog.holds.iter().map(|r| pair(&r.id, &r.name)).collect()),
        Table::Backings => one(catalog
            .backings
            .iter()
            .map(|r| pair(&r.id, &r.name))
            .collect()),
        Table::Clearings => one(catalog
            .clearings
            .iter()
            .map(|r| pair(&r.id, &r.name))
            .collect()),
    }
}

/// How an answer is known.
pub(super) fn known_choice(desk: &Desk, props: &FieldProps, label: &str) -> Html {
    const ALL: [Known; 3] = [Known::Measured, Known::DataSheet, Known::Estimated];
    let words = |known: Known| AttrValue::from(thinwright_words::known(known));
    let id = props.id;
    let on_choose = desk.on_some(move |key: String| {
        let known = ALL.into_iter().find(|known| *words(*known) == key)?;
        Some(Action::Know(id, known))
    });
    let entries = ALL.map(|known| (words(known), words(known))).into();
    html! {
        <Select
            class="entry-known" label={text::how_known(label)}
            entries={vec![("".into(), entries)]} chosen={words(props.known)} {on_choose}
        />
    }
}
