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
    let words = walk.records.book.with_untracked(|book| {
        let now = book.standing().hives.get(&hive)?;
        now.trouble().map(|_| w::filled_again(&now.tag))
    })?;
    Some(primary(&words, "filled-again", move || log::filled_again(walk, &hive)))
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
