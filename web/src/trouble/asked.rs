//! The questions: what was noticed, where, and whether it comes again.

use super::told::Told;
use crate::desk::use_desk;
use crate::select::{Entries, Select};
use crate::text;
use std::rc::Rc;
use thinwright_core::Answers;
use thinwright_core::trouble::{Group, Repeats, Sign, Spot};
use thinwright_words::trouble as words;
use web_sys::HtmlInputElement;
use yew::prelude::*;

#[derive(Clone, PartialEq, Properties)]
pub(super) struct AskedProps {
    pub(super) told: Told,
    pub(super) answers: Rc<Answers>,
    pub(super) on_tell: Callback<Told>,
}

/// The questions.
#[component]
pub(super) fn Asked(props: &AskedProps) -> Html {
    use_desk();
    html! {
        <>
            <div class="trouble-signs" role="group" aria-labelledby="trouble-signs-name">
                <h3 class="part-name" id="trouble-signs-name">{ words::signs() }</h3>
                { for Group::ALL.into_iter().map(|group| signs(props, group)) }
            </div>
            <div class="trouble-where">
                { spot(props) }
                { repeats(props) }
                { tone(props) }
            </div>
        </>
    }
}

fn signs(props: &AskedProps, group: Group) -> Html {
    let one = |sign: Sign| {
        let checked = props.told.signs.contains(&sign);
        let (told, on_tell) = (props.told.clone(), props.on_tell.clone());
        let onchange = Callback::from(move |_: Event| on_tell.emit(told.clone().turned(sign)));
        html! {
            <label class="trouble-sign">
                <input type="checkbox" id={format!("trouble-{}", sign.key())} {checked} {onchange} />
                <span>{ words::sign_name(sign) }</span>
            </label>
        }
    };
    let all = Sign::all().filter(|sign| sign.group() == group);
    html! {
        <fieldset class="trouble-group">
            <legend>{ words::sign_group(group) }</legend>
            { for all.map(one) }
        </fieldset>
    }
}

/// A list of a few answers by their places, none of them first.
fn few(
    (id, label): (&'static str, &'static str),
    names: Vec<&'static str>,
    (chosen, on_choose): (Option<usize>, Callback<String>),
) -> Html {
    let mut all: Vec<(AttrValue, AttrValue)> = vec![("".into(), words::not_said().into())];
    let entry =
        |(at, name): (usize, &str)| (at.to_string().into(), AttrValue::from(name.to_owned()));
    all.extend(names.into_iter().enumerate().map(entry));
    let entries: Entries = vec![("".into(), all)];
    let chosen = chosen.map_or_else(AttrValue::default, |at| at.to_string().into());
    html! {
        <div class="trouble-few">
            <label class="field-label" for={id}>{ label }</label>
            <Select id={AttrValue::from(id)} {entries} {chosen} {on_choose} />
        </div>
    }
}

fn spot(props: &AskedProps) -> Html {
    let (told, on_tell) = (props.told.clone(), props.on_tell.clone());
    let on_choose = Callback::from(move |key: String| {
        let spot = key
            .parse()
            .ok()
            .and_then(|at: usize| Spot::ALL.get(at).copied());
        on_tell.emit(Told {
            spot,
            ..told.clone()
        });
    });
    let names = Spot::ALL.into_iter().map(words::spot_name).collect();
    let chosen = Spot::ALL.iter().position(|s| props.told.spot == Some(*s));
    few(("trouble-spot", words::spot()), names, (chosen, on_choose))
}

fn repeats(props: &AskedProps) -> Html {
    let (told, on_tell) = (props.told.clone(), props.on_tell.clone());
    let on_choose = Callback::from(move |key: String| {
        let repeats = key
            .parse()
            .ok()
            .and_then(|at: usize| Repeats::ALL.get(at).copied());
        on_tell.emit(Told {
            repeats,
            ..told.clone()
        });
    });
    let names = Repeats::ALL.into_iter().map(words::repeats_name).collect();
    let chosen = Repeats::ALL
        .iter()
        .position(|r| props.told.repeats == Some(*r));
    few(
        ("trouble-repeats", words::repeats()),
        names,
        (chosen, on_choose),
    )
}

fn tone(props: &AskedProps) -> Html {
    let (told, on_tell) = (props.told.clone(), props.on_tell.clone());
    let oninput = Callback::from(move |event: InputEvent| {
        let tone = event.target_unchecked_into::<HtmlInputElement>().value();
        on_tell.emit(Told {
            tone,
            ..told.clone()
        });
    });
    let wrong = props.told.heard(&props.answers).is_err();
    html! {
        <div class={classes!("trouble-few", wrong.then_some("field-wrong"))}>
            <label class="field-label" for="trouble-tone">{ words::tone() }</label>
            <input
                id="trouble-tone" class="entry entry-number" type="text" value={props.told.tone.clone()} {oninput}
                spellcheck="false" autocapitalize="off" aria-invalid={wrong.then_some("true")}
                aria-describedby={wrong.then_some("trouble-tone-wrong")}
            />
            if wrong {
                <p class="field-problem" id="trouble-tone-wrong">
                    <span class="mark" aria-hidden="true">{ text::MARK }</span>{ words::no_tone() }
                </p>
            }
        </div>
    }
}
