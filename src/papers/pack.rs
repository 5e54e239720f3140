//! Some hives as one text, for another phone: a part of the log that stands by itself.
//!
//! A pack is a subset of the log, so taking it in is a set union like that of a backup, with the same caps and refusals.
//! It holds the chosen lines and what those need to stand: their yards and kinds of trap, all that was ever put on a hive
//! or taken off it, and the strikes and corrections of what is in it. A phone that has everything older then shows the
//! same hives as this one; a new phone needs everything for that.
//!
//! Notes, and what says where a yard is or how to reach somebody, go along only where the keeper chose so. Lines that are
//! nothing else stay behind whole; others lose it, which makes them less of the same entry and no clash
//! ([`crate::book::withheld`]).

use super::backup::{self, Backup, BackupError, Fields};
use crate::almanac::checksum;
use crate::almanac::day::{Day, Stamp};
use crate::almanac::json;
use crate::almanac::table::Table;
use crate::almanac::text::{Letters, key};
use crate::almanac::trap::TrapKind;
use crate::book::Book;
use crate::book::entry::{Entry, NewBox, What};
use crate::book::id::{EntryId, ThingId};
use crate::book::log::{Log, Union};
use crate::book::record::Blank;
use crate::book::standing::Standing;
use crate::book::twins::Twins;
use std::cell::Cell;

/// The name in the file. The version beside it is that of the entries: [`backup::VERSION`].
pub const FORMAT: &str = "beetle-almanac pack";

/// What to hand over.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Choice {
    /// Which hives.
    pub hives: Vec<ThingId>,
    /// The yard, where it is handed over as a whole: its own notes go along.
    pub yard: Option<ThingId>,
    /// Work written or done on this day or later; none for everything.
    pub since: Option<Day>,
    /// Notes go along.
    pub notes: bool,
}

/// A file that was opened: a backup or a pack.
#[derive(Clone, Debug, PartialEq)]
pub struct File {
    /// What is in it.
    pub backup: Backup,
    /// It is a pack, and whether notes came with it.
    pub pack: Option<bool>,
}

/// What taking a file in would change.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Preview {
    /// Lines.
    pub union: Union,
    /// Pairs of lines that may tell of one and the same work, and are not here yet.
    pub doubles: usize,
    /// Hives that come with a tag which another hive of the same yard, or of one of the same name, has here: the tag and
    /// the yard.
    pub twins: Vec<(String, String)>,
    /// Yards that come with a name which another yard has here.
    pub yards: Vec<String>,
}

/// The lines of `choice`, in the order in which they were written. The demonstration is never handed over.
pub fn pick(log: &Log, choice: &Choice) -> Vec<Entry> {
    let mut picking = Picking::new(log, choice);
    // Each look may bring what an earlier line needs; what is in stays in, so it comes to an end.
    while picking.look() {}
    let mut picked = Vec::new();
    for (entry, is_in) in picking.lines.iter().zip(&picking.is_in) {
        if *is_in {
            let entry = (*entry).clone();
            picked.push(if choice.notes { entry } else { entry.without_private() });
        }
    }
    picked
}

struct Picking<'a> {
    choice: &'a Choice,
    /// The chosen hives, and those that are one of them.
    hives: Vec<ThingId>,
    lines: Vec<&'a Entry>,
    /// Which of them stay behind whole.
    held: Vec<bool>,
    is_in: Vec<bool>,
    /// Yards, kinds and acts that lines in the pack speak of.
    needs: Table<ThingId, ()>,
    acts: Table<EntryId, ()>,
}

