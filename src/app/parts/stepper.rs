//! A whole number that can be typed or stepped with big keys.

use super::field::{Says, says_view, wrong};
use crate::app::wording::en;
use leptos::prelude::*;

/// `Stepper::new("hives", "Hives", typed.hives, 0, 500).view()`
pub struct Stepper {
    id: String,
    label: String,
    text: RwSignal<String>,
    least: u32,
    most: u32,
    says: Option<Signal<Says>>,
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
    pub fn says(mut self, says: impl Fn() -> Says + Send + Sync + 'static) -> Stepper {
        self.says = Some(Signal::derive(says));
        self
    }

    /// The stepper.
    pub fn view(self) -> AnyView {
        let Stepper { id, label, text, least, most, says } = self;
        let step = move |by: i32| {
            // From a text that is no number the first press starts at the bottom.
            let next = match text.with_untracked(|text| text.trim().parse::<u32>()) {
                Ok(now) => now.saturating_add_signed(by).clamp(least, most),
                Err(_) => least,
            };
            text.set(next.to_string());
        };
        let says_id = [&id, "-says"].concat();
        view! {
            <div class="field stepper">
                <label for=id.clone()>{label.clone()}</label>
                <div class="field-row">
                    <button type="button" class="key step" aria-label=en::less(&label) on:click=move |_| step(-1)>
                        "−"
                    </button>
                    <input
                        id=id
                        type="text"
                        inputmode="numeric"
                        autocomplete="off"
                        aria-describedby=says_id.clone()
                        aria-invalid=move || wrong(says).then_some("true")
                        prop:value=move || text.get()
                        on:input=move |event| text.set(event_target_value(&event))
                    />
                    <button type="button" class="key step" aria-label=en::more(&label) on:click=move |_| step(1)>
                        "+"
                    </button>
                </div>
                {says_view(says, says_id)}
            </div>
        }
        .into_any()
    }
}
