//! The web as a map: lines, legend and softest place, the slider over the steps by keyboard, the tone, the sheet.

use crate::devtools::devtools;
use crate::paper::{Paper, sentences};
use crate::person::plain_blanks;
use crate::visit::{Visit, visit};
use serde_json::json;
use std::iter::{once, repeat_n};
use std::time::{Duration, Instant};
use thinwright_words::map as words;

/// Keys of a slider. Source: the `WebDriver` standard's table of keys.
const END: char = '\u{E010}';
const HOME: char = '\u{E011}';
const LEFT: char = '\u{E012}';
const RIGHT: char = '\u{E014}';

/// How long a picture may take on a machine that is busy with other tests.
const PATIENCE: Duration = Duration::from_secs(60);
const INTERVAL: Duration = Duration::from_millis(25);

/// The lines that are drawn in the map, and how high it stands.
const MAP: &str = "
    const map = document.querySelector('.map-figure .map');
    const drawn = css => [...map.querySelectorAll(css)].filter(e => e.getAttribute('d')).length;
    return {tints: drawn('.ink-tint'), lines: drawn('.ink-contour') + drawn('.ink-index'),
        minus: drawn('.ink-minus'), said: map.getAttribute('aria-label'),
        texts: [...map.querySelectorAll('text')].map(e => e.textContent),
        height: map.getBoundingClientRect().height};";

impl Visit {
    /// Waits until a selector finds something.
    async fn appears(&self, css: &str) {
        let start = Instant::now();
        while self.count(css).await == 0 {
            assert!(start.elapsed() < PATIENCE, "waited for {css}");
            tokio::time::sleep(INTERVAL).await;
        }
    }

    /// Waits until a map is there, as close as it gets: of a step by its number, or of whichever is shown.
    async fn mapped(&self, step: Option<usize>) -> serde_json::Value {
        let start = Instant::now();
        loop {
            let of = self.texts(".web-of").await.concat();
            let sure = self.texts(".web-beside [role=status]").await.concat();
            let fine = sure.contains("two meshes tell") && !sure.contains("on its way");
            let named = step.is_none_or(|n| of.starts_with(&format!("step {n}: ")));
            if named && fine {
                return self.run(MAP, json!(null)).await;
            }
            assert!(
                start.elapsed() < PATIENCE,
                "waited for {step:?}: {of:?}, {sure:?}"
            );
            tokio::time::sleep(INTERVAL).await;
        }
    }
}

/// The number of the step that a map is of.
async fn step(visit: &Visit) -> usize {
    let of = visit.texts(".web-of").await.concat();
    let (number, _) = of.trim_start_matches("step ").split_once(':').unwrap();
    number.parse().unwrap()
}

#[tokio::test]
async fn the_softest_web_is_on_the_page_with_lines_legend_and_place() {
    visit("web", |visit| async move {
        visit.settled().await;
        let map = visit.mapped(None).await;
        let lines = map["lines"].as_u64().unwrap();
        assert!((3..=9).contains(&lines), "{map}");
        assert_eq!(
            map["tints"], map["lines"],
            "a step of grey for each line: {map}"
        );
        assert!(map["texts"].to_string().contains("softest: "), "{map}");
        assert!(map["said"].to_string().contains("it gives most"), "{map}");
        // The legend has a row for each line, the other table the places.
        let rows = visit.texts(".web-beside tbody tr").await;
        assert!(rows.len() as u64 > lines + 1, "{rows:?}");
        let softest = visit.texts(".web-beside tbody th").await;
        assert!(softest[0].starts_with("softest place"), "{softest:?}");
        visit.picture("web").await;
        visit.no_barriers().await;
    })
    .await;
}

