//! The book as tables, one for each kind of record.
//!
//! What stands is told as it stands; what happened, line by line. Lines that are struck out or corrected are left out,
//! so that a sum over a column is right: the backup file and the inspector's pages have them.

mod beside;
mod columns;

use super::table::{Style, Table};
use crate::almanac::day::Day;
use crate::almanac::json::{self, Json};
use crate::almanac::quantity::{Decimal, Share};
use crate::almanac::stack::BoxDepth;
use crate::almanac::tally::CountRange;
use crate::almanac::trap::TrapForm;
use crate::book::Book;
use crate::book::entry::{Entry, What};
use crate::book::id::{EntryId, ThingId};
use crate::book::record::Blank;
use crate::book::standing::{HiveNow, Standing, Trouble};

/// One of the tables.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Records {
    /// Yards.
    Yards,
    /// Hives, ended ones included.
    Hives,
    /// Boxes on hives.
    Boxes,
    /// Traps in boxes.
    Traps,
    /// Kinds of trap.
    Kinds,
    /// Trap work.
    Checks,
    /// Everything else that happened, the keeper's settings left out; records beside the traps in a sentence each.
    Events,
    /// Records of one kind, field by field.
    Of(Blank),
}

/// In the place of a value that nobody read or counted. An empty cell says only that there is none.
const NOT_LOOKED: &str = "not looked";
/// Unit of every level.
const LEVEL_UNIT: &str = "% of depth";

impl Records {
    /// Every table but those of records beside the traps.
    pub const FIRST: [Records; 7] = [
        Records::Yards,
        Records::Hives,
        Records::Boxes,
        Records::Traps,
        Records::Kinds,
        Records::Checks,
        Records::Events,
    ];

    /// Every table, those of records only where `book` has one of the kind.
    pub fn all(book: &Book) -> Vec<Records> {
        let mut all = Records::FIRST.to_vec();
        for blank in Blank::ALL {
            if book.standing().records.values().any(|now| now.record.blank == blank) {
                all.push(Records::Of(blank));
            }
        }
        all
    }

    /// Its name in the file's name.
    pub fn name(self) -> &'static str {
        match self {
            Records::Yards => "yards",
            Records::Hives => "hives",
            Records::Boxes => "boxes",
            Records::Traps => "traps",
            Records::Kinds => "trap-kinds",
            Records::Checks => "trap-work",
            Records::Events => "events",
            Records::Of(blank) => blank.name(),
        }
    }

    /// The table. `words` tells a line of the book as a sentence. The demonstration is left out as soon as there is a
    /// yard of the keeper's own.
    pub fn table(self, book: &Book, style: Style, words: &dyn Fn(&Entry) -> String) -> String {
        let own = book.standing().yards.keys().any(|yard| !yard.is_demo());
        let mut filling =
            Filling { table: Table::new(&self.columns(), style), standing: book.standing(), own };
        match self {
            Records::Yards => filling.yards(),
            Records::Hives | Records::Boxes | Records::Traps => filling.hives(self),
            Records::Kinds => filling.kinds(),
            Records::Checks | Records::Events => {
                for (root, entry) in book.log().in_effect() {
                    if !(own && (entry.is_demo() || root.is_demo())) {
                        filling.line(self, root, entry, words);
                    }
                }
            }
            Records::Of(blank) => {
                for (root, entry) in book.log().in_effect() {
                    if let What::Record(record) = &entry.what
                        && record.blank == blank
                        && !(own && (entry.is_demo() || root.is_demo()))
                    {
                        filling.record(entry, record);
                    }
                }
            }
        }
        filling.table.text()
    }
}

struct Filling<'a> {
    table: Table,
    standing: &'a Standing,
    /// There is a yard of the keeper's own.
    own: bool,
}

