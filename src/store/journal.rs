//! The intent of a save, put down first.
//!
//! A save changes one page or several hundred. Before the first of them is touched, the journal holds every key with
//! its old and its new text; after the last, the journal is taken away. A phone that dies in between leaves a
//! journal, and the next start finishes what it says, or undoes it when there is no room: the result is the old
//! state or the new one, never a third.
//!
//! A journal that cannot be read was cut off while it was written, so nothing had been touched yet; or it is newer
//! than this app. Either way it is left where it is and never applied.

use super::found::{Format, Found, load};
use super::keys::{self, MAX_PART, PageName};
use super::shelf::{Shelf, ShelfError, put_checked, remove_checked};
use super::{envelope, found};
use crate::almanac::json::json_object;
use crate::almanac::table::Table;

/// Unreadable journals that are stepped over. After that many, nothing can be saved.
const MAX_JOURNALS: u32 = 9;

const FORMAT: Format<Intent> = Format::first(Intent::holds);

/// One page: key, old text, new text.
#[derive(Clone, Debug)]
pub(super) struct Step {
    pub(super) key: String,
    pub(super) old: Option<String>,
    pub(super) new: String,
}

json_object!(Step { key as "k", old as "o", new as "n" });

/// A whole save.
#[derive(Clone, Debug)]
pub(super) struct Intent {
    pub(super) steps: Vec<Step>,
}

json_object!(Intent { steps as "pages" });

impl Intent {
    fn holds(&self) -> bool {
        let sound = |text: &String| envelope::peek(text).is_some();
        let mut seen = Table::new();
        !self.steps.is_empty()
            && self.steps.iter().all(|step| {
                PageName::from_key(&step.key).is_some()
                    && sound(&step.new)
                    && step.old.as_ref().is_none_or(sound)
                    && seen.insert(step.key.as_str(), ()).is_none()
            })
    }

    /// The text to put down, if it can be read again.
    pub(super) fn text(&self) -> Option<String> {
        found::payload(self, &FORMAT).ok().map(|payload| envelope::wrap(FORMAT.version(), 1, &payload))
    }

    fn unsaved(&self) -> Vec<Unsaved> {
        let unsaved = |step: &Step| {
            let (name, _) = PageName::from_key(&step.key)?;
            let payload = envelope::open(&step.new).ok()?.payload.to_owned();
            Some(Unsaved { name, payload })
        };
        self.steps.iter().filter_map(unsaved).collect()
    }
}

/// A page that is not on the shelf, with its text, so that the keeper can copy it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unsaved {
    /// Where it should have gone.
    pub name: PageName,
    /// Payload of the whole page, JSON text.
    pub payload: String,
}

/// A journal that is not applied and not removed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Leftover {
    /// Its key.
    pub key: String,
    /// Its text.
    pub raw: String,
    /// It is sound, but of a version this app does not know.
    pub newer: bool,
}

/// What was found of saves cut short, and what became of them.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Recovery {
    /// Pages of saves that were finished now.
    pub finished: usize,
    /// Pages of saves that were undone for want of room. Nobody was told that they were saved, but here they are.
    pub unsaved: Vec<Unsaved>,
    /// A save could neither be finished nor undone. Reading shows it as done; writing waits until there is room.
    pub stuck: Option<ShelfError>,
    /// Journals left alone.
    pub left: Vec<Leftover>,
}

/// What to do with a save for which there is no room.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum NoRoom {
    /// Put everything back as it was; whoever asked is told what is then not on the shelf.
    Undo,
    /// Leave the journal where it is, to be shown as done and finished later.
    Wait,
}

/// Finishes every save that was cut short, or does with it what `otherwise` says.
pub(super) fn settle(shelf: &dyn Shelf, otherwise: NoRoom) -> Result<Recovery, ShelfError> {
    let mut recovery = Recovery::default();
    for n in 1..=MAX_JOURNALS {
        let key = keys::journal(n);
        match load(shelf.get(&key)?, &FORMAT) {
            Found::Absent => {}
            Found::Loaded(intent) | Found::Migrated { value: intent, .. } => {
                match carry_out(shelf, &key, &intent, otherwise) {
                    Ok(()) => recovery.finished += intent.steps.len(),
                    Err(End::Undone(_)) => recovery.unsaved.extend(intent.unsaved()),
                    Err(End::Stuck(why)) => recovery.stuck = Some(why),
                }
            }
            Found::Newer { raw, .. } => recovery.left.push(Leftover { key, raw, newer: true }),
            Found::Damaged { raw, .. } => recovery.left.push(Leftover { key, raw, newer: false }),
        }
    }
    Ok(recovery)
}

