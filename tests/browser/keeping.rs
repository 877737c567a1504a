//! What is kept between visits, and what happens when it cannot be read or kept.

use crate::devtools::devtools;
use crate::visit::{Visit, visit};
use serde_json::{Value, json};
use thinwright_core::{Answers, Field, Known};
use thinwright_jobfile::{JobFile, Sample, SavedMachine, Store};
use thinwright_quantity::UnitSystem;

const KEY: &str = "thinwright";
const ASIDE: &str = "thinwright.damaged.1";

async fn kept(visit: &Visit, key: &str) -> Option<String> {
    let found = visit
        .run("return localStorage.getItem(arguments[0]);", json!(key))
        .await;
    found.as_str().map(str::to_owned)
}

/// Everything that the database holds: ids and texts.
pub(crate) async fn things(visit: &Visit) -> Vec<(String, String)> {
    const ALL: &str = "
        const done = arguments[arguments.length - 1];
        const asked = indexedDB.open('thinwright');
        asked.onsuccess = () => {
            const store = asked.result.transaction('things').objectStore('things');
            const [keys, texts] = [store.getAllKeys(), store.getAll()];
            store.transaction.oncomplete = () => {
                asked.result.close();
                done(keys.result.map((key, at) => [key, String(texts.result[at])]));
            };
        };";
    let all = visit.client.execute_async(ALL, vec![]).await.unwrap();
    serde_json::from_value(all).unwrap()
}

/// Puts a value into the database as a stranger would.
async fn put(visit: &Visit, key: &str, value: Value) {
    const PUT: &str = "
        const [key, value, done] = arguments;
        const asked = indexedDB.open('thinwright');
        asked.onsuccess = () => {
            const store = asked.result.transaction('things', 'readwrite').objectStore('things');
            store.put(value, key);
            store.transaction.oncomplete = () => { asked.result.close(); done(); };
        };";
    let values = vec![json!(key), value];
    visit.client.execute_async(PUT, values).await.unwrap();
}

/// Waits until the database holds a text that contains this, and tells its id.
async fn holds(visit: &Visit, what: &str) -> String {
    for _ in 0..400 {
        let all = things(visit).await;
        if let Some((id, _)) = all.into_iter().find(|(_, text)| text.contains(what)) {
            return id;
        }
        tokio::time::sleep(std::time::Duration::from_millis(25)).await;
    }
    panic!("{what} was never kept");
}

async fn again(visit: &Visit) {
    visit.client.refresh().await.unwrap();
    visit.settled().await;
}

async fn alarms(visit: &Visit) -> String {
    visit.texts(".message-alarm").await.concat()
}

#[tokio::test]
async fn answers_come_back_as_they_were_typed() {
    visit("kept", |visit| async move {
        visit.settled().await;
        let typed = [
            ("part.thickness", "19,0 mm"),
            ("part.web", "3/16 in"),
            ("part.diameter", "about 160"),
        ];
        for (key, text) in typed {
            visit.type_over(key, text).await;
        }
        // At once: what is not in the database yet is in a draft.
        visit.client.refresh().await.unwrap();
        visit.started().await;
        for (key, text) in typed {
            assert_eq!(visit.typed(key).await, text);
        }
        let all = things(&visit).await;
        assert_eq!(all.len(), 1, "{all:?}");
        assert!(all[0].1.contains("about 160"), "{all:?}");
        let drafts = "return Object.keys(localStorage).filter(k => k.includes('draft'));";
        assert_eq!(visit.run(drafts, json!(null)).await, json!([]));
    })
    .await;
}

#[tokio::test]
async fn what_earlier_versions_kept_goes_into_the_shop() {
    visit("earlier", |visit| async move {
        visit.settled().await;
        let mut job = Sample::by_id("filter-cover").unwrap().job();
        job.answers.set_text(Field::Name, "Cover of mine");
        let mut machine = Answers::new(UnitSystem::Metric);
        machine.set(Field::Power, "650 W", Known::DataSheet);
        let store = Store {
            machines: vec![SavedMachine::of("Old router", &machine)],
            job: JobFile::new("", job.answers),
        };
        let set = format!("localStorage.setItem('{KEY}', arguments[0]);");
        visit.run(&set, json!(store.write())).await;
        for _ in 0..2 {
            again(&visit).await;
            assert_eq!(visit.typed("part.name").await, "Cover of mine");
            assert_eq!(kept(&visit, KEY).await, None);
            let all = things(&visit).await;
            let named = |what: &str| all.iter().any(|(_, text)| text.contains(what));
            assert!(
                all.len() == 2 && named("Old router") && named("Cover of mine"),
                "{all:?}"
            );
            assert_eq!(alarms(&visit).await, "");
        }
    })
    .await;
}

#[tokio::test]
async fn what_cannot_be_read_is_put_aside_and_told() {
    visit("damaged", |visit| async move {
        visit.settled().await;
        let damaged = "{\"thinwright_store\": 1, \"job\": {\"answ";
        let spoil = format!("localStorage.setItem('{KEY}', arguments[0]);");
        visit.run(&spoil, json!(damaged)).await;
        again(&visit).await;
        let told = alarms(&visit).await;
        assert!(
            told.contains("cannot be read") && told.contains(ASIDE),
            "{told}"
        );
        assert_eq!(kept(&visit, ASIDE).await.as_deref(), Some(damaged));
        // The sample is open; what is typed from now on is kept, and what was put aside stays.
        visit.type_over("part.web", "4.5").await;
        visit.settled().await;
        again(&visit).await;
        assert_eq!(visit.typed("part.web").await, "4.5");
        assert_eq!(kept(&visit, ASIDE).await.as_deref(), Some(damaged));
        assert_eq!(alarms(&visit).await, "");
    })
    .await;
}

