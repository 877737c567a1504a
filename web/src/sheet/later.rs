//! The sheet as the page keeps it for the printer: laid out once the screen has been, so that neither holds up the hand.

use super::{Sheet, Stamp, same};
use crate::language::use_language;
use crate::state::{Shown, State};
use crate::text;
use gloo_timers::callback::Timeout;
use std::rc::Rc;
use thinwright_core::WebPicture;
use yew::prelude::*;

#[derive(Clone, Properties)]
pub(crate) struct PaperProps {
    /// What may be printed.
    pub(crate) shown: Option<Shown>,
    /// The web where it is softest, once it has been looked at: the printer does not wait for it.
    pub(crate) web: Option<Rc<WebPicture>>,
    /// What else belongs on the sheet.
    pub(crate) stamp: Stamp,
}

impl PaperProps {
    pub(crate) fn of(state: &State) -> PaperProps {
        PaperProps {
            shown: state.printable().cloned(),
            web: state.softest_web(),
            stamp: Stamp::of(state),
        }
    }
}

impl PartialEq for PaperProps {
    fn eq(&self, other: &PaperProps) -> bool {
        let same_web = same(&self.web, &other.web);
        self.shown == other.shown && same_web && self.stamp == other.stamp
    }
}

/// The sheet, or why there is none.
#[component]
pub(crate) fn Paper(props: &PaperProps) -> Html {
    use_language();
    let laid_out = use_state(|| None::<Shown>);
    {
        let laid_out = laid_out.clone();
        use_effect_with(props.shown.clone(), move |shown| {
            let shown = shown.clone();
            let later = Timeout::new(0, move || laid_out.set(shown));
            move || drop(later)
        });
    }
    match &*laid_out {
        // Never one that does not belong to what is on the screen.
        Some(shown) if props.shown.as_ref() == Some(shown) => {
            html! { <Sheet shown={shown.clone()} web={props.web.clone()} stamp={props.stamp.clone()} /> }
        }
        _ => html! { <p class="sheet-none">{ text::not_printable() }</p> },
    }
}
