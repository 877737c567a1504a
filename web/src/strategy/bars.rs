//! The limits of a step: how far each is used, with the limit line at 1, and what would help.

use super::step::step_of;
use crate::desk::use_desk;
use crate::state::Shown;
use crate::text;
use thinwright_core::limits::{LIMITS, Severity};
use thinwright_core::strategy::{Finding, Step};
use thinwright_quantity::UnitSystem;
use thinwright_words::{Band, Speaker, band, limit_name, unknown_name, utilisation, verdict};
use yew::prelude::*;

/// Where the limit line stands, and where a bar ends whatever the figure, in the picture's units.
const LINE: f64 = 100.0;
const END: f64 = 150.0;

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct FindingsProps {
    pub(crate) shown: Shown,
    pub(crate) setup: usize,
    pub(crate) at: usize,
    pub(crate) units: UnitSystem,
}

/// All limits of a step, the closest first.
#[component]
pub(crate) fn Findings(props: &FindingsProps) -> Html {
    let desk = use_desk();
    let Some(step) = step_of(&props.shown, props.setup, props.at) else {
        return html! {};
    };
    let speaker = Speaker::new(props.units, &desk.catalog, &props.shown.answers);
    let rows = step
        .findings
        .iter()
        .map(|finding| row(&speaker, step, finding));
    html! {
        <>
            <h5 class="part-name">{ text::limits() }</h5>
            <p class="part part-quiet">{ text::how_bars_read() }</p>
            <ul class="findings">{ rows.collect::<Html>() }</ul>
        </>
    }
}

fn row(speaker: &Speaker<'_>, step: &Step, finding: &Finding) -> Html {
    let holds = speaker.catalog.numbers.utilisation_holds;
    let (worst, likely) = (finding.utilisation(), finding.at_likely.utilisation());
    let class = match (band(worst, holds), finding.severity) {
        (Band::Holds, _) => "bar-holds",
        (Band::Fails, Severity::Stop | Severity::Quality | Severity::Advice) => "bar-fails",
        // A tone is listened for, whatever the figure.
        (Band::Tight, _) | (Band::Fails, Severity::Listen) => "bar-tight",
    };
    let remedies = finding
        .remedies
        .iter()
        .map(|r| html! { <li>{ speaker.remedy(r, step) }</li> });
    html! {
        <li class="finding">
            <div class="finding-head">
                <span class="finding-name">
                    if class == "bar-fails" { <span class="mark" aria-hidden="true">{ text::MARK }</span> }
                    { limit_name(finding.limit) }
                </span>
                <span class="figure">{ utilisation(worst) }</span>
                <span class="finding-verdict">{ verdict(finding, holds) }</span>
            </div>
            { bar(class, worst, likely) }
            <p class="part">{ speaker.finding(finding) }</p>
            <p class="part part-quiet">
                { text::likely(&utilisation(likely)) }{ " " }
                if let Some(unknown) = finding.set_by { { text::set_by(unknown_name(unknown)) } { " " } }
                { text::severity(thinwright_words::severity(finding.severity)) }{ " " }
                { source(speaker, finding) }
            </p>
            if !finding.remedies.is_empty() {
                <div class="remedies">
                    <span class="remedies-name">{ text::would_help() }</span>
                    <ul class="remedies-list">{ remedies.collect::<Html>() }</ul>
                </div>
            }
        </li>
    }
}

/// A bar with its limit line; the words beside it say the same.
fn bar(class: &'static str, worst: f64, likely: f64) -> Html {
    let at = |u: f64| format!("{:.1}", (u * LINE).clamp(0.0, END));
    html! {
        <svg class="bar" viewBox="0 0 152 12" preserveAspectRatio="none" aria-hidden="true">
            <rect class="bar-track" x="0" y="3" width="150" height="6" />
            <rect class={classes!("bar-used", class)} x="0" y="3" width={at(worst)} height="6" />
            <line class="bar-likely" x1={at(likely)} x2={at(likely)} y1="1" y2="11" />
            <line class="bar-limit" x1="100" x2="100" y1="0" y2="12" />
        </svg>
    }
}

/// Where the limit comes from.
fn source(speaker: &Speaker<'_>, finding: &Finding) -> String {
    let limit = LIMITS.iter().find(|l| l.id == finding.limit);
    let entry = limit.and_then(|l| speaker.catalog.source(l.source));
    entry
        .map(|e| text::source(&e.author, &e.title, &e.year))
        .unwrap_or_default()
}
