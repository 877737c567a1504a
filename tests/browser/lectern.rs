//! The view at the machine: read from where one stands, nothing to scroll, easy to hit, the screen on.

use crate::devtools::devtools;
use crate::visit::{Visit, visit};
use fantoccini::Locator;
use serde_json::{Value, json};
use std::time::Duration;

/// Windows: telephones upright and lying, tablet, desk, twice a wide screen.
const WINDOWS: &[(u32, u32)] = &[
    (360, 640),
    (390, 844),
    (844, 390),
    (820, 1180),
    (1440, 900),
    (3840, 2160),
];
/// Pages that there surely are fewer of.
const MOST_PAGES: usize = 300;

/// 22 minutes of arc at 1.5 m, mm (ISO 9241-303 prefers 20 to 22), and pixels of style to the inch: what they are defined
/// as, and what a telephone has.
const SEEN_MM: f64 = 9.6;
const PER_INCH: f64 = 96.0;
const PER_INCH_HELD: f64 = 160.0;
/// The least that can be read: 16 minutes, as the smallest telephones have it at that distance.
const SEEN_HELD_MM: f64 = 7.0;

/// Keys without a letter. Source: the `WebDriver` standard's table of keys.
const PAGE_UP: char = '\u{E00E}';
const PAGE_DOWN: char = '\u{E00F}';
const END: char = '\u{E010}';
const HOME: char = '\u{E011}';
const LEFT: char = '\u{E012}';
const RIGHT: char = '\u{E014}';
const ESCAPE: char = '\u{E00C}';

/// What is wrong with the page that is open, and the height of its digits, px.
const LOOK: &str = "
    const body = document.querySelector('.lectern-body'), wrong = [];
    const over = [body.scrollHeight - body.clientHeight, body.scrollWidth - body.clientWidth];
    if (Math.max(...over) > 1) wrong.push('runs over by ' + over);
    const root = document.documentElement;
    if (getComputedStyle(root).overflow !== 'hidden' || root.clientWidth !== innerWidth) wrong.push('the window scrolls');
    for (const e of document.querySelectorAll('.lectern button, .lectern label')) {
        const box = e.getBoundingClientRect();
        if (box.width < 56 || box.height < 56) wrong.push('small: ' + e.textContent);
        if (box.left < 0 || box.top < 0 || box.right > innerWidth || box.bottom > innerHeight) wrong.push('outside: ' + e.textContent);
    }
    const [back, next] = ['back', 'next'].map(n => document.querySelector('.lectern-' + n).getBoundingClientRect());
    if (next.left - back.right < 56) wrong.push('back and next lie close');
    const pen = document.createElement('canvas').getContext('2d'), digits = [];
    for (const field of document.querySelectorAll('.lectern-figure')) {
        const number = field.querySelector('.lectern-number'), box = number.getBoundingClientRect();
        pen.font = getComputedStyle(number).font;
        digits.push(pen.measureText('0').actualBoundingBoxAscent);
        for (const other of [field.querySelector('dt'), field.querySelector('.lectern-unit')]) {
            const o = other.getBoundingClientRect();
            if (o.right > box.left && o.left < box.right && o.bottom > box.top && o.top < box.bottom) wrong.push('overlaps: ' + field.textContent);
        }
        if (box.left < field.getBoundingClientRect().left) wrong.push('cut: ' + field.textContent);
    }
    const last = document.querySelector('.lectern-next').getAttribute('aria-disabled') === 'true';
    return {wrong, digits, last, at: location.hash, size: parseFloat(getComputedStyle(body).fontSize)};";

/// A stand-in for the browser's way to keep the screen on, which counts.
const COUNT_LOCKS: &str = "
    globalThis.locks = {asked: [], gone: 0};
    Object.defineProperty(navigator, 'wakeLock', {configurable: true, value: {request: kind => {
        locks.asked.push(kind);
        return Promise.resolve({release: () => { locks.gone += 1; return Promise.resolve(); }, onrelease: null});
    }}});";

async fn resize(visit: &Visit, (width, height): (u32, u32)) {
    let metrics =
        json!({ "width": width, "height": height, "deviceScaleFactor": 1, "mobile": false });
    devtools(&visit.client, "Emulation.setDeviceMetricsOverride", metrics).await;
}

/// Opens the view at a place.
async fn open(visit: &Visit, place: &str) {
    let go = "location.hash = arguments[0];";
    visit.run(go, json!(format!("at-machine{place}"))).await;
    let css = Locator::Css(".lectern-heading");
    visit.client.wait().for_element(css).await.unwrap();
}

