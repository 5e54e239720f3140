//! Comb that waits for the freezer, and the batches in it.

use super::page::{Asked, lines};
use crate::almanac::day::Day;
use crate::almanac::typed;
use crate::app::bench::draft::{BenchDraft, Slot};
use crate::app::bench::freezer::{MOST_FRAMES, MOST_HOURS};
use crate::app::bench::view::says::Reads;
use crate::app::bench::view::shown::{self, Shown, Typed};
use crate::app::edge::locale;
use crate::app::el::{Bit, el, live};
use crate::app::ledger::words;
use crate::app::parts::key::link;
use crate::app::parts::notice::Notice;
use crate::app::place::Place;
use crate::app::round::bits;
use crate::app::round::form::keys;
use crate::app::wording::en_decide::freezer as wf;
use crate::app::wording::en_yard_decides::freezer as w;
use crate::book::chilled::{Chilled, chilled};
use crate::book::id::ThingId;
use crate::book::record::Blank;

const FIELDS: &[Typed] = &[
    Typed::new("freezer-fit", wf::FIT, Slot::freezer_fit, Reads::Count(1, MOST_FRAMES)),
    Typed::new("freezer-hold", wf::HOLD, Slot::freezer_hold, Reads::Count(0, MOST_HOURS)),
];

pub(super) fn view(asked: &Asked) -> Bit {
    let (ui, walk) = (asked.ui, asked.walk);
    let hours = move || ui.draft.with(hold);
    let found = asked.follow(move |standing, yard, today| {
        (chilled(standing, hours().unwrap_or(0), today, yard.is_demo()), today)
    });
    let worked = shown::following(
        ui,
        Box::new(move |_, draft, shown| found.with(|(found, _)| show(draft, found, shown))),
    );
    let demo = asked.yard.is_demo();
    let from = live(move || {
        found.with(|(found, _)| {
            let lines_of = |book: &crate::book::Book| {
                let standing = book.standing();
                let several = standing.open_yards().filter(|(id, _)| id.is_demo() == demo).count() > 1;
                let line = |(hive, day, frames): &(ThingId, Day, u32)| {
                    let mut name = words::hive_name(book, hive);
                    if let Some(now) = standing.hives.get(hive).filter(|_| several) {
                        name = [&*name, ", ", &*words::yard_name(book, &now.yard)].concat();
                    }
                    w::from(&name, *frames, *day)
                };
                found.from.iter().map(line).collect::<Vec<_>>()
            };
            lines(&walk.records.book.with_untracked(lines_of))
        })
    });
    let within = live(move || {
        let known = hours().is_some();
        found.with(|(found, today)| {
            if found.within.is_empty() {
                return Bit::from(el("p").text(w::NONE_WITHIN));
            }
            let mut bits = Vec::new();
            for batch in &found.within {
                let cold = batch.cold_since.zip(batch.out_on).filter(|_| known);
                let mut said = w::batch(batch.frames, batch.day, cold, *today);
                if let Some(out) = batch.early.filter(|_| known) {
                    said.push_str(&w::early(out, *today));
                }
                bits.push(Bit::from(el("p").text(&said)));
                if batch.hardly_cold() {
                    bits.push(Notice::alarm(w::HARDLY).view().into());
                } else if batch.too_warm() {
                    bits.push(Notice::caution(wf::TOO_WARM).view().into());
                }
            }
            Bit::Many(bits)
        })
    });
    let example = move || {
        let example = ui.draft.with(|draft| draft.is_example(Slot::freezer_fit));
        example.then(|| shown::small(w::EXAMPLE).test_id("freezer-example"))
    };
    bits![
        el("p").class("small").text(w::ALL_YARDS),
        el("div")
            .class("card-body stack")
            .kid(live(example))
            .kid(shown::fields(ui, FIELDS))
            .kid(shown::answer(w::WAITING, worked, 0).mark("freezer-waiting").view())
            .kid(el("div").test_id("freezer-from").kid(from))
            .kid(shown::answer(w::NEXT, worked, 1).mark("freezer-next").view())
            .kid(shown::cautions(worked))
            .kid(shown::small(wf::FIRST)),
        keys(link(w::WRITE, &Place::Write(Blank::Freezer, None)).class("key key-big")),
        el("h2").class("part-title").text(w::WITHIN),
        el("div").test_id("freezer-within").kid(within),
        el("p").class("small").live_text(move || hours().map(w::hold).unwrap_or_default()),
        Notice::caution(wf::HONEY).why(wf::HONEY_WHY).view(),
        el("p").class("small").text(wf::WHY),
    ]
}

fn hold(draft: &BenchDraft) -> Option<u32> {
    typed::count(draft.freezer_hold(), 0, MOST_HOURS).ok()
}

fn show(draft: &BenchDraft, found: &Chilled, shown: &mut Shown) -> Option<()> {
    let waiting = found.waiting();
    shown.answer(locale::whole(waiting));
    shown.line(w::sum(found.taken, waiting));
    if found.elsewhere > 0 {
        shown.line(w::elsewhere(found.elsewhere));
    }
    let fit = typed::count(draft.freezer_fit(), 1, MOST_FRAMES).ok()?;
    let next = waiting.min(fit);
    if next == 0 {
        shown.waits(w::NOTHING);
    } else {
        let fits = locale::whole(fit);
        let next = locale::whole(next);
        shown.answer(next.clone());
        shown.line(w::next(waiting, &fits, &next));
    }
    if hold(draft)? < crate::almanac::freezer::KILLS_HOURS {
        shown.caution(wf::TOO_SHORT);
    }
    Some(())
}
