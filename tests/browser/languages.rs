//! The page in its languages: chosen by the browser or by the person, everywhere at once, kept, and there without a network.

use crate::paper::{Paper, sentences};
use crate::person::plain_blanks;
use crate::visit::{Visit, visit, visit_file, visit_with};
use fantoccini::Locator;
use serde_json::{Value, json};
use std::collections::BTreeMap;
use std::time::{Duration, Instant};
use thinwright_words::language::Language;

/// English texts and what they become.
type Pairs = BTreeMap<String, String>;

/// How long the page may take to speak.
const PATIENCE: Duration = Duration::from_secs(20);
const INTERVAL: Duration = Duration::from_millis(25);
/// Texts of fewer letters may be the same in two languages by chance.
const LETTERS: usize = 4;

/// Every text of the page that people read or hear, with everything unfolded.
const READ: &str = "
    document.querySelectorAll('details').forEach(d => d.open = true);
    const out = [];
    const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    while (walk.nextNode()) {
        const at = walk.currentNode.parentElement;
        if (!at.closest('script, style, noscript, [lang]:not(html)')) out.push(walk.currentNode.textContent);
    }
    for (const name of ['aria-label', 'placeholder', 'title', 'aria-valuetext', 'alt'])
        for (const e of document.querySelectorAll(`[${name}]`)) out.push(e.getAttribute(name));
    return out.map(t => t.trim()).filter(t => t);";

/// What stands in every entry, by its name in the page.
const TYPED: &str = "
    const entries = [...document.querySelectorAll('[id^=f-]')].filter(e => 'value' in e);
    return Object.fromEntries(entries.map(e => [e.id, e.value]));";

/// Where the step in hand stands in the window.
const PLACE: &str = "return document.querySelector(arguments[0]).getBoundingClientRect().top;";

/// The dictionary of a language.
fn pairs(language: Language) -> Pairs {
    let name = format!("../shared/words/{}.json", language.tag());
    let json = std::fs::read_to_string(&name).unwrap_or_else(|e| panic!("{name}: {e}"));
    thinwright_catalog::dictionary(&name, &json)
        .unwrap()
        .into_iter()
        .collect()
}

/// What is between the places of a text, where that says enough to be known again.
fn parts(text: &str) -> Vec<String> {
    let mut out = Vec::new();
    for piece in text.split('}') {
        out.push(piece.split('{').next().unwrap_or(piece).to_owned());
    }
    out
}

/// Whether a text that was read is an English one with its places filled.
fn says(read: &str, english: &[String]) -> bool {
    let [first, .., last] = english else {
        return english.first().is_some_and(|only| read == only);
    };
    let Some(mut rest) = read.strip_prefix(first.as_str()) else {
        return false;
    };
    for piece in &english[1..english.len() - 1] {
        let Some((_, after)) = rest.split_once(piece.as_str()) else {
            return false;
        };
        rest = after;
    }
    rest.ends_with(last.as_str())
}

/// Texts that are English though the dictionary has others for them.
fn still_english<'a>(read: &'a [String], pairs: &Pairs) -> Vec<&'a String> {
    let letters = |parts: &[String]| {
        let all = parts.concat();
        all.chars().filter(|c| c.is_alphabetic()).count()
    };
    let spoken: Vec<&String> = pairs.values().collect();
    let english: Vec<Vec<String>> = pairs
        .keys()
        .filter(|english| !spoken.contains(english))
        .map(|english| parts(english.trim()))
        .filter(|parts| letters(parts) >= LETTERS)
        .collect();
    read.iter()
        .filter(|text| english.iter().any(|parts| says(text, parts)))
        .collect()
}

impl Visit {
    /// Chooses a language in the title block and waits until it is spoken.
    async fn choose(&self, language: Language) {
        let list = self.client.find(Locator::Css("#language")).await.unwrap();
        list.select_by_value(language.tag()).await.unwrap();
        self.speaks(language).await;
    }

    /// Waits until a language is spoken, and the strategy of these answers is told in it.
    async fn speaks(&self, language: Language) {
        let status = crate::person::UP_TO_DATE;
        let pairs = match language {
            Language::English => Pairs::new(),
            other => pairs(other),
        };
        let status = pairs.get(status).map_or(status, String::as_str);
        self.until(language.tag(), |said| said == status).await;
        let tag = self.run("return document.documentElement.lang;", json!(null));
        assert_eq!(tag.await, json!(language.tag()));
        let list = self.client.find(Locator::Css("#language")).await.unwrap();
        let shown = list.prop("value").await.unwrap();
        assert_eq!(shown.as_deref(), Some(language.tag()));
    }

    /// Demands that nothing on the page is English.
    async fn all_in(&self, language: Language) {
        let read: Vec<String> = serde_json::from_value(self.run(READ, json!(null)).await).unwrap();
        assert!(read.len() > 300, "only {} texts read", read.len());
        let pairs = pairs(language);
        assert_eq!(still_english(&read, &pairs), Vec::<&String>::new());
        let known = read.iter().filter(|t| pairs.values().any(|v| v == *t));
        assert!(known.count() > 100, "{} is not spoken", language.own_name());
    }

    async fn typed_all(&self) -> Value {
        self.run(TYPED, json!(null)).await
    }

    /// Waits for a place on the screen that stays.
    async fn stands_at(&self, css: &str, wanted: f64) {
        let start = Instant::now();
        loop {
            let top = self.run(PLACE, json!(css)).await.as_f64().unwrap();
            if (top - wanted).abs() < 2.0 {
                return;
            }
            assert!(
                start.elapsed() < PATIENCE,
                "{css} at {top}, not at {wanted}"
            );
            tokio::time::sleep(INTERVAL).await;
        }
    }
}

