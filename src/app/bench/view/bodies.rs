//! Oil or beetles.

use super::says;
use super::shown::{self, Shown, answer};
use crate::almanac::tally::CountRange;
use crate::almanac::typed;
use crate::app::bench::bodies::{BodiesSum, reckon};
use crate::app::bench::read::MOST_BODIES;
use crate::app::edge::locale;
use crate::app::el::El;
use crate::app::parts::field::{Field, Says};
use crate::app::state::Ui;
use crate::app::wording::en_sums::bodies as w;
use crate::app::wording::en_typed;

/// Above this many in one trap the number is asked about: they alone would fill the usual one (judgement).
const MANY_BODIES: u32 = 1000;

/// The card's body.
pub(super) fn view(ui: Ui) -> El {
    let t = ui.bench();
    let shown = shown::follow(move || {
        ui.draft.with(|draft| {
            reckon(draft).map(|sum| Shown {
                answers: vec![(alone(&sum), lines(ui, &sum))],
                cautions: if sum.flatters { vec![w::FLATTERS.to_owned()] } else { Vec::new() },
                list: Vec::new(),
            })
        })
    });
    let count = move || match t.bodies_count().with(|text| typed::count_or_range(text, MOST_BODIES)) {
        Ok(count) if count.low() > MANY_BODIES => Says::Echo(w::MANY.to_owned()),
        Ok(_) => Says::Nothing,
        Err(error) => Says::Wrong(en_typed::count(error)),
    };
    shown::body()
        .kid(shown::fields([
            Field::new("bodies-count", w::COUNT, t.bodies_count()).hint(w::COUNT_HINT).says(count).view(),
            Field::new("bodies-level", w::LEVEL, t.bodies_level())
                .says(move || says::share(t.bodies_level()))
                .view(),
            Field::new("bodies-holds", w::HOLDS, t.bodies_holds())
                .decimal()
                .volume(t.bodies_holds_unit())
                .says(move || says::volume(ui, t.bodies_holds(), t.bodies_holds_unit()))
                .view(),
        ]))
        .kid(answer(w::WITHOUT, shown, 0).why(w::WHY).view())
        .kid(shown::cautions(shown))
        .kid(shown::small(w::TRAPPED))
}

fn alone(sum: &BodiesSum) -> String {
    let Some(level) = sum.without else { return w::NO_HOLDS.to_owned() };
    let (low, high) = (locale::percent(level.low, 0), locale::percent(level.high, 0));
    if sum.bodies.high().is_none() {
        w::or_less(&high)
    } else if low == high {
        low
    } else {
        w::span(&low, &high)
    }
}

fn lines(ui: Ui, sum: &BodiesSum) -> Vec<String> {
    let low = ui.volume(sum.volume.low);
    let volume = match sum.volume.high {
        Some(high) => w::span(&low, &ui.volume(high)),
        None => w::or_more(&low),
    };
    vec![w::sum(&counted(sum.bodies), &volume)]
}

fn counted(bodies: CountRange) -> String {
    let low = locale::whole(bodies.low());
    match bodies.high() {
        Some(_) if bodies.is_exact() => low,
        Some(high) => w::span(&low, &locale::whole(high)),
        None => w::or_more(&low),
    }
}
