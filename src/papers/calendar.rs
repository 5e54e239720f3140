//! Due days for the keeper's own calendar (RFC 5545): one all-day event for each yard and day, and one with its hours for
//! each stack of supers that waits to be spun.
//!
//! A file that is opened twice must not leave two of everything behind, so an event keeps its name (UID) for as long as
//! it speaks of the same work. The name is made of what the book says, not of a counter: a phone that was lost and
//! restored gives the same names again. What was given out last is remembered beside the book; from that follow the
//! raised SEQUENCE of what has changed and the withdrawal of what is no longer due.

use super::content_line::{put, put_text};
use crate::almanac::checksum;
use crate::almanac::day::{Day, Stamp};
use crate::almanac::json::json_object;
use crate::almanac::moment::Moment;
use crate::book::aims::Aims;
use crate::book::baited::baited;
use crate::book::finds;
use crate::book::id::{EntryId, ThingId};
use crate::book::next_look::next_look;
use crate::book::round::{self, HiveDue};
use crate::book::standing::Standing;

/// Says who made the file.
const PRODUCT: &str = "-//beetle-almanac//beetle-almanac//EN";

/// After the start of the day: seven in the morning of wherever the phone is then.
const ALARM: &str = "PT7H";

/// Of an event with hours: before its beginning, so that there is time left to do it.
const ALARM_AHEAD: &str = "-PT6H";

/// The same in minutes.
const AHEAD: i32 = 6 * 60;

/// Minutes after the making of a file at which what should have rung before rings: it takes a while to be opened, and
/// calendars drop an alarm that is over.
const SOON: i32 = 10;

/// Days for which a past event is remembered: a strike-out may bring its work back under the same name.
const REMEMBERED_DAYS: i32 = 60;

/// What is to be done at a hive.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Task {
    /// By the keeper's own rhythm the next look for larvae is due. The first of all: events that were given out before
    /// there was this one keep their names.
    NextLook,
    /// Adult beetles were seen: look again on the day before larvae can leave.
    Larvae,
    /// Young beetles may come out of the ground.
    Young,
    /// Bait is to be out.
    Bait,
    /// A patty is to be out.
    Patty,
    /// Oil spilled: look again.
    Look,
    /// Traps are due.
    Traps,
}

/// One hive in an event.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Item {
    /// What is to be done.
    pub task: Task,
    /// Where.
    pub hive: ThingId,
    /// When it is or was due: the day of the event, or before it.
    pub due: Day,
    /// First day of the cycle it belongs to: the service its longest-waiting trap had, the day of the spill, the day of
    /// the find, the day on which bait or a patty was put in, or that of the last look for larvae.
    pub cycle: Day,
}

/// What is to be done in a yard on a day.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct YardDay {
    /// Which yard.
    pub yard: ThingId,
    /// The day; today for what is overdue.
    pub day: Day,
    /// Hives in the order in which they are walked. Never empty.
    pub items: Vec<Item>,
}

/// An event in words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Event {
    /// Its name, from [`YardDay::uid`] or [`lot_uid`].
    pub uid: String,
    /// Its day; of an event with hours the last one, by the calendar of its yard.
    pub day: Day,
    /// Beginning and end, where it is no event of a whole day. The end lies behind the beginning.
    pub hours: Option<(Moment, Moment)>,
    /// Its title.
    pub summary: String,
    /// Which hives.
    pub description: String,
}

/// What is remembered of an event that was given out.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Given {
    /// Its name.
    pub uid: String,
    /// The day it was given out for.
    pub day: Day,
    /// How often it has changed since it was first given out.
    pub sequence: u32,
    /// Checksum of its words.
    pub words: String,
    /// It was taken back.
    pub withdrawn: bool,
    /// Its hours in UTC as `start/end`, where it has any.
    pub hours: Option<String>,
}

json_object!(Given { uid, day, sequence, words, withdrawn } maybe { hours });

/// A calendar file, and what is to be remembered of it once it is out.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Calendar {
    /// The file.
    pub text: String,
    /// What it gave out, together with what is still remembered from before.
    pub given: Vec<Given>,
}

