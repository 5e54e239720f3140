//! The phone's clock, read as civil days.

use super::{call, document, field, intl, listen, options, window};
use crate::almanac::day::{Day, Stamp};
use crate::book::record::ClockTime;
use js_sys::{Array, Date};
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use wasm_bindgen::prelude::*;

/// The civil day at `utc_ms` (milliseconds after 1970-01-01T00:00Z) in the time zone `zone`, such as
/// `America/New_York`. None when the browser does not know the zone, or outside 2000–2199.
pub fn civil_day(utc_ms: f64, zone: &str) -> Option<Day> {
    shown(utc_ms, zone).map(|time| time.day)
}

/// What the clock in `zone` shows at `utc_ms`; none as of [`civil_day`].
pub(super) fn shown(utc_ms: f64, zone: &str) -> Option<ClockTime> {
    let format = format_in(zone)?;
    let parts: Array = call(&format, "formatToParts", &Date::new(&utc_ms.into()).into())?.dyn_into().ok()?;
    // In the order in which American English writes them: month, day, year, hour, minute.
    let mut numbers = [0u32; 5];
    let mut found = numbers.iter_mut();
    for part in parts.iter() {
        if field(&part, "type") != "literal" {
            *found.next()? = field(&part, "value").as_string()?.parse().ok()?;
        }
    }
    let [month, day, year, hour, minute] = numbers;
    let day = Day::from_ymd(i32::try_from(year).ok()?, month, day).ok()?;
    Some(ClockTime { day, minute: u16::try_from(hour % 24 * 60 + minute).ok()? })
}

thread_local! {
    /// Making a format costs more than using it: the last one, with its zone.
    static FORMAT: RefCell<Option<(String, JsValue)>> = const { RefCell::new(None) };
    /// Milliseconds, of whole days, by which the keeper has said that the phone's clock is behind.
    static AHEAD: Cell<f64> = const { Cell::new(0.0) };
    /// The phone's zone as it was when somebody last looked at the clock.
    static OWN: RefCell<Option<String>> = const { RefCell::new(None) };
}

fn format_in(zone: &str) -> Option<JsValue> {
    let known = FORMAT.with_borrow(|known| known.clone().filter(|(of, _)| of == zone));
    if let Some((_, format)) = known {
        return Some(format);
    }
    let format = format(zone.into())?;
    FORMAT.set(Some((zone.to_owned(), format.clone())));
    Some(format)
}

/// A format in `zone`, or in the phone's own for `undefined`. Latin digits and the Gregorian calendar, whatever the
/// phone is set to; one language for both, because a browser takes long over the first format of a language.
fn format(zone: JsValue) -> Option<JsValue> {
    let mut wanted = vec![("timeZone", zone), ("hourCycle", "h23".into())];
    for part in ["year", "month", "day", "hour", "minute"] {
        wanted.push((part, "numeric".into()));
    }
    intl("DateTimeFormat", &Array::of2(&"en-US-u-ca-gregory-nu-latn".into(), &options(&wanted)))
}

/// The name of the phone's own time zone; `UTC` when the browser keeps it to itself. A phone that was carried into
/// another zone is asked again as soon as [`watch`] looks.
pub fn own_zone() -> String {
    if let Some(zone) = OWN.with_borrow(Option::clone) {
        return zone;
    }
    let zone = resolved_zone();
    OWN.set(Some(zone.clone()));
    zone
}

fn resolved_zone() -> String {
    let resolved = format(JsValue::UNDEFINED)
        .and_then(|format| call(&format, "resolvedOptions", &JsValue::UNDEFINED))
        .map(|resolved| field(&resolved, "timeZone"));
    resolved.and_then(|zone| zone.as_string()).unwrap_or_else(|| "UTC".to_owned())
}

/// Milliseconds since 1970-01-01T00:00Z by the phone's clock: for the time between two moments.
pub fn now_ms() -> f64 {
    Date::now()
}

/// Now, on the day that the keeper has said it is, or else on that of the phone.
pub(super) fn moment() -> f64 {
    Date::now() + AHEAD.get()
}

