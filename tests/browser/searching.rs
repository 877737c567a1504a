//! The search on its way: how far it is, stopping it, going on, and that nothing moves under the eye.

use crate::person::{ENTER, UP_TO_DATE, plain_blanks};
use crate::visit::{Visit, visit};
use fantoccini::Locator;
use serde_json::json;

/// Types another web thickness, and stops the search as soon as it can be stopped and has told how far it is.
const TYPE_AND_STOP: &str = "
    const [text, done] = arguments;
    const field = document.getElementById('f-part-web');
    const button = document.querySelector('.status-button');
    const figures = () => document.querySelector('.status-figures').textContent;
    const look = () => {
        if (button.getAttribute('aria-label') === 'Stop working it out' && !button.hasAttribute('aria-disabled')
            && figures().includes('combinations')) {
            const told = figures();
            const size = button.getBoundingClientRect();
            watch.disconnect(); button.focus(); button.click(); done([told, size.height]);
        }
    };
    const watch = new MutationObserver(look);
    watch.observe(document.getElementById('strategy'),
        {subtree: true, childList: true, characterData: true, attributes: true});
    Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value').set.call(field, text);
    field.dispatchEvent(new InputEvent('input', {bubbles: true}));";

/// Least size of what is touched with a finger, px.
const TOUCH: f64 = 44.0;

#[tokio::test]
async fn it_is_stopped_and_goes_on() {
    visit("stopped", |visit| async move {
        visit.settled().await;
        let arguments = vec![json!("4.37")];
        let told = visit.client.execute_async(TYPE_AND_STOP, arguments).await;
        let told = told.unwrap();
        let figures = plain_blanks(told[0].as_str().unwrap());
        assert!(
            figures.contains(" %;") && figures.contains("ruled out"),
            "{figures}"
        );
        assert!(told[1].as_f64() >= Some(TOUCH), "{told}");
        visit
            .until("that it has stopped", |said| {
                said.starts_with("Stopped") || said.contains("was not worked out to the end")
            })
            .await;
        visit.no_barriers().await;
        // By keyboard: the same button, which has kept the focus.
        let button = visit.client.active_element().await.unwrap();
        assert_eq!(button.text().await.unwrap(), "Go on");
        visit.press([ENTER]).await;
        visit.settled().await;
        assert_eq!(visit.typed("part.web").await, "4.37");
    })
    .await;
}

/// Where what has the focus stands, and how often it was looked at until the strategy is there in full.
const KEEP_AND_WATCH: &str = "
    const [upToDate, done] = arguments;
    const card = document.querySelectorAll('.step')[5];
    const button = card.querySelectorAll('.keep')[1];
    button.scrollIntoView({block: 'center', behavior: 'instant'});
    button.focus();
    const places = [];
    const from = button.getBoundingClientRect().top;
    let old = false;
    button.click();
    const look = () => {
        places.push(Math.abs(button.getBoundingClientRect().top - from));
        const said = document.querySelector('.status-words').textContent;
        old = old || said !== upToDate;
        if (old && said === upToDate) done([Math.max(...places), places.length, document.activeElement === button]);
        else requestAnimationFrame(look);
    };
    requestAnimationFrame(look);";

/// How far it may move between two pictures, px: the rounding of a place on the screen.
const STILL: f64 = 2.0;

#[tokio::test]
async fn what_one_reads_stays_where_it_is() {
    visit("steady", |visit| async move {
        visit.settled().await;
        let open = "document.querySelectorAll('.step-button')[5].click();";
        visit.run(open, json!(null)).await;
        let watched = visit
            .client
            .execute_async(KEEP_AND_WATCH, vec![json!(UP_TO_DATE)])
            .await
            .unwrap();
        assert!(watched[0].as_f64() <= Some(STILL), "{watched}");
        assert!(watched[1].as_u64() > Some(3), "{watched}");
        assert_eq!(watched[2], json!(true), "the focus was lost");
        assert_eq!(visit.count(".step-open").await, 1, "the step was closed");
    })
    .await;
}

#[tokio::test]
async fn what_to_measure_leads_to_its_field() {
    visit("measure", |visit| async move {
        visit.settled().await;
        visit.open_sample("filter-cover").await;
        let worth = visit.texts(".gains h3").await;
        assert!(worth.contains(&"Worth measuring".to_owned()), "{worth:?}");
        let button = visit
            .client
            .find(Locator::Css(".gains .button"))
            .await
            .unwrap();
        let label = button.attr("aria-label").await.unwrap().unwrap();
        button.click().await.unwrap();
        // It leads to the entry whose label it names.
        let labels =
            "return [...document.activeElement.labels].map(l => l.firstChild.textContent.trim());";
        let labels = visit.run(labels, json!(null)).await;
        assert_eq!(json!([label.trim_start_matches("Enter it: ")]), labels);
    })
    .await;
}

#[tokio::test]
async fn every_step_says_what_binds_and_what_is_next() {
    visit("binds", |visit| async move {
        visit.settled().await;
        let steps = visit.count(".step").await;
        let told = visit.texts(".binding-which").await;
        let says = |what: &str| told.iter().filter(|t| *t == what).count();
        assert_eq!((says("binds:"), says("next:")), (steps, steps));
    })
    .await;
}

/// Types a number letter by letter, and tells the longest task of the page meanwhile, ms.
const TYPE_SLOWLY: &str = "
    const done = arguments[arguments.length - 1];
    const longest = [];
    const watch = new PerformanceObserver(list => longest.push(...list.getEntries().map(e => e.duration)));
    watch.observe({type: 'longtask'});
    const field = document.getElementById('f-part-web');
    const texts = ['4.', '4.2', '4.21', '4.2', '4.', '4.3', '4.32', '4.3', '4.', '4'];
    const set = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value').set;
    const next = () => {
        const text = texts.shift();
        if (text === undefined) { setTimeout(() => { watch.disconnect(); done(longest); }, 1500); return; }
        set.call(field, text);
        field.dispatchEvent(new InputEvent('input', {bubbles: true}));
        setTimeout(next, 150);
    };
    field.focus();
    next();";

/// A task that a hand would feel even on a machine that is busy with other tests, ms. The aim is 50 on one that is not.
const FELT: f64 = 250.0;

#[tokio::test]
#[allow(clippy::print_stdout, reason = "the figures are what one runs it for")]
async fn typing_stays_smooth() {
    visit("smooth", |visit: Visit| async move {
        visit.settled().await;
        let told = visit
            .client
            .execute_async(TYPE_SLOWLY, vec![])
            .await
            .unwrap();
        let long: Vec<f64> = serde_json::from_value(told).unwrap();
        println!("tasks over 50 ms while typing: {long:?}");
        assert!(long.iter().all(|ms| *ms < FELT), "{long:?}");
        visit.settled().await;
    })
    .await;
}