impl YardDay {
    /// The event's name: yard, task, hive and cycle of one of its items. As an item is in one event only, no two events
    /// share a name; as its cycle lasts until the hive is served, a day that moves keeps it. It is the last item by task
    /// and hive: a walk that was broken off has most often begun with the first hives.
    pub fn uid(&self) -> String {
        let last = self.items.iter().max_by_key(|item| (item.task, &item.hive));
        let Some(Item { task, hive, cycle, .. }) = last else { return self.yard.to_string() };
        let task = match task {
            Task::NextLook => ".next-look.",
            Task::Larvae => ".larvae.",
            Task::Young => ".young.",
            Task::Traps => ".traps.",
            Task::Look => ".look.",
            Task::Bait => ".bait.",
            Task::Patty => ".patty.",
        };
        [&self.yard.to_string(), task, &hive.to_string(), ".", &basic(*cycle)].concat()
    }
}

/// The name of the event of a harvest lot: that of its line, which corrections of it keep.
pub fn lot_uid(line: &EntryId) -> String {
    [&line.to_string(), ".lot"].concat()
}

/// What is to be done in `yards` from `today` on, by yard and then by day. No trap work where it rests.
pub fn yard_days(standing: &Standing, yards: &[ThingId], today: Day) -> Vec<YardDay> {
    let aims = Aims::of(standing);
    let mut days: Vec<YardDay> = Vec::new();
    for yard in yards {
        let start = days.len();
        let resting = standing.yards.get(yard).is_none_or(|now| now.paused.is_some());
        for row in &round::rows(standing, yard, today) {
            let mut tasks = Vec::new();
            if let (HiveDue::Due { on, .. }, Some(since), false) = (&row.due, row.days_since, resting) {
                tasks.push((Task::Traps, *on, today.plus(-since)));
            }
            if let (Some(by), false) = (row.recheck, resting) {
                tasks.push((Task::Look, by, by.plus(-round::RECHECK_DAYS)));
            }
            for bait in baited(standing, &row.hive, &aims) {
                let task = if bait.patty { Task::Patty } else { Task::Bait };
                tasks.push((task, bait.off.on, bait.since));
            }
            let every = aims.look_every.and_then(|days| i32::try_from(days).ok());
            if let (Some(due), Some(every), false) = (next_look(standing, &row.hive, &aims), every, resting) {
                tasks.push((Task::NextLook, due, due.plus(-every)));
            }
            for (task, due, cycle) in tasks {
                put_item(&mut days, start, yard, today, Item { task, hive: row.hive.clone(), due, cycle });
            }
        }
        // Beetles come out of the ground of a hive that is dead or gone too.
        for way in &finds::of_yard(standing, yard, today).unwrap_or_default() {
            let (task, due) = if way.adults_only() {
                (Task::Larvae, way.leaving().map(|day| day.plus(-1)))
            } else {
                (Task::Young, way.young())
            };
            if let (Some(due), Some(cycle)) = (due, way.since()) {
                put_item(&mut days, start, yard, today, Item { task, hive: way.hive.clone(), due, cycle });
            }
        }
    }
    days
}

/// Puts `item` into its day of `yard`, whose days begin with `start`.
fn put_item(days: &mut Vec<YardDay>, start: usize, yard: &ThingId, today: Day, item: Item) {
    let day = item.due.max(today);
    let at = start + days.iter().skip(start).take_while(|other| other.day < day).count();
    match days.get_mut(at).filter(|other| other.day == day) {
        Some(other) => other.items.push(item),
        None => days.insert(at, YardDay { yard: yard.clone(), day, items: vec![item] }),
    }
}

