//! How many hives to open, which, and what it proves when none showed anything.

use super::draws::{self, Drawn, Outcome};
use super::page::Asked;
use crate::almanac::day::Day;
use crate::almanac::draw::draw;
use crate::almanac::sample::{at_most, to_open};
use crate::almanac::typed;
use crate::app::bench::draft::BenchDraft;
use crate::app::bench::view::sample::{CHANCES, show_open};
use crate::app::bench::view::shown::{self, Shown};
use crate::app::edge::{self, device, locale};
use crate::app::el::{Bit, el, live};
use crate::app::frame::focus;
use crate::app::graph::untrack;
use crate::app::ledger::words::put_isolated;
use crate::app::parts::key::Key;
use crate::app::round::bits;
use crate::app::round::form::keys;
use crate::app::wording::en_decide::sample as ws;
use crate::app::wording::en_yard_decides::open as w;
use crate::book::combs::combs;
use crate::book::id::ThingId;
use crate::book::opened::{Opened, opened};
use crate::book::standing::Standing;
use crate::book::urgent::{Because, Urgent, dead};

/// Letters of a seed that is used once.
const SEED_LETTERS: usize = 8;

/// Hives in care in the order of the walk, those of them that are weak, how many are left out of both, since where brood
/// disease is suspected nobody opens one by lot, and the tags of those left out because no bees are in them.
type Found = (Vec<ThingId>, Vec<ThingId>, u32, String);

pub(super) fn view(asked: &Asked) -> Bit {
    let (ui, walk) = (asked.ui, asked.walk);
    let kept = ui.bench().decide_drawn();
    let urgent = asked.urgent;
    let found =
        asked.follow(move |standing, yard, today| urgent.with(|urgent| find(standing, yard, today, urgent)));
    let of = asked.clone();
    let looked = asked.follow(move |standing, yard, today| {
        let drawn = kept.with(|kept| draws::of(kept, yard))?.each_once(standing);
        let states = opened(standing, &drawn.hives, drawn.day, today);
        found.with(|(hives, ..)| {
            let outcome = drawn.outcome(&states, hives);
            Some((drawn.day, outcome, drawn.list(&states, hives)))
        })
    });
    let worked = shown::following(
        ui,
        Box::new(move |_, draft, shown| {
            found.with(|(hives, _, out, dead)| {
                looked.with(|looked| {
                    let looked = looked.as_ref().map(|(day, outcome, _)| (*day, *outcome));
                    show(draft, count(hives), (*out, dead), looked, shown)
                })
            })
        }),
    );
    let number = move || {
        found.with_untracked(|(hives, ..)| ui.draft.with_untracked(|draft| wanted(draft, count(hives))))
    };
    let press = {
        let yard = asked.yard.clone();
        move || {
            let Some(number) = number() else { return };
            let day = walk.today.get_untracked();
            let drawn = found.with_untracked(|(hives, ..)| {
                let places = draw(count(hives), number, &device::id(SEED_LETTERS));
                let at = |place: &u32| hives.get((*place as usize).checked_sub(1)?).cloned();
                Drawn {
                    day,
                    hives: places.iter().filter_map(at).collect(),
                    from: hives.clone(),
                    number: None,
                }
            });
            kept.update(|kept| *kept = draws::with(kept, &yard, &drawn));
            edge::after_paint(|| _ = focus("#open-drawn"));
        }
    };
    let drawn = {
        let of = of.clone();
        live(move || {
            let yes = looked.with(Option::is_some);
            let press = press.clone();
            let key = Key::new(if yes { w::AGAIN } else { w::DRAW }, press).mark("decide-draw").view();
            looked.with(|looked| {
                let list = looked.as_ref().map(|(.., hives)| {
                    let line = |(hive, state): &(ThingId, Opened)| {
                        let said = match state {
                            Opened::NotYet => w::TO_OPEN,
                            Opened::Clean => w::CLEAN,
                            Opened::Found => w::FOUND,
                        };
                        el("li").kid(of.way(hive)).text(": ").text(said)
                    };
                    bits![
                        el("h2")
                            .class("part-title")
                            .attr("id", "open-drawn")
                            .attr("tabindex", "-1")
                            .text(w::DRAWN),
                        el("ul").class("decide-hives").test_id("open-drawn").kids(hives.iter().map(line)),
                    ]
                });
                untrack(|| bits![keys(key), list])
            })
        })
    };
    let weak = live(move || {
        found.with(|(_, weak, ..)| {
            if weak.is_empty() {
                return Bit::from(el("p").text(w::NO_WEAK));
            }
            let ways = weak.iter().map(|hive| el("li").kid(of.way(hive)));
            el("ul").class("decide-hives").test_id("open-weak").kids(ways).into()
        })
    });
    bits![
        el("div")
            .class("card-body stack")
            .kid(shown::fields(ui, CHANCES))
            .kid(shown::answer(ws::OPEN, worked, 0).why(ws::WHY).mark("open-count").view())
            .kid(shown::small(ws::BY_LOT)),
        drawn,
        el("h2").class("part-title").text(w::WEAK),
        weak,
        el("p").class("small").text(w::WEAK_WHY),
        el("div")
            .class("card-body stack")
            .kid(shown::answer(w::PROVES, worked, 1).why(w::COUNTS).mark("open-proves").view())
            .kid(shown::cautions(worked)),
    ]
}

