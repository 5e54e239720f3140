//! What a season's trap work cost.

use super::says::Reads;
use super::shown::{self, Shown, Typed, answer};
use crate::almanac::cost::Cost;
use crate::app::bench::cost::{MOST_DAYS, reckon};
use crate::app::bench::draft::{BenchDraft, Slot};
use crate::app::bench::read::{MOST_HIVES, MOST_PIECES};
use crate::app::edge::locale;
use crate::app::el::El;
use crate::app::parts::card::more;
use crate::app::state::Ui;
use crate::app::wording::en;
use crate::app::wording::en_cost as w;

const fn may(id: &'static str, label: &'static str, text: Slot, reads: Reads) -> Typed {
    Typed::new(id, label, text, reads).may_be_empty()
}

const FIELDS: &[Typed] = &[
    Typed::new("cost-hives", w::HIVES, Slot::cost_hives, Reads::Steps(0, MOST_HIVES)),
    may("cost-used", w::USED, Slot::cost_used, Reads::Price),
    may("cost-durable", w::DURABLE, Slot::cost_durable, Reads::Price),
    Typed::new("cost-seasons", w::SEASONS, Slot::cost_seasons, Reads::Steps(1, 50)),
    may("cost-trips", w::TRIPS, Slot::cost_trips, Reads::Positive),
    may("cost-trip", w::TRIP, Slot::cost_trip, Reads::Price),
];

const REST: &[Typed] = &[
    may("cost-hours", w::HOURS, Slot::cost_hours, Reads::Positive),
    may("cost-hour", w::HOUR, Slot::cost_hour, Reads::Price),
    Typed::new("cost-traps", w::TRAPS, Slot::cost_traps, Reads::Count(0, MOST_PIECES)),
    Typed::new("cost-days", w::DAYS, Slot::cost_days, Reads::Count(1, MOST_DAYS)),
    may("cost-honey", w::HONEY, Slot::cost_honey, Reads::Positive),
    may("cost-colony", w::COLONY, Slot::cost_colony, Reads::Price),
];

/// The card's body.
pub(super) fn view(ui: Ui) -> El {
    let shown = shown::follow(ui, show);
    shown::body()
        .kid(shown::fields(ui, FIELDS))
        .kid(more(w::REST, shown::fields(ui, REST)))
        .kid(answer(w::EACH_HIVE, shown, 0).why(w::WHY).view())
        .kid(shown::small(w::CURRENCY))
}

fn show(_: Ui, draft: &BenchDraft, shown: &mut Shown) -> Option<()> {
    let sum = reckon(draft)?;
    shown.answer(each_hive(&sum.cost));
    let parts = [sum.used_up, sum.durable, sum.travel, sum.work];
    for line in lines(parts, &sum.cost) {
        shown.line(line);
    }
    let without = w::PARTS.into_iter().zip(parts).filter(|(_, part)| *part <= 0.0);
    let without: Vec<&str> = without.map(|(name, _)| name).collect();
    if sum.cost.total > 0.0 && !without.is_empty() {
        shown.line([w::WITHOUT, &without.join(", ")].concat());
    }
    Some(())
}

/// What a hive cost over the season.
pub(in crate::app) fn each_hive(cost: &Cost) -> String {
    // Nothing written down is not known, and no season without a cost.
    let each = cost.each_hive.filter(|_| cost.total > 0.0);
    each.map_or_else(|| en::NO_ANSWER.to_owned(), |each| locale::fixed(each, 2))
}

/// The sum: used up, durable, travel, work; then what it is spread over.
pub(in crate::app) fn lines(parts: [f64; 4], cost: &Cost) -> Vec<String> {
    let money = |value: f64| locale::fixed(value, 2);
    let mut lines = Vec::new();
    if cost.total <= 0.0 {
        lines.push(w::NOTHING.to_owned());
        return lines;
    }
    for (name, part) in w::PARTS.into_iter().zip(parts) {
        if part > 0.0 {
            lines.push(w::part(name, &money(part)));
        }
    }
    if cost.hive_seasons <= 0.0 {
        lines.push(w::no_hives(&money(cost.total)));
        return lines;
    }
    lines.push(w::total(&money(cost.total), &locale::number(cost.hive_seasons, 2), &each_hive(cost)));
    if let Some(each) = cost.each_trap_day {
        lines.push(w::trap_day(&locale::number(each, 4)));
    }
    if let Some(each) = cost.each_kg {
        lines.push(w::kilogram(&money(each)));
    }
    if let Some(losses) = cost.break_even {
        lines.push(w::break_even(&locale::fixed(losses, 1)));
    }
    lines
}
