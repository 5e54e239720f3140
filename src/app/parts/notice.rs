//! Cautions at the moment of risk, and plain remarks.

use crate::app::el::{El, el};
use crate::app::wording::en;

/// A line that wants to be seen. Its kind shows by shape and weight, not by colour alone.
pub struct Notice(Box<Made>);

/// A notice in the making, which lies still while it is described.
struct Made {
    class: &'static str,
    mark: &'static str,
    text: Box<dyn Fn() -> String>,
    why: Option<&'static str>,
}

impl Notice {
    /// Something may go wrong: "Half full. Fuller spills on bees."
    pub fn caution(text: impl AsRef<str>) -> Notice {
        made("notice notice-caution", "△", text.as_ref())
    }

    /// Something must be done today.
    pub fn alarm(text: impl AsRef<str>) -> Notice {
        made("notice notice-alarm", "▲", text.as_ref())
    }

    /// Good to know.
    pub fn plain(text: impl AsRef<str>) -> Notice {
        made("notice", "·", text.as_ref())
    }

    /// The text may change while it is shown.
    #[must_use]
    pub fn text(mut self, text: impl Fn() -> String + 'static) -> Notice {
        self.0.text = Box::new(text);
        self
    }

    /// The reason, on tap.
    #[must_use]
    pub fn why(mut self, why: &'static str) -> Notice {
        self.0.why = Some(why);
        self
    }

    /// The notice.
    pub fn view(self) -> El {
        let Made { class, mark, text, why: reason } = *self.0;
        let line = el("p")
            .kid(el("span").class("notice-mark").attr("aria-hidden", "true").text(mark))
            .kid(el("span").live_text(text));
        el("div").class(class).kid(line).kid(reason.map(why))
    }
}

#[inline(never)]
fn made(class: &'static str, mark: &'static str, text: &str) -> Notice {
    let text = text.to_owned();
    Notice(Box::new(Made { class, mark, text: Box::new(move || text.clone()), why: None }))
}

/// A reason that opens on tap.
pub fn why(reason: &str) -> El {
    el("details").class("why").kid(el("summary").text(en::WHY)).kid(el("p").text(reason))
}
