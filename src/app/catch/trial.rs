//! The page of trials: those written down, not opened before their day, and the lot for one more.

use crate::almanac::day::Day;
use crate::almanac::text::{LABEL_MOST, label};
use crate::almanac::trial::{LEAST_PAIRS, Outcome, Pairs};
use crate::almanac::typed::day_planned;
use crate::app::decide::draws;
use crate::app::edge::letters::BrowserLetters;
use crate::app::edge::{self, device, locale};
use crate::app::el::{Bit, El, el, live};
use crate::app::frame::{focus, heading};
use crate::app::graph::{Memo, RwSignal, untrack};
use crate::app::ledger::papers::events::yards;
use crate::app::ledger::words;
use crate::app::parts::field::{Field, Says};
use crate::app::parts::key::{Key, link};
use crate::app::parts::notice::{Notice, why};
use crate::app::place::{Place, Section};
use crate::app::records::{Records, Stop};
use crate::app::round::bits;
use crate::app::round::form::{go, keys, refused_line, select};
use crate::app::round::said;
use crate::app::state::Ui;
use crate::app::wording::{en, en_catch as wc, en_trial as w, en_typed};
use crate::book::Book;
use crate::book::caught;
use crate::book::entry::Entry;
use crate::book::id::{EntryId, ThingId};
use crate::book::record::Blank;
use crate::book::trial::{self, Apart, Trial, hives, in_pairs, kept_pairs, plan, records as lists};

/// Of 32: more draws than anybody makes.
const SEED_LETTERS: usize = 8;

/// The day and the hives of a draw, which of them are pairs, and those without a partner.
type Lists = Option<(Day, Vec<ThingId>, Pairs, Vec<usize>)>;

/// The lines of the book that count, each under the name of its first version.
type Lines<'a> = &'a [(&'a EntryId, &'a Entry)];

/// The page of the Book, of the yard `of` where the address names one.
pub(in crate::app) fn view(ui: Ui, records: Records, of: Option<&str>) -> Bit {
    let all: Vec<(String, String)> = records.book.with_untracked(|book| {
        yards(book).into_iter().map(|id| (id.to_string(), words::yard_name(book, &id))).collect()
    });
    let yard = ui.bench().catch_yard();
    let wanted = of.map(str::to_owned).or_else(|| Some(yard.get_untracked()));
    let known = all.iter().find(|(id, _)| Some(id) == wanted.as_ref()).or(all.first());
    if let Some((id, _)) = known {
        yard.set(id.clone());
    }
    let chosen = Memo::new(move || yard.with(|yard| ThingId::parse(yard).ok()));
    let written = live(move || {
        let (all, apart) = records.book.with(trial::sorted);
        untrack(|| {
            if all.is_empty() && apart.is_empty() {
                return Bit::from(el("p").text(w::NONE));
            }
            records.book.with(|book| {
                let mut cards = Vec::new();
                // Once for all cards: of a large book it is a sort of every line.
                let lines = book.log().in_effect();
                for apart in &apart {
                    cards.push(unmatched(book, &lines, apart));
                }
                records.caught.with(|caught| {
                    for trial in &all {
                        cards.push(told(records, book, &lines, trial, caught));
                    }
                });
                Bit::Many(cards)
            })
        })
    });
    let new =
        if all.is_empty() { el("p").text(wc::NO_YARD).into() } else { draw(ui, records, &all, yard, chosen) };
    bits![
        el("p").class("back").kid(link(en::section(Section::Book), &Place::Book)),
        heading(w::TITLE),
        el("p").text(w::WHAT),
        el("h2").class("part-title").text(w::SO_FAR),
        el("div").test_id("trials").kid(written),
        el("h2").class("part-title").text(w::NEW),
        new,
    ]
}

