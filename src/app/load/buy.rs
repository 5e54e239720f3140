//! What to buy: traps in the cheapest packs, and oil for the rest of the season.

use super::page::{Trip, percent};
use super::sum::{KindNeed, every_trap, missing, spare_kind};
use crate::almanac::quantity::Share;
use crate::almanac::supply::{cheapest, oil_to_buy};
use crate::almanac::trap::Pack;
use crate::almanac::typed;
use crate::app::bench::view::packs;
use crate::app::bench::view::says::{self, Reads, money};
use crate::app::el::{Bit, El, el, live};
use crate::app::graph::{Memo, RwSignal, untrack};
use crate::app::kinds::kind_name;
use crate::app::ledger::words::isolated;
use crate::app::parts::answer::{Answer, Worked};
use crate::app::parts::key::link;
use crate::app::parts::stepper::Stepper;
use crate::app::place::Place;
use crate::app::wording::en_book::KINDS_KEY;
use crate::app::wording::en_load as w;
use crate::app::wording::en_sums::packs as wp;
use crate::book::id::ThingId;
use crate::book::standing::Standing;

/// Most walks in a season: one a day.
const MOST_WALKS: u32 = 366;

/// The section.
pub(super) fn view(trip: Trip) -> El {
    // Built anew only when another kind comes or goes, so that what is typed here stays.
    let kinds = Memo::new(move || {
        let of = trip.yards();
        trip.records.book.with(|book| {
            needs(book.standing(), &of).into_iter().map(|need| need.kind).collect::<Vec<ThingId>>()
        })
    });
    let list = live(move || {
        let kinds = kinds.get();
        untrack(|| {
            if kinds.is_empty() {
                return Bit::Many(vec![
                    el("p").text(w::KIND_NONE).into(),
                    el("p").class("keys").kid(link(KINDS_KEY, &Place::Kinds)).into(),
                ]);
            }
            Bit::Many(kinds.into_iter().map(|id| kind(trip, &id)).collect())
        })
    });
    el("section").class("card").kid(el("h2").text(w::BUY)).kid(list).kid(oil(trip))
}

/// The kinds to buy: the demonstration's only while nothing but its yards is on the way.
fn needs(standing: &Standing, yards: &[ThingId]) -> Vec<KindNeed> {
    let mut needs = missing(standing, yards);
    needs.retain(|need| yards.is_empty() || need.kind.is_demo() == yards.iter().all(ThingId::is_demo));
    needs
}

/// What is to be bought of one kind, and how it is sold.
#[derive(Clone, PartialEq)]
struct Want {
    need: u32,
    /// The spare traps are of this kind.
    spare: bool,
    packs: Vec<Pack>,
}

fn kind(trip: Trip, id: &ThingId) -> Bit {
    let name = trip.records.book.with_untracked(|book| isolated(&kind_name(book.standing(), id)));
    let id = id.clone();
    let want = Memo::new(move || {
        let yards = trip.yards();
        trip.records.book.with(|book| {
            let standing = book.standing();
            let needs = needs(standing, &yards);
            let need = needs.iter().find(|need| need.kind == id).map_or(0, |need| need.traps);
            let spare = spare_kind(standing, &yards, &needs).as_ref() == Some(&id);
            let packs = standing.kinds.get(&id).map(|now| now.kind.packs.clone()).unwrap_or_default();
            Want { need, spare, packs }
        })
    });
    let answer = move || {
        want.with(|want| {
            // What is typed above, under "Traps to bring": one number for both.
            let spare = if want.spare { trip.spares()? } else { 0 };
            Some(worked(want, spare))
        })
    };
    Bit::Many(vec![el("h3").text(&name).into(), Answer::of(w::CHEAPEST, answer).view().into()])
}

fn worked(want: &Want, spare: u32) -> Worked {
    let all = want.need + spare;
    let basket = cheapest(all, &want.packs, None);
    let big = match &basket {
        _ if all == 0 => w::ENOUGH.to_owned(),
        Ok(basket) => wp::total(&money(basket.total), basket.pieces),
        Err(_) => w::traps(all),
    };
    let mut lines = vec![w::need(want.need, spare)];
    if want.packs.is_empty() {
        lines.push(w::NO_PACKS.to_owned());
    } else {
        lines.extend(packs::lines(&want.packs, &basket));
    }
    (big, lines)
}

fn oil(trip: Trip) -> Bit {
    let walks = RwSignal::new(String::new());
    let spilled = RwSignal::new("10 %".to_owned());
    let ui = trip.ui;
    let answer = move || {
        let count = walks.with(|text| typed::count(text, 0, MOST_WALKS)).ok()?;
        let share: Share = spilled.with(|text| typed::share(text)).ok()?;
        let yards = trip.yards();
        let all = trip.records.book.with(|book| every_trap(book.standing(), &yards));
        let season = oil_to_buy(count, all.oil, share, None, 0);
        let (each, sum) = (ui.volume(season.each), ui.volume_up(season.high));
        let mut lines = vec![w::season(season.services, &each, &percent(season.spill_share), &sum)];
        if all.unknown > 0 {
            lines.push(w::unknown(all.unknown));
        }
        Some((sum, lines))
    };
    let walks_says = move || walks.with(|text| says::optional(says::count(walks, 0, MOST_WALKS), text));
    Bit::Many(vec![
        el("h3").text(w::OIL_TO_BUY).into(),
        Stepper::new("load-walks", w::SERVICES, walks, 0, MOST_WALKS).says(walks_says).view().into(),
        says::field(ui, "load-spilled", w::SPILLED, (spilled, spilled), Reads::Share, false).view().into(),
        Answer::of(w::SEASON_OIL, answer).why(w::SEASON_WHY).view().into(),
    ])
}
