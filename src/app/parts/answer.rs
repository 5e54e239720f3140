//! An answer, the sum it came from, and the reason on tap.

use crate::app::wording::en;
use leptos::prelude::*;

/// `Answer::new("Oil to carry", move || "500 mL".into()).sum(move || vec![…]).why("…").view()`
pub struct Answer {
    label: String,
    big: Signal<String>,
    sum: Option<Signal<Vec<String>>>,
    why: Option<String>,
}

impl Answer {
    /// The answer in large type under its label. It is read out when it changes.
    pub fn new(label: impl Into<String>, big: impl Fn() -> String + Send + Sync + 'static) -> Answer {
        Answer { label: label.into(), big: Signal::derive(big), sum: None, why: None }
    }

    /// The lines of the sum.
    #[must_use]
    pub fn sum(mut self, sum: impl Fn() -> Vec<String> + Send + Sync + 'static) -> Answer {
        self.sum = Some(Signal::derive(sum));
        self
    }

    /// Why it is reckoned this way; opens on tap.
    #[must_use]
    pub fn why(mut self, why: impl Into<String>) -> Answer {
        self.why = Some(why.into());
        self
    }

    /// The answer.
    pub fn view(self) -> AnyView {
        let Answer { label, big, sum, why } = self;
        let lines = move || {
            let lines = sum.map(|sum| sum.get()).unwrap_or_default();
            (!lines.is_empty()).then(|| {
                let lines = lines.into_iter().map(|line| view! { <li>{line}</li> }).collect_view();
                view! { <ul class="answer-sum" aria-label=en::SUM>{lines}</ul> }
            })
        };
        view! {
            <div class="answer">
                <p class="answer-label">{label}</p>
                <p class="answer-big" role="status">{move || big.get()}</p>
                {lines}
                {why.map(super::notice::why)}
            </div>
        }
        .into_any()
    }
}
