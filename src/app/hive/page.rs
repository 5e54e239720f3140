//! The page of a hive.

use super::{boxes, change, stack};
use crate::almanac::day::Day;
use crate::app::beetle::bait_said::baited_said;
use crate::app::beetle::{bars, told};
use crate::app::decide::card;
use crate::app::edge::letters::BrowserLetters;
use crate::app::el::{Bit, El, el, live};
use crate::app::graph::{Memo, StoredValue};
use crate::app::ledger::lines;
use crate::app::ledger::words::{record_alone as record_said, tag_told};
use crate::app::parts::notice::Notice;
use crate::app::place::Place;
use crate::app::record::list::{begun, ways};
use crate::app::record::said::product;
use crate::app::round::form::{self, Form, big_link, go};
use crate::app::round::{Walk, bits};
use crate::app::state::Ui;
use crate::app::wording::en_beetle as wb;
use crate::app::wording::en_beetle_rhythm as rhythm;
use crate::app::wording::en_book::history::double as double_of;
use crate::app::wording::en_records as wr;
use crate::app::wording::{en_hive as w, en_limit, en_round};
use crate::book::Book;
use crate::book::aims::Aims;
use crate::book::entry::{Entry, What};
use crate::book::id::ThingId;
use crate::book::next_look::next_look;
use crate::book::record::{About, Blank, Clear, clear_of_product};
use crate::book::round::{self, Because, HiveDue};
use crate::book::standing::HiveNow;
use crate::book::write::{Pen, Refusal};

/// What the parts of the page share: the hive as it stands, and the forms.
#[derive(Clone, Copy)]
pub(super) struct Page {
    pub(super) form: Form,
    pub(super) now: Memo<Option<HiveNow>>,
    pub(super) id: StoredValue<ThingId>,
}

/// What a form of the page wants written, from the book, the pen, the day of the form, today and the hive.
pub(super) type Make<'a> = &'a dyn Fn(&Book, &Pen, Day, Day, &ThingId) -> Result<Vec<Entry>, Refusal>;

impl Page {
    /// The hive, or nothing once it is gone from the book.
    pub(super) fn hive(self) -> Option<HiveNow> {
        self.now.get_untracked()
    }

    /// Its tag as it is told.
    fn tag(self) -> String {
        let book = self.form.walk.records.book;
        self.now.with_untracked(|now| {
            now.as_ref()
                .map(|now| book.with_untracked(|book| tag_told(book.standing(), now)))
                .unwrap_or_default()
        })
    }

    /// "Hive 7: box put on".
    #[inline(never)]
    pub(super) fn said(self, what: &str) -> String {
        w::said(&self.tag(), what)
    }

    /// Writes what `make` makes of this hive, under the words `said`. True when it is written.
    #[inline(never)]
    pub(super) fn put(self, form: &'static str, said: String, make: Make<'_>) -> bool {
        let hive = self.id.get_value();
        self.form.put(form, said, &|book, pen, day, today| make(book, pen, day, today, &hive))
    }

    /// The same, and `then` once it is written.
    #[inline(never)]
    pub(super) fn put_then(
        self,
        form: &'static str,
        said: String,
        make: Make<'_>,
        then: impl FnOnce() + 'static,
    ) {
        let hive = self.id.get_value();
        let make: form::Make<'_> = &|book, pen, day, today| make(book, pen, day, today, &hive);
        self.form.put_then(form, said, make, Box::new(then));
    }

    /// Writes one thing about this hive into the book of its yard.
    #[inline(never)]
    pub(super) fn about(self, form: &'static str, said: String, what: &What) -> bool {
        self.put(form, said, &|book, pen, day, today, hive| {
            let now = book.standing().hives.get(hive).ok_or(Refusal::Unknown)?;
            book.about_yard(pen, day, today, &now.yard, what.clone())
        })
    }
}

