//! Would the looks have seen a brood? A plan, and the looks in the book.

use super::rhythm::{self, BACK, Looked, MOST_DAYS, Stay};
use crate::app::bench::draft::Slot;
use crate::app::bench::view::says::Reads;
use crate::app::bench::view::shown::{self, Typed};
use crate::app::edge::locale;
use crate::app::el::{Bit, el, live};
use crate::app::frame::heading;
use crate::app::graph::{Memo, RwSignal, untrack};
use crate::app::ledger::papers::events::yards;
use crate::app::ledger::words;
use crate::app::parts::answer::{Answer, Worked};
use crate::app::parts::card::more;
use crate::app::parts::choice::Choice;
use crate::app::parts::drawing::looks_bar;
use crate::app::parts::notice::Notice;
use crate::app::place::Clock;
use crate::app::records::Records;
use crate::app::round::bits;
use crate::app::round::form::select;
use crate::app::state::Ui;
use crate::app::wording::{en, en_beetle as wb, en_beetle_rhythm as w, en_round};
use crate::book::aims::Aims;
use crate::book::id::ThingId;

const FIELDS: [Typed; 4] = [
    Typed::new("rhythm-comb", w::COMB, Slot::rhythm_comb, Reads::Warmth)
        .unit(Slot::rhythm_comb_unit)
        .hint(w::COMB_HINT),
    Typed::new("rhythm-every", w::EVERY, Slot::rhythm_every, Reads::Steps(1, MOST_DAYS)),
    Typed::new("rhythm-notice", w::NOTICE, Slot::rhythm_notice, Reads::Share),
    Typed::new("rhythm-wanted", w::WANTED, Slot::rhythm_wanted, Reads::Share),
];

/// The clock.
pub(super) fn view(ui: Ui, records: Records) -> Bit {
    let seen = move || ui.draft.with(rhythm::plan).map(|plan| plan_seen(ui, &plan));
    let longest = move || {
        let plan = ui.draft.with(rhythm::plan)?;
        let [short, likely, long] = plan.longest;
        Some(match likely {
            Some(likely) => (en::days(likely), vec![w::reach(short, long)]),
            None => (en::NO_ANSWER.to_owned(), vec![w::NEVER.to_owned()]),
        })
    };
    bits![
        heading(wb::clock(Clock::Rhythm)),
        Notice::plain(w::ESTIMATE).why(w::HOW).view(),
        el("h2").class("part-title").text(w::PLAN),
        el("div")
            .class("card-body")
            .kid(shown::fields(ui, &FIELDS))
            .kid(live(move || {
                let read = ui.draft.with(rhythm::comb).is_some();
                let cold = read && ui.draft.with(rhythm::grow).is_none();
                cold.then(|| Notice::caution(w::TOO_COLD).view())
            }))
            .kid(aims_say(ui, records))
            .kid(Answer::of(w::SEEN, seen).mark("rhythm-seen").view())
            .kid(Answer::of(w::LONGEST, longest).mark("rhythm-longest").view()),
        el("h2").class("part-title").text(w::OWN),
        own(ui, records),
    ]
}

/// Which days count where those under aims are others than the typed ones.
fn aims_say(ui: Ui, records: Records) -> Bit {
    let aims = Memo::new(move || records.book.with(|book| Aims::of(book.standing()).look_every));
    live(move || {
        let (own, typed) = (aims.get()?, ui.draft.with(rhythm::every)?);
        (own != typed).then(|| el("p").class("small").text(&w::aims_say(own)))
    })
}

fn percent(share: f64) -> String {
    locale::percent(share, 0)
}

fn span(shares: [f64; 3]) -> String {
    w::seen(&shares.map(percent))
}

fn plan_seen(ui: Ui, plan: &rhythm::Plan) -> Worked {
    let stay = &plan.stay;
    let told = stay.days.map(|days| locale::number(days, 1));
    let [_, likely, _] = plan.seen;
    let [_, days, _] = stay.days;
    let mut lines = vec![w::stay(&told, &locale::warmth(stay.celsius, ui.prefs.get().warmth))];
    let all = days >= f64::from(plan.every);
    let share = (days / f64::from(plan.every)).min(1.0);
    let [_, days, _] = &told;
    lines.push(w::sum(days, plan.every, &percent(share), all));
    if stay.notice < 1.0 {
        lines.push(w::noticed(&percent(stay.notice)));
    }
    debug_assert!((share * stay.notice - likely).abs() < 1e-9);
    (span(plan.seen), lines)
}

fn own(ui: Ui, records: Records) -> Bit {
    let all: Vec<(String, String)> = records.book.with_untracked(|book| {
        yards(book).into_iter().map(|id| (id.to_string(), words::yard_name(book, &id))).collect()
    });
    let yard = ui.bench().rhythm_yard();
    let Some((first, _)) = all.first() else { return el("p").text(w::NO_YARD).into() };
    if yard.with_untracked(|yard| all.iter().all(|(known, _)| known != yard)) {
        yard.set(first.clone());
    }
    let by = ui.bench().rhythm_by();
    let looked = Memo::new(move || {
        let Some(id) = yard.with(|yard| ThingId::parse(yard).ok()) else { return Vec::new() };
        let (visits, today) = (by.with(|by| by == "visits"), records.today(&id));
        records.book.with(|book| rhythm::looked(book, &id, today, visits))
    });
    let [looks, visits] = w::COUNTS;
    let chooser = (all.len() > 1).then(|| select("rhythm-yard", w::YARD, yard, &all));
    bits![
        el("div").class("card-body").kid(chooser).kid(
            Choice::new("rhythm-by", w::BY).options(&[("looks", looks), ("visits", visits)]).text(by).view()
        ),
        live(move || {
            let any = looked.with(|all| all.iter().any(|hive| hive.days.len() > 1));
            let all = looked.get();
            untrack(|| if any { hives(ui, records, all, looked) } else { el("p").text(w::NO_GAPS).into() })
        }),
    ]
}

