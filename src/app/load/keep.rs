//! Fields whose text outlives the page.

use super::typed;
use crate::app::graph::{RwSignal, effect, effect_since};
use crate::app::state::Ui;

/// A field of this name in which `usual` stands until somebody types over it.
#[inline(never)]
pub(super) fn text(ui: Ui, name: &str, usual: &str) -> RwSignal<String> {
    let text = RwSignal::new(usual.to_owned());
    keep(ui, name, usual, text);
    text
}

/// Brings back what was typed over `usual`, and keeps what is typed from now on.
#[inline(never)]
pub(super) fn keep(ui: Ui, name: &str, usual: &str, text: RwSignal<String>) {
    bring_back(ui, name, text);
    let (name, usual) = (name.to_owned(), usual.to_owned());
    effect(move || text.with(|now| put(ui, &name, (*now != usual).then_some(now))));
}

/// Has the field go along with `known`, but for what was typed over it, which is brought back and kept.
#[inline(never)]
pub(super) fn follow(ui: Ui, name: String, text: RwSignal<String>, known: Box<dyn Fn() -> u32>) {
    bring_back(ui, &name, text);
    effect_since(move |before: Option<u32>| {
        let (known, now) = (known(), text.get());
        if before == Some(known) {
            // A field that is emptied on the way to another number is left alone.
            put(ui, &name, (!now.is_empty() && now != known.to_string()).then_some(&now));
        } else if !typed_over(ui, &name) && before.map_or(now.is_empty(), |before| now == before.to_string())
        {
            text.set(known.to_string());
        }
        known
    });
}

fn typed_over(ui: Ui, name: &str) -> bool {
    ui.load.with_untracked(|all| typed::of(all, name).is_some())
}

fn bring_back(ui: Ui, name: &str, text: RwSignal<String>) {
    let before = ui.load.with_untracked(|all| typed::of(all, name).map(str::to_owned));
    if let Some(before) = before {
        text.renew(before);
    }
}

/// Keeps what was typed under this name; none lets go of it.
pub(super) fn put(ui: Ui, name: &str, text: Option<&String>) {
    let text = text.map(String::as_str);
    let now = ui.load.with_untracked(|all| {
        let today = ui.today.get_untracked().to_string();
        (typed::of(all, name) != text).then(|| typed::with(all, &today, name, text))
    });
    if let Some(now) = now {
        ui.load.set(now);
    }
}
