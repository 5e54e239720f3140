//! The season report: what some days came to in a yard, for the keeper and the club. No place; notes only where they
//! are asked for.

use super::sheet::{demo_mark, list, table, yard_name};
use crate::almanac::day::Day;
use crate::almanac::quantity::Volume;
use crate::almanac::trend::{LEAST_HIVES, Rate, Trend};
use crate::app::bench::view::cost::{each_hive, lines};
use crate::app::catch::page::{left_out, worked};
use crate::app::catch::told;
use crate::app::edge::locale;
use crate::app::el::{Bit, El, el, live};
use crate::app::graph::{RwSignal, untrack};
use crate::app::ledger::words;
use crate::app::state::Ui;
use crate::app::wording::en_papers::record as wr;
use crate::app::wording::en_records as wrec;
use crate::app::wording::en_season as w;
use crate::app::wording::{en, en_catch, en_cost};
use crate::book::Book;
use crate::book::caught::{Caught, Days};
use crate::book::entry::Ending;
use crate::book::id::ThingId;
use crate::book::record::Record;
use crate::book::review::{self, Review};
use crate::book::season::{Loss, Season};
use crate::book::spent::Spent;
use crate::book::trial;

/// What a report is on, and what its days caught.
#[derive(PartialEq)]
pub(super) struct Reviewed {
    yard: ThingId,
    days: (Day, Day),
    review: Review,
}

impl Reviewed {
    /// The days from `from` to `to` in `yard`, of all that was `caught`.
    pub(super) fn of(caught: &[Caught], yard: ThingId, (from, to): (Day, Day)) -> Reviewed {
        let review = Review::of(caught, &yard, from, to);
        Reviewed { yard, days: (from, to), review }
    }
}

/// What the report is on, and what the yard caught.
pub(super) fn catch(book: &Book, of: &Reviewed) -> Bit {
    let Reviewed { yard, days: (from, to), review } = of;
    let [catch, ..] = w::PARTS;
    let mut bits: Vec<Bit> = vec![
        el("h2").text(&[w::TITLE, ": ", &yard_name(book, yard)].concat()).into(),
        demo_mark(yard).into(),
        bold(wr::PERIOD, &[&en::date(*from), wr::UNTIL, &en::date(*to)].concat()).into(),
        el("h3").text(catch).into(),
    ];
    caught(book, review, &mut bits);
    Bit::Many(bits)
}

/// What follows it: hives, work, each hive, the cost and what is to be changed. Passes over the whole log and a table of a
/// hundred hives take longer than all that stands before them. The keeper's notes only while `notes` is ticked.
pub(super) fn rest(ui: Ui, book: &Book, of: &Reviewed, notes: RwSignal<bool>) -> Bit {
    let Reviewed { yard, days: (from, to), review } = of;
    let today = crate::app::records::Records::get().today(yard);
    let season = Season::of(book, yard, *from, *to);
    let [_, hives, lost, work, each, cost, next] = w::PARTS;
    let mut bits: Vec<Bit> = vec![
        el("h3").text(hives).into(),
        list("plain-list", &w::hives(&season)).into(),
        el("h3").text(lost).into(),
        losses(book, &season.losses, notes),
        el("h3").text(work).into(),
    ];
    if season.yard.visits == 0 {
        bits.push(el("p").text(w::NO_VISIT).into());
    } else {
        bits.push(list("plain-list", &w::work(&season, &oil(ui, &season))).into());
    }
    if !season.hives.is_empty() {
        bits.push(el("h3").text(each).into());
        let days = Days { from: *from, to: *to };
        let caught = crate::app::records::Records::get().caught;
        let closed = untrack(|| caught.with(|caught| trial::shut(book, caught, days, today)));
        bits.push(one_by_one(book, &season, review, &closed).into());
        let beside = review.earlier.is_some() && review.both.trend.hives > 0;
        let told = if beside { one_hive(&review.both.trend) } else { String::new() };
        bits.push(el("p").class("small").text(&told).text(w::WALK).into());
    }
    bits.push(el("h3").text(cost).into());
    costs(&Spent::of(book, Some(yard), *from, *to, &crate::app::kinds::names), &mut bits);
    bits.push(el("h3").text(next).into());
    bits.push(verdicts(book, yard, review.days, notes));
    bits.push(el("p").class("small").text(&w::how()).into());
    Bit::Many(bits)
}

