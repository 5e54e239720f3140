//! The Load: which day, which yards, what it takes.

use super::{buy, keep, learned, next, spent, store, trip, typed as kept};
use crate::almanac::day::Day;
use crate::almanac::oil::USUAL_RESERVE;
use crate::almanac::quantity::{Share, TypedVolume};
use crate::almanac::typed::{self, DayTypedError, TypedError};
use crate::app::bench::read::{self, MOST_PIECES};
use crate::app::bench::view::says::{self, Reads};
use crate::app::edge::locale;
use crate::app::el::{Bit, El, below, el, live, target};
use crate::app::frame::heading;
use crate::app::graph::{Memo, RwSignal, effect, untrack};
use crate::app::ledger::words::isolated;
use crate::app::parts::card::more;
use crate::app::parts::field::{Field, Says};
use crate::app::parts::key::Key;
use crate::app::parts::notice::Notice;
use crate::app::place::{Place, Section};
use crate::app::prefs;
use crate::app::records::Records;
use crate::app::round::bits;
use crate::app::round::form::{add_yard, big_link};
use crate::app::state::Ui;
use crate::app::wording::en_load as w;
use crate::app::wording::{en, en_typed};
use crate::book::entry::{KeeperChange, What};
use crate::book::id::ThingId;
use crate::book::oil_used::Learned;
use crate::book::put_in::PutIn;
use crate::book::store_room::{Held, StoreRoom};
use wasm_bindgen::JsCast;
use web_sys::HtmlInputElement;

/// What every part of the page reckons with.
#[derive(Clone, Copy)]
pub(super) struct Trip {
    pub(super) ui: Ui,
    pub(super) records: Records,
    /// Day of the trip as typed.
    day: RwSignal<String>,
    /// Yards that were ticked off.
    off: RwSignal<Vec<ThingId>>,
    pub(super) reserve: RwSignal<String>,
    /// Spare traps as typed: brought and bought.
    pub(super) spare: RwSignal<String>,
    /// What earlier trips tell of the reserve.
    pub(super) learned: Memo<Option<Learned>>,
    /// What went into hives since traps were written down as stock.
    put_in: Memo<Vec<PutIn>>,
    bottle: RwSignal<String>,
    bottle_unit: RwSignal<String>,
}

impl Trip {
    /// The day; tracks its field and midnight.
    pub(super) fn day(self) -> Result<Day, DayTypedError> {
        self.day.with(|text| typed::day_planned(text, self.ui.today.get()))
    }

    /// Yards on the way.
    pub(super) fn yards(self) -> Vec<ThingId> {
        let off = self.off.get();
        self.records.book.with(|book| {
            book.standing().open_yards().map(|(id, _)| id).filter(|id| !off.contains(id)).cloned().collect()
        })
    }

    /// Reserve; the usual one while the field cannot be read.
    pub(super) fn reserve(self) -> Share {
        self.reserve.with(|text| typed::share(text)).unwrap_or(USUAL_RESERVE)
    }

    /// Spare traps; none while the field cannot be read.
    pub(super) fn spares(self) -> Option<u32> {
        self.spare.with(|text| typed::count(text, 0, MOST_PIECES)).ok()
    }

    /// Oil in store on the day of the trip; none where none was ever written down.
    pub(super) fn oil_in_store(self) -> Option<Held> {
        self.room(self.day().ok()?, &self.yards()).oil()
    }

    /// The store on `day` that `yards` are served from.
    pub(super) fn room(self, day: Day, yards: &[ThingId]) -> StoreRoom {
        self.put_in
            .with(|put_in| self.records.book.with(|book| store::room(book.standing(), yards, day, put_in)))
    }

    /// Bottle size; none while the field is empty or cannot be read.
    pub(super) fn bottle(self) -> Option<TypedVolume> {
        self.read_bottle().ok()
    }

    fn read_bottle(self) -> Result<TypedVolume, TypedError> {
        self.bottle.with(|text| self.bottle_unit.with(|unit| read::holds(text, unit)))
    }
}

