//! Keeping what is typed without a write at every key: browsers ration writes, and a phone pays for each.

use super::{document, listen, window};
use crate::app::graph::{StoredValue, after, effect, untrack};

/// A rest in typing after which the text is kept or something slow is worked out, in milliseconds.
const REST: u64 = 500;

/// Calls `then` whenever what `follow` reads has rested, for as long as the part of the page it was made in.
pub fn when_rested(follow: impl Fn() + 'static, then: impl Fn() + Copy + 'static) {
    let turn = StoredValue::new(0_u32);
    effect(move || {
        follow();
        let mine = turn.try_update_value(|turn| {
            *turn = turn.wrapping_add(1);
            *turn
        });
        after(REST, move || {
            // The part may be gone by now: then nothing is asked of it.
            if mine.is_some() && turn.try_update_value(|turn| *turn) == mine {
                untrack(then);
            }
        });
    });
}

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