fn told(records: Records, book: &Book, lines: Lines, trial: &Trial, caught: &[caught::Caught]) -> Bit {
    let today = match &trial.yard {
        Some(yard) => records.today(yard),
        None => Ui::get().today.get(),
    };
    let mut card = el("section").class("card").kid(el("h3").text(&words::isolated(&trial.named)));
    let both: [Vec<&ThingId>; 2] =
        [trial.pairs.iter().map(|(one, _)| one).collect(), trial.pairs.iter().map(|(_, one)| one).collect()];
    for (side, of) in w::SIDES.into_iter().zip(both) {
        card = card.kid(side_of(book, side, &of));
    }
    let each: Vec<_> = trial.pairs.iter().map(|(one, other)| [one, other]).collect();
    card = card.kid(pairs_of(book, &each));
    match (trial.until, trial.outcome(book.standing(), lines, caught, today)) {
        (None, _) => card.kid(Notice::plain(w::NO_DAY).view()),
        (Some(until), None) => card.kid(Notice::plain(w::opened(until)).view()),
        (Some(until), Some(outcome)) => {
            let big = w::big(outcome.told(), outcome.less, outcome.more);
            let mut sum = el("ul").class("answer-sum");
            sum = sum.kid(el("li").text(&w::span(trial.from, until)));
            for line in sum_of(&outcome) {
                sum = sum.kid(el("li").text(&line));
            }
            card.kid(el("p").class("answer-big").test_id("trial-word").text(&big))
                .kid(sum)
                .kid(why(wc::NOT_ALL_WHY))
        }
    }
    .into()
}

/// A list without its other side: what does not match, and the way to mend it.
fn unmatched(book: &Book, lines: Lines, apart: &Apart) -> Bit {
    let standing = book.standing();
    let mut card = el("section").class("card").test_id("trial-apart");
    let mut ways = el("p").class("keys");
    let mut said: [Vec<String>; 5] = Default::default();
    for line in &apart.lines {
        let Some(list) = standing.records.get(line) else { continue };
        let name = w::SIDES[usize::from(!trial::with_it(list))];
        let named = words::isolated(list.record.text("named").unwrap_or_default());
        if said[0].is_empty() {
            card = card.kid(el("h3").text(&named));
        }
        let hives: Vec<&ThingId> = list.record.hives.iter().map(|hive| standing.kept(hive)).collect();
        card = card.kid(side_of(book, name, &hives));
        // A line stands under the name of its first version, and is corrected in its last.
        for (root, version) in lines {
            if *root == line {
                let place = Place::Write(Blank::Trial, Some(version.id.to_string()));
                ways = ways.kid(link(w::mend(name), &place));
            }
        }
        let until = list.record.day("until").map_or_else(|| w::NO_UNTIL.to_owned(), en::date);
        let count = hives.len().to_string();
        for (said, one) in said.iter_mut().zip([named, en::date(list.day), name.to_owned(), until, count]) {
            said.push(one);
        }
    }
    let mut list = el("ul").class("plain-list");
    for ((label, said), differs) in w::DIFFERS.into_iter().zip(said).zip(apart.differs) {
        if differs {
            list = list.kid(el("li").text(&[label, ": ", &said.join(" – ")].concat()));
        }
    }
    let lead = if apart.lines.len() < 2 { w::ONE_SIDE } else { w::APART };
    card.kid(Notice::caution(lead).view()).kid(list).kid(ways).into()
}

fn sum_of(outcome: &Outcome) -> Vec<String> {
    let percent = |chance| super::told::chance(chance, locale::percent);
    let mut lines = Vec::new();
    if outcome.less + outcome.more + outcome.even > 0 {
        lines.push(w::signs(outcome.less, outcome.more, outcome.even));
        lines.push(w::sign(&percent(outcome.sign)));
    }
    lines.extend(outcome.permuted.map(|chance| w::permuted(&percent(chance))));
    if outcome.open > 0 {
        lines.push(w::open(outcome.open));
    }
    let uneven = outcome.less + outcome.more;
    if (1..LEAST_PAIRS).contains(&uneven) {
        lines.push(w::never(uneven));
    }
    lines
}

