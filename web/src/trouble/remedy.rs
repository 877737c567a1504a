//! What to do against a cause: by hand, and with the numbers, worked out here; one change at a time.

use super::suspects::lines;
use super::told::{Done, Told, Tried};
use crate::browser;
use crate::desk::{Desk, use_desk};
use crate::form::element_id;
use crate::state::{Action, Shown};
use gloo_timers::callback::Timeout;
use std::cell::RefCell;
use std::rc::Rc;
use thinwright_core::field::Input;
use thinwright_core::trouble::{Act, Advice, Against, Change, Take, Value, advise};
use thinwright_core::{Answers, Cache, Field, FieldId, Outcome};
use thinwright_quantity::{Length, Rounding, UnitSystem, format_bare};
use thinwright_words::Speaker;
use thinwright_words::trouble as words;
use yew::prelude::*;

/// What was worked out before, kept as long as the panel stands.
#[derive(Clone, Default)]
pub(super) struct Books(Rc<RefCell<Cache>>);

impl PartialEq for Books {
    fn eq(&self, other: &Books) -> bool {
        Rc::ptr_eq(&self.0, &other.0)
    }
}

#[derive(Clone, PartialEq, Properties)]
pub(super) struct RemedyProps {
    pub(super) shown: Shown,
    pub(super) index: usize,
    pub(super) against: Against,
    pub(super) told: Told,
    pub(super) units: UnitSystem,
    pub(super) books: Books,
    pub(super) on_try: Callback<Tried>,
}

/// What was worked out, and for what.
type Worked = Option<(Against, Shown, Rc<Option<Advice>>)>;

/// What to do.
#[component]
pub(super) fn Remedy(props: &RemedyProps) -> Html {
    let desk = use_desk();
    let worked = use_state(|| None::<(Against, Shown, Rc<Option<Advice>>)>);
    {
        let (worked, books) = (worked.setter(), props.books.clone());
        let asked = (props.shown.clone(), props.index, props.against.clone());
        use_effect_with(asked, move |(shown, index, against)| {
            let (shown, index, against) = (shown.clone(), *index, against.clone());
            // After what is on its way to the screen: a web takes a moment.
            let later = Timeout::new(0, move || {
                let advice = work_out(&shown, index, &against, &mut books.0.borrow_mut());
                worked.set(Some((against, shown, Rc::new(advice))));
            });
            move || drop(later)
        });
    }
    let own = |(against, shown, _): &&(Against, Shown, Rc<Option<Advice>>)| {
        *against == props.against && *shown == props.shown
    };
    let worked: &Worked = &worked;
    let Some((_, _, advice)) = worked.as_ref().filter(own) else {
        return html! { <p class="part" role="status">{ words::working_out() }</p> };
    };
    let Some(advice) = advice.as_ref() else {
        return html! { <p class="part">{ words::waits() }</p> };
    };
    let speaker = Speaker::new(props.units, &desk.catalog, &props.shown.answers);
    let act = advice.act.filter(|act| props.told.open(*act));
    let aside: Vec<String> = advice.aside.iter().map(|c| speaker.not_taken(c)).collect();
    html! {
        <>
            if let Some(act) = act { { by_hand(props, &speaker, act) } }
            { numbers(props, (&desk, &speaker), advice, act.is_some()) }
            { lines(words::aside(), aside) }
        </>
    }
}

fn work_out(shown: &Shown, index: usize, against: &Against, cache: &mut Cache) -> Option<Advice> {
    match &*shown.outcome {
        Outcome::Feasible(strategy) => advise(&shown.job, (strategy, index), against, cache),
        Outcome::Refused(_) => None,
    }
}

/// Diameter of the step's cutter.
fn cutter(props: &RemedyProps) -> Option<Length> {
    let Outcome::Feasible(strategy) = &*props.shown.outcome else {
        return None;
    };
    let step = strategy
        .setups
        .iter()
        .flat_map(|s| &s.steps)
        .nth(props.index)?;
    let cutter = props.shown.job.rack.iter().find(|c| c.row == step.cutter)?;
    Some(Length::from_si(cutter.d))
}