#[tokio::test]
async fn the_slider_moves_the_step_in_hand_by_keyboard() {
    visit("web-slider", |visit| async move {
        visit.settled().await;
        let with = visit.mapped(None).await;
        let slider = visit.by_role("slider", words::steps()).await;
        visit
            .run(
                "document.getElementById('step-in-hand').focus();",
                json!(null),
            )
            .await;
        let softest = step(&visit).await;
        visit
            .press(once(HOME).chain(repeat_n(RIGHT, softest)))
            .await;
        let at = |said: String| format!("#step-in-hand[aria-valuetext^='{said}']");
        visit.appears(&at(format!("{softest} of "))).await;
        let number = visit.texts(".step-open .step-number").await;
        assert_eq!(number, [softest.to_string()]);
        visit.mapped(Some(softest)).await;
        // The web bows in the section, and by how much is said.
        visit.appears(".drawing .ink-bent").await;
        let drawing = visit.texts(".drawing-sheet text").await;
        assert!(
            drawing
                .iter()
                .any(|t| t.starts_with("web ") && t.contains("drawn")),
            "{drawing:?}"
        );
        // Facing has no web: the figure keeps its place.
        visit.press([HOME, RIGHT]).await;
        visit.appears(&at("1 of ".to_owned())).await;
        let without = visit.run(MAP, json!(null)).await;
        assert_eq!(without["tints"], json!(0));
        assert_eq!(without["height"], with["height"]);
        assert!(
            without["texts"].to_string().contains(words::no_web()),
            "{without}"
        );
        // Back before the first step: no step is open.
        visit.press([HOME]).await;
        visit.appears(&at(words::finished().to_owned())).await;
        assert_eq!(visit.count(".step-open").await, 0);
        visit.mapped(Some(softest)).await;
        // To the end and one back.
        visit.press([END, LEFT]).await;
        let steps = visit.count(".step").await;
        let said = slider.attr("aria-valuetext").await.unwrap().unwrap();
        assert!(
            said.starts_with(&format!("{} of {steps}: ", steps - 1)),
            "{said}"
        );
    })
    .await;
}

#[tokio::test]
async fn the_lowest_tone_is_a_still_in_the_same_place() {
    visit("web-tone", |visit| async move {
        visit.settled().await;
        let gives = visit.mapped(None).await;
        visit
            .by_role("radio", words::tone())
            .await
            .click()
            .await
            .unwrap();
        let tone = visit.run(MAP, json!(null)).await;
        assert_eq!(tone["height"], gives["height"]);
        assert_ne!(tone["texts"], gives["texts"]);
        assert!(tone["texts"].to_string().contains('+'), "{tone}");
        let said = plain_blanks(tone["said"].as_str().unwrap());
        assert!(
            said.contains("Hz") && said.contains("the teeth pass at"),
            "{said}"
        );
        let beside = plain_blanks(&visit.texts(".web-beside").await.concat());
        assert!(beside.contains(&said), "{beside}");
        for (width, theme) in [
            (390, "light"),
            (390, "dark"),
            (820, "dark"),
            (1440, "light"),
            (1440, "dark"),
        ] {
            let metrics =
                json!({ "width": width, "height": 900, "deviceScaleFactor": 1, "mobile": false });
            devtools(&visit.client, "Emulation.setDeviceMetricsOverride", metrics).await;
            let theme_list =
                "const list = document.getElementById('theme'); list.value = arguments[0];
                list.dispatchEvent(new Event('change', {bubbles: true}));";
            visit.run(theme_list, json!(theme)).await;
            visit.no_barriers().await;
            visit.picture(&format!("web-tone-{theme}-{width}")).await;
        }
    })
    .await;
}

#[tokio::test]
async fn the_sheet_carries_the_map_of_the_softest_web() {
    visit("web-sheet", |visit| async move {
        visit.settled().await;
        visit.mapped(None).await;
        visit.appears(".sheet-web .map").await;
        let place = visit.texts(".web-beside tbody th .map-at").await;
        let place = plain_blanks(&place[0]);
        // The page sees the plan from face A, the sheet as the part lies: turned over, left is right.
        let turned = match place.strip_prefix("x \u{2212}") {
            Some(rest) => format!("x {rest}"),
            None => place.replacen("x ", "x \u{2212}", 1),
        };
        visit.confirmed().await;
        for paper in [Paper::A4, Paper::Letter] {
            let pages = visit.printed("web-sheet", paper).await;
            assert!(pages.len() <= 2, "{} pages", pages.len());
            let read = plain_blanks(&sentences("web-sheet", paper));
            let heading = "Web where it is softest: step ";
            let (_, after) = read.split_once(heading).expect("the heading of the map");
            let face_b = after
                .split(" up")
                .next()
                .is_some_and(|t| t.ends_with("face B"));
            let place = if face_b { &turned } else { &place };
            for wanted in [place.as_str(), "lowest tone"] {
                assert!(read.contains(wanted), "the paper misses {wanted:?}\n{read}");
            }
        }
    })
    .await;
}
