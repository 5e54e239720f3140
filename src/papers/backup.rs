//! The whole book as one text file, and back.
//!
//! The file is JSON with one entry a line, so that a person can still read it when no program can. It carries its
//! format's name and version, counts, and a checksum of the entries exactly as they are written in it.

use crate::almanac::checksum;
use crate::almanac::day::{Day, Stamp};
use crate::almanac::json::{self, Json, json_object};
use crate::almanac::table::Table;
use crate::book::Book;
use crate::book::entry::{Entry, What};
use crate::book::log::{Log, Union};

/// The name in the file.
pub const FORMAT: &str = "beetle-almanac backup";
/// The newest version this program reads and writes. A file has the lowest version that can say what it says, so that an
/// older page reads what it can: 1, 2 with records ([`What::Record`]), or 3 with what came to them since.
pub const VERSION: u32 = 4;
/// Largest file that is opened, in bytes: over twenty times what ten seasons of a hundred hives take.
pub const MOST_BYTES: usize = 64 * 1024 * 1024;

const ABOUT: &str = "A keeper's book of hives and beetle-trap work. Each entry is one thing that happened: 'day' is the \
civil date in the yard, 'at' the moment it was written down, 'what' what was done. Levels are percent of the trap's \
depth. Entries named in a 'struck' entry no longer count; an entry with 'replaces' stands in for the one it names.";

/// How much a file says it holds.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Counts {
    /// Entries, struck ones included.
    pub entries: usize,
    /// Yards ever opened.
    pub yards: usize,
    /// Hives ever kept.
    pub hives: usize,
    /// Days with an entry.
    pub days: usize,
}

json_object!(Counts { entries, yards, hives, days });

impl Counts {
    fn of(entries: &[&Entry]) -> Counts {
        let brings = |pick: fn(&What) -> bool| entries.iter().filter(|entry| pick(&entry.what)).count();
        Counts {
            entries: entries.len(),
            yards: brings(|what| matches!(what, What::Yard { .. })),
            hives: brings(|what| matches!(what, What::Hive { .. })),
            days: entries.iter().map(|entry| (entry.day, ())).collect::<Table<Day, ()>>().len(),
        }
    }
}

/// A file that was opened and found whole.
#[derive(Clone, Debug, PartialEq)]
pub struct Backup {
    /// When it was made, by the clock of the phone that made it.
    pub made: Stamp,
    /// That phone's label.
    pub by: Option<String>,
    /// What it holds.
    pub counts: Counts,
    /// Everything in it.
    pub entries: Vec<Entry>,
}

/// What a file turned out to be instead of a backup.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Looks {
    /// Nothing in it.
    Empty,
    /// A picture.
    Picture,
    /// A PDF document.
    Document,
    /// A table with columns.
    Table,
    /// JSON of another program.
    OtherJson,
    /// Nothing this program knows.
    Unknown,
}

/// Why a file cannot be taken in. In every case nothing has changed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum BackupError {
    /// Larger than [`MOST_BYTES`].
    TooLarge,
    /// Not a backup of this program.
    NotABackup(Looks),
    /// Written by a newer version of this page.
    Newer {
        /// Its format version.
        found: u32,
    },
    /// A backup that was cut off or changed since it was made.
    Damaged,
}

/// Writes the whole book, the demonstration left out.
pub fn write(log: &Log, made: Stamp, by: Option<&str>) -> String {
    let own: Vec<&Entry> = log.entries().filter(|entry| !entry.is_demo()).collect();
    let entries = list(&own);
    let sum = checksum::of(&[&entries]);
    let mut out = head(FORMAT, &own, made, by, entries.len());
    let mut field = |name: &str, text: &str| {
        out.push_str(name);
        json::write_text(text, &mut out);
    };
    field(",\n  \"checksum\": ", &sum);
    field(",\n  \"about\": ", ABOUT);
    finish(out, &entries)
}

