//! Oil or beetles.

use super::says::Reads;
use super::shown::{self, Shown, Typed, answer};
use crate::almanac::tally::CountRange;
use crate::almanac::typed;
use crate::app::bench::bodies::{BodiesSum, reckon};
use crate::app::bench::draft::{BenchDraft, Slot};
use crate::app::bench::read::MOST_BODIES;
use crate::app::edge::locale;
use crate::app::el::{El, el};
use crate::app::parts::field::{Field, Says};
use crate::app::state::Ui;
use crate::app::wording::en_sums::bodies as w;
use crate::app::wording::en_typed;

/// Above this many in one trap the number is asked about: they alone would fill the usual one (judgement).
const MANY_BODIES: u32 = 1000;

const FIELDS: &[Typed] = &[
    Typed::new("bodies-level", w::LEVEL, Slot::bodies_level, Reads::Share),
    Typed::new("bodies-holds", w::HOLDS, Slot::bodies_holds, Reads::Holds).unit(Slot::bodies_holds_unit),
];

/// The card's body.
pub(super) fn view(ui: Ui) -> El {
    let shown = shown::follow(ui, show);
    let typed = ui.bench().bodies_count();
    let says = move || match typed.with(|text| typed::count_or_range(text, MOST_BODIES)) {
        Ok(count) if count.low() > MANY_BODIES => Says::Echo(w::MANY.to_owned()),
        Ok(_) => Says::Nothing,
        Err(error) => Says::Wrong(en_typed::count(error)),
    };
    let count = Field::new("bodies-count", w::COUNT, typed).hint(w::COUNT_HINT).says(says);
    shown::body()
        .kid(shown::then_fields(el("div").class("fields").kid(count.view()), ui, FIELDS))
        .kid(answer(w::WITHOUT, shown, 0).why(w::WHY).view())
        .kid(shown::cautions(shown))
        .kid(shown::small(w::TRAPPED))
}

fn show(ui: Ui, draft: &BenchDraft, shown: &mut Shown) -> Option<()> {
    let sum = reckon(draft)?;
    shown.answer(alone(&sum));
    let low = ui.volume(sum.volume.low);
    let volume = match sum.volume.high {
        Some(high) => w::span(&low, &ui.volume(high)),
        None => w::or_more(&low),
    };
    shown.line(w::sum(&counted(sum.bodies), &volume));
    if sum.flatters {
        shown.caution(w::FLATTERS);
    }
    Some(())
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

fn counted(bodies: CountRange) -> String {
    let low = locale::whole(bodies.low());
    match bodies.high() {
        Some(_) if bodies.is_exact() => low,
        Some(high) => w::span(&low, &locale::whole(high)),
        None => w::or_more(&low),
    }
}
