//! The jobs of the shop.

use super::asked::local_date;
use super::row::Row;
use crate::desk::use_desk;
use crate::state::{Action, Stock};
use crate::text::shop as text;
use std::rc::Rc;
use thinwright_jobfile::shop::{Content, Kind, Thing};
use yew::prelude::*;

#[derive(Clone, PartialEq, Properties)]
pub(super) struct JobsProps {
    pub(super) stock: Rc<Stock>,
    /// The job in hand.
    pub(super) id: Rc<str>,
}

/// The list, the job that was changed last first.
#[component]
pub(super) fn Jobs(props: &JobsProps) -> Html {
    let desk = use_desk();
    let shop = &props.stock.shop;
    let names = shop.names(Kind::Job);
    let about = |thing: &Thing| {
        let date = text::changed_on(&local_date(&thing.changed, desk.language.tag()));
        match &thing.content {
            Content::Job(job) if !job.records.is_empty() => {
                format!("{date}; {}", text::runs(job.records.len()))
            }
            _ => date,
        }
    };
    let row = |thing: &Thing| {
        html! {
            <Row key={thing.id.clone()} thing={thing.clone()} about={about(thing)} names={names.clone()}
                in_hand={*thing.id == *props.id} />
        }
    };
    html! {
        <section aria-label={text::kind(Kind::Job)}>
            <div class="shop-new">
                <button type="button" class="button" aria-describedby="shop-new-why"
                    onclick={desk.on(|_: MouseEvent| Action::NewJob)}>{ text::new_job() }</button>
                <p class="shop-about" id="shop-new-why">{ text::new_job_why() }</p>
            </div>
            if names.is_empty() { <p>{ text::none_yet(Kind::Job) }</p> }
            <ul class="shop-list">{ shop.of(Kind::Job).map(row).collect::<Html>() }</ul>
        </section>
    }
}
