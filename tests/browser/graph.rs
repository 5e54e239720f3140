//! Signals, memos and effects keep what Leptos promises of them, and lists keep their rows.

use beetle_almanac::app::edge::pause::when_rested;
use beetle_almanac::app::el::{each, el, mount};
use beetle_almanac::app::graph::{Memo, Owner, RwSignal, StoredValue, effect, effect_since, untrack};
use leptos::task::tick;
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use wasm_bindgen_test::wasm_bindgen_test;

/// A part of the page of its own, and the framework's executor started.
fn part() -> Owner {
    leptos::mount::mount_to_body(|| ());
    Owner::new()
}

#[wasm_bindgen_test]
fn a_value_is_read_set_and_changed() {
    let part = part();
    part.with(|| {
        let text = RwSignal::new("oil".to_owned());
        text.update(|text| text.push('s'));
        assert_eq!(text.get_untracked(), "oils");
        text.set("trap".to_owned());
        assert_eq!(text.with_untracked(String::len), 4);
        assert_eq!(text.try_update_untracked(String::pop), Some(Some('p')));
        assert_eq!(text.get_untracked(), "tra");
        let kept = StoredValue::new(vec![1]);
        assert_eq!(kept.try_update_value(|kept| kept.push(2)), Some(()));
        assert_eq!(kept.get_value(), [1, 2]);
    });
}

#[wasm_bindgen_test]
fn a_value_that_is_set_anew_is_not_changed_under_its_reader() {
    part().with(|| {
        let count = RwSignal::new(1);
        // A new value is another one: the reader keeps the old.
        let seen = count.with_untracked(|seen| {
            count.set(3);
            *seen
        });
        assert_eq!((seen, count.get_untracked()), (1, 3));
    });
}

#[wasm_bindgen_test]
#[should_panic(expected = "while it was being read")]
fn an_update_that_would_be_lost_is_loud_in_a_debug_build() {
    part().with(|| {
        let count = RwSignal::new(1);
        count.with_untracked(|_| count.update(|count| *count = 2));
    });
}

#[wasm_bindgen_test]
fn what_comes_late_to_a_part_that_is_gone_does_nothing() {
    let part = part();
    let (text, kept) = part.with(|| (RwSignal::new(1), StoredValue::new(1)));
    part.cleanup();
    text.set(2);
    text.renew(3);
    text.update(|text| *text = 4);
    text.notify();
    kept.set_value(2);
    assert_eq!(text.try_update_untracked(|text| *text), None);
    assert_eq!(kept.try_update_value(|kept| *kept), None);
}

#[wasm_bindgen_test]
#[should_panic(expected = "while it was being read")]
fn so_is_a_change_that_tells_nobody() {
    part().with(|| {
        let count = RwSignal::new(1);
        count.with_untracked(|_| count.try_update_untracked(|count| *count = 2));
    });
}

#[wasm_bindgen_test]
#[should_panic(expected = "while it was being read")]
fn and_one_of_a_value_that_nobody_follows() {
    part().with(|| {
        let count = StoredValue::new(1);
        count.with_value(|_| count.try_update_value(|count| *count = 2));
    });
}

#[wasm_bindgen_test]
async fn a_memo_is_worked_out_when_asked_and_tells_only_of_another_outcome() {
    let part = part();
    let (made, ran) = (Rc::new(Cell::new(0)), Rc::new(Cell::new(0)));
    let (count, even) = part.with(|| {
        let count = RwSignal::new(2);
        let times = made.clone();
        let even = Memo::new(move || {
            times.set(times.get() + 1);
            count.get() % 2 == 0
        });
        let times = ran.clone();
        effect(move || {
            even.track();
            times.set(times.get() + 1);
        });
        (count, even)
    });
    assert_eq!(made.get(), 0, "nobody has asked");
    tick().await;
    assert_eq!((made.get(), ran.get()), (1, 1));
    count.set(4);
    tick().await;
    assert_eq!((made.get(), ran.get()), (2, 1), "even before, even now");
    count.set(5);
    tick().await;
    assert_eq!((made.get(), ran.get(), even.get_untracked()), (3, 2, false));
    assert_eq!(made.get(), 3, "kept until something it reads has changed");
}

