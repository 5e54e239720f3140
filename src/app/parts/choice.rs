//! One of a few, each a key.

use crate::app::el::{El, el};
use crate::app::graph::RwSignal;
use std::rc::Rc;
use wasm_bindgen::JsCast;
use web_sys::HtmlInputElement;

/// Radio keys. `Choice::new("scheme", "Light").option("sun", "Full sun").text(signal).view()`
pub struct Choice(Box<Made>);

/// A choice in the making, which lies still while it is described.
struct Made {
    name: String,
    legend: String,
    options: Vec<(String, String)>,
    chosen: Rc<dyn Fn() -> String>,
    choose: Rc<dyn Fn(String)>,
}

impl Choice {
    /// `name` is unique on the page.
    pub fn new(name: impl Into<String>, legend: impl Into<String>) -> Choice {
        Choice(Box::new(Made {
            name: name.into(),
            legend: legend.into(),
            options: Vec::new(),
            chosen: Rc::new(String::new),
            choose: Rc::new(|_| ()),
        }))
    }

    /// One more to choose from: its code and its words.
    #[must_use]
    pub fn option(mut self, code: impl Into<String>, words: impl Into<String>) -> Choice {
        self.0.options.push((code.into(), words.into()));
        self
    }

    /// The code of the chosen one.
    #[must_use]
    pub fn chosen(mut self, chosen: impl Fn() -> &'static str + 'static) -> Choice {
        self.0.chosen = Rc::new(move || chosen().to_owned());
        self
    }

    /// Called with the code that was pressed.
    #[must_use]
    pub fn choose(mut self, choose: impl Fn(String) + 'static) -> Choice {
        self.0.choose = Rc::new(choose);
        self
    }

    /// Keeps the code in a text, instead of `chosen` and `choose`.
    #[must_use]
    pub fn text(mut self, text: RwSignal<String>) -> Choice {
        self.0.chosen = Rc::new(move || text.get());
        self.0.choose = Rc::new(move |code| text.set(code));
        self
    }

    /// The choice.
    pub fn view(self) -> El {
        let Made { name, legend, options, chosen, choose } = *self.0;
        let key = |(code, words): (String, String)| {
            let input = el("input").attr("type", "radio").attr("name", &name).attr("value", &code);
            let button = input.element().clone().unchecked_into::<HtmlInputElement>();
            let (chosen, choose, own) = (chosen.clone(), choose.clone(), code.clone());
            let input = input
                .live_prop(move || button.set_checked(chosen() == own))
                .on("change", move |_| choose(code.clone()));
            el("label").class("radio").kid(input).kid(el("span").text(&words))
        };
        el("fieldset")
            .class("choice")
            .kid(el("legend").text(&legend))
            .kid(el("div").class("choice-keys").kids(options.into_iter().map(key)))
    }
}
