//! What was heard, told: taps and what they are good for, a cut and what it says.

use super::analysis::{CutHeard, TapsHeard};
use super::chart::picture;
use super::judge::{advice, judged, rates, squeal, teeth};
use super::{Chosen, HearProps};
use crate::browser;
use crate::desk::Desk;
use crate::form::element_id;
use crate::map::steps;
use crate::state::Action;
use thinwright_core::strategy::Step;
use thinwright_core::{Field, FieldId, Job, Known, Outcome};
use thinwright_quantity::Frequency;
use thinwright_sound::{Agreed, Tone};
use thinwright_words::Speaker;
use thinwright_words::hear::{self as words, CutTone, Use};
use yew::prelude::*;

/// What telling needs.
pub(super) struct Teller<'a> {
    pub(super) desk: &'a Desk,
    pub(super) speaker: Speaker<'a>,
    pub(super) props: &'a HearProps,
    pub(super) chosen: &'a Chosen,
    /// It still listens.
    pub(super) on: bool,
}

/// The steps that something can be compared with.
pub(super) fn steps_for(props: &HearProps, to: Use) -> Vec<(usize, &Step)> {
    let Some(Outcome::Feasible(strategy)) = props.shown.as_ref().map(|s| &*s.outcome) else {
        return Vec::new();
    };
    let fit = |step: &Step| match to {
        Use::Cutter => false,
        Use::Web => step.web.is_some(),
        Use::Cut => step.stability.is_some(),
    };
    let all = steps(strategy).enumerate();
    all.filter(|(_, step)| fit(step)).collect()
}

