//! The undo bar: what was done last, and the key that takes it back.

use super::form::big;
use super::log;
use super::state::Walk;
use crate::app::edge::clock;
use crate::app::el::{El, el, live};
use crate::app::graph::{StoredValue, effect, effect_since};
use crate::app::state::Ui;
use crate::app::wording::en_round as w;

/// The bar stays at least this long when the keeper goes elsewhere (milliseconds).
const STAYS_MS: f64 = 10_000.0;

/// The bar. It stays until the next act; going to another place puts it away once it has been there for long enough.
pub(super) fn view(ui: Ui, walk: Walk) -> El {
    let act = walk.records.act;
    let since = StoredValue::new(0.0);
    effect(move || {
        act.track();
        since.set_value(clock::now_ms());
    });
    effect_since(move |first: Option<()>| {
        ui.place.track();
        if first.is_some() {
            walk.cards.set((None, Vec::new()));
        }
        if act.with_untracked(Option::is_some) && clock::now_ms() - since.get_value() > STAYS_MS {
            act.set(None);
        }
    });
    let bar = move || {
        let act = act.get().filter(|act| !act.said.is_empty())?;
        let (said, key) = match &act.undone {
            Some(_) => (w::undone(&act.said), w::REDO),
            None => (act.said, w::UNDO),
        };
        let press = move || {
            walk.cards.set((None, Vec::new()));
            let undone = || {
                walk.records.act.with_untracked(|act| act.as_ref().is_some_and(|act| act.undone.is_some()))
            };
            let before = undone();
            walk.records.undo_or_redo();
            // What the phone did not keep has changed nothing.
            if undone() != before {
                log::follow_undo(ui, walk);
            }
        };
        Some(el("div").class("undo").kid(el("span").text(&said)).kid(big(key, "undo", press)))
    };
    el("div").attr("role", "status").test_id("undo-bar").kid(live(bar))
}
