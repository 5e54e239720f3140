//! One of a few, each a key.

use crate::app::el::{El, el};
use crate::app::graph::RwSignal;
use leptos::prelude::event_target_value;
use wasm_bindgen::JsCast;
use web_sys::HtmlInputElement;

/// Radio keys. `Choice::new("scheme", "Light").option("sun", "Full sun").text(signal).view()`
pub struct Choice(Box<Made>);

/// A choice in the making, which lies still while it is described.
struct Made {
    name: String,
    field: El,
    keys: El,
    buttons: Vec<(HtmlInputElement, String)>,
    chosen: Box<dyn Fn() -> String>,
    choose: Box<dyn Fn(String)>,
}

impl Choice {
    /// `name` is unique on the page.
    pub fn new(name: impl AsRef<str>, legend: impl AsRef<str>) -> Choice {
        made(name.as_ref(), legend.as_ref())
    }

    /// One more to choose from: its code and its words.
    #[must_use]
    pub fn option(self, code: impl AsRef<str>, words: impl AsRef<str>) -> Choice {
        self.options(&[(code.as_ref(), words.as_ref())])
    }

    /// Several more to choose from, each its code and its words.
    #[must_use]
    #[inline(never)]
    pub fn options(mut self, options: &[(&str, &str)]) -> Choice {
        for (code, words) in options {
            let input = el("input").attr("type", "radio").attr("name", &self.0.name).attr("value", code);
            self.0.buttons.push((input.element().clone().unchecked_into(), (*code).to_owned()));
            let label = el("label").class("radio").kid(input).kid(el("span").text(words));
            self.0.keys = self.0.keys.clone().kid(label);
        }
        self
    }

    /// The code of the chosen one.
    #[must_use]
    pub fn chosen(mut self, chosen: impl Fn() -> &'static str + 'static) -> Choice {
        self.0.chosen = Box::new(move || chosen().to_owned());
        self
    }

    /// Called with the code that was pressed.
    #[must_use]
    pub fn choose(mut self, choose: impl Fn(String) + 'static) -> Choice {
        self.0.choose = Box::new(choose);
        self
    }

    /// Keeps the code in a text, instead of `chosen` and `choose`.
    #[must_use]
    #[inline(never)]
    pub fn text(mut self, text: RwSignal<String>) -> Choice {
        self.0.chosen = Box::new(move || text.get());
        self.0.choose = Box::new(move |code| text.set(code));
        self
    }

    /// The choice.
    pub fn view(self) -> El {
        let Made { field, keys, buttons, chosen, choose, .. } = *self.0;
        field
            .kid(keys)
            .live_prop(move || {
                let chosen = chosen();
                for (button, code) in &buttons {
                    button.set_checked(*code == chosen);
                }
            })
            .on("change", move |event| choose(event_target_value(&event)))
    }
}

#[inline(never)]
fn made(name: &str, legend: &str) -> Choice {
    Choice(Box::new(Made {
        name: name.to_owned(),
        field: el("fieldset").class("choice").kid(el("legend").text(legend)),
        keys: el("div").class("choice-keys"),
        buttons: Vec::new(),
        chosen: Box::new(String::new),
        choose: Box::new(|_| ()),
    }))
}
