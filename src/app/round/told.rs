//! Cards after a save: what to do now, and what the number hides.

use super::log;
use super::state::{Card, Walk};
use crate::app::wording::en_round as w;
use crate::book::entry::Did;
use crate::book::id::ThingId;
use leptos::prelude::*;

/// Days after a spill by which somebody should look again (judgement).
const RECHECK: i32 = 3;

/// The cards of the last save.
pub(super) fn view(walk: Walk) -> AnyView {
    let cards = Memo::new(move |_| walk.cards.get());
    let shown = move || {
        let (hive, cards) = cards.get();
        (!cards.is_empty()).then(|| {
            let lines = cards.iter().map(line).map(|line| view! { <p>{line}</p> }).collect_view();
            view! {
                <div class="told" data-testid="told">
                    {lines}
                    <p class="keys">
                        {hive.map(|hive| filled(walk, hive))}
                        <button
                            type="button"
                            class="key key-big"
                            on:click=move |_| walk.cards.set((None, Vec::new()))
                        >
                            {w::GOT_IT}
                        </button>
                    </p>
                </div>
            }
        })
    };
    view! { <div role="status">{shown}</div> }.into_any()
}

/// The key that says the traps were replaced on the spot; only while one of them does not fish.
fn filled(walk: Walk, hive: ThingId) -> AnyView {
    let idle = walk.records().book.with_untracked(|book| {
        let now = book.standing().hives.get(&hive);
        now.is_some_and(|now| now.traps().any(|trap| trap.trouble.is_some()))
    });
    if !idle {
        return ().into_any();
    }
    view! {
        <button
            type="button"
            class="key key-big key-primary"
            data-testid="filled-again"
            on:click=move |_| log::filled_again(walk, &hive)
        >
            {w::FILLED_AGAIN}
        </button>
    }
    .into_any()
}

fn line(card: &Card) -> String {
    match card {
        Card::Trouble(Did::Missing, _) => w::MISSING.to_owned(),
        Card::Trouble(Did::GluedShut, _) => w::GLUED.to_owned(),
        Card::Trouble(_, day) => w::recheck(w::SPILLED, day.plus(RECHECK)),
        Card::Rose => w::ROSE.to_owned(),
        Card::Flatters => w::FLATTERS.to_owned(),
    }
}