async fn press(visit: &Visit, name: &str) {
    let button = visit.by_role("button", name).await;
    button.click().await.unwrap();
}

#[tokio::test]
async fn damaged_and_newer_records_are_left_and_shown() {
    visit("damaged-records", |visit| async move {
        visit.settled().await;
        visit.type_over("part.web", "4.5").await;
        let id = holds(&visit, "\"4.5\"").await;
        let strangers = [
            ("broken", json!("{\"thinwright_thing\": 1, \"id\": \"bro")),
            (
                "newer",
                json!("{\"thinwright_thing\": 99, \"all\": \"new\"}"),
            ),
            ("number", json!(17)),
        ];
        for (key, value) in &strangers {
            put(&visit, key, value.clone()).await;
        }
        again(&visit).await;
        let told = alarms(&visit).await;
        assert!(
            told.contains("3 entries of your shop cannot be read"),
            "{told}"
        );
        assert_eq!(visit.typed("part.web").await, "4.5");
        press(&visit, "Jobs, machines, racks").await;
        let shown = visit.texts(".shop-row").await.concat();
        assert!(
            shown.contains("written by a newer program: format 99"),
            "{shown}"
        );
        assert!(shown.contains("not JSON"), "{shown}");
        press(&visit, "Close").await;
        // The record of the job in hand is damaged while it is open: it is put aside, and the job is kept.
        put(&visit, &id, json!("{half of a rec")).await;
        visit.type_over("part.web", "4.75").await;
        assert_eq!(holds(&visit, "\"4.75\"").await, id);
        again(&visit).await;
        assert_eq!(visit.typed("part.web").await, "4.75");
        press(&visit, "Jobs, machines, racks").await;
        let shown = visit.texts(".shop-row").await.concat();
        assert_eq!(shown.matches("aside/").count(), 1, "{shown}");
        let all = things(&visit).await;
        for (key, value) in strangers {
            let text = value
                .as_str()
                .map_or_else(|| value.to_string(), str::to_owned);
            assert!(all.contains(&(key.to_owned(), text)), "{key}: {all:?}");
        }
    })
    .await;
}

#[tokio::test]
async fn a_newer_database_is_left_alone() {
    const RENEW: &str = "
        const done = arguments[arguments.length - 1];
        const asked = indexedDB.open('thinwright', 99);
        asked.onupgradeneeded = () => asked.result.createObjectStore('strange');
        asked.onsuccess = () => { asked.result.close(); done(true); };
        asked.onerror = () => done(false);";
    visit("newer-database", |visit| async move {
        visit.settled().await;
        visit.type_over("part.web", "4.5").await;
        holds(&visit, "\"4.5\"").await;
        // The page makes way for a newer one by itself.
        let renewed = visit.client.execute_async(RENEW, vec![]).await.unwrap();
        assert_eq!(renewed, json!(true));
        visit.type_over("part.web", "4.6").await;
        let message = fantoccini::Locator::Css(".message-alarm");
        visit.client.wait().for_element(message).await.unwrap();
        again(&visit).await;
        let told = alarms(&visit).await;
        assert!(told.contains("newer version of this page"), "{told}");
        // The draft is there; it goes on in the small store.
        assert_eq!(visit.typed("part.web").await, "4.6");
        visit.type_over("part.web", "4.7").await;
        visit.settled().await;
        again(&visit).await;
        assert_eq!(visit.typed("part.web").await, "4.7");
        let all = things(&visit).await;
        assert!(all.iter().all(|(_, text)| !text.contains("4.7")), "{all:?}");
    })
    .await;
}

#[tokio::test]
async fn without_a_database_the_small_store_serves_and_goes_over_later() {
    visit("no-database", |visit| async move {
        let gone = "Object.defineProperty(window, 'indexedDB', {value: undefined});";
        let script = devtools(
            &visit.client,
            "Page.addScriptToEvaluateOnNewDocument",
            json!({ "source": gone }),
        )
        .await;
        again(&visit).await;
        let told = visit.texts(".message").await.concat();
        assert!(told.contains("no database"), "{told}");
        visit.type_over("part.web", "4.5").await;
        visit.settled().await;
        again(&visit).await;
        assert_eq!(visit.typed("part.web").await, "4.5");
        devtools(
            &visit.client,
            "Page.removeScriptToEvaluateOnNewDocument",
            json!({ "identifier": script["identifier"] }),
        )
        .await;
        again(&visit).await;
        assert_eq!(visit.typed("part.web").await, "4.5");
        assert_eq!(visit.count(".message").await, 0);
        let all = things(&visit).await;
        assert!(all.len() == 1 && all[0].1.contains("4.5"), "{all:?}");
        let small = "return Object.keys(localStorage).filter(k => k.includes('thing.'));";
        assert_eq!(visit.run(small, json!(null)).await, json!([]));
    })
    .await;
}
