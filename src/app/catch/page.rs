//! The page: two times of a yard beside each other, a chart for each hive, and what its boxes, corners and kinds of
//! trap caught.

use super::{charts, told};
use crate::almanac::day::Day;
use crate::almanac::typed::day_done;
use crate::app::edge::locale;
use crate::app::el::{Bit, El, below, el, live};
use crate::app::frame::heading;
use crate::app::graph::{Memo, untrack};
use crate::app::kinds::kind_name;
use crate::app::ledger::papers::events::yards;
use crate::app::ledger::papers::page::day_field;
use crate::app::ledger::words;
use crate::app::parts::answer::{Answer, Worked};
use crate::app::parts::card::more;
use crate::app::parts::choice::Choice;
use crate::app::parts::key::link;
use crate::app::parts::notice::Notice;
use crate::app::place::{Place, Section};
use crate::app::records::Records;
use crate::app::round::bits;
use crate::app::round::form::{keys, select};
use crate::app::state::Ui;
use crate::app::wording::{en, en_catch as w, en_trial};
use crate::book::Book;
use crate::book::caught::{Both, Caught, Days, Part, Parts, YEAR, both, parts};
use crate::book::id::ThingId;
use crate::book::review::{earlier, year_to};

/// Tags that are named one by one.
const NAMED: usize = 6;

/// The page of the Book, of the yard `of` where the address names one.
pub(in crate::app) fn view(ui: Ui, records: Records, of: Option<&str>) -> Bit {
    let of = of.and_then(|of| ThingId::parse(of).ok());
    let (all_yards, from_yard) = records.book.with_untracked(|book| {
        let mut ids = yards(book);
        let named = of.filter(|of| book.standing().yards.contains_key(of));
        if let Some(named) = &named
            && !ids.contains(named)
        {
            ids.push(named.clone());
        }
        let name = |id: &ThingId| (id.to_string(), words::yard_name(book, id));
        (ids.iter().map(name).collect::<Vec<_>>(), named.as_ref().map(name))
    });
    let back = match &from_yard {
        Some((yard, name)) => link(name.clone(), &Place::Yard(yard.clone())),
        None => link(en::section(Section::Book), &Place::Book),
    };
    let top = bits![
        el("p").class("back").kid(back),
        heading(w::TITLE),
        Notice::caution(w::NOT_ALL).why(w::NOT_ALL_WHY).view(),
    ];
    let yard = ui.bench().catch_yard();
    let Some((first, _)) = from_yard.as_ref().or(all_yards.first()) else {
        return bits![top, el("p").text(w::NO_YARD)];
    };
    let known = yard.with_untracked(|yard| all_yards.iter().any(|(known, _)| known == yard));
    if from_yard.is_some() || !known {
        yard.set(first.clone());
    }
    let caught = records.caught;
    let chosen = Memo::new(move || yard.with(|yard| ThingId::parse(yard).ok()));
    let today = Memo::new(move || chosen.get().map(|yard| records.today(&yard)));
    let (by, typed) = (ui.bench().catch_by(), ui.bench().catch_day());
    let day = Memo::new(move || typed.with(|text| day_done(text, today.get().unwrap_or(Day::FIRST))));
    let times = Memo::new(move || {
        let today = today.get()?;
        if by.with(|by| by == "day") { around(day.get().ok()?, today) } else { years(today) }
    });
    let compared = Memo::new(move || {
        let ((first, second), yard) = times.get().zip(chosen.get())?;
        Some(caught.with(|caught| both(caught, &yard, first, second)))
    });
    let answer = move || {
        let (first, second) = times.get()?;
        let told = |both: &Both| records.book.with(|book| worked(book, both, first, second));
        compared.with(|both| both.as_ref().map(told))
    };
    let [years, before_after] = w::SIDES;
    let chooser = (all_yards.len() > 1).then(|| select("catch-yard", w::YARD, yard, &all_yards));
    bits![
        top,
        el("div")
            .class("card-body")
            .kid(chooser)
            .kid(
                Choice::new("catch-by", w::BY)
                    .options(&[("years", years), ("day", before_after)])
                    .text(by)
                    .view(),
            )
            .kid(live(move || by.with(|by| by == "day").then(|| untrack(|| bits![
                day_field("catch-day", w::DAY, typed, day),
                Notice::caution(w::SEASON).view(),
            ]))))
            .kid(Answer::of(w::ANSWER, answer).why(w::WHY).mark("catch-word").view()),
        keys(link(en_trial::TITLE, &Place::Trial(None)).test_id("to-trials")),
        below(move || live(move || each(records, caught, compared, times.get().zip(chosen.get())))),
    ]
}

