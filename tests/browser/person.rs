//! What a person does at the page, and what the page then says.

use crate::visit::Visit;
use fantoccini::Locator;
use fantoccini::actions::{InputSource as _, KeyAction, KeyActions};
use fantoccini::elements::Element;
use serde_json::{Value, json};
use std::time::{Duration, Instant};
use thinwright_jobfile::Sample;

/// Keys without a letter. Source: the `WebDriver` standard's table of keys.
pub(crate) const TAB: char = '\u{E004}';
pub(crate) const ENTER: char = '\u{E007}';
const CONTROL: char = '\u{E009}';
const DELETE: char = '\u{E017}';

/// What the status line says of a strategy that belongs to the answers.
pub(crate) const UP_TO_DATE: &str = "The strategy belongs to these answers.";
/// How long the search may take on a machine that is busy with other tests.
const PATIENCE: Duration = Duration::from_secs(90);
/// How often one looks.
const INTERVAL: Duration = Duration::from_millis(25);

/// Opens whatever is folded around an element and moves the focus to it.
const REACH: &str = "
    const element = document.getElementById(arguments[0]);
    for (let e = element; e; e = e.parentElement) if (e.tagName === 'DETAILS') e.open = true;
    element.focus();
    return document.activeElement === element;";

/// The name of a field's element in the page.
fn element_id(key: &str) -> String {
    format!("f-{}", key.replace('.', "-"))
}

/// Blanks of print as plain blanks, and one for many.
pub(crate) fn plain_blanks(text: &str) -> String {
    // `split_whitespace` takes both no-break spaces for blanks.
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

impl Visit {
    /// Presses and lets go of each key.
    pub(crate) async fn press(&self, keys: impl IntoIterator<Item = char>) {
        let actions = keys
            .into_iter()
            .fold(KeyActions::new("keys".into()), |actions, value| {
                actions
                    .then(KeyAction::Down { value })
                    .then(KeyAction::Up { value })
            });
        self.client.perform_actions(actions).await.unwrap();
    }

    /// Marks all of the line in hand.
    async fn mark_all(&self) {
        let actions = KeyActions::new("keys".into())
            .then(KeyAction::Down { value: CONTROL })
            .then(KeyAction::Down { value: 'a' })
            .then(KeyAction::Up { value: 'a' })
            .then(KeyAction::Up { value: CONTROL });
        self.client.perform_actions(actions).await.unwrap();
    }

    /// Types a text in place of what stands in a field.
    pub(crate) async fn type_over(&self, key: &str, text: &str) {
        let reached = self.run(REACH, json!(element_id(key))).await;
        assert_eq!(reached, json!(true), "{key} cannot be reached");
        self.mark_all().await;
        if text.is_empty() {
            self.press([DELETE]).await;
        }
        self.press(text.chars()).await;
    }

    /// The entry of a field.
    pub(crate) async fn field(&self, key: &str) -> Element {
        let css = format!("#{}", element_id(key));
        self.client.find(Locator::Css(&css)).await.unwrap()
    }

    /// What stands in a field.
    pub(crate) async fn typed(&self, key: &str) -> String {
        let value = self.field(key).await.prop("value").await.unwrap();
        value.unwrap_or_default()
    }

    /// Runs a script with one argument.
    pub(crate) async fn run(&self, script: &str, argument: Value) -> Value {
        let done = self.client.execute(script, vec![argument]).await;
        done.unwrap_or_else(|e| panic!("{script}: {e}"))
    }

    /// The texts of all elements that a selector finds, whether on the screen or not.
    pub(crate) async fn texts(&self, css: &str) -> Vec<String> {
        let script = "return [...document.querySelectorAll(arguments[0])].map(e => e.textContent);";
        serde_json::from_value(self.run(script, json!(css)).await).unwrap()
    }

    /// How many elements a selector finds.
    pub(crate) async fn count(&self, css: &str) -> usize {
        self.texts(css).await.len()
    }

    /// What the status line says.
    pub(crate) async fn status(&self) -> String {
        self.texts(".status-words").await.concat()
    }

    /// Waits until what is shown belongs to the answers.
    pub(crate) async fn settled(&self) {
        self.until("a strategy for these answers", |said| said == UP_TO_DATE)
            .await;
        assert_eq!(self.count(".route-stale").await, 0, "still marked as stale");
        assert_eq!(self.count(".route").await, 1, "no strategy");
    }

    /// Waits for words in the status line.
    pub(crate) async fn until(&self, what: &str, wanted: impl Fn(&str) -> bool) {
        let start = Instant::now();
        loop {
            let said = self.status().await;
            if wanted(&said) {
                return;
            }
            assert!(
                start.elapsed() < PATIENCE,
                "waited for {what}, but it says {said:?}"
            );
            tokio::time::sleep(INTERVAL).await;
        }
    }

    /// Opens a sample by its name in the list, and waits for its strategy.
    pub(crate) async fn open_sample(&self, id: &str) {
        let sample = Sample::by_id(id).unwrap().job();
        let list = self.client.find(Locator::Css("#sample")).await.unwrap();
        list.select_by_label(sample.name()).await.unwrap();
        self.settled().await;
        assert_eq!(
            self.typed("part.name").await,
            sample.answers.text(thinwright_core::Field::Name.into())
        );
    }
}
