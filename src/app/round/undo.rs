//! The undo bar: what was done last, what there is to say about it, and the key that takes it back.
//!
//! Advice stands here and not above the list: on a small phone, and with large letters, nothing of the list is left in
//! sight while the next hive is logged. The bar grows away from the thumb, so the keys under it keep their place.

use super::form::big;
use super::state::Walk;
use super::{log, said, told};
use crate::app::edge::clock;
use crate::app::el::{El, el, live};
use crate::app::graph::StoredValue;
use crate::app::place::Place;
use crate::app::state::Ui;
use crate::app::wording::en_round as w;
use crate::book::id::EntryId;

/// An act that leads to another place by itself does so within this time (milliseconds).
const LEADS_MS: f64 = 1_000.0;

/// The bar. It stays until the next act, and is shown where that was done.
pub(super) fn view(ui: Ui, walk: Walk) -> El {
    let act = walk.records.act;
    let done: StoredValue<(Option<EntryId>, f64, Place)> = StoredValue::new((None, 0.0, Place::Round));
    let bar = move || {
        let act = act.get().filter(|act| !act.said.is_empty())?;
        let (place, cards) = (ui.place.get(), walk.cards.get());
        let here = done.try_update_value(|(last, since, there)| {
            let now = clock::now_ms();
            if *last != act.entries.last().cloned() {
                (*last, *since) = (act.entries.last().cloned(), now);
                there.clone_from(&place);
            } else if now - *since < LEADS_MS {
                there.clone_from(&place);
            }
            same(there, &place)
        });
        if here != Some(true) {
            return None;
        }
        let (said, key) = match &act.undone {
            Some(_) => (w::undone(&act.said), w::REDO),
            None => (act.said, w::UNDO),
        };
        let press = move || {
            let undone = || {
                walk.records.act.with_untracked(|act| act.as_ref().is_some_and(|act| act.undone.is_some()))
            };
            let before = undone();
            // Right above the bar; what was refused before is over.
            let stop = walk.records.undo_or_redo().err();
            ui.said.renew(stop.map_or_else(String::new, |stop| said::not_undone(&stop)));
            // What the phone did not keep has changed nothing.
            if undone() != before {
                log::follow_undo(ui, walk);
            }
        };
        let mut bar = el("div").class("undo");
        let twice = walk.records.twice;
        let own = act.own;
        let kept =
            el("span").test_id("kept").live_text(move || w::twice(twice.get().filter(|_| own)).to_owned());
        let mut words = el("span").text(&said).kid(kept);
        // Advice belongs to the save it came from.
        let logged = walk.logged.get_value();
        let logged =
            logged.filter(|logged| act.undone.is_none() && act.entries.last() == Some(&logged.entry));
        let logged = logged.filter(|_| !cards.is_empty());
        let mut between = ". ";
        for card in if logged.is_some() { cards } else { Vec::new() } {
            words = words.text(between).kid(el("strong").text(told::line(card)));
            between = " ";
        }
        bar = bar.kid(words);
        if let Some(logged) = logged {
            bar = bar.class("undo told").test_id("told").kid(told::filled(walk, logged.hive));
            bar = bar.kid(big(w::GOT_IT, "told-away", move || walk.cards.set(Vec::new())));
        }
        Some(bar.kid(big(key, "undo", press)))
    };
    el("div").attr("role", "status").test_id("undo-bar").kid(live(bar))
}

/// The Round shows the only yard as that yard's own place does.
fn same(one: &Place, other: &Place) -> bool {
    one == other || matches!((one, other), (Place::Round, Place::Yard(_)) | (Place::Yard(_), Place::Round))
}