/// The file for `events`, when `before` was given out earlier; none when there is nothing to give out or take back.
///
/// An event whose day or words have changed gets the next SEQUENCE. One that was given out for today or later and is no
/// longer due is withdrawn, under the title `withdrawn`, and stays so in every file until its day is over: an earlier
/// file may never have been opened. What is past stays in the keeper's calendar as it is.
pub fn give_out(
    events: &[Event],
    before: &[Given],
    today: Day,
    made: Stamp,
    withdrawn: &str,
) -> Option<Calendar> {
    let (day, second) = made.utc();
    let stamp = moment(day, second);
    let soon = Moment::new(day, u16::try_from(second / 60).unwrap_or_default()).plus(SOON);
    let mut text = String::new();
    put(&mut text, "BEGIN", "VCALENDAR");
    put(&mut text, "VERSION", "2.0");
    put(&mut text, "PRODID", PRODUCT);
    let empty = text.len();
    let mut given: Vec<Given> = Vec::new();
    for event in events {
        let words = checksum::of(&[&event.summary, &event.description]);
        let hours = event.hours.map(|(from, to)| [&utc(from), "/", &utc(to)].concat());
        let old = before.iter().find(|old| old.uid == event.uid);
        let changed =
            |old: &Given| old.withdrawn || old.day != event.day || old.words != words || old.hours != hours;
        let sequence = old.map_or(0, |old| old.sequence + u32::from(changed(old)));
        let now = Given { uid: event.uid.clone(), day: event.day, sequence, words, withdrawn: false, hours };
        let late = event.hours.is_some_and(|(from, _)| from.plus(-AHEAD) < soon);
        let late = late.then(|| utc(soon));
        put_event(&mut text, &now, &stamp, late.as_deref(), [&event.summary, &event.description]);
        given.push(now);
    }
    for old in before {
        if events.iter().any(|event| event.uid == old.uid) || old.day.plus(REMEMBERED_DAYS) < today {
            continue;
        }
        let mut now = old.clone();
        if old.day >= today {
            now.sequence += u32::from(!old.withdrawn);
            now.withdrawn = true;
            put_event(&mut text, &now, &stamp, None, [withdrawn, ""]);
        }
        given.push(now);
    }
    if text.len() == empty {
        return None;
    }
    put(&mut text, "END", "VCALENDAR");
    Some(Calendar { text, given })
}

/// `soon`: when its alarm rings where the hour for it is over.
fn put_event(
    text: &mut String,
    event: &Given,
    stamp: &str,
    soon: Option<&str>,
    [summary, description]: [&str; 2],
) {
    let status = if event.withdrawn { "CANCELLED" } else { "CONFIRMED" };
    put(text, "BEGIN", "VEVENT");
    put(text, "UID", &event.uid);
    put(text, "DTSTAMP", stamp);
    put(text, "SEQUENCE", &event.sequence.to_string());
    if let Some((from, to)) = event.hours.as_deref().and_then(|hours| hours.split_once('/')) {
        put(text, "DTSTART", from);
        put(text, "DTEND", to);
    } else {
        put(text, "DTSTART;VALUE=DATE", &basic(event.day));
        // The end is the first day that is not in it. The last day of all has no next: without an end it is one day too.
        if event.day < Day::LAST {
            put(text, "DTEND;VALUE=DATE", &basic(event.day.plus(1)));
        }
    }
    put_text(text, "SUMMARY", summary);
    put(text, "STATUS", status);
    put(text, "TRANSP", "TRANSPARENT");
    if !event.withdrawn {
        put_text(text, "DESCRIPTION", description);
        put(text, "BEGIN", "VALARM");
        put(text, "ACTION", "DISPLAY");
        put_text(text, "DESCRIPTION", summary);
        match soon {
            Some(soon) => put(text, "TRIGGER;VALUE=DATE-TIME", soon),
            None => put(text, "TRIGGER", if event.hours.is_some() { ALARM_AHEAD } else { ALARM }),
        }
        put(text, "END", "VALARM");
    }
    put(text, "END", "VEVENT");
}

/// A date as RFC 5545 writes it, section 3.3.4: `19970714`.
fn basic(day: Day) -> String {
    day.to_string().chars().filter(|c| *c != '-').collect()
}

/// A moment in UTC as RFC 5545 writes it.
fn utc(at: Moment) -> String {
    let (day, minute) = at.utc();
    moment(day, u32::from(minute) * 60)
}

/// The second of a day in UTC as RFC 5545 writes it, section 3.3.5: `19980119T070000Z`.
fn moment(day: Day, second: u32) -> String {
    let mut text = basic(day);
    text.push('T');
    for part in [second / 3600, second / 60 % 60, second % 60] {
        text.push_str(if part < 10 { "0" } else { "" });
        text.push_str(&part.to_string());
    }
    text.push('Z');
    text
}
