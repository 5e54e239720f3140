//! The whole book as one text file, and back.
//!
//! The file is JSON with one entry a line, so that a person can still read it when no program can. It carries its
//! format's name and version, counts, and a checksum of the entries exactly as they are written in it.

use crate::almanac::day::{Day, Stamp};
use crate::book::Book;
use crate::book::entry::{Entry, What};
use crate::book::log::{Log, Union};
use crc::{CRC_32_ISO_HDLC, Crc};
use serde::{Deserialize, Serialize};
use serde_json::value::RawValue;
use std::collections::BTreeSet;

/// The name in the file.
pub const FORMAT: &str = "beetle-almanac backup";
/// The version this program writes.
pub const VERSION: u32 = 1;
/// Largest file that is opened, in bytes: over twenty times what ten seasons of a hundred hives take.
pub const MOST_BYTES: usize = 64 * 1024 * 1024;

const ABOUT: &str = "A keeper's book of hives and beetle-trap work. Each entry is one thing that happened: 'day' is the \
civil date in the yard, 'at' the moment it was written down, 'what' what was done. Levels are percent of the trap's \
depth. Entries named in a 'struck' entry no longer count; an entry with 'replaces' stands in for the one it names.";

/// How much a file says it holds.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
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

impl Counts {
    fn of(entries: &[&Entry]) -> Counts {
        let brings = |pick: fn(&What) -> bool| entries.iter().filter(|entry| pick(&entry.what)).count();
        Counts {
            entries: entries.len(),
            yards: brings(|what| matches!(what, What::Yard { .. })),
            hives: brings(|what| matches!(what, What::Hive { .. })),
            days: entries.iter().map(|entry| entry.day).collect::<BTreeSet<Day>>().len(),
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

#[derive(Deserialize)]
struct Head {
    format: Option<String>,
    version: Option<u32>,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct File<'a> {
    format: String,
    version: u32,
    made: Stamp,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    by: Option<String>,
    counts: Counts,
    checksum: String,
    about: String,
    #[serde(borrow)]
    entries: &'a RawValue,
}

/// Writes the whole book, the demonstration left out.
///
/// # Errors
/// When an entry cannot be written as JSON, which no entry made by this program does.
pub fn write(log: &Log, made: Stamp, by: Option<&str>) -> Result<String, serde_json::Error> {
    let own: Vec<&Entry> = log.entries().filter(|entry| !entry.is_demo()).collect();
    let lines: Vec<String> = own.iter().map(serde_json::to_string).collect::<Result<_, _>>()?;
    let entries = if lines.is_empty() { "[]".to_owned() } else { format!("[\n{}\n]", lines.join(",\n")) };
    let raw = RawValue::from_string(entries)?;
    let file = File {
        format: FORMAT.to_owned(),
        version: VERSION,
        made,
        by: by.map(str::to_owned),
        counts: Counts::of(&own),
        checksum: checksum(raw.get()),
        about: ABOUT.to_owned(),
        entries: &raw,
    };
    serde_json::to_string_pretty(&file)
}

/// Opens a file.
///
/// # Errors
/// [`BackupError`]; whatever the bytes are, this returns.
pub fn open(text: &str) -> Result<Backup, BackupError> {
    if text.len() > MOST_BYTES {
        return Err(BackupError::TooLarge);
    }
    // Mail and other systems change line ends. Inside a text JSON writes them as signs, so none is lost by this.
    let unix = text.contains('\r').then(|| text.replace("\r\n", "\n"));
    let text = unix.as_deref().unwrap_or(text).trim_start_matches('\u{feff}');
    let head: Head = serde_json::from_str(text).map_err(|_| not_json(text))?;
    if head.format.as_deref() != Some(FORMAT) {
        return Err(BackupError::NotABackup(Looks::OtherJson));
    }
    match head.version {
        Some(VERSION) => {}
        Some(found) if found > VERSION => return Err(BackupError::Newer { found }),
        _ => return Err(BackupError::Damaged),
    }
    let file: File<'_> = serde_json::from_str(text).map_err(|_| BackupError::Damaged)?;
    if checksum(file.entries.get()) != file.checksum {
        return Err(BackupError::Damaged);
    }
    let entries: Vec<Entry> = serde_json::from_str(file.entries.get()).map_err(|_| BackupError::Damaged)?;
    let sound = entries.iter().all(|entry| entry.check().is_ok() && !entry.is_demo());
    if !sound || Counts::of(&entries.iter().collect::<Vec<_>>()) != file.counts {
        return Err(BackupError::Damaged);
    }
    Ok(Backup { made: file.made, by: file.by, counts: file.counts, entries })
}

impl Backup {
    /// What taking it in would change.
    pub fn preview(&self, book: &Book) -> Union {
        book.log().compare(&self.entries)
    }
}

fn checksum(entries: &str) -> String {
    format!("{:08x}", Crc::<u32>::new(&CRC_32_ISO_HDLC).checksum(entries.as_bytes()))
}

/// A text that is no JSON: either our own file cut off, or something else altogether.
fn not_json(text: &str) -> BackupError {
    let start: String = text.chars().take(400).collect();
    if start.contains(FORMAT) {
        return BackupError::Damaged;
    }
    let lines = || start.lines().take(3);
    let looks = if start.trim().is_empty() {
        Looks::Empty
    } else if start.starts_with("%PDF") {
        Looks::Document
    } else if start.contains("PNG\n")
        || start.contains("JFIF")
        || start.contains("Exif")
        || start.contains("ftyp")
    {
        Looks::Picture
    } else if lines().count() > 1 && lines().all(|line| line.contains([',', ';', '\t'])) {
        Looks::Table
    } else {
        Looks::Unknown
    };
    BackupError::NotABackup(looks)
}