fn bold(label: &str, text: &str) -> El {
    el("p").kid(el("strong").text(label)).text(text)
}

fn oil(ui: Ui, season: &Season) -> String {
    let (least, most) = season.yard.oil;
    if least < most {
        [&ui.volume(least), " to ", ui.volume(most).as_str()].concat()
    } else if most == Volume::ZERO {
        en::NO_ANSWER.to_owned()
    } else {
        ui.volume(most)
    }
}

/// What stands in a field of a record; nothing where it is empty.
fn answer(book: &Book, record: &Record, name: &str) -> String {
    let mut said = String::new();
    for ((field, answer), (.., names)) in record.fields().zip(wrec::blank(record.blank).fields) {
        if let Some(answer) = answer.filter(|_| field.name == name) {
            words::put_answer(&mut said, book, &field.ask, answer, names);
        }
    }
    said
}

/// A line, and the notes under it while they are asked for.
fn noted(line: &str, said: Vec<String>, notes: RwSignal<bool>) -> El {
    let item = el("li").text(line);
    if said.is_empty() {
        return item;
    }
    item.kid(live(move || notes.get().then(|| list("plain-list", &said))))
}

fn losses(book: &Book, losses: &[Loss], notes: RwSignal<bool>) -> Bit {
    if losses.is_empty() {
        return el("p").text(w::NO_LOSS).into();
    }
    let mut told = el("ul").class("plain-list");
    for loss in losses {
        let into = match &loss.how {
            Some(Ending::Joined { into: Some(into) }) => words::hive_name(book, into),
            _ => String::new(),
        };
        let (mut showed, mut said) = (Vec::new(), Vec::new());
        for record in &loss.showed {
            showed.push(answer(book, record, "causes"));
            said.extend(record.text("note").map(words::isolated));
        }
        let hive = words::hive_name(book, &loss.hive);
        let line = w::loss(&hive, loss.day, loss.how.as_ref(), &into, &showed, loss.back);
        told = told.kid(noted(&line, said, notes));
    }
    Bit::from([told, el("p").class("small").text(w::CAUSES)])
}

fn rate(rate: Option<Rate>) -> String {
    let Some(rate) = rate else { return w::TOO_LITTLE.to_owned() };
    let (seen, limits) = told::rate(&rate, locale::number);
    w::with_limits(&seen, &limits)
}

/// The catch of the yard, a year earlier, and what both say beside each other.
fn caught(book: &Book, review: &Review, bits: &mut Vec<Bit>) {
    let (rates, counts, sums) = (review.rates(), review.counts(), review.both.sums);
    let of = |known: Option<Rate>, counts: usize, trap_days: u32| {
        [": ", &if known.is_some() { rate(known) } else { w::too_little(counts, trap_days) }].concat()
    };
    bits.push(bold(w::NOW, &of(rates.1, counts.1, sums.1.trap_days)).into());
    let small = |text: &str| el("p").class("small").text(text);
    let mut lines = left_out(&review.both);
    if let Some(earlier) = review.earlier {
        bits.push(bold(w::EARLIER, &of(rates.0, counts.0, sums.0.trap_days)).into());
        // That line has said it where nothing was counted then.
        if counts.0 > 0 {
            let (big, all) = worked(book, &review.both, earlier, review.days);
            let means = w::means(review.both.trend.word);
            bits.push(el("p").kid(el("strong").text(&big)).text(". ").text(means).into());
            lines = all;
        }
    } else {
        bits.push(el("p").text(w::TOO_LONG).into());
    }
    bits.push((!lines.is_empty()).then(|| list("plain-list small", &lines)).into());
    bits.push(small(&[w::LIMITS, " ", en_catch::NOT_ALL].concat()).into());
}

