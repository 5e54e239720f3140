//! The events of the calendar file, in words.

use crate::almanac::day::Day;
use crate::app::beetle::honey::{self, Stack, Step, YardClock};
use crate::app::wording::en_beetle;
use crate::app::wording::en_beetle_honey as wh;
use crate::app::wording::en_papers::calendar as w;
use crate::book::Book;
use crate::book::finds::{self, UnderWay};
use crate::book::id::ThingId;
use crate::papers::calendar::{self, Event, Task, YardDay};

/// The yards that papers are about: the keeper's own that are open, or those of the demonstration while there is none.
pub fn yards(book: &Book) -> Vec<ThingId> {
    let open = || book.standing().open_yards().map(|(id, _)| id);
    let own = open().any(|id| !id.is_demo());
    open().filter(|id| own != id.is_demo()).cloned().collect()
}

/// Everything that is due from `today` on, and the stacks of supers that are not spun.
pub fn events(book: &Book, today: Day, clock: &YardClock) -> Vec<Event> {
    let days = calendar::yard_days(book.standing(), &yards(book), today);
    let mut ways: Vec<(&ThingId, Vec<UnderWay>)> = Vec::new();
    let mut events: Vec<Event> = Vec::with_capacity(days.len());
    for day in &days {
        if ways.last().is_none_or(|(yard, _)| **yard != day.yard) {
            let of_yard = finds::of_yard(book.standing(), &day.yard, today).unwrap_or_default();
            ways.push((&day.yard, of_yard));
        }
        let of_yard = ways.last().map_or(&[][..], |(_, ways)| ways);
        events.push(event(book, day, of_yard, today));
    }
    for stack in honey::stacks(book, clock) {
        events.extend(race(book, &stack, today, clock));
    }
    events
}

/// From the hour to spin by to the limit; all day today where the limit was before today, until nobody will have waited so
/// long.
fn race(book: &Book, stack: &Stack, today: Day, clock: &YardClock) -> Option<Event> {
    let Step::Spin(race, _) = stack.step else { return None };
    let told = |at| (clock.shown)(at, &stack.zone);
    let limit = told(race.limit)?.day;
    if today.days_since(told(race.off)?.day) > honey::SHOWN_DAYS {
        return None;
    }
    let yard = stack.yard.as_ref().and_then(|yard| book.standing().yards.get(yard));
    let mut description = String::new();
    for (what, at) in [
        (wh::OFF, Some(race.off)),
        (wh::GOAL, Some(race.goal)),
        (wh::LIMIT, Some(race.limit)),
        (wh::BEGAN, stack.began),
        (wh::FIRST_HATCH, race.hatch),
    ] {
        if let Some(at) = at {
            wh::put_hour(&mut description, what, told(at)?);
        }
    }
    wh::put_line(&mut description, wh::NOT_SLIMED);
    // An hour at the least: an event ends behind its beginning.
    let from = race.spin_by().0.min(race.limit.plus(-60));
    Some(Event {
        uid: calendar::lot_uid(&stack.line),
        day: limit.max(today),
        hours: (limit >= today).then_some((from, race.limit)),
        summary: wh::summary(
            yard.map_or("", |yard| &yard.name),
            stack.supers,
            limit < today,
            stack.began.is_some(),
        ),
        description,
    })
}

fn event(book: &Book, of: &YardDay, ways: &[UnderWay], today: Day) -> Event {
    let standing = book.standing();
    let name = standing.yards.get(&of.yard).map_or("", |yard| &yard.name);
    let mut lists = [const { Vec::new() }; 8];
    for item in &of.items {
        let at = match item.task {
            Task::Traps if item.due < of.day => 0,
            Task::Traps => 1,
            Task::Look => 2,
            Task::Bait => 3,
            Task::Patty => 4,
            Task::Larvae => 5,
            Task::Young => 6,
            Task::NextLook => 7,
        };
        let tag = standing.hives.get(&item.hive).map_or("", |hive| &hive.tag);
        if let Some(list) = lists.get_mut(at) {
            list.push(tag);
        }
    }
    let [late, due, look, bait, patty, larvae, young, next] = &lists;
    let mut description = String::new();
    for (list, what) in
        lists.iter().zip([w::OVERDUE, w::DUE, w::LOOK, w::BAIT, w::PATTY, w::LARVAE, w::YOUNG, w::NEXT_LOOK])
    {
        if !list.is_empty() {
            w::put_hives(&mut description, what, list);
        }
    }
    if !young.is_empty() {
        for way in ways {
            let here = of.items.iter().any(|item| item.task == Task::Young && item.hive == way.hive);
            if let (true, Some(hive)) = (here && !way.adults_only(), standing.hives.get(&way.hive)) {
                w::put_dates(&mut description, &hive.tag, &en_beetle::dates(&way.dates.adults, today));
            }
        }
    }
    let summary = w::summary(
        name,
        late.len() + due.len(),
        look.len(),
        [bait, patty, larvae, young, next].map(Vec::len),
    );
    Event { uid: of.uid(), day: of.day, hours: None, summary, description }
}
