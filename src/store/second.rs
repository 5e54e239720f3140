//! The second copy in the browser's database: the only file of the store that knows it.
//!
//! One database for the origin, as the first copy is one: deployments under different paths share their records.

use super::mirror;
use crate::almanac::table::Table;
use js_sys::{Array, Function, Object, Promise, Reflect};
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;
use web_sys::{EventTarget, IdbDatabase, IdbObjectStore, IdbRequest, IdbTransaction};

const NAME: &str = "beetle-almanac";
const STORE: &str = "texts";

/// The open database.
#[derive(Clone)]
pub struct Second(IdbDatabase);

/// How a transaction ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ended {
    /// The texts are on disk, as far as the browser can tell.
    Done,
    /// Somebody has written since the copies were last compared. Nothing was written.
    Overtaken,
    /// The browser did not take them: no room, most of the time. Nothing was written.
    Refused,
    /// The database is no longer open: a newer version of the page wants it, or somebody cleared it.
    Closed,
}

impl Second {
    /// Opens the database; none where the browser has none for this page.
    pub async fn open() -> Option<Second> {
        let request = web_sys::window()?.indexed_db().ok()??.open_with_u32(NAME, 1).ok()?;
        let opening = request.clone();
        let make = Closure::once_into_js(move || {
            if let Ok(fresh) = opening.result() {
                let _ = fresh.unchecked_into::<IdbDatabase>().create_object_store(STORE);
            }
        });
        request.set_onupgradeneeded(Some(make.unchecked_ref()));
        settled(&request, "success", "error").await?;
        let database: IdbDatabase = request.result().ok()?.unchecked_into();
        let old = database.clone();
        let make_way = Closure::once_into_js(move || old.close());
        database.set_onversionchange(Some(make_way.unchecked_ref()));
        Some(Second(database))
    }

    /// Every text by its key; none when the database cannot be read.
    pub async fn read(&self) -> Option<Vec<(String, String)>> {
        let (_, store) = self.begin("readonly")?;
        let keys = store.get_all_keys().ok()?;
        let texts = store.get_all().ok()?;
        settled(&texts, "success", "error").await?;
        let keys: Array = keys.result().ok()?.dyn_into().ok()?;
        let texts: Array = texts.result().ok()?.dyn_into().ok()?;
        let mut read = Vec::new();
        for (key, text) in keys.iter().zip(texts.iter()) {
            if let (Some(key), Some(text)) = (key.as_string(), text.as_string()) {
                read.push((key, text));
            }
        }
        Some(read)
    }

    /// Writes `texts`, all of them or none, as [`mirror::transaction`] allows. It is done when the browser says that they
    /// are on disk.
    pub async fn write(&self, texts: &Table<String, String>) -> Ended {
        let Some((transaction, store)) = self.begin("readwrite") else { return Ended::Closed };
        match put(&store, texts).await {
            Some(Ended::Done) => {}
            other => {
                let _ = transaction.abort();
                return other.unwrap_or(Ended::Refused);
            }
        }
        if settled(&transaction, "complete", "abort").await.is_some() { Ended::Done } else { Ended::Refused }
    }

    /// A transaction that is on disk when it is complete: the browsers that ask for it are asked.
    fn begin(&self, mode: &str) -> Option<(IdbTransaction, IdbObjectStore)> {
        let options = Object::new();
        Reflect::set(&options, &"durability".into(), &"strict".into()).ok()?;
        let begin: Function = Reflect::get(&self.0, &"transaction".into()).ok()?.dyn_into().ok()?;
        let transaction: IdbTransaction =
            begin.call3(&self.0, &STORE.into(), &mode.into(), &options).ok()?.unchecked_into();
        let store = transaction.object_store(STORE).ok()?;
        Some((transaction, store))
    }
}

async fn put(store: &IdbObjectStore, texts: &Table<String, String>) -> Option<Ended> {
    let mut asked: Vec<IdbRequest> = Vec::new();
    for key in texts.keys() {
        asked.push(store.get(&key.into()).ok()?);
    }
    // Requests of a transaction are answered in their order.
    settled(asked.last()?, "success", "error").await?;
    let mut lying = Vec::new();
    for request in asked {
        lying.push(request.result().ok()?.as_string());
    }
    let Some(puts) = mirror::transaction(&lying, texts) else { return Some(Ended::Overtaken) };
    for (key, text) in puts {
        store.put_with_key(&text.into(), &key.into()).ok()?;
    }
    Some(Ended::Done)
}

/// Waits for one event or the other; none for the second.
async fn settled(target: &EventTarget, good: &str, bad: &str) -> Option<()> {
    let promise = Promise::new(&mut |yes, no| {
        let _ = target.add_event_listener_with_callback(good, &yes);
        let _ = target.add_event_listener_with_callback(bad, &no);
    });
    JsFuture::from(promise).await.ok().map(|_| ())
}