fn one_by_one(book: &Book, season: &Season, review: &Review, shut: &[ThingId]) -> El {
    let mut rows = Vec::new();
    for (hive, figures) in &season.hives {
        let tag = book.standing().hives.get(hive).map_or("", |hive| &hive.tag);
        let (first, second, trend) = review.of_hive(hive);
        let beside = || {
            let Some(trend) = &trend else {
                let counted = first.is_some() && second.is_some();
                return if counted { w::FEW_HIVES } else { en::NO_ANSWER }.to_owned();
            };
            // What may be, where it reaches from fewer to more; else the counts are too small for limits to say anything.
            let open =
                trend.limits.0.is_some_and(|low| low <= 1.0) && trend.limits.1.is_none_or(|high| high >= 1.0);
            let limits = open.then(|| told::limits(trend.limits, locale::number));
            w::beside(trend.word, limits.as_deref(), review.both.trend.spread > 1.0)
        };
        let closed = shut.contains(hive);
        let rate = |known| if closed { w::IN_TRIAL.to_owned() } else { rate(known) };
        let cells = [
            words::isolated(tag),
            figures.visits.to_string(),
            w::rhythm(figures),
            w::on_time(figures, false),
            w::counted_on(figures),
            rate(second),
            rate(first),
            if closed { w::IN_TRIAL.to_owned() } else { beside() },
        ];
        let mut row = Vec::new();
        for cell in cells {
            row.push(cell.into());
        }
        rows.push(row);
    }
    table(&w::COLUMNS, rows)
}

/// How far the word of one hive goes.
fn one_hive(all: &Trend) -> String {
    if all.used < LEAST_HIVES {
        return [w::ONE_HIVE, &w::too_few_hives(LEAST_HIVES)].concat();
    }
    if all.limits.0.is_none() || all.limits.1.is_none() {
        return [w::ONE_HIVE, w::NO_LIMITS].concat();
    }
    let spread = if all.spread > 1.0 {
        &en_catch::spread(&told::shown(all.spread, None, locale::number))
    } else {
        en_catch::NO_SPREAD
    };
    [w::ONE_HIVE, spread, w::ONE_HIVE_TOLD].concat()
}

/// As it is said at Load.
fn costs(spent: &Spent, bits: &mut Vec<Bit>) {
    let cost = spent.cost();
    bits.push(bold(w::COST, &[": ", &each_hive(&cost)].concat()).into());
    let number = |value: f64| locale::number(value, 1);
    let (trips, hours) = (number(spent.trips), number(spent.hours));
    let mut said = vec![en_cost::counted_on(spent, &trips, &hours)];
    said.extend(lines([spent.used_up, spent.durable, spent.travel, spent.work], &cost));
    for of in &spent.missing {
        said.push(en_cost::missing(*of));
    }
    bits.push(list("plain-list", &said).into());
    bits.push(el("p").class("small").text(w::COST_HOW).into());
}

/// What the keeper will do next year.
fn verdicts(book: &Book, yard: &ThingId, days: Days, notes: RwSignal<bool>) -> Bit {
    let all = review::verdicts(book.standing(), yard, days);
    if all.is_empty() {
        return el("p").text(w::NO_VERDICT).into();
    }
    let mut told = el("ul").class("plain-list");
    for now in all {
        let of = |name: &str| answer(book, &now.record, name);
        let line = [&en::date(now.day), wrec::SAYS, &of("about"), wrec::SAYS, &of("next")].concat();
        let said = now.record.text("note").map(words::isolated).into_iter().collect();
        told = told.kid(noted(&line, said, notes));
    }
    told.into()
}
