//! Tag, note, move, walking order and the end of a hive.

use super::page::{Make, Page};
use crate::almanac::text::{LABEL_MOST, label, label_if_any, look_alike};
use crate::app::decide::card;
use crate::app::edge::letters::BrowserLetters;
use crate::app::el::{Bit, el, live};
use crate::app::graph::{Memo, RwSignal, untrack};
use crate::app::parts::choice::Choice;
use crate::app::parts::field::{Field, Says};
use crate::app::parts::key::Key;
use crate::app::parts::notice::Notice;
use crate::app::round::bits;
use crate::app::round::form::{self, add_yard, big, fold, go, keys, select, shutting};
use crate::app::round::walk::moved;
use crate::app::wording::{en_hive as w, en_round, en_typed};
use crate::app::yard;
use crate::book::Book;
use crate::book::entry::{Ending, Entry, TrapsWent, What};
use crate::book::id::ThingId;
use crate::book::write::Refusal;

/// What is said about a tag typed for a hive of `yard`, and a free one when it is taken.
pub fn tag_says(book: &Book, yard: &ThingId, except: Option<&ThingId>, text: &str) -> (Says, Option<String>) {
    let tag = match label(text, LABEL_MOST, &BrowserLetters) {
        Ok(tag) => tag,
        Err(error) => return (Says::Wrong(en_typed::tag(error)), None),
    };
    if let Err(refusal) = book.tag_free(yard, except, &tag, &BrowserLetters) {
        let free = if let Refusal::TagTaken { free } = &refusal { Some(free.clone()) } else { None };
        return (Says::Wrong(en_round::refusal(&refusal)), free);
    }
    let twin = book
        .standing()
        .hives_of(yard, true)
        .find(|(id, hive)| Some(*id) != except && look_alike(&hive.tag, &tag, &BrowserLetters));
    (twin.map_or(Says::Nothing, |(_, hive)| Says::Echo(w::look_alike(&hive.tag))), None)
}

/// An alarm where brood disease is suspected in the yard, before a hive of it leaves its place.
fn suspected(page: Page, yard: &ThingId) -> Bit {
    let walk = page.form.walk;
    walk.records.book.with_untracked(|book| card::suspected(book, yard, walk.today.get_untracked(), true))
}

/// The forms.
pub(super) fn forms(page: Page) -> Bit {
    bits![
        fold(w::NOTE, "note", move || note(page)),
        fold(w::TAG, "tag", move || tag(page)),
        order(page),
        shutting(w::MOVE, "move", move |open| carry(page, open)),
        fold(w::END, "end", move || end(page)),
        fold(w::SAME, "same", move || same(page)),
    ]
}

fn tag(page: Page) -> Bit {
    let Some(now) = page.hive() else { return Bit::Nothing };
    let text = RwSignal::new(now.tag.clone());
    let book = page.form.walk.records.book;
    let said = Memo::new(move || {
        let Some(now) = page.now.get() else { return Default::default() };
        let id = page.id.get_value();
        text.with(|text| {
            if *text == now.tag {
                return (Says::Nothing, None);
            }
            book.with(|book| tag_says(book, &now.yard, Some(&id), text))
        })
    });
    let put = move || {
        let Ok(tag) = text.with_untracked(|text| label(text, LABEL_MOST, &BrowserLetters)) else { return };
        page.put("tag", page.said(w::SAID_TAG), &|book, pen, _, today, hive| {
            book.rename_hive(pen, today, hive, &tag, &BrowserLetters)
        });
    };
    let free = move || {
        said.with(|(_, free)| free.clone()).map(|free| {
            let put = free.clone();
            Key::new(w::use_tag(&free), move || text.set(put.clone())).mark("tag-free").view()
        })
    };
    let field = Field::new("tag-text", w::TAG_IS, text).wide();
    bits![
        field.says(move || said.with(|(says, _)| says.clone())).view(),
        keys(live(free)),
        page.form.refused("tag"),
        go(w::TAG_KEY, "tag-go", put),
    ]
}

