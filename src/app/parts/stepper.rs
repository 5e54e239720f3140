//! A whole number that can be typed or stepped with big keys.

use super::field::Says;
use super::field::{SaysFn, says_view};
use crate::app::el::{El, el};
use crate::app::graph::RwSignal;
use crate::app::wording::en;

/// `Stepper::new("hives", "Hives", typed.hives, 0, 500).view()`
pub struct Stepper(Box<Made>);

/// A stepper in the making, which lies still while it is described.
struct Made {
    id: String,
    label: String,
    text: RwSignal<String>,
    least: u32,
    most: u32,
    says: Option<SaysFn>,
}

impl Stepper {
    /// Keys stop at `least` and `most`; typed text is left alone and judged by `says`.
    pub fn new(id: impl AsRef<str>, label: &str, text: RwSignal<String>, least: u32, most: u32) -> Stepper {
        made(id.as_ref(), label, text, least, most)
    }

    /// What is said about the text, under it.
    #[must_use]
    pub fn says(mut self, says: impl Fn() -> Says + 'static) -> Stepper {
        self.0.says = Some(Box::new(says));
        self
    }

    /// The stepper.
    pub fn view(self) -> El {
        let Made { id, label, text, least, most, says } = *self.0;
        let step = move |by: i32| {
            // From a text that is no number the first press starts at the bottom.
            let next = match text.with_untracked(|text| text.trim().parse::<u32>()) {
                Ok(now) => now.saturating_add_signed(by).clamp(least, most),
                Err(_) => least,
            };
            text.set(next.to_string());
        };
        let key = |mark: &str, name: String, by: i32| {
            el("button")
                .attr("type", "button")
                .class("key step")
                .attr("aria-label", &name)
                .text(mark)
                .press(move || step(by))
        };
        let says_id = [&id, "-says"].concat();
        let input = el("input")
            .attr("id", &id)
            .test_id(&id)
            .attr("type", "text")
            .attr("inputmode", "numeric")
            .attr("autocomplete", "off")
            .attr("aria-describedby", &says_id)
            .typed(text);
        let line = says_view(says, &says_id, input.element());
        el("div")
            .class("field stepper")
            .kid(el("label").attr("for", &id).text(&label))
            .kid(el("div").class("field-row").kid(key("−", en::less(&label), -1)).kid(input).kid(key(
                "+",
                en::more(&label),
                1,
            )))
            .kid(line)
    }
}

#[inline(never)]
fn made(id: &str, label: &str, text: RwSignal<String>, least: u32, most: u32) -> Stepper {
    Stepper(Box::new(Made { id: id.to_owned(), label: label.to_owned(), text, least, most, says: None }))
}
