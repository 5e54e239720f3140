//! What can come back from a shelf, in five outcomes.
//!
//! "Unreadable" must never turn into "empty": the next save would write the empty value over the records.

use super::envelope::{self, EnvelopeError, MAX_GENERATION};
use crate::almanac::json::{self, Json};
use serde::{Serialize, de::DeserializeOwned};
use serde_json::Value;

/// One step from the payload of version n to that of version n + 1.
pub type Migration = fn(Value) -> Result<Value, CannotMigrate>;

/// The step between two versions of which the newer only says more.
pub const SAME: Migration = Ok;

/// A payload that a [`Migration`] could not carry over. It stays as it is and is found as damaged.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CannotMigrate;

/// How a kind of value is written: its version, the way up from every older one, and what makes it valid.
pub struct Format<T> {
    migrations: &'static [Migration],
    check: fn(&T) -> bool,
    read: fn(u32, &str, &'static [Migration]) -> Result<T, Damage>,
    write: fn(&T) -> Option<String>,
    quick: Option<fn(&str) -> Option<T>>,
    /// Older versions are read as this one is.
    grown: bool,
}

impl<T> Clone for Format<T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T> Copy for Format<T> {}

impl<T: Json> Format<T> {
    /// Version 1 of a value that reads and writes itself. The page is made of these: no code that serves all types
    /// and all versions travels in it. `check` says of a value that could be read whether it may be trusted.
    pub const fn first(check: fn(&T) -> bool) -> Format<T> {
        Format {
            migrations: &[],
            check,
            read: |_, payload, _| json::from_text(payload).ok_or(Damage::Payload),
            write: |value| Some(json::to_text(value)),
            quick: None,
            grown: false,
        }
    }

    /// A format whose every version but the last is read by the reader of the last: what is older says nothing that is
    /// not said so still, so each step up changes nothing. `steps` has one [`SAME`] for each of them.
    pub const fn grown(steps: &'static [Migration], check: fn(&T) -> bool) -> Format<T> {
        Format { migrations: steps, grown: true, ..Format::first(check) }
    }
}

impl<T> Format<T> {
    /// The same format, with a quicker reader for some texts of the versions that are read as they are: what it makes
    /// something of must mean the same to the general reader.
    #[must_use]
    pub const fn read_quickly(mut self, quick: fn(&str) -> Option<T>) -> Format<T> {
        self.quick = Some(quick);
        self
    }
}

impl<T: Serialize + DeserializeOwned> Format<T> {
    /// A format whose version is one more than its migrations: the first leads from 1 to 2. Version 1 has none.
    /// `check` says of a value that could be read whether it may be trusted.
    pub const fn new(migrations: &'static [Migration], check: fn(&T) -> bool) -> Format<T> {
        let write: fn(&T) -> Option<String> = |value| serde_json::to_string(value).ok();
        Format { migrations, check, read: climb, write, quick: None, grown: false }
    }
}

impl<T> Format<T> {
    /// Whether a payload of `version` is read as it is.
    fn reads(&self, version: u32) -> bool {
        version == self.version() || self.grown && (1..self.version()).contains(&version)
    }

    fn found(&self, version: u32, value: T) -> Found<T> {
        if version == self.version() {
            Found::Loaded(value)
        } else {
            Found::Migrated { from: version, value }
        }
    }

    /// The version that is written.
    pub fn version(&self) -> u32 {
        u32::try_from(self.migrations.len()).unwrap_or(u32::MAX).saturating_add(1)
    }
}

/// What lay under a key.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Found<T> {
    /// Nothing.
    Absent,
    /// A value of this version.
    Loaded(T),
    /// A value that was written in an older version and has been carried over; the shelf still holds the old text.
    Migrated {
        /// The version on the shelf.
        from: u32,
        /// The value, carried over.
        value: T,
    },
    /// An undamaged value of a version this app does not know. To be left alone: it can be read after an update.
    Newer {
        /// The version on the shelf.
        found: u32,
        /// The text on the shelf.
        raw: String,
    },
    /// Something that cannot be read. To be left alone and offered as a file.
    Damaged {
        /// The text on the shelf.
        raw: String,
        /// What is wrong with it.
        why: Damage,
    },
}

