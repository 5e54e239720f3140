//! The page of a sheet: what it is made for, the sheet, its ways out.

use super::events::yards;
use super::give::{self, SHEET};
use super::season::Reviewed;
use super::sheet::document;
use super::{cards, lot, record, season, truck};
use crate::almanac::day::Day;
use crate::almanac::typed::{DayTypedError, day_done, day_planned};
use crate::app::edge;
use crate::app::el::{Bit, El, below, el, live};
use crate::app::frame::{find, heading};
use crate::app::graph::{Memo, RwSignal, untrack};
use crate::app::ledger::words;
use crate::app::load::page::tick;
use crate::app::parts::field::{Field, Says};
use crate::app::parts::key::{Key, link};
use crate::app::place::{Paper, Place, Section};
use crate::app::records::Records;
use crate::app::state::Ui;
use crate::app::wording::en_packet::EVERY;
use crate::app::wording::en_papers::{self as w, record as wr};
use crate::app::wording::{en, en_catch, en_load, en_lot as wl, en_records, en_season as ws, en_typed};
use crate::book::Book;
use crate::book::caught::Days;
use crate::book::id::{EntryId, ThingId};
use crate::book::record::Blank;
use crate::book::review::year_to;

/// The heading of a sheet, and how its files are named.
pub(super) fn title(paper: Paper) -> (&'static str, &'static str) {
    match paper {
        Paper::Truck => (w::truck::TITLE, w::truck::FILE),
        Paper::Cards => (w::card::TITLE, w::card::FILE),
        Paper::Record => (wr::TITLE, wr::FILE),
        Paper::Season => (ws::TITLE, ws::FILE),
        Paper::Lot => (wl::TITLE, wl::FILE),
    }
}

/// The page of `paper`, first shown for the yard `of` where the address names one.
pub(in crate::app::ledger) fn view(ui: Ui, records: Records, paper: Paper, of: Option<&str>) -> Bit {
    let (title, file) = title(paper);
    let line = of.unwrap_or_default();
    let of = of.and_then(|of| ThingId::parse(of).ok());
    let (all, came_from) = records.book.with_untracked(|book| {
        let mut all = yards(book);
        // Whoever asks for the sheet of an invented yard by its name gets that one.
        let named = book.standing().open_yards().map(|(id, _)| id).find(|id| Some(*id) == of.as_ref());
        if let Some(named) = named {
            all.retain(|id| id != named);
            all.insert(0, named.clone());
        }
        let name = |id: &ThingId| (id.to_string(), super::sheet::yard_name(book, id));
        (all.iter().map(name).collect::<Vec<_>>(), named.map(name))
    });
    let back = match came_from {
        Some((yard, name)) => link(name, &Place::Yard(yard)),
        None if paper == Paper::Lot => link(en_records::TITLE, &Place::Records),
        None => link(en::section(Section::Book), &Place::Book),
    };
    let back = el("p").class("back").kid(back);
    let lots = if paper == Paper::Lot { records.book.with_untracked(lot::lots) } else { Vec::new() };
    let nothing = if paper == Paper::Lot { wl::NO_LOT } else { w::NO_YARD };
    let Some((first, _)) = all.first().filter(|_| paper != Paper::Lot || !lots.is_empty()) else {
        return Bit::Many(vec![back.into(), heading(title).into(), el("p").text(nothing).into()]);
    };
    let yard = RwSignal::new(first.clone());
    let today = ui.today.get_untracked();
    let (fields, sheet) = match paper {
        Paper::Truck => truck_page(ui, records, yard, &all),
        Paper::Cards => cards_page(ui, records, yard, &all),
        Paper::Record => record_page(ui, records),
        Paper::Season => season_page(ui, records, yard, &all),
        Paper::Lot => lot_page(ui, records, line, &lots),
    };
    let print = move || {
        if let Some(window) = edge::window() {
            let _ = window.print();
        }
    };
    let make = move || {
        let sheet = find(".paper").ok_or(w::NO_YARD)?;
        let name = [file, &today.to_string(), SHEET.ending].concat();
        let text = document(title, &sheet.outer_html());
        Ok(give::Paper { name, text, plain: Some(sheet.inner_text()), out: Box::new(|| ()) })
    };
    Bit::Many(vec![
        back.into(),
        heading(title).into(),
        fields.into(),
        el("p").class("keys").kid(Key::new(w::PRINT, print).primary().mark("sheet-print").view()).into(),
        give::keys(SHEET, make),
        el("article")
            .class(if paper == Paper::Record { "paper paper-pages" } else { "paper" })
            .kid(sheet)
            .into(),
    ])
}

fn truck_page(ui: Ui, records: Records, yard: RwSignal<String>, all: &[(String, String)]) -> (El, Bit) {
    let today = ui.today.get_untracked();
    // The day that Load was worked out for, unless it is over.
    let trip = ui.trip_day.with_untracked(|text| Day::parse(text).ok()).filter(|day| *day >= today);
    let typed = RwSignal::new(trip.unwrap_or(today).to_string());
    let day = Memo::new(move || typed.with(|text| day_planned(text, ui.today.get())));
    let sheet = live(move || {
        let day = day.get().ok()?;
        let yard = chosen(yard)?;
        Some(records.book.with(|book| truck::view(ui, book, &yard, day)))
    });
    let day = day_field("paper-day", en_load::DAY, typed, day);
    (el("div").class("fields").kid(chooser("paper-yard", w::YARD, all, yard)).kid(day), sheet)
}