/// Hives of one side in the order in which they are walked.
fn side_of(book: &Book, side: &str, hives: &[&ThingId]) -> El {
    let standing = book.standing();
    let place = |hive: &ThingId| {
        let yard = standing.hives.get(hive).and_then(|now| standing.yards.get(&now.yard))?;
        yard.order.iter().position(|known| known == hive)
    };
    let mut walked: Vec<(usize, String)> = Vec::new();
    for hive in hives {
        let at = place(hive).unwrap_or(usize::MAX);
        let tag = words::isolated(standing.hives.get(*hive).map_or("", |now| &now.tag));
        let before = walked.iter().take_while(|(known, _)| *known <= at).count();
        walked.insert(before, (at, tag));
    }
    let mut said = String::new();
    for (_, tag) in &walked {
        let comma = if said.is_empty() { "" } else { ", " };
        en::put(&mut said, comma);
        en::put(&mut said, tag);
    }
    el("p").kid(el("strong").text(&[side, ": "].concat())).text(&said)
}

/// Which hives are pairs, with it first.
fn pairs_of(book: &Book, pairs: &[[&ThingId; 2]]) -> El {
    let mut said = String::new();
    for pair in pairs {
        for (hive, before) in pair.iter().zip([if said.is_empty() { "" } else { "; " }, " – "]) {
            en::put(&mut said, before);
            let tag = book.standing().hives.get(*hive).map_or("", |now| &now.tag);
            en::put(&mut said, &words::isolated(tag));
        }
    }
    el("p").kid(el("strong").text(w::PAIRED)).text(&said)
}

/// The lists of a draw, and the hives without a partner.
fn both_sides(book: &Book, hives: &[ThingId], pairs: &Pairs, left: &[usize]) -> Bit {
    let of = |place: fn(&(usize, usize)) -> usize| -> Vec<&ThingId> {
        pairs.each.iter().filter_map(|pair| hives.get(place(pair))).collect()
    };
    let [with, without] = w::SIDES;
    let mut bits: Vec<Bit> = vec![
        side_of(book, with, &of(|pair| pair.0)).into(),
        side_of(book, without, &of(|pair| pair.1)).into(),
    ];
    let pair = |(one, other): &(usize, usize)| Some([hives.get(*one)?, hives.get(*other)?]);
    let each: Vec<_> = pairs.each.iter().filter_map(pair).collect();
    bits.push(pairs_of(book, &each).into());
    for hive in left.iter().filter_map(|place| hives.get(*place)) {
        let tag = book.standing().hives.get(hive).map_or("", |now| &now.tag);
        bits.push(el("p").text(&w::left(&crate::app::wording::en_round::hive(tag))).into());
    }
    Bit::Many(bits)
}

/// Hives that are not drawn, each with the reason.
fn not_drawn(records: Records, yard: &ThingId) -> Bit {
    let mut bits = Vec::new();
    records.book.with(|book| {
        for (hive, because) in trial::left_out(book, yard, records.today(yard)) {
            let tag = book.standing().hives.get(&hive).map_or("", |now| &now.tag);
            bits.push(el("p").text(&w::out(&crate::app::wording::en_round::hive(tag), because)).into());
        }
    });
    Bit::Many(bits)
}

