//! The page as a person has it: how long until the first full answer, and from a key to the new one.

use crate::devtools::devtools;
use crate::site::{Site, visit};
use crate::spread::{Spread, spread};
use fantoccini::actions::{InputSource as _, KeyAction, KeyActions};
use serde_json::{Value, json};
use std::path::Path;

/// Loads from nothing, each in a browser of its own.
const LOADS: usize = 3;
/// Keys pressed. At most 18: no web thickness comes twice.
const KEYS: usize = 12;

/// What the status line says of a strategy that belongs to the answers.
const UP_TO_DATE: &str = "The strategy belongs to these answers.";
/// Puts a text into the web's field, the caret behind it, and notes that from now on a new answer is due.
const PUT: &str = "
    const field = document.getElementById('f-part-web');
    field.focus();
    benchSeen.begin(performance.now());
    Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value').set.call(field, arguments[0]);
    field.dispatchEvent(new InputEvent('input', {bubbles: true}));
    field.setSelectionRange(arguments[0].length, arguments[0].length);";
/// Waits until all is told, and tells what was seen.
const WAIT: &str = "
    const [done] = arguments;
    const look = () => {
        if (benchSeen.told !== null) done(JSON.parse(JSON.stringify(benchSeen)));
        else setTimeout(look, 20);
    };
    look();";

/// Takes the workers away before the page starts, so that its engine runs in the page's own thread.
const WITHOUT_WORKER: &str = "globalThis.Worker = undefined;";

/// How the processor is slowed. A browser slows the page's own thread alone; to slow the engine too, it has to run there.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Slowed {
    /// Not at all.
    Not,
    /// The page so many times, its worker not.
    Page(u32),
    /// Page and engine so many times, both in one thread.
    Both(u32),
}

impl Slowed {
    fn times(self) -> u32 {
        match self {
            Slowed::Not => 1,
            Slowed::Page(times) | Slowed::Both(times) => times,
        }
    }
}

/// Figures of the page, ms.
pub(crate) struct Page {
    /// From the start of loading, an empty profile, until a checked strategy stands there and until all is told.
    pub(crate) load: [Spread; 2],
    /// The same from a key.
    pub(crate) key: [Spread; 2],
    /// The longest task of the page's own thread while loading and while keys are pressed; 0 if none took 50 ms.
    pub(crate) longest: (f64, f64),
    /// The longest that the page took to show a key; 0 if none took 16 ms.
    pub(crate) slowest: f64,
}

/// Looks at the built page.
pub(crate) async fn run(dist: &Path, slowed: Slowed) -> Page {
    let mut loads = Vec::new();
    for _ in 1..LOADS {
        let look = move |site| async move { load(&site, slowed).await };
        loads.push(visit(dist.to_owned(), slowed.times(), look).await);
    }
    let (last, keys) = visit(dist.to_owned(), slowed.times(), move |site| async move {
        let last = load(&site, slowed).await;
        let forget = "benchSeen.longest = 0; benchSeen.slowest = 0;";
        site.run(forget, vec![]).await;
        let mut keys = Vec::new();
        for press in 0..KEYS {
            keys.push(key(&site, press).await);
        }
        (last, keys)
    })
    .await;
    loads.push(last);
    let both = |seen: &[Value]| ["checked", "told"].map(|what| spread(all(seen, what)));
    let most = |seen: &[Value], what| all(seen, what).into_iter().fold(0.0, f64::max);
    Page {
        load: both(&loads),
        key: both(&keys),
        longest: (most(&loads, "longest"), most(&keys, "longest")),
        slowest: most(&keys, "slowest"),
    }
}

/// One of the figures of each.
fn all(seen: &[Value], what: &str) -> Vec<f64> {
    let figure = |seen: &Value| {
        let figure = seen[what].as_f64();
        figure.unwrap_or_else(|| panic!("no {what} in {seen}"))
    };
    seen.iter().map(figure).collect()
}

/// Opens the page and waits until all is told.
async fn load(site: &Site, slowed: Slowed) -> Value {
    let mut watch = include_str!("page_watch.js").replace("UP_TO_DATE", UP_TO_DATE);
    if let Slowed::Both(_) = slowed {
        watch += WITHOUT_WORKER;
    }
    let command = "Page.addScriptToEvaluateOnNewDocument";
    devtools(&site.client, command, json!({ "source": watch })).await;
    site.open().await;
    site.wait_for(WAIT, vec![]).await
}

/// Presses one key that changes the web's thickness, and tells what was seen.
async fn key(site: &Site, press: usize) -> Value {
    // Thick and thin in turn.
    let text = format!("{}.{}", 3 + press % 2, 1 + press / 2);
    site.run(PUT, vec![json!(text)]).await;
    site.wait_for(WAIT, vec![]).await;
    let actions = KeyActions::new("keys".into())
        .then(KeyAction::Down { value: '7' })
        .then(KeyAction::Up { value: '7' });
    // Returns when the key has been taken; `told` is empty from then on.
    site.client
        .perform_actions(actions)
        .await
        .expect("a key is pressed");
    site.wait_for(WAIT, vec![]).await
}