/// The other hives of the yard in the order of the walk, those with the same tag first: one hive may have been written
/// down on two phones before they met.
fn same(page: Page) -> Bit {
    let Some(now) = page.hive() else { return Bit::Nothing };
    let id = page.id.get_value();
    let (mut all, mut alike) = (Vec::new(), 0);
    page.form.walk.records.book.with_untracked(|book| {
        for (other, hive) in book.standing().hives_of(&now.yard, true) {
            let line = (other.to_string(), w::since(&hive.tag, hive.since));
            if *other == id {
            } else if hive.tag == now.tag {
                all.insert(alike, line);
                alike += 1;
            } else {
                all.push(line);
            }
        }
    });
    if all.is_empty() {
        return el("p").text(w::SAME_NONE).into();
    }
    // Nothing is chosen for the keeper but what bears the same tag.
    if alike == 0 {
        all.insert(0, (String::new(), w::SAME_CHOOSE.to_owned()));
    }
    let chosen = RwSignal::new(all.first().map(|(id, _)| id.clone()).unwrap_or_default());
    let put = move || {
        let other = chosen.with_untracked(|other| ThingId::parse(other).ok());
        page.put("same", w::SAME_SAID.to_owned(), &|book, pen, _, today, hive| {
            let other = other.as_ref().ok_or(Refusal::Nothing)?;
            book.same_hive(pen, today, hive, other)
        });
    };
    bits![
        el("p").class("small").text(w::SAME_HOW),
        select("same-as", w::SAME_AS, chosen, &all),
        page.form.refused("same"),
        go(w::SAME_KEY, "same-go", put),
    ]
}

fn note(page: Page) -> Bit {
    let text = RwSignal::new(String::new());
    let over = move || text.with(|text| text.trim().chars().count()).saturating_sub(Entry::NOTE_MOST);
    let put = move || {
        let words = text.with_untracked(|text| text.trim().to_owned());
        if untrack(over) > 0 {
            return;
        }
        let said = w::NOTED.to_owned();
        let typed = text.get_untracked();
        let make: Make<'_> = &|book, pen, day, today, hive| {
            let now = book.standing().hives.get(hive).ok_or(Refusal::Unknown)?;
            let what = What::Note { hive: Some(hive.clone()), text: words.clone() };
            if words.is_empty() {
                Err(Refusal::Nothing)
            } else {
                book.about_yard(pen, day, today, &now.yard, what)
            }
        };
        page.put_then("note", said, make, move || form::clear(text, &typed));
    };
    bits![form::note("note-text", text), page.form.refused("note"), go(w::NOTE_KEY, "note-go", put),]
}

/// Two keys that walk to this hive earlier or later.
fn order(page: Page) -> Bit {
    let step = move |by: isize| {
        page.put("order", w::ORDERED.to_owned(), &|book, pen, _, today, hive| {
            let yard = &book.standing().hives.get(hive).ok_or(Refusal::Unknown)?.yard;
            let order: Vec<ThingId> =
                book.standing().hives_of(yard, true).map(|(id, _)| id.clone()).collect();
            let hives = moved(order, hive, by).ok_or(Refusal::Nothing)?;
            book.about_yard(pen, today, today, yard, What::Order { yard: yard.clone(), hives })
        });
    };
    let keys = el("div")
        .class("order-keys")
        .attr("role", "group")
        .attr("aria-label", w::ORDER)
        .kid(el("span").text(w::ORDER))
        .kid(big(w::EARLIER, "earlier", move || step(-1)))
        .kid(big(w::LATER, "later", move || step(1)));
    let after = shutting(w::PUT_AFTER, "put-after", move |_| {
        let Some(now) = page.hive() else { return Bit::Nothing };
        yard::after(page.form, &now.yard, Some(&page.id.get_value()))
    });
    bits![keys, after, page.form.refused("order")]
}

