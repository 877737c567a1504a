//! The browser's database: one store of things, one of texts put aside. What is to be done is decided elsewhere; here it is
//! done within one transaction, so that two windows never come between each other.

use super::place::Fault;
use indexed_db_futures::database::Database;
use indexed_db_futures::error::{DomException, Error, OpenDbError};
use indexed_db_futures::prelude::*;
use indexed_db_futures::transaction::{Transaction, TransactionMode};
use thinwright_jobfile::shop::{Settled, TakenAway, Thing, settle, take_away};
use wasm_bindgen::JsValue;
use wasm_bindgen_futures::spawn_local;

/// Name and version of the database.
const NAME: &str = "thinwright";
const VERSION: u32 = 1;
/// Things by id, and texts put aside by number.
const THINGS: &str = "things";
const ASIDE: &str = "aside";
/// Before the number of a text put aside, where it is told from an id.
const ASIDE_KEY: &str = "aside/";

/// Opens it, and makes it where there is none.
pub(super) async fn open() -> Result<Database, Fault> {
    let database = Database::open(NAME)
        .with_version(VERSION)
        .with_on_upgrade_needed(|_, database| {
            let there: Vec<String> = database.object_store_names().collect();
            if !there.iter().any(|name| name == THINGS) {
                database.create_object_store(THINGS).build()?;
            }
            if !there.iter().any(|name| name == ASIDE) {
                database
                    .create_object_store(ASIDE)
                    .with_auto_increment(true)
                    .build()?;
            }
            Ok(())
        })
        .await
        .map_err(open_fault)?;
    make_way(&database);
    Ok(database)
}

/// Lets a newer version of the page have the database when it asks for it.
fn make_way(database: &Database) {
    if let Ok(mut changes) = database.version_changes() {
        let database = database.clone();
        spawn_local(async move {
            if changes.recv().await.is_some() {
                database.close();
            }
        });
    }
}

/// Everything: ids or places aside, and texts.
pub(super) async fn all(database: &Database) -> Result<Vec<(String, String)>, Fault> {
    let both = begin(database, TransactionMode::Readonly)?;
    let mut out = Vec::new();
    for (name, before) in [(THINGS, ""), (ASIDE, ASIDE_KEY)] {
        let store = both.object_store(name).map_err(fault)?;
        let keys = store.get_all_keys::<JsValue>().primitive().map_err(fault)?;
        let texts = store.get_all::<JsValue>().primitive().map_err(fault)?;
        let (keys, texts) = (keys.await.map_err(fault)?, texts.await.map_err(fault)?);
        for (key, text) in keys.zip(texts) {
            let (key, text) = (key.map_err(fault)?, text.map_err(fault)?);
            out.push((format!("{before}{}", as_text(&key)), as_text(&text)));
        }
    }
    Ok(out)
}

/// Keeps a thing.
pub(super) async fn keep(
    database: &Database,
    mine: &Thing,
    spare: &str,
    taken: &[String],
) -> Result<Settled, Fault> {
    let both = begin(database, TransactionMode::Readwrite)?;
    let things = both.object_store(THINGS).map_err(fault)?;
    let there = get(&both, &mine.id).await?;
    let settled = settle(there.as_deref(), mine, spare, taken);
    if let Some(text) = &settled.aside {
        let aside = both.object_store(ASIDE).map_err(fault)?;
        aside
            .add(text.as_str())
            .primitive()
            .map_err(fault)?
            .await
            .map_err(fault)?;
    }
    if settled.write {
        let text = settled.thing.write();
        let put = things.put(text).with_key(settled.thing.id.clone());
        put.primitive().map_err(fault)?.await.map_err(fault)?;
    }
    both.commit().await.map_err(fault)?;
    Ok(settled)
}

/// Takes a thing out.
pub(super) async fn out(database: &Database, known: &Thing) -> Result<TakenAway, Fault> {
    let both = begin(database, TransactionMode::Readwrite)?;
    let there = get(&both, &known.id).await?;
    let taken = take_away(there.as_deref(), known);
    if taken == TakenAway::Out {
        let things = both.object_store(THINGS).map_err(fault)?;
        let gone = things.delete(known.id.clone());
        gone.primitive().map_err(fault)?.await.map_err(fault)?;
    }
    both.commit().await.map_err(fault)?;
    Ok(taken)
}

/// Takes out what cannot be read, if it is still the same.
pub(super) async fn drop_unread(database: &Database, key: &str, text: &str) -> Result<(), Fault> {
    let both = begin(database, TransactionMode::Readwrite)?;
    match key.strip_prefix(ASIDE_KEY).map(str::parse::<u32>) {
        Some(Ok(number)) => {
            let aside = both.object_store(ASIDE).map_err(fault)?;
            aside
                .delete(number)
                .primitive()
                .map_err(fault)?
                .await
                .map_err(fault)?;
        }
        Some(Err(_)) => {}
        None if get(&both, key).await?.as_deref() == Some(text) => {
            let things = both.object_store(THINGS).map_err(fault)?;
            let gone = things.delete(key.to_owned());
            gone.primitive().map_err(fault)?.await.map_err(fault)?;
        }
        None => {}
    }
    both.commit().await.map_err(fault)
}

fn begin(database: &Database, mode: TransactionMode) -> Result<Transaction<'_>, Fault> {
    let both = database.transaction([THINGS, ASIDE]).with_mode(mode);
    both.build().map_err(fault)
}

async fn get(both: &Transaction<'_>, id: &str) -> Result<Option<String>, Fault> {
    let things = both.object_store(THINGS).map_err(fault)?;
    let there = things.get::<JsValue, _, _>(id.to_owned());
    let there = there.primitive().map_err(fault)?.await.map_err(fault)?;
    Ok(there.map(|there| as_text(&there)))
}

/// A text as it is; anything else, which nobody but a stranger has put there, as the browser would write it.
fn as_text(value: &JsValue) -> String {
    let written = || js_sys::JSON::stringify(value).ok().map(String::from);
    let text = value.as_string().or_else(written);
    text.unwrap_or_default()
}

fn open_fault(error: OpenDbError) -> Fault {
    match error {
        OpenDbError::Base(error) => fault(error),
        other => Fault::Missing(other.to_string()),
    }
}

fn fault(error: Error) -> Fault {
    let name = match &error {
        Error::DomException(exception) => web_sys::DomException::from(exception.clone()).name(),
        _ => String::new(),
    };
    let words = match &error {
        Error::DomException(exception) => DomException::message(exception),
        other => other.to_string(),
    };
    match name.as_str() {
        "QuotaExceededError" => Fault::Full,
        "VersionError" => Fault::Newer,
        // It was closed to make way.
        "InvalidStateError" => Fault::TakenOver,
        _ => Fault::Broken(words),
    }
}
