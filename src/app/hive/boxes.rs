//! Boxes on and off, and the traps meant for them.

use super::page::{Make, Page};
use crate::almanac::fit::{Fit, Place as Room, fit};
use crate::almanac::stack::{BoxDepth, HiveSize};
use crate::almanac::typed;
use crate::app::bench::read::{MOST_BOXES, side};
use crate::app::bench::view::says;
use crate::app::el::{Bit, el, live};
use crate::app::graph::{Memo, RwSignal, untrack};
use crate::app::kinds::kind_name;
use crate::app::parts::choice::Choice;
use crate::app::parts::field::{Field, Says};
use crate::app::parts::key::Key;
use crate::app::parts::notice::Notice;
use crate::app::parts::stepper::Stepper;
use crate::app::place::Place;
use crate::app::round::bits;
use crate::app::round::form::{big, big_link, fold, go, keys, shutting};
use crate::app::state::Ui;
use crate::app::wording::{en_bench, en_hive as w};
use crate::book::Book;
use crate::book::entry::{TrapsWent, What};
use crate::book::id::ThingId;
use crate::book::round::likely_kind;
use crate::book::standing::{BoxNow, HiveNow};

/// The kinds that are offered, with their names: the demonstration's in its own yards only.
pub fn kinds(book: &Book, demo: bool) -> Vec<(ThingId, String)> {
    let mut kinds = Vec::new();
    for (id, now) in &book.standing().kinds {
        if !now.retired && id.is_demo() == demo {
            kinds.push((id.clone(), kind_name(book.standing(), id)));
        }
    }
    kinds
}

/// Choice of a kind, or the way to describe one. `kind` holds the id; while it is empty, the kind most used in `hive`,
/// else in `yard`, is chosen.
pub fn kind_choice(
    book: RwSignal<Book>,
    kind: RwSignal<String>,
    name: &'static str,
    yard: &ThingId,
    hive: Option<&HiveNow>,
) -> Bit {
    let all = book.with_untracked(|book| kinds(book, yard.is_demo()));
    if all.is_empty() {
        return bits![el("p").text(w::NO_KIND), keys(big_link(w::KIND, &Place::Kinds))];
    }
    if kind.with_untracked(String::is_empty)
        && let Some((first, _)) = all.first()
    {
        let likely = book.with_untracked(|book| likely_kind(book.standing(), yard, hive).cloned());
        let likely = likely.filter(|likely| all.iter().any(|(id, _)| id == likely));
        kind.set(likely.as_ref().unwrap_or(first).to_string());
    }
    let mut choice = Choice::new(name, w::KIND);
    for (id, name) in all {
        choice = choice.option(id.to_string(), name);
    }
    choice.text(kind).view().into()
}

/// The choice on the page of a hive.
fn kind_of_page(page: Page, kind: RwSignal<String>, name: &'static str) -> Bit {
    page.hive().map_or(Bit::Nothing, |now| {
        kind_choice(page.form.walk.records.book, kind, name, &now.yard, Some(&now))
    })
}

/// Says why a kind of trap cannot go into a box of that depth; nothing when it can, or nobody knows.
pub fn trap_fits(book: &Book, kind: &ThingId, depth: BoxDepth) -> Option<String> {
    let outer = book.standing().kinds.get(kind)?.kind.outer;
    match fit(&outer, &Room::usual(depth)) {
        Fit::TooBig { side, trap, room, .. } => {
            let ui = Ui::get();
            Some(w::too_big(side, &ui.length(trap), &ui.length(room)))
        }
        _ => None,
    }
}

/// The form that puts a box on.
pub(super) fn forms(page: Page) -> Bit {
    bits![shutting(w::ADD_BOX, "add-box", move |open| add(page, open)), missing(page)]
}

