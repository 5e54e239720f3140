//! From a find to dates: the fields, the answer, and how it was worked out.

use super::reckon::{self, Find, SEEN};
use super::{bars, told, worked};
use crate::almanac::day::Day;
use crate::almanac::sighting::Seen;
use crate::almanac::typed::{self, DayTypedError};
use crate::app::bench::draft::Slot;
use crate::app::bench::read;
use crate::app::bench::view::says::Reads;
use crate::app::bench::view::shown::Typed;
use crate::app::el::{Bit, El, el, live};
use crate::app::frame::heading;
use crate::app::graph::{Memo, RwSignal, untrack};
use crate::app::ledger::papers::events::yards;
use crate::app::ledger::words;
use crate::app::parts::choice::Choice;
use crate::app::parts::field::{Field, Says};
use crate::app::parts::notice::Notice;
use crate::app::place::Clock;
use crate::app::records::Records;
use crate::app::round::bits;
use crate::app::round::form::select;
use crate::app::state::Ui;
use crate::app::wording::en_beetle::{self as w, find as wf};
use crate::app::wording::{en, en_typed};
use crate::book::ground::Ground;
use crate::book::id::ThingId;

const SOIL: [Typed; 2] = [
    warmth("dates-soil-low", wf::SOIL_LOW, Slot::dates_soil_low, Slot::dates_soil_low_unit),
    warmth("dates-soil-high", wf::SOIL_HIGH, Slot::dates_soil_high, Slot::dates_soil_high_unit),
];
const HIVE: [Typed; 2] = [
    warmth("dates-hive-low", wf::HIVE_LOW, Slot::dates_hive_low, Slot::dates_hive_low_unit)
        .hint(wf::HIVE_HINT),
    warmth("dates-hive-high", wf::HIVE_HIGH, Slot::dates_hive_high, Slot::dates_hive_high_unit),
];

/// Stands in the place of a yard where temperatures are typed though there is one.
const TYPED: &str = "typed";

const fn warmth(id: &'static str, label: &'static str, text: Slot, unit: Slot) -> Typed {
    Typed::new(id, label, text, Reads::Warmth).unit(unit)
}

/// The clock.
pub(super) fn view(ui: Ui, records: Records) -> Bit {
    let fields = ui.bench();
    let ground = chosen(ui, records, fields.dates_yard());
    let find = Memo::new(move || {
        let today = ui.today.get();
        ground.with(|ground| ui.draft.with(|draft| reckon::find(draft, ground.as_ref(), today).ok()))
    });
    let seen = SEEN.map(|(code, seen)| (code, w::seen(seen)));
    let by_yard = Memo::new(move || ground.with(Option::is_some));
    let warmth = live(move || {
        let by_yard = by_yard.get();
        untrack(|| if by_yard { bees(ui).into() } else { typed_warmth(ui) })
    });
    bits![
        heading(w::clock(Clock::Dates)),
        el("div")
            .class("card-body")
            .kid(Choice::new("dates-seen", wf::SEEN).options(&seen).text(fields.dates_seen()).view())
            .kid(day_field(ui, "dates-on", wf::ON, fields.dates_on(), Asks::Done))
            .kid(choose_yard(records, "dates-yard", fields.dates_yard()))
            .kid(warmth)
            .kid(soil(ui, by_yard)),
        el("h2").class("part-title").text(wf::DATES),
        el("div").test_id("dates").attr("role", "status").kid(live(move || {
            let today = ui.today.get();
            find.with(|find| match find {
                Some(find) => answer(find, today),
                None => el("p").text(wf::WAITS).into(),
            })
        })),
        Notice::plain(w::ESTIMATE).why(w::RULE).view(),
        worked::view(ui, find),
    ]
}

fn answer(find: &Find, today: Day) -> Bit {
    let rows = told::rows(&find.sighting.dates(&find.walk()), today);
    let last = rows.iter().filter_map(|row| row.days).map(|(_, _, latest)| latest).max();
    let in_comb = !matches!(find.sighting.seen, Seen::AdultsOnly | Seen::InSoil);
    bits![
        bars::rows(&rows, find.sighting.day, today),
        el("p").class("small").text(w::AXIS),
        find.hot.then(|| Notice::caution(w::HOT).view()),
        last.filter(|last| *last < today).map(|_| el("p").text(w::PAST)),
        in_comb.then(|| Notice::caution(w::LARVAE).why(w::NO_GROUND).view()),
    ]
}

/// The ground of the yard whose name stands in `yard`; none where temperatures are typed.
pub(super) fn chosen(ui: Ui, records: Records, yard: RwSignal<String>) -> Memo<Option<Ground>> {
    Memo::new(move || {
        let id = yard.with(|yard| ThingId::parse(yard).ok())?;
        let today = ui.today.get();
        records.book.with(|book| Ground::of(book.standing(), &id, today))
    })
}

