//! What every screen can reach: the day, the place, the settings, what stands in the fields.

use super::bench::draft::{BenchDraft, BenchTyped};
use super::bench::keep::KeepPlan;
use super::edge::after_paint;
use super::edge::install::Installer;
use super::edge::pause::keep_rested;
use super::edge::worker::Bridge;
use super::edge::{clock, hours, locale, slot};
use super::kinds::draft::KindDraft;
use super::load::{ticks, typed};
use super::place::Place;
use super::prefs::Prefs;
use super::record::kept::Waiting;
use crate::almanac::day::Day;
use crate::almanac::json::{self, Json};
use crate::almanac::moment::Moment;
use crate::almanac::oil;
use crate::almanac::quantity::{Length, Volume};
use crate::app::graph::{Memo, RwSignal, StoredValue, expect_context, provide_context};
use std::ops::Deref;
use std::rc::Rc;

/// What keeps a checked plan.
pub type Keep = Rc<dyn Fn(KeepPlan)>;

/// The context of every view: an address, so that the many closures that carry it stay small. It is made once, at the
/// start of the page, and lives as long.
#[derive(Clone, Copy)]
pub struct Ui(&'static Parts);

/// What [`Ui`] leads to.
pub struct Parts {
    /// Today in [`Ui::zone`]. Changes at midnight and when the page is shown again.
    pub today: RwSignal<Day>,
    /// This minute, as far as twice a minute is often enough.
    pub now: RwSignal<Moment>,
    /// The first place has been drawn: what may come a moment later is worked out from now on.
    pub drawn: RwSignal<bool>,
    /// The time zone `today` is read in: the phone's own until a yard says otherwise.
    pub zone: RwSignal<String>,
    /// The keeper has said which day it is, and the phone says another.
    pub said_today: RwSignal<bool>,
    /// The day it was when the phone's clock was set to another, until the keeper has dealt with that.
    pub set_from: RwSignal<Option<Day>>,
    /// Where the keeper is; follows the address. Write it with [`Ui::go`] only.
    pub place: RwSignal<Place>,
    /// How the page is set. Kept by itself on every change.
    pub prefs: RwSignal<Prefs>,
    typed: StoredValue<BenchTyped>,
    /// What stands in the fields of the Bench, as one value: what the sums reckon with. Kept by itself on every
    /// change.
    pub draft: Memo<BenchDraft>,
    /// Which sums of the Bench are open, a bit for each in the order of `Sum::ALL`.
    pub bench_open: RwSignal<u32>,
    /// Day of the trip on the Load, as typed: it stays while the keeper looks something up elsewhere.
    pub trip_day: RwSignal<String>,
    /// What was ticked off for it (`load/ticks`). Kept by itself on every change.
    pub trip_ticks: RwSignal<String>,
    /// Walks left in the season and its last day, as typed on the Load.
    pub walks: RwSignal<String>,
    /// See [`Parts::walks`].
    pub season_end: RwSignal<String>,
    /// What is typed on the Load (`load/typed`). Kept by itself on every change.
    pub load: RwSignal<String>,
    /// The form of a kind that was left with something typed in it: its address and its fields.
    pub kind_draft: StoredValue<Option<(String, KindDraft)>>,
    /// What stands in a half-filled form of a record and is not kept yet.
    pub write_kept: StoredValue<Waiting>,
    /// Where the keeper was before the form of a record was opened.
    pub write_back: StoredValue<Option<Place>>,
    /// What "Keep this yard" calls with a checked plan. While none is set, the key is not shown.
    pub on_keep: RwSignal<Option<Keep>>,
    /// The keeper is on the way to a new yard: the Bench opens its form.
    pub new_yard: RwSignal<bool>,
    /// A sentence said once above the bottom bar, read out by screen readers; empty shows nothing.
    pub said: RwSignal<String>,
    /// The service worker.
    pub worker: Bridge,
    /// The home screen.
    pub install: Installer,
}

impl Deref for Ui {
    type Target = Parts;

    fn deref(&self) -> &Parts {
        self.0
    }
}

impl Ui {
    /// Makes the context, provides it, and keeps settings and typed text from now on.
    pub fn provide(first_place: Place) -> Ui {
        let prefs: Prefs = kept(slot::PREFS);
        let bench: BenchDraft = kept(slot::BENCH);
        let zone = clock::own_zone();
        let bench = BenchTyped::new(bench);
        let trip = slot::read(slot::TRIP).unwrap_or_default();
        let load = typed::standing(&slot::read(slot::LOAD).unwrap_or_default(), clock::today(&zone));
        let ui = Ui(Box::leak(Box::new(Parts {
            today: RwSignal::new(clock::today(&zone)),
            now: RwSignal::new(hours::now()),
            drawn: RwSignal::new(false),
            zone: RwSignal::new(zone),
            said_today: RwSignal::new(false),
            set_from: RwSignal::new(None),
            place: RwSignal::new(first_place),
            prefs: RwSignal::new(prefs),
            typed: StoredValue::new(bench),
            draft: Memo::new(move || bench.draft()),
            bench_open: RwSignal::new(1),
            trip_day: RwSignal::new(ticks::day(&trip).to_owned()),
            trip_ticks: RwSignal::new(trip),
            walks: RwSignal::new(String::new()),
            season_end: RwSignal::new(String::new()),
            load: RwSignal::new(load),
            kind_draft: StoredValue::new(None),
            write_kept: StoredValue::new(None),
            write_back: StoredValue::new(None),
            on_keep: RwSignal::new(None),
            new_yard: RwSignal::new(false),
            said: RwSignal::new(String::new()),
            worker: Bridge::start(),
            install: Installer::start(),
        })));
        provide_context(ui);
        after_paint(move || ui.drawn.set(true));
        clock::watch(move |before| {
            ui.said_today.renew(clock::is_said());
            if let Some(before) = before {
                ui.set_from.set(clock::civil_day(before, &ui.zone.get_untracked()));
            }
            ui.now.renew(hours::now());
            let today = clock::today(&ui.zone.get_untracked());
            if today != ui.today.get_untracked() {
                ui.today.set(today);
            }
        });
        keep_slot(slot::PREFS, move || json::to_text(&ui.prefs.get()));
        keep_slot(slot::BENCH, move || json::to_text(&ui.draft.get()));
        keep_slot(slot::TRIP, move || ui.trip_ticks.get());
        keep_slot(slot::LOAD, move || ui.load.get());
        ui
    }

    /// The context, from inside a view under the frame.
    ///
    /// # Panics
    /// Outside the frame, where nothing is ever shown.
    pub fn get() -> Ui {
        expect_context::<Ui>()
    }

    /// The fields of the Bench, each a signal of its own.
    pub fn bench(self) -> BenchTyped {
        self.typed.get_value()
    }

    /// Goes to a place, as a tap on a link would: the back key of the phone returns.
    #[allow(clippy::unused_self)] // reads as what it is at the call
    pub fn go(self, place: &Place) {
        if let Some(window) = super::edge::window() {
            let _ = window.location().set_hash(&place.hash());
        }
    }

    /// It is this day, whatever the phone says; none goes by the phone again.
    pub fn say_today(self, day: Option<Day>) {
        let zone = self.zone.get_untracked();
        clock::say_today(day, &zone);
        self.said_today.renew(clock::is_said());
        self.set_from.set(None);
        self.today.renew(clock::today(&zone));
    }

    /// A volume in the unit the keeper reads.
    pub fn volume(self, volume: Volume) -> String {
        locale::volume(volume, self.prefs.get().volume)
    }

    /// A volume to carry or buy, rounded up in that unit.
    pub fn volume_up(self, volume: Volume) -> String {
        locale::volume_up(volume, self.prefs.get().volume)
    }

    /// A volume that a sum multiplies by `times` to `sum`, shown so that the sum holds by hand.
    pub fn volume_in_sum(self, each: Volume, times: f64, sum: Volume, up: bool) -> String {
        locale::volume_in_sum(each, times, sum, self.prefs.get().volume, up)
    }

    /// A volume to carry, up to the next step of the unit the keeper reads.
    pub fn carried(self, volume: Volume) -> String {
        self.volume_up(oil::carried(volume, self.prefs.get().volume))
    }

    /// That step.
    pub fn carry_step(self) -> String {
        self.volume(oil::carry_step(self.prefs.get().volume))
    }

    /// A length in the unit the keeper reads.
    pub fn length(self, length: Length) -> String {
        locale::length(length, self.prefs.get().length)
    }
}

/// What is kept in a slot, or the default: a text this version cannot read costs settings, never records.
fn kept<T: Default + Json>(name: &str) -> T {
    slot::read(name).and_then(|text| json::from_text(&text)).unwrap_or_default()
}

/// Keeps a text in a slot whenever it rests.
fn keep_slot(name: &'static str, text: impl Fn() -> String + Copy + 'static) {
    keep_rested(slot::read(name).unwrap_or_default(), text, move |text| slot::write(name, text));
}
