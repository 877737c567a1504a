//! The job in hand: kept by itself after each change, and watched in the other windows.

use super::asked;
use super::keeper::{Keeper, name_open, worth_keeping};
use crate::desk::Desk;
use crate::state::State;
use thinwright_jobfile::shop::{Content, Thing};
use wasm_bindgen::prelude::*;
use yew::prelude::*;

/// Keeps the job in hand, and hears of the other windows.
#[hook]
pub(crate) fn use_hand(desk: &Desk, state: &UseReducerHandle<State>, keeper: &Keeper) {
    {
        let (desk, keeper, state) = (desk.clone(), keeper.clone(), state.clone());
        let job = (
            state.answers.clone(),
            state.records.clone(),
            state.confirmed.clone(),
            state.title.clone(),
            state.id.clone(),
        );
        use_effect_with(job, move |_| {
            let content = Content::from(state.file());
            if worth_keeping(&state.stock.shop, &state.id, &content) {
                let thing = Thing::new(&*state.id, asked::date(0.0), content);
                keeper.take_up(&desk, thing, &state.stock.shop, state.moves);
            } else if let Some(sample) = super::sample_of(&content) {
                name_open(&format!("{}{}", super::SAMPLE, sample.id));
            }
        });
    }
    let (desk, keeper) = (desk.clone(), keeper.clone());
    use_effect_with((), move |()| {
        let hear = {
            let (desk, keeper) = (desk.clone(), keeper.clone());
            Closure::<dyn FnMut()>::new(move || keeper.look_again(&desk))
        };
        if let Some(channel) = keeper.channel() {
            channel.set_onmessage(Some(hear.as_ref().unchecked_ref()));
        }
        // A page that is put away may never come back.
        let heard = keeper.clone();
        let away = asked::when_hidden(move || keeper.hurry(&desk));
        move || {
            if let Some(channel) = heard.channel() {
                channel.set_onmessage(None);
            }
            drop((hear, away));
        }
    });
}
