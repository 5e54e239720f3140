//! The second copy in the browser's own database.

use beetle_almanac::almanac::table::Table;
use beetle_almanac::store::envelope::wrap;
use beetle_almanac::store::second::{Ended, Second};
use wasm_bindgen_test::wasm_bindgen_test;

const KEY: &str = "beetle-almanac:page:second-copy:2026-07-14";

fn texts(text: &str) -> Table<String, String> {
    let mut texts = Table::new();
    texts.insert(KEY.to_owned(), text.to_owned());
    texts
}

async fn lying(second: &Second) -> Vec<String> {
    let all = second.read().await.unwrap();
    all.into_iter().filter(|(key, _)| key.contains("second-copy")).map(|(_, text)| text).collect()
}

#[wasm_bindgen_test]
async fn a_page_is_there_for_another_tab_and_a_late_or_damaged_text_is_no_loss() {
    let second = Second::open().await.unwrap();
    let [first, later] = [wrap(1, 1, "\"½ full 🐝\""), wrap(1, 2, "\"later\"")];
    assert_eq!(second.write(&texts(&first)).await, Ended::Done);
    let other = Second::open().await.unwrap();
    assert_eq!(lying(&other).await, std::slice::from_ref(&first));
    assert_eq!(other.write(&texts(&later)).await, Ended::Done);
    assert_eq!(second.write(&texts(&later)).await, Ended::Done, "the same once more");
    assert_eq!(second.write(&texts(&first)).await, Ended::Overtaken);
    assert_eq!(second.write(&texts("torn")).await, Ended::Overtaken, "no envelope takes the place of one");
    assert_eq!(lying(&second).await, std::slice::from_ref(&later));

    // A later version of the page, or somebody who clears it, gets the database: this one makes way.
    let window = web_sys::window().unwrap();
    let gone = window.indexed_db().unwrap().unwrap().delete_database("beetle-almanac").unwrap();
    let promise = js_sys::Promise::new(&mut |yes, _| gone.set_onsuccess(Some(&yes)));
    wasm_bindgen_futures::JsFuture::from(promise).await.unwrap();
    assert_eq!(second.write(&texts(&later)).await, Ended::Closed);
    assert!(lying(&Second::open().await.unwrap()).await.is_empty());
}