/// What is wrong with a text.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Damage {
    /// The envelope: changed, cut off, or not one of ours.
    Envelope(EnvelopeError),
    /// The envelope is sound, but the payload cannot be read as what it should be.
    Payload,
    /// The payload can be read, but says something that cannot be.
    Invalid,
    /// The payload is of this older version, and the step up from there failed.
    Migration(u32),
}

impl<T> Found<T> {
    /// The value, if one could be read.
    pub fn value(&self) -> Option<&T> {
        match self {
            Found::Loaded(value) | Found::Migrated { value, .. } => Some(value),
            Found::Absent | Found::Newer { .. } | Found::Damaged { .. } => None,
        }
    }

    /// The value, if one could be read, to keep.
    pub fn into_value(self) -> Option<T> {
        match self {
            Found::Loaded(value) | Found::Migrated { value, .. } => Some(value),
            Found::Absent | Found::Newer { .. } | Found::Damaged { .. } => None,
        }
    }

    /// The text on the shelf, if there is one that must be left alone.
    pub fn untouchable(&self) -> Option<&str> {
        match self {
            Found::Newer { raw, .. } | Found::Damaged { raw, .. } => Some(raw),
            Found::Absent | Found::Loaded(_) | Found::Migrated { .. } => None,
        }
    }
}

/// Reads what lay under a key.
pub fn load<T>(text: Option<String>, format: &Format<T>) -> Found<T> {
    examine(text, format).1
}

/// As [`load`], with the generation if the envelope is sound.
pub(super) fn examine<T>(text: Option<String>, format: &Format<T>) -> (Option<u64>, Found<T>) {
    let Some(raw) = text else { return (None, Found::Absent) };
    // What is as it should be, which is nearly everything, is gone through once. All else is opened with care.
    if let Some(inside) = envelope::peek(&raw)
        && format.reads(inside.version)
        && let Ok(value) = read(inside.version, inside.payload, format)
    {
        return (Some(inside.generation), format.found(inside.version, value));
    }
    let (version, generation, read) = match envelope::open(&raw) {
        Err(why) => return (None, Found::Damaged { raw, why: Damage::Envelope(why) }),
        Ok(inside) if inside.version > format.version() => {
            return (Some(inside.generation), Found::Newer { found: inside.version, raw });
        }
        Ok(inside) => (inside.version, inside.generation, read(inside.version, inside.payload, format)),
    };
    let found = match read {
        Ok(value) => format.found(version, value),
        Err(why) => Found::Damaged { raw, why },
    };
    (Some(generation), found)
}

fn read<T>(version: u32, payload: &str, format: &Format<T>) -> Result<T, Damage> {
    let quick = format.quick.filter(|_| format.reads(version)).and_then(|quick| quick(payload));
    let value = match quick {
        Some(value) => value,
        None => (format.read)(version, payload, format.migrations)?,
    };
    if (format.check)(&value) { Ok(value) } else { Err(Damage::Invalid) }
}

/// Takes the steps from `version` up.
fn climb<T: DeserializeOwned>(
    version: u32,
    payload: &str,
    migrations: &'static [Migration],
) -> Result<T, Damage> {
    let mut steps = (1..).zip(migrations).skip_while(|(from, _)| *from < version).peekable();
    if steps.peek().is_none() {
        return serde_json::from_str(payload).map_err(|_| Damage::Payload);
    }
    let mut value: Value = serde_json::from_str(payload).map_err(|_| Damage::Payload)?;
    for (from, step) in steps {
        value = step(value).map_err(|CannotMigrate| Damage::Migration(from))?;
    }
    serde_json::from_value(value).map_err(|_| Damage::Payload)
}

/// The payload text of a value, after it has been read back from that text: a value that could be written but not
/// read again would be lost at the next start.
pub(super) fn payload<T>(value: &T, format: &Format<T>) -> Result<String, Damage> {
    let text = (format.write)(value).ok_or(Damage::Payload)?;
    read(format.version(), &text, format)?;
    Ok(text)
}

/// The generation after `generation`.
pub(super) fn next(generation: u64) -> u64 {
    generation.saturating_add(1).min(MAX_GENERATION)
}