/// Yards whose temperatures are known, and the first choice without one.
pub(super) fn known_yards(records: Records) -> Vec<(String, String)> {
    records.book.with_untracked(|book| {
        let known = |id: &ThingId| Ground::of(book.standing(), id, Day::LAST).is_some();
        let all = yards(book).into_iter().filter(known);
        all.map(|id| (id.to_string(), words::yard_name(book, &id))).collect()
    })
}

fn choose_yard(records: Records, id: &'static str, yard: RwSignal<String>) -> Bit {
    let mut all = known_yards(records);
    let Some((first, _)) = all.first().cloned() else {
        return Bit::Nothing;
    };
    // A keeper's own yard comes first, also in the place of one that is gone.
    let known = |yard: &String| yard == TYPED || all.iter().any(|(known, _)| known == yard);
    if !yard.with_untracked(known) {
        yard.set(first);
    }
    all.push((TYPED.to_owned(), wf::TYPED.to_owned()));
    select(id, wf::WHERE, yard, &all).into()
}

/// Which day is asked for.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Asks {
    /// One that has come; empty is today.
    Done,
    /// One that may be yet to come.
    Planned,
    /// The same, or none.
    PlannedOrNone,
}

/// A day.
pub(super) fn day_field(ui: Ui, id: &str, label: &str, text: RwSignal<String>, asks: Asks) -> El {
    let says = move || {
        let today = ui.today.get();
        let read = text.with(|text| {
            if asks == Asks::Done { typed::day_done(text, today) } else { reckon::any_day(text, today) }
        });
        match read {
            Ok(day) => {
                Says::Echo(en::echo(&[&en::date(day), ", ", &en::relative(day.days_since(today))].concat()))
            }
            Err(DayTypedError::Empty) if asks == Asks::PlannedOrNone => Says::Nothing,
            Err(DayTypedError::Empty) if asks == Asks::Done => Says::Echo(en::echo(&en::date(today))),
            Err(error) => Says::Wrong(en_typed::day(error)),
        }
    };
    Field::new(id, label, text).day().says(says).view()
}

fn typed_warmth(ui: Ui) -> Bit {
    let pair = |[low, high]: [Typed; 2], texts: [RwSignal<String>; 4]| {
        let [low_text, low_unit, high_text, high_unit] = texts;
        let says = move || {
            let read = |text: RwSignal<String>, unit: RwSignal<String>| {
                text.with(|text| unit.with(|unit| read::warmth(text, unit)))
            };
            match (read(low_text, low_unit), read(high_text, high_unit)) {
                (_, Err(error)) => Says::Wrong(en_typed::number(error)),
                (Ok(low), Ok(high)) if high < low => Says::Wrong(wf::UPSIDE_DOWN.to_owned()),
                _ => Says::Nothing,
            }
        };
        Bit::from([low.field(ui).view(), high.field(ui).says(says).view()])
    };
    let typed = ui.bench();
    let fields = el("div")
        .class("fields")
        .kid(pair(
            SOIL,
            [
                typed.dates_soil_low(),
                typed.dates_soil_low_unit(),
                typed.dates_soil_high(),
                typed.dates_soil_high_unit(),
            ],
        ))
        .kid(pair(
            HIVE,
            [
                typed.dates_hive_low(),
                typed.dates_hive_low_unit(),
                typed.dates_hive_high(),
                typed.dates_hive_high_unit(),
            ],
        ));
    fields.into()
}

fn bees(ui: Ui) -> El {
    let [strong, weak, none] = wf::BEES_ARE;
    Choice::new("dates-bees", wf::BEES)
        .options(&[("strong", strong), ("weak", weak), ("none", none)])
        .text(ui.bench().dates_bees())
        .view()
}

fn soil(ui: Ui, by_yard: Memo<bool>) -> Bit {
    let text = ui.bench().dates_ground();
    let [moist, dry, rain] = wf::GROUND_IS;
    let choice = live(move || {
        let first = if by_yard.get() { wf::AS_WRITTEN } else { moist };
        untrack(|| {
            let options = [("moist", first), ("dry", dry), ("rain", rain)];
            Choice::new("dates-ground", wf::GROUND).options(&options).text(text).view()
        })
    });
    let rains = Memo::new(move || text.with(|text| text == "rain"));
    let day = live(move || {
        rains.get().then(|| {
            untrack(|| day_field(ui, "dates-rain", wf::RAIN, ui.bench().dates_rain(), Asks::Planned))
        })
    });
    bits![choice, day]
}
