//! The hours of a yard: what its clock shows at a moment, and the moment of an hour that it showed.

use super::clock;
use crate::almanac::day::Day;
use crate::almanac::moment::Moment;
use crate::app::beetle::honey::YardClock;
use crate::book::record::ClockTime;
use js_sys::{Array, Date};
use std::cell::RefCell;
use wasm_bindgen::prelude::*;

/// Milliseconds from 1970-01-01 to 2000-01-01 in UTC.
const START_MS: f64 = 946_684_800_000.0;
const MINUTE_MS: f64 = 60_000.0;

/// What the browser knows of every yard's clock.
pub const CLOCK: YardClock = YardClock { moment, shown };

thread_local! {
    /// The last format, with its zone: making one costs more than using it.
    static FORMAT: RefCell<Option<(String, JsValue)>> = const { RefCell::new(None) };
}

/// This minute, on the day that the keeper has said it is.
pub fn now() -> Moment {
    let minutes = ((clock::moment() - START_MS) / MINUTE_MS).floor();
    #[allow(clippy::cast_possible_truncation)] // a cast saturates, and a clock beyond 2199 is not set at all
    Moment::new(Day::FIRST, 0).plus(minutes as i32)
}

/// What the clock in `zone` shows at a moment; none where the browser does not know the zone.
pub fn shown(at: Moment, zone: &str) -> Option<ClockTime> {
    let format = format_in(zone)?;
    let minutes = at.since(Moment::new(Day::FIRST, 0));
    let date = Date::new(&f64::from(minutes).mul_add(MINUTE_MS, START_MS).into());
    let parts: Array = super::call(&format, "formatToParts", &date.into())?.dyn_into().ok()?;
    // In the order in which American English writes them: month, day, year, hour, minute.
    let mut numbers = [0u32; 5];
    let mut found = numbers.iter_mut();
    for part in parts.iter() {
        if super::field(&part, "type") != "literal" {
            *found.next()? = super::field(&part, "value").as_string()?.parse().ok()?;
        }
    }
    let [month, day, year, hour, minute] = numbers;
    let day = Day::from_ymd(i32::try_from(year).ok()?, month, day).ok()?;
    Some(ClockTime { day, minute: u16::try_from(hour % 24 * 60 + minute).ok()? })
}

fn format_in(zone: &str) -> Option<JsValue> {
    let known = FORMAT.with_borrow(|known| known.clone().filter(|(of, _)| of == zone));
    if let Some((_, format)) = known {
        return Some(format);
    }
    let mut wanted = vec![("timeZone", zone.into()), ("hourCycle", "h23".into())];
    for part in ["year", "month", "day", "hour", "minute"] {
        wanted.push((part, "numeric".into()));
    }
    let format = super::intl(
        "DateTimeFormat",
        &Array::of2(&"en-US-u-ca-gregory-nu-latn".into(), &super::options(&wanted)),
    )?;
    FORMAT.set(Some((zone.to_owned(), format.clone())));
    Some(format)
}

/// The moment at which the clock in `zone` showed an hour; the earlier one where there are two.
pub fn moment(shown_there: ClockTime, zone: &str) -> Option<Moment> {
    let told = |time: ClockTime| Moment::new(time.day, time.minute);
    Moment::when(told(shown_there), &|at| shown(at, zone).map(told))
}
