//! Whether an entry from a file may be taken in.

use super::{Entry, NewBox, What};
use crate::almanac::text;
use crate::book::id::EntryId;

/// Why an entry that could be read cannot be taken in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum EntryError {
    /// A text longer than its field allows.
    TextTooLong,
    /// More parts than one entry may carry.
    TooManyParts,
    /// Corrects or strikes an entry that its writer cannot have seen.
    LooksAhead,
    /// A number outside what its field allows.
    OutOfRange,
    /// Work on named traps that names none: opened and kept again it would be work on all of them.
    NamesNothing,
}

impl Entry {
    /// Most beetles in one count.
    pub const COUNT_MOST: u32 = 1_000_000;
    /// Highest counter in a backup, whatever it holds: half of what there is, so that this phone keeps numbers to write
    /// with.
    pub const COUNTER_MOST: u32 = EntryId::MOST / 2;
    /// Most characters of a note.
    pub const NOTE_MOST: usize = 500;
    /// Most code points of a tag or name: the bound that [`text::label`] keeps where it is typed.
    pub const NAME_MOST: usize = text::LABEL_MOST.points;
    /// Most code points of a phone's label, as for a name.
    pub const BY_MOST: usize = text::PHONE_MOST.points;

    /// Highest counter in a backup of `lines` entries. Every entry has one number more than the highest its writer knew,
    /// so honest counters stay near the number of lines; what leads past it are the demonstration's lines, of which a
    /// backup holds none. It grows a thousand with each line, and so what is written after a file was taken in stays
    /// below it: a file this phone takes in cannot make its own later backups unreadable.
    pub fn counter_most(lines: usize) -> u32 {
        let lines = u32::try_from(lines).unwrap_or(u32::MAX);
        lines.saturating_mul(1000).saturating_add(1_000_000).min(Entry::COUNTER_MOST)
    }

    /// Checks what the types cannot: lengths, counts, and that corrections look back.
    ///
    /// # Errors
    /// [`EntryError`]: the entry is not taken in.
    pub fn check(&self) -> Result<(), EntryError> {
        let name = |text: &str| fits(text, Entry::NAME_MOST);
        let note =
            |text: &Option<String>| text.as_deref().map_or(Ok(()), |text| fits(text, Entry::NOTE_MOST));
        let earlier = |id: &EntryId| if *id < self.id { Ok(()) } else { Err(EntryError::LooksAhead) };
        self.by.as_deref().map_or(Ok(()), |by| fits(by, Entry::BY_MOST))?;
        self.replaces.as_ref().map_or(Ok(()), earlier)?;
        match &self.what {
            What::Kind(kind) | What::KindChanged { now: kind, .. } => {
                name(&kind.name)?;
                if kind.sound() { Ok(()) } else { Err(EntryError::OutOfRange) }
            }
            What::Yard { name: text, zone } => name(text).and(name(zone)),
            What::YardChanged { name: text, zone, .. } => {
                text.as_deref().map_or(Ok(()), name).and(zone.as_deref().map_or(Ok(()), name))
            }
            What::Hive { tag, boxes, .. } => name(tag).and(parts(boxes)),
            What::HiveChanged { tag, .. } => tag.as_deref().map_or(Ok(()), name),
            What::HiveMoved { permit, .. } => permit.as_deref().map_or(Ok(()), name),
            What::BoxesOn { boxes, .. } => parts(boxes),
            What::TrapsOn { traps, .. } if traps.len() > 200 => Err(EntryError::TooManyParts),
            What::Check(check) => {
                let most = check.count.map_or(0, |count| count.high().unwrap_or(count.low()));
                note(&check.note)?;
                if check.traps.as_ref().is_some_and(Vec::is_empty) {
                    return Err(EntryError::NamesNothing);
                }
                if most > Entry::COUNT_MOST { Err(EntryError::OutOfRange) } else { Ok(()) }
            }
            What::Record(record) => record.check(),
            What::Skip { note: text, .. } => note(text),
            What::Note { text, .. } => fits(text, Entry::NOTE_MOST),
            What::Struck { entries } => entries.iter().try_for_each(earlier),
            What::Keeper(change) => {
                let text = |text: &Option<String>| text.as_deref().map_or(Ok(()), name);
                text(&change.name).and(text(&change.currency))
            }
            _ => Ok(()),
        }
    }
}

fn fits(text: &str, most: usize) -> Result<(), EntryError> {
    if text.chars().count() > most { Err(EntryError::TextTooLong) } else { Ok(()) }
}

fn parts(boxes: &[NewBox]) -> Result<(), EntryError> {
    let things = boxes.len() + boxes.iter().map(|part| part.traps.len()).sum::<usize>();
    if things > 200 { Err(EntryError::TooManyParts) } else { Ok(()) }
}