/// The page.
pub fn view(walk: Walk, hive: &ThingId) -> Bit {
    let book = walk.records.book;
    let id = StoredValue::new(hive.clone());
    let now = Memo::new(move || book.with(|book| id.with_value(|id| book.standing().hives.get(id).cloned())));
    let page = Page { form: Form::new(walk), now, id };
    let name = move || now.with(|now| now.as_ref().map(|now| en_round::hive(&now.tag))).unwrap_or_default();
    bits![
        back(page),
        el("h1").class("place-name").attr("tabindex", "-1").live_text(name),
        same_day(page),
        state(page),
        begun(&hive.to_string()),
        under_way(page),
        el("h2").class("part-title").text(w::BOXES),
        stack::view(page),
        form::fold(wr::MORE, "write-more", {
            let of = hive.to_string();
            move || bits![el("p").class("small").text(wr::MORE_HIVE), ways(&[About::Hive], Some(&of))]
        }),
        el("h2").class("part-title").text(w::CHANGE),
        page.form.day_field(),
        boxes::forms(page),
        change::forms(page),
        el("h2").class("part-title").text(w::HISTORY),
        lines::list(Ui::get(), walk.records, Some(hive.clone())),
    ]
}

/// The way back to the yard, under its name.
fn back(page: Page) -> El {
    let yard = Memo::new(move || {
        let yard = page.now.get()?.yard;
        page.form.walk.records.book.with(|book| {
            let now = book.standing().yards.get(&yard)?;
            Some((yard.to_string(), now.name.clone()))
        })
    });
    let way = move || yard.get().map(|(yard, name)| big_link(en_round::own(&name), &Place::Yard(yard)));
    el("p").class("back").kid(live(way))
}

/// When it is due and why, or how its care ended; what is odd about it; the key that opens the panel.
fn state(page: Page) -> Bit {
    let shown = live(move || {
        let mut lines = Vec::new();
        for line in lines_of(page).unwrap_or_default() {
            let line = el("p").text(&line);
            lines.push(Bit::One(if lines.is_empty() { line.class("lead") } else { line }));
        }
        Bit::Many(lines)
    });
    let rose = Memo::new(move || page.now.with(|now| now.as_ref().is_some_and(|now| now.rose.is_some())));
    let rose = live(move || rose.get().then(|| Notice::caution(en_round::ROSE).view()));
    let double = Memo::new(move || {
        page.now.with(|now| now.as_ref().and_then(|now| now.doubles.last().map(|double| double.day)))
    });
    let double = live(move || {
        let notice = |day| el("div").test_id("hive-double").kid(Notice::caution(double_of(day)).view());
        double.get().map(notice)
    });
    let twin = Memo::new(move || {
        page.form.walk.records.book.with(|book| {
            page.id.with_value(|id| {
                let standing = book.standing();
                let now = standing.hives.get(id)?;
                let alike = |(other, hive): (&ThingId, &HiveNow)| other != id && hive.tag == now.tag;
                (now.alive() && standing.hives_of(&now.yard, true).any(alike)).then_some(())
            })
        })
    });
    let twin = live(move || {
        let notice = |()| el("div").test_id("hive-twin").kid(Notice::caution(w::TWIN).view());
        twin.get().map(notice)
    });
    let alive = Memo::new(move || page.now.with(|now| now.as_ref().is_some_and(HiveNow::alive)));
    let key = live(move || {
        if alive.get() {
            Bit::from(go(w::LOG, "log", move || page.form.walk.open_hive(&page.id.get_value())))
        } else {
            let of = page.id.with_value(ToString::to_string);
            let showed = Place::Write(Blank::DeadOut, Some(of));
            bits![
                form::keys(big_link(wr::blank(Blank::DeadOut).title, &showed)),
                go(en_round::REVIVE, "revive", move || revive(page)),
                page.form.refused("revive"),
            ]
        }
    });
    bits![el("div").class("hive-state").test_id("hive-state").kid(shown).kid(rose).kid(double).kid(twin), key]
}