fn add(page: Page, open: RwSignal<bool>) -> Bit {
    let ui = Ui::get();
    let book = page.form.walk.records.book;
    let size = page.hive().map_or(HiveSize::Full, |now| now.size);
    let stands = move || {
        let boxes = page.now.with(|now| now.as_ref().map_or(0, |now| now.boxes.len()));
        u32::try_from(boxes).unwrap_or(MOST_BOXES)
    };
    let boxes = untrack(stands);
    let text = |text: String| RwSignal::new(text);
    let depth = text("deep".to_owned());
    let (own, unit) = (text(String::new()), text("mm".to_owned()));
    let wants = text(size.usual_traps().to_string());
    let above = text(boxes.to_string());
    let filled = text("now".to_owned());
    let kind = text(String::new());
    let places = u32::from(size.places());
    let read = move || match depth.get().as_str() {
        "medium" => Some(BoxDepth::Medium),
        "shallow" => Some(BoxDepth::Shallow),
        "own" => own.with(|own| unit.with(|unit| side(own, unit))).ok().map(BoxDepth::Own),
        _ => Some(BoxDepth::Deep),
    };
    let traps =
        move || wants.with(|text| typed::count(text, 0, places)).ok().and_then(|n| u8::try_from(n).ok());
    let chosen = move || kind.with(|kind| ThingId::parse(kind).ok());
    let too_big = move || {
        let (kind, depth) = (chosen()?, read()?);
        book.with(|book| trap_fits(book, &kind, depth)).filter(|_| traps() != Some(0))
    };
    let put = move || {
        let (Some(depth), Some(wants)) = (untrack(read), untrack(traps)) else { return };
        if untrack(too_big).is_some() {
            return;
        }
        let Ok(above) = above.with_untracked(|text| typed::count(text, 0, untrack(stands))) else { return };
        let in_now = filled.with_untracked(|code| code == "now");
        let Some(kind) = untrack(chosen) else { return };
        let make: Make<'_> = &|book, pen, day, today, hive| {
            book.boxes_on(pen, day, today, hive, above as usize, &[(depth, wants)], &kind, in_now)
        };
        // It shuts, so that a second tap puts no second box on.
        page.put_then("add-box", page.said(w::SAID_BOX_ON), make, move || open.set(false));
    };
    let above_says = move || match above.with(|text| typed::count(text, 0, MOST_BOXES)) {
        Ok(typed) if typed > stands() => Says::Wrong(w::only_boxes(stands())),
        _ => says::count(above, 0, MOST_BOXES),
    };
    let own_field = move || {
        depth.with(|code| code == "own").then(|| {
            Field::new("own-depth", w::OWN_DEPTH_IS, own)
                .decimal()
                .length(unit)
                .says(move || says::said(ui, (own, unit), says::Reads::Side))
                .view()
        })
    };
    let any = Memo::new(move || traps().unwrap_or(0) > 0);
    let with_traps = move || {
        any.get().then(|| {
            let choice = Choice::new("box-filled", w::FILLED)
                .option("now", w::FILLED_NOW)
                .option("later", w::FILLED_LATER)
                .text(filled)
                .view();
            bits![
                untrack(|| kind_of_page(page, kind, "box-kind")),
                choice,
                Notice::caution(w::SLOWLY).view(),
            ]
        })
    };
    let many = Memo::new(move || traps().is_some_and(|traps| traps > 4));
    bits![
        Choice::new("box-depth", w::DEPTH)
            .option("deep", en_bench::DEEP)
            .option("medium", en_bench::MEDIUM)
            .option("shallow", en_bench::SHALLOW)
            .option("own", w::OWN_DEPTH)
            .text(depth)
            .view(),
        live(own_field),
        Stepper::new("box-traps", w::TRAPS_IN_IT, wants, 0, places)
            .says(move || says::count(wants, 0, places))
            .view(),
        live(move || many.get().then(|| Notice::caution(w::MANY_TRAPS).view())),
        live(with_traps),
        live(move || too_big().map(|too_big| Notice::alarm(too_big).view())),
        Stepper::new("box-above", w::ABOVE, above, 0, boxes).says(above_says).view(),
        page.form.refused("add-box"),
        go(w::ADD_BOX_KEY, "add-box-go", put),
    ]
}

