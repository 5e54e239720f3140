//! Keys: large enough for a glove, one thing each.

use crate::app::edge::clock;
use crate::app::place::Place;
use leptos::prelude::*;

/// A key. `Key::new("Keep this yard", move || …).primary().view()`
pub struct Key {
    label: String,
    kind: &'static str,
    guarded: bool,
    off: Option<Signal<bool>>,
    press: Box<dyn Fn()>,
}

/// A wet screen taps by itself: what destroys ignores the first moment after it appeared (milliseconds).
const GUARD_MS: f64 = 300.0;

impl Key {
    /// A plain key.
    pub fn new(label: impl Into<String>, press: impl Fn() + 'static) -> Key {
        Key { label: label.into(), kind: "key", guarded: false, off: None, press: Box::new(press) }
    }

    /// The one key of a screen that goes on.
    #[must_use]
    pub fn primary(mut self) -> Key {
        self.kind = "key key-primary";
        self
    }

    /// A field key: as tall as a glove needs.
    #[must_use]
    pub fn big(mut self) -> Key {
        self.kind = "key key-big";
        self
    }

    /// A field key that goes on.
    #[must_use]
    pub fn big_primary(mut self) -> Key {
        self.kind = "key key-big key-primary";
        self
    }

    /// A key that is seldom wanted: text with a line under it.
    #[must_use]
    pub fn quiet(mut self) -> Key {
        self.kind = "key key-quiet";
        self
    }

    /// A key that takes something away; ignores ghost taps.
    #[must_use]
    pub fn alarm(mut self) -> Key {
        self.kind = "key key-alarm";
        self.guarded = true;
        self
    }

    /// Out of use while `off` is true. Rather say why than switch off.
    #[must_use]
    pub fn off(mut self, off: impl Fn() -> bool + Send + Sync + 'static) -> Key {
        self.off = Some(Signal::derive(off));
        self
    }

    /// The key.
    pub fn view(self) -> AnyView {
        let Key { label, kind, guarded, off, press } = self;
        let shown_at = clock::now_ms();
        view! {
            <button
                type="button"
                class=kind
                disabled=move || off.is_some_and(|off| off.get())
                on:click=move |_| {
                    if !guarded || clock::now_ms() - shown_at > GUARD_MS {
                        press();
                    }
                }
            >
                {label}
            </button>
        }
        .into_any()
    }
}

/// A key that leads to another place.
pub fn link(label: impl Into<String>, place: &Place) -> AnyView {
    view! { <a class="key" href=place.hash()>{label.into()}</a> }.into_any()
}
