//! Every way by which a text of foreign hands comes into the page, and what must hold whatever it says.

use crate::phone::{Faults, Memory};
use crate::seeds::{self, JOURNAL, KEY, today};
use crate::support::{SUMMER, Unicode};
use beetle_almanac::almanac::day::{Day, Stamp};
use beetle_almanac::almanac::json::{self, Json};
use beetle_almanac::almanac::quantity::{LengthUnit, Share, VolumeUnit};
use beetle_almanac::almanac::text::{self, LABEL_MOST};
use beetle_almanac::almanac::typed;
use beetle_almanac::app::bench::draft::BenchDraft;
use beetle_almanac::app::cabinet::{Cabinet, Opened};
use beetle_almanac::app::ledger::papers::events::events;
use beetle_almanac::app::ledger::{history, safety, words};
use beetle_almanac::app::load::sum;
use beetle_almanac::app::meta::Meta;
use beetle_almanac::app::prefs::Prefs;
use beetle_almanac::app::round::{draft::Drafts, walk};
use beetle_almanac::app::unsaved::Unsaved;
use beetle_almanac::book::entry::{Entry, What};
use beetle_almanac::book::log::Log;
use beetle_almanac::book::page::Page;
use beetle_almanac::book::write::MOST_HIVES;
use beetle_almanac::book::{Book, plain, round};
use beetle_almanac::papers::records::Records;
use beetle_almanac::papers::table::Style;
use beetle_almanac::papers::{backup, calendar::give_out, pack, recover::recover};
use beetle_almanac::store::envelope;
use std::fmt::Debug;
use std::rc::Rc;

/// Whether a text was taken in; or what it did that no text may do.
pub(crate) type Verdict = Result<bool, String>;

/// A way in.
pub(crate) struct Door {
    pub(crate) name: &'static str,
    pub(crate) open: fn(&Keeper, &str) -> Verdict,
    pub(crate) seeds: fn() -> Vec<String>,
    /// The same text with the checksums that belong to it.
    pub(crate) mend: fn(&str) -> Option<String>,
}

pub(crate) const DOORS: [Door; 10] = [
    Door { name: "backup", open: restore, seeds: seeds::backups, mend: crate::change::mended_backup },
    Door { name: "pack", open: hand_over, seeds: seeds::packs, mend: crate::change::mended_pack },
    Door { name: "page", open: page, seeds: seeds::pages, mend: mend_envelope },
    Door { name: "second", open: second, seeds: seeds::pages, mend: mend_envelope },
    Door { name: "journal", open: journal, seeds: seeds::journals, mend: mend_envelope },
    Door { name: "desk", open: desk, seeds: seeds::desk, mend: mend_envelope },
    Door { name: "slots", open: slots, seeds: seeds::slots, mend: |_| None },
    Door { name: "fields", open: fields, seeds: seeds::typed, mend: |_| None },
    Door { name: "codes", open: crate::runs::open, seeds: crate::runs::seeds, mend: crate::runs::mended },
    Door { name: "table", open: crate::tables::open, seeds: crate::tables::seeds, mend: |_| None },
];

#[allow(clippy::unnecessary_wraps)] // as every way to mend
fn mend_envelope(text: &str) -> Option<String> {
    Some(crate::change::mended_envelope(text))
}

/// The keeper whose book lies there.
pub(crate) struct Keeper {
    shelf: Memory,
    book: Book,
}

impl Keeper {
    pub(crate) fn new() -> Keeper {
        let shelf = seeds::shelf();
        let book = open(&Rc::new(shelf.clone())).map(|opened| opened.book).unwrap();
        Keeper { shelf, book }
    }

    pub(crate) fn book(&self) -> &Book {
        &self.book
    }
}

fn open(shelf: &Rc<Memory>) -> Result<Opened, String> {
    Cabinet::open(shelf.clone()).map_err(|why| format!("the book cannot be opened: {why:?}"))
}

pub(crate) fn holds(sound: bool, what: &str) -> Result<(), String> {
    if sound { Ok(()) } else { Err(what.to_owned()) }
}

/// What was taken in is written, read and written as the same letters.
fn steady<T: Json + PartialEq + Debug>(text: &str) -> Verdict {
    let Some(value) = json::from_text::<T>(text) else { return Ok(false) };
    let written = json::to_text(&value);
    let again = json::from_text::<T>(&written).ok_or("what was written cannot be read")?;
    holds(again == value, "read again it is another value")?;
    holds(json::to_text(&again) == written, "written again it is another text")?;
    Ok(true)
}

