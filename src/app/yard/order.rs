//! The walking order of a yard.

use super::keys::Desk;
use crate::app::edge;
use crate::app::el::{Bit, each, el, live, target};
use crate::app::graph::{Memo, RwSignal, untrack};
use crate::app::round::bits;
use crate::app::round::form::{Form, big, go, select};
use crate::app::round::walk::{by_tag, moved, put_after};
use crate::app::wording::{en_hive as w, en_round};
use crate::book::entry::What;
use crate::book::id::ThingId;
use web_sys::HtmlElement;

/// The hives of `yard` with their tags, as they are walked.
fn walked(form: Form, yard: &ThingId) -> Vec<(ThingId, String)> {
    form.walk.records.book.with(|book| {
        let hives = book.standing().hives_of(yard, true);
        hives.map(|(id, hive)| (id.clone(), hive.tag.clone())).collect()
    })
}

fn names(hives: Vec<(ThingId, String)>) -> Vec<ThingId> {
    hives.into_iter().map(|(id, _)| id).collect()
}

/// Writes an order; true when it is kept.
fn write(form: Form, yard: &ThingId, hives: &[ThingId]) -> bool {
    form.put("order", w::ORDERED.to_owned(), &|book, pen, _, today| {
        let what = What::Order { yard: yard.clone(), hives: hives.to_vec() };
        book.about_yard(pen, today, today, yard, what)
    })
}

/// Keys that put the hives of the yard in order.
pub(super) fn view(desk: Desk) -> Bit {
    let form = desk.form;
    let now = move || desk.yard.with_value(|yard| walked(form, yard));
    let ids = Memo::new(move || {
        let mut ids = Vec::new();
        for (id, _) in now() {
            ids.push(id.to_string());
        }
        ids
    });
    let set = move |hives: &[ThingId]| desk.yard.with_value(|yard| write(form, yard, hives));
    let sort = move || {
        let before = untrack(now);
        let mut sorted = before.clone();
        crate::almanac::order::sort_by(&mut sorted, |(_, a), (_, b)| by_tag(a, b));
        if sorted != before {
            set(&names(sorted));
        }
    };
    let row = move |id: &str| {
        let Ok(hive) = ThingId::parse(id) else { return el("li") };
        let book = form.walk.records.book;
        let tag = book.with_untracked(|book| book.standing().hives.get(&hive).map(|now| now.tag.clone()));
        let tag = tag.unwrap_or_default();
        let key = |sign: &str, mark: &'static str, name: String, by: isize| {
            let hive = hive.clone();
            big(sign, mark, || ()).attr("aria-label", &name).on("click", move |event| {
                if let Some(order) = moved(names(untrack(now)), &hive, by) {
                    let held = target::<HtmlElement>(&event).map(Held::at);
                    set(&order);
                    if let Some(held) = held {
                        held.hold();
                    }
                }
            })
        };
        el("li")
            .class("order-keys")
            .kid(el("span").kid(el("bdi").text(&tag)))
            .kid(key("↑", "earlier", w::earlier(&tag), -1))
            .kid(key("↓", "later", w::later(&tag), 1))
    };
    let after = live(move || {
        ids.track();
        untrack(|| desk.yard.with_value(|yard| after(form, yard, None)))
    });
    bits![
        go(w::BY_TAG, "order-by-tag", sort),
        after,
        form.refused("order"),
        el("ol").class("rows order-list").kid(each(move || ids.get(), row)),
    ]
}

/// A key that stays under the finger while the list moves its row.
struct Held {
    key: HtmlElement,
    /// Where it stood in the page and how far the page was scrolled, in px.
    was: f64,
    scrolled: f64,
}

impl Held {
    fn at(key: HtmlElement) -> Held {
        let scrolled = edge::window().and_then(|window| window.scroll_y().ok()).unwrap_or_default();
        Held { was: f64::from(key.offset_top()), key, scrolled }
    }

    /// Once the rows stand in their new order, scrolls as far as the key went.
    fn hold(self) {
        edge::before_paint(move || {
            if let Some(window) = edge::window() {
                let went = f64::from(self.key.offset_top()) - self.was;
                window.scroll_to_with_x_and_y(0.0, self.scrolled + went);
            }
        });
    }
}

/// Puts `hive`, or the one that is chosen, after another one.
pub fn after(form: Form, yard: &ThingId, hive: Option<&ThingId>) -> Bit {
    let yard = yard.clone();
    let mut hives = Vec::new();
    for (id, tag) in untrack(|| walked(form, &yard)) {
        if hive != Some(&id) {
            hives.push((id.to_string(), en_round::hive(&tag)));
        }
    }
    let first = hives.first().map(|(id, _)| id.clone()).unwrap_or_default();
    let chosen = RwSignal::new(hive.map_or(first, ToString::to_string));
    let which = hive.is_none().then(|| select("order-hive", w::PUT, chosen, &hives));
    hives.insert(0, (String::new(), w::AT_THE_GATE.to_owned()));
    let behind = RwSignal::new(String::new());
    let put = move || {
        let read = |id: RwSignal<String>| id.with_untracked(|id| ThingId::parse(id).ok());
        let order = names(untrack(|| walked(form, &yard)));
        if let Some(order) = read(chosen).and_then(|hive| put_after(order, &hive, read(behind).as_ref())) {
            write(form, &yard, &order);
        }
    };
    bits![which, select("order-after", w::AFTER, behind, &hives), go(w::PUT_KEY, "order-put", put)]
}