/// The place.
pub fn page(ui: Ui) -> El {
    let records = Records::get();
    let some = Memo::new(move || records.book.with(|book| book.standing().open_yards().next().is_some()));
    let body = live(move || {
        let some = some.get();
        untrack(|| if some { full(ui, records) } else { empty().into() })
    });
    el("div").class("ledger").kid(heading(en::section(Section::Load))).kid(body)
}

fn empty() -> El {
    el("div")
        .class("card")
        .kid(el("p").class("lead").text(en::page::LOAD_EMPTY))
        .kid(el("p").text(en::page::LOAD_HOW))
        .kid(el("p").text(en::page::LOAD_FIRST))
        .kid(
            el("p")
                .class("keys")
                .kid(add_yard().class("key key-big key-primary"))
                .kid(big_link(en::page::TO_BENCH, &Place::Bench(None))),
        )
}

fn full(ui: Ui, records: Records) -> Bit {
    let (keeper, off) = records.book.with_untracked(|book| {
        let standing = book.standing();
        // The demonstration is left at home as soon as there is a yard of one's own.
        let own = standing.open_yards().any(|(id, _)| !id.is_demo());
        let off: Vec<ThingId> =
            standing.open_yards().map(|(id, _)| id).filter(|id| own && id.is_demo()).cloned().collect();
        (standing.keeper.clone(), off)
    });
    let reserve = keeper.reserve.unwrap_or(USUAL_RESERVE);
    let unit = keeper.bottle.map_or(ui.prefs.get_untracked().volume, TypedVolume::unit);
    let today = ui.today.get_untracked();
    // A page that never closes lets go of what was typed for an earlier trip, too.
    ui.load.update(|all| *all = kept::standing(all, today));
    keep::keep(ui, "load-day", &today.to_string(), ui.trip_day);
    keep::keep(ui, "load-walks", "", ui.walks);
    keep::keep(ui, "load-end", "", ui.season_end);
    let over = |text: &str| text.is_empty() || Day::parse(text).is_ok_and(|day| day < today);
    if ui.trip_day.with_untracked(|text| over(text)) {
        ui.trip_day.set(today.to_string());
    }
    let unit = prefs::volume_code(unit);
    let bottle = keeper.bottle.map(|bottle| bottle.number().to_string()).unwrap_or_default();
    // A number typed over another bottle would stand beside a unit it was not typed in.
    let over_it = [" ", &bottle, " ", unit].concat();
    let trip = Trip {
        learned: learned::memo(records),
        put_in: learned::gone(records),
        ui,
        records,
        day: ui.trip_day,
        off: ticked_off(ui, off),
        reserve: keep::text(ui, "load-reserve", &[&reserve.percent().to_string(), " %"].concat()),
        spare: RwSignal::new(String::new()),
        bottle: keep::text(ui, &["load-bottle", &over_it].concat(), &bottle),
        bottle_unit: keep::text(ui, &["load-bottle-unit", &over_it].concat(), unit),
    };
    let load = trip::load(trip);
    let day_says = move || match trip.day() {
        Ok(day) => {
            let away = day.days_since(ui.today.get());
            Says::Echo(en::echo(&[&en::date(day), ", ", &en::relative(away)].concat()))
        }
        Err(error) => Says::Wrong(en_typed::day(error)),
    };
    Bit::Many(vec![
        Field::new("load-day", w::DAY, trip.day).day().says(day_says).view().into(),
        yards(trip).into(),
        more(w::SET, below(move || set(trip))).into(),
        trip::view(trip, load),
        below(move || bits![buy::view(trip, load), next::view(trip), spent::view(trip)]),
    ])
}

/// Yards that are ticked off: `usual`, or those of before on a trip of the same day. On another day none is left out
/// without a word.
fn ticked_off(ui: Ui, usual: Vec<ThingId>) -> RwSignal<Vec<ThingId>> {
    let name = move || ui.trip_day.with(|day| ["off ", day].concat());
    let before = untrack(|| {
        let name = name();
        ui.load.with(|all| {
            let ids = kept::of(all, &name)?.split(' ');
            Some(ids.filter_map(|id| ThingId::parse(id).ok()).collect::<Vec<ThingId>>())
        })
    });
    let off = RwSignal::new(before.unwrap_or_else(|| usual.clone()));
    effect(move || {
        off.with(|off| {
            let mut ids = String::new();
            for id in off {
                ids.push_str(&id.to_string());
                ids.push(' ');
            }
            keep::put(ui, &name(), (*off != usual).then_some(&ids));
        });
    });
    off
}

