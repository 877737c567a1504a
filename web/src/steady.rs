//! What the person reads stays where it is on the screen, whatever comes or goes above it.

use wasm_bindgen::prelude::*;
use web_sys::{
    Document, Element, HtmlElement, MutationObserver, MutationObserverInit, ScrollBehavior,
    ScrollToOptions, Window,
};
use yew::prelude::*;

/// Where one looks for what is read, from the window's and the strategy's edges, px.
const EDGE: (f32, f32) = (24.0, 12.0);
/// Less than this is no movement, px.
const STILL: f64 = 0.5;

/// An element and where it stands.
struct Anchor {
    element: Element,
    id: String,
    top: f64,
    /// How far the page was scrolled then.
    scroll: f64,
    /// The last rendering that it is held over.
    render: u32,
}

/// Holds what is read in its place over every change of the page.
#[hook]
pub(crate) fn use_steady() {
    // Looked for before a change; while one change runs into the next, the first look counts.
    let held = use_mut_ref(|| None::<Anchor>);
    let count = use_mut_ref(|| 0_u32);
    *count.borrow_mut() += 1;
    let render = *count.borrow();
    match &mut *held.borrow_mut() {
        Some(anchor) => anchor.render = render,
        none => *none = anchor(render),
    }
    {
        // Put back as soon as some of the change is there, before anybody sees it: a rendering may come in pieces, and an
        // effect pictures later.
        let held = held.clone();
        use_effect_with((), move |()| {
            let watch = watch(move || {
                held.borrow_mut().as_mut().and_then(hold);
            });
            move || drop(watch)
        });
    }
    use_effect(move || {
        let own = held.borrow_mut().take_if(|anchor| anchor.render == render);
        own.and_then(|mut anchor| hold(&mut anchor));
    });
}

/// Calls whenever the page has changed; kept for as long as it shall.
fn watch(then: impl FnMut() + 'static) -> Option<Watch> {
    let called = Closure::<dyn FnMut()>::new(then);
    let observer = MutationObserver::new(called.as_ref().unchecked_ref()).ok()?;
    let all = MutationObserverInit::new();
    all.set_subtree(true);
    all.set_child_list(true);
    all.set_character_data(true);
    all.set_attributes(true);
    let (_, document) = window()?;
    observer
        .observe_with_options(document.body()?.as_ref(), &all)
        .ok()?;
    Some(Watch {
        observer,
        _called: called,
    })
}

struct Watch {
    observer: MutationObserver,
    _called: Closure<dyn FnMut()>,
}

impl Drop for Watch {
    fn drop(&mut self) {
        self.observer.disconnect();
    }
}

fn window() -> Option<(Window, Document)> {
    let window = web_sys::window()?;
    let document = window.document()?;
    Some((window, document))
}

/// What the person has in hand in the strategy or beside the map, or else what stands topmost of the strategy.
fn anchor(render: u32) -> Option<Anchor> {
    let (window, document) = window()?;
    let strategy = document.get_element_by_id("strategy")?;
    let height = window.inner_height().ok()?.as_f64()?;
    let inside = |e: &Element| *e != strategy && strategy.contains(Some(e.as_ref()));
    let seen = |e: &Element| {
        let place = e.get_bounding_client_rect();
        place.bottom() > 0.0 && place.top() < height
    };
    let beside_map = |e: &Element| e.closest(".web").is_ok_and(|web| web.is_some());
    let held = |e: &Element| inside(e) || beside_map(e);
    let in_hand = document.active_element().filter(held).filter(seen);
    let element = in_hand.or_else(|| {
        #[allow(clippy::cast_possible_truncation, reason = "a place on a screen")]
        let left = strategy.get_bounding_client_rect().left() as f32;
        let top = document.element_from_point(left + EDGE.0, EDGE.1);
        top.filter(inside)
    })?;
    Some(Anchor {
        id: element.id(),
        top: element.get_bounding_client_rect().top(),
        scroll: window.scroll_y().ok()?,
        element,
        render,
    })
}

/// Scrolls so that the element stands where it stood, but for what the person has scrolled since.
fn hold(anchor: &mut Anchor) -> Option<()> {
    let (window, document) = window()?;
    if !anchor.element.is_connected() {
        anchor.element = document.get_element_by_id(&anchor.id)?;
    }
    // Out of the page's flow nothing can be held.
    anchor.element.dyn_ref::<HtmlElement>()?.offset_parent()?;
    anchor.top -= window.scroll_y().ok()? - anchor.scroll;
    let moved = anchor.element.get_bounding_client_rect().top() - anchor.top;
    if moved.abs() > STILL {
        let by = ScrollToOptions::new();
        by.set_top(moved);
        by.set_behavior(ScrollBehavior::Instant);
        window.scroll_by_with_scroll_to_options(&by);
    }
    anchor.scroll = window.scroll_y().ok()?;
    Some(())
}