impl Teller<'_> {
    /// The step that was chosen, or else the one in hand, or the first.
    pub(super) fn step(&self) -> Option<(usize, &Step)> {
        let steps = steps_for(self.props, self.chosen.to);
        let at = |at: usize| steps.iter().find(|(i, _)| *i == at).copied();
        let chosen = self.chosen.step.and_then(at);
        chosen
            .or_else(|| self.props.step.and_then(at))
            .or_else(|| steps.first().copied())
    }

    fn job(&self) -> Option<&Job> {
        self.props.shown.as_ref().map(|s| &*s.job)
    }

    /// Taps: picture, result, table, and what can be taken over.
    pub(super) fn taps(&self, heard: &TapsHeard) -> Html {
        let numbers = &self.speaker.catalog.numbers;
        let agreed = heard.agreed.filter(|a| a.count >= self.chosen.count);
        let marked = heard.agreed.map(|a| (a.frequency, at(heard, a.frequency)));
        let rough = words::damping_told(
            agreed.and_then(|a| a.damping).filter(|_| !heard.clipped),
            numbers.tap_damping_factor,
        );
        let told = words::taps_told(
            heard.agreed.as_ref(),
            (heard.taps.len(), heard.dull),
            self.chosen.count,
        );
        html! {
            <>
                { picture(&heard.columns, marked.as_slice(), None) }
                if heard.silent { <p class="hear-alarm">{ words::silent() }</p> }
                if heard.clipped { <p class="hear-alarm">{ words::clipped() }</p> }
                if !self.on {
                    <p class="hear-told hear-sum" role="status">{ told }</p>
                    if let Some(agreed) = agreed {
                        if self.chosen.to == Use::Web { { self.web(agreed.frequency) } }
                        <p class="part">{ format!("{rough} ") }{ words::not_trusted() }</p>
                        if self.chosen.to == Use::Cutter { { self.take(&agreed, heard.clipped) } }
                    }
                }
                { self.table_of_taps(heard) }
            </>
        }
    }

    fn table_of_taps(&self, heard: &TapsHeard) -> Html {
        let row = |(i, tap): (usize, &thinwright_sound::Tap)| {
            let marked = |ratio| thinwright_words::marked(&words::damping(ratio));
            let damping = tap.damping.map_or_else(|| "-".to_owned(), marked);
            html! {
                <tr>
                    <td>{ i + 1 }</td>
                    <td>{ self.speaker.frequency(Frequency::from_si(tap.frequency)) }</td>
                    <td>{ damping }</td>
                </tr>
            }
        };
        let rows: Vec<Html> = heard.taps.iter().enumerate().map(row).collect();
        table(words::tap_columns(), rows)
    }

    /// The web's tone beside the one that was worked out.
    pub(super) fn web(&self, frequency: f64) -> Html {
        let web = self.step().and_then(|(_, step)| step.web.as_ref());
        let said = web.map(|web| {
            self.speaker
                .web_heard(Frequency::from_si(frequency), web.frequency)
        });
        html! { if let Some(said) = said { <p class="hear-told">{ said }</p> } }
    }

    /// Buttons that take over what was heard; what was taken over says so.
    fn take(&self, agreed: &Agreed, clipped: bool) -> Html {
        let speaker = &self.speaker;
        let row = self.chosen.row;
        let tone = words::typed(agreed.frequency);
        let tones: &[(Field, bool)] = match row {
            Some(_) => &[(Field::CutterTone, true), (Field::CutterToneAcross, false)],
            None => &[(Field::Tone, true)],
        };
        let own = |(_, x): &&(Field, bool)| row.is_none() || *x == self.chosen.x;
        let tones = tones.iter().filter(own).map(|(field, x)| {
            let id = FieldId { field: *field, row };
            self.button(id, &tone, speaker.take_tone(row, *x))
        });
        let damping = agreed.damping.filter(|_| !clipped).zip(row);
        html! {
            <div class="buttons">
                { tones.collect::<Html>() }
                if let Some((ratio, row)) = damping {
                    { self.button(FieldId::in_row(Field::CutterDamping, row), &words::damping(ratio), speaker.take_damping(row)) }
                }
            </div>
        }
    }

    fn button(&self, id: FieldId, text: &str, name: String) -> Html {
        let answers = &self.props.answers;
        let taken = format!("taken-{}", element_id(id));
        if answers.text(id) == text && answers.known(id) == Known::Measured {
            let said = self.speaker.taken(text, &self.speaker.place(id));
            return html! { <p class="hear-taken" id={taken} tabindex="-1" role="status">{ said }</p> };
        }
        let (desk, text) = (self.desk.clone(), text.to_owned());
        let onclick = Callback::from(move |_: MouseEvent| {
            desk.say(Action::Type(id, text.clone()));
            desk.say(Action::Know(id, Known::Measured));
            // The button goes: who came by keyboard goes on from what stands in its place.
            browser::focus(&taken);
        });
        html! { <button type="button" class="button button-strong" {onclick}>{ name }</button> }
    }

    /// A cut: picture with the step's lines, what each tone is, what to try.
    pub(super) fn cut(&self, heard: &CutHeard) -> Html {
        let Some((job, (_, step))) = self.job().zip(self.step()) else {
            return html! {};
        };
        let marked = heard.tones.tones.iter().map(|t| (t.frequency, t.level));
        let marked: Vec<(f64, f64)> = marked.collect();
        let lines = teeth(job, step).map(|z| self.speaker.lines_of(step.n, z));
        html! {
            <>
                { picture(&heard.columns, &marked, rates(job, step)) }
                if let Some(lines) = lines { <p class="part part-quiet">{ lines }</p> }
                if heard.tones.silent { <p class="hear-alarm">{ words::silent() }</p> }
                if heard.tones.clipped { <p class="hear-alarm">{ words::clipped() }</p> }
                { self.tones(&heard.tones.tones) }
            </>
        }
    }

    /// Tones of a cut, judged.
    pub(super) fn tones(&self, tones: &[Tone]) -> Html {
        let Some((job, (_, step))) = self.job().zip(self.step()) else {
            return html! {};
        };
        let all = judged(job, step, tones);
        let advice = advice(job, step, &all);
        let said = self.speaker.cut_told(&all, advice.as_ref());
        let row = |(tone, what): (&Tone, &CutTone)| {
            html! {
                <tr>
                    <td>{ self.speaker.frequency(Frequency::from_si(tone.frequency)) }</td>
                    <td>{ words::level(tone.level) }</td>
                    <td>{ words::tone_is(what) }</td>
                </tr>
            }
        };
        let rows: Vec<Html> = tones.iter().zip(&all).map(row).collect();
        html! {
            <>
                <div role="status">{ for said.iter().map(|line| html! { <p class="hear-told">{ line }</p> }) }</div>
                if advice.is_some() { { self.hand_over(&all) } }
                { table(words::tone_columns(), rows) }
            </>
        }
    }

    /// A way to the likely causes, with the tone of chatter in hand.
    fn hand_over(&self, tones: &[CutTone]) -> Html {
        let at = self.step().map(|(at, _)| at);
        let Some((at, tone)) = at.zip(squeal(tones)) else {
            return html! {};
        };
        let desk = self.desk.clone();
        let onclick = Callback::from(move |_: MouseEvent| {
            desk.say(Action::Squeal(at, tone));
            browser::reveal("trouble-stop");
        });
        html! {
            <div class="buttons">
                <button type="button" class="button" {onclick}>{ thinwright_words::trouble::name() }</button>
            </div>
        }
    }
}

/// The level of a picture at a frequency (dB).
fn at(heard: &TapsHeard, frequency: f64) -> f64 {
    let column = heard
        .columns
        .iter()
        .find(|c| (c.from..=c.to).contains(&frequency));
    column.map_or(f64::MIN, |c| c.level)
}

fn table(columns: [&'static str; 3], rows: Vec<Html>) -> Html {
    if rows.is_empty() {
        return html! {};
    }
    let head = columns.map(|name| html! { <th scope="col">{ name }</th> });
    html! {
        <details class="more">
            <summary class="more-name">{ words::table() }</summary>
            <table class="hear-table">
                <thead><tr>{ head.into_iter().collect::<Html>() }</tr></thead>
                <tbody>{ rows }</tbody>
            </table>
        </details>
    }
}
