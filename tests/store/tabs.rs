//! Two tabs are open.

use super::{Entries, FORMAT, entries, joined, open, page};
use crate::phone::{Faults, Memory};
use beetle_almanac::store::{Found, Pages, SaveError, Shelf, ShelfError};

fn changed(outcome: Result<beetle_almanac::store::Saved, SaveError<Entries>>) -> Found<Entries> {
    match outcome {
        Err(SaveError::ChangedElsewhere { current, .. }) => current,
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_tab_that_slept_for_three_days_does_not_write_over_what_the_other_has_saved() {
    let phone = Memory::new();
    let (mut asleep, _) = open(&phone);
    asleep.write(&page("river"), &entries(&["monday"])).unwrap();
    let (mut awake, _) = open(&phone);
    awake.read_all().unwrap();
    awake.write(&page("river"), &entries(&["monday", "tuesday"])).unwrap();

    let before = phone.texts();
    let mine = entries(&["monday", "thursday"]);
    let current = changed(asleep.write(&page("river"), &mine));
    assert_eq!(current, Found::Loaded(entries(&["monday", "tuesday"])));
    assert_eq!(phone.texts(), before);
    let both: Entries = mine.union(current.value().unwrap()).cloned().collect();
    assert_eq!(asleep.write(&page("river"), &both).unwrap().generation, 3);
    assert_eq!(joined(&mut awake).get(&page("river")), Some(&both));
}

#[test]
fn a_page_that_was_never_looked_at_is_not_overwritten() {
    let phone = Memory::new();
    open(&phone).0.write(&page("river"), &entries(&["theirs"])).unwrap();
    let (mut book, _) = open(&phone);
    let current = changed(book.write(&page("river"), &entries(&["mine"])));
    assert_eq!(current, Found::Loaded(entries(&["theirs"])));
}

#[test]
fn one_page_of_a_restore_has_changed_and_none_is_written() {
    let phone = Memory::new();
    let (mut first, _) = open(&phone);
    first.write(&page("hill"), &entries(&["h"])).unwrap();
    let (mut second, _) = open(&phone);
    second.write(&page("river"), &entries(&["theirs"])).unwrap();
    let before = phone.texts();
    let both = [(page("hill"), entries(&["h", "h2"])), (page("river"), entries(&["mine"]))];
    let Err(SaveError::ChangedElsewhere { name, part, .. }) = first.write_many(&both) else { panic!() };
    assert_eq!((name, part, phone.texts()), (page("river"), 1, before));
}

#[test]
fn the_other_tab_wrote_beside_damage_and_that_is_not_overwritten_either() {
    let phone = Memory::new();
    phone.lay(&page("river").key(1), "torn");
    let (mut first, _) = open(&phone);
    let (mut second, _) = open(&phone);
    first.read_all().unwrap();
    second.read_all().unwrap();
    second.write(&page("river"), &entries(&["theirs"])).unwrap();
    let current = changed(first.write(&page("river"), &entries(&["mine"])));
    assert_eq!(current, Found::Loaded(entries(&["theirs"])));
}

#[test]
fn storage_is_cleared_while_the_app_runs_and_generations_do_not_start_again() {
    let phone = Memory::new();
    let (mut book, _) = open(&phone);
    for n in ["1", "2", "3"] {
        book.write(&page("river"), &entries(&[n])).unwrap();
    }
    phone.remove(&page("river").key(1)).unwrap();
    assert_eq!(changed(book.write(&page("river"), &entries(&["4"]))), Found::Absent);
    assert_eq!(book.write(&page("river"), &entries(&["4"])).unwrap().generation, 4);

    phone.remove(&page("river").key(1)).unwrap();
    book.read_all().unwrap();
    assert_eq!(book.write(&page("river"), &entries(&["5"])).unwrap().generation, 5);
}

#[test]
fn the_other_tab_dies_in_a_save_and_this_one_shows_and_keeps_it() {
    for cut in 2..=4 {
        let phone = Memory::new();
        let (mut other, _) = open(&phone);
        let (mut this, _) = open(&phone);
        other.write(&page("river"), &entries(&["1"])).unwrap();
        this.read_all().unwrap();
        phone.set_faults(Faults { cut: Some(cut), torn: true, ..Faults::default() });
        let save = [(page("river"), entries(&["1", "2"])), (page("hill"), entries(&["h"]))];
        // The fourth write only takes the journal away.
        assert_eq!(other.write_many(&save).is_ok(), cut == 4);
        phone.set_faults(Faults::default());

        let shown = joined(&mut this);
        assert_eq!(shown.get(&page("river")), Some(&entries(&["1", "2"])), "cut at {cut}");
        assert_eq!(shown.get(&page("hill")), Some(&entries(&["h"])), "cut at {cut}");
        this.write(&page("river"), &entries(&["1", "2", "3"])).unwrap();
        assert_eq!(joined(&mut this).get(&page("hill")), Some(&entries(&["h"])), "cut at {cut}");
        assert_eq!(phone.texts().len(), 2, "cut at {cut}");
    }
}

#[test]
fn the_other_tab_s_save_does_not_fit_and_its_entries_wait_and_are_handed_over_at_the_next_start() {
    let phone = Memory::new();
    let (mut other, _) = open(&phone);
    let (mut this, _) = open(&phone);
    phone.set_faults(Faults { cut: Some(2), ..Faults::default() });
    other.write(&page("river"), &entries(&["theirs"])).unwrap_err();
    let before = phone.texts();
    phone.set_faults(Faults { quota: Some(0), ..Faults::default() });
    let Err(SaveError::NotSaved { why: ShelfError::Full, unsaved }) =
        this.write(&page("hill"), &entries(&["mine"]))
    else {
        panic!()
    };
    assert_eq!(unsaved.iter().map(|page| page.payload.as_str()).collect::<Vec<_>>(), ["[\"mine\"]"]);
    assert_eq!(phone.texts(), before);
    assert_eq!(joined(&mut this).get(&page("river")), Some(&entries(&["theirs"])));

    let (_, recovery) = open(&phone);
    assert_eq!(
        recovery.unsaved.iter().map(|page| page.payload.as_str()).collect::<Vec<_>>(),
        ["[\"theirs\"]"]
    );
    assert!(phone.texts().is_empty());
}

#[test]
fn an_old_journal_is_undone_and_the_page_that_was_written_again_is_not() {
    let phone = Memory::new();
    let (mut other, _) = open(&phone);
    other.write(&page("river"), &entries(&["1"])).unwrap();
    phone.set_faults(Faults { cut: Some(2), ..Faults::default() });
    let long = entries(&[&"rain ".repeat(100)]);
    other.write_many(&[(page("river"), entries(&["1", "2"])), (page("hill"), long)]).unwrap_err();
    phone.set_faults(Faults::default());
    let journal = phone.texts().get("beetle-almanac:journal").cloned().unwrap();
    phone.remove("beetle-almanac:journal").unwrap();
    other.write(&page("river"), &entries(&["1", "later"])).unwrap();
    let later = phone.texts();

    phone.lay("beetle-almanac:journal", &journal);
    let room = beetle_almanac::store::headroom::used(&phone).unwrap().all + 200;
    phone.set_faults(Faults { quota: Some(room), ..Faults::default() });
    let (mut book, recovery) = open(&phone);
    assert_eq!(recovery.unsaved.len(), 2);
    assert_eq!(phone.texts().get(&page("river").key(1)), later.get(&page("river").key(1)));
    assert!(joined(&mut book).get(&page("river")).unwrap().is_superset(&entries(&["1", "later"])));
    assert_eq!(joined(&mut book).get(&page("hill")), None);
}

/// A shelf on which one key can no longer be written.
struct Stubborn<'a> {
    memory: &'a Memory,
    key: String,
}

impl Shelf for Stubborn<'_> {
    fn get(&self, key: &str) -> Result<Option<String>, ShelfError> {
        self.memory.get(key)
    }

    fn put(&self, key: &str, text: &str) -> Result<(), ShelfError> {
        if key == self.key { Err(ShelfError::Full) } else { self.memory.put(key, text) }
    }

    fn remove(&self, key: &str) -> Result<(), ShelfError> {
        if key == self.key { Err(ShelfError::Full) } else { self.memory.remove(key) }
    }

    fn keys(&self) -> Result<Vec<String>, ShelfError> {
        self.memory.keys()
    }
}