/// The hive that is drawn and the list of all.
fn hives(ui: Ui, records: Records, all: Vec<Looked>, looked: Memo<Vec<Looked>>) -> Bit {
    let drawn = ui.bench().rhythm_hive();
    let some: Vec<(String, String)> = all
        .iter()
        .filter(|hive| hive.days.len() > 1)
        .map(|hive| (hive.hive.to_string(), words::isolated(&hive.tag)))
        .collect();
    if drawn.with_untracked(|drawn| some.iter().all(|(known, _)| known != drawn))
        && let Some((first, _)) = some.first()
    {
        drawn.set(first.clone());
    }
    bits![
        select("rhythm-hive", w::HIVE, drawn, &some),
        live(move || {
            let hive = drawn.with(|drawn| all.iter().find(|hive| hive.hive.to_string() == *drawn).cloned());
            let stay = ui.draft.with(rhythm::stay);
            let every = ui.draft.with(rhythm::plan).map(|plan| plan.every);
            let aims = records.book.with(|book| Aims::of(book.standing()).look_every);
            hive.zip(stay).map(|(hive, stay)| one(records, &hive, &stay, aims.or(every)))
        }),
        more(
            w::EACH,
            live(move || {
                let stay = ui.draft.with(rhythm::stay);
                looked.with(|all| {
                    let lines = all.iter().map(|hive| el("li").text(&line(hive, stay.as_ref())));
                    let few = all.iter().filter(|hive| hive.days.len() < 2).count();
                    let few = u32::try_from(few).unwrap_or(u32::MAX);
                    bits![
                        (few > 0).then(|| el("p").test_id("rhythm-few").text(&w::never_twice(few))),
                        el("ul").class("tabular").test_id("rhythm-hives").kids(lines),
                    ]
                })
            })
        ),
    ]
}

/// The share that the looks at a hive saw; none without a gap.
fn big(hive: &Looked, stay: &Stay) -> String {
    stay.seen(&hive.gaps()).map_or_else(|| en::NO_ANSWER.to_owned(), span)
}

fn line(hive: &Looked, stay: Option<&Stay>) -> String {
    let (tag, gaps) = (en_round::hive(&hive.tag), hive.gaps());
    let count = |count: usize| u32::try_from(count).unwrap_or(u32::MAX);
    match stay.and_then(|stay| stay.seen(&gaps)) {
        Some(seen) => w::hive(&tag, &span(seen), count(gaps.len()), gaps.iter().copied().max().unwrap_or(0)),
        None => w::too_few(&tag, count(hive.days.len())),
    }
}

fn one(records: Records, hive: &Looked, stay: &Stay, every: Option<u32>) -> Bit {
    let yard =
        records.book.with_untracked(|book| book.standing().hives.get(&hive.hive).map(|now| now.yard.clone()));
    let (Some(yard), Some(last), Some(first)) = (yard, hive.days.last(), hive.days.first()) else {
        return Bit::Nothing;
    };
    let today = records.today(&yard);
    let skip = every.and_then(|every| rhythm::skip(*last, every, today, stay));
    // As many weeks as there are looks in, and the look that comes next.
    let start = (*first).max(today.plus(-BACK));
    let end = skip.map_or(today, |skip| skip.next);
    let looks: Vec<i32> = hive.days.iter().map(|day| day.days_since(start)).collect();
    let planned: Vec<i32> = skip.iter().map(|skip| skip.next.days_since(start)).collect();
    let [_, likely, _] = stay.days;
    let lines = skip.map(|skip| {
        let lines =
            [w::next(skip.next, &span(skip.seen)), w::skipped(skip.after, &span(skip.skipped), skip.gap)];
        el("ul").class("tabular").test_id("rhythm-skip").kids(lines.map(|line| el("li").text(&line)))
    });
    bits![
        el("p").class("answer-big").test_id("rhythm-own").text(&big(hive, stay)),
        el("p").test_id("rhythm-gaps").text(&line(hive, Some(stay))),
        looks_bar(end.days_since(start), &looks, likely, &planned),
        el("p").class("small").text(w::AXIS),
        lines,
        el("p").class("small").text(&w::drawn(&words::isolated(&hive.tag), &hive.days)),
    ]
}

/// The keeper's own aims stand in the fields as long as nobody has typed over the examples.
pub(super) fn by_aims(ui: Ui, records: Records) {
    let aims = records.book.with_untracked(|book| Aims::of(book.standing()));
    let fill = |field: RwSignal<String>, example: &str, own: String| {
        if field.with_untracked(|text| text == example) && own != example {
            field.set(own);
        }
    };
    let typed = ui.bench();
    if let Some(every) = aims.look_every {
        fill(typed.rhythm_every(), "14", every.to_string());
    }
    fill(typed.honey_goal(), "24", aims.goal_hours.to_string());
    fill(typed.honey_limit(), "48", aims.limit_hours.to_string());
    if aims.notice < 1.0 {
        fill(typed.rhythm_notice(), "100 %", locale::percent(aims.notice, 1));
    }
}
