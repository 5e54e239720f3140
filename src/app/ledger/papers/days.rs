//! The lines of a packet told day by day and yard by yard: what was done alike in one sentence, what differs by itself.
//! Every line is told once, and each piece says which lines it tells.

use super::packet;
use crate::almanac::day::Day;
use crate::almanac::order::sort_by;
use crate::almanac::quantity::Share;
use crate::almanac::tally::CountRange;
use crate::app::ledger::history::{Counts, Line};
use crate::app::ledger::words;
use crate::app::wording::en_packet as w;
use crate::book::Book;
use crate::book::entry::{Check, Did, Entry, What};
use crate::book::id::{EntryId, ThingId};

/// A day in a yard.
pub struct DayRow<'a> {
    /// The day.
    pub day: Day,
    /// The yard; none for what belongs to no yard.
    pub yard: Option<&'a ThingId>,
    /// What was written of it.
    pub told: Vec<Told<'a>>,
    /// The labels of the phones it was written on, each once.
    pub by: Vec<&'a str>,
}

/// A sentence.
pub struct Told<'a> {
    /// The words.
    pub said: String,
    /// Whether what it tells counts.
    pub counts: Counts,
    /// The lines it tells.
    pub lines: Vec<&'a EntryId>,
}

/// `lines`, oldest first, day by day; the keeper's notes only with `notes`, each line by itself with `every`.
pub fn rows<'a>(book: &'a Book, lines: Vec<Line<'a>>, notes: bool, every: bool) -> Vec<DayRow<'a>> {
    let mut days: Vec<(Day, Option<&ThingId>, Vec<Line<'a>>)> = Vec::new();
    for line in lines {
        let of = (line.entry.day, line.entry.yard.as_ref());
        let same = |known: &&mut (Day, Option<&ThingId>, Vec<Line<'a>>)| (known.0, known.1) == of;
        match days.iter_mut().rev().take_while(|known| known.0 == of.0).find(same) {
            Some((.., lines)) => lines.push(line),
            None => days.push((of.0, of.1, vec![line])),
        }
    }
    let mut rows = Vec::new();
    for (day, yard, lines) in days {
        let mut by: Vec<&str> = Vec::new();
        for line in &lines {
            if let Some(label) = &line.entry.by
                && !by.contains(&label.as_str())
            {
                by.push(label);
            }
        }
        rows.push(DayRow { day, yard, told: told(book, lines, notes, every), by });
    }
    rows
}

fn told<'a>(book: &'a Book, lines: Vec<Line<'a>>, notes: bool, every: bool) -> Vec<Told<'a>> {
    let mut work = Work::default();
    let mut alike: Vec<Alike<'a>> = Vec::new();
    let mut alone = Vec::new();
    for line in lines {
        let entry = line.entry;
        // What was corrected stands beside its correction, so both are told in full.
        if every || line.counts != Counts::Yes || entry.replaces.is_some() || !work.takes(book, entry, notes)
        {
            let said = packet::said(book, entry, notes);
            let hive = entry.hive().map(|hive| words::hive_name(book, &hive));
            let tail = hive.as_deref().and_then(|hive| said.strip_prefix(hive));
            match (tail, &line.counts) {
                (Some(tail), Counts::Yes) if !every && entry.replaces.is_none() => {
                    let tag = tag(book, entry);
                    match alike.iter_mut().find(|known| known.tail == tail) {
                        Some(known) => known.push(tag, entry),
                        None => alike.push(Alike {
                            tail: tail.to_owned(),
                            tags: vec![tag],
                            lines: vec![&entry.id],
                        }),
                    }
                }
                _ => alone.push(Told { said, counts: line.counts, lines: vec![&entry.id] }),
            }
        }
    }
    let mut told = Vec::new();
    if !work.lines.is_empty() {
        let said = work.said(book);
        told.push(Told { said, counts: Counts::Yes, lines: work.lines });
    }
    for Alike { tail, tags, lines } in alike {
        let said = [&w::hives(tags.len(), &joined(tags)), tail.as_str()].concat();
        told.push(Told { said, counts: Counts::Yes, lines });
    }
    told.extend(alone);
    told
}

/// Lines that say the same of several hives.
struct Alike<'a> {
    tail: String,
    tags: Vec<String>,
    lines: Vec<&'a EntryId>,
}

impl<'a> Alike<'a> {
    fn push(&mut self, tag: String, entry: &'a Entry) {
        self.tags.push(tag);
        self.lines.push(&entry.id);
    }
}

/// The trap work of a day on whole hives.
#[derive(Default)]
struct Work<'a> {
    checks: Vec<&'a Check>,
    /// Bulks of which the line for all traps of a hive is among them.
    whole: Vec<(&'a EntryId, &'a ThingId)>,
    lines: Vec<&'a EntryId>,
}

