//! What trap work cost over some days, as far as it was written down.

use super::Book;
use super::entry::What;
use super::fold::fold_watched;
use super::id::ThingId;
use super::pace::{pace, ways};
use super::record::{Blank, Record};
use super::standing::{HiveNow, Standing};
use crate::almanac::cost::{Cost, cost};
use crate::almanac::day::Day;
use crate::almanac::quantity::Decimal;
use crate::almanac::table::Table;

/// Kilograms of a pound: exact, by the international agreement of 1959.
const POUND: f64 = 0.453_592_37;
/// Days of a season of a durable thing's life.
const YEAR: i32 = 365;

/// What nobody wrote down, and what is therefore left out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Missing {
    /// The price of so many things bought.
    Prices(u32),
    /// For how many seasons traps last: what was paid for them is left out.
    TrapSeasons,
    /// Which share of what was bought is the yard's own: no hive was in care in those days, so nothing spreads it.
    Share,
    /// What a trip costs.
    Trip,
    /// What an hour is worth: work is left out.
    Hour,
    /// How long a hive or a way takes: that part of the hours is left out.
    Minutes,
    /// What a colony is worth.
    Colony,
    /// Honey of so many lots.
    Honey(u32),
}

/// Every part of what was spent, in the keeper's currency.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Spent {
    /// The first day on which a hive asked about was in care, where that is after the first day asked about. What is
    /// shared by hives is shared over the days from then on: in a first year no hive was in care for most of it.
    pub since: Option<Day>,
    /// Days from then on, both ends included; all those asked about where no hive was in care.
    pub days: u32,
    /// Oil, bait, traps that are thrown away and whatever else was bought in those days.
    pub used_up: f64,
    /// Traps used again and screens: the share of these days in what was paid for them.
    pub durable: f64,
    /// Days with trap work; a day in several yards counts in each by its share.
    pub trips: f64,
    /// Some of them led to other yards too, and only the yard's share is in it.
    pub shared: bool,
    /// What they cost.
    pub travel: f64,
    /// Hours of work: hives by the pace that was learned, ways and setting up by the facts of the yards. An estimate. A
    /// hive that was worked on several times a day counts once: the pace is from one hive to the next, and several
    /// lines of a hive are mostly its boxes and traps one by one.
    pub hours: f64,
    /// What they are worth.
    pub work: f64,
    /// Days that hives were in care.
    pub hive_days: u32,
    /// Days that traps fished.
    pub trap_days: u32,
    /// Honey of the lots whose weight is known, in kilograms; none without a lot.
    pub honey: Option<f64>,
    /// Value of a colony.
    pub colony: Option<f64>,
    /// What is left out.
    pub missing: Vec<Missing>,
}

/// What one pass over the log counts.
#[derive(Default)]
struct Counted {
    /// The day up to which the days of each hive are counted, and the last one on which it was worked on in the yard asked
    /// about.
    marks: Table<ThingId, (Day, Option<Day>)>,
    /// Hive-days of the yard asked about, and of all.
    hive_days: (u32, u32),
    /// The first of those of the yard asked about.
    since: Option<Day>,
    trap_days: u32,
    /// Yards with trap work, day by day.
    visits: Vec<(Day, ThingId)>,
    /// Hives worked on in the yard asked about, each once a day.
    worked: u32,
}

