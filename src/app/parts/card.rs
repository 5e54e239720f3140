//! A stretch of page under a heading that opens and shuts.

use crate::app::el::{El, Kid, el, live};
use crate::app::graph::Memo;

/// A card. Its body is built when it is first needed and only while it is open.
pub struct Card {
    /// Id of the heading key, for jumps; unique on the page.
    pub id: String,
    /// The heading.
    pub title: String,
    /// The question it answers, under the heading while it is shut.
    pub asks: String,
    /// Whether it is open.
    pub open: Memo<bool>,
    /// Called when the heading is pressed.
    pub toggle: Box<dyn Fn()>,
}

impl Card {
    /// The card around `body`.
    pub fn view(self, body: impl Fn() -> El + 'static) -> El {
        let Card { id, title, asks, open, toggle } = self;
        let body_id = [&id, "-body"].concat();
        let mark = move || if open.get() { "−" } else { "+" }.to_owned();
        let key = el("button")
            .attr("type", "button")
            .attr("id", &id)
            .attr("aria-controls", &body_id)
            .live_attr("aria-expanded", move || Some(if open.get() { "true" } else { "false" }.to_owned()))
            .press(toggle)
            .kid(el("span").text(&title))
            .kid(el("span").class("card-mark").attr("aria-hidden", "true").live_text(mark));
        let shown = Memo::new(move || open.get());
        el("section")
            .class("card")
            .kid(el("h2").class("card-title").kid(key))
            .kid(
                el("p")
                    .class("card-asks")
                    .live_attr("hidden", move || open.get().then(String::new))
                    .text(&asks),
            )
            .kid(el("div").class("card-body").attr("id", &body_id).kid(live(move || shown.get().then(&body))))
    }
}

/// Fields that most people leave alone, shut at first: "Change the rest".
pub fn more(summary: impl Into<String>, body: impl Kid) -> El {
    el("details")
        .class("more")
        .kid(el("summary").text(&summary.into()))
        .kid(el("div").class("more-body").kid(body))
}