/// What another phone hands over, opened as the page opens every file.
pub(crate) fn hand_over(keeper: &Keeper, text: &str) -> Verdict {
    let Ok(file) = pack::open(text) else { return untouched(keeper, text) };
    let entries = file.backup.entries.clone();
    let preview = file.preview(&keeper.book, &Unicode);
    let union = &preview.union;
    let counted = union.new + union.same + union.fuller + union.clashes.len();
    holds(counted == entries.len(), "the preview counts other entries")?;
    let with = file.pack != Some(false);
    let written = pack::write(&entries, with, file.backup.made, file.backup.by.as_deref());
    let again = pack::open(&written).map_err(|why| format!("our own pack is refused: {why:?}"))?;
    holds(again.backup.entries == entries, "our own pack holds other entries")?;
    let shelf = Rc::new(keeper.shelf.clone());
    let Opened { mut cabinet, mut book, .. } = open(&shelf)?;
    let taken = cabinet.take_in(&mut book, entries.clone()).is_ok();
    holds(
        keeper
            .book
            .log()
            .entries()
            .all(|own| book.log().get(&own.id).is_some_and(|here| here == own || here.is_fuller(own))),
        "an entry is gone or changed",
    )?;
    let after = book.log().compare(&entries);
    holds(!taken || after.new + after.fuller == 0, "what was taken in is not here")?;
    let next = open(&Rc::new(shelf.restarted()))?;
    holds(next.book == book, "the next start finds another book")?;
    Ok(true)
}

/// The Restore section: looked at, taken in on a word.
fn restore(keeper: &Keeper, text: &str) -> Verdict {
    let Ok(file) = backup::open(text) else {
        let refused = untouched(keeper, text)?;
        // What can still be read of it is a file like any other.
        return match recover(text, Stamp::midnight(Day::FIRST)) {
            Some(rest) => {
                holds(backup::open(&rest.text) == Ok(rest.copy), "what was recovered is no backup")?;
                restore(keeper, &rest.text)
            }
            None => Ok(refused),
        };
    };
    // Everything in it, written and opened and written.
    let log: Log = file.entries.iter().cloned().collect();
    let written = backup::write(&log, file.made, file.by.as_deref());
    let again = backup::open(&written).map_err(|why| format!("our own backup is refused: {why:?}"))?;
    holds(log.entries().eq(&again.entries), "our own backup holds other entries")?;
    let log: Log = again.entries.into_iter().collect();
    holds(backup::write(&log, again.made, again.by.as_deref()) == written, "our own backup changes")?;
    let (alone, struck) = file.alone();
    holds(struck <= alone.log().len(), "more is struck than there is")?;
    // Some phones have hardly any room.
    let shelf = Rc::new(keeper.shelf.clone());
    if text.len().is_multiple_of(7) {
        let used: u64 = shelf.texts().iter().map(|(key, text)| (key.len() + text.len()) as u64).sum();
        shelf.set_faults(Faults { quota: Some(used + 3 * text.len() as u64 % 20_000), ..Faults::default() });
    }
    let Opened { mut cabinet, mut book, .. } = open(&shelf)?;
    let union = file.preview(&book);
    let (before, entries) = (book.log().len(), file.entries.len());
    let kept = match cabinet.take_in(&mut book, file.entries) {
        Ok(new) => {
            holds(new == union.new, "another number of entries is new than was said")?;
            new
        }
        Err((new, _)) => new,
    };
    let counted = union.new + union.same + union.fuller + union.clashes.len();
    holds(counted == entries, "the preview counts other entries")?;
    holds(book.log().len() == before + kept, "the book grew by another number")?;
    let next = open(&Rc::new(shelf.restarted()))?;
    holds(next.book == book, "the next start finds another book")?;
    holds(next.asides.is_empty(), "the next start finds damage")?;
    look(&book)?;
    Ok(true)
}

/// A file that is refused changes nothing.
fn untouched(keeper: &Keeper, text: &str) -> Verdict {
    let shelf = Rc::new(keeper.shelf.clone());
    let Opened { book, .. } = open(&shelf)?;
    holds(backup::open(text).is_err(), "refused once and not the second time")?;
    holds(book == keeper.book && shelf.texts() == keeper.shelf.texts(), "a refused file changed the book")?;
    Ok(false)
}

/// One more note, as the page writes it; none when the counters are used up.
fn note(book: &Book) -> Option<Entry> {
    let text = format!(
        "{{\"id\":\"zz-{}\",\"day\":\"2026-07-14\",\"at\":\"2026-07-14T08:05:31+02:00\",\"what\":{{\"note\":{{\"text\":\"gate\"}}}},\"yard\":\"k7f3qa9x-2\"}}",
        book.log().next_n()
    );
    json::from_text(&text)
}

