//! The page was opened by a link, or one was put into its address: its job is taken in, and the address is plain again.

use super::compare::{Meeting, Row, Which, job, meet, rows};
use crate::browser;
use crate::desk::{Desk, use_desk};
use crate::state::{Action, Message, State, Stock};
use crate::text::links as text;
use std::rc::Rc;
use thinwright_core::Answers;
use thinwright_jobfile::shop::Kind;
use thinwright_jobfile::{ENGINE, JobFile, LinkError, LinkedJob};
use wasm_bindgen::prelude::*;
use yew::prelude::*;

/// The heading of what has changed, which takes the focus.
const HEADING: &str = "arrived";

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct ArrivedProps {
    /// Gives the job in hand when it is asked for.
    file: Callback<(), JobFile>,
    /// The answers in hand: the comparison follows them.
    answers: Rc<Answers>,
    /// The person's shop.
    stock: Rc<Stock>,
}

impl ArrivedProps {
    pub(crate) fn of(state: &State, file: Callback<(), JobFile>) -> ArrivedProps {
        ArrivedProps {
            file,
            answers: state.answers.clone(),
            stock: state.stock.clone(),
        }
    }

    /// A job that there is.
    fn job(&self, which: &Which) -> Option<JobFile> {
        match which {
            Which::InHand => Some(self.file.emit(())),
            Which::Kept(id) => {
                let mut all = self.stock.shop.of(Kind::Job);
                job(all.find(|thing| thing.id == *id)?).cloned()
            }
        }
    }
}

/// A job that came by link and has other answers than one of the same name, until the person has chosen.
#[component]
pub(crate) fn Arrived(props: &ArrivedProps) -> Html {
    let desk = use_desk();
    let waiting = use_state(|| None::<(LinkedJob, Which)>);
    let present = use_mut_ref(|| props.clone());
    *present.borrow_mut() = props.clone();
    {
        let (desk, waiting) = (desk.clone(), waiting.setter());
        use_effect_with((), move |()| {
            let look = move || {
                if let Some(linked) = take() {
                    waiting.set(receive(&desk, linked, &present.borrow()));
                }
            };
            look();
            let heard = Heard::new(look);
            move || drop(heard)
        });
    }
    let Some((linked, which)) = (*waiting).clone() else {
        return html! {};
    };
    let Some(there) = props.job(&which) else {
        return html! {};
    };
    let differ = rows(&desk.catalog, &linked.answers, &there.answers);
    let answer = |printed: bool| {
        let (desk, waiting) = (desk.clone(), waiting.setter());
        let (linked, which, there) = (linked.clone(), which.clone(), there.clone());
        Callback::from(move |_: MouseEvent| {
            match &which {
                _ if printed => open_as_printed(&desk, &linked, &there),
                Which::Kept(id) => desk.say(Action::OpenJob(id.clone())),
                Which::InHand => {}
            }
            waiting.set(None);
        })
    };
    html! {
        <section class="arrived" aria-labelledby={HEADING}>
            <h2 class="section-name" id={HEADING} tabindex="-1">{ text::changed_since() }</h2>
            <p>{ text::sheet_of(&linked.digest(), &linked.engine) }</p>
            if linked.other_engine() { <p>{ text::other_engine(&linked.engine, ENGINE) }</p> }
            { table(&differ) }
            <div class="buttons">
                <button type="button" class="button button-strong" onclick={answer(false)}>{ text::keep_present() }</button>
                <button type="button" class="button" onclick={answer(true)}>{ text::open_printed() }</button>
            </div>
        </section>
    }
}

fn table(rows: &[Row]) -> Html {
    if rows.is_empty() {
        return html! { <p>{ text::written_otherwise() }</p> };
    }
    let row = |row: &Row| {
        html! { <tr><th scope="row">{ &row.place }</th><td>{ &row.sheet }</td><td>{ &row.now }</td></tr> }
    };
    html! {
        <table class="arrived-table">
            <thead><tr>
                <th scope="col">{ text::answer() }</th><th scope="col">{ text::on_the_sheet() }</th><th scope="col">{ text::now() }</th>
            </tr></thead>
            <tbody>{ rows.iter().map(row).collect::<Html>() }</tbody>
        </table>
    }
}

/// The link in the page's address, if one is there. A good one is taken out of the address; a bad one stays, so that a
/// newer version of the page may still read it.
fn take() -> Option<Result<LinkedJob, LinkError>> {
    let window = web_sys::window()?;
    let location = window.location();
    let fragment = location.hash().ok()?;
    if !LinkedJob::is_meant(&fragment) {
        return None;
    }
    let read = LinkedJob::read(&fragment);
    if read.is_ok() {
        let href = location.href().ok()?;
        let plain = href.split('#').next().unwrap_or(&href);
        let history = window.history().ok();
        let nothing = JsValue::NULL;
        drop(history.map(|h| h.replace_state_with_url(&nothing, "", Some(plain))));
    }
    Some(read)
}

/// Says what a link brought; gives it back where the person has to choose.
fn receive(
    desk: &Desk,
    linked: Result<LinkedJob, LinkError>,
    present: &ArrivedProps,
) -> Option<(LinkedJob, Which)> {
    let tell = |text: String, alarm| desk.say(Action::Tell(Message { text, alarm }));
    let linked = match linked {
        Ok(linked) => linked,
        Err(error) => {
            tell(text::link_not_read(&text::link_fault(&error)), true);
            return None;
        }
    };
    let engines = |text: String| match linked.other_engine() {
        true => text::and_other_engine(&text, &linked.engine, ENGINE),
        false => text,
    };
    let in_hand = present.file.emit(());
    match meet(&linked, &in_hand, &present.stock.shop) {
        Meeting::Same(which) => {
            if let Which::Kept(id) = which {
                desk.say(Action::OpenJob(id));
            }
            tell(engines(text::nothing_changed().to_owned()), false);
        }
        Meeting::Other => {
            let file = linked.file();
            let told = text::came_by_link(file.name(), in_hand.name());
            desk.say(Action::Load(Box::new(file)));
            tell(engines(told), false);
        }
        Meeting::Changed(which) => {
            browser::focus(HEADING);
            return Some((linked, which));
        }
    }
    None
}

/// The answers of the sheet in place of those that there are; what was run and confirmed goes on belonging to the job.
fn open_as_printed(desk: &Desk, linked: &LinkedJob, there: &JobFile) {
    let file = JobFile {
        records: there.records.clone(),
        confirmed: there.confirmed.clone(),
        ..linked.file()
    };
    desk.say(Action::Load(Box::new(file)));
}

/// Calls whenever the part behind `#` changes; kept for as long as it shall.
struct Heard(Closure<dyn FnMut()>);

impl Heard {
    fn new(then: impl FnMut() + 'static) -> Heard {
        let called = Closure::<dyn FnMut()>::new(then);
        if let Some(window) = web_sys::window() {
            let listener = called.as_ref().unchecked_ref();
            drop(window.add_event_listener_with_callback("hashchange", listener));
        }
        Heard(called)
    }
}

impl Drop for Heard {
    fn drop(&mut self) {
        if let Some(window) = web_sys::window() {
            let listener = self.0.as_ref().unchecked_ref();
            drop(window.remove_event_listener_with_callback("hashchange", listener));
        }
    }
}
