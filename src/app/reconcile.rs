//! The second copy laid beside the shelf: what only one of the two has comes to the other.

use super::aside::{Aside, Why, page_of};
use super::cabinet::{Cabinet, PAGE, of_demo};
use crate::almanac::table::Table;
use crate::book::Book;
use crate::book::entry::Entry;
use crate::store::keys::{self, PageName};
use crate::store::mirror::{self, Verdict};
use crate::store::shelf::ShelfError;

/// A page in which the two copies differ.
struct Differing {
    key: String,
    /// The text of the second copy, its entries and its generation.
    raw: String,
    entries: Vec<Entry>,
    generation: u64,
    /// The text here.
    here: Option<String>,
    /// Only a save of a higher generation can take the place of the second copy.
    later: bool,
}

/// What came of laying the second copy beside the shelf.
#[derive(Debug, Default, PartialEq, Eq)]
pub struct Reconciled {
    /// Entries that only the second copy had. They are in the book.
    pub restored: usize,
    /// What could not be read in the second copy.
    pub asides: Vec<Aside>,
    /// The shelf did not take what only the second copy has: it lies in one place still, and the two have to be compared
    /// once more.
    pub refused: bool,
}

impl Cabinet {
    /// Lays the second copy beside the shelf, page by page: what only one of the two has comes to the other, and into
    /// `book`. What is to go to the second copy waits in the outbox.
    ///
    /// `second` are the texts of the second copy by their keys; what is no page of the keeper's is passed over.
    ///
    /// # Errors
    /// [`ShelfError`] when the shelf cannot be read at all.
    pub fn reconcile(
        &mut self,
        book: &mut Book,
        second: Vec<(String, String)>,
    ) -> Result<Reconciled, ShelfError> {
        let mut found = Reconciled::default();
        // As long as the shelf does not take them, a page of it that lacks them must not pass for the later one.
        let owed = std::mem::take(&mut self.owed);
        if !owed.is_empty() && self.save_pages(book, owed.clone()).is_err() {
            self.owed = owed;
            found.refused = true;
            return Ok(found);
        }
        let mut here = self.pages.texts()?;
        // What waits for the second copy is compared with the rest: another tab may have written there since.
        self.outbox.retain(|key, _| !here.contains_key(key));
        let mut differing = Vec::new();
        for (key, raw) in second {
            if !of_keeper(&key) {
                continue;
            }
            let here = here.remove(&key);
            match mirror::compare(here.as_deref(), &raw, &PAGE) {
                Verdict::Alike => {}
                Verdict::Differs { page, generation, later } => {
                    differing.push(Differing { key, raw, here, entries: page.entries, generation, later });
                }
                Verdict::Damaged { generation } => {
                    found.asides.push(Aside { key: key.clone(), raw: raw.clone(), why: Why::Damaged });
                    let Some(text) = here.filter(|text| page_of(text).is_some()) else { continue };
                    // A save of a higher generation takes its place, once it is put aside.
                    if let Some(generation) = generation {
                        self.outbox.insert(keys::aside(&key, &raw), raw.clone());
                        let (here, entries) = (Some(text), Vec::new());
                        differing.push(Differing { key, raw, here, entries, generation, later: true });
                    } else {
                        self.outbox.insert(key, text);
                    }
                }
                Verdict::Newer => {
                    self.read_only = true;
                    found.asides.push(Aside { key, raw, why: Why::Newer });
                }
            }
        }
        for (key, text) in here {
            if of_keeper(&key) && mirror::copyable(&text, &PAGE) {
                self.outbox.insert(key, text);
            }
        }
        if !differing.is_empty() {
            self.refresh(book)?;
            self.unite(book, differing, &mut found);
        }
        Ok(found)
    }

    /// Joins the pages in which the two copies differ.
    fn unite(&mut self, book: &mut Book, differing: Vec<Differing>, found: &mut Reconciled) {
        let before = book.log().len();
        let mut pages = Vec::new();
        for Differing { key, raw, here, entries, generation, later } in differing {
            self.pages.heed(&key, generation);
            let union = book.log().compare(&entries);
            // The words here stand, as everywhere where one name has two; the others are put aside.
            if !union.clashes.is_empty() {
                self.outbox.insert(keys::aside(&key, &raw), raw.clone());
                found.asides.push(Aside { key: key.clone(), raw, why: Why::Clash });
            }
            if union.new + union.fuller > 0 {
                pages.push(entries);
                continue;
            }
            // Otherwise what the second copy has lies here under another key: that of a further part.
            if let Some(text) = here
                && let Some(entries) = page_of(&text)
            {
                if later {
                    // What stands here is written once more, so that it is the later of the two.
                    pages.push(entries);
                } else {
                    self.outbox.insert(key, text);
                }
            }
        }
        if self.save_pages(book, pages.clone()).is_err() {
            // They are in the second copy still, and go to the shelf at the next look or with the next save of their page.
            book.add(pages.concat());
            self.owed = pages;
            found.refused = true;
        }
        found.restored = book.log().len() - before;
    }

    /// The texts that wait for the second copy, by their keys. They are handed over: what could not be written comes
    /// back through [`Cabinet::put_back`].
    pub fn take_outbox(&mut self) -> Table<String, String> {
        self.outbox.retain(|key, _| key.starts_with(keys::ASIDE) || of_keeper(key));
        std::mem::replace(&mut self.outbox, Table::new())
    }

    /// Puts back what the second copy did not take; what has been saved since is newer.
    pub fn put_back(&mut self, texts: Table<String, String>) {
        for (key, text) in texts {
            self.outbox.or_insert(key, text);
        }
    }
}

/// Whether a page of the keeper's lies under `key`. The demonstration has no place in the second copy: nobody would miss
/// it, and what was taken out could come back from there.
fn of_keeper(key: &str) -> bool {
    PageName::from_key(key).is_some_and(|(name, _)| !of_demo(&name))
}