#[test]
fn a_save_that_can_neither_be_finished_nor_undone_holds_up_every_other_one() {
    let phone = Memory::new();
    let (mut other, _) = open(&phone);
    other.write(&page("river"), &entries(&["1"])).unwrap();
    phone.set_faults(Faults { cut: Some(2), torn: true, ..Faults::default() });
    other.write(&page("river"), &entries(&["1", "2"])).unwrap_err();
    phone.set_faults(Faults::default());

    let before = phone.texts();
    let shelf = Stubborn { memory: &phone, key: page("river").key(1) };
    let (mut book, recovery) = Pages::open(shelf, FORMAT).unwrap();
    assert_eq!(recovery.stuck, Some(ShelfError::Full));
    let shown = book.read_all().unwrap().pages.remove(0).found;
    assert_eq!(shown, Found::Loaded(entries(&["1", "2"])));
    assert!(matches!(book.write(&page("hill"), &entries(&["h"])), Err(SaveError::NotSaved { .. })));
    assert_eq!(phone.texts(), before);
    assert_eq!(joined(&mut open(&phone).0).get(&page("river")), Some(&entries(&["1", "2"])));
}

#[test]
fn an_old_journal_turns_up_after_the_page_was_written_again_and_both_are_kept() {
    let phone = Memory::new();
    let (mut other, _) = open(&phone);
    other.write(&page("river"), &entries(&["1"])).unwrap();
    phone.set_faults(Faults { cut: Some(2), ..Faults::default() });
    other.write(&page("river"), &entries(&["1", "from the journal"])).unwrap_err();
    phone.set_faults(Faults::default());
    let journal = phone.texts().get("beetle-almanac:journal").cloned().unwrap();
    let (mut this, _) = open(&phone);
    this.read_all().unwrap();
    this.write(&page("river"), &entries(&["1", "from the journal", "later"])).unwrap();
    let later = phone.texts();

    for repeat in 0..2 {
        phone.lay("beetle-almanac:journal", &journal);
        let shown = joined(&mut this);
        assert_eq!(shown.get(&page("river")), Some(&entries(&["1", "from the journal", "later"])));
        let (_, recovery) = open(&phone);
        assert_eq!(recovery.finished, 1);
        let texts = phone.texts();
        assert_eq!(texts.len(), 2, "repeat {repeat}");
        assert_eq!(texts.get(&page("river").key(1)), later.get(&page("river").key(1)));
        assert_eq!(joined(&mut open(&phone).0), shown);
    }
}
