//! The half-made entries of every tab, on one desk.
//!
//! The desk is shared by all tabs, and what lies there outlives them: it is for the phone that dies, and a new tab takes
//! it over. Each tab puts only what changed in it; what others put there stays. What stands in the fields of one tab is
//! kept for its own reload in a place of its own, which the browser clears with the tab.

use super::round::draft::Drafts;
use crate::almanac::json;
use crate::store::desk::{Desk, DeskError, Slot};
use crate::store::found::{Format, Found};
use crate::store::shelf::Shelf;
use std::rc::Rc;

/// Version 1 of the half-made entries, as a text.
const DRAFT: Format<String> = Format::first(|_| true);

/// The desk as one tab sees it.
pub struct HalfMade {
    desk: Desk<Rc<dyn Shelf>>,
    /// What this tab had when it last read or wrote there.
    known: Drafts,
}

impl HalfMade {
    /// The desk on this shelf.
    pub fn on(shelf: Rc<dyn Shelf>) -> HalfMade {
        HalfMade { desk: Desk::new(shelf), known: Drafts::default() }
    }

    fn lying(&self) -> Drafts {
        let found = self.desk.read(Slot::Draft, &DRAFT).ok().and_then(Found::into_value);
        found.and_then(|text| json::from_text(&text)).unwrap_or_default()
    }

    /// What a tab begins with. `own` is what it had before it was loaded anew; none in a new tab. What others have left is
    /// taken over at hives where this tab has nothing: nobody can tell at a start who of them is still there.
    pub fn begin(&mut self, own: Option<Drafts>) -> Drafts {
        let lying = self.lying();
        self.known = lying.clone();
        let Some(mut own) = own else { return lying };
        for (hive, typed) in &lying.hives {
            own.bring_back(hive, typed);
        }
        own
    }

    /// Puts there what has changed in this tab.
    ///
    /// # Errors
    /// [`DeskError`]; what lay there lies there still.
    pub fn keep(&mut self, own: &Drafts) -> Result<(), DeskError> {
        let lying = self.lying();
        let mut all = if own.is_empty() { lying.clone() } else { own.clone() };
        all.hives.clear();
        for (hive, _) in own.hives.iter().chain(&lying.hives) {
            let (known, mine, theirs) = (self.known.get(hive), own.get(hive), lying.get(hive));
            // What is logged in this tab goes, unless it was changed in another one meanwhile.
            let unchanged = mine == known || mine.is_none() && theirs != known;
            all.put(hive, if unchanged { theirs } else { mine }.cloned().unwrap_or_default());
        }
        let nothing = all.is_empty();
        if all != lying && !(nothing && lying.is_empty()) {
            let text = if nothing { String::new() } else { json::to_text(&all) };
            self.desk.write(Slot::Draft, &DRAFT, &text)?;
        }
        self.known = own.clone();
        Ok(())
    }
}
