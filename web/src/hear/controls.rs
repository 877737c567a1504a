//! Start and stop, a file instead, the meter, and what is wrong; the way by hand.

use super::Chosen;
use super::choose::Choose;
use super::ear::{Heard, Phase};
use super::listening::Listener;
use super::told::Teller;
use crate::browser;
use crate::form::element_id;
use thinwright_core::{Field, FieldId};
use thinwright_quantity::{Kind, UnitSystem, parse};
use thinwright_sound::Tone;
use thinwright_words::hear::{self as words, Use};
use web_sys::HtmlInputElement;
use yew::prelude::*;

/// Start, stop, file, meter, and how far it is.
pub(super) fn controls(teller: &Teller, listener: &Listener) -> Html {
    let to = teller.chosen.to;
    let phase = listener.ear().phase;
    let nothing = to != Use::Cutter && teller.step().is_none();
    let listen = {
        let listener = listener.clone();
        Callback::from(move |_: MouseEvent| match listener.ear().phase {
            Phase::Still => listener.listen(to),
            Phase::Asking | Phase::Reading | Phase::Listening => listener.stop(),
        })
    };
    let open = {
        let listener = listener.clone();
        Callback::from(move |event: Event| {
            let picker: HtmlInputElement = event.target_unchecked_into();
            if let Some(file) = picker.files().and_then(|files| files.get(0)) {
                listener.open(file, to);
            }
            // The same file can be picked again.
            picker.set_value("");
        })
    };
    let name = if phase == Phase::Still {
        words::listen()
    } else {
        words::stop()
    };
    html! {
        <>
            <div class="buttons">
                <button type="button" class="button button-strong" disabled={nothing} onclick={listen}>{ name }</button>
                <label class="hear-file">
                    { words::open() }
                    <input type="file" accept="audio/*" disabled={nothing || phase != Phase::Still} onchange={open} />
                </label>
            </div>
            <p class="part part-quiet">{ words::kept_nowhere() }</p>
            if teller.on { { meter(listener.ear().level) } }
            <p class="hear-now" role="status">{ now(teller, listener) }</p>
            if let Some(why) = listener.ear().deaf {
                <p class="hear-alarm" role="alert">{ words::deaf(why) }</p>
            }
            if listener.ear().cut_short { <p class="part">{ words::first_minute() }</p> }
        </>
    }
}

fn meter(level: f64) -> Html {
    html! {
        <label class="hear-level">
            <span>{ words::level_name() }</span>
            <meter min="0" max="1" high="0.95" value={format!("{level:.3}")} />
        </label>
    }
}

/// How far it is; read out when it changes.
fn now(teller: &Teller, listener: &Listener) -> String {
    match (listener.ear().phase, teller.chosen.to) {
        (Phase::Still, _) => String::new(),
        (Phase::Asking, _) => words::asking().to_owned(),
        (Phase::Reading, _) => words::reading().to_owned(),
        (Phase::Listening, Use::Cut) => words::cut_on().to_owned(),
        (Phase::Listening, Use::Cutter | Use::Web) => match listener.ear().heard.as_deref() {
            Some(Heard::Taps(heard)) => {
                // One tap agrees with itself.
                let lone = heard.taps.len().min(1);
                let agree = heard.agreed.map_or(lone, |a| a.count);
                words::count(agree, teller.chosen.count, heard.taps.len())
            }
            _ => words::count(0, teller.chosen.count, 0),
        },
    }
}

/// The way without a microphone: to the field, or a line for a tone where there is none.
pub(super) fn by_hand(teller: &Teller, choose: &Choose) -> Html {
    if teller.on {
        return html! {};
    }
    if teller.chosen.to != Use::Cutter {
        return typed(teller, choose);
    }
    let id = match (teller.chosen.row, teller.chosen.x) {
        (None, _) => Field::Tone.into(),
        (Some(row), true) => FieldId::in_row(Field::CutterTone, row),
        (Some(row), false) => FieldId::in_row(Field::CutterToneAcross, row),
    };
    let element = element_id(id);
    let href = format!("#{element}");
    let onclick = Callback::from(move |event: MouseEvent| {
        event.prevent_default();
        browser::reveal(&element);
    });
    html! { <p class="hear-by-hand"><a {href} {onclick}>{ words::by_hand() }</a></p> }
}

fn typed(teller: &Teller, choose: &Choose) -> Html {
    if teller.step().is_none() {
        return html! {};
    }
    let oninput = {
        let (choose, chosen) = (choose.clone(), teller.chosen.clone());
        Callback::from(move |event: InputEvent| {
            let typed = event.target_unchecked_into::<HtmlInputElement>().value();
            choose.emit((
                Chosen {
                    typed,
                    ..chosen.clone()
                },
                true,
            ));
        })
    };
    let read = parse(Kind::Frequency, &teller.chosen.typed, UnitSystem::Metric);
    let said = read
        .ok()
        .filter(|f| *f > 0.0)
        .map(|f| match teller.chosen.to {
            Use::Web => teller.web(f),
            Use::Cut | Use::Cutter => teller.tones(&[Tone {
                frequency: f,
                level: 0.0,
                above: 0.0,
                steady: 1.0,
            }]),
        });
    html! {
        <>
            <label class="field-label" for="hear-tone">{ words::known_tone() }</label>
            <input id="hear-tone" class="entry entry-number" type="text" inputmode="decimal" autocomplete="off"
                value={teller.chosen.typed.clone()} {oninput} />
            // Always one node: what comes and goes at the end of a list makes the entry anew, without its focus.
            if let Some(said) = said { { said } }
        </>
    }
}
