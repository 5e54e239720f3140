//! A table that somebody kept elsewhere, taken into the book in one act.

use super::yard::MOST_HIVES;
use super::{Draft, KindChoice, Pen, Refusal};
use crate::almanac::day::Day;
use crate::almanac::order::sort_by;
use crate::almanac::quantity::Share;
use crate::almanac::stack::{self, BoxDepth, HiveSize};
use crate::almanac::tally::CountRange;
use crate::almanac::text::{self, Letters};
use crate::book::Book;
use crate::book::entry::{Check, Did, Entry, NewBox, NewTrap, What};
use crate::book::id::{EntryId, ThingId};
use crate::book::standing::HiveNow;

/// A row of a table: a hive, and what was done at it where it tells of a visit.
#[derive(Clone, Debug, PartialEq)]
pub struct TableLine {
    /// Number of the row.
    pub row: usize,
    /// Name of the yard.
    pub yard: String,
    /// What is written on the hive.
    pub tag: String,
    /// Full hive or nuc, where it is told.
    pub size: Option<HiveSize>,
    /// Traps in each box, from the floor up; none where the table tells nothing of boxes.
    pub boxes: Option<Vec<u8>>,
    /// First day in the book, where it is told.
    pub since: Option<Day>,
    /// The visit.
    pub work: Option<TableWork>,
}

/// What was done on a day.
#[derive(Clone, Debug, PartialEq)]
pub struct TableWork {
    /// The day.
    pub day: Day,
    /// What was done, to all traps.
    pub did: Did,
    /// Level found.
    pub before: Option<Share>,
    /// Level left.
    pub after: Option<Share>,
    /// Beetles.
    pub count: Option<CountRange>,
    /// The keeper's words.
    pub note: Option<String>,
}

/// What the table does not say, and the keeper does.
#[derive(Clone, Debug, PartialEq)]
pub struct TableTerms {
    /// The kind of trap that hangs in hives the book does not know.
    pub kind: KindChoice,
    /// Boxes of a hive of which nothing is told, each with its traps.
    pub boxes: Vec<u8>,
    /// A hive of the book stood there already on the day of a visit: its first day is moved.
    pub earlier: bool,
    /// The zone of yards the book does not know.
    pub zone: String,
    /// Today.
    pub today: Day,
}

/// What taking a table in comes to.
#[derive(Clone, Debug, PartialEq)]
pub struct TableTaken {
    /// The entries: one bulk.
    pub entries: Vec<Entry>,
    /// Yards that are new.
    pub yards: usize,
    /// Hives that are new.
    pub hives: usize,
    /// Visits that are new.
    pub visits: usize,
    /// Rows that bring nothing the book has not.
    pub same: usize,
    /// Hives whose first day is moved.
    pub moved: usize,
    /// Rows the book refuses, in their order.
    pub refused: Vec<(usize, Refusal)>,
}

/// A hive that rows speak of.
struct Meant<'a> {
    yard: usize,
    tag: &'a str,
    key: String,
    known: Option<&'a ThingId>,
    size: Option<HiveSize>,
    boxes: Option<&'a [u8]>,
    since: Option<Day>,
    works: Vec<&'a TableWork>,
}

/// A yard that rows speak of.
struct Place<'a> {
    name: &'a str,
    key: String,
    known: Option<&'a ThingId>,
    /// Its hives, ended ones included, by what their tags are compared by.
    hives: Vec<(String, &'a ThingId)>,
}

impl Book {
    /// What taking `lines` in would come to. Hives go by yard and tag as people read them, work by hive, day and all it
    /// says; what the book holds already in the same words is not written again. A new hive begins on its earliest day.
    ///
    /// # Errors
    /// [`Refusal::TooManyHives`], [`Refusal::NotThereYet`] when the book would miss something the table speaks of.
    pub fn take_in_table(
        &self,
        pen: &Pen,
        lines: &[TableLine],
        terms: &TableTerms,
        letters: &impl Letters,
    ) -> Result<TableTaken, Refusal> {
        let mut known = self.log().in_effect();
        // In the order of their days already.
        known.retain(|(_, entry)| matches!(entry.what, What::Check(_)));
        let mut reading = Reading {
            book: self,
            terms,
            known,
            places: Vec::new(),
            hives: Vec::new(),
            refused: Vec::new(),
            same: 0,
        };
        for line in lines {
            let (yard, tag) = (text::key(&line.yard, letters), text::key(&line.tag, letters));
            reading.line(line, yard, tag, &|text| text::key(text, letters));
        }
        reading.write(pen)
    }
}

struct Reading<'a> {
    book: &'a Book,
    terms: &'a TableTerms,
    /// Trap work that counts, by its days.
    known: Vec<(&'a EntryId, &'a Entry)>,
    places: Vec<Place<'a>>,
    hives: Vec<Meant<'a>>,
    refused: Vec<(usize, Refusal)>,
    same: usize,
}

