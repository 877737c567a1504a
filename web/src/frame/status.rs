//! How the strategy below stands to the answers, and how far the search is; with the way to stop it. Its room is always the
//! same, so that what stands below stays where it is.

use crate::browser;
use crate::desk::use_desk;
use crate::form::SUMMARY;
use crate::language::use_language;
use crate::state::{Action, Stage, Standing, Work};
use crate::text;
use yew::prelude::*;

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct StatusProps {
    pub(crate) work: Work,
    pub(crate) standing: Standing,
    pub(crate) problems: usize,
    /// What may be said of the strategy that is shown, and whether it belongs to other answers.
    pub(crate) shown: Option<(Stage, bool)>,
    /// Time in all of the strategy that is shown.
    pub(crate) best: Option<AttrValue>,
}

/// The status line.
#[component]
pub(crate) fn Status(props: &StatusProps) -> Html {
    use_language();
    let alarm = props.problems > 0 || props.work == Work::Broken;
    let old = alarm && props.shown.is_some();
    let under = props.work == Work::Under && props.problems == 0;
    let share = percent(props.standing.share);
    html! {
        <div class={classes!("status", alarm.then_some("status-alarm"))}>
            <p class="status-words" role="status" aria-live="polite">
                if alarm { <span class="mark" aria-hidden="true">{ text::MARK }</span> }
                { words(props) }
                if old { { format!(". {}", text::stale()) } }
            </p>
            <Handle work={props.work} problems={props.problems} />
            <p class="status-figures">{ figures(props, under) }</p>
            <progress class={classes!("status-share", (!under).then_some("status-still"))}
                max="100" value={share.to_string()} aria-hidden="true"></progress>
        </div>
    }
}

fn words(props: &StatusProps) -> String {
    let said = match (props.problems, props.work, props.shown) {
        (0, Work::Broken, _) => text::search_broke(),
        (0, Work::Idle, Some((_, false))) => text::up_to_date(),
        (0, Work::Idle, _) => text::none_yet(),
        (0, Work::Under, Some((_, true))) => text::under_stale(),
        (0, Work::Under, Some((Stage::Final | Stage::Cut, false))) => text::under_lists(),
        (0, Work::Under, Some((_, false))) => text::under_first(),
        (0, Work::Under, None) => text::under_none(),
        (0, Work::Stopped, Some((Stage::Stopped, false))) => text::stopped(),
        (0, Work::Stopped, Some((_, false))) => text::stopped_lists(),
        (0, Work::Stopped, _) => text::stopped_stale(),
        (problems, _, _) => return text::problems(problems),
    };
    said.to_owned()
}

/// What stands under the words: how much was ruled out, and the best so far.
fn figures(props: &StatusProps, under: bool) -> String {
    if props.problems > 0 || props.work == Work::Broken {
        return String::new();
    }
    let current = props.shown.is_some_and(|(_, stale)| !stale);
    let best = props.best.as_deref().filter(|_| current && under);
    let share = under.then(|| percent(props.standing.share));
    text::covered(&props.standing, share, best)
}

#[derive(Clone, PartialEq, Properties)]
struct HandleProps {
    work: Work,
    problems: usize,
}

/// What can be done about it: one button, always in the same place.
#[component]
fn Handle(props: &HandleProps) -> Html {
    let desk = use_desk();
    let (name, label, onclick) = match (props.problems, props.work) {
        (0, Work::Under) => (
            text::stop(),
            text::stop_search(),
            desk.on(|_: MouseEvent| Action::Stop),
        ),
        (0, Work::Stopped) => (
            text::go_on(),
            text::go_on_search(),
            desk.on(|_: MouseEvent| Action::GoOn),
        ),
        // It keeps its place, and the focus where it has it.
        (0, Work::Idle | Work::Broken) => (text::stop(), text::stop_search(), Callback::noop()),
        _ => {
            let show = Callback::from(|_: MouseEvent| {
                browser::reveal(SUMMARY);
            });
            (text::show_problems(), text::show_problems(), show)
        }
    };
    let idle = props.problems == 0 && matches!(props.work, Work::Idle | Work::Broken);
    html! {
        <button type="button" class="button status-button" aria-label={label} {onclick}
            aria-disabled={idle.then_some("true")}>{ name }</button>
    }
}

/// A share in whole percent.
fn percent(share: f64) -> u32 {
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "between 0 and 100"
    )]
    let percent = (share.clamp(0.0, 1.0) * 100.0).floor() as u32;
    percent
}
