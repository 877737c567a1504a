//! What a drawing is made of: lines, letters and dimensions on paper; and how they become SVG.

use super::pen::number;
use super::place::LETTER;
use thinwright_core::FieldId;
use yew::prelude::*;

/// The line types of ISO 128 and the few fills, as classes of the style sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Stroke {
    /// Wide, continuous: visible edges.
    Wide,
    /// Narrow, continuous: dimension lines, hatching.
    Narrow,
    /// Narrow, dashed: hidden edges.
    Hidden,
    /// Narrow, long dash, dot: centre lines.
    Centre,
    /// Narrow, long dash, two dots: blank, finished shape inside the stock.
    Blank,
    /// Wide, short: ends of a cutting plane.
    Plane,
    /// Filled with ink: arrowheads.
    Ink,
    /// Hatching of a cut.
    Hatch,
    /// What a step takes away.
    Removed,
    /// What is left on for a later step.
    Left,
    /// The cutter.
    Cutter,
    /// The bent web, exaggerated.
    Bent,
    /// Frame of the sheet.
    Frame,
    /// An edge around what stands up or is open in a map.
    Open,
    /// A step of grey over what is softer, or swings wider.
    Tint,
    /// A line of equal value on a map, and every second of them.
    Contour,
    Index,
    /// The same below nothing.
    Minus,
    /// Where a tone stays still.
    Still,
}

impl Stroke {
    fn class(self) -> &'static str {
        match self {
            Stroke::Wide => "ink-wide",
            Stroke::Narrow => "ink-narrow",
            Stroke::Hidden => "ink-hidden",
            Stroke::Centre => "ink-centre",
            Stroke::Blank => "ink-blank",
            Stroke::Plane => "ink-plane",
            Stroke::Ink => "ink-solid",
            Stroke::Hatch => "ink-hatch",
            Stroke::Removed => "ink-removed",
            Stroke::Left => "ink-left",
            Stroke::Cutter => "ink-cutter",
            Stroke::Bent => "ink-bent",
            Stroke::Frame => "ink-frame",
            Stroke::Open => "ink-open",
            Stroke::Tint => "ink-tint",
            Stroke::Contour => "ink-contour",
            Stroke::Index => "ink-index",
            Stroke::Minus => "ink-minus",
            Stroke::Still => "ink-still",
        }
    }
}

/// A text on paper.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Letters {
    /// Where its base line is.
    pub(crate) at: (f64, f64),
    /// The text.
    pub(crate) text: String,
    /// Height of the letters, mm.
    pub(crate) height: f64,
    /// Turned about its place, degrees clockwise.
    pub(crate) turn: f64,
    /// `start`, `middle` or `end`.
    pub(crate) anchor: &'static str,
}

impl Letters {
    /// A text of the usual height, set about its middle.
    pub(crate) fn middle(at: (f64, f64), text: impl Into<String>) -> Letters {
        Letters {
            at,
            text: text.into(),
            height: LETTER,
            turn: 0.0,
            anchor: "middle",
        }
    }

    /// A text that begins at a place.
    pub(crate) fn start(at: (f64, f64), text: impl Into<String>, height: f64) -> Letters {
        Letters {
            height,
            anchor: "start",
            ..Letters::middle(at, text)
        }
    }
}

/// Two corners of a rectangle.
type Corners = ((f64, f64), (f64, f64));

/// One thing on paper.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Mark {
    /// A path.
    Line(Stroke, String),
    /// A text.
    Text(Letters),
    /// Marks within a rectangle; what reaches over its edge is cut off.
    Window {
        /// Upper left and lower right corner.
        corners: Corners,
        /// What is seen.
        marks: Vec<Mark>,
    },
    /// A dimension: it belongs to an answer, and is lit with it.
    Dimension {
        /// The answer.
        field: FieldId,
        /// What it says to those who cannot see it.
        name: String,
        /// Its lines and text.
        marks: Vec<Mark>,
        /// Around its text: what the finger meets.
        touch: Corners,
    },
}

/// Draws marks; dimensions answer to pointer and keyboard if there is somebody to tell.
pub(crate) fn draw(
    marks: &[Mark],
    lit: Option<FieldId>,
    tell: Option<&Callback<Option<FieldId>>>,
) -> Html {
    marks.iter().map(|m| one(m, lit, tell)).collect()
}

fn one(mark: &Mark, lit: Option<FieldId>, tell: Option<&Callback<Option<FieldId>>>) -> Html {
    match mark {
        Mark::Line(stroke, d) => html! { <path class={stroke.class()} d={d.clone()} /> },
        Mark::Text(letters) => text(letters),
        Mark::Window { corners, marks } => window(*corners, draw(marks, lit, tell)),
        Mark::Dimension {
            field,
            name,
            marks,
            touch,
        } => {
            let inner = draw(marks, None, None);
            let Some(tell) = tell else {
                return html! { <g class="dimension">{ inner }</g> };
            };
            dimension(*field, (name, *touch), inner, (lit == Some(*field), tell))
        }
    }
}

fn window((a, b): Corners, inner: Html) -> Html {
    let [x, y, width, height] = [a.0, a.1, b.0 - a.0, b.1 - a.1].map(number);
    let view_box = format!("{x} {y} {width} {height}");
    html! { <svg {x} {y} {width} {height} viewBox={view_box}>{ inner }</svg> }
}

fn dimension(
    field: FieldId,
    (name, (a, b)): (&str, Corners),
    inner: Html,
    (is_lit, tell): (bool, &Callback<Option<FieldId>>),
) -> Html {
    let on = |to: Option<FieldId>| {
        let tell = tell.clone();
        move || tell.emit(to)
    };
    let (light, dark) = (on(Some(field)), on(None));
    let onpointerenter = Callback::from({
        let light = light.clone();
        move |_: PointerEvent| light()
    });
    let onpointerleave = Callback::from({
        let dark = dark.clone();
        move |_: PointerEvent| dark()
    });
    let onfocus = Callback::from({
        let light = light.clone();
        move |_: FocusEvent| light()
    });
    let onblur = Callback::from(move |_: FocusEvent| dark());
    let onclick = Callback::from(move |_: MouseEvent| light());
    let class = classes!("dimension", is_lit.then_some("dimension-lit"));
    html! {
        <g {class} tabindex="0" role="button" aria-pressed={is_lit.to_string()} aria-label={name.to_owned()}
            data-field={field.key()}
            {onpointerenter} {onpointerleave} {onfocus} {onblur} {onclick}>
            <rect class="touch" x={number(a.0)} y={number(a.1)} width={number(b.0 - a.0)} height={number(b.1 - a.1)} />
            { inner }
        </g>
    }
}

fn text(letters: &Letters) -> Html {
    let (x, y) = (number(letters.at.0), number(letters.at.1));
    let transform =
        (letters.turn != 0.0).then(|| format!("rotate({} {x} {y})", number(letters.turn)));
    html! {
        <text {x} {y} font-size={number(letters.height)} text-anchor={letters.anchor} {transform}>
            { letters.text.clone() }
        </text>
    }
}
