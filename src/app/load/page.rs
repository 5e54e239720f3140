//! The Load: which day, which yards, what it takes.

use super::{buy, trip};
use crate::almanac::day::Day;
use crate::almanac::oil::USUAL_RESERVE;
use crate::almanac::quantity::{Share, TypedVolume};
use crate::almanac::typed::{self, DayTypedError, TypedError};
use crate::app::bench::read;
use crate::app::bench::view::says;
use crate::app::edge::locale;
use crate::app::frame::heading;
use crate::app::ledger::words::isolated;
use crate::app::parts::card::more;
use crate::app::parts::field::{Field, Says};
use crate::app::parts::key::{Key, link};
use crate::app::parts::notice::Notice;
use crate::app::place::{Place, Section};
use crate::app::prefs;
use crate::app::records::Records;
use crate::app::state::Ui;
use crate::app::wording::en_load as w;
use crate::app::wording::{en, en_typed};
use crate::book::entry::{KeeperChange, What};
use crate::book::id::ThingId;
use leptos::prelude::*;

/// What every part of the page reckons with.
#[derive(Clone, Copy)]
pub(super) struct Trip {
    pub(super) ui: Ui,
    pub(super) records: Records,
    /// Day of the trip as typed.
    day: RwSignal<String>,
    /// Yards that were ticked off.
    off: RwSignal<Vec<ThingId>>,
    reserve: RwSignal<String>,
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

    /// Bottle size; none while the field is empty or cannot be read.
    pub(super) fn bottle(self) -> Option<TypedVolume> {
        self.read_bottle().ok()
    }

    fn read_bottle(self) -> Result<TypedVolume, TypedError> {
        self.bottle.with(|text| self.bottle_unit.with(|unit| read::volume(text, unit)))
    }
}

/// The place.
pub fn page(ui: Ui) -> AnyView {
    let records = Records::get();
    let some = Memo::new(move |_| records.book.with(|book| book.standing().open_yards().next().is_some()));
    view! {
        {heading(en::section(Section::Load))}
        {move || if some.get() { full(ui, records) } else { empty() }}
    }
    .into_any()
}

fn empty() -> AnyView {
    view! {
        <div class="card">
            <p class="lead">{en::page::LOAD_EMPTY}</p>
            <p>{en::page::LOAD_HOW}</p>
            <p class="keys">{link(en::page::TO_BENCH, &Place::Bench(None))}</p>
        </div>
    }
    .into_any()
}

fn full(ui: Ui, records: Records) -> AnyView {
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
    let trip = Trip {
        ui,
        records,
        day: RwSignal::new(ui.today.get_untracked().to_string()),
        off: RwSignal::new(off),
        reserve: RwSignal::new([&reserve.percent().to_string(), " %"].concat()),
        bottle: RwSignal::new(keeper.bottle.map(|bottle| bottle.number().to_string()).unwrap_or_default()),
        bottle_unit: RwSignal::new(prefs::volume_code(unit).to_owned()),
    };
    let day_says = move || match trip.day() {
        Ok(day) => {
            let away = day.days_since(ui.today.get());
            Says::Echo(en::echo(&[&en::date(day), ", ", &en::relative(away)].concat()))
        }
        Err(error) => Says::Wrong(en_typed::day(error)),
    };
    view! {
        {Field::new("load-day", w::DAY, trip.day).day().says(day_says).view()}
        {yards(trip)}
        {more(w::SET, set(trip))}
        {trip::view(trip)}
        {buy::view(trip)}
    }
    .into_any()
}

fn yards(trip: Trip) -> AnyView {
    let ticks = move || {
        let yards: Vec<(ThingId, String)> = trip.records.book.with(|book| {
            book.standing().open_yards().map(|(id, now)| (id.clone(), isolated(&now.name))).collect()
        });
        let ticks = yards.into_iter().map(|(id, name)| {
            let own = id.clone();
            view! {
                <label class="tick">
                    <input
                        type="checkbox"
                        prop:checked=move || trip.off.with(|off| !off.contains(&own))
                        on:change=move |event| {
                            let on = event_target_checked(&event);
                            trip.off
                                .update(|off| {
                                    off.retain(|other| *other != id);
                                    if !on {
                                        off.push(id.clone());
                                    }
                                });
                        }
                    />
                    <span>{name}</span>
                </label>
            }
        });
        ticks.collect_view()
    };
    view! {
        <fieldset class="choice">
            <legend>{w::YARDS}</legend>
            {ticks}
        </fieldset>
    }
    .into_any()
}

/// Reserve and bottle: reckoned with at once, remembered on a key.
fn set(trip: Trip) -> AnyView {
    let Trip { ui, records, .. } = trip;
    let changed = Memo::new(move |_| {
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
        if records.put(written, w::SET_SAID).is_ok() {
            ui.said.set(w::SET_SAID.to_owned());
        }
    };
    view! {
        <div class="fields">
            {Field::new("load-reserve", w::RESERVE, trip.reserve).says(move || says::share(trip.reserve)).view()}
            {Field::new("load-bottle", w::BOTTLE, trip.bottle)
                .decimal()
                .volume(trip.bottle_unit)
                .says(move || {
                    trip.bottle
                        .with(|text| says::optional(says::volume(ui, trip.bottle, trip.bottle_unit), text))
                })
                .view()}
        </div>
        {move || {
            changed
                .with(Option::is_some)
                .then(|| view! { <p class="keys">{Key::new(w::SET_KEY, keep).mark("load-set").view()}</p> })
        }}
    }
    .into_any()
}

/// The cautions that go with oil.
pub(super) fn cautions() -> AnyView {
    view! { {Notice::caution(w::FOOD_GRADE).view()} {Notice::caution(w::WASTE).view()} }.into_any()
}

/// A share as it is shown in a sum.
pub(super) fn percent(share: Share) -> String {
    locale::percent(share.fraction(), 1)
}