#[wasm_bindgen_test]
async fn an_effect_runs_again_for_what_it_read_and_ends_with_its_part() {
    let part = part();
    let said = Rc::new(RefCell::new(Vec::new()));
    let (followed, ignored) = part.with(|| {
        let (followed, ignored) = (RwSignal::new(1), RwSignal::new(10));
        let said = said.clone();
        effect_since(move |before: Option<i32>| {
            let now = followed.get() + untrack(|| ignored.get());
            said.borrow_mut().push((before, now));
            now
        });
        (followed, ignored)
    });
    tick().await;
    ignored.set(20);
    tick().await;
    followed.set(2);
    tick().await;
    followed.renew(2);
    tick().await;
    assert_eq!(*said.borrow(), [(None, 11), (Some(11), 22)]);
    part.cleanup();
    followed.set(3);
    tick().await;
    assert_eq!(said.borrow().len(), 2);
}

#[wasm_bindgen_test]
async fn a_list_keeps_the_rows_whose_keys_stay_moves_them_and_lets_the_others_go() {
    let part = part();
    let drawn: Rc<RefCell<Vec<String>>> = Rc::default();
    let keys = part.with(|| {
        let keys = RwSignal::new(vec!["a", "b", "c"]);
        let drawn = drawn.clone();
        let rows = each(
            move || keys.get().into_iter().map(str::to_owned).collect(),
            move |key| {
                drawn.borrow_mut().push(key.to_owned());
                el("button").attr("id", &["row-of-", key].concat()).text(key)
            },
        );
        mount(el("div").attr("id", "list-of-rows").kid(rows));
        keys
    });
    let document = web_sys::window().unwrap().document().unwrap();
    let list = document.get_element_by_id("list-of-rows").unwrap();
    let text = || list.text_content().unwrap();
    assert_eq!(text(), "abc");
    let c = document.get_element_by_id("row-of-c").unwrap();
    wasm_bindgen::JsCast::unchecked_ref::<web_sys::HtmlElement>(&c).focus().unwrap();
    keys.set(vec!["c", "d", "a"]);
    tick().await;
    assert_eq!(text(), "cda");
    assert_eq!(drawn.borrow().len(), 4, "only the new one was drawn");
    assert_eq!(drawn.borrow().last().map(String::as_str), Some("d"));
    assert!(document.get_element_by_id("row-of-c").unwrap() == c);
    assert!(document.active_element().unwrap() == c, "the focus stays on the row that moved");
    part.cleanup();
}

#[wasm_bindgen_test]
async fn what_is_slow_is_worked_out_once_the_typing_rests_and_not_for_a_part_that_is_gone() {
    let wait = |milliseconds: u32| {
        let wait = js_sys::eval(&format!("new Promise(done => setTimeout(done, {milliseconds}))")).unwrap();
        wasm_bindgen_futures::JsFuture::from(js_sys::Promise::from(wait))
    };
    let part = part();
    let said: Rc<RefCell<Vec<String>>> = Rc::default();
    let text = part.with(|| {
        let text = RwSignal::new(String::new());
        let said = StoredValue::new(said.clone());
        when_rested(move || text.track(), move || said.with_value(|said| said.borrow_mut().push(text.get())));
        text
    });
    for letter in ["3", "30", "30 ", "30 %"] {
        text.set(letter.to_owned());
        tick().await;
        wait(50).await.unwrap();
    }
    assert!(said.borrow().is_empty(), "{said:?}");
    wait(800).await.unwrap();
    assert_eq!(*said.borrow(), ["30 %"]);
    text.set("40 %".to_owned());
    tick().await;
    part.cleanup();
    wait(800).await.unwrap();
    assert_eq!(said.borrow().len(), 1);
}