fn yards(trip: Trip) -> El {
    let ticks = live(move || {
        trip.records.book.with(|book| {
            let mut ticks = Vec::new();
            for (id, now) in book.standing().open_yards() {
                let mut name = isolated(&now.name);
                if id.is_demo() {
                    name = w::invented(&name);
                }
                ticks.push(Bit::One(yard_tick(trip, id.clone(), &name)));
            }
            Bit::Many(ticks)
        })
    });
    el("fieldset").class("choice").kid(el("legend").text(w::YARDS)).kid(ticks)
}

fn yard_tick(trip: Trip, id: ThingId, name: &str) -> El {
    let own = id.clone();
    let on = move || trip.off.with(|off| !off.contains(&own));
    let set = move |on: bool| {
        trip.off.update(|off| {
            off.retain(|other| *other != id);
            if !on {
                off.push(id.clone());
            }
        });
    };
    tick(name, on, set)
}

/// A box to tick; the whole line is its key.
pub fn tick(name: &str, on: impl Fn() -> bool + 'static, set: impl Fn(bool) + 'static) -> El {
    tick_box(name, Box::new(on), Box::new(set))
}

fn tick_box(name: &str, on: Box<dyn Fn() -> bool>, set: Box<dyn Fn(bool)>) -> El {
    let input = el("input").attr("type", "checkbox").attr("autocomplete", "off");
    let shown = input.element().clone().unchecked_into::<HtmlInputElement>();
    let input = input.live_prop(move || shown.set_checked(on())).on("change", move |event| {
        if let Some(input) = target::<HtmlInputElement>(&event) {
            set(input.checked());
        }
    });
    el("label").class("tick").kid(input).kid(el("span").text(name))
}

/// Reserve and bottle: reckoned with at once, remembered on a key.
fn set(trip: Trip) -> Bit {
    let (ui, records) = (trip.ui, trip.records);
    let changed = Memo::new(move || {
        let kept = records.book.with(|book| (book.standing().keeper.reserve, book.standing().keeper.bottle));
        let reserve = trip.reserve.with(|text| typed::share(text)).ok()?;
        let bottle = match trip.read_bottle() {
            Ok(bottle) => Some(bottle),
            Err(TypedError::Empty) => None,
            Err(_) => return None,
        };
        let new_reserve = (reserve != kept.0.unwrap_or(USUAL_RESERVE)).then_some(reserve);
        let new_bottle = bottle.filter(|bottle| Some(*bottle) != kept.1);
        (new_reserve.is_some() || new_bottle.is_some()).then_some((new_reserve, new_bottle))
    });
    let keep = move || {
        let Some((reserve, bottle)) = changed.get_untracked() else { return };
        let what = What::Keeper(KeeperChange { reserve, bottle, ..KeeperChange::default() });
        let written = records
            .book
            .with_untracked(|book| book.about_keeper(&records.pen(), ui.today.get_untracked(), what));
        // What stopped it is shown by the frame.
        let _ = records.put(written, w::SET_ACT);
    };
    let any = Memo::new(move || changed.with(Option::is_some));
    let at = (trip.bottle, trip.bottle_unit);
    let bottle = says::field(ui, "load-bottle", w::BOTTLE, at, Reads::Bottle, true);
    let at = (trip.reserve, trip.reserve);
    let reserve = says::field(ui, "load-reserve", w::RESERVE, at, Reads::Share, false);
    let key = live(move || {
        any.get().then(|| el("p").class("keys").kid(Key::new(w::SET_KEY, keep).mark("load-set").view()))
    });
    Bit::Many(vec![el("div").class("fields").kid(reserve.view()).kid(bottle.view()).into(), key])
}

/// The cautions that go with oil.
pub(super) fn cautions() -> Bit {
    Bit::Many(vec![Notice::caution(w::FOOD_GRADE).view().into(), Notice::caution(w::WASTE).view().into()])
}

/// A share as it is shown in a sum.
pub(super) fn percent(share: Share) -> String {
    locale::percent(share.fraction(), 1)
}
