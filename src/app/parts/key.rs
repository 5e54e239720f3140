//! Keys: large enough for a glove, one thing each.

use crate::app::edge::clock;
use crate::app::el::{El, el};
use crate::app::place::Place;

/// A key. `Key::new("Keep this yard", move || …).primary().view()`
pub struct Key(Box<Made>);

/// A key in the making, which lies still while it is described.
struct Made {
    label: String,
    kind: &'static str,
    mark: Option<&'static str>,
    guarded: bool,
    off: Option<Box<dyn Fn() -> bool>>,
    press: Box<dyn Fn()>,
}

/// A wet screen taps by itself: what destroys ignores the first moment after it appeared (milliseconds).
const GUARD_MS: f64 = 300.0;

impl Key {
    /// A plain key.
    pub fn new(label: impl AsRef<str>, press: impl Fn() + 'static) -> Key {
        made(label.as_ref(), Box::new(press))
    }

    /// The one key of a screen that goes on.
    #[must_use]
    pub fn primary(mut self) -> Key {
        self.0.kind = "key key-primary";
        self
    }

    /// A field key: as tall as a glove needs.
    #[must_use]
    pub fn big(mut self) -> Key {
        self.0.kind = "key key-big";
        self
    }

    /// A field key that goes on.
    #[must_use]
    pub fn big_primary(mut self) -> Key {
        self.0.kind = "key key-big key-primary";
        self
    }

    /// A key that is seldom wanted: text with a line under it.
    #[must_use]
    pub fn quiet(mut self) -> Key {
        self.0.kind = "key key-quiet";
        self
    }

    /// A key that takes something away; ignores ghost taps.
    #[must_use]
    pub fn alarm(mut self) -> Key {
        self.0.kind = "key key-alarm";
        self.0.guarded = true;
        self
    }

    /// The name journeys find it by.
    #[must_use]
    pub fn mark(mut self, mark: &'static str) -> Key {
        self.0.mark = Some(mark);
        self
    }

    /// Out of use while `off` is true. Rather say why than switch off.
    #[must_use]
    pub fn off(mut self, off: impl Fn() -> bool + 'static) -> Key {
        self.0.off = Some(Box::new(off));
        self
    }

    /// The key.
    pub fn view(self) -> El {
        let Made { label, kind, mark, guarded, off, press } = *self.0;
        let shown_at = clock::now_ms();
        let mut key = el("button").attr("type", "button").class(kind).text(&label).press(move || {
            if !guarded || clock::now_ms() - shown_at > GUARD_MS {
                press();
            }
        });
        if let Some(mark) = mark {
            key = key.test_id(mark);
        }
        match off {
            Some(off) => key.live_attr("disabled", move || off().then(String::new)),
            None => key,
        }
    }
}

#[inline(never)]
fn made(label: &str, press: Box<dyn Fn()>) -> Key {
    let label = label.to_owned();
    Key(Box::new(Made { label, kind: "key", mark: None, guarded: false, off: None, press }))
}

/// A key that leads to another place.
pub fn link(label: impl Into<String>, place: &Place) -> El {
    el("a").class("key").attr("href", &place.hash()).text(&label.into())
}