/// Each hive by itself, and the parts of the yard; what is `asked` are the two times and the yard.
fn each(
    records: Records,
    caught: Memo<Vec<Caught>>,
    compared: Memo<Option<Both>>,
    asked: Option<((Days, Days), ThingId)>,
) -> Bit {
    let any = compared.with(|both| both.as_ref().is_some_and(|both| !both.hives.is_empty()));
    let counted = compared.with(|both| both.as_ref().is_some_and(|both| both.straddling + both.idle > 0));
    let Some(((first, second), yard)) = asked else {
        return Bit::Nothing;
    };
    // Those that are left out the answer names.
    if !any && counted {
        return Bit::Nothing;
    }
    if !any {
        return el("p").test_id("catch-none").text(w::NO_COUNTS).into();
    }
    let days = Days { from: first.from, to: second.to };
    untrack(|| {
        bits![
            el("h2").class("part-title").text(w::EACH),
            charts::view(records, caught, compared, &yard, days, second.from),
            more(
                w::PARTS,
                bits![
                    el("p").class("small").text(w::PARTS_HOW),
                    live(move || {
                        let parts = caught.with(|caught| parts(caught, &yard, days));
                        records.book.with(|book| tables(book, &parts))
                    }),
                ]
            ),
        ]
    })
}

/// This year and the one before.
fn years(today: Day) -> Option<(Days, Days)> {
    let year = year_to(today);
    Some((earlier(year)?, year))
}

/// What comes before `middle` and what comes after it, the second as long as the first; none where nothing comes after it.
fn around(middle: Day, today: Day) -> Option<(Days, Days)> {
    let length = today.days_since(middle).min(YEAR);
    let first = Days { from: middle.plus(-length), to: middle };
    (length > 0).then_some((first, Days { from: middle, to: middle.plus(length) }))
}

/// The word and its sum, with what is left out of it.
pub(in crate::app) fn worked(book: &Book, both: &Both, first: Days, second: Days) -> Worked {
    let (big, mut lines) = told::trend(&both.trend, true, locale::number, locale::percent);
    let [of_first, of_second] = w::WHICH;
    for (at, (which, days)) in [(of_first, first), (of_second, second)].into_iter().enumerate() {
        lines.insert(at, [which, ": ", &w::span(days.from, days.to)].concat());
    }
    if first.to == second.from {
        lines.insert(2, w::belongs(first.to));
    }
    let alone = both.hives.iter().filter(|of| (of.first.trap_days > 0) != (of.second.trap_days > 0)).count();
    let count = |count: usize| u32::try_from(count).unwrap_or(u32::MAX);
    if alone > 0 {
        lines.push(w::alone_in_one(count(alone)));
    }
    lines.extend(left_out(both));
    let changed: Vec<_> = both.hives.iter().filter(|of| of.changed).collect();
    if !changed.is_empty() {
        let mut tags = String::new();
        if changed.len() > NAMED {
            tags = w::hives(count(changed.len()));
        } else {
            for of in &changed {
                let before = if tags.is_empty() { "hive " } else { ", " };
                en::put(&mut tags, before);
                let tag = book.standing().hives.get(&of.hive).map_or("", |now| &now.tag);
                en::put(&mut tags, &words::isolated(tag));
            }
        }
        lines.push(w::changed(&tags));
    }
    (big, lines)
}

/// Counts that are left out of both times, and why.
pub(in crate::app) fn left_out(both: &Both) -> Vec<String> {
    let mut lines = Vec::new();
    for (counts, said) in [(both.straddling, w::straddling as fn(u32) -> String), (both.idle, w::idle)] {
        if counts > 0 {
            lines.push(said(u32::try_from(counts).unwrap_or(u32::MAX)));
        }
    }
    lines
}

/// Boxes, corners and kinds, each a short list.
fn tables(book: &Book, parts: &[Parts; 3]) -> Bit {
    let mut bits = Vec::new();
    for (title, parts) in w::PART.into_iter().zip(parts) {
        let mut list = el("ul").class("tabular");
        for (part, stretch) in &parts.each {
            let name = match part {
                Part::Box(level) => w::level(*level),
                Part::Corner(corner) => en::drawing::corner(*corner).to_owned(),
                Part::Elsewhere => w::ELSEWHERE.to_owned(),
                Part::Kind(kind) => kind_name(book.standing(), kind),
            };
            list = list.kid(line(&told::side(&name, stretch, locale::number)));
        }
        if parts.together.trap_days > 0 {
            list = list.kid(line(&told::side(w::TOGETHER, &parts.together, locale::number)));
        }
        bits.push(Bit::from([el("h3").text(title), list]));
    }
    Bit::Many(bits)
}

fn line(text: &str) -> El {
    el("li").text(text)
}
