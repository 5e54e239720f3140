//! The hive as it stands: drawn from the side, every box from above, every trap in words.

use super::boxes;
use super::page::Page;
use crate::almanac::day::Day;
use crate::almanac::refill;
use crate::app::edge::locale;
use crate::app::el::{Bit, El, el, live};
use crate::app::graph::untrack;
use crate::app::parts::drawing::{BoxSide, box_plan, hive_side};
use crate::app::round::bits;
use crate::app::wording::{en_hive as w, en_round};
use crate::book::id::ThingId;
use crate::book::round::{self, Because, TrapDue};
use crate::book::standing::{BoxNow, HiveNow, TrapNow};

/// The stack, the top box first, as it stands in the yard.
pub(super) fn view(page: Page) -> Bit {
    live(move || {
        let today = page.form.walk.today.get();
        page.now.get().map(|now| untrack(|| stack(page, &now, today)))
    })
}

fn stack(page: Page, now: &HiveNow, today: Day) -> Bit {
    if now.boxes.is_empty() {
        return el("p").text(w::NO_BOXES).into();
    }
    let dues = page.form.walk.records.book.with_untracked(|book| {
        let loss = round::yard_loss(book.standing(), &now.yard);
        round::trap_dues(book.standing(), now, loss, today)
    });
    let sides: Vec<BoxSide> = now
        .boxes
        .iter()
        .map(|part| BoxSide {
            depth: part.depth.depth(),
            spots: part.traps.iter().map(|trap| trap.spot).collect(),
        })
        .collect();
    let boxes: Vec<El> = now
        .boxes
        .iter()
        .enumerate()
        .rev()
        .map(|(at, part)| box_view(page, now, at + 1, part, &dues))
        .collect();
    let figure = el("figure")
        .class("hive-figure")
        .kid(hive_side(&sides))
        .kid(el("figcaption").class("small").text(w::SIDE));
    bits![figure, boxes]
}

fn box_view(page: Page, now: &HiveNow, number: usize, part: &BoxNow, dues: &[TrapDue]) -> El {
    let spots: Vec<_> = part.traps.iter().map(|trap| trap.spot).collect();
    let traps = part.traps.iter().map(|trap| trap_view(page, now, trap, dues));
    let today = page.form.walk.today.get_untracked();
    let title = w::box_title(number, part.depth);
    let body = el("div")
        .class("box-body")
        .kid(el("div").class("box-plan").kid(box_plan(&spots, now.size)))
        .kid(el("ul").class("box-traps").kids(traps));
    el("section")
        .class("box")
        .attr("aria-label", &title)
        .test_id("box")
        .kid(el("h3").text(&title))
        .kid(el("p").class("small").text(&w::placed(part.since, today)))
        .kid(body)
        .kid(boxes::of_box(page, part, now.boxes.len() == 1))
}

fn trap_view(page: Page, now: &HiveNow, trap: &TrapNow, dues: &[TrapDue]) -> El {
    let walk = page.form.walk;
    let today = walk.today.get_untracked();
    let kind = kind_name(page, &trap.kind);
    let due = dues.iter().find(|due| due.trap == trap.id).map(|due| match &due.because {
        Because::Trouble(trouble) => en_round::trouble_word(*trouble).to_owned(),
        because @ Because::Limit(_) => {
            let when = en_round::due_on(due.on, refill::timing(due.on, today), today);
            [&when, ": ", &en_round::because(because)].concat()
        }
    });
    let resting = walk.records.book.with_untracked(|book| {
        book.standing().yards.get(&now.yard).is_some_and(|yard| yard.paused.is_some())
    });
    // What stands in a hive that is no longer in care is not due.
    let due = due.filter(|_| now.alive() && (!resting || trap.trouble.is_some()));
    let marked = if due.is_some() && trap.trouble.is_some() { "▲ " } else { "" };
    let level = trap.level.map(|(day, share)| w::level(&locale::percent(share.fraction(), 1), day));
    let placed = (trap.placed != trap.service).then(|| w::placed(trap.placed, today));
    let small = [placed, Some(w::serviced(trap.service, today)), level];
    let small = small.into_iter().flatten().map(|line| el("span").class("trap-line").text(&line));
    el("li")
        .test_id("trap-line")
        .kid(el("strong").text(&w::trap(trap.spot, &kind)))
        .kid(el("span").class("trap-due").text(marked).text(&due.unwrap_or_default()))
        .kids(small)
}

fn kind_name(page: Page, kind: &ThingId) -> String {
    page.form.walk.records.book.with_untracked(|book| {
        book.standing().kinds.get(kind).map(|now| now.kind.name.clone()).unwrap_or_default()
    })
}
