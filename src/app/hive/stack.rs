//! The hive as it stands: drawn from the side, every box from above, every trap in words.

use super::boxes;
use super::page::Page;
use crate::almanac::refill;
use crate::app::edge::locale;
use crate::app::parts::drawing::{BoxSide, box_plan, hive_side};
use crate::app::wording::{en_hive as w, en_round};
use crate::book::id::ThingId;
use crate::book::round::{self, Because, TrapDue};
use crate::book::standing::{BoxNow, HiveNow, TrapNow};
use leptos::prelude::*;

/// The stack, the top box first, as it stands in the yard.
pub(super) fn view(page: Page) -> AnyView {
    let Some(now) = page.now.get() else { return ().into_any() };
    if now.boxes.is_empty() {
        return view! { <p>{w::NO_BOXES}</p> }.into_any();
    }
    let today = page.form.walk.today.get();
    let dues = page.form.walk.records().book.with_untracked(|book| {
        let loss = round::yard_loss(book.standing(), &now.yard);
        round::trap_dues(book.standing(), &now, loss, today)
    });
    let sides: Vec<BoxSide> = now
        .boxes
        .iter()
        .map(|part| BoxSide {
            depth: part.depth.depth(),
            spots: part.traps.iter().map(|trap| trap.spot).collect(),
        })
        .collect();
    let boxes = (1..).zip(&now.boxes).collect::<Vec<_>>().into_iter().rev();
    let boxes = boxes.map(|(number, part)| box_view(page, &now, number, part, &dues)).collect_view();
    view! {
        <figure class="hive-figure">
            {hive_side(&sides)}
            <figcaption class="small">{w::SIDE}</figcaption>
        </figure>
        {boxes}
    }
    .into_any()
}

fn box_view(page: Page, now: &HiveNow, number: usize, part: &BoxNow, dues: &[TrapDue]) -> AnyView {
    let spots: Vec<_> = part.traps.iter().map(|trap| trap.spot).collect();
    let traps = part.traps.iter().map(|trap| trap_view(page, now, trap, dues)).collect_view();
    let today = page.form.walk.today.get_untracked();
    view! {
        <section class="box" data-testid="box" aria-label=w::box_title(number, part.depth)>
            <h3>{w::box_title(number, part.depth)}</h3>
            <p class="small">{w::placed(part.since, today)}</p>
            <div class="box-body">
                <div class="box-plan">{box_plan(&spots, now.size)}</div>
                <ul class="box-traps">{traps}</ul>
            </div>
            {boxes::of_box(page, part, now.boxes.len() == 1)}
        </section>
    }
    .into_any()
}

fn trap_view(page: Page, now: &HiveNow, trap: &TrapNow, dues: &[TrapDue]) -> AnyView {
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
    let resting = walk.records().book.with_untracked(|book| {
        book.standing().yards.get(&now.yard).is_some_and(|yard| yard.paused.is_some())
    });
    let due = due.filter(|_| !resting || trap.trouble.is_some());
    let marked = if trap.trouble.is_some() { "▲ " } else { "" };
    let level = trap.level.map(|(day, share)| w::level(&locale::percent(share.fraction(), 1), day));
    let placed = (trap.placed != trap.service).then(|| w::placed(trap.placed, today));
    let small = [placed, Some(w::serviced(trap.service, today)), level];
    let small = small.into_iter().flatten().map(|line| view! { <span class="trap-line">{line}</span> });
    view! {
        <li data-testid="trap-line">
            <strong>{w::trap(trap.spot, &kind)}</strong>
            <span class="trap-due">{marked} {due}</span>
            {small.collect_view()}
        </li>
    }
    .into_any()
}

fn kind_name(page: Page, kind: &ThingId) -> String {
    page.form.walk.records().book.with_untracked(|book| {
        book.standing().kinds.get(kind).map(|now| now.kind.name.clone()).unwrap_or_default()
    })
}