fn by_hand(props: &RemedyProps, speaker: &Speaker<'_>, act: Act) -> Html {
    let (on_try, cause) = (props.on_try.clone(), props.against.cause);
    let before = props.shown.answers.clone();
    let onclick = Callback::from(move |_: MouseEvent| {
        on_try.emit(Tried {
            cause,
            done: Done::Act(act),
            fields: Vec::new(),
            before: before.clone(),
        });
    });
    html! {
        <>
            { lines(words::by_hand(), vec![speaker.act(act, cutter(props))]) }
            { act.fills().map(|field| fill_in(speaker, field)) }
            <button type="button" class="button trouble-button" {onclick}>{ words::done_by_hand() }</button>
        </>
    }
}

/// A way to an answer that changes with what was done.
fn fill_in(speaker: &Speaker<'_>, field: Field) -> Html {
    let id = element_id(field.into());
    let href = format!("#{id}");
    let onclick = Callback::from(move |event: MouseEvent| {
        event.prevent_default();
        browser::reveal(&id);
    });
    html! {
        <p class="hear-by-hand"><a {href} {onclick}>{ words::fill_in(&speaker.place(field.into())) }</a></p>
    }
}

fn numbers(
    props: &RemedyProps,
    (desk, speaker): (&Desk, &Speaker<'_>),
    advice: &Advice,
    after_hand: bool,
) -> Html {
    let heading = if after_hand {
        words::then_change()
    } else {
        words::first_change()
    };
    let divided = speaker.divided(advice);
    let divided = html! { if let Some(line) = divided { <p class="part">{ line }</p> } };
    let Some(change) = &advice.change else {
        return html! { <>{ divided }<p class="part">{ words::no_change() }</p></> };
    };
    let onclick = take(props, desk, change);
    html! {
        <>
            <h5 class="part-name">{ heading }</h5>
            <p class="part trouble-change">{ speaker.moved(change) }</p>
            { table(speaker, change) }
            <ul class="part part-list">
                { for speaker.moved_limits(change).into_iter().map(|line| html! { <li>{ line }</li> }) }
            </ul>
            { divided }
            { change.aim.map(|(field, _)| fill_in(speaker, field)) }
            <p class="part">{ words::one_change() }</p>
            <button type="button" class="button button-strong trouble-button" {onclick}>
                { if change.take.is_empty() { words::done_by_hand() } else { words::try_it() } }
            </button>
        </>
    }
}

fn table(speaker: &Speaker<'_>, change: &Change) -> Html {
    let row = |row: words::Row| {
        let turned = row.changes().then_some("trouble-turned");
        html! {
            <tr class={classes!(turned)}>
                <th scope="row">{ row.name }if !row.symbol.is_empty() { { " " }<i class="symbol">{ row.symbol }</i> }</th>
                <td>{ row.from }</td>
                <td>{ row.to }</td>
            </tr>
        }
    };
    html! {
        <table class="trouble-table">
            <thead><tr>
                <th scope="col">{ words::number() }</th>
                <th scope="col">{ words::now() }</th>
                <th scope="col">{ words::then() }</th>
            </tr></thead>
            <tbody>{ for speaker.moved_rows(change).into_iter().map(row) }</tbody>
        </table>
    }
}

/// Takes a change over, and remembers what stood there.
fn take(props: &RemedyProps, desk: &Desk, change: &Change) -> Callback<MouseEvent> {
    let answers = props.shown.answers.clone();
    let (desk, on_try) = (desk.clone(), props.on_try.clone());
    let tried = Tried {
        cause: props.against.cause,
        done: Done::Move(change.step),
        fields: change.take.iter().map(|t| t.field).collect(),
        before: answers.clone(),
    };
    let texts: Vec<(FieldId, String)> = change
        .take
        .iter()
        .filter_map(|t| typed(t, &answers))
        .collect();
    Callback::from(move |_: MouseEvent| {
        if !texts.is_empty() {
            desk.say(Action::Keep(texts.clone()));
        }
        on_try.emit(tried.clone());
    })
}

/// An answer as a person types it, in the units of the answers.
fn typed(take: &Take, answers: &Answers) -> Option<(FieldId, String)> {
    let text = match (take.value, take.field.field.spec().input) {
        (Value::Si(si), Input::Quantity(kind)) => {
            format_bare(kind, si, answers.units, Rounding::Nearest)
        }
        (Value::Si(_), _) => return None,
        (Value::Key(key), _) => key.to_owned(),
        (Value::Count(count), _) => count.to_string(),
    };
    Some((take.field, text))
}
