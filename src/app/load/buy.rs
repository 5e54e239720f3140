//! What to buy: traps in the cheapest packs, for the trip and for the rest of the season, and oil for the season.

use super::keep;
use super::page::{Trip, percent};
use super::store::{self, InStore, needs};
use super::sum::{Load, MOST_WALKS, every_trap, shortest, spares_of, traps_of, walks};
use super::trip::oil_since;
use crate::almanac::day::Day;
use crate::almanac::oil::bottles;
use crate::almanac::quantity::{Share, TypedVolume, Volume};
use crate::almanac::supply::{cheapest, oil_to_buy};
use crate::almanac::trap::Pack;
use crate::almanac::typed::{self, DayTypedError};
use crate::app::bench::read::MOST_PIECES;
use crate::app::bench::view::packs;
use crate::app::bench::view::says::{self, Reads, money};
use crate::app::el::{Bit, El, el, live};
use crate::app::graph::{Memo, RwSignal, untrack};
use crate::app::kinds::kind_name;
use crate::app::ledger::words::isolated;
use crate::app::parts::answer::{Answer, Worked};
use crate::app::parts::field::{Field, Says};
use crate::app::parts::key::link;
use crate::app::parts::stepper::Stepper;
use crate::app::place::Place;
use crate::app::wording::en_book::KINDS_KEY;
use crate::app::wording::en_load as w;
use crate::app::wording::en_store as ws;
use crate::app::wording::en_sums::packs as wp;
use crate::app::wording::{en, en_typed};
use crate::book::id::ThingId;

/// The section.
pub(super) fn view(trip: Trip, load: Memo<Option<Load>>) -> El {
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
            let mut shown = Vec::new();
            for (nth, id) in kinds.into_iter().enumerate() {
                shown.push(kind(trip, load, &id, nth + 1));
            }
            Bit::Many(shown)
        })
    });
    el("section").class("card").kid(el("h2").text(w::BUY)).kid(season(trip)).kid(list).kid(oil(trip))
}

/// The last day of the season, and the walks left.
fn season(trip: Trip) -> Bit {
    let (left, end) = (trip.ui.walks, trip.ui.season_end);
    let end_says = move || match estimate(trip) {
        Some(Ok((first, every, count))) => Says::Echo(w::walks_sum(&en::date(first), every, count)),
        Some(Err(error)) => Says::Wrong(en_typed::day(error)),
        None => Says::Nothing,
    };
    let walks_says = move || left.with(|text| says::optional(says::count(left, 0, MOST_WALKS), text));
    Bit::Many(vec![
        Field::new("load-end", w::SEASON_END, end).day().says(end_says).view().into(),
        Stepper::new("load-walks", w::SERVICES, left, 0, MOST_WALKS).says(walks_says).view().into(),
    ])
}

/// The first of the walks, the days between two, and how many there are up to the day that is typed; none while no day
/// is typed or nothing hangs in the yards.
fn estimate(trip: Trip) -> Option<Result<(Day, u16, u32), DayTypedError>> {
    let (first, yards) = (trip.day().ok()?, trip.yards());
    let every = trip.records.book.with(|book| shortest(book.standing(), &yards))?;
    trip.ui.season_end.with(|text| {
        let last = typed::day_planned(text, first);
        (!text.is_empty()).then(|| last.map(|last| (first, every, walks(first, last, every))))
    })
}

/// Walks left: as typed, else as worked out.
fn walks_left(trip: Trip) -> Option<u32> {
    if trip.ui.walks.with(|text| text.trim().is_empty()) {
        return estimate(trip)?.ok().map(|(.., count)| count);
    }
    trip.ui.walks.with(|text| typed::count(text, 0, MOST_WALKS)).ok()
}

/// What is to be bought of one kind, and how it is sold.
#[derive(Clone, PartialEq)]
struct Want {
    need: u32,
    /// New ones in the place of those of hives with slime.
    anew: u32,
    /// To spare; none while their number cannot be read.
    spare: Option<u32>,
    packs: Vec<Pack>,
    /// In store, as far as the book knows.
    stock: InStore,
    /// What is thrown away is bought anew: so many traps at every walk.
    every: Option<u32>,
}

