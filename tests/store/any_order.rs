//! Two tabs, refused and torn writes, lies, damage, deaths and restarts, in any order: what was said to be saved is
//! there, and what could not be read is kept.

use super::{Book, Entries, State, joined, open, page};
use crate::phone::{Faults, Memory};
use beetle_almanac::store::{PageName, SaveError};
use proptest::prelude::*;
use std::collections::BTreeMap;

#[derive(Clone, Debug)]
enum Event {
    /// A tab saves an entry on each of these pages.
    Save { tab: usize, yards: Vec<usize>, faults: Faults },
    /// A text becomes unreadable.
    Damage { which: usize, at: usize },
    /// The phone starts again.
    Restart,
}

fn faults() -> impl Strategy<Value = Faults> {
    prop_oneof![
        4 => Just(Faults::default()),
        2 => (1u32..12, any::<bool>()).prop_map(|(n, torn)| Faults { refuse: Some(n), torn, ..Faults::default() }),
        2 => (1u32..12, any::<bool>()).prop_map(|(n, torn)| Faults { cut: Some(n), torn, ..Faults::default() }),
        1 => (1u32..12, any::<bool>()).prop_map(|(n, torn)| Faults { swallow: Some(n), torn, ..Faults::default() }),
        1 => (1u32..60).prop_map(|n| Faults { garble: Some(n), ..Faults::default() }),
        1 => (0u64..3000).prop_map(|n| Faults { quota: Some(n), ..Faults::default() }),
    ]
}

fn event() -> impl Strategy<Value = Event> {
    prop_oneof![
        8 => (0usize..2, prop::collection::vec(0usize..4, 1..4), faults())
            .prop_map(|(tab, yards, faults)| Event::Save { tab, yards, faults }),
        1 => (any::<usize>(), any::<usize>()).prop_map(|(which, at)| Event::Damage { which, at }),
        1 => Just(Event::Restart),
    ]
}

struct Tab<'a> {
    book: Book<'a>,
    known: State,
}

impl<'a> Tab<'a> {
    fn start(phone: &'a Memory) -> Tab<'a> {
        let (mut book, _) = open(phone);
        let known = joined(&mut book);
        Tab { book, known }
    }

    /// Saves what the tab knows and one entry more, joining what another tab has written; says whether it is saved.
    fn save(&mut self, names: &[PageName], entry: &str) -> bool {
        for _ in 0..20 {
            let pages: Vec<(PageName, Entries)> = names
                .iter()
                .map(|name| {
                    let mut entries = self.known.get(name).cloned().unwrap_or_default();
                    entries.insert(entry.to_owned());
                    (name.clone(), entries)
                })
                .collect();
            match self.book.write_many(&pages) {
                Ok(_) => {
                    self.known.extend(pages);
                    return true;
                }
                Err(SaveError::ChangedElsewhere { name, current, .. }) => {
                    self.known.entry(name).or_default().extend(current.into_value().unwrap_or_default());
                }
                Err(SaveError::NotSaved { .. }) => return false,
                Err(other) => panic!("{other:?}"),
            }
        }
        panic!("twenty attempts")
    }
}

/// Everything acknowledged is read, everything unreadable is as it was.
fn check(phone: &Memory, said: &State, kept: &BTreeMap<String, String>) {
    let phone = phone.restarted();
    let state = joined(&mut open(&phone).0);
    for (name, entries) in said {
        let found = state.get(name).cloned().unwrap_or_default();
        assert!(found.is_superset(entries), "{name:?}: said {entries:?}, found {found:?}");
    }
    for (key, raw) in kept {
        assert_eq!(phone.texts().get(key), Some(raw), "{key}");
    }
}

fn live(events: &[Event]) {
    let phone = Memory::new();
    let names: Vec<PageName> = ["a", "b", "c", "d"].map(page).into();
    let mut tabs = [Tab::start(&phone), Tab::start(&phone)];
    let mut said = State::new();
    let mut kept = BTreeMap::new();
    for (n, event) in events.iter().enumerate() {
        match event {
            Event::Save { tab, yards, faults } => {
                let mut yards = yards.clone();
                yards.sort_unstable();
                yards.dedup();
                let names: Vec<PageName> = yards.into_iter().map(|yard| names[yard].clone()).collect();
                let entry = format!("entry {n}");
                phone.set_faults(*faults);
                let saved = tabs[*tab].save(&names, &entry);
                phone.set_faults(Faults::default());
                if saved {
                    for name in names {
                        said.entry(name).or_default().insert(entry.clone());
                    }
                }
                check(&phone, &said, &kept);
                if faults.cut.is_some() {
                    tabs = [Tab::start(&phone), Tab::start(&phone)];
                }
            }
            Event::Damage { which, at } => {
                // Damage while a save is half done is settled by its journal; here the shelf is at rest.
                open(&phone);
                let pages = super::page_texts(&phone);
                let Some((key, text)) = pages.iter().nth(which % pages.len().max(1)) else { continue };
                let raw = text[..at % text.len().max(1)].to_owned();
                phone.lay(key, &raw);
                kept.insert(key.clone(), raw);
                // What lay there alone is lost to the damage and to nothing else.
                let rest = super::after_restart(&phone);
                for (name, entries) in &mut said {
                    let rest = rest.get(name).cloned().unwrap_or_default();
                    entries.retain(|entry| rest.contains(entry));
                }
            }
            Event::Restart => tabs = [Tab::start(&phone), Tab::start(&phone)],
        }
        check(&phone, &said, &kept);
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 400, failure_persistence: None, ..ProptestConfig::default() })]
    #[test]
    fn whatever_happens_in_whatever_order_nothing_that_was_saved_is_lost(
        events in prop::collection::vec(event(), 1..30)
    ) {
        live(&events);
    }
}
