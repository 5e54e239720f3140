//! What the app remembers of itself on this phone.

use super::cabinet::Cabinet;
use crate::almanac::day::Day;
use crate::almanac::json::{Fields, Json, MaybeJson, Object, Value, serde_by_json};
use crate::papers::calendar::Given;
use crate::store::desk::{Desk, DeskError, Slot};
use crate::store::found::{Format, Found};

/// Version 1 of what the app remembers of itself.
const META: Format<Meta> = Format::first(|_| true);

/// What the app remembers of itself on this phone.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Meta {
    /// The phone's label, shown beside its entries.
    pub label: Option<String>,
    /// The first day the book was opened here. A book that has this and no page has lost its pages.
    pub since: Day,
    /// Whether anything was ever written down here.
    pub written: bool,
    /// The last backup file, and how many entries it held.
    pub backup: Option<(Day, usize)>,
    /// The calendar's events as they were given out last.
    pub calendar: Vec<Given>,
}

/// Fields that nobody knows are passed over: a later version may remember more.
impl Json for Meta {
    fn write(&self, out: &mut String) {
        let mut object = Object::open(out);
        self.label.write_if(&mut object, "label");
        object.field("since", &self.since);
        object.field("written", &self.written);
        self.backup.write_if(&mut object, "backup");
        self.calendar.write_if(&mut object, "calendar");
        object.close();
    }

    fn read(value: Value) -> Option<Meta> {
        let mut fields = Fields::of(value)?;
        Some(Meta {
            label: fields.maybe("label")?,
            since: fields.take("since")?,
            written: fields.or_default("written")?,
            backup: fields.maybe("backup")?,
            // What nobody here can read is given out anew, which no calendar takes amiss.
            calendar: fields.maybe("calendar").unwrap_or_default(),
        })
    }
}

serde_by_json!(Meta);

impl Cabinet {
    /// What the app remembers of itself.
    pub fn meta(&self) -> Option<Meta> {
        Desk::new(self.shelf.clone()).read(Slot::Meta, &META).ok().and_then(Found::into_value)
    }

    /// Keeps what the app remembers of itself.
    ///
    /// # Errors
    /// [`DeskError`]; the value before is still there.
    pub fn keep_meta(&self, meta: &Meta) -> Result<(), DeskError> {
        Desk::new(self.shelf.clone()).write(Slot::Meta, &META, meta).map(|_| ())
    }
}