fn draw(
    ui: Ui,
    records: Records,
    all: &[(String, String)],
    yard: RwSignal<String>,
    chosen: Memo<Option<ThingId>>,
) -> Bit {
    let typed = ui.bench();
    let (named, until, kept) = (typed.trial_named(), typed.trial_until(), typed.trial_drawn());
    let stop: RwSignal<Option<Stop>> = RwSignal::new(None);
    let today = move || chosen.get().map_or_else(|| ui.today.get(), |yard| records.today(&yard));
    let name = Memo::new(move || named.with(|text| label(text, LABEL_MOST, &BrowserLetters)));
    let day = Memo::new(move || until.with(|text| day_planned(text, today())));
    let drawn: Memo<Lists> = Memo::new(move || {
        let yard = chosen.get()?;
        let draws::Drawn { day, hives: drawn, .. } = kept.with(|kept| draws::of(kept, &yard))?;
        let here = records.book.with(|book| hives(book, &yard, records.today(&yard)));
        let (pairs, left) = kept_pairs(&drawn, &here);
        Some((day, drawn, pairs, left))
    });
    let draw = move || {
        let Some(yard) = untrack(|| chosen.get()) else { return };
        let day = records.today(&yard);
        let hives = records.book.with_untracked(|book| {
            let hives = hives(book, &yard, day);
            let seed = device::id(SEED_LETTERS);
            in_pairs(&hives, &untrack(|| records.caught.with(|caught| plan(&hives, caught, &seed))))
        });
        let drawn = draws::Drawn { day, hives, from: Vec::new(), number: None };
        kept.update(|kept| *kept = draws::with(kept, &yard, &drawn));
        edge::after_paint(|| _ = focus("#trial-lists"));
    };
    let name_says = move || match name.get() {
        Ok(_) => Says::Nothing,
        Err(_) if named.with(|text| text.trim().is_empty()) => Says::Nothing,
        Err(error) => Says::Wrong(en_typed::label(error)),
    };
    let day_says = move || match day.get() {
        _ if until.with(String::is_empty) => Says::Nothing,
        Ok(day) if day <= today() => Says::Wrong(w::NOT_TODAY.to_owned()),
        Ok(day) => Says::Echo(en::echo(&en::date(day))),
        Err(error) => Says::Wrong(en_typed::day(error)),
    };
    let refused = Memo::new(move || stop.with(|stop| stop.as_ref().map(said::stop)));
    let write = move || {
        let now = untrack(today);
        let planned = untrack(|| day.get().ok()).filter(|day: &Day| *day > now);
        let wanted = untrack(|| Some((name.get().ok()?, planned?, drawn.get()?, chosen.get()?)));
        let Some((name, until_day, (_, hives, pairs, _), yard)) = wanted else {
            stop.set(Some(Stop::Refused(crate::book::write::Refusal::Nothing)));
            return;
        };
        let pen = records.pen();
        let made = records.book.with_untracked(|book| {
            book.records_together(&pen, now, now, Some(&yard), lists(&name, until_day, &hives, &pairs).into())
        });
        let done = move || {
            named.set(String::new());
            until.set(String::new());
            kept.update(|kept| *kept = draws::without(kept, &yard));
        };
        match records.put(made, w::WRITTEN) {
            Ok(_) => {
                stop.set(None);
                done();
            }
            Err(why) => {
                if why == Stop::NotSaved {
                    records.once_kept(Box::new(done));
                }
                stop.set(Some(why));
            }
        }
    };
    let shown = live(move || {
        // Once drawn, the lists stand: a second tap on the same place draws nothing.
        let first = || keys(Key::new(w::DRAW, draw).mark("trial-draw").view());
        let Some((on, hives, pairs, left)) = drawn.get() else { return first().into() };
        if pairs.each.is_empty() {
            return bits![first(), el("p").text(w::TOO_FEW)];
        }
        let count = u32::try_from(pairs.each.len()).unwrap_or(u32::MAX);
        let lists = records.book.with(|book| both_sides(book, &hives, &pairs, &left));
        bits![
            el("div").attr("id", "trial-lists").attr("tabindex", "-1").test_id("trial-lists").kid(lists),
            el("p").class("small").text(&w::paired(on)),
            (count < LEAST_PAIRS).then(|| Notice::caution(w::never(count)).view()),
            Notice::caution(w::EMPTY_FIRST).view(),
            refused_line(refused),
            go(w::WRITE, "trial-write", write),
            keys(Key::new(w::AGAIN, draw).mark("trial-again").view()),
        ]
    });
    bits![
        el("div")
            .class("fields")
            .kid((all.len() > 1).then(|| select("trial-yard", w::YARD, yard, all)))
            .kid(Field::new("trial-named", w::NAMED, named).wide().hint(w::NAMED_HINT).says(name_says).view())
            .kid(Field::new("trial-until", w::UNTIL, until).day().says(day_says).view()),
        el("div").test_id("trial-out").kid(live(move || Some(not_drawn(records, &chosen.get()?)))),
        shown,
    ]
}
