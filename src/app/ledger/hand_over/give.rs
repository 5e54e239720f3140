//! The page that gives: which hives, since when, and the ways out.

use super::codes;
use crate::almanac::day::Day;
use crate::almanac::typed::day_done;
use crate::app::edge::clock;
use crate::app::el::{Bit, El, el, live};
use crate::app::frame::heading;
use crate::app::graph::{Memo, RwSignal};
use crate::app::ledger::papers::give::{self, Kind, Paper};
use crate::app::ledger::papers::page::{chooser, day_field};
use crate::app::ledger::words;
use crate::app::load::page::tick;
use crate::app::parts::card::more;
use crate::app::parts::choice::Choice;
use crate::app::parts::key::link;
use crate::app::place::{Place, Section};
use crate::app::records::Records;
use crate::app::state::Ui;
use crate::app::wording::en;
use crate::app::wording::en_hand_over::{HAND_OVER, give as w};
use crate::book::Book;
use crate::book::entry::Entry;
use crate::book::id::ThingId;
use crate::book::standing::HiveNow;
use crate::papers::pack;

/// A pack. Phones share texts with each other, and few share other files.
const PACK: Kind =
    Kind { ending: ".txt", media: "text/plain", marks: ["pack-share", "pack-save", "pack-show"] };

/// What stands in the fields.
#[derive(Clone, Copy)]
struct Chosen {
    records: Records,
    yard: RwSignal<String>,
    /// Hives that were ticked off.
    off: RwSignal<Vec<ThingId>>,
    since: RwSignal<String>,
    from: RwSignal<String>,
    notes: RwSignal<bool>,
    today: RwSignal<Day>,
}

/// The page, first shown for the yard `of` where the address names one.
pub(in crate::app::ledger) fn view(ui: Ui, records: Records, of: Option<&str>) -> Bit {
    let all: Vec<(String, String)> = records.book.with_untracked(|book| {
        let own = book.standing().open_yards().filter(|(id, _)| !id.is_demo());
        own.map(|(id, yard)| (id.to_string(), yard.name.clone())).collect()
    });
    let named = all.iter().find(|(id, _)| Some(id.as_str()) == of);
    let back = match named {
        Some((id, name)) => link(name.as_str(), &Place::Yard(id.clone())),
        None => link(en::section(Section::Book), &Place::Book),
    };
    let mut page = vec![
        Bit::from(el("p").class("back").kid(back)),
        heading(HAND_OVER).into(),
        el("p").text(w::ABOUT).into(),
    ];
    let Some((first, _)) = named.or(all.first()) else {
        page.push(el("p").text(w::NO_YARD).into());
        return Bit::Many(page);
    };
    let chosen = Chosen {
        records,
        yard: RwSignal::new(first.clone()),
        off: RwSignal::new(Vec::new()),
        since: RwSignal::new("today".to_owned()),
        from: RwSignal::new(ui.today.get_untracked().to_string()),
        notes: RwSignal::new(false),
        today: ui.today,
    };
    let picked = Memo::new(move || chosen.picked());
    let holds = move || match picked.get() {
        Some(picked) => {
            let hives = chosen.hives().0;
            let ended = records.book.with(|book| {
                let alive = |id| book.standing().hives.get(id).is_some_and(HiveNow::alive);
                hives.iter().filter(|id| !alive(*id)).count()
            });
            w::holds(picked.len(), hives.len(), ended, chosen.notes.get())
        }
        None => w::NO_HIVE.to_owned(),
    };
    let make = move || picked.with_untracked(|picked| picked.as_ref().map(|picked| chosen.text(picked)));
    let paper = move || {
        let text = make().ok_or(w::NO_HIVE)?;
        let name = [w::FILE, &clock::stamp().day().to_string(), PACK.ending].concat();
        Ok(Paper { name, text, plain: None, out: Box::new(|| ()) })
    };
    page.extend([
        chosen.fields(&all).into(),
        el("p").class("lead").attr("role", "status").test_id("pack-holds").live_text(holds).into(),
        section(w::AS_CODES).kid(codes::view(move || picked.track(), make)).into(),
        section(w::AS_FILE).kid(give::keys(PACK, paper)).into(),
    ]);
    Bit::Many(page)
}

