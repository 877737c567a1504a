//! The whole page: title block, answers, drawing, strategy, and the sheet that only paper shows.

use crate::browser;
use crate::confirm::{Confirm, ConfirmProps};
use crate::desk::Desk;
use crate::drawing::Drawing;
use crate::engine::use_engine;
use crate::form::{Form, Questions, element_id};
use crate::frame::{Messages, Status, Title};
use crate::hear::Hear;
use crate::keep::{Keeping, Kept, KeptProps};
use crate::keeping::{first, use_theme};
use crate::lectern::{Lectern, LecternProps, use_open};
use crate::map::WebView;
use crate::run::{Ran, RanProps};
use crate::share::{Arrived, ArrivedProps};
use crate::sheet::{Paper, PaperProps};
use crate::shop::{BackProps, Begun, Keeper, ShopProps, use_back_keys, use_hand};
use crate::state::{Action, State};
use crate::steady::use_steady;
use crate::strategy::Route;
use crate::text;
use crate::trouble::Trouble;
use crate::version::{Foot, Newer};
use std::rc::Rc;
use thinwright_core::{FieldId, Outcome};
use thinwright_words::Speaker;
use yew::prelude::*;

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct AppProps {
    /// Something that went wrong before the page began.
    pub(crate) news: Option<String>,
    /// What was kept.
    pub(crate) begun: Rc<Begun>,
}

/// The page.
#[component]
pub(crate) fn App(props: &AppProps) -> Html {
    let state = {
        let (begun, news) = (props.begun.clone(), props.news.clone());
        use_reducer(move || first(&begun, news))
    };
    let keeper = &props.begun.keeper;
    let desk = use_memo(state.language, |&language| {
        Desk::new(state.catalog.clone(), language, state.dispatcher())
    });
    use_engine(&desk, &state);
    use_steady();
    let at_machine = use_open();
    use_hand(&desk, &state, keeper);
    use_back_keys(&desk);
    use_theme(&state);
    let file = {
        let state = state.clone();
        Callback::from(move |()| state.file())
    };
    let name = state.file().name().to_owned();
    let name = if name.is_empty() {
        text::no_name().to_owned()
    } else {
        name
    };
    let questions = Questions::of(&state);
    html! {
        <ContextProvider<Desk> context={(*desk).clone()}><ContextProvider<Keeper> context={keeper.clone()}>
            <div class="screen" inert={at_machine}>
                <a class="skip" href="#strategy">{ text::skip() }</a>
                <Title
                    {name} units={state.answers.units} theme={state.theme}
                    printable={state.printable().is_some()} file={file.clone()}
                    back={BackProps::of(&state)} shop={ShopProps::of(&state)}
                />
                <Newer />
                <Messages messages={state.messages.clone()} />
                <Arrived ..ArrivedProps::of(&state, file) />
                <main class="page">
                    { drawing(&desk, &state) }
                    <section class="answers" id="answers" aria-label={text::answers()}>
                        <Form questions={questions.clone()} />
                        <Hear answers={state.answers.clone()} shown={state.shown.clone()} step={state.step} units={state.answers.units} />
                    </section>
                    { strategy(&state, &questions) }
                </main>
                <Foot />
                { jump() }
            </div>
            <Lectern ..LecternProps::of(&state) />
            <Paper ..PaperProps::of(&state) />
        </ContextProvider<Keeper>></ContextProvider<Desk>>
    }
}

fn drawing(desk: &Desk, state: &State) -> Html {
    let on_light = desk.on(|lit: Option<FieldId>| {
        if let Some(id) = lit {
            browser::bring_into_view("answers", &element_id(id));
        }
        Action::Light(lit)
    });
    html! {
        <section class="drawing-frame" id="drawing" aria-label={text::drawing()}>
            <div class="drawings">
                <Drawing
                    job={state.job.clone()} lit={state.lit} {on_light} step={state.step}
                    outcome={state.shown.as_ref().map(|s| s.outcome.clone())} web={state.web_in_hand()}
                />
                if let Some(shown) = state.shown.clone() {
                    <WebView {shown} step={state.step} looks={state.looks.clone()} units={state.answers.units} />
                } else if state.job.is_some() {
                    <div class="web web-waits"><p>{ thinwright_words::map::working_out() }</p></div>
                }
            </div>
        </section>
    }
}

fn strategy(state: &State, questions: &Questions) -> Html {
    let (shown, stale) = (state.shown.clone(), state.stale());
    let speaker = Speaker::new(state.answers.units, &state.catalog, &state.answers);
    let best = shown.as_ref().and_then(|shown| match &*shown.outcome {
        Outcome::Feasible(strategy) => Some(AttrValue::from(speaker.time(strategy.time))),
        Outcome::Refused(_) => None,
    });
    let keeping = Keeping::of(state, questions);
    let standing = (shown.clone(), stale);
    let kept = KeptProps::new(
        keeping.clone(),
        standing,
        state.answers.clone(),
        state.job.as_ref(),
    );
    html! {
        <section class="strategy" id="strategy" tabindex="-1" aria-labelledby="strategy-name">
            <h2 class="section-name" id="strategy-name">{ text::strategy() }</h2>
            <Status
                work={state.work} standing={state.standing} problems={state.problems.len()} {best}
                shown={shown.as_ref().map(|s| (s.stage, stale))}
            />
            <Kept ..kept />
            if let Some(shown) = shown {
                <Confirm ..ConfirmProps::of(&shown, state) />
                <Route
                    shown={shown.clone()} baseline={state.baseline.clone()} units={state.answers.units} step={state.step}
                    {stale} {keeping} charts={state.charts.clone()}
                />
                <Trouble {shown} step={state.step} units={state.answers.units} {stale} squeal={state.squeal} />
            }
            <Ran ..RanProps::of(state, &questions.problems) />
        </section>
    }
}

/// The way from part to part where they stand under each other.
fn jump() -> Html {
    let parts = [
        ("#drawing", text::drawing()),
        ("#answers", text::answers()),
        ("#strategy", text::strategy()),
    ];
    let link = |(href, name): (&'static str, &'static str)| html! { <a {href}>{ name }</a> };
    html! { <nav class="jump" aria-label={text::parts()}>{ parts.map(link).into_iter().collect::<Html>() }</nav> }
}
