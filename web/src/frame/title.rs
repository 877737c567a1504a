//! The title block: whose sheet it is, and what can be done with it.

use super::tools::{Files, Paper, Samples};
use crate::desk::use_desk;
use crate::language::{LanguageChoice, use_language};
use crate::share::Share;
use crate::shop::{Back, BackProps, Shop, ShopProps};
use crate::state::{Action, Theme};
use crate::text;
use thinwright_jobfile::JobFile;
use thinwright_quantity::UnitSystem;
use yew::prelude::*;

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct TitleProps {
    /// What the job is called.
    pub(crate) name: AttrValue,
    pub(crate) units: UnitSystem,
    pub(crate) theme: Theme,
    pub(crate) printable: bool,
    /// Gives the file when it is asked for.
    pub(crate) file: Callback<(), JobFile>,
    /// What can be taken back and done again.
    pub(crate) back: BackProps,
    pub(crate) shop: ShopProps,
}

/// The title block.
#[component]
pub(crate) fn Title(props: &TitleProps) -> Html {
    use_language();
    html! {
        <header class="title">
            <div class="title-cell title-name">
                <h1 class="title-product">{ text::PRODUCT }</h1>
            </div>
            <div class="title-cell title-job">
                <span class="title-label">{ text::job() }</span>
                <span class="title-value">{ props.name.clone() }</span>
            </div>
            <UnitsChoice units={props.units} />
            <LanguageChoice />
            <Back ..props.back.clone() />
            <Samples />
            <Files file={props.file.clone()} />
            <Shop ..props.shop.clone() />
            <Share file={props.file.clone()} />
            <Paper theme={props.theme} printable={props.printable} />
        </header>
    }
}

#[derive(Clone, PartialEq, Properties)]
struct UnitsProps {
    units: UnitSystem,
}

/// Millimetres or inches, one touch each.
#[component]
fn UnitsChoice(props: &UnitsProps) -> Html {
    let desk = use_desk();
    let choice = |units: UnitSystem, name: &'static str| {
        let onclick = desk.on(move |_: MouseEvent| Action::Units(units));
        let pressed = (props.units == units).to_string();
        html! { <button type="button" class="button pair" aria-pressed={pressed} {onclick}>{ name }</button> }
    };
    html! {
        <div class="title-cell title-units" role="group" aria-label={text::units()}>
            <span class="title-label" aria-hidden="true">{ text::units() }</span>
            <div class="buttons">
                { choice(UnitSystem::Metric, text::millimetres()) }
                { choice(UnitSystem::Inch, text::inches()) }
            </div>
        </div>
    }
}