fn cards_page(ui: Ui, records: Records, yard: RwSignal<String>, all: &[(String, String)]) -> (El, Bit) {
    let hive = RwSignal::new(String::new());
    let sheet = live(move || {
        let yard = chosen(yard)?;
        let hive = chosen(hive);
        let today = ui.today.get();
        Some(records.book.with(|book| cards::view(book, &yard, hive.as_ref(), today)))
    });
    let hives = live(move || {
        hive.set(String::new());
        let yard = chosen(yard)?;
        let mut all = vec![(String::new(), w::WHOLE_YARD.to_owned())];
        records.book.with(|book| {
            for (id, _) in book.standing().hives_of(&yard, true) {
                all.push((id.to_string(), words::hive_name(book, id)));
            }
        });
        Some(chooser("paper-hive", w::HIVE, &all, hive))
    });
    (el("div").class("fields").kid(chooser("paper-yard", w::YARD, all, yard)).kid(hives), sheet)
}

fn record_page(ui: Ui, records: Records) -> (El, Bit) {
    let (notes, every) = (RwSignal::new(false), RwSignal::new(false));
    let span = Span::new(ui);
    let sheet = live(move || {
        let (from, to) = span.days()?;
        let (notes, every, today) = (notes.get(), every.get(), ui.today.get());
        Some(records.book.with(|book| record::view(book, from, to, today, notes, every)))
    });
    let fields = span
        .fields(el("div").class("fields"))
        .kid(tick(wr::NOTES, move || notes.get(), move |on| notes.set(on)))
        .kid(tick(EVERY, move || every.get(), move |on| every.set(on)));
    (fields, sheet)
}

fn season_page(ui: Ui, records: Records, yard: RwSignal<String>, all: &[(String, String)]) -> (El, Bit) {
    let (span, notes) = (Span::new(ui), RwSignal::new(false));
    let reviewed = Memo::new(move || {
        let (days, yard) = (span.days()?, chosen(yard)?);
        Some(records.caught.with(|caught| Reviewed::of(caught, yard, days)))
    });
    let told = move |tell: &dyn Fn(&Book, &Reviewed) -> Bit| {
        reviewed.with(|of| {
            let of = of.as_ref()?;
            Some(records.book.with(|book| untrack(|| tell(book, of))))
        })
    };
    let sheet = Bit::Many(vec![
        live(move || told(&season::catch)),
        below(move || live(move || told(&|book, of| season::rest(ui, book, of, notes)))),
    ]);
    let ways = live(move || {
        let yard = yard.get();
        el("p")
            .class("keys")
            .kid(
                link(ws::VERDICT, &Place::Write(Blank::Verdict, Some(yard.clone())))
                    .test_id("season-verdict"),
            )
            .kid(link(en_catch::TITLE, &Place::Catch(Some(yard))).test_id("season-catch"))
    });
    let fields = span
        .fields(el("div").class("fields").kid(chooser("paper-yard", w::YARD, all, yard)))
        .kid(tick(wr::NOTES, move || notes.get(), move |on| notes.set(on)));
    (el("div").class("stack").kid(fields).kid(ways), sheet)
}

/// The lot of `line` is shown first, else the newest.
fn lot_page(ui: Ui, records: Records, line: &str, lots: &[(String, String)]) -> (El, Bit) {
    let first = lots.iter().find(|(id, _)| id == line).or(lots.first());
    let lot = RwSignal::new(first.map(|(id, _)| id.clone()).unwrap_or_default());
    let sheet = live(move || {
        let id = lot.with(|id| EntryId::parse(id).ok())?;
        let today = ui.today.get();
        records.book.with(|book| lot::view(book, &id, today))
    });
    (el("div").class("fields").kid(chooser("paper-lot", wl::WHICH, lots, lot)), sheet)
}

/// The first and the last day of a sheet.
#[derive(Clone, Copy)]
struct Span {
    texts: [RwSignal<String>; 2],
    days: [Memo<Result<Day, DayTypedError>>; 2],
}

impl Span {
    /// The year up to today, unless the keeper says otherwise.
    fn new(ui: Ui) -> Span {
        let Days { from, to } = year_to(ui.today.get_untracked());
        let texts = [from, to].map(|day| RwSignal::new(day.to_string()));
        let read =
            |text: RwSignal<String>| Memo::new(move || text.with(|text| day_done(text, ui.today.get())));
        Span { texts, days: texts.map(read) }
    }

    fn days(self) -> Option<(Day, Day)> {
        let [from, to] = self.days;
        Some((from.get().ok()?, to.get().ok()?))
    }

    fn fields(self, fields: El) -> El {
        let ([from_text, to_text], [from, to]) = (self.texts, self.days);
        fields.kid(day_field("paper-from", wr::FROM, from_text, from)).kid(day_field(
            "paper-to",
            wr::TO,
            to_text,
            to,
        ))
    }
}

pub(in crate::app) fn day_field(
    id: &str,
    label: &str,
    typed: RwSignal<String>,
    day: Memo<Result<Day, DayTypedError>>,
) -> El {
    let says = move || match day.get() {
        Ok(day) => Says::Echo(en::echo(&en::date(day))),
        Err(error) => Says::Wrong(en_typed::day(error)),
    };
    Field::new(id, label, typed).day().says(says).view()
}

fn chosen(id: RwSignal<String>) -> Option<ThingId> {
    id.with(|id| ThingId::parse(id).ok())
}

/// One of several, by its id.
pub(in crate::app::ledger) fn chooser(
    id: &str,
    label: &str,
    all: &[(String, String)],
    chosen: RwSignal<String>,
) -> El {
    let mut select = el("select").attr("id", id).attr("autocomplete", "off");
    for (value, name) in all {
        select = select.kid(el("option").attr("value", value).text(name));
    }
    el("div").class("field field-wide").kid(el("label").attr("for", id).text(label)).kid(select.typed(chosen))
}