#[test]
fn english_is_known_again() {
    let of = |english: &str, read: &str| says(read, &parts(english));
    assert!(of("Stop", "Stop") && !of("Stop", "Stop it"));
    assert!(of(
        "keep {what} {value}, step {step}",
        "keep feed 600 mm/min, step 2"
    ));
    assert!(!of(
        "keep {what} {value}, step {step}",
        "Vorschub 600 mm/min, Schritt 2"
    ));
    let pairs = Pairs::from([
        ("Answers".to_owned(), "Antworten".to_owned()),
        ("Normal".to_owned(), "Normal".to_owned()),
    ]);
    let read = ["Answers", "Normal", "Antworten"].map(str::to_owned);
    assert_eq!(still_english(&read, &pairs), [&read[0]]);
}

/// Another language everywhere: form, strategy, steps and sheet; what was typed and what is read stay where they are.
async fn spoken(language: Language) {
    let name = format!("spoken-{}", language.tag());
    visit(&name.clone(), move |visit| async move {
        visit.settled().await;
        visit.type_over("part.name", "Plate 6,35").await;
        visit.settled().await;
        let open = "document.querySelectorAll('.step-button')[arguments[0]].click();";
        visit.run(open, json!(2)).await;
        let down = "document.querySelector(arguments[0]).scrollIntoView({block: 'start', behavior: 'instant'}); window.scrollBy({top: 12, behavior: 'instant'});";
        let step = ".step:nth-child(3)";
        visit.run(down, json!(step)).await;
        let place = visit.run(PLACE, json!(step)).await.as_f64().unwrap();
        let before = visit.typed_all().await;
        let choose = "
            const list = document.getElementById('language');
            list.value = arguments[0];
            list.dispatchEvent(new Event('change', {bubbles: true}));";
        // Not by the list itself: the driver would scroll to it.
        visit.run(choose, json!(language.tag())).await;
        visit.speaks(language).await;
        visit.stands_at(step, place).await;
        assert_eq!(visit.typed_all().await, before);
        visit.all_in(language).await;
        visit.no_barriers().await;
        visit.picture(&name).await;
        for paper in [Paper::A4, Paper::Letter] {
            let pages = visit.printed(&name, paper).await;
            assert!(pages.len() <= 2, "{} pages", pages.len());
            let printed = plain_blanks(&sentences(&name, paper));
            let pairs = pairs(language);
            let english = |(english, text): &(&String, &String)| {
                english != text && english.split(' ').count() > 2 && printed.contains(english.as_str())
            };
            let left: Vec<_> = pairs.iter().filter(english).collect();
            assert!(left.is_empty(), "English on paper: {left:?}");
            assert!(printed.contains(&pairs["Strategy sheet"]), "{printed}");
        }
        visit.client.refresh().await.unwrap();
        visit.started().await;
        visit.speaks(language).await;
        assert_eq!(visit.typed("part.name").await, "Plate 6,35");
        visit.choose(Language::English).await;
    })
    .await;
}

#[tokio::test]
async fn it_speaks_german() {
    spoken(Language::German).await;
}

#[tokio::test]
async fn it_speaks_spanish() {
    spoken(Language::Spanish).await;
}

#[tokio::test]
async fn it_begins_in_the_language_of_the_browser() {
    let flags = ["--accept-lang=fr,de-AT,en".to_owned()];
    visit_with("first-language", &flags, |visit| async move {
        visit.started().await;
        visit.speaks(Language::German).await;
        // Nothing was chosen, so nothing is kept.
        let kept = "return localStorage.getItem('thinwright.language');";
        assert_eq!(visit.run(kept, json!(null)).await, json!(null));
    })
    .await;
}

#[tokio::test]
async fn the_languages_are_there_without_a_network() {
    visit("languages-offline", |visit| async move {
        visit.settled().await;
        let ready = "const done = arguments[arguments.length - 1]; navigator.serviceWorker.ready.then(() => done(true));";
        visit.client.execute_async(ready, vec![]).await.unwrap();
        visit.lose_network();
        visit.choose(Language::Spanish).await;
        visit.client.refresh().await.unwrap();
        visit.started().await;
        visit.speaks(Language::Spanish).await;
        visit.choose(Language::German).await;
    })
    .await;
}

#[tokio::test]
async fn the_one_file_carries_its_languages() {
    visit_file("file-languages", |visit| async move {
        visit.settled().await;
        visit.choose(Language::German).await;
        visit.choose(Language::Spanish).await;
        visit.client.refresh().await.unwrap();
        visit.started().await;
        visit.speaks(Language::Spanish).await;
    })
    .await;
}

/// A language whose texts cannot be had is not spoken, and is told.
#[tokio::test]
async fn what_cannot_be_fetched_is_told() {
    visit("no-dictionary", |visit| async move {
        visit.settled().await;
        let lose = "thinwright.words = async () => { throw new Error('gone'); };";
        visit.run(lose, json!(null)).await;
        let list = visit.client.find(Locator::Css("#language")).await.unwrap();
        list.select_by_value("es").await.unwrap();
        let message = Locator::Css(".message-alarm");
        visit
            .client
            .wait()
            .at_most(PATIENCE)
            .for_element(message)
            .await
            .unwrap();
        let told = visit.texts(".message-alarm span").await.concat();
        assert!(told.contains("Espa\u{F1}ol"), "{told}");
        visit.speaks(Language::English).await;
    })
    .await;
}