fn kind(trip: Trip, load: Memo<Option<Load>>, id: &ThingId, nth: usize) -> Bit {
    let name = trip.records.book.with_untracked(|book| isolated(&kind_name(book.standing(), id)));
    let way = (!id.is_demo()).then(|| Place::Kind(id.to_string()));
    let of = id.clone();
    let want = Memo::new(move || {
        let yards = trip.yards();
        let anew = load.with(|load| load.as_ref().map_or(0, |load| load.anew_of(&of)));
        trip.records.book.with(|book| {
            let standing = book.standing();
            let needs = needs(standing, &yards);
            let at = needs.iter().position(|need| need.kind == of);
            let need = at.map_or(0, |at| needs[at].traps);
            // What is typed above, under "Traps to bring": one number for both.
            let spare = trip.spares().map(|spare| {
                let spares = spares_of(standing, &yards, &needs, spare);
                at.map_or(0, |at| spares[at])
            });
            let now = standing.kinds.get(&of);
            let packs = now.map(|now| now.kind.packs.clone()).unwrap_or_default();
            let reusable = now.is_some_and(|now| now.kind.reusable);
            let on = trip.day().unwrap_or_else(|_| trip.ui.today.get());
            let stock = store::in_store(standing, &trip.room(on, &yards), &of);
            let every = (!reusable).then(|| traps_of(standing, &yards, &of));
            Want { need, anew, spare, packs, stock, every }
        })
    });
    let store = in_store(trip, id, want);
    let answer = move |walks: Option<u32>| {
        let spare = want.with(|want| want.spare)?;
        let store = store.with(|text| typed::count(text, 0, MOST_PIECES)).ok()?;
        want.with(|want| worked(want, spare, store, walks))
    };
    // Packs are written down on the page of the kind; those of the demonstration cannot be changed.
    let way = way.map(|place| el("p").class("keys").kid(link(w::PACKS, &place)));
    let again = Memo::new(move || want.with(|want| want.every.is_none()));
    let typed = Memo::new(move || walks_left(trip).is_some());
    let season = live(move || {
        if again.get() {
            return Some(el("p").class("small").text(w::USED_AGAIN));
        }
        let season = || Answer::of(w::SEASON_TRAPS, move || answer(Some(walks_left(trip)?))).view();
        typed.get().then(|| untrack(season))
    });
    let mut next = Answer::of(w::NEXT_TRIP, move || answer(None)).mark("load-buy");
    // The same reason for every kind is given once.
    if nth == 1 {
        next = next.why(ws::STORE_WHY);
    }
    Bit::Many(vec![
        el("h3").text(&name).into(),
        says::stepper(&["load-store-", &nth.to_string()].concat(), w::STORE, store, 0, MOST_PIECES).into(),
        next.view().into(),
        season,
        way.into(),
    ])
}

/// The name under which the number in store of a kind is kept.
pub(super) fn store_name(kind: &ThingId) -> String {
    ["load-store ", &kind.to_string()].concat()
}

/// The number in store: what the book knows, until the keeper types another one.
fn in_store(trip: Trip, id: &ThingId, want: Memo<Want>) -> RwSignal<String> {
    let text = RwSignal::new(String::new());
    let known = move || want.with(|want| want.stock.traps());
    keep::follow(trip.ui, store_name(id), text, Box::new(known));
    text
}

/// The traps to buy for the trip, or for all `walks` of the season.
fn worked(want: &Want, spare: u32, store: u32, walks: Option<u32>) -> Option<Worked> {
    let (need, line) = match (walks, want.every) {
        (None, _) => (want.need.saturating_add(want.anew), w::need(want.need, want.anew, spare)),
        (Some(walks), Some(every)) => {
            let need = walks.saturating_mul(every);
            (need, w::season_need(walks, every, need, spare))
        }
        (Some(_), None) => return None,
    };
    let mut lines = vec![line];
    let all = need.saturating_add(spare);
    let buy = all.saturating_sub(store);
    if store > 0 && all > 0 {
        lines.push(w::in_store(store, buy));
    }
    if store == want.stock.traps() {
        lines.extend(ws::traps_since(&want.stock));
    }
    let basket = cheapest(buy, &want.packs, None);
    let big = match &basket {
        _ if buy == 0 => w::ENOUGH.to_owned(),
        Ok(basket) => [w::CHEAPEST, &wp::total(&money(basket.total), basket.pieces)].concat(),
        Err(_) => [&w::traps(buy), w::NO_PRICE].concat(),
    };
    if want.packs.is_empty() {
        lines.push(w::NO_PACKS.to_owned());
    } else if buy > 0 {
        lines.extend(packs::lines(&want.packs, &basket));
    }
    Some((big, lines))
}