/// The key that puts traps where boxes want more than they have.
fn missing(page: Page) -> Bit {
    let wanting = Memo::new(move || {
        page.now.with(|now| now.as_ref().filter(|now| now.alive()).map_or(0, HiveNow::wanting))
    });
    let kind = RwSignal::new(String::new());
    let put = move || {
        let Some(kind) = kind.with_untracked(|kind| ThingId::parse(kind).ok()) else { return };
        page.put("missing", page.said(w::SAID_TRAPS_ON), &|book, pen, day, today, hive| {
            book.traps_on(pen, day, today, hive, &kind)
        });
    };
    let book = page.form.walk.records.book;
    let too_big = move || {
        let kind = kind.with(|kind| ThingId::parse(kind).ok())?;
        let now = page.now.get()?;
        let mut short = now.boxes.iter().filter(|part| usize::from(part.wants) > part.traps.len());
        book.with(|book| short.find_map(|part| trap_fits(book, &kind, part.depth)))
    };
    live(move || {
        let wanting = wanting.get();
        (wanting > 0).then(|| {
            let put = move || {
                if untrack(too_big).is_none() {
                    put();
                }
            };
            el("div")
                .class("card")
                .test_id("missing")
                .kid(untrack(|| kind_of_page(page, kind, "missing-kind")))
                .kid(Notice::caution(w::SLOWLY).view())
                .kid(live(move || too_big().map(|too_big| Notice::alarm(too_big).view())))
                .kid(page.form.refused("missing"))
                .kid(go(&w::place_missing(wanting), "missing-go", put))
        })
    })
}

/// The keys of one box: how many traps it is meant to carry, and taking it off.
pub(super) fn of_box(page: Page, part: &BoxNow, last: bool) -> Bit {
    let (off, wants) = (part.clone(), part.clone());
    let extra = part.traps.len().saturating_sub(usize::from(part.wants));
    bits![
        (extra > 0).then(|| take_extra(page, part, extra)),
        fold(w::WANTS, "box-wants", move || wanted(page, &wants)),
        fold(w::BOX_OFF, "box-off", move || take_off(page, &off, last)),
    ]
}

fn wanted(page: Page, part: &BoxNow) -> Bit {
    let text = RwSignal::new(part.wants.to_string());
    let places = u32::from(page.hive().map_or(HiveSize::Full, |now| now.size).places());
    let id = part.id.clone();
    let put = move || {
        let Ok(traps) = text.with_untracked(|text| typed::count(text, 0, places)) else { return };
        let (hive, traps) = (page.id.get_value(), u8::try_from(traps).unwrap_or(u8::MAX));
        let what = What::BoxWants { hive, part: id.clone(), traps };
        page.about("wants", page.said(w::SAID_WANTS), &what);
    };
    let field = ["wants-", &part.id.to_string()].concat();
    bits![
        Stepper::new(field, w::WANTS, text, 0, places).says(move || says::count(text, 0, places)).view(),
        page.form.refused("wants"),
        go(w::WANTS_KEY, "wants-go", put),
    ]
}

fn take_extra(page: Page, part: &BoxNow, extra: usize) -> Bit {
    let traps: Vec<ThingId> = part.traps.iter().rev().take(extra).map(|trap| trap.id.clone()).collect();
    let put = move || {
        let what = What::TrapsOff { hive: page.id.get_value(), traps: traps.clone(), went: TrapsWent::Stock };
        page.about("extra", page.said(w::SAID_TRAPS_OFF), &what);
    };
    let label = w::take_extra(u32::try_from(extra).unwrap_or(u32::MAX));
    bits![keys(big(&label, "extra-go", put)), page.form.refused("extra")]
}

fn take_off(page: Page, part: &BoxNow, last: bool) -> Bit {
    let went = RwSignal::new("stock".to_owned());
    let id = part.id.clone();
    let put = move || {
        let went = match went.get_untracked().as_str() {
            "bin" => TrapsWent::Bin,
            "lost" => TrapsWent::Lost,
            _ => TrapsWent::Stock,
        };
        page.put("box-off", page.said(w::SAID_BOX_OFF), &|book, pen, day, today, hive| {
            book.box_off(pen, day, today, hive, &id, went)
        });
    };
    let asks = (!part.traps.is_empty()).then(|| {
        Choice::new(["went-", &part.id.to_string()].concat(), w::TRAPS_WENT)
            .option("stock", w::went(TrapsWent::Stock))
            .option("bin", w::went(TrapsWent::Bin))
            .option("lost", w::went(TrapsWent::Lost))
            .text(went)
            .view()
    });
    bits![
        last.then(|| Notice::caution(w::LAST_BOX).view()),
        asks,
        page.form.refused("box-off"),
        keys(Key::new(w::BOX_OFF, put).alarm().mark("box-off-go").view()),
    ]
}