impl<'a> Work<'a> {
    /// Takes a line of work on all traps of a hive, or one that goes on with it: where kinds of trap are filled to
    /// different levels a piece of work is several lines.
    fn takes(&mut self, book: &'a Book, entry: &'a Entry, notes: bool) -> bool {
        let What::Check(check) = &entry.what else { return false };
        // Under whatever name it was written down.
        let hive = book.standing().kept(&check.hive);
        if check.traps.is_some() {
            let goes_on = entry.goes_on().is_some_and(|bulk| self.whole.contains(&(bulk, hive)));
            let same = |whole: &&&Check| book.standing().kept(&whole.hive) == hive;
            // A hive stands in the sum once, under what the line for all its traps says.
            let alike = self.checks.iter().rev().find(same).is_some_and(|whole| whole.did == check.did);
            if !goes_on || !alike {
                return false;
            }
        } else {
            // A note is told in its own words.
            if notes && check.note.is_some() {
                return false;
            }
            if let Some(bulk) = &entry.bulk {
                self.whole.push((bulk, hive));
            }
            self.checks.push(check);
        }
        self.lines.push(&entry.id);
        true
    }

    fn said(&self, book: &Book) -> String {
        let tag = |check: &Check| tag_of(book, &check.hive);
        let mut hives: Vec<&ThingId> = Vec::new();
        let mut dids: Vec<(Did, Vec<&ThingId>)> = Vec::new();
        let (mut found, mut left): (Vec<Share>, Vec<Share>) = (Vec::new(), Vec::new());
        let (mut few, mut many): (Vec<CountRange>, Vec<(String, CountRange)>) = (Vec::new(), Vec::new());
        for check in &self.checks {
            let hive = book.standing().kept(&check.hive);
            if !hives.contains(&hive) {
                hives.push(hive);
            }
            match dids.iter_mut().find(|(did, _)| *did == check.did) {
                Some((_, hives)) if hives.contains(&hive) => {}
                Some((_, hives)) => hives.push(hive),
                None => dids.push((check.did, vec![hive])),
            }
            if let Some(level) = check.before {
                found.push(level);
            }
            if let Some(level) = check.after {
                left.push(level);
            }
            match check.count {
                Some(count) if count.high().is_some_and(|high| high <= FEW) => few.push(count),
                Some(count) => many.push((tag(check), count)),
                None => {}
            }
        }
        let mut said = w::count(hives.len());
        sort_by(&mut dids, |a, b| b.1.len().cmp(&a.1.len()));
        for (at, (did, hives)) in dids.into_iter().enumerate() {
            let tags: Vec<String> = hives.into_iter().map(|hive| tag_of(book, hive)).collect();
            w::done(&mut said, at > 0, did, tags.len(), &joined(tags));
        }
        w::levels(&mut said, w::FOUND, &found);
        w::levels(&mut said, w::LEFT, &left);
        w::beetles(&mut said, &few, &many);
        said
    }
}

/// Beetles that are told together: up to as many, an exact number a hive says little.
const FEW: u32 = 5;

fn tag(book: &Book, entry: &Entry) -> String {
    entry.hive().map(|hive| tag_of(book, &hive)).unwrap_or_default()
}

/// The tag a hive carries now, or the whole name of one the book has no more.
fn tag_of(book: &Book, hive: &ThingId) -> String {
    match book.standing().hives.get(book.standing().kept(hive)) {
        Some(now) => words::isolated(&now.tag),
        None => words::hive_name(book, hive),
    }
}

/// Tags in their order, numbers that follow each other as a range: "1–3, 5, 24 nuc".
pub fn joined(tags: Vec<String>) -> String {
    let mut order: Vec<(u32, String)> = Vec::new();
    for tag in tags {
        let number = tag.parse().unwrap_or(u32::MAX);
        // "07" and "+7" are no numbers on a hive.
        order.push((if number.to_string() == tag { number } else { u32::MAX }, tag));
    }
    sort_by(&mut order, |a, b| a.0.cmp(&b.0));
    let mut said = String::new();
    let mut at = 0;
    while let Some((first, tag)) = order.get(at) {
        let mut last = at;
        while *first != u32::MAX
            && let Some((next, _)) = order.get(last + 1)
            && order.get(last).is_some_and(|(number, _)| number.checked_add(1) == Some(*next))
        {
            last += 1;
        }
        said.push_str(if at > 0 { ", " } else { "" });
        said.push_str(tag);
        if let Some((_, end)) = order.get(last).filter(|_| last > at) {
            said.push_str(if last == at + 1 { ", " } else { "–" });
            said.push_str(end);
        }
        at = last + 1;
    }
    said
}

#[cfg(test)]
#[path = "days_tests.rs"]
mod tests;