/// Most months oil is good for: longer than any label says (judgement, no source).
const MOST_MONTHS: u32 = 120;
/// Days of a month, rather too few: oil is bought for one walk less than for one too many.
const MONTH: u32 = 30;

/// The walks oil is bought for: no more than there are until it is no longer good, where somebody typed until when.
fn good_for(trip: Trip, months: RwSignal<String>, walks_left: u32, lines: &mut Vec<String>) -> u32 {
    let within = || {
        let months = months.with(|text| typed::count(text, 1, MOST_MONTHS)).ok()?;
        let (first, yards) = (trip.day().ok()?, trip.yards());
        let every = trip.records.book.with(|book| shortest(book.standing(), &yards))?;
        let last = first.plus(i32::try_from(months * MONTH).ok()?);
        Some((months, walks(first, last, every)))
    };
    match within() {
        Some((months, within)) if within < walks_left => {
            lines.push(w::good_for(months, within, walks_left));
            within
        }
        _ => walks_left,
    }
}

fn oil(trip: Trip) -> Bit {
    let ui = trip.ui;
    let spilled = keep::text(ui, "load-spilled", "10 %");
    let months = keep::text(ui, "load-months", "");
    let answer = move || {
        let walks = walks_left(trip)?;
        let mut lines = Vec::new();
        let count = good_for(trip, months, walks, &mut lines);
        let share: Share = spilled.with(|text| typed::share(text)).ok()?;
        let yards = trip.yards();
        let all = trip.records.book.with(|book| every_trap(book.standing(), &yards));
        // What a walk takes varies as its share of the sum did on the trips so far.
        let spread = trip.learned.get().map(|learned| all.oil.times(learned.spread));
        let season = oil_to_buy(count, all.oil, share, spread, count);
        let times = f64::from(season.services) * (1.0 + season.spill_share.fraction());
        let each = ui.volume_in_sum(season.each, times, season.mean, true);
        let sum = ui.volume_up(season.mean);
        lines.insert(0, w::season(season.services, &each, &percent(season.spill_share), &sum));
        if let Some(spread) = spread {
            let give = season.high.millilitres() - season.mean.millilitres();
            let low = Volume::from_millilitres(season.mean.millilitres() - give).unwrap_or_default();
            let (low, high) = (ui.volume(low), ui.volume_up(season.high));
            lines.push(w::season_span(&low, &high, &ui.volume(spread), count));
        }
        let mut buy = season.high;
        if let Some(held) = trip.oil_in_store() {
            buy = Volume::from_millilitres(buy.millilitres() - held.oil().millilitres()).unwrap_or_default();
            lines.push(w::season_store(&ui.volume(held.oil()), &ui.volume_up(buy)));
            lines.extend(oil_since(ui, &held));
        }
        let sum = ui.volume_up(buy);
        let bottle = trip.bottle().map(TypedVolume::volume);
        if let Some((bottle, count)) = bottle.and_then(|bottle| Some((bottle, bottles(buy, bottle)?))) {
            lines.push(w::bottles(count, &ui.volume(bottle)));
        }
        if all.unknown > 0 {
            lines.push(w::unknown(all.unknown));
        }
        Some((sum, lines))
    };
    Bit::Many(vec![
        el("h3").text(w::OIL_TO_BUY).into(),
        says::field(ui, "load-spilled", w::SPILLED, (spilled, spilled), Reads::Share, false).view().into(),
        says::field(ui, "load-months", w::GOOD_FOR, (months, months), Reads::Count(1, MOST_MONTHS), true)
            .hint(w::GOOD_FOR_HINT)
            .view()
            .into(),
        Answer::of(w::SEASON_OIL, answer).why(w::SEASON_WHY).view().into(),
    ])
}
