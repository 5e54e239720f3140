//! Oil or beetles.

use super::says;
use crate::almanac::tally::CountRange;
use crate::almanac::typed;
use crate::app::bench::bodies::{BodiesSum, reckon};
use crate::app::bench::read::MOST_BODIES;
use crate::app::edge::locale;
use crate::app::parts::answer::Answer;
use crate::app::parts::field::{Field, Says};
use crate::app::parts::notice::Notice;
use crate::app::state::Ui;
use crate::app::wording::en_sums::bodies as w;
use crate::app::wording::{en, en_typed};
use leptos::prelude::*;

/// The card's body.
pub(super) fn view(ui: Ui) -> AnyView {
    let t = ui.bench;
    let sum = Memo::new(move |_| ui.draft.with(reckon));
    let count = move || match t.bodies_count.with(|text| typed::count_or_range(text, MOST_BODIES)) {
        Ok(_) => Says::Nothing,
        Err(error) => Says::Wrong(en_typed::number(error)),
    };
    view! {
        <div class="fields">
            {Field::new("bodies-count", w::COUNT, t.bodies_count).hint(w::COUNT_HINT).says(count).view()}
            {Field::new("bodies-level", w::LEVEL, t.bodies_level).says(move || says::share(t.bodies_level)).view()}
            {Field::new("bodies-holds", w::HOLDS, t.bodies_holds)
                .decimal()
                .volume(t.bodies_holds_unit)
                .says(move || says::volume(ui, t.bodies_holds, t.bodies_holds_unit))
                .view()}
        </div>
        {Answer::new(
                w::WITHOUT,
                move || sum.with(|sum| sum.as_ref().map_or_else(|| en::NO_ANSWER.to_owned(), answer)),
            )
            .sum(move || sum.with(|sum| sum.as_ref().map(|sum| lines(ui, sum)).unwrap_or_default()))
            .why(w::WHY)
            .view()}
        {move || {
            sum.with(|sum| sum.as_ref().is_some_and(|sum| sum.flatters))
                .then(|| Notice::caution(w::FLATTERS).view())
        }}
        <p class="small">{w::TRAPPED}</p>
    }
    .into_any()
}

fn answer(sum: &BodiesSum) -> String {
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
