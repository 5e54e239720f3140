//! The lines of a cut-off or changed backup that can still be read by themselves.
//!
//! The checksum speaks for a file as a whole, and here it has failed: a line that can be read may have been changed all
//! the same, and lines may be missing. So nothing of this is taken for a backup. What can be read becomes a copy, which
//! says where it comes from and is looked into before anything is taken in, as every file is.

use super::backup::{self, Backup, MOST_BYTES, VERSION};
use crate::almanac::day::Stamp;
use crate::almanac::json;
use crate::almanac::order::sort_by;
use crate::book::entry::Entry;
use crate::book::log::Log;

/// What stands in the copy in place of the label of a phone.
pub const BY: &str = "a damaged file";

/// What a damaged file still gives.
#[derive(Clone, Debug, PartialEq)]
pub struct Recovered {
    /// The copy, as a text: a backup of its own.
    pub text: String,
    /// The same, opened.
    pub copy: Backup,
    /// Lines that begin like an entry and cannot be read, have a counter beyond what such a file
    /// may hold, or are there twice with different words.
    pub unread: usize,
    /// How many entries the file says that it held when it was made; none where that is lost.
    pub held: Option<usize>,
}

/// What can be read of `text`, as a copy made `at`. None when that is nothing, and for a file of a newer version.
pub fn recover(text: &str, at: Stamp) -> Option<Recovered> {
    if text.len() > MOST_BYTES {
        return None;
    }
    let (mut entries, mut begun, mut held): (Vec<Entry>, usize, Option<usize>) = (Vec::new(), 0, None);
    for line in text.split(['\n', '\r']) {
        let line = line.trim_matches([' ', '\t', ',', '\u{feff}']);
        if line.starts_with("{\"") {
            begun += 1;
            let entry = json::from_text::<Entry>(line);
            entries.extend(entry.filter(|entry| entry.check().is_ok() && !entry.is_demo()));
        } else if entries.is_empty() {
            if let Some(version) = line.strip_prefix("\"version\": ")
                && !version.parse().is_ok_and(|version: u32| (1..=VERSION).contains(&version))
            {
                return None;
            }
            held = held.or_else(|| line.strip_prefix("\"entries\": ")?.parse().ok());
        }
    }
    let log = agreeing(entries).into_iter().collect::<Log>();
    let text = backup::write(&log, at, Some(BY));
    let copy = backup::open(&text).ok().filter(|_| !log.is_empty())?;
    Some(Recovered { text, unread: begun - copy.counts.entries, copy, held })
}

/// The entries whose name stands for one text alone: of two texts under one name nobody can say which is the damaged one.
/// Nor those whose counter is higher than a file of so many lines may hold: one changed digit would spoil the whole copy.
fn agreeing(mut entries: Vec<Entry>) -> Vec<Entry> {
    sort_by(&mut entries, |one, other| one.id.cmp(&other.id));
    let mut log = Vec::new();
    for alike in entries.chunk_by(|one, other| one.id == other.id) {
        if let [first, more @ ..] = alike
            && more.iter().all(|other| json::to_text(other) == json::to_text(first))
        {
            log.push(first.clone());
        }
    }
    // The highest are last, and with each that goes the others may be less high.
    while log.last().is_some_and(|last| last.id.n() > Entry::counter_most(log.len())) {
        log.pop();
    }
    log
}