impl<'a> Reading<'a> {
    fn line(&mut self, line: &'a TableLine, yard: String, tag: String, key: &dyn Fn(&str) -> String) {
        let standing = self.book.standing();
        let at = self.places.iter().position(|place| place.key == yard).unwrap_or_else(|| {
            let mut open = standing.open_yards();
            let known = open.find(|(id, now)| !id.is_demo() && key(&now.name) == yard);
            let known = known.map(|(id, _)| id);
            let mut hives = Vec::new();
            if let Some(yard) = known {
                for (id, now) in standing.hives_of(yard, false) {
                    hives.push((key(&now.tag), id));
                }
            }
            self.places.push(Place { name: &line.yard, key: yard, known, hives });
            self.places.len() - 1
        });
        let Some(place) = self.places.get(at) else { return };
        let same = |hive: &Meant<'_>| hive.yard == at && hive.key == tag;
        let hive = self.hives.iter().position(same).unwrap_or_else(|| {
            let mut known: Option<&ThingId> = None;
            for (own, id) in &place.hives {
                // The living one before an earlier one of the same tag.
                let alive = standing.hives.get(*id).is_some_and(HiveNow::alive);
                if *own == tag && (known.is_none() || alive) {
                    known = Some(id);
                }
            }
            self.hives.push(Meant {
                yard: at,
                tag: &line.tag,
                key: tag,
                known,
                size: None,
                boxes: None,
                since: None,
                works: Vec::new(),
            });
            self.hives.len() - 1
        });
        let Some(hive) = self.hives.get_mut(hive) else { return };
        let first = hive.known.is_none()
            && hive.size.is_none()
            && hive.boxes.is_none()
            && hive.works.is_empty()
            && hive.since.is_none();
        hive.size = hive.size.or(line.size);
        hive.boxes = hive.boxes.or(line.boxes.as_deref());
        if line.since.is_some_and(|since| since > self.terms.today) {
            self.refused.push((line.row, Refusal::Future { today: self.terms.today }));
            return;
        }
        hive.since = earlier(hive.since, line.since);
        let Some(work) = &line.work else {
            // Told again, or in the book already.
            self.same += usize::from(!first);
            return;
        };
        match refused(self.book, self.terms, hive, work) {
            Some(refusal) => self.refused.push((line.row, refusal)),
            None if hive.works.contains(&work) || known_work(self.book, &self.known, hive, work) => {
                self.same += 1;
            }
            None => hive.works.push(work),
        }
    }

    fn write(self, pen: &Pen) -> Result<TableTaken, Refusal> {
        let (book, terms) = (self.book, self.terms);
        let mut draft = Draft::new(book, pen);
        draft.bulk();
        let mut first = terms.today;
        for hive in &self.hives {
            first = first.min(begins(hive, terms.today));
        }
        let mut yards = Vec::new();
        let mut new_yards = 0;
        for place in &self.places {
            let yard = if let Some(known) = place.known {
                known.clone()
            } else {
                new_yards += 1;
                let what = What::Yard { name: place.name.to_owned(), zone: terms.zone.clone() };
                // Its page bears its own name.
                let name = EntryId::new(pen.writer.clone(), draft.next);
                let yard = name.map_err(|_| Refusal::Unknown)?.thing(0);
                draft.push(first, Some(&yard), what)?;
                yard
            };
            yards.push(yard);
        }
        let mut kind = None;
        let (mut new_hives, mut visits, mut moved) = (0, 0, 0);
        let mut begun_earlier = Vec::new();
        let mut works: Vec<(&TableWork, &ThingId, ThingId)> = Vec::new();
        for (at, yard) in yards.iter().enumerate() {
            let mut count = book.standing().hives_of(yard, true).count();
            for hive in self.hives.iter().filter(|hive| hive.yard == at) {
                let id = if let Some(known) = hive.known {
                    let now = book.standing().hives.get(known).ok_or(Refusal::Unknown)?;
                    let first = begins(hive, now.since);
                    if terms.earlier && first < now.since {
                        begun_earlier.push((known, first));
                    }
                    known.clone()
                } else {
                    count += 1;
                    if count > MOST_HIVES {
                        return Err(Refusal::TooManyHives { most: MOST_HIVES });
                    }
                    new_hives += 1;
                    hang(&mut draft, terms, hive, yard, first, &mut kind)?
                };
                for work in &hive.works {
                    works.push((work, yard, id.clone()));
                }
            }
        }
        sort_by(&mut works, |a, b| a.0.day.cmp(&b.0.day));
        for (work, yard, hive) in works {
            visits += 1;
            draft.push(work.day, Some(yard), What::Check(checked(hive, work)))?;
        }
        for (hive, day) in begun_earlier {
            moved += 1;
            let in_effect = book.log().in_effect();
            let line = in_effect.into_iter().find(|(root, _)| *root == hive.entry());
            let (_, line) = line.ok_or(Refusal::Unknown)?;
            draft.correct(line, day, line.what.clone())?;
        }
        let entries = draft.done();
        let entries = if entries.is_empty() { entries } else { book.holding(entries)? };
        Ok(TableTaken {
            entries,
            yards: new_yards,
            hives: new_hives,
            visits,
            same: self.same,
            moved,
            refused: self.refused,
        })
    }
}