pub(super) fn section(title: &str) -> El {
    el("section").class("card").kid(el("h2").text(title))
}

impl Chosen {
    /// The hives that go along, and the yard where it goes as a whole; tracks the choice.
    fn hives(self) -> (Vec<ThingId>, Option<ThingId>) {
        let Some(yard) = self.yard.with(|id| ThingId::parse(id).ok()) else { return Default::default() };
        let off = self.off.get();
        self.records.book.with(|book| {
            // With the whole yard go those that are no longer looked after.
            let all = book.standing().hives_of(&yard, !off.is_empty());
            let hives = all.map(|(id, _)| id).filter(|id| !off.contains(id)).cloned().collect();
            (hives, Some(yard.clone()).filter(|_| off.is_empty()))
        })
    }

    /// The lines that go along; none while there is nothing to choose from or the day cannot be read.
    fn picked(self) -> Option<Vec<Entry>> {
        let today = self.today.get();
        let since = match self.since.get().as_str() {
            "today" => Some(today),
            "day" => Some(self.from.with(|text| day_done(text, today)).ok()?),
            _ => None,
        };
        let (hives, yard) = self.hives();
        if hives.is_empty() {
            return None;
        }
        let choice = pack::Choice { hives, yard, since, notes: self.notes.get() };
        Some(self.records.book.with(|book| pack::pick(book.log(), &choice)))
    }

    fn text(self, picked: &[Entry]) -> String {
        let label = self.records.meta.with_untracked(|meta| meta.label.clone());
        pack::write(picked, self.notes.get_untracked(), clock::stamp(), label.as_deref())
    }

    fn fields(self, all: &[(String, String)]) -> El {
        let several = all.len() > 1;
        let since = Choice::new("pack-since", w::SINCE)
            .options(&[("today", w::TODAY), ("day", w::DAY), ("all", w::ALL)])
            .text(self.since)
            .view();
        let day = Memo::new(move || self.from.with(|text| day_done(text, self.today.get())));
        let from = live(move || {
            self.since.with(|since| since == "day").then(|| day_field("pack-from", w::FROM, self.from, day))
        });
        let notes = self.notes;
        el("div")
            .class("fields")
            .kid(several.then(|| chooser("pack-yard", w::YARD, all, self.yard)))
            .kid(self.ticks())
            .kid(since)
            .kid(from)
            .kid(el("p").class("small").text(w::NEW_PHONE))
            .kid(tick(w::NOTES, move || notes.get(), move |on| notes.set(on)).test_id("pack-notes"))
    }

    /// One line for each hive in care, folded: most hand over all of them.
    fn ticks(self) -> Bit {
        let alive = move |book: &Book| -> Vec<(ThingId, String)> {
            let yard = self.yard.with(|id| ThingId::parse(id).ok());
            let Some(yard) = yard else { return Vec::new() };
            let all = book.standing().hives_of(&yard, true);
            all.map(|(id, _)| (id.clone(), words::hive_name(book, id))).collect()
        };
        live(move || {
            self.off.set(Vec::new());
            let all = self.records.book.with_untracked(alive);
            let count = all.len();
            let off = self.off;
            let mut list = el("div");
            for (hive, name) in all {
                let own = hive.clone();
                let on = move || off.with(|off| !off.contains(&own));
                let set = move |on: bool| {
                    off.update(|off| {
                        off.retain(|other| *other != hive);
                        if !on {
                            off.push(hive.clone());
                        }
                    });
                };
                list = list.kid(tick(&name, on, set));
            }
            let said = move || w::hives(count - off.with(Vec::len).min(count), count);
            let fold = more("", list).test_id("pack-hives");
            if let Ok(Some(summary)) = fold.element().query_selector("summary") {
                let _ = summary.append_child(el("span").live_text(said).element());
            }
            fold
        })
    }
}
