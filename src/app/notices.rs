//! What stands above every place until it is dealt with: nothing here is ever said only once.

use super::edge::{clock, files};
use super::el::{Bit, El, el, live};
use super::ledger::asides;
use super::ledger::safety::{Pressing, clock_doubt};
use super::ledger::save::{copyable, state, state_view};
use super::parts::field::{Field, Says};
use super::parts::key::{Key, link};
use super::parts::notice::Notice;
use super::place::{Place, Section};
use super::records::{Home, Records};
use super::round::Walk;
use super::round::form::yes_no;
use super::state::Ui;
use super::unsaved::Unsaved;
use super::wording::en::{self, GOT_IT};
use super::wording::en_book::backup::ONLY_HERE;
use super::wording::{en_notices as w, en_typed};
use crate::almanac::day::Day;
use crate::almanac::json;
use crate::almanac::typed::{DayTypedError, day_planned};
use crate::app::graph::{Memo, RwSignal, untrack};
use crate::book::Book;
use crate::book::entry::Entry;
use crate::book::id::ThingId;
use crate::book::log::Log;
use crate::papers::backup;

/// The notices, the most pressing first.
pub fn notices(ui: Ui) -> El {
    let records = Records::get();
    // Shown by the style where letters are so large that a notice fills the screen.
    let open = RwSignal::new(false);
    let more = el("button")
        .attr("type", "button")
        .class("notices-more")
        .test_id("notices-more")
        .live_attr("aria-expanded", move || yes_no(open.get()))
        .live_text(move || if open.get() { w::LESS } else { w::MORE }.to_owned())
        .press(move || open.update(|open| *open = !*open));
    el("div")
        .live_class(move || if open.get() { "notices notices-open" } else { "notices" })
        .kid(live(move || records.unsaved.get().map(|unsaved| not_kept(ui, records, &unsaved))))
        .kid(only_shows(records))
        .kid(storage(ui, records))
        .kid(restored(records))
        .kid(damaged(ui, records))
        .kid(doubt(ui, records))
        .kid(demonstration(ui, records))
        .kid(backup_age(ui, records))
        .kid(more)
}

/// A notice the journeys know by `mark`.
fn boxed(mark: &str) -> El {
    el("div").class("notice-box").test_id(mark)
}

/// The same of what has been so for long and may be read another day: where letters fill the screen its first words,
/// until somebody wants more.
fn folding(mark: &str) -> El {
    boxed(mark).class("notice-box notice-folds")
}

fn keys(key: El) -> El {
    el("p").class("keys").kid(key)
}

/// What could not be kept, with three ways out.
fn not_kept(ui: Ui, records: Records, unsaved: &Unsaved) -> El {
    let text = entries_text(&unsaved.entries());
    let walk = Walk::get();
    let file = text.clone();
    let try_again = move || {
        let kept = records.try_again();
        ui.said.set(if kept { w::KEPT_NOW } else { w::STILL_NOT }.to_owned());
    };
    let as_file = move || {
        files::save(&w::file_name(&clock::stamp().day().to_string()), "application/json", &file);
    };
    let put_away = move || {
        walk.forget_held();
        records.put_away();
    };
    let said = w::unsaved(&unsaved.said(), w::why(&unsaved.why));
    let keys = keys(Key::new(w::TRY_AGAIN, try_again).primary().mark("unsaved-again").view())
        .kid(Key::new(w::AS_FILE, as_file).mark("unsaved-file").view())
        .kid(Key::new(w::PUT_AWAY, put_away).alarm().mark("unsaved-away").view());
    boxed("unsaved-notice")
        .kid(el("div").attr("role", "alert").kid(Notice::alarm(said).view()))
        .kid(el("p").text(w::UNSAVED_HOW))
        .kid(copyable("unsaved-text", w::UNSAVED_TEXT, &text))
        .kid(keys)
}