impl<'a> Picking<'a> {
    fn new(log: &'a Log, choice: &'a Choice) -> Picking<'a> {
        let lines: Vec<&Entry> = log.entries().filter(|entry| !entry.is_demo()).collect();
        let hives = with_twins(&choice.hives, &log.twins());
        let held = if choice.notes { Vec::new() } else { held(&lines) };
        let is_in = vec![false; lines.len()];
        let mut needs = Table::new();
        if let Some(yard) = &choice.yard {
            needs.insert(yard.clone(), ());
        }
        Picking { choice, hives, lines, held, is_in, needs, acts: Table::new() }
    }

    fn at(&self, id: &EntryId) -> Option<usize> {
        find(&self.lines, id)
    }

    fn has(&self, id: &EntryId) -> bool {
        self.at(id).is_some_and(|at| self.is_in.get(at) == Some(&true))
    }

    /// Goes through the lines once; whether more came in.
    fn look(&mut self) -> bool {
        // What the lines are about, the chosen hives or not: what strikes or corrects is about the same.
        let mut about: Table<&EntryId, ()> = Table::new();
        let mut came = false;
        for at in 0..self.lines.len() {
            let Some(entry) = self.lines.get(at).copied() else { break };
            let targets: &[EntryId] = match &entry.what {
                What::Struck { entries } => entries,
                _ => entry.replaces.as_slice(),
            };
            let of_chosen = self.concerns(entry) || targets.iter().any(|target| about.contains_key(target));
            // That another hive was a chosen one may be struck out by now: whoever still has it needs the strike.
            let said_same = matches!(&entry.what, What::HiveSame { is, .. } if self.hives.contains(is));
            if of_chosen || said_same {
                about.insert(&entry.id, ());
            }
            let wanted = of_chosen && (stays(&entry.what) || self.fresh(entry))
                || self.ground(entry)
                || targets.iter().any(|target| self.has(target));
            if wanted && self.is_in.get(at) == Some(&false) {
                came |= self.put(at);
            }
        }
        came
    }

    fn put(&mut self, at: usize) -> bool {
        let Some(entry) = self.lines.get(at).copied() else { return false };
        if self.held.get(at) == Some(&true) {
            return false;
        }
        let Some(is_in) = self.is_in.get_mut(at).filter(|is_in| !**is_in) else { return false };
        *is_in = true;
        self.need(entry);
        // A correction stands on what it corrects.
        if let Some(earlier) = entry.replaces.as_ref().and_then(|earlier| self.at(earlier)) {
            self.put(earlier);
        }
        true
    }

    /// Whether it is about one of the chosen hives.
    fn concerns(&self, entry: &Entry) -> bool {
        match &entry.what {
            What::Record(_) => self.hives.iter().any(|hive| entry.concerns(hive)),
            _ => entry.hive().is_some_and(|hive| self.hives.contains(&hive)),
        }
    }

    fn fresh(&self, entry: &Entry) -> bool {
        self.choice.since.is_none_or(|since| since <= entry.at.day() || since <= entry.day)
    }

    /// Whether it is a line of a yard or a kind that something in the pack stands on.
    fn ground(&self, entry: &Entry) -> bool {
        let needed = |thing: &ThingId| self.needs.contains_key(thing);
        match &entry.what {
            What::Yard { .. } => needed(&entry.id.thing(0)),
            What::YardChanged { yard, .. }
            | What::YardClosed { yard }
            | What::Season { yard, .. }
            | What::Order { yard, .. } => needed(yard),
            What::Kind(_) => needed(&entry.id.thing(0)) || entry.yard.as_ref().is_some_and(needed),
            What::KindChanged { kind, .. } => {
                needed(kind) || entry.bulk.as_ref().is_some_and(|act| self.acts.contains_key(act))
            }
            What::KindRetired { kind } => needed(kind),
            What::Note { hive: None, .. } => self.of_yard(entry),
            What::Record(record) if record.hives.is_empty() => self.of_yard(entry),
            _ => false,
        }
    }

    /// Whether it was written about the yard that goes along as a whole.
    fn of_yard(&self, entry: &Entry) -> bool {
        self.choice.yard.is_some() && entry.yard == self.choice.yard && self.fresh(entry)
    }

    /// Notes what `entry` speaks of.
    fn need(&mut self, entry: &Entry) {
        let needs = &mut self.needs;
        let mut need = |thing: &ThingId| _ = needs.insert(thing.clone(), ());
        let mut kinds = |boxes: &[NewBox]| {
            for trap in boxes.iter().flat_map(|part| &part.traps) {
                need(&trap.kind);
            }
        };
        match &entry.what {
            What::Hive { yard, boxes, .. } => {
                kinds(boxes);
                need(yard);
                if let Some(act) = &entry.bulk {
                    self.acts.insert(act.clone(), ());
                }
            }
            What::BoxesOn { boxes, .. } => kinds(boxes),
            What::TrapsOn { traps, .. } => {
                for placed in traps {
                    need(&placed.trap.kind);
                }
            }
            What::HiveMoved { to, .. } => need(to),
            What::Record(_) => {
                if let Some(yard) = &entry.yard {
                    need(yard);
                }
            }
            What::Kind(TrapKind { .. }) => need(&entry.id.thing(0)),
            What::KindChanged { kind, .. } => need(kind),
            _ => {}
        }
    }
}

fn find(lines: &[&Entry], id: &EntryId) -> Option<usize> {
    lines.binary_search_by(|entry| entry.id.cmp(id)).ok()
}

/// Which of `lines` stay behind whole where notes do. A correction of something that goes along goes along, bare if need
/// be: without it the words that it corrected would stand up again.
fn held(lines: &[&Entry]) -> Vec<bool> {
    let mut held: Vec<bool> = Vec::new();
    for entry in lines {
        let is_note = matches!(entry.what, What::Note { .. });
        let earlier = entry.replaces.as_ref().and_then(|earlier| held.get(find(lines, earlier)?));
        held.push(is_note || is_words(entry) && earlier != Some(&false));
    }
    held
}

/// Whether nothing is left of a line without what is withheld. Rain is told by its day alone.
fn is_words(entry: &Entry) -> bool {
    match &entry.what {
        What::Record(record) => {
            let mut filled = record.filled().peekable();
            record.blank != Blank::Rain && filled.peek().is_some() && filled.all(|(field, _)| field.private)
        }
        _ => false,
    }
}

/// `hives`, and those that are one of them by what the book says now. What was said and struck out since brings no hive
/// along that nobody chose.
fn with_twins(hives: &[ThingId], twins: &Twins) -> Vec<ThingId> {
    let mut all = hives.to_vec();
    for (hive, is) in twins {
        if hives.contains(is) {
            all.push(hive.clone());
        }
    }
    all
}

