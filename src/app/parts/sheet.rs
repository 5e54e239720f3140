//! Something on top of the page until it is closed.

use crate::app::edge;
use crate::app::el::{Bit, El, el, live};
use crate::app::graph::RwSignal;
use crate::app::wording::en;
use wasm_bindgen::JsCast;
use web_sys::HtmlDialogElement;

/// A sheet with a heading and a close key. The browser's own dialog keeps the focus inside, closes on the back or
/// escape key and gives the focus back.
pub fn sheet<B: Into<Bit>>(
    open: RwSignal<bool>,
    title: impl AsRef<str>,
    body: impl Fn() -> B + 'static,
) -> El {
    made(open, title.as_ref(), Box::new(move || body().into()))
}

fn made(open: RwSignal<bool>, title: &str, body: Box<dyn Fn() -> Bit>) -> El {
    let close = el("button")
        .attr("type", "button")
        .class("key key-big")
        .text(en::CLOSE)
        .press(move || open.set(false));
    let sheet = el("dialog")
        .class("sheet")
        .attr("aria-label", title)
        .on("close", move |_| open.set(false))
        .kid(el("div").class("sheet-head").kid(el("h2").text(title)).kid(close))
        .kid(el("div").class("sheet-body").kid(live(move || open.get().then(&body))));
    let dialog = sheet.element().clone().unchecked_into::<HtmlDialogElement>();
    sheet.live_prop(move || {
        let wanted = open.get();
        let dialog = dialog.clone();
        // A dialog opens only once it stands in the page.
        edge::before_paint(move || match (wanted, dialog.open()) {
            (true, false) => {
                let _ = dialog.show_modal();
            }
            (false, true) => dialog.close(),
            _ => {}
        });
    })
}
