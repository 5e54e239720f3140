//! A stretch of page under a heading that opens and shuts.

use crate::app::el::{El, Kid, el, live};
use crate::app::graph::Memo;

/// A card. Its body is built when it is first needed and only while it is open.
pub struct Card {
    /// Id of the heading key, for jumps; unique on the page.
    pub id: String,
    /// The heading.
    pub title: &'static str,
    /// The question it answers, under the heading while it is shut.
    pub asks: &'static str,
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
        let mark = el("span").class("card-mark").attr("aria-hidden", "true");
        let key = el("button")
            .attr("type", "button")
            .attr("id", &id)
            .attr("aria-controls", &body_id)
            .press(toggle)
            .kid(el("span").text(title))
            .kid(mark.clone());
        let asks = el("p").class("card-asks").text(asks);
        let (heading, question) = (key.clone(), asks.clone());
        let key = key.live_prop(move || {
            let open = open.get();
            let _ = heading.element().set_attribute("aria-expanded", if open { "true" } else { "false" });
            mark.element().set_text_content(Some(if open { "−" } else { "+" }));
            let _ = question.element().toggle_attribute_with_force("hidden", open);
        });
        el("section")
            .class("card")
            .kid(el("h2").class("card-title").kid(key))
            .kid(asks)
            .kid(el("div").class("card-body").attr("id", &body_id).kid(live(move || open.get().then(&body))))
    }
}

/// Fields that most people leave alone, shut at first: "Change the rest".
pub fn more(summary: impl AsRef<str>, body: impl Kid) -> El {
    el("details")
        .class("more")
        .kid(el("summary").text(summary.as_ref()))
        .kid(el("div").class("more-body").kid(body))
}