/// Whether a line about a hive says what the hive is and what is on it, for as long as it stands. Without it no later line
/// has anything to stand on; work, skips and words come and go.
fn stays(what: &What) -> bool {
    !matches!(
        what,
        What::Check(_) | What::Skip { .. } | What::Note { .. } | What::Record(_) | What::Struck { .. }
    )
}

/// Writes these entries, `with` or without their notes.
pub fn write(entries: &[Entry], with: bool, made: Stamp, by: Option<&str>) -> String {
    let own: Vec<&Entry> = entries.iter().collect();
    let list = backup::list(&own);
    let mut out = backup::head(FORMAT, &own, made, by, list.len());
    let notes = if with { WITH } else { WITHHELD };
    let sum = checksum::of(&[&json::to_text(&made), by.unwrap_or_default(), notes, &list]);
    let mut field = |name: &str, text: &str| {
        out.push_str(name);
        json::write_text(text, &mut out);
    };
    field(",\n  \"notes\": ", notes);
    field(",\n  \"checksum\": ", &sum);
    backup::finish(out, &list)
}

const WITH: &str = "with";
const WITHHELD: &str = "withheld";

/// Opens a pack or a backup.
///
/// # Errors
/// [`BackupError`]; whatever the bytes are, this returns.
pub fn open(text: &str) -> Result<File, BackupError> {
    let pack = Cell::new(None);
    let backup = backup::open_as(text, &[FORMAT, backup::FORMAT], &|format, file, raw| {
        if format != FORMAT {
            return backup::own_fields(file, raw);
        }
        pack.set(Some(notes(file, raw)?));
        Some(2)
    })?;
    Ok(File { backup, pack: pack.get() })
}

/// Whether the notes came with a pack; none when it is not as it was written.
fn notes(file: &Fields<'_>, raw: &str) -> Option<bool> {
    let notes: String = file.get("notes")?;
    let made: Stamp = file.get("made")?;
    let by: Option<String> = file.raw("by").map_or(Some(None), |by| json::from_text(by).map(Some))?;
    let sum = checksum::of(&[&json::to_text(&made), &by.unwrap_or_default(), &notes, raw]);
    let known = notes == WITH || notes == WITHHELD;
    (known && file.get::<String>("checksum")? == sum).then_some(notes == WITH)
}

impl File {
    /// Whether it can stand for a backup: with its notes, and not what was read of a damaged one.
    pub fn is_backup(&self) -> bool {
        self.pack != Some(false) && self.backup.by.as_deref() != Some(super::recover::BY)
    }

    /// What taking it in would change. Folds the whole book on trial, which takes as long as opening it.
    pub fn preview(&self, book: &Book, letters: &impl Letters) -> Preview {
        let union = self.backup.preview(book);
        if union.new == 0 {
            return Preview { union, ..Preview::default() };
        }
        let then = book.with(&self.backup.entries);
        let (now, then) = (book.standing(), then.standing());
        let (mut twins, mut yards) = (Vec::new(), Vec::new());
        let (yard_keys, hive_keys) = keys(then, letters);
        for id in new_ones(&yard_keys, &|id| now.yards.contains_key(id)) {
            yards.extend(then.yards.get(id).map(|yard| yard.name.clone()));
        }
        for id in new_ones(&hive_keys, &|id| now.hives.contains_key(id)) {
            if let Some(hive) = then.hives.get(id) {
                let yard = then.yards.get(&hive.yard).map(|yard| yard.name.clone());
                twins.push((hive.tag.clone(), yard.unwrap_or_default()));
            }
        }
        let doubles = doubles(then).saturating_sub(doubles(now));
        Preview { union, doubles, twins, yards }
    }
}

fn doubles(standing: &Standing) -> usize {
    standing.hives.values().map(|hive| hive.doubles.len()).sum()
}

/// Names as they are compared.
type Keys<'a> = Vec<(&'a ThingId, String)>;

/// Those of the yards in use, and of the living hives with that of their yard.
fn keys<'a>(standing: &'a Standing, letters: &impl Letters) -> (Keys<'a>, Keys<'a>) {
    let mut yards = Vec::new();
    for (id, yard) in standing.open_yards() {
        yards.push((id, key(&yard.name, letters)));
    }
    let mut hives = Vec::new();
    for (id, hive) in standing.hives.iter().filter(|(_, hive)| hive.alive()) {
        if let Some((_, yard)) = yards.iter().find(|(yard, _)| **yard == hive.yard) {
            // No name has a line break in it.
            hives.push((id, [yard, "\n", &key(&hive.tag, letters)].concat()));
        }
    }
    (yards, hives)
}

/// Those that are not here yet and have the name of one that is.
fn new_ones<'a>(keys: &Keys<'a>, here: &dyn Fn(&ThingId) -> bool) -> Vec<&'a ThingId> {
    let mut new = Vec::new();
    for (id, name) in keys {
        if !here(id) && keys.iter().any(|(other, known)| known == name && here(other)) {
            new.push(*id);
        }
    }
    new
}
