//! English: what limits the time to the next service, with the figures each limit follows from.

use super::en::{date, days, with_unit};
use crate::almanac::refill::{Limit, Loss, Refill};
use crate::almanac::trap::TrapKind;

/// What decided the day, whose loss that was, and the limits behind it with their days.
pub fn reasons(refill: &Refill) -> Vec<String> {
    let mut decided = sum(refill.decided_by, refill.ahead);
    if let Limit::OilLow { from, floor, .. } = refill.decided_by
        && from > floor
    {
        decided.push_str(whose(refill.loss));
    }
    let mut lines = vec![decided];
    lines.append(&mut later(refill));
    lines
}

/// The limits that did not decide, each with its day.
pub fn later(refill: &Refill) -> Vec<String> {
    let mut lines = Vec::new();
    for limit in &refill.also {
        let behind = i32::from(limit.days()) - i32::from(refill.decided_by.days());
        let when = match behind {
            0 => "The same day".to_owned(),
            // No trap waits that long, and a day years ahead would promise what nobody knows.
            _ if limit.days() > *TrapKind::MAX_DAYS.end() => "Long after that".to_owned(),
            _ => ["Later, ", &date(refill.due.plus(behind))].concat(),
        };
        lines.push([&when, ": ", &sum(*limit, refill.ahead)].concat());
    }
    lines
}

/// A limit with its figures; what runs out does so from a reading `ahead` days after the service.
pub fn sum(limit: Limit, ahead: u16) -> String {
    match limit {
        Limit::YourMaximum { days } => maximum(days),
        Limit::OilLow { from, floor, .. } if from <= floor => {
            ["oil low: already at ", &percent(floor.fraction(), 1), " or under"].concat()
        }
        Limit::OilLow { days, from, floor, per_day } => {
            let (from, floor) = (percent(from.fraction(), 1), percent(floor.fraction(), 1));
            ["oil low: ", &from, " − ", &floor, " at ", &rate(per_day), " a day =\u{a0}", &lasts(days, ahead)]
                .concat()
        }
        // Nobody need have counted any: there is no room from the start.
        Limit::Bodies { room: 0, .. } => "fuller than ¾: no room for beetles".to_owned(),
        Limit::Bodies { days, room, per_day } => {
            let (room, per_day) = (number(f64::from(room), 0), number(per_day, 2));
            ["beetles: room for ", &room, " in a trap at ", &per_day, " a day =\u{a0}", &lasts(days, ahead)]
                .concat()
        }
    }
}

/// "your maximum of 14 days".
pub fn maximum(count: u16) -> String {
    ["your maximum of ", &days(u32::from(count))].concat()
}

/// A loss in percentage points a day.
pub fn rate(per_day: f64) -> String {
    percent(per_day / 100.0, 2)
}

/// The days of the sum, and where they begin when that is not the service.
fn lasts(count: u16, ahead: u16) -> String {
    let mut said = days(u32::from(count.saturating_sub(ahead)));
    if ahead > 0 {
        said = [&said, ", from a reading ", &days(u32::from(ahead)), " after the service"].concat();
    }
    said
}

/// Whose readings a loss is from.
fn whose(loss: Loss) -> &'static str {
    match loss {
        Loss::Hive { .. } => "; loss by this hive’s own readings",
        Loss::Yard { .. } => "; the loss is not this hive’s own but the middle one of the yard’s hives",
        Loss::Unknown => "",
    }
}

fn percent(fraction: f64, decimals: u8) -> String {
    with_unit(&number(fraction * 100.0, decimals), "%")
}

#[cfg(target_arch = "wasm32")]
fn number(value: f64, decimals: u8) -> String {
    crate::app::edge::locale::number(value, decimals)
}

