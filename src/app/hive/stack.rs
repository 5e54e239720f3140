//! The hive as it stands: drawn from the side, every box from above, every trap in words.

use super::boxes;
use super::page::Page;
use crate::almanac::day::Day;
use crate::almanac::refill;
use crate::almanac::stack::Spot;
use crate::app::edge::locale;
use crate::app::el::{Bit, El, el, live};
use crate::app::graph::untrack;
use crate::app::parts::drawing::{BoxSide, box_plan, hive_side};
use crate::app::wording::{en_hive as w, en_round};
use crate::book::Book;
use crate::book::round::{self, Because, TrapDue};
use crate::book::standing::{BoxNow, HiveNow, TrapNow};

/// What is shown.
struct Stack<'a> {
    page: Page,
    book: &'a Book,
    now: &'a HiveNow,
    today: Day,
    dues: Vec<TrapDue>,
    /// Nothing is due in its yard but what does not fish.
    resting: bool,
}

/// The stack, the top box first, as it stands in the yard.
pub(super) fn view(page: Page) -> Bit {
    live(move || {
        let today = page.form.walk.today.get();
        let now = page.now.get()?;
        untrack(|| page.form.walk.records.book.with(|book| Some(stack(page, book, &now, today))))
    })
}

fn stack(page: Page, book: &Book, now: &HiveNow, today: Day) -> Bit {
    if now.boxes.is_empty() {
        return el("p").text(w::NO_BOXES).into();
    }
    let standing = book.standing();
    let dues = round::trap_dues(standing, now, round::yard_loss(standing, &now.yard), today);
    let resting = standing.yards.get(&now.yard).is_some_and(|yard| yard.paused.is_some());
    let stack = Stack { page, book, now, today, dues, resting };
    let mut sides = Vec::new();
    for part in &now.boxes {
        sides.push(BoxSide { depth: part.depth.depth(), spots: spots(part) });
    }
    let figure = el("figure")
        .class("hive-figure")
        .kid(hive_side(&sides))
        .kid(el("figcaption").class("small").text(w::SIDE));
    let mut bits = vec![figure.into()];
    for (at, part) in now.boxes.iter().enumerate().rev() {
        bits.push(box_view(&stack, at + 1, part).into());
    }
    Bit::Many(bits)
}

fn spots(part: &BoxNow) -> Vec<Spot> {
    part.traps.iter().map(|trap| trap.spot).collect()
}

fn box_view(stack: &Stack<'_>, number: usize, part: &BoxNow) -> El {
    let mut traps = el("ul").class("box-traps");
    for trap in &part.traps {
        traps = traps.kid(trap_view(stack, trap));
    }
    let title = w::box_title(number, part.depth);
    let plan = el("div").class("box-plan").kid(box_plan(&spots(part), stack.now.size));
    el("section")
        .class("box")
        .attr("aria-label", &title)
        .test_id("box")
        .kid(el("h3").text(&title))
        .kid(el("p").class("small").text(&w::placed(part.since, stack.today)))
        .kid(el("div").class("box-body").kid(plan).kid(traps))
        .kid(boxes::of_box(stack.page, part, stack.now.boxes.len() == 1))
}

fn trap_view(stack: &Stack<'_>, trap: &TrapNow) -> El {
    let today = stack.today;
    let kind = stack.book.standing().kinds.get(&trap.kind).map_or("", |now| now.kind.name.as_str());
    let mut said = el("span").class("trap-due");
    // What stands in a hive that is no longer in care is not due.
    if stack.now.alive()
        && (!stack.resting || trap.trouble.is_some())
        && let Some(due) = stack.dues.iter().find(|due| due.trap == trap.id)
    {
        if trap.trouble.is_some() {
            said = said.text("▲ ");
        }
        if let Because::Limit(_) = due.because {
            said = said.text(&en_round::due_on(due.on, refill::timing(due.on, today), today)).text(": ");
        }
        said = said.text(&en_round::because(&due.because));
    }
    let line = |text: String| el("span").class("trap-line").text(&text);
    let mut item = el("li").test_id("trap-line").kid(el("strong").text(&w::trap(trap.spot, kind))).kid(said);
    if trap.placed != trap.service {
        item = item.kid(line(w::placed(trap.placed, today)));
    }
    item = item.kid(line(w::serviced(trap.service, today)));
    if let Some((day, share)) = trap.level {
        item = item.kid(line(w::level(&locale::percent(share.fraction(), 1), day, today)));
    }
    item
}