/// A page of the book as it lies on the shelf.
fn page(keeper: &Keeper, raw: &str) -> Verdict {
    if let Some(inside) = envelope::open(raw).ok().map(|inside| inside.payload) {
        if let Some(quick) = plain::page(inside) {
            holds(json::from_text(inside) == Some(quick), "the two readers of a page differ")?;
        }
        steady::<Page>(inside)?;
    }
    let shelf = Rc::new(keeper.shelf.clone());
    shelf.lay(KEY, raw);
    shelf.lay(&["beetle-almanac:page:", raw.get(..30).unwrap_or("x")].concat(), raw);
    let before = shelf.texts();
    let Opened { mut cabinet, mut book, asides, .. } = open(&shelf)?;
    holds(shelf.texts() == before, "opening a page wrote")?;
    let unreadable = asides.iter().any(|aside| aside.key == KEY);
    let Some(entry) = note(&book) else { return Ok(!unreadable) };
    let saved = cabinet.save(&mut book, vec![entry.clone()]);
    let after = shelf.texts();
    if unreadable || saved.is_err() {
        holds(after.get(KEY) == before.get(KEY), "a page that cannot be read was written over")?;
    }
    let next = open(&Rc::new(shelf.restarted()))?;
    if saved.is_ok() {
        holds(next.book.log().get(&entry.id) == Some(&entry), "what was saved is gone at the next start")?;
    }
    if !unreadable {
        holds(next.book == book, "the next start finds another book")?;
        look(&book)?;
    }
    Ok(!unreadable)
}

/// A page of the second copy, laid beside the first.
fn second(keeper: &Keeper, raw: &str) -> Verdict {
    let shelf = Rc::new(keeper.shelf.clone());
    let Opened { mut cabinet, mut book, .. } = open(&shelf)?;
    let before = book.log().len();
    let other = "beetle-almanac:page:keeper:2026-07-14";
    let texts = vec![(KEY.to_owned(), raw.to_owned()), (other.to_owned(), raw.to_owned())];
    let found = cabinet.reconcile(&mut book, texts).map_err(|why| format!("not reconciled: {why:?}"))?;
    holds(book.log().len() == before + found.restored, "another number of entries came back than was said")?;
    holds(keeper.book.log().entries().all(|own| book.log().get(&own.id) == Some(own)), "an entry is gone")?;
    let next = open(&Rc::new(shelf.restarted()))?;
    holds(found.refused || next.book == book, "the next start finds another book")?;
    Ok(found.asides.is_empty())
}

/// A save cut short.
fn journal(keeper: &Keeper, raw: &str) -> Verdict {
    let shelf = Rc::new(keeper.shelf.clone());
    shelf.lay(JOURNAL, raw);
    let before = shelf.texts();
    let Opened { book, asides, .. } = open(&shelf)?;
    let left = asides.iter().any(|aside| aside.key == JOURNAL);
    holds(!left || shelf.texts() == before, "a journal that cannot be read was applied")?;
    holds(left || !shelf.texts().contains_key(JOURNAL), "a journal that was applied lies there still")?;
    let next = open(&Rc::new(shelf.restarted()))?;
    holds(next.book == book, "the next start finds another book")?;
    Ok(!left)
}

/// The entry in the making, and what the app remembers of itself.
fn desk(keeper: &Keeper, raw: &str) -> Verdict {
    use beetle_almanac::store::desk::Slot;
    let mut taken = false;
    for slot in [Slot::Draft, Slot::Meta] {
        let shelf = Rc::new(keeper.shelf.clone());
        shelf.lay(&slot.keys()[0], raw);
        let Opened { cabinet, book, .. } = open(&shelf)?;
        holds(book == keeper.book, "what lies on the desk changed the book")?;
        let lies = || shelf.texts().values().any(|text| text == raw);
        if matches!(slot, Slot::Meta) {
            let meta = cabinet.meta();
            taken |= meta.is_some();
            let readable = meta.is_some();
            let meta = meta.unwrap_or(Meta {
                label: None,
                since: today(),
                written: true,
                backup: None,
                calendar: Vec::new(),
            });
            let kept = cabinet.keep_meta(&meta);
            holds(readable || lies(), "what cannot be read was thrown away")?;
            holds(kept.is_err() || cabinet.meta() == Some(meta), "what was remembered is another thing")?;
        } else {
            let mut tab = cabinet.half_made();
            let mut drafts = tab.begin(None);
            taken |= !drafts.is_empty();
            let hive = book.log().entries().next().unwrap().id.thing(9);
            let typed =
                beetle_almanac::app::round::draft::Typed { count: "7".to_owned(), ..Default::default() };
            drafts.put(&hive, typed.clone());
            if tab.keep(&drafts).is_ok() {
                let lying = cabinet.half_made().begin(None);
                holds(lying.get(&hive) == Some(&typed), "an entry in the making is gone")?;
            } else {
                holds(lies(), "what cannot be read was thrown away")?;
            }
        }
    }
    Ok(taken)
}

