//! How the strategy below stands to the answers: in words, read out when they change.

use crate::browser;
use crate::form::SUMMARY;
use crate::state::Work;
use crate::text;
use yew::prelude::*;

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct StatusProps {
    pub(crate) work: Work,
    pub(crate) problems: usize,
    /// A strategy is shown.
    pub(crate) shown: bool,
}

/// The status line.
#[component]
pub(crate) fn Status(props: &StatusProps) -> Html {
    let (share, words) = match (props.problems, props.work) {
        (0, Work::Idle) => (
            None,
            if props.shown {
                text::UP_TO_DATE
            } else {
                text::NONE_YET
            }
            .to_owned(),
        ),
        (0, Work::Under(share)) => (Some(share), text::working(percent(share))),
        (0, Work::Broken) => (None, text::SEARCH_BROKE.to_owned()),
        (problems, _) => (None, text::problems(problems)),
    };
    let old = props.shown && (props.problems > 0 || props.work == Work::Broken);
    let alarm = props.problems > 0 || props.work == Work::Broken;
    let show = Callback::from(|_: MouseEvent| {
        browser::reveal(SUMMARY);
    });
    html! {
        <div class={classes!("status", alarm.then_some("status-alarm"))}>
            <p class="status-words" role="status" aria-live="polite">
                if alarm { <span class="mark" aria-hidden="true">{ text::MARK }</span> }
                { words }
                if old { { format!(". {}", text::STALE) } }
            </p>
            if props.problems > 0 {
                <button type="button" class="button" onclick={show}>{ text::SHOW_PROBLEMS }</button>
            }
            if let Some(share) = share {
                <progress class="status-share" max="100" value={percent(share).to_string()} aria-hidden="true"></progress>
            }
        </div>
    }
}

/// A share in whole percent, to steps that are worth reading out.
fn percent(share: f64) -> u32 {
    const STEPS: f64 = 10.0;
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "between 0 and 100"
    )]
    let percent = ((share.clamp(0.0, 1.0) * STEPS).floor() * 100.0 / STEPS) as u32;
    percent
}
