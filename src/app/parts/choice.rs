//! One of a few, each a key.

use leptos::prelude::*;

/// Radio keys. `Choice::new("scheme", "Light").option("sun", "Full sun").text(signal).view()`
pub struct Choice {
    name: String,
    legend: String,
    options: Vec<(String, String)>,
    chosen: Signal<String>,
    choose: Callback<String>,
}

impl Choice {
    /// `name` is unique on the page.
    pub fn new(name: impl Into<String>, legend: impl Into<String>) -> Choice {
        Choice {
            name: name.into(),
            legend: legend.into(),
            options: Vec::new(),
            chosen: Signal::derive(String::new),
            choose: Callback::new(|_| ()),
        }
    }

    /// One more to choose from: its code and its words.
    #[must_use]
    pub fn option(mut self, code: impl Into<String>, words: impl Into<String>) -> Choice {
        self.options.push((code.into(), words.into()));
        self
    }

    /// The code of the chosen one.
    #[must_use]
    pub fn chosen(mut self, chosen: impl Fn() -> &'static str + Send + Sync + 'static) -> Choice {
        self.chosen = Signal::derive(move || chosen().to_owned());
        self
    }

    /// Called with the code that was pressed.
    #[must_use]
    pub fn choose(mut self, choose: impl Fn(String) + Send + Sync + 'static) -> Choice {
        self.choose = Callback::new(choose);
        self
    }

    /// Keeps the code in a text, instead of `chosen` and `choose`.
    #[must_use]
    pub fn text(mut self, text: RwSignal<String>) -> Choice {
        self.chosen = text.into();
        self.choose = Callback::new(move |code| text.set(code));
        self
    }

    /// The choice.
    pub fn view(self) -> AnyView {
        let Choice { name, legend, options, chosen, choose } = self;
        let keys = options.into_iter().map(|(code, words)| {
            let own = code.clone();
            view! {
                <label class="radio">
                    <input
                        type="radio"
                        name=name.clone()
                        value=code.clone()
                        prop:checked=move || chosen.with(|chosen| *chosen == own)
                        on:change=move |_| choose.run(code.clone())
                    />
                    <span>{words}</span>
                </label>
            }
        });
        view! {
            <fieldset class="choice">
                <legend>{legend}</legend>
                <div class="choice-keys">{keys.collect_view()}</div>
            </fieldset>
        }
        .into_any()
    }
}
