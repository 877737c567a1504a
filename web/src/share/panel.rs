//! The job handed on: its link to copy, its code large on the screen, and what a link can and cannot do.

use super::address::{Home, base, home, keep, kept, named, own};
use super::code;
use crate::browser;
use crate::desk::use_desk;
use crate::language::use_language;
use crate::state::{Action, Message};
use crate::text::{self as words, links as text};
use thinwright_jobfile::{ENGINE, JobFile, LinkedJob};
use web_sys::{HtmlDialogElement, HtmlInputElement};
use yew::prelude::*;

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct ShareProps {
    /// Gives the job in hand when it is asked for.
    pub(crate) file: Callback<(), JobFile>,
}

/// The button, and what it opens.
#[component]
pub(crate) fn Share(props: &ShareProps) -> Html {
    use_language();
    let dialog = use_node_ref();
    let job = use_state(|| None::<LinkedJob>);
    let open = {
        let (dialog, job, file) = (dialog.clone(), job.clone(), props.file.clone());
        Callback::from(move |_: MouseEvent| {
            job.set(Some(LinkedJob::of(&file.emit(()))));
            if let Some(dialog) = dialog.cast::<HtmlDialogElement>() {
                drop(dialog.show_modal());
            }
        })
    };
    let close = {
        let dialog = dialog.clone();
        Callback::from(move |_: MouseEvent| {
            if let Some(dialog) = dialog.cast::<HtmlDialogElement>() {
                dialog.close();
            }
        })
    };
    let closed = {
        let job = job.clone();
        Callback::from(move |_: Event| job.set(None))
    };
    html! {
        <div class="title-cell" role="group" aria-label={text::share()}>
            <span class="title-label" aria-hidden="true">{ text::share() }</span>
            <button type="button" class="button" onclick={open}>{ text::link_and_code() }</button>
            <dialog class="share" ref={dialog} aria-labelledby="share-name" onclose={closed}>
                <h2 class="section-name" id="share-name">{ text::job_as_link() }</h2>
                if let Some(job) = (*job).clone() { <Handed {job} /> }
                <button type="button" class="button" onclick={close}>{ text::close() }</button>
            </dialog>
        </div>
    }
}

#[derive(Clone, PartialEq, Properties)]
struct HandedProps {
    job: LinkedJob,
}

/// Link and code of a job.
#[component]
fn Handed(props: &HandedProps) -> Html {
    let desk = use_desk();
    // Counts the addresses that were named, so that link and code follow.
    let named = use_state(|| 0_u32);
    let fragment = match props.job.write() {
        Ok(fragment) => fragment,
        Err(error) => {
            return html! { <p>{ text::no_link(&text::link_fault(&error)) }</p> };
        }
    };
    let own = own().unwrap_or_default();
    let (here, who) = home(&own);
    let lead = base();
    let link = format!("{}#{fragment}", lead.as_deref().unwrap_or(here));
    let code = lead.map(|base| code(&base, &fragment, &desk.catalog.numbers));
    let on_named = Callback::from(move |()| named.set(*named + 1));
    html! {
        <>
            <p>{ text::goes_along() }</p>
            <LinkLine {link} />
            <p class="share-stamp">{ text::stamp(&props.job.digest(), ENGINE) }</p>
            if let Some(warning) = text::who_can_open(who) { <p class="share-who">{ warning }</p> }
            if who != Home::Served { <Elsewhere {on_named} /> }
            {
                match code {
                    Some(Some(code)) => code.draw("share-code", None),
                    Some(None) => html! { <p>{ text::code_too_large() }</p> },
                    None => html! { <p>{ text::code_needs_address() }</p> },
                }
            }
        </>
    }
}

#[derive(Clone, PartialEq, Properties)]
struct LinkLineProps {
    link: AttrValue,
}

/// The link, to be copied.
#[component]
fn LinkLine(props: &LinkLineProps) -> Html {
    use_language();
    let copied = use_state(|| None::<bool>);
    let onclick = {
        let (copied, link) = (copied.clone(), props.link.clone());
        Callback::from(move |_: MouseEvent| {
            let copied = copied.clone();
            browser::copy(&link, Callback::from(move |done| copied.set(Some(done))));
        })
    };
    let onfocus = Callback::from(|event: FocusEvent| {
        event.target_unchecked_into::<HtmlInputElement>().select();
    });
    let told = match *copied {
        None => "",
        Some(true) => text::copied(),
        Some(false) => text::not_copied(),
    };
    html! {
        <>
            <label for="share-link">{ text::link() }</label>
            <div class="share-line">
                <input class="entry" id="share-link" readonly=true value={props.link.clone()} {onfocus} />
                <button type="button" class="button" {onclick}>{ words::copy() }</button>
            </div>
            <p role="status">{ told }</p>
        </>
    }
}

#[derive(Clone, PartialEq, Properties)]
struct ElsewhereProps {
    on_named: Callback<()>,
}

/// Where the page is served for others, as the person names it.
#[component]
fn Elsewhere(props: &ElsewhereProps) -> Html {
    let desk = use_desk();
    let wrong = use_state(|| false);
    let onchange = {
        let (wrong, on_named) = (wrong.clone(), props.on_named.clone());
        Callback::from(move |event: Event| {
            let typed = event.target_unchecked_into::<HtmlInputElement>().value();
            let address = if typed.trim().is_empty() {
                Some("")
            } else {
                named(&typed)
            };
            wrong.set(address.is_none());
            if let Some(address) = address {
                let alarm = !keep(address);
                let text = if alarm {
                    words::not_kept()
                } else {
                    text::links_lead(address.is_empty())
                };
                let text = text.to_owned();
                desk.say(Action::Tell(Message { text, alarm }));
                on_named.emit(());
            }
        })
    };
    html! {
        <>
            <label for="share-address">{ text::served_at() }</label>
            <input class="entry" id="share-address" type="url" inputmode="url" autocomplete="url" placeholder="https://"
                value={kept().unwrap_or_default()} {onchange} aria-invalid={wrong.then_some("true")} aria-describedby="share-wrong" />
            <p class="share-wrong" id="share-wrong">if *wrong { { text::no_address() } }</p>
        </>
    }
}