/// As a backup file, so that Restore takes it in; the bare lines of the demonstration, which no file holds.
fn entries_text(entries: &[Entry]) -> String {
    let own = entries.iter().any(|entry| !entry.is_demo());
    let log: Log = entries.iter().cloned().collect();
    let by = entries.first().and_then(|entry| entry.by.as_deref());
    if own { backup::write(&log, clock::stamp(), by) } else { json::list_to_text(entries) }
}

/// Nothing can be written: said at every place, with the way out.
fn only_shows(records: Records) -> Bit {
    live(move || {
        records.only_shows.get().then(|| {
            let again =
                Key::new(w::WRITE_AGAIN, move || _ = records.set_only_shows(false)).mark("write-again");
            boxed("only-shows").kid(Notice::caution(w::ONLY_SHOWS).view()).kid(keys(again.view()))
        })
    })
}

/// Whether the phone keeps anything.
fn storage(ui: Ui, records: Records) -> Bit {
    let written =
        Memo::new(move || records.book.with(|book| book.log().entries().any(|entry| !entry.is_demo())));
    live(move || {
        if records.gone.get() {
            return Bit::One(gone(ui, records));
        }
        match records.home.get() {
            Home::Kept => Bit::Nothing,
            Home::Forgotten(_) => {
                let written = written.get();
                let said = if written { w::FORGOTTEN_WRITTEN } else { w::FORGOTTEN };
                folding("storage-notice")
                    .kid(Notice::alarm(said).why(w::FORGOTTEN_HOW).view())
                    .kid(written.then(|| keys(link(w::TO_BACKUP, &Place::Book))))
                    .into()
            }
            Home::Elsewhere => {
                let over = Key::new(w::TAKE_OVER, move || records.take_over()).primary().mark("take-over");
                boxed("tab-notice").kid(Notice::caution(w::ELSEWHERE).view()).kid(keys(over.view())).into()
            }
            Home::ReadOnly => folding("storage-notice").kid(Notice::alarm(w::READ_ONLY).view()).into(),
        }
    })
}

/// Whether the first page of the Book is shown.
fn in_book(ui: Ui) -> Memo<bool> {
    Memo::new(move || ui.place.with(|place| *place == Place::Book))
}

fn gone(ui: Ui, records: Records) -> El {
    // On the Book itself the field stands further down the page.
    let there = in_book(ui);
    let way = live(move || (!there.get()).then(|| link(w::GONE_KEY, &Place::Book)));
    let away = Key::new(w::GONE_AWAY, move || records.gone.set(false)).alarm().mark("gone-away").view();
    boxed("storage-notice")
        .attr("role", "alert")
        .kid(Notice::alarm(w::GONE).view())
        .kid(el("p").class("keys").kid(way).kid(away))
}

/// Lines that the first copy had lost.
fn restored(records: Records) -> Bit {
    live(move || {
        let lines = records.restored.get();
        (lines > 0).then(|| {
            let away = Key::new(GOT_IT, move || records.restored.set(0)).mark("restored-away");
            let alone = records.twice.get() == Some(false);
            folding("restored-notice")
                .kid(Notice::caution(w::restored(lines)).view())
                .kid(alone.then(|| el("p").text(w::RESTORED_ALONE)))
                .kid(keys(away.view()))
        })
    })
}

fn damaged(ui: Ui, records: Records) -> Bit {
    let count = Memo::new(move || records.asides.with(|asides| asides::counted(asides)));
    let there = in_book(ui);
    live(move || {
        let (unread, twice) = count.get();
        (unread + twice > 0).then(|| {
            folding("damaged-notice")
                .kid((unread > 0).then(|| Notice::caution(w::damaged(unread)).view()))
                .kid((twice > 0).then(|| Notice::caution(w::twice(twice)).view()))
                .kid((!there.get()).then(|| keys(link(w::TO_BOOK, &Place::Book))))
        })
    })
}