async fn address(visit: &Visit) -> String {
    let url = visit.client.current_url().await.unwrap();
    url.fragment().unwrap_or_default().to_owned()
}

async fn place(visit: &Visit) -> String {
    visit.texts(".lectern-place").await.concat()
}

/// Waits until something is so.
async fn wait_for(visit: &Visit, what: &str, script: &str) {
    for _ in 0..200 {
        if visit.run(script, json!(null)).await == json!(true) {
            return;
        }
        tokio::time::sleep(Duration::from_millis(25)).await;
    }
    panic!("{what}");
}

/// Ticks the first box, and says how many are ticked.
const TICK: &str = "document.querySelector('.lectern-tick input').click(); return document.querySelectorAll('.lectern-tick :checked').length;";

const CLOSED: &str =
    "return !document.querySelector('.lectern') && !document.querySelector('.screen').inert;";

#[tokio::test]
async fn every_page_fits_every_window_and_is_read_from_afar() {
    visit("lectern-fits", |visit| async move {
        visit.settled().await;
        for &window in WINDOWS {
            resize(&visit, window).await;
            open(&visit, "=1").await;
            visit.press([HOME]).await;
            let (mut least, mut pages, mut smallest) = (f64::INFINITY, 0, f64::INFINITY);
            loop {
                let seen = visit.run(LOOK, json!(null)).await;
                assert_eq!(seen["wrong"], json!([]), "{window:?}: {}", seen["at"]);
                let digits = seen["digits"].as_array().unwrap().iter();
                least = digits.filter_map(Value::as_f64).fold(least, f64::min);
                smallest = smallest.min(seen["size"].as_f64().unwrap());
                pages += 1;
                assert!(pages < MOST_PAGES);
                if seen["last"] == json!(true) {
                    break;
                }
                visit.press([PAGE_DOWN]).await;
            }
            let mm = |per_inch: f64| least / per_inch * 25.4;
            assert!(mm(PER_INCH) >= SEEN_MM, "{window:?}: {least} px");
            assert!(mm(PER_INCH_HELD) >= SEEN_HELD_MM, "{window:?}: {least} px");
            // Sentences that were reckoned too short for their page are not made small.
            assert!(smallest >= 16.0, "{window:?}: letters of {smallest} px");
        }
        for theme in ["light", "dark"] {
            let wear = "document.documentElement.dataset.theme = arguments[0];";
            visit.run(wear, json!(theme)).await;
            for place in ["=1.cautions.1", "=1.start.1", "=1.numbers.1"] {
                open(&visit, place).await;
                visit.no_barriers().await;
            }
        }
    })
    .await;
}

#[tokio::test]
async fn it_opens_by_button_and_closes_by_key_and_comes_back_where_it_was() {
    visit("lectern-ways", |visit| async move {
        visit.settled().await;
        visit.run(COUNT_LOCKS, json!(null)).await;
        visit
            .by_role("link", "At the machine")
            .await
            .click()
            .await
            .unwrap();
        visit.by_role("button", "Forward").await;
        // Nothing behind it can be reached, and the screen stays on.
        assert!(visit.all_by_role("button", Some("Save")).await.is_empty());
        assert_eq!(
            visit.run("return locks;", json!(null)).await,
            json!({"asked": ["screen"], "gone": 0})
        );
        assert_eq!(
            visit.texts(".lectern-light").await.concat(),
            "screen stays on"
        );
        // Keys lead on and back.
        let first = address(&visit).await;
        visit.press([RIGHT]).await;
        let second = address(&visit).await;
        assert_ne!(first, second);
        visit.press([LEFT]).await;
        visit.press([PAGE_DOWN, PAGE_UP, RIGHT]).await;
        assert_eq!(address(&visit).await, second);
        visit.press([END]).await;
        let end = (address(&visit).await, place(&visit).await);
        visit.press([RIGHT]).await;
        assert_eq!((address(&visit).await, place(&visit).await), end);
        // It comes back to where it was.
        visit.client.refresh().await.unwrap();
        visit.by_role("button", "Forward").await;
        let there = format!(
            "return document.querySelector('.lectern-place')?.textContent === {};",
            json!(end.1)
        );
        wait_for(&visit, "the same page again", &there).await;
        assert_eq!(address(&visit).await, end.0);
        visit.press([ESCAPE]).await;
        wait_for(&visit, "closed by the key", CLOSED).await;
        assert_eq!(address(&visit).await, "");
        visit.settled().await;
    })
    .await;
}