fn find(standing: &Standing, yard: &ThingId, today: Day, urgent: &[(ThingId, Urgent)]) -> Found {
    let mut hives: Vec<ThingId> = standing.hives_of(yard, true).map(|(id, _)| id.clone()).collect();
    let all = hives.len();
    let held =
        |hive: &ThingId| urgent.iter().any(|(of, urgent)| of == hive && urgent.because == Because::Disease);
    hives.retain(|hive| !held(hive));
    let out = u32::try_from(all - hives.len()).unwrap_or(u32::MAX);
    let empty = dead(standing, yard, today);
    let mut tags = String::new();
    hives.retain(|hive| {
        let gone = empty.contains(hive);
        if gone && let Some(now) = standing.hives.get(hive) {
            tags.push_str(if tags.is_empty() { " " } else { ", " });
            put_isolated(&mut tags, &now.tag);
        }
        !gone
    });
    // A hive that nobody draws is none to open for its weakness either.
    let weak = combs(standing, yard, today).into_iter().filter(crate::book::combs::Combs::weak);
    let weak = weak.map(|hive| hive.hive).filter(|hive| hives.contains(hive)).collect();
    (hives, weak, out, tags)
}

fn count(hives: &[ThingId]) -> u32 {
    u32::try_from(hives.len()).unwrap_or(u32::MAX)
}

/// How many to open of so many, by the fields.
fn wanted(draft: &BenchDraft, hives: u32) -> Option<u32> {
    let share = typed::share(draft.open_share()).ok()?;
    let (notice, sure) = (typed::share(draft.open_notice()).ok()?, typed::share(draft.open_sure()).ok()?);
    to_open(hives, share, notice, sure).map(|open| open.opened)
}

fn show(
    draft: &BenchDraft,
    hives: u32,
    (out, dead): (u32, &str),
    looked: Option<(Day, Outcome)>,
    shown: &mut Shown,
) -> Option<()> {
    let share = typed::share(draft.open_share()).ok()?;
    let (notice, sure) = (typed::share(draft.open_notice()).ok()?, typed::share(draft.open_sure()).ok()?);
    let open = to_open(hives, share, notice, sure);
    let whole = locale::whole(hives);
    match &open {
        Some(open) => show_open(share, sure, open, &whole, shown),
        None => shown.waits(ws::NOTHING),
    }
    if out > 0 {
        shown.line(w::left_out(out));
    }
    if !dead.is_empty() {
        shown.line(w::no_bees(dead));
    }
    let Some((day, outcome)) = looked else {
        shown.waits(w::NOT_DRAWN);
        return Some(());
    };
    let Outcome { drawn, from, clean, found, later } = outcome;
    if let Some(now) = open.filter(|open| open.opened != drawn) {
        shown.line(w::now(now.opened));
    }
    shown.line(w::drawn(day, drawn, from));
    if found > 0 {
        shown.answer(w::found(found, clean + found));
        shown.line(w::IS_THERE.to_owned());
    } else if clean == 0 {
        shown.waits(w::NO_LOOK);
    } else {
        let (most, of) = (at_most(from, clean, notice, sure), locale::whole(from));
        shown.answer(ws::at_most(&locale::whole(most), &of));
        shown.line(w::looked(clean, drawn));
        if most < from {
            let percent = locale::percent(sure.fraction(), 1);
            shown.line(ws::proves(&locale::whole(most + 1), &locale::whole(clean), &percent));
        }
        if clean < drawn {
            shown.line(w::SO_FAR.to_owned());
        }
        if later {
            shown.line(w::later(from));
        }
        shown.caution(&ws::none_seen(&locale::whole(clean), &of));
    }
    Some(())
}
