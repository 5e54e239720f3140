//! What a save has to say beside itself: one line of advice, and the key that finishes the work. The row of the hive
//! says by when to look again and what it stays due for.

use super::form::primary;
use super::log;
use super::state::{Card, Walk};
use crate::app::el::El;
use crate::app::wording::en_round as w;
use crate::book::entry::Did;
use crate::book::id::ThingId;

/// The key that says the traps were replaced on the spot; only while one of them does not fish.
pub(super) fn filled(walk: Walk, hive: ThingId) -> Option<El> {
    let idle = walk.records.book.with_untracked(|book| {
        let now = book.standing().hives.get(&hive);
        now.is_some_and(|now| now.traps().any(|trap| trap.trouble.is_some()))
    });
    idle.then(|| primary(w::FILLED_AGAIN, "filled-again", move || log::filled_again(walk, &hive)))
}

/// The advice.
pub(super) fn line(card: Card) -> &'static str {
    match card {
        Card::Trouble(Did::Missing) => w::MISSING,
        Card::Trouble(Did::GluedShut) => w::GLUED,
        Card::Trouble(_) => w::SPILLED,
        Card::Rose => w::ROSE,
        Card::Flatters => w::FLATTERS,
    }
}