impl Spent {
    /// What was spent from `from` to `to`, both included, on `yard`, or on all of the keeper's own. What belongs to no
    /// yard, such as oil, is spread by hive-days; all yards together bear all of it. `names` says whether what was
    /// bought is of a kind, as it does in the store. Two passes over the log, so work it out on a page of its own.
    pub fn of(
        book: &Book,
        yard: Option<&ThingId>,
        from: Day,
        to: Day,
        names: &dyn Fn(&Standing, &ThingId, &str) -> bool,
    ) -> Spent {
        let demo = yard.is_some_and(ThingId::is_demo);
        let mut counted = Counted::default();
        let standing = fold_watched(book.log(), Some(to), &mut |standing, _, entry| {
            let Some(hive) = entry.hive() else { return };
            let hive = standing.kept(&hive);
            let Some(now) = standing.hives.get(hive).filter(|_| hive.is_demo() == demo) else { return };
            counted.until(hive, now, entry.day, (from, yard));
            if entry.day >= from && matches!(entry.what, What::Check(_)) {
                counted.work(hive, now, entry.day, yard);
            }
        });
        for (hive, now) in standing.hives.iter().filter(|(hive, _)| hive.is_demo() == demo) {
            counted.until(hive, now, to.plus(1), (from, yard));
        }
        let since = counted.since.filter(|first| *first > from);
        let days = u32::try_from(to.days_since(since.unwrap_or(from)) + 1).unwrap_or_default();
        let (hive_days, trap_days) = (counted.hive_days.0, counted.trap_days);
        let mut spent = Spent { since, days, hive_days, trap_days, ..Spent::default() };
        let costs = book.standing().facts(Blank::Costs, None, None);
        let number = |name| costs.number(name).map(|(number, _)| number);
        // A kind is named as it is in the store, which knows those that came since; how it was used stands as it was.
        let of = |kind: &ThingId, item: &str| names(book.standing(), kind, item);
        let lasts = |record: &Record| lasts(&standing, record, &of);
        spent.bought(&standing, demo, (from, to), number("trap_seasons"), share(&counted, yard), &lasts);
        spent.travelled(&counted, yard, number("trip"));
        spent.worked(book, &counted, yard, number("hour"));
        spent.honey(&standing, yard, demo, (from, to));
        spent.colony = book.standing().keeper.colony_value.map(Decimal::as_f64).filter(|value| *value > 0.0);
        if spent.colony.is_none() {
            spent.missing.push(Missing::Colony);
        }
        spent
    }

    /// Everything together, spread over hives, traps, honey and colonies.
    pub fn cost(&self) -> Cost {
        let total = self.used_up + self.durable + self.travel + self.work;
        cost(total, (self.hive_days, self.days), self.trap_days, self.honey, self.colony)
    }

    fn bought(
        &mut self,
        standing: &Standing,
        demo: bool,
        (from, to): (Day, Day),
        seasons: Option<f64>,
        share: Option<f64>,
        lasts: &dyn Fn(&Record) -> bool,
    ) {
        let (mut unpriced, mut durable, mut unspread) = (0, false, false);
        for (id, now) in standing.records_of(Blank::Stock) {
            let record = &now.record;
            let bought = record.number("change").is_some_and(|(change, _)| change > 0.0);
            if id.is_demo() != demo || !bought || now.day > to {
                continue;
            }
            let lasts = lasts(record);
            // A season is a year of a thing's life, of which the days asked about take their part: sheets that follow each
            // other add up to what was paid.
            #[allow(clippy::cast_possible_truncation)] // fifty years at most
            let life = if lasts { (seasons.unwrap_or(1.0) * f64::from(YEAR)).round() as i32 } else { 0 };
            let (first, last) = (now.day.max(from), now.day.plus(life - 1).min(to));
            let worn = last.days_since(first) + 1;
            if if lasts { worn <= 0 } else { now.day < from } {
                continue;
            }
            let Some((price, _)) = record.number("price") else {
                unpriced += 1;
                continue;
            };
            // A gift costs nothing, however long it lasts and whoever bears it.
            if price <= 0.0 {
                continue;
            }
            match (lasts, seasons, share) {
                (true, None, _) => durable = true,
                (.., None) => unspread = true,
                (false, _, Some(share)) => self.used_up += price * share,
                (true, Some(_), Some(share)) => {
                    self.durable += price * f64::from(worn) / f64::from(life.max(1)) * share;
                }
            }
        }
        if unpriced > 0 {
            self.missing.push(Missing::Prices(unpriced));
        }
        if durable {
            self.missing.push(Missing::TrapSeasons);
        }
        if unspread {
            self.missing.push(Missing::Share);
        }
    }

    fn travelled(&mut self, counted: &Counted, yard: Option<&ThingId>, trip: Option<f64>) {
        for day in counted.visits.chunk_by(|(one, _), (other, _)| one == other) {
            #[allow(clippy::cast_precision_loss)] // yards of one day
            let yards = day.len() as f64;
            for (_, of) in day {
                if yard.is_none_or(|yard| yard == of) {
                    self.trips += 1.0 / yards;
                    self.shared |= yard.is_some() && day.len() > 1;
                }
            }
        }
        match trip {
            Some(trip) => self.travel = self.trips * trip,
            None if self.trips > 0.0 => self.missing.push(Missing::Trip),
            None => {}
        }
    }