/// What lies there without an envelope.
fn slots(keeper: &Keeper, text: &str) -> Verdict {
    let mut taken = steady::<Prefs>(text)?;
    taken |= steady::<BenchDraft>(text)?;
    taken |= steady::<Drafts>(text)?;
    taken |= steady::<Meta>(text)?;
    taken |= steady::<Entry>(text)?;
    if let Some(left) = Unsaved::left_over(text, Vec::new(), &keeper.book) {
        let again = Unsaved::left_over(&left.to_text(), Vec::new(), &keeper.book);
        holds(again.is_some_and(|again| again.acts == left.acts), "what was not kept is another thing")?;
        let shelf = Rc::new(keeper.shelf.clone());
        let Opened { mut cabinet, mut book, .. } = open(&shelf)?;
        let saved = cabinet.save(&mut book, left.entries());
        let next = open(&Rc::new(shelf.restarted()))?;
        holds(next.book == book, "the next start finds another book")?;
        holds(saved.is_ok() || book == keeper.book, "what was refused changed the book")?;
        taken = true;
    }
    Ok(taken)
}

/// What people type.
fn fields(_: &Keeper, text: &str) -> Verdict {
    let mut taken = typed::share(text).is_ok();
    if let Ok(number) = typed::decimal(text) {
        taken = true;
        // Three decimals may be thousands: then somebody is asked, and no other number comes of it.
        let again = typed::decimal(&number.to_string());
        holds(again.is_err() || again == Ok(number), "a number is another one when it is typed again")?;
    }
    taken |= typed::count(text, 0, 1000).is_ok() | typed::count_or_range(text, 1000).is_ok();
    taken |= typed::price(text).is_ok();
    for unit in VolumeUnit::ALL {
        taken |= typed::volume(text, unit).is_ok();
    }
    for unit in LengthUnit::ALL {
        taken |= typed::length(text, unit).is_ok();
    }
    taken |= typed::day_done(text, today()).is_ok() | typed::day_planned(text, today()).is_ok();
    if let Ok(tags) = typed::tags(text, 500) {
        holds(tags.len() <= 500, "more tags than were allowed")?;
        taken = true;
    }
    if let Ok(label) = text::label(text, LABEL_MOST, &Unicode) {
        holds(
            text::label(&label, LABEL_MOST, &Unicode).as_ref() == Ok(&label),
            "a label changes when it is typed again",
        )?;
        holds(!text::look_alike(&label, &label, &Unicode), "a label looks like itself and is another")?;
        taken = true;
    }
    Ok(taken)
}

/// Everything the page shows of a book, on a day of its own and at the ends of the calendar.
fn look(book: &Book) -> Result<(), String> {
    use beetle_almanac::almanac::day::Day;
    let standing = book.standing();
    let yards: Vec<_> = standing.yards.keys().cloned().collect();
    // What is shown of a yard is made for as many hives as the page lets anybody keep in one.
    if standing.hives.len() > MOST_HIVES {
        return Ok(());
    }
    for today in [today(), Day::FIRST, Day::LAST] {
        for yard in &yards {
            let rows = round::rows(standing, yard, today);
            let _ = (
                round::visit(&rows),
                walk::rest(&rows, &|_| false),
                walk::counts(&rows, today),
                walk::first_due(&rows),
            );
            let _ = (walk::stops(standing, yard, today), walk::last_walked(book, yard));
        }
        let _ = sum::load(standing, &yards, today, Share::QUARTER, None, VolumeUnit::UsFluidOunce);
        let _ = (
            sum::missing(standing, &yards),
            sum::shortest(standing, &yards),
            sum::every_trap(standing, &yards),
        );
        let made = Stamp::midnight(today);
        if let Some(calendar) = give_out(&events(book, today, &SUMMER), &[], today, made, "No longer due") {
            holds(calendar.text.ends_with("END:VCALENDAR\r\n"), "a calendar has no end")?;
        }
        let _ = (safety::unsafe_lines(book, None, today), safety::months_left(book, 50, today));
    }
    let lines = history::lines(book, None);
    holds(history::versions(book).len() >= lines.len(), "lines have more versions than entries")?;
    for line in &lines {
        let said = words::entry(book, line.entry);
        holds(!said.is_empty() || matches!(line.entry.what, What::Keeper(_)), "an entry says nothing")?;
    }
    for records in Records::all(book) {
        let text = records.table(book, Style::default(), &|entry| words::entry(book, entry));
        holds(!text.is_empty(), "a table is empty")?;
    }
    Ok(())
}
