//! The form in which a line of the history is corrected.

use super::edit::{self, DIDS, Fields, SKIPS};
use super::edit_facts::{self, Texts};
use super::edit_parts::{self, Facts};
use super::shifts;
use crate::almanac::day::Day;
use crate::almanac::typed::{DayTypedError, day_done};
use crate::app::edge;
use crate::app::edge::letters::BrowserLetters;
use crate::app::edge::pause::when_rested;
use crate::app::el::{Bit, El, el};
use crate::app::frame::focus;
use crate::app::graph::{Memo, RwSignal, StoredValue, untrack};
use crate::app::parts::field::{Field, Says};
use crate::app::parts::key::Key;
use crate::app::records::Records;
use crate::app::round::bits;
use crate::app::round::draft::Typed;
use crate::app::round::form::{count_says, day_says, level_says, note, refused_line, select};
use crate::app::round::said;
use crate::app::wording::en_book::history as w;
use crate::app::wording::{en, en_round, en_typed};
use crate::book::entry::Entry;
use crate::book::id::{EntryId, ThingId};
use crate::book::shift::Shift;
use crate::book::write::Refusal;

/// What stands in the fields. It outlives the form, which is drawn anew with the list around it: nothing typed is lost
/// when another tab writes.
#[derive(Clone, Copy)]
pub(super) struct Form {
    records: Records,
    /// The version that is corrected, as it stood when its fields were opened.
    line: RwSignal<Option<EntryId>>,
    day: RwSignal<String>,
    chosen: RwSignal<String>,
    before: RwSignal<String>,
    after: RwSignal<String>,
    count: RwSignal<String>,
    note: RwSignal<String>,
    traps: RwSignal<Vec<ThingId>>,
    facts: Facts,
    /// What the phone or the book said to the last attempt.
    stop: RwSignal<String>,
}

impl Form {
    pub(super) fn new(records: Records) -> Form {
        let text = || RwSignal::new(String::new());
        Form {
            records,
            line: RwSignal::new(None),
            day: text(),
            chosen: text(),
            before: text(),
            after: text(),
            count: text(),
            note: text(),
            traps: RwSignal::new(Vec::new()),
            facts: Facts::new(records),
            stop: text(),
        }
    }

    /// Opens the fields of `line`.
    pub(super) fn open(self, line: &EntryId) {
        let Some(entry) = self.entry(line) else { return };
        let (chosen, typed) = edit::typed(&entry);
        self.day.set(entry.day.to_string());
        self.chosen.set(chosen.to_string());
        self.before.set(typed.before);
        self.after.set(typed.after);
        self.count.set(typed.count);
        self.note.set(typed.note);
        self.traps.set(typed.traps);
        self.facts.set(edit_facts::texts(&entry.what));
        self.stop.set(String::new());
        self.line.set(Some(line.clone()));
    }

    pub(super) fn shut(self) {
        self.line.set(None);
    }

    /// Something was typed here that would be lost with the form: it says so, and has the focus. A form out of sight is
    /// none that could be finished.
    pub(super) fn waits(self) -> bool {
        let line = self.line.get_untracked().and_then(|line| self.entry(&line));
        let changed = line.is_some_and(|entry| {
            let (chosen, typed) = edit::typed(&entry);
            let (now, chosen_now, day) = untrack(|| (self.typed(), self.chosen.get(), self.day.get()));
            let facts = untrack(|| self.facts.texts());
            now != typed
                || facts != edit_facts::texts(&entry.what)
                || chosen_now != chosen.to_string()
                || day != entry.day.to_string()
        });
        let waits = changed && focus("[data-testid=edit-save]");
        if waits {
            self.stop.set(w::STILL_OPEN.to_owned());
        }
        waits
    }

    /// Whether fields are open. Tracked.
    pub(super) fn is_open(self) -> bool {
        self.line.with(Option::is_some)
    }

    fn entry(self, line: &EntryId) -> Option<Entry> {
        self.records.book.with_untracked(|book| book.log().get(line).cloned())
    }

    /// What stands in the fields. Tracked.
    fn typed(self) -> Typed {
        Typed {
            before: self.before.get(),
            after: self.after.get(),
            count: self.count.get(),
            note: self.note.get(),
            traps: self.traps.get(),
            begun: None,
        }
    }

    /// The correction with the fields as `typed`: none when one of them cannot be read, else what the book says to it.
    fn made(self, entry: &Entry, typed: &Typed, today: Day) -> Option<Result<Vec<Entry>, Refusal>> {
        let chosen = self.chosen.with_untracked(|text| text.parse().unwrap_or_default());
        let what = if edit::fields(entry).is_some_and(Fields::are_facts) {
            untrack(|| self.facts.what(&entry.what))?
        } else {
            edit::what(entry, chosen, typed).ok()?
        };
        let day = if edit::has_day(entry) {
            self.day.with_untracked(|text| day_done(text, today)).ok()?
        } else {
            entry.day
        };
        let pen = self.records.pen();
        Some(
            self.records
                .book
                .with_untracked(|book| book.correct(&pen, day, today, &entry.id, what, &BrowserLetters)),
        )
    }