    fn worked(&mut self, book: &Book, counted: &Counted, yard: Option<&ThingId>, hour: Option<f64>) {
        if counted.worked == 0 {
            return;
        }
        let mut known = true;
        let each = pace(book).map(|(each, _)| each);
        known &= each.is_some();
        let mut minutes = f64::from(counted.worked) * each.unwrap_or_default();
        let mut yards: Vec<(&ThingId, f64)> = Vec::new();
        for (_, of) in counted.visits.iter().filter(|(_, of)| yard.is_none_or(|yard| yard == of)) {
            match yards.iter_mut().find(|(known, _)| *known == of) {
                Some((_, times)) => *times += 1.0,
                None => yards.push((of, 1.0)),
            }
        }
        for (of, times) in yards {
            let (travel, set_up) = ways(book.standing(), of);
            known &= travel.is_some() && set_up.is_some();
            minutes += times * (travel.unwrap_or_default() + set_up.unwrap_or_default());
        }
        self.hours = minutes / 60.0;
        match hour {
            Some(hour) => {
                self.work = self.hours * hour;
                if !known {
                    self.missing.push(Missing::Minutes);
                }
            }
            None => self.missing.push(Missing::Hour),
        }
    }

    fn honey(&mut self, standing: &Standing, yard: Option<&ThingId>, demo: bool, (from, to): (Day, Day)) {
        let mut unknown = 0;
        for (id, now) in standing.records_of(Blank::Harvest) {
            let of_demo = id.is_demo() || now.yard.as_ref().is_some_and(ThingId::is_demo);
            let here = yard.is_none_or(|yard| now.yard.as_ref() == Some(yard));
            if of_demo != demo || !here || !(from..=to).contains(&now.day) {
                continue;
            }
            match now.record.number("honey") {
                Some((weight, unit)) => {
                    let weight = if unit == 1 { weight * POUND } else { weight };
                    self.honey = Some(self.honey.unwrap_or_default() + weight);
                }
                None => unknown += 1,
            }
        }
        if unknown > 0 {
            self.missing.push(Missing::Honey(unknown));
        }
    }
}

impl Counted {
    /// Counts work on a hive whose days are counted up to it. Work comes by days, so what was met before on one day is
    /// the last of each hive, or among the last yards.
    fn work(&mut self, hive: &ThingId, now: &HiveNow, day: Day, yard: Option<&ThingId>) {
        let mut today = self.visits.iter().rev().take_while(|(known, _)| *known == day);
        if today.all(|(_, known)| *known != now.yard) {
            self.visits.push((day, now.yard.clone()));
        }
        if yard.is_none_or(|yard| *yard == now.yard)
            && let Some((_, last)) = self.marks.get_mut(hive)
            && last.replace(day) != Some(day)
        {
            self.worked += 1;
        }
    }

    /// Counts the days of a hive up to `day`, as it stood since it was last counted.
    fn until(&mut self, hive: &ThingId, now: &HiveNow, day: Day, (from, yard): (Day, Option<&ThingId>)) {
        let (mark, _) = self.marks.or_insert(hive.clone(), (now.since, None));
        let since = (*mark).max(from);
        *mark = day.max(*mark);
        let days = u32::try_from(day.days_since(since)).unwrap_or_default();
        if !now.alive() {
            return;
        }
        self.hive_days.1 = self.hive_days.1.saturating_add(days);
        if yard.is_none_or(|yard| *yard == now.yard) {
            self.hive_days.0 = self.hive_days.0.saturating_add(days);
            if days > 0 {
                self.since = Some(self.since.map_or(since, |first| first.min(since)));
            }
            // Not even spilled or glued shut: those catch nothing.
            let fishing = now.traps().filter(|trap| trap.trouble.is_none()).count();
            let fishing = u32::try_from(fishing).unwrap_or(u32::MAX);
            self.trap_days = self.trap_days.saturating_add(fishing.saturating_mul(days));
        }
    }
}

/// The share of the yard asked about in all hive-days: 1 of all yards together, and none of one yard where no hive was in
/// care.
fn share(counted: &Counted, yard: Option<&ThingId>) -> Option<f64> {
    let (own, all) = counted.hive_days;
    if yard.is_none() {
        return Some(1.0);
    }
    (all > 0).then(|| f64::from(own) / f64::from(all))
}

/// Whether what was bought is used for more than one season: a screen, and a trap but of a kind that is thrown away.
fn lasts(standing: &Standing, record: &Record, of: &dyn Fn(&ThingId, &str) -> bool) -> bool {
    let item = record.text("item").unwrap_or_default();
    match record.word("sort") {
        Some("screen") => true,
        Some("trap") => {
            let mut kinds = standing.kinds.iter();
            kinds.all(|(id, now)| now.kind.reusable || !of(id, item))
        }
        _ => false,
    }
}
