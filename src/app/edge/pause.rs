//! Keeping what is typed without a write at every key: browsers ration writes, and a phone pays for each.

use super::{document, listen, window};
use crate::app::graph::{StoredValue, after, effect, untrack};

/// A rest in typing after which the text is kept, in milliseconds.
const REST: u64 = 500;

/// Hands what `text` says to `keep` whenever it has changed and then rested, and at once when the page is hidden or
/// left. `kept` is what is kept already. `text` is followed like any effect.
pub fn keep_rested(
    kept: String,
    text: impl Fn() -> String + Copy + 'static,
    keep: impl Fn(&str) + Copy + 'static,
) {
    let kept = StoredValue::new(kept);
    let turn = StoredValue::new(0_u32);
    let keep_now = move || {
        let now = untrack(text);
        if kept.with_value(|kept| *kept != now) {
            keep(&now);
            kept.set_value(now);
        }
    };
    effect(move || {
        let now = text();
        if kept.with_value(|kept| *kept == now) {
            return;
        }
        let mine = turn.get_value().wrapping_add(1);
        turn.set_value(mine);
        let rested = move || {
            if turn.get_value() == mine {
                keep_now();
            }
        };
        after(REST, rested);
    });
    if let Some(window) = window() {
        listen(&window, "pagehide", move |_| keep_now());
    }
    if let Some(document) = document() {
        listen(&document, "visibilitychange", move |_| keep_now());
    }
}
