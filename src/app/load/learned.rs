//! What trips taught of the reserve, and the way to write down the next one.

use super::page::{Trip, percent};
use crate::app::edge;
use crate::app::edge::locale;
use crate::app::el::{Bit, el, live};
use crate::app::graph::{Memo, untrack};
use crate::app::parts::key::{Key, link};
use crate::app::parts::notice;
use crate::app::place::Place;
use crate::app::records::Records;
use crate::app::wording::en_load as w;
use crate::book::oil_used::{self, Learned};
use crate::book::put_in::{PutIn, put_in};
use crate::book::record::Blank;

/// What the trips say; worked out once the page is drawn, since it is one pass over the whole log.
pub(super) fn memo(records: Records) -> Memo<Option<Learned>> {
    let drawn = edge::once_drawn();
    Memo::new(move || {
        let learn = || records.book.with(|book| oil_used::learned(&oil_used::trips(book)));
        drawn.get().then(learn).flatten()
    })
}

/// What went into hives; one pass over the whole log, where traps were written down as stock.
pub(super) fn gone(records: Records) -> Memo<Vec<PutIn>> {
    let drawn = edge::once_drawn();
    Memo::new(move || if drawn.get() { records.book.with(put_in) } else { Vec::new() })
}

/// Under the oil to carry.
pub(super) fn view(trip: Trip) -> Bit {
    let learned = trip.learned;
    let told = live(move || learned.get().map(|learned| untrack(|| said(trip, &learned))));
    // Whoever drives home tonight has something to write down; before the day nothing came home, but for what an earlier
    // trip left.
    let home = live(move || {
        let today = trip.ui.today.get();
        let there = trip.day().is_ok_and(|day| day <= today);
        let before = || trip.records.book.with(|book| oil_used::to_tell(book.standing(), today));
        (there || before()).then(|| {
            let way = link(w::CAME_HOME, &Place::Write(Blank::Trip, None)).test_id("load-home");
            el("div").kid(el("p").class("keys").kid(way)).kid(notice::why(w::CAME_HOME_WHY))
        })
    });
    Bit::Many(vec![told, home])
}

fn said(trip: Trip, learned: &Learned) -> Bit {
    let beside = |ratio: f64| w::more_or_less(&locale::percent((ratio - 1.0).abs(), 0), ratio < 1.0);
    let trips = u32::try_from(learned.trips).unwrap_or(u32::MAX);
    let (least, most) = learned.ends;
    let took = w::trips_took(trips, &beside(learned.mean), &beside(least), &beside(most));
    let took = [took, w::each_filled(&trip.ui.volume(learned.each))].concat();
    let (reserve, share) = (learned.reserve, percent(learned.reserve));
    let asked = locale::percent(learned.percent / 100.0, 0);
    let estimate =
        if learned.beyond { w::learned_beyond(&asked, &share) } else { w::learned_reserve(&share) };
    let key = live(move || {
        (trip.reserve() != reserve).then(|| {
            let take = move || trip.reserve.set([&reserve.percent().to_string(), " %"].concat());
            el("p")
                .class("keys")
                .kid(Key::new(w::reckon_with(&percent(reserve)), take).mark("load-learned").view())
        })
    });
    let told = el("p").test_id("load-trips").text(&[&took, " ", &estimate].concat());
    Bit::Many(vec![told.into(), notice::why(w::LEARNED_WHY).into(), key])
}