impl Filling<'_> {
    fn put(&mut self, text: &str) {
        self.table.put(text);
    }

    fn number(&mut self, number: usize) {
        self.put(&number.to_string());
    }

    fn day(&mut self, day: Option<Day>) {
        self.put(&day.map(|day| day.to_string()).unwrap_or_default());
    }

    fn id(&mut self, id: Option<&ThingId>) {
        self.put(&id.map(ToString::to_string).unwrap_or_default());
    }

    fn count(&mut self, count: Option<u32>) {
        self.put(&count.map(|count| count.to_string()).unwrap_or_default());
    }

    fn left_out(&self, id: &ThingId) -> bool {
        self.own && id.is_demo()
    }

    /// A number as it was typed, and its unit.
    fn measure(&mut self, number: Decimal, unit: &impl Json) {
        self.put(&number.to_string());
        self.put(&code(unit));
    }

    fn no_measure(&mut self) {
        self.put("");
        self.put("");
    }

    fn yards(&mut self) {
        let standing = self.standing;
        for (id, yard) in &standing.yards {
            if self.left_out(id) {
                continue;
            }
            self.id(Some(id));
            self.put(&yard.name);
            self.put(&yard.zone);
            self.day(Some(yard.since));
            self.day(yard.paused);
            self.day(yard.closed);
            self.number(standing.hives_of(id, true).count());
        }
    }

    /// Yard by yard in walking order.
    fn hives(&mut self, which: Records) {
        let standing = self.standing;
        for (yard, now) in &standing.yards {
            if self.left_out(yard) {
                continue;
            }
            for (place, (id, hive)) in standing.hives_of(yard, false).enumerate() {
                if which == Records::Hives {
                    self.hive(id, hive, &now.name, place + 1);
                } else {
                    self.boxes(which, id, hive);
                }
            }
        }
    }

    fn hive(&mut self, id: &ThingId, hive: &HiveNow, yard: &str, place: usize) {
        self.id(Some(id));
        self.id(Some(&hive.yard));
        self.put(yard);
        self.number(place);
        self.put(&hive.tag);
        self.put(&hive.was.join("; "));
        self.put(&code(&hive.size));
        self.day(Some(hive.since));
        self.day(hive.ended.as_ref().map(|(_, day)| *day));
        self.put(&hive.ended.as_ref().map(|(how, _)| name(how)).unwrap_or_default());
        self.number(hive.boxes.len());
        self.number(hive.traps().count());
    }

    fn boxes(&mut self, which: Records, id: &ThingId, hive: &HiveNow) {
        for (level, part) in hive.boxes.iter().enumerate() {
            if which == Records::Boxes {
                self.id(Some(&part.id));
                self.id(Some(id));
                self.put(&hive.tag);
                self.number(level + 1);
                match part.depth {
                    BoxDepth::Own(depth) => self.measure(depth.number(), &depth.unit()),
                    named => {
                        self.put(&code(&named));
                        self.put("");
                    }
                }
                self.day(Some(part.since));
                self.number(usize::from(part.wants));
                self.number(part.traps.len());
                continue;
            }
            for trap in &part.traps {
                self.id(Some(&trap.id));
                self.id(Some(&part.id));
                self.id(Some(id));
                self.put(&hive.tag);
                self.id(Some(&trap.kind));
                self.put(self.standing.kinds.get(&trap.kind).map_or("", |now| &now.kind.name));
                self.put(&spot(&json::to_text(&trap.spot)));
                self.day(Some(trap.placed));
                self.day(Some(trap.service));
                let read = trap.level.map_or_else(|| NOT_LOOKED.to_owned(), |(day, _)| day.to_string());
                self.put(&read);
                self.level(trap.level.map(|(_, level)| level));
                self.put(LEVEL_UNIT);
                self.put(trap.trouble.map_or("", |trouble| match trouble {
                    Trouble::Spilled => "spilled",
                    Trouble::Missing => "missing",
                    Trouble::GluedShut => "glued_shut",
                }));
                self.day(trap.trouble_since);
            }
        }
    }

    fn level(&mut self, level: Option<Share>) {
        self.put(&level.map(|level| level.percent().to_string()).unwrap_or_default());
    }

    fn kinds(&mut self) {
        let standing = self.standing;
        for (id, now) in &standing.kinds {
            if self.left_out(id) {
                continue;
            }
            let kind = &now.kind;
            self.id(Some(id));
            self.put(&kind.name);
            self.put(match kind.form {
                TrapForm::BetweenFrame => "between_frame",
                TrapForm::Lidded { .. } => "lidded",
                TrapForm::FloorLure => "floor_lure",
            });
            self.put(yes_no(kind.reusable));
            self.put(yes_no(!now.retired));
            self.number(usize::from(kind.max_days));
            self.level(Some(kind.fill));
            self.put(LEVEL_UNIT);
            match kind.capacity {
                Some(volume) => self.measure(volume.number(), &volume.unit()),
                None => self.no_measure(),
            }
            for size in [kind.inner, kind.outer] {
                for side in [size.length, size.width, size.depth] {
                    match side {
                        Some(side) => self.measure(side.number(), &side.unit()),
                        None => self.no_measure(),
                    }
                }
            }
        }
    }

    /// The cells that every line of the book begins with.
    fn begin(&mut self, entry: &Entry) {
        self.put(&entry.id.to_string());
        self.day(Some(entry.day));
        self.put(&entry.at.to_string());
        self.put(entry.by.as_deref().unwrap_or_default());
        self.id(entry.yard.as_ref());
        let yard = entry.yard.as_ref().and_then(|yard| self.standing.yards.get(yard));
        self.put(yard.map_or("", |yard| &yard.name));
    }

    fn line(&mut self, which: Records, root: &EntryId, entry: &Entry, words: &dyn Fn(&Entry) -> String) {
        let check = match &entry.what {
            What::Keeper(_) | What::Struck { .. } => return,
            What::Check(check) => Some(check),
            _ => None,
        };
        if check.is_some() != (which == Records::Checks) {
            return;
        }
        let standing = self.standing;
        let hive = match &entry.what {
            // A start that was corrected keeps the name under which the hive is known.
            What::Hive { .. } => Some(root.thing(0)),
            _ => entry.hive().map(|hive| standing.kept(&hive).clone()),
        };
        self.begin(entry);
        self.id(hive.as_ref());
        self.put(hive.and_then(|hive| standing.hives.get(&hive)).map_or("", |hive| &hive.tag));
        let Some(check) = check else {
            self.put(&name(&entry.what));
            self.put(&words(entry));
            self.put(&json::to_text(&entry.what));
            return;
        };
        let traps = check.traps.as_ref().map_or_else(|| "all".to_owned(), |traps| traps.len().to_string());
        self.put(&traps);
        self.put(&code(&check.did));
        self.level(check.before);
        self.put(if check.before.is_some() { "read" } else { NOT_LOOKED });
        self.level(check.after);
        self.put(LEVEL_UNIT);
        self.count(check.count.map(CountRange::low));
        self.count(check.count.and_then(CountRange::high));
        self.put(if check.count.is_some() { "counted" } else { NOT_LOOKED });
        self.put(check.note.as_deref().unwrap_or_default());
    }
}

fn yes_no(yes: bool) -> &'static str {
    if yes { "yes" } else { "no" }
}

/// The word a value is kept as in the book.
fn code(value: &impl Json) -> String {
    json::to_text(value).trim_matches('"').to_owned()
}

/// The name a value of several fields is kept under: `"dead"` and `{"joined":…}` are "dead" and "joined".
fn name(value: &impl Json) -> String {
    json::to_text(value).split('"').nth(1).unwrap_or_default().to_owned()
}

/// `{"corner":"fl"}` as "corner fl", `{"between":3}` as "between 3".
fn spot(json: &str) -> String {
    let plain = json.replace(':', " ");
    plain.chars().filter(|c| !matches!(c, '{' | '}' | '"')).collect()
}
