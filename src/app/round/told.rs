//! Cards after a save: what to do now, and what the number hides.

use super::form::{big, keys, primary};
use super::log;
use super::state::{Card, Walk};
use crate::app::el::{El, el, live};
use crate::app::graph::Memo;
use crate::app::wording::en_round as w;
use crate::book::Book;
use crate::book::entry::Did;
use crate::book::id::ThingId;
use crate::book::round::RECHECK_DAYS;

/// The cards of the last save, above the list and away from the keys: these keep their place. Only on the pages of
/// the yard in which the hive stands; `yard` is the one that is shown.
pub(super) fn view(walk: Walk, yard: impl Fn() -> Option<ThingId> + 'static) -> El {
    let cards = Memo::new(move || walk.cards.get());
    let shown = move || {
        let (hive, cards) = cards.get();
        let of = |hive: &ThingId| {
            let named = |book: &Book| {
                book.standing().hives.get(hive).map(|now| (now.yard.clone(), w::hive(&now.tag)))
            };
            walk.records.book.with_untracked(named)
        };
        let (at, name) = hive.as_ref().and_then(of)?;
        (!cards.is_empty() && yard() == Some(at)).then(|| {
            let put_away = big(w::GOT_IT, "told-away", move || walk.cards.set((None, Vec::new())));
            let filled = hive.and_then(|hive| filled(walk, hive));
            let mut told = el("div").class("told").test_id("told");
            for card in &cards {
                told = told.kid(el("p").text(&name).text(": ").text(&line(card)));
            }
            told.kid(keys(bits![filled, put_away]))
        })
    };
    el("div").class("told-place").attr("role", "status").kid(live(shown))
}

/// The key that says the traps were replaced on the spot; only while one of them does not fish.
fn filled(walk: Walk, hive: ThingId) -> Option<El> {
    let idle = walk.records.book.with_untracked(|book| {
        let now = book.standing().hives.get(&hive);
        now.is_some_and(|now| now.traps().any(|trap| trap.trouble.is_some()))
    });
    idle.then(|| primary(w::FILLED_AGAIN, "filled-again", move || log::filled_again(walk, &hive)))
}

fn line(card: &Card) -> String {
    match card {
        Card::Trouble(Did::Missing, _) => w::MISSING.to_owned(),
        Card::Trouble(Did::GluedShut, _) => w::GLUED.to_owned(),
        Card::Trouble(_, day) => w::recheck(w::SPILLED, day.plus(RECHECK_DAYS)),
        Card::Rose => w::ROSE.to_owned(),
        Card::Flatters => w::FLATTERS.to_owned(),
    }
}