/// How a save that was not finished ended.
enum End {
    /// Everything is as it was before.
    Undone(ShelfError),
    /// The journal still lies there.
    Stuck(ShelfError),
}

/// Saves all of `intent`, or nothing of it.
pub(super) fn save(shelf: &dyn Shelf, intent: &Intent) -> Result<(), ShelfError> {
    let text = intent.text().ok_or(ShelfError::Other)?;
    let mut free = None;
    for n in 1..=MAX_JOURNALS {
        let key = keys::journal(n);
        if shelf.get(&key)?.is_none() {
            free = Some(key);
            break;
        }
    }
    let key = free.ok_or(ShelfError::Other)?;
    if let Err(why) = put_checked(shelf, &key, &text) {
        // The key was free and no page has been touched: what lies there now is half of our own text. If it cannot
        // be taken away either, it is found as damaged and left alone.
        let _ = shelf.remove(&key);
        return Err(why);
    }
    match carry_out(shelf, &key, intent, NoRoom::Undo) {
        Ok(()) => Ok(()),
        Err(End::Undone(why) | End::Stuck(why)) => Err(why),
    }
}

/// Applies a journal that lies under `key`, or does what `otherwise` says; then takes it away.
fn carry_out(shelf: &dyn Shelf, key: &str, intent: &Intent, otherwise: NoRoom) -> Result<(), End> {
    match finish(shelf, intent) {
        // Every page has been read back. A journal that cannot be taken away finds nothing to do the next time.
        Ok(()) => {
            let _ = remove_checked(shelf, key);
            Ok(())
        }
        Err(why) if otherwise == NoRoom::Wait => Err(End::Stuck(why)),
        Err(why) => {
            let undone = undo(shelf, intent).and_then(|()| remove_checked(shelf, key));
            Err(if undone.is_ok() { End::Undone(why) } else { End::Stuck(why) })
        }
    }
}

fn finish(shelf: &dyn Shelf, intent: &Intent) -> Result<(), ShelfError> {
    for step in &intent.steps {
        let current = shelf.get(&step.key)?;
        let (key, current) = if step.owns(current.as_deref()) {
            (step.key.clone(), current)
        } else {
            let key = beside(step, |key| shelf.get(key))?;
            let current = shelf.get(&key)?;
            (key, current)
        };
        if current.as_deref() != Some(step.new.as_str()) {
            put_checked(shelf, &key, &step.new)?;
        }
    }
    Ok(())
}

/// Backwards, so that every step passes through a state that has already fitted.
fn undo(shelf: &dyn Shelf, intent: &Intent) -> Result<(), ShelfError> {
    for step in intent.steps.iter().rev() {
        let current = shelf.get(&step.key)?;
        if current == step.old || !step.owns(current.as_deref()) {
            continue;
        }
        match &step.old {
            Some(old) => put_checked(shelf, &step.key, old)?,
            None => remove_checked(shelf, &step.key)?,
        }
    }
    Ok(())
}

impl Step {
    /// What lies under the key is from before or from this save: the old text, the new one, nothing, or a torn one
    /// (a save never aims at a key that cannot be read, so bytes that cannot be read are its own). Only another
    /// tab can have put anything else there.
    fn owns(&self, current: Option<&str>) -> bool {
        current == self.old.as_deref()
            || current.is_none_or(|text| text == self.new || envelope::open(text).is_err())
    }
}

/// The key beside a page that another tab has meanwhile written: nothing is lost, because the parts of a page are
/// read together.
fn beside(
    step: &Step,
    get: impl Fn(&str) -> Result<Option<String>, ShelfError>,
) -> Result<String, ShelfError> {
    let (name, first) = PageName::from_key(&step.key).ok_or(ShelfError::Other)?;
    for part in first + 1..=MAX_PART {
        let key = name.key(part);
        if get(&key)?.is_none_or(|text| text == step.new) {
            return Ok(key);
        }
    }
    Err(ShelfError::Other)
}

/// Shows `texts` as they will be once the journals on the shelf are finished.
pub(super) fn foresee(shelf: &dyn Shelf, texts: &mut Table<String, String>) -> Result<(), ShelfError> {
    for n in 1..=MAX_JOURNALS {
        let Some(intent) = load(shelf.get(&keys::journal(n))?, &FORMAT).into_value() else { continue };
        for step in intent.steps {
            let key = if step.owns(texts.get(step.key.as_str()).map(String::as_str)) {
                step.key
            } else {
                beside(&step, |key| Ok(texts.get(key).cloned()))?
            };
            texts.insert(key, step.new);
        }
    }
    Ok(())
}
