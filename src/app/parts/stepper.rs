//! A whole number that can be typed or stepped with big keys.

use super::field::Says;
use super::field::{SaysFn, invalid, says_view};
use crate::app::el::{El, el};
use crate::app::graph::RwSignal;
use crate::app::wording::en;

/// `Stepper::new("hives", "Hives", typed.hives, 0, 500).view()`
pub struct Stepper {
    id: String,
    label: String,
    text: RwSignal<String>,
    least: u32,
    most: u32,
    says: Option<SaysFn>,
}

impl Stepper {
    /// Keys stop at `least` and `most`; typed text is left alone and judged by `says`.
    pub fn new(
        id: impl Into<String>,
        label: impl Into<String>,
        text: RwSignal<String>,
        least: u32,
        most: u32,
    ) -> Stepper {
        Stepper { id: id.into(), label: label.into(), text, least, most, says: None }
    }

    /// What is said about the text, under it.
    #[must_use]
    pub fn says(mut self, says: impl Fn() -> Says + 'static) -> Stepper {
        self.says = Some(std::rc::Rc::new(says));
        self
    }

    /// The stepper.
    pub fn view(self) -> El {
        let Stepper { id, label, text, least, most, says } = self;
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
        el("div")
            .class("field stepper")
            .kid(el("label").attr("for", &id).text(&label))
            .kid(
                el("div")
                    .class("field-row")
                    .kid(key("−", en::less(&label), -1))
                    .kid(invalid(input, says.clone()))
                    .kid(key("+", en::more(&label), 1)),
            )
            .kid(says_view(says, &says_id))
    }
}