#[tokio::test]
async fn from_a_step_the_browsers_way_back_leads_to_the_step() {
    visit("lectern-back", |visit| async move {
        visit.settled().await;
        // From a step; the browser's way back closes it, and the focus is where it was.
        visit
            .run(
                "document.querySelectorAll('.step-button')[2].click();",
                json!(null),
            )
            .await;
        let way_in = visit.by_role("link", "At the machine: step 3").await;
        way_in.click().await.unwrap();
        visit.by_role("button", "Forward").await;
        assert!(place(&visit).await.contains("Step 3 of"));
        visit.client.back().await.unwrap();
        wait_for(&visit, "closed by the way back", CLOSED).await;
        wait_for(
            &visit,
            "the focus is where it was",
            "return document.activeElement.id === 'at-machine-open-3';",
        )
        .await;
    })
    .await;
}

#[tokio::test]
async fn what_the_knobs_make_is_checked() {
    visit("lectern-turned", |visit| async move {
        visit.settled().await;
        open(&visit, "=1.start.1").await;
        assert_eq!(visit.run(TICK, json!(null)).await, json!(1));
        open(&visit, "=2.numbers.1").await;
        let open_checks = visit.texts(".lectern-note").await.concat();
        assert!(open_checks.contains("1 of"), "{open_checks}");
        visit.by_role("button", "Knobs").await.click().await.unwrap();
        for _ in 0..20 {
            visit.by_role("button", "Feed knob: less").await.click().await.unwrap();
        }
        assert_eq!(visit.texts(".lectern-knob-value").await[0], "5\u{A0}%");
        // A twentieth of the feed rubs.
        wait_for(&visit, "a caution", "return [...document.querySelectorAll('.lectern-said .lectern-caution')].some(e => e.textContent.includes('ubbing'));").await;
        visit.no_barriers().await;
        visit.press([ESCAPE]).await;
        let own = visit.texts(".lectern-own").await.concat();
        assert!(own.contains("feed 5\u{A0}%"), "{own}");
        assert_eq!(visit.count(".lectern-foot .lectern-caution").await, 1);
    })
    .await;
}

#[tokio::test]
async fn other_answers_leave_nothing_to_type_from_and_nothing_ticked() {
    visit("lectern-stale", |visit| async move {
        visit.settled().await;
        open(&visit, "=1.start.1").await;
        visit.run(TICK, json!(null)).await;
        // Other answers: nothing to type from until they are worked out, and nothing is ticked.
        visit.press([ESCAPE]).await;
        wait_for(&visit, "closed", CLOSED).await;
        visit.type_over("part.web", "thin").await;
        visit
            .until("a problem", |said| {
                said.contains("problem") || said.contains("answer")
            })
            .await;
        let go = "location.hash = 'at-machine=2.numbers.1';";
        visit.run(go, json!(null)).await;
        visit
            .client
            .wait()
            .for_element(Locator::Css(".lectern-none"))
            .await
            .unwrap();
        assert_eq!(visit.count(".lectern-number").await, 0);
        visit.press([ESCAPE]).await;
        wait_for(&visit, "closed again", CLOSED).await;
        visit.type_over("part.web", "4.5").await;
        visit.settled().await;
        open(&visit, "=1.start.1").await;
        assert_eq!(visit.count(".lectern-tick :checked").await, 0);
    })
    .await;
}

#[tokio::test]
async fn a_browser_that_cannot_keep_the_screen_on_is_told_of() {
    visit("lectern-dark", |visit| async move {
        visit.settled().await;
        let none =
            "Object.defineProperty(navigator, 'wakeLock', {configurable: true, value: undefined});";
        visit.run(none, json!(null)).await;
        open(&visit, "").await;
        let said = visit.texts(".lectern-light").await.concat();
        assert!(said.contains("cannot keep the screen on"), "{said}");
        visit.press([ESCAPE]).await;
        wait_for(&visit, "closed", CLOSED).await;
        // One that can is asked again when the page comes back into sight, and let go of in the end.
        visit.run(COUNT_LOCKS, json!(null)).await;
        open(&visit, "").await;
        visit
            .run(
                "document.dispatchEvent(new Event('visibilitychange'));",
                json!(null),
            )
            .await;
        wait_for(&visit, "asked again", "return locks.asked.length === 2;").await;
        visit.press([ESCAPE]).await;
        wait_for(&visit, "let go", "return locks.gone === 2;").await;
    })
    .await;
}