/// From now on it is `day` in `zone`, whatever day the phone says; its time of day counts on. None goes by the phone
/// again. Nothing of this outlives the page: at the next start the phone may be right.
pub fn say_today(day: Option<Day>, zone: &str) {
    AHEAD.set(0.0);
    let mut days = 0;
    // Once more where the clocks of the phone and of `zone` change between the two days and midnight is near.
    for _ in 0..2 {
        days += day.map_or(0, |day| day.days_since(today(zone)));
        let there = Date::new_0();
        let now = there.get_time();
        #[allow(clippy::cast_possible_wrap)] // a day of the month and a month
        let (month, on) = (there.get_month() as i32, there.get_date() as i32 + days);
        there.set_full_year_with_month_date(there.get_full_year(), month, on);
        AHEAD.set(there.get_time() - now);
    }
}

/// Whether it is another day than the phone says.
pub fn is_said() -> bool {
    AHEAD.get() != 0.0
}

/// Today in `zone`, or on the phone's own calendar when the browser does not know the zone.
pub fn today(zone: &str) -> Day {
    civil_day(moment(), zone).unwrap_or_else(|| stamp().day())
}

/// Now, in the phone's own time zone.
pub fn stamp() -> Stamp {
    let now = Date::new(&moment().into());
    let day = i32::try_from(now.get_full_year())
        .ok()
        .and_then(|year| Day::from_ymd(year, now.get_month() + 1, now.get_date()).ok())
        // A clock before 2000 or after 2199 is not set at all.
        .unwrap_or(Day::FIRST);
    let second = now.get_hours() * 3600 + now.get_minutes() * 60 + now.get_seconds();
    #[allow(clippy::cast_possible_truncation)] // whole minutes, less than a day
    let east = -(now.get_timezone_offset() as i32);
    Stamp::new(day, second, east).unwrap_or(Stamp::midnight(day))
}

/// In milliseconds.
const DAY_MS: f64 = 86_400_000.0;
/// A day, less what lies between two looks.
const NEARLY_A_DAY_MS: f64 = DAY_MS - 60_000.0;

/// Whether the clock was set by a day or more between two looks, at the moments `before` and `now`, while `passed`
/// milliseconds went by on the counter that nobody sets. That counter sleeps with some phones: forward it is known only
/// while the page was in sight all the time, for one that is `shown` again after days may have slept.
pub fn was_set(before: f64, now: f64, passed: f64, shown: bool) -> bool {
    let set = now - before - passed;
    set < -NEARLY_A_DAY_MS || set > NEARLY_A_DAY_MS && !shown
}

/// Milliseconds since the page was opened, whatever the clock is set to.
fn counted() -> f64 {
    let performance = field(&js_sys::global(), "performance");
    call(&performance, "now", &JsValue::UNDEFINED).and_then(|now| now.as_f64()).unwrap_or_default()
}

fn hidden() -> bool {
    document().is_some_and(|document| document.hidden())
}

/// Calls `look` whenever the day may have changed: when the page is shown again, and twice a minute while it is.
/// A timer set for midnight would sleep with the phone and miss the midnight of another yard's zone.
///
/// It is told the moment before the clock was set; see [`was_set`].
pub fn watch(look: impl Fn(Option<f64>) + Clone + 'static) {
    let last = Rc::new(Cell::new((Date::now(), counted())));
    let look = move |shown: bool| {
        OWN.set(None);
        let (now, count) = (Date::now(), counted());
        let (before, counted_before) = last.replace((now, count));
        // Where the keeper has said the day, a clock that may have been set is asked about: what she said was said of the
        // clock as it was, and is not dropped without a word.
        let shown = shown && !is_said();
        let before = was_set(before, now, count - counted_before, shown).then(|| {
            let ahead = AHEAD.replace(0.0);
            // Put right, the phone's own day is the one that moved.
            if now < before { before + ahead } else { before }
        });
        look(before);
    };
    if let Some(document) = document() {
        let look = look.clone();
        listen(&document, "visibilitychange", move |_| look(true));
    }
    if let Some(window) = window() {
        let tick = Closure::<dyn FnMut()>::new(move || look(hidden()));
        let every = 30_000;
        let set = window
            .set_interval_with_callback_and_timeout_and_arguments_0(tick.as_ref().unchecked_ref(), every);
        if set.is_ok() {
            tick.forget();
        }
    }
}
