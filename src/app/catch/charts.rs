//! One small chart a hive, in the order of the walk.

use super::told;
use crate::almanac::chance::poisson_limits;
use crate::almanac::day::Day;
use crate::almanac::table::Table;
use crate::app::edge::locale;
use crate::app::el::{Bit, El, el, live};
use crate::app::graph::{Memo, RwSignal, untrack};
use crate::app::parts::drawing::{Point, catch_chart};
use crate::app::parts::key::Key;
use crate::app::records::Records;
use crate::app::round::bits;
use crate::app::round::form::keys;
use crate::app::wording::{en_catch as w, en_round};
use crate::book::caught::{Both, Caught, Days, OfHive, Visit, shown, visits};
use crate::book::id::ThingId;
use crate::book::trial;

/// Hives that are drawn before somebody asks for all.
const FIRST: usize = 12;
/// Room above the highest rate.
const ROOM: f64 = 1.25;

/// Limits of counts, each worked out once: there are many counts and few numbers.
type Known = Table<u32, (f64, f64)>;

/// A hive, ready to be drawn.
struct Drawn {
    tag: String,
    of: OfHive,
    visits: Vec<Visit>,
}

/// The charts of `yard` over `days`, parted at `middle`.
pub(super) fn view(
    records: Records,
    caught: Memo<Vec<Caught>>,
    both: Memo<Option<Both>>,
    yard: &ThingId,
    days: Days,
    middle: Day,
) -> Bit {
    let (yard, of) = (yard.clone(), yard.clone());
    let all = RwSignal::new(false);
    let shut = Memo::new(move || {
        let today = records.today(&of);
        records.book.with(|book| caught.with(|caught| trial::shut(book, caught, days, today)))
    });
    live(move || {
        let every = all.get();
        let (drawn, hives, closed) = both.with(|both| {
            let Some(both) = both else { return (Vec::new(), 0, 0) };
            let many = if every { usize::MAX } else { FIRST };
            let closed = shut.get();
            let open = both.hives.iter().filter(|of| !closed.contains(&of.hive)).count();
            (hives(records, caught, both, (&yard, &closed), days, many), open, both.hives.len() - open)
        });
        let closed = u32::try_from(closed).unwrap_or(u32::MAX);
        untrack(|| {
            let top = top(&drawn);
            let days = shown(days, drawn.iter().flat_map(|hive| &hive.visits));
            let mut known = Known::new();
            let mut list = el("ul").class("catch-hives").test_id("catch-hives");
            for hive in &drawn {
                list = list.kid(one(hive, days, middle, top, &mut known));
            }
            let more = u32::try_from(hives).unwrap_or(u32::MAX);
            bits![
                el("p").class("small").text(
                    &[
                        w::AXIS,
                        &told::shown(top, None, locale::number),
                        ", ",
                        &w::span(days.from, days.to),
                        "."
                    ]
                    .concat()
                ),
                (closed > 0).then(|| el("p").test_id("catch-shut").text(&w::shut(closed))),
                list,
                (drawn.len() < hives).then(|| keys(
                    Key::new(w::show_all(more), move || all.set(true)).mark("catch-all").view()
                )),
            ]
        })
    })
}

fn hives(
    records: Records,
    caught: Memo<Vec<Caught>>,
    both: &Both,
    (yard, shut): (&ThingId, &[ThingId]),
    days: Days,
    many: usize,
) -> Vec<Drawn> {
    let mut drawn = Vec::new();
    records.book.with(|book| {
        let standing = book.standing();
        let walk = standing.yards.get(yard).map(|now| now.order.as_slice()).unwrap_or_default();
        // Hives that were carried away since come last.
        let gone = both.hives.iter().map(|of| &of.hive).filter(|hive| !walk.contains(hive));
        for hive in walk.iter().chain(gone) {
            let Some(of) = both.hives.iter().find(|of| of.hive == *hive) else { continue };
            if drawn.len() < many && !shut.contains(hive) {
                let visits = caught.with(|caught| visits(caught, hive, days));
                let tag = standing.hives.get(hive).map(|now| now.tag.clone()).unwrap_or_default();
                drawn.push(Drawn { tag, of: of.clone(), visits });
            }
        }
    });
    drawn
}

/// The end of the scale: above the highest rate of all that is drawn.
fn top(drawn: &[Drawn]) -> f64 {
    let mut top: f64 = 0.0;
    for visit in drawn.iter().flat_map(|hive| &hive.visits) {
        let most = visit.stretch.count.high().unwrap_or(visit.stretch.count.low());
        top = top.max(f64::from(most) * 100.0 / f64::from(visit.stretch.trap_days));
    }
    if top > 0.0 { (top * ROOM).ceil() } else { 1.0 }
}

fn one(hive: &Drawn, days: Days, middle: Day, top: f64, known: &mut Known) -> El {
    let length = f64::from(days.to.days_since(days.from).max(1));
    let share = |day: Day| f64::from(day.days_since(days.from)) / length;
    let (mut points, mut low, mut high, mut changes) = (Vec::new(), f64::INFINITY, Some(0.0_f64), 0);
    for visit in &hive.visits {
        let each = |beetles: f64| beetles * 100.0 / f64::from(visit.stretch.trap_days);
        let count = visit.stretch.count;
        let mut limits = |count: u32| {
            if !known.contains_key(&count) {
                known.insert(count, poisson_limits(count));
            }
            known.get(&count).copied().unwrap_or_default()
        };
        let seen = (each(f64::from(count.low())), count.high().map(|high| each(f64::from(high))));
        let of_count = (each(limits(count.low()).0), count.high().map(|high| each(limits(high).1)));
        points.push(Point { x: share(visit.day), seen, limits: of_count, changed: visit.changed });
        let ends = told::ends(seen);
        low = low.min(ends.0);
        high = high.zip(ends.1).map(|(one, other)| one.max(other));
        changes += u32::from(visit.changed);
    }
    let counts = u32::try_from(points.len()).unwrap_or(u32::MAX);
    let said = |rate: f64| told::shown(rate, None, locale::number);
    let range = w::range(&said(low), high.map(said).as_deref());
    let name = en_round::hive(&hive.tag);
    let text = [&name, ": ", w::chart(counts, &range, changes).as_str()].concat();
    let [first, second] = w::WHICH;
    let mut item = el("li").kid(el("h3").text(&name)).kid(catch_chart(&text, &points, top, share(middle)));
    for (which, stretch) in [(first, &hive.of.first), (second, &hive.of.second)] {
        item = item.kid(el("p").class("small").text(&told::side(which, stretch, locale::number)));
    }
    item
}