/// A hive the book does not know, with boxes and traps. The first one brings the kind of trap where that is new.
fn hang(
    draft: &mut Draft<'_>,
    terms: &TableTerms,
    hive: &Meant<'_>,
    yard: &ThingId,
    first: Day,
    kind: &mut Option<ThingId>,
) -> Result<ThingId, Refusal> {
    let size = hive.size.unwrap_or_default();
    let wants = hive.boxes.unwrap_or(&terms.boxes);
    let kind = match (&kind, &terms.kind) {
        (Some(kind), _) | (None, KindChoice::Known(kind)) => kind.clone(),
        (None, KindChoice::New(new)) => {
            kind.insert(draft.push(first, Some(yard), What::Kind(new.clone()))?.thing(0)).clone()
        }
    };
    let mut boxes = Vec::new();
    for (at, (wants, spots)) in wants.iter().zip(stack::stack_spots(wants, size)).enumerate() {
        let mut traps = Vec::new();
        for spot in spots {
            // How full they were nobody has written down.
            traps.push(NewTrap { spot, kind: kind.clone(), level: None });
        }
        let depth = if at == 0 { BoxDepth::Deep } else { BoxDepth::Medium };
        boxes.push(NewBox { depth, wants: *wants, traps });
    }
    let what = What::Hive { yard: yard.clone(), tag: hive.tag.to_owned(), size, boxes };
    Ok(draft.push(begins(hive, terms.today), Some(yard), what)?.thing(0))
}

fn checked(hive: ThingId, work: &TableWork) -> Check {
    Check {
        hive,
        traps: None,
        did: work.did,
        before: work.before,
        after: work.after,
        count: work.count,
        note: work.note.clone(),
    }
}

/// The first day the table tells of a hive, or `otherwise`.
fn begins(hive: &Meant<'_>, otherwise: Day) -> Day {
    let visit = hive.works.iter().map(|work| work.day).min();
    earlier(hive.since, visit).unwrap_or(otherwise)
}

fn earlier(one: Option<Day>, other: Option<Day>) -> Option<Day> {
    match (one, other) {
        (Some(one), Some(other)) => Some(one.min(other)),
        (one, other) => one.or(other),
    }
}

/// Why `work` cannot be written at that hive.
fn refused(book: &Book, terms: &TableTerms, hive: &Meant<'_>, work: &TableWork) -> Option<Refusal> {
    if work.day > terms.today {
        return Some(Refusal::Future { today: terms.today });
    }
    let Some(id) = hive.known else {
        let traps: u32 = hive.boxes.unwrap_or(&terms.boxes).iter().map(|wants| u32::from(*wants)).sum();
        return (traps == 0 && work.did != Did::AsFound).then_some(Refusal::NoTraps { wanting: 0 });
    };
    let now = book.standing().hives.get(id)?;
    if let Some((how, on)) = now.ended.as_ref().filter(|(_, on)| *on <= work.day) {
        return Some(Refusal::Ended { how: how.clone(), on: *on });
    }
    if work.day < now.since && !terms.earlier {
        return Some(Refusal::BeforeHive { since: now.since });
    }
    let bare = work.did != Did::AsFound && now.traps().next().is_none() && book.bare_on(id, now, work.day);
    bare.then(|| Refusal::NoTraps { wanting: now.wanting() })
}

/// Whether one of the lines `known` says of that hive and day just what `work` says.
fn known_work(book: &Book, known: &[(&EntryId, &Entry)], hive: &Meant<'_>, work: &TableWork) -> bool {
    let Some(id) = hive.known else { return false };
    let from = known.partition_point(|(_, entry)| entry.day < work.day);
    let mut check = checked(id.clone(), work);
    for (_, entry) in known.get(from..).unwrap_or_default() {
        if entry.day != work.day {
            break;
        }
        if let What::Check(known) = &entry.what
            && book.standing().kept(&known.hive) == id
        {
            // What was written under another name of the hive is the same work.
            check.hive.clone_from(&known.hive);
            if *known == check {
                return true;
            }
        }
    }
    false
}
