//! Cautions at the moment of risk, and plain remarks.

use crate::app::wording::en;
use leptos::prelude::*;

/// A line that wants to be seen. Its kind shows by shape and weight, not by colour alone.
pub struct Notice {
    class: &'static str,
    mark: &'static str,
    text: Signal<String>,
    why: Option<String>,
}

impl Notice {
    /// Something may go wrong: "Half full. Fuller spills on bees."
    pub fn caution(text: impl Into<String>) -> Notice {
        Notice { class: "notice notice-caution", mark: "△", text: said(text), why: None }
    }

    /// Something must be done today.
    pub fn alarm(text: impl Into<String>) -> Notice {
        Notice { class: "notice notice-alarm", mark: "▲", text: said(text), why: None }
    }

    /// Good to know.
    pub fn plain(text: impl Into<String>) -> Notice {
        Notice { class: "notice", mark: "·", text: said(text), why: None }
    }

    /// The text may change while it is shown.
    #[must_use]
    pub fn text(mut self, text: impl Fn() -> String + Send + Sync + 'static) -> Notice {
        self.text = Signal::derive(text);
        self
    }

    /// The reason, on tap.
    #[must_use]
    pub fn why(mut self, why: impl Into<String>) -> Notice {
        self.why = Some(why.into());
        self
    }

    /// The notice.
    pub fn view(self) -> AnyView {
        let Notice { class, mark, text, why: reason } = self;
        view! {
            <div class=class>
                <p>
                    <span class="notice-mark" aria-hidden="true">{mark}</span>
                    <span>{move || text.get()}</span>
                </p>
                {reason.map(why)}
            </div>
        }
        .into_any()
    }
}

fn said(text: impl Into<String>) -> Signal<String> {
    Signal::stored(text.into())
}

/// A reason that opens on tap.
pub fn why(reason: String) -> AnyView {
    view! {
        <details class="why">
            <summary>{en::WHY}</summary>
            <p>{reason}</p>
        </details>
    }
    .into_any()
}