fn carry(page: Page, open: RwSignal<bool>) -> Bit {
    let Some(now) = page.hive() else { return Bit::Nothing };
    let mut all = vec![(String::new(), w::CHOOSE.to_owned())];
    page.form.walk.records.book.with_untracked(|book| {
        for (id, yard) in book.standing().open_yards() {
            if *id != now.yard && id.is_demo() == now.yard.is_demo() {
                all.push((id.to_string(), yard.name.clone()));
            }
        }
    });
    if all.len() == 1 {
        return bits![el("p").text(w::NO_OTHER_YARD), keys(add_yard())];
    }
    let to = RwSignal::new(String::new());
    let permit = RwSignal::new(String::new());
    let read = move || permit.with(|text| label_if_any(text, LABEL_MOST, &BrowserLetters));
    let says = move || read().err().map_or(Says::Nothing, |error| Says::Wrong(en_typed::label(error)));
    let put = move || {
        let to = to.with_untracked(|to| ThingId::parse(to).ok());
        // The field says what is wrong with it: a hive that moved without its permit would be a wrong record.
        let Ok(permit) = untrack(read) else { return };
        let make: Make<'_> = &|book, pen, day, today, hive| {
            let to = to.as_ref().ok_or(Refusal::NoYard)?;
            book.move_hive(pen, day, today, hive, to, permit.clone(), &BrowserLetters)
        };
        // It shuts: what was filled in belongs to the move that is done.
        page.put_then("move", page.said(w::SAID_MOVED), make, move || open.set(false));
    };
    bits![
        Notice::caution(w::MOVE_CAUTION).view(),
        suspected(page, &now.yard),
        select("move-to", w::MOVE_TO, to, &all),
        live(move || to.with(|to| ThingId::parse(to).ok()).map(|to| suspected(page, &to))),
        page.form.refused("move"),
        Field::new("move-permit", w::PERMIT, permit).wide().hint(w::MAY_BE_EMPTY).says(says).view(),
        go(w::MOVE_KEY, "move-go", put),
    ]
}

fn end(page: Page) -> Bit {
    let how = RwSignal::new("dead".to_owned());
    let went = RwSignal::new("stay".to_owned());
    let into = RwSignal::new(String::new());
    let joined = Ending::Joined { into: None };
    let others = move || {
        let mut all = vec![(String::new(), w::JOINED_NOWHERE.to_owned())];
        let Some(now) = page.hive() else { return all };
        let own = page.id.get_value();
        page.form.walk.records.book.with_untracked(|book| {
            for (id, hive) in book.standing().hives_of(&now.yard, true) {
                if *id != own {
                    all.push((id.to_string(), en_round::hive(&hive.tag)));
                }
            }
        });
        all
    };
    let put = move || {
        let ending = match how.get_untracked().as_str() {
            "sold" => Ending::Sold,
            "joined" => Ending::Joined { into: into.with_untracked(|into| ThingId::parse(into).ok()) },
            "gone" => Ending::Gone,
            _ => Ending::Dead,
        };
        let went = match went.get_untracked().as_str() {
            "stock" => Some(TrapsWent::Stock),
            "bin" => Some(TrapsWent::Bin),
            "lost" => Some(TrapsWent::Lost),
            _ => None,
        };
        page.put("end", page.said(en_round::ending(&ending)), &|book, pen, day, today, hive| {
            book.end_hive(pen, day, today, hive, ending.clone(), went)
        });
    };
    let choice = Choice::new("end-how", w::END_HOW)
        .option("dead", w::end_key(&Ending::Dead))
        .option("sold", w::end_key(&Ending::Sold))
        .option("joined", w::end_key(&joined))
        .option("gone", w::end_key(&Ending::Gone))
        .text(how)
        .view();
    let leaves = move || page.hive().map_or(Bit::Nothing, |now| suspected(page, &now.yard));
    let more = live(move || match how.get().as_str() {
        "dead" | "gone" => bits![Notice::caution(w::DEAD_CAUTION).view()],
        "joined" => bits![leaves(), select("end-into", w::JOINED_INTO, into, &others())],
        "sold" => leaves(),
        _ => Bit::Nothing,
    });
    let traps = page.hive().is_some_and(|now| now.traps().next().is_some());
    let asks = traps.then(|| {
        Choice::new("end-went", w::TRAPS_WENT)
            .option("stay", w::TRAPS_STAY)
            .option("stock", w::went(TrapsWent::Stock))
            .option("bin", w::went(TrapsWent::Bin))
            .option("lost", w::went(TrapsWent::Lost))
            .text(went)
            .view()
    });
    bits![
        choice,
        more,
        asks,
        page.form.refused("end"),
        keys(Key::new(w::END_KEY, put).alarm().mark("end-go").view()),
    ]
}