/// The entries as they lie in a file, one a line.
pub(super) fn list(own: &[&Entry]) -> String {
    let mut entries = "[".to_owned();
    for (index, entry) in own.iter().enumerate() {
        entries.push_str(if index == 0 { "\n" } else { ",\n" });
        entry.write(&mut entries);
    }
    entries.push_str(if own.is_empty() { "]" } else { "\n]" });
    entries
}

/// The head of a file of `format`, up to its counts.
pub(super) fn head(format: &str, own: &[&Entry], made: Stamp, by: Option<&str>, room: usize) -> String {
    let counts = Counts::of(own);
    let mut out = String::with_capacity(room + 1024);
    let mut line = |before: &str, value: &dyn Fn(&mut String)| {
        out.push_str(before);
        value(&mut out);
    };
    line("{\n  \"format\": ", &|out| json::write_text(format, out));
    line(",\n  \"version\": ", &|out| version(own).write(out));
    line(",\n  \"made\": ", &|out| made.write(out));
    if let Some(by) = by {
        line(",\n  \"by\": ", &|out| json::write_text(by, out));
    }
    line(",\n  \"counts\": {\n    \"entries\": ", &|out| counts.entries.write(out));
    line(",\n    \"yards\": ", &|out| counts.yards.write(out));
    line(",\n    \"hives\": ", &|out| counts.hives.write(out));
    line(",\n    \"days\": ", &|out| counts.days.write(out));
    out.push_str("\n  }");
    out
}

/// The end of a file.
pub(super) fn finish(mut out: String, entries: &str) -> String {
    out.push_str(",\n  \"entries\": ");
    out.push_str(entries);
    out.push_str("\n}");
    out
}

/// The lowest version that can say what `entries` say.
fn version<'a>(entries: impl IntoIterator<Item = &'a &'a Entry>) -> u32 {
    entries.into_iter().map(|entry| entry.version()).max().unwrap_or(1)
}

/// Opens a file.
///
/// # Errors
/// [`BackupError`]; whatever the bytes are, this returns.
pub fn open(text: &str) -> Result<Backup, BackupError> {
    open_as(text, &[FORMAT], &|_, file, raw| own_fields(file, raw))
}

/// The fields that a backup has beside those of every file.
pub(super) fn own_fields(file: &Fields<'_>, raw: &str) -> Option<usize> {
    file.get::<String>("about")?;
    file.get::<String>("checksum").filter(|sum| *sum == checksum::of(&[raw]))?;
    Some(2)
}