fn doubt(ui: Ui, records: Records) -> Bit {
    let doubt = Memo::new(move || {
        let today = ui.today.get();
        records.book.with(|book| {
            clock_doubt(book, |entry| {
                entry.yard.as_ref().map_or(today, |yard| today_there(book, yard, today))
            })
        })
    });
    live(move || {
        let (newest, from, said) = (doubt.get(), ui.set_from.get(), ui.said_today.get());
        let today = ui.today.get();
        // Put right again before anybody answered, it is as it was.
        let from = from.filter(|from| *from != today);
        let words = match (newest, from) {
            (Some(newest), _) => w::clock(today, newest),
            (None, Some(from)) => w::clock_set(from, today),
            (None, None) if said => return said_today(ui, today).into(),
            (None, None) => return Bit::Nothing,
        };
        let right = (newest.is_none())
            .then(|| Key::new(w::CLOCK_RIGHT, move || ui.set_from.set(None)).mark("clock-right").view());
        let boxed = boxed("clock-notice").kid(Notice::caution(words).view());
        boxed.kid(visit(ui, newest.max(from).unwrap_or(today))).kid(right).into()
    })
}

/// The keeper has said which day it is.
fn said_today(ui: Ui, today: Day) -> El {
    let by_phone = Key::new(w::BY_THE_PHONE, move || ui.say_today(None)).mark("by-the-phone");
    boxed("clock-notice").kid(Notice::plain(w::said_today(today)).view()).kid(keys(by_phone.view()))
}

/// Asks for the day of this visit, which is not before `least`.
fn visit(ui: Ui, least: Day) -> El {
    let text = RwSignal::new(String::new());
    let read = move || text.with(|text| day_planned(text, least));
    let says = move || match read() {
        Ok(day) => Says::Echo(en::echo(&en::date(day))),
        Err(DayTypedError::Empty) => Says::Nothing,
        Err(DayTypedError::Past) => Says::Wrong(w::not_before(least)),
        Err(error) => Says::Wrong(en_typed::day(error)),
    };
    let go_by = move || {
        if let Ok(day) = untrack(read) {
            ui.say_today(Some(day));
        }
    };
    el("div")
        .kid(Field::new("visit-day", w::VISIT, text).day().hint(w::VISIT_HINT).says(says).view())
        .kid(keys(Key::new(w::VISIT_KEY, go_by).primary().mark("visit-go").view()))
}

/// Today by the calendar of the yard.
fn today_there(book: &Book, yard: &ThingId, otherwise: Day) -> Day {
    book.standing().yards.get(yard).map_or(otherwise, |yard| clock::today(&yard.zone))
}

/// Invented hives are marked wherever they are shown.
fn demonstration(ui: Ui, records: Records) -> Bit {
    let demo = |id: &str| ThingId::parse(id).is_ok_and(|id| id.is_demo());
    let said = Memo::new(move || {
        ui.place.with(|place| match place {
            Place::Yard(id) | Place::Hive(id) | Place::Decide(id, _) if demo(id) => Some(w::DEMO),
            Place::Round | Place::Load if records.has_demo() => Some(w::DEMO_IN),
            _ => None,
        })
    });
    live(move || said.get().map(|said| el("p").class("demo-mark").test_id("demo-mark").text(said)))
}

/// How old the last file is: on the first page of the Round always, elsewhere only when it cannot wait. The Book
/// itself says it in its own place.
fn backup_age(ui: Ui, records: Records) -> Bit {
    let shown = Memo::new(move || {
        let state = state(ui, records)?;
        let (home, walking, book) = ui.place.with(|place| {
            // Nor over a form, where it would push what is asked off the screen.
            let walking =
                matches!(place, Place::Yard(_) | Place::Hive(_) | Place::Decide(..) | Place::Write(..));
            (*place == Place::Round, walking, place.section() == Section::Book)
        });
        let wanted = home || (state.pressing == Pressing::Now && !walking && !book);
        wanted.then_some(state)
    });
    live(move || {
        shown.get().map(|state| {
            folding("backup-notice")
                .kid(state.file.is_none().then(|| el("p").text(ONLY_HERE)))
                .kid(state_view(state))
                .kid((state.lines > 0).then(|| keys(link(w::TO_BACKUP, &Place::Book))))
        })
    })
}