#[cfg(not(target_arch = "wasm32"))]
fn number(value: f64, decimals: u8) -> String {
    let parts = 10_f64.powi(i32::from(decimals));
    let rounded = crate::almanac::quantity::Decimal::from_f64((value * parts).round() / parts);
    rounded.unwrap_or_default().to_string()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::almanac::day::Day;
    use crate::almanac::quantity::{Decimal, Share};
    use crate::almanac::refill::{RefillFacts, refill};

    fn percent(value: u32) -> Option<Share> {
        Share::from_percent(Decimal::whole(value)).ok()
    }

    /// Half full on 2 December 2026 with a floor of 30 %; 20 points in a week, by the yard.
    fn facts() -> RefillFacts {
        RefillFacts {
            last_service: Day::parse("2026-12-02").unwrap(),
            max_days: 14,
            level: percent(50),
            read_on: None,
            floor: percent(30),
            loss: Loss::Yard { per_day: 20.0 / 7.0, intervals: 3 },
            room: None,
            catch_per_day: None,
        }
    }

    fn said(facts: RefillFacts) -> Vec<String> {
        reasons(&refill(&facts)).iter().map(|line| line.replace('\u{a0}', " ")).collect()
    }

    #[test]
    fn a_due_date_shows_its_sum_whose_loss_it_was_and_what_comes_later() {
        let sum = "oil low: 50 % − 30 % at 2.86 % a day = 7 days";
        let later = "Later, Wed 16 December 2026: your maximum of 14 days";
        assert_eq!(
            said(facts()),
            [
                &[sum, "; the loss is not this hive’s own but the middle one of the yard’s hives"].concat(),
                later
            ]
        );
        let loss = Loss::Hive { per_day: 20.0 / 7.0, intervals: 1 };
        let own = said(RefillFacts { loss, ..facts() });
        assert_eq!(own, [&[sum, "; loss by this hive’s own readings"].concat(), later]);
    }

    #[test]
    fn a_limit_that_comes_later_has_its_day_and_its_sum() {
        let facts = RefillFacts { max_days: 5, room: Some(60), catch_per_day: Some(2.5), ..facts() };
        let oil = "Later, Wed 9 December 2026: oil low: 50 % − 30 % at 2.86 % a day = 7 days";
        let bodies = "Later, Sat 26 December 2026: beetles: room for 60 in a trap at 2.5 a day = 24 days";
        assert_eq!(said(facts), ["your maximum of 5 days", oil, bodies]);
        let full = said(RefillFacts { max_days: 5, room: Some(0), catch_per_day: None, ..facts });
        assert!(full.contains(&"fuller than ¾: no room for beetles".to_owned()), "{full:?}");
        let tied = said(RefillFacts { max_days: 7, room: None, ..facts });
        let oil = "The same day: oil low: 50 % − 30 % at 2.86 % a day = 7 days";
        assert_eq!(tied, ["your maximum of 7 days", oil]);
        let rare = said(RefillFacts { catch_per_day: Some(0.09), loss: Loss::Unknown, ..facts });
        let bodies = "Long after that: beetles: room for 60 in a trap at 0.09 a day = 666 days";
        assert_eq!(rare, ["your maximum of 5 days", bodies], "no day that is years ahead");
    }

    #[test]
    fn a_sum_from_a_later_reading_says_so_and_its_days_are_those_of_its_figures() {
        let read_on = Day::parse("2026-12-05").ok();
        let told = said(RefillFacts { read_on, level: percent(40), ..facts() });
        let sum = "oil low: 40 % − 30 % at 2.86 % a day = 3 days, from a reading 3 days after the service";
        assert_eq!(
            told[0],
            [sum, "; the loss is not this hive’s own but the middle one of the yard’s hives"].concat()
        );
        let told = said(RefillFacts { read_on, level: percent(30), ..facts() });
        assert_eq!(told[0], "oil low: already at 30 % or under");
        // Less than a day is left, and still it is not at the floor.
        let told = said(RefillFacts { level: percent(31), ..facts() });
        assert!(told[0].starts_with("oil low: 31 % − 30 % at 2.86 % a day = 0 days;"), "{}", told[0]);
    }
}
