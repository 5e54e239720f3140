//! How well the bees cover their comb: boxes off, joining, and a split.

use super::page::{Asked, lines, most, others};
use crate::almanac::cover::Guard;
use crate::almanac::day::Day;
use crate::almanac::quantity::Decimal;
use crate::almanac::typed::count;
use crate::app::bench::cover::MOST_FRAMES;
use crate::app::bench::view::divide;
use crate::app::edge::locale;
use crate::app::el::{Bit, El, below, el, live};
use crate::app::graph::{Memo, RwSignal, untrack};
use crate::app::parts::key::{Key, link};
use crate::app::parts::notice::Notice;
use crate::app::place::Place;
use crate::app::round::bits;
use crate::app::round::form::keys;
use crate::app::wording::en_decide::cover as wc;
use crate::app::wording::en_yard_decides::{self, card, comb as w};
use crate::book::combs::{Combs, Counted, Look, combs};
use crate::book::id::ThingId;
use crate::book::record::Blank;
use crate::book::urgent::{Because, Urgent};

/// Groups of hives, the ones that want most first.
const GROUPS: [(Option<Guard>, &str); 4] = [
    (Some(Guard::Little), w::LITTLE),
    (Some(Guard::Watch), w::WATCH),
    (Some(Guard::Well), w::WELL),
    (None, w::NOT_KNOWN),
];

pub(super) fn view(asked: &Asked) -> Bit {
    let ui = asked.ui;
    let found = asked.follow(combs);
    let cards = asked.urgent;
    let of = asked.clone();
    let all = RwSignal::new(false);
    let most = most(all);
    let list = live(move || {
        let mut left = most.get();
        found.with(|hives| {
            if hives.is_empty() {
                return Bit::from(el("p").text(en_yard_decides::EMPTY));
            }
            let mut bits = Vec::new();
            for (guard, title) in GROUPS {
                let mut own = hives.iter().filter(|hive| hive.guard() == guard).take(left).peekable();
                if own.peek().is_some() {
                    bits.push(Bit::from(el("h3").text(title)));
                    let own = own.map(|hive| line(&of, hive, cards)).collect::<Vec<_>>();
                    left -= own.len();
                    bits.push(el("ul").class("decide-hives").kids(own).into());
                }
            }
            bits.push(others(hives.len(), all));
            Bit::Many(bits)
        })
    });
    // Where disease is suspected in one hive none of the yard is split, whatever the bees would do.
    let split = below(move || {
        live(move || {
            let held = cards.with(|cards| cards.iter().any(|(_, urgent)| urgent.because == Because::Disease));
            if held { Notice::alarm(card::NO_SALE).view() } else { untrack(|| divide::view(ui)) }
        })
    });
    bits![
        Notice::caution(w::NEVER_JOIN).why(w::NEVER_WHY).view(),
        el("h2").class("part-title").text(en_yard_decides::HIVES),
        el("div").test_id("comb-hives").kid(list),
        el("p").class("small").text(wc::FLOW),
        el("p").class("small").text(wc::WHY),
        el("h2").class("part-title").attr("id", "split").text(w::SPLIT),
        el("div").class("card-body").test_id("comb-split").kid(split),
    ]
}

/// A hive with a card of the same day is not one to split or to join: what its card says comes first. Nor is one with larvae
/// in its comb.
fn line(asked: &Asked, hive: &Combs, cards: Memo<Vec<(ThingId, Urgent)>>) -> El {
    let card = cards.with(|cards| {
        cards.iter().find(|(of, _)| *of == hive.hive).map(|(_, urgent)| (urgent.because, urgent.since))
    });
    let because = card.map(|(because, _)| because);
    let stays = hive.stays(because);
    let body = el("li").kid(el("h4").kid(asked.way(&hive.hive))).kid(lines(&told(hive, card)));
    let figures = hive.last.as_ref().and_then(|look| Some((look.bees, look.frames?)));
    let typed = asked.ui.bench();
    let take = figures.filter(|_| !stays).map(|(bees, frames)| {
        Key::new(w::SPLIT_OF, move || {
            typed.split_bees().set(locale::number(bees.as_f64(), 2));
            // As many go along as stand in the field; the rest stays.
            let goes = typed.split_goes().with_untracked(|text| count(text, 1, MOST_FRAMES)).unwrap_or(0);
            let stays = frames.saturating_sub(goes).max(1);
            typed.split_stays().set(stays.to_string());
            crate::app::frame::focus("#split-bees");
        })
        .mark("split-of")
        .view()
    });
    // Nobody is sent to open a hive under suspicion.
    let look = (because != Some(Because::Disease))
        .then(|| link(w::LOOK, &Place::Write(Blank::Look, Some(hive.hive.to_string()))));
    body.kid(keys(bits![look, take]))
}

/// What is known of a hive and what follows.
fn told(hive: &Combs, card: Option<(Because, Day)>) -> Vec<String> {
    let because = card.map(|(because, _)| because);
    let mut said = Vec::new();
    match &hive.last {
        None => said.push(w::NO_LOOK.to_owned()),
        Some(look) => cover(look, hive.a_box, hive.stays(because), &mut said),
    }
    if hive.little_twice {
        said.push(w::TWICE.to_owned());
    }
    said.extend(hive.queenless.map(w::queenless));
    match card {
        Some((Because::Disease, day)) => said.push(w::suspected(day)),
        None => said.extend(hive.larvae.map(w::larvae)),
        _ => {}
    }
    let to_join = hive.to_join(because);
    if let Some((what, result, day)) = &hive.test {
        let before = if to_join { [w::TEST_FIRST, " "].concat() } else { String::new() };
        said.push([&before, &*w::test(what, result, *day)].concat());
    } else if to_join {
        said.push(w::JOIN.to_owned());
    }
    if card.is_some() {
        said.push(w::CARD_FIRST.to_owned());
    }
    said
}

/// How well its comb is covered, and what comes off, unless it `stays` as it is.
fn cover(look: &Look, a_box: Option<u32>, stays: bool, said: &mut Vec<String>) {
    let percent = |share| locale::percent(share, 0);
    if let (Some(frames), Some(cover)) = (look.frames, look.cover) {
        said.push(w::sum(look.sides, frames, &percent(cover.share), look.day));
    } else if look.frames.is_none() {
        let bees =
            if look.bees == Decimal::ZERO { "0".to_owned() } else { locale::number(look.bees.as_f64(), 2) };
        said.push([w::NO_COMB, " ", &bees, " frames of bees."].concat());
    }
    if look.taken > 0 {
        said.push(w::taken(look.taken));
    }
    let Some(cover) = look.cover else { return };
    if let Counted::Boxes(boxes, each) = look.counted {
        said.push(w::by_boxes(boxes, each));
    }
    if stays {
        return;
    }
    said.push(wc::guard(&cover).to_owned());
    match (cover.off, a_box) {
        (Some(off), Some(_)) => said.push(w::off(off, &percent(cover.then))),
        (None, Some(_)) if cover.guard != Guard::Well => said.push(wc::JOIN.to_owned()),
        (_, None) if cover.guard != Guard::Well => said.push(w::NO_BOX.to_owned()),
        _ => {}
    }
}