    /// Follows what a due date may hang on; no note moves one.
    fn follow(self) {
        for text in [self.day, self.chosen, self.before, self.after, self.count] {
            text.track();
        }
        self.traps.track();
        let _: Texts = self.facts.texts();
        self.records.book.track();
    }
}

/// The form; `shut` is called when it is done with.
pub(super) fn view(form: Form, shut: impl Fn() + Copy + 'static) -> Bit {
    let Some(entry) = form.line.get_untracked().and_then(|line| form.entry(&line)) else {
        return Bit::Nothing;
    };
    let Some(fields) = edit::fields(&entry) else { return Bit::Nothing };
    let records = form.records;
    // Of the yard, where it may be another day than on this phone.
    let today = records.today_of(&entry);
    let shifts: RwSignal<Option<Vec<Shift>>> = RwSignal::new(None);
    let refused: RwSignal<Option<Refusal>> = RwSignal::new(None);
    let own = StoredValue::new(entry.clone());
    let line = entry.clone();
    // The whole book is read anew for it, three times over: too long for every letter.
    let look = move || {
        let made = own.with_value(|entry| {
            let note = edit::typed(entry).1.note;
            form.made(entry, &Typed { note, ..form.typed() }, today)
        });
        let (found, refusal) = match made {
            Some(Ok(entries)) => {
                (Some(records.book.with_untracked(|book| book.shifts(&entries, today))), None)
            }
            Some(Err(refusal)) => (None, Some(refusal)),
            None => (None, None),
        };
        shifts.renew(found);
        refused.renew(refusal.filter(|refusal| *refusal != Refusal::Nothing));
    };
    when_rested(move || form.follow(), look);
    let save = move || {
        // Tapped again before the form was gone.
        if form.line.with_untracked(Option::is_none) {
            return;
        }
        let written = match form.made(&entry, &untrack(|| form.typed()), today) {
            // Pressed in the middle of typing, it says so before it would by itself.
            Some(Err(refusal)) if refusal != Refusal::Nothing => {
                refused.renew(Some(refusal));
                return go_to_wrong();
            }
            Some(written) => written,
            // The field says why.
            None => return go_to_wrong(),
        };
        match records.put(written, w::EDITED) {
            Ok(_) => {
                form.shut();
                shut();
            }
            Err(stop) => form.stop.set(said::stop(&stop)),
        }
    };
    let stop = Memo::new(move || form.stop.with(|stop| (!stop.is_empty()).then(|| stop.clone())));
    let keys = el("p").class("keys").kid(Key::new(w::SAVE, save).primary().mark("edit-save").view()).kid(
        Key::new(w::LEAVE, move || {
            form.shut();
            shut();
        })
        .mark("edit-leave")
        .view(),
    );
    bits![
        el("div").class("fields").kid(parts(form, &line, fields)).kid(if edit::has_day(&line) {
            day(form, today, refused)
        } else {
            refused_line(Memo::new(move || refused.get().as_ref().map(en_round::refusal)))
        }),
        shifts::view(records.book, today, w::THIS, shifts),
        refused_line(stop),
        keys,
    ]
}

fn parts(form: Form, entry: &Entry, fields: Fields) -> Bit {
    let options = |names: &[&'static str]| {
        let mut all = Vec::new();
        for (at, name) in names.iter().enumerate() {
            all.push((at.to_string(), (*name).to_owned()));
        }
        all
    };
    let words = || note("edit-note", form.note);
    match fields {
        Fields::Work => bits![
            select("edit-what", w::WHAT, form.chosen, &options(&DIDS.map(en_round::did_key))),
            level("edit-before", en_round::BEFORE, form.before).view(),
            level("edit-after", en_round::AFTER, form.after).hint(w::AFTER_HINT).view(),
            Field::new("edit-count", en_round::BEETLES, form.count)
                .whole()
                .hint(en_round::COUNT_HINT)
                .says(move || count_says(form.count))
                .view(),
            words(),
        ],
        Fields::Skip => {
            bits![select("edit-what", w::WHY, form.chosen, &options(&SKIPS.map(en_round::skip_key))), words(),]
        }
        Fields::Note => words().into(),
        Fields::Day => Bit::Nothing,
        fields => edit_parts::view(form.facts, entry, fields),
    }
}

fn level(id: &str, label: &str, text: RwSignal<String>) -> Field {
    Field::new(id, en::in_percent(label), text).says(move || level_says(text))
}

/// The field for the day, which also says what the book has against the correction: nearly always it is the day.
fn day(form: Form, today: Day, refused: RwSignal<Option<Refusal>>) -> El {
    let says = move || match refused.get() {
        Some(refusal) => Says::Wrong(en_round::refusal(&refusal)),
        None if form.day.with(String::is_empty) => Says::Wrong(en_typed::day(DayTypedError::Empty)),
        None => day_says(form.day, today),
    };
    Field::new("edit-day", en_round::DAY, form.day).day().says(says).view()
}

/// The focus goes to the first field that has something to mend.
fn go_to_wrong() {
    edge::after_paint(|| {
        focus(".line-keys [aria-invalid=true]");
    });
}