/// What it wants today, where slime, many larvae or a dead-out were written down.
fn same_day(page: Page) -> Bit {
    let book = page.form.walk.records.book;
    let turn = page.form.walk.records.turn();
    live(move || {
        let (today, _) = (page.form.walk.today.get(), turn.get());
        let wants = |hive: &ThingId| book.with_untracked(|book| card::wants(book.standing(), hive, today));
        page.id.with_value(|hive| {
            wants(hive).map(|(urgent, yard)| card::view(&hive.to_string(), &urgent, &yard))
        })
    })
}

/// What comes of what was found in it, with its bars.
fn under_way(page: Page) -> Bit {
    let book = page.form.walk.records.book;
    let turn = page.form.walk.records.turn();
    let told = Memo::new(move || {
        let (today, _) = (page.form.walk.today.get(), turn.get());
        let yard = page.now.with_untracked(|now| now.as_ref().map(|now| now.yard.clone()))?;
        let own =
            book.with_untracked(|book| page.id.with_value(|id| told::of_yard(book, &yard, today, Some(id))))?;
        Some((own, today))
    });
    live(move || {
        told.with(|told| {
            let (own, today) = told.as_ref().filter(|(own, _)| !own.is_empty())?;
            let mut shown = el("div").class("card-body");
            for told in own {
                shown = shown.kid(bars::card(told, *today, false));
            }
            Some(bits![
                el("h2").class("part-title").text(wb::HERE),
                shown,
                el("p").class("small").text(wb::AXIS),
                Notice::plain(wb::ESTIMATE).why(wb::RULE).view(),
            ])
        })
    })
}

fn lines_of(page: Page) -> Option<Vec<String>> {
    let walk = page.form.walk;
    let today = walk.today.get();
    let now = page.now.get()?;
    if let Some((how, on)) = &now.ended {
        return Some(vec![w::ended(how, *on)]);
    }
    let due = walk.records.book.with(|book| {
        let loss = round::yard_loss(book.standing(), &now.yard);
        round::hive_due(book.standing(), &now, loss, today)
    });
    let mut lines = vec![en_round::due(&due, today)];
    match &due {
        HiveDue::Due { because: Because::Limit(refill), .. } => lines.append(&mut en_limit::reasons(refill)),
        HiveDue::Due { because, .. } => lines.push(en_round::because(because)),
        _ => {}
    }
    if let Some(days) = now.traps().map(|trap| today.days_since(trap.service)).max() {
        lines.push(en_round::since(days));
    }
    let again = round::look_by(&now).filter(|_| !matches!(due, HiveDue::Resting { .. }));
    lines.extend(again.map(|by| en_round::look_again(by, today)));
    walk.records.book.with(|book| {
        let (standing, hive, aims) = (book.standing(), page.id.get_value(), Aims::of(book.standing()));
        lines.append(&mut baited_said(standing, &hive, &aims, today));
        let look = next_look(standing, &hive, &aims).filter(|_| !matches!(due, HiveDue::Resting { .. }));
        lines.extend(look.map(|on| rhythm::next_look(on, today)));
        seen(&mut lines, book, page);
    });
    if let Some((day, why)) = now.skipped {
        lines.push(en_round::skipped(day, today, why));
    }
    if !now.was.is_empty() {
        lines.push(w::was(&now.was));
    }
    Some(lines)
}

/// The last look into the hive, and what a product that was applied asks for.
fn seen(lines: &mut Vec<String>, book: &Book, page: Page) {
    let hive = page.id.get_value();
    let standing = book.standing();
    if let Some(now) = standing.newest_record(Blank::Look, &hive) {
        lines.push(wr::on(&record_said(book, &now.record), now.day));
    }
    // Of several products the one that keeps supers off longest.
    let mut still = None;
    for (_, now) in standing.records_of(Blank::Product) {
        if let Some(clear) = clear_of_product(&now.record).filter(|_| now.record.hives.contains(&hive)) {
            still = Some(still.map_or(clear, |known: Clear| known.later(clear)));
        }
    }
    lines.extend(still.map(product));
}

fn revive(page: Page) {
    page.put("revive", w::revived(&page.tag()), &|book, pen, day, today, hive| {
        book.hive_back(pen, day, today, hive, &BrowserLetters)
    });
}