/// What a format has beside the fields of every file: from its name, the fields and the entries as they are written. Says
/// how many fields that were; none when they are not what they should be.
pub(super) type More<'a> = &'a dyn Fn(&str, &Fields<'_>, &str) -> Option<usize>;

/// Opens a file of one of these `formats`.
pub(super) fn open_as(text: &str, formats: &[&str], more: More<'_>) -> Result<Backup, BackupError> {
    if text.len() > MOST_BYTES {
        return Err(BackupError::TooLarge);
    }
    // Mail and other systems change line ends. Inside a text JSON writes them as signs, so none is lost by this.
    let unix = text.contains('\r').then(|| unix(text));
    let text = unix.as_deref().unwrap_or(text).trim_start_matches('\u{feff}');
    let fields = json::fields_as_written(text).ok_or_else(|| not_json(text))?;
    let head = Fields(&fields);
    let found = head.raw("format").map_or(Some(None), json::from_text::<Option<String>>);
    let found = found.ok_or_else(|| not_json(text))?.unwrap_or_default();
    if !formats.contains(&found.as_str()) {
        return Err(BackupError::NotABackup(Looks::OtherJson));
    }
    let version = match head.get::<u32>("version") {
        Some(known @ 1..=VERSION) => known,
        Some(found) if found > VERSION => return Err(BackupError::Newer { found }),
        _ => return Err(BackupError::Damaged),
    };
    head.file(version, &|file, raw| more(&found, file, raw)).ok_or(BackupError::Damaged)
}

/// The fields of a file, each as it is written.
pub(super) struct Fields<'a>(&'a [(String, &'a str)]);

impl Fields<'_> {
    /// What stands in a field; none when it is not there or cannot be read.
    pub(super) fn get<T: Json>(&self, name: &str) -> Option<T> {
        json::from_text(self.raw(name)?)
    }

    pub(super) fn raw(&self, name: &str) -> Option<&str> {
        self.0.iter().find(|(field, _)| field == name).map(|(_, raw)| *raw)
    }

    fn file(&self, version: u32, more: &dyn Fn(&Fields<'_>, &str) -> Option<usize>) -> Option<Backup> {
        let by = self.raw("by");
        let counts: Counts = self.get("counts")?;
        let raw = self.raw("entries")?;
        // The format, the version, the day, the counts and the entries.
        if self.0.len() != 5 + usize::from(by.is_some()) + more(self, raw)? {
            return None;
        }
        let entries: Vec<Entry> = json::list_from_text(raw)?;
        let most = Entry::counter_most(entries.len());
        let sound = entries.iter().all(|entry| {
            entry.check().is_ok() && !entry.is_demo() && entry.id.n() <= most && entry.version() <= version
        });
        // As they were written: one name stands for one entry, or half of a file would be lost on its way in.
        let rising = entries.iter().zip(entries.iter().skip(1)).all(|(one, next)| one.id < next.id);
        let same = sound && rising && Counts::of(&entries.iter().collect::<Vec<_>>()) == counts;
        let by = by.map_or(Some(None), |by| json::from_text(by).map(Some))?;
        let fits = by.as_ref().is_none_or(|by: &String| by.chars().count() <= Entry::BY_MOST);
        (same && fits).then_some(Backup { made: self.get("made")?, by, counts, entries })
    }
}

impl Backup {
    /// What taking it in would change.
    pub fn preview(&self, book: &Book) -> Union {
        book.log().compare(&self.entries)
    }

    /// What it comes to by itself: the book it holds, and how many of its lines are struck out. The counts of the file
    /// name everything that was ever written down.
    pub fn alone(&self) -> (Book, usize) {
        let mut log = Log::default();
        for entry in &self.entries {
            log.add(entry.clone());
        }
        let struck = log.struck();
        let out =
            |entry: &&Entry| struck.contains_key(&entry.id) && !matches!(entry.what, What::Struck { .. });
        let count = log.entries().filter(out).count();
        (Book::from_log(log), count)
    }
}

/// The text with the line ends of the file as it was written.
fn unix(text: &str) -> String {
    let mut unix = String::with_capacity(text.len());
    for (index, piece) in text.split('\r').enumerate() {
        if index > 0 && !piece.starts_with('\n') {
            unix.push('\r');
        }
        unix.push_str(piece);
    }
    unix
}

/// Whether `part` stands in `text`. The search of the standard library, made for long texts, is two kilobytes.
fn holds(text: &str, part: &str) -> bool {
    text.as_bytes().windows(part.len()).any(|bytes| bytes == part.as_bytes())
}

/// A text that is no JSON: either our own file cut off, or something else altogether.
fn not_json(text: &str) -> BackupError {
    let start: String = text.chars().take(400).collect();
    if holds(&start, FORMAT) || holds(&start, super::pack::FORMAT) {
        return BackupError::Damaged;
    }
    let lines = || start.lines().take(3);
    let looks = if start.trim().is_empty() {
        Looks::Empty
    } else if start.starts_with("%PDF") {
        Looks::Document
    } else if ["PNG\n", "JFIF", "Exif", "ftyp"].iter().any(|mark| holds(&start, mark)) {
        Looks::Picture
    } else if lines().count() > 1 && lines().all(|line| line.contains([',', ';', '\t'])) {
        Looks::Table
    } else {
        Looks::Unknown
    };
    BackupError::NotABackup(looks)
}
