//! A year in a climate: when the ground lets beetles through, and how many generations.

use super::bars;
use super::dates::{Asks, chosen, day_field, known_yards};
use super::reckon::{self, SHADES, Year};
use super::told::Row;
use crate::almanac::climate::KNOWN;
use crate::almanac::day::Day;
use crate::almanac::generations::Open;
use crate::almanac::quantity::Length;
use crate::almanac::soil::Soil;
use crate::almanac::stage::Edge;
use crate::app::edge::locale;
use crate::app::el::{Bit, El, el, live};
use crate::app::frame::heading;
use crate::app::graph::{Memo, untrack};
use crate::app::parts::answer::Answer;
use crate::app::parts::card::more;
use crate::app::parts::choice::Choice;
use crate::app::parts::notice::Notice;
use crate::app::place::Clock;
use crate::app::records::Records;
use crate::app::round::bits;
use crate::app::round::form::select;
use crate::app::state::Ui;
use crate::app::wording::en;
use crate::app::wording::en_beetle::{self as w, season as ws};

/// The most generations a year that anybody has published (Austria's agency page: 1 to 6 by region).
const PUBLISHED_MOST: usize = 6;

/// The clock.
pub(super) fn view(ui: Ui, records: Records) -> Bit {
    let fields = ui.bench();
    let climate = fields.season_climate();
    let mut all = known_yards(records);
    for (at, known) in KNOWN.iter().enumerate() {
        all.push((at.to_string(), known.name.to_owned()));
    }
    if climate.with_untracked(|climate| all.iter().all(|(known, _)| known != climate)) {
        climate.set(all.first().map(|(first, _)| first.clone()).unwrap_or_default());
    }
    let ground = chosen(ui, records, climate);
    let year = Memo::new(move || {
        let today = ui.today.get();
        ground.with(|ground| ui.draft.with(|draft| reckon::year(draft, ground.as_ref(), today).ok()))
    });
    let by_yard = Memo::new(move || ground.with(Option::is_some));
    let shade = fields.season_shade();
    let shades = live(move || {
        let by_yard = by_yard.get();
        untrack(|| {
            let mut choice = Choice::new("season-shade", ws::SHADE);
            if by_yard {
                choice = choice.option("", ws::AS_WRITTEN);
            }
            for ((code, _), words) in SHADES.iter().zip(ws::SHADES) {
                // Without a yard part shade is meant where nothing was chosen.
                choice = choice.option(if !by_yard && *code == "part_shade" { "" } else { code }, words);
            }
            choice.text(shade).view()
        })
    });
    let known = move || {
        let at = climate.with(|climate| climate.parse::<usize>().ok())?;
        KNOWN.get(at).map(|known| el("p").class("small").text(&ws::source(known.source)))
    };
    let answer = move || {
        year.with(|year| {
            let year = year.as_ref()?;
            let mut sum = Vec::new();
            for edge in Edge::ALL {
                sum.push(ws::open(edge, edge.of(year.season.open), ui.today.get()));
            }
            sum.push(ws::left(year.left.count));
            if Edge::Earliest.of(year.season.count) > PUBLISHED_MOST {
                sum.push(ws::MANY.to_owned());
            }
            Some((ws::count(year.season.count), sum))
        })
    };
    bits![
        heading(w::clock(Clock::Season)),
        el("div")
            .class("card-body")
            .kid(select("season-climate", ws::CLIMATE, climate, &all))
            .kid(live(known))
            .kid(
                Choice::new("season-shift", ws::SHIFT)
                    .options(&ws::SHIFTS)
                    .text(fields.season_shift())
                    .view()
            )
            .kid(shades)
            .kid(el("p").class("small").text(ws::SHADE_HINT))
            .kid(day_field(ui, "season-dry", ws::DRY, fields.season_dry(), Asks::PlannedOrNone)),
        Answer::of(ws::ANSWER, answer).why(ws::WHY).mark("generations").view(),
        live(move || year.with(|year| year.as_ref().map(|year| generations(year, ui.today.get())))),
        Notice::plain(w::ESTIMATE).why(w::RULE).view(),
        more(ws::MONTHS, live(move || year.with(|year| year.as_ref().map(|year| months(ui, year))))),
    ]
}

fn generations(year: &Year, today: Day) -> Bit {
    let season = &year.season;
    if season.generations.is_empty() {
        return Notice::plain(ws::NONE).view().into();
    }
    let mut rows = Vec::new();
    for (at, generation) in season.generations.iter().enumerate() {
        let days = match generation.adults {
            [Some(first), likely, Some(last)] => Some((first, likely, last)),
            // Without a last day the bar ends where the season does.
            [Some(first), likely, _] => {
                let end = season_end(year).unwrap_or(first).max(first);
                Some((first, likely, end))
            }
            _ => None,
        };
        rows.push(Row { label: ws::generation(at + 1), said: ws::days(generation.adults, today), days });
    }
    let since = season.generations.first().and_then(|first| Edge::Earliest.of(first.into_soil));
    bits![
        el("h2").class("part-title").text(ws::EACH),
        el("div").test_id("season-rows").kid(bars::rows(&rows, since.unwrap_or(today), today)),
        el("p").class("small").text(w::AXIS),
        season.overlap.map(|at| el("p").text(&ws::overlap(at + 2))),
    ]
}

/// The last day on which the ground lets larvae go on.
fn season_end(year: &Year) -> Option<Day> {
    match Edge::Earliest.of(year.season.open) {
        Open::From(_, last) => Some(last),
        _ => None,
    }
}

fn months(ui: Ui, year: &Year) -> Bit {
    let unit = ui.prefs.get().warmth;
    let mut rows = el("ul").class("plain-list");
    let climate = &year.climate;
    let mut middle = 15;
    for (number, (low, high)) in (1..).zip(climate.lows().iter().zip(climate.highs())) {
        let at = |millimetres: f64| {
            let depth = Length::from_millimetres(millimetres).unwrap_or_default();
            locale::warmth_bare(year.soil.at(middle, depth).celsius(), unit)
        };
        let air = [low, high].map(|warmth| locale::warmth_bare(warmth.celsius(), unit));
        let said = ws::month(en::month(number), &air, &[at(50.0), at(100.0)], en::warmth_name(unit));
        rows = rows.kid(el("li").text(&said));
        middle += 30;
    }
    bits![rows, probed(ui, &year.soil)]
}

/// What the keeper's probe adds, where it was read.
pub(super) fn probed(ui: Ui, soil: &Soil) -> Option<El> {
    let unit = ui.prefs.get().warmth;
    (soil.readings() > 0).then(|| {
        let (offset, give) = (soil.offset(), locale::warmer_by(soil.give(), unit));
        let apart = locale::warmer_by(offset.abs(), unit);
        el("p").class("small").text(&w::probed(soil.readings(), &apart, offset < 0.0, &give))
    })
}
