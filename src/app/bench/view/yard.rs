//! Traps and oil for a yard.

use super::shown::{self, Shown, answer};
use super::{keep, says};
use crate::almanac::quantity::{Share, VolumeUnit};
use crate::almanac::stack::{HiveSize, Spot};
use crate::app::bench::fits::depth;
use crate::app::bench::keep::depth_codes;
use crate::app::bench::read::{MOST_BOXES, MOST_HIVES, MOST_TRAPS_A_BOX};
use crate::app::bench::yard::{YardSum, reckon};
use crate::app::edge::locale;
use crate::app::el::{Bit, El, el, live};
use crate::app::parts::card::more;
use crate::app::parts::drawing::{BoxSide, box_plan, hive_side};
use crate::app::parts::field::{Field, Says};
use crate::app::parts::key::Key;
use crate::app::parts::notice::{Notice, why};
use crate::app::parts::stepper::Stepper;
use crate::app::prefs;
use crate::app::state::Ui;
use crate::app::wording::en;
use crate::app::wording::en_bench::yard as w;

/// The card's body.
pub(super) fn view(ui: Ui) -> El {
    let t = ui.bench();
    let shown = shown::follow(move || ui.draft.with(|draft| reckon(draft).map(|sum| show(ui, &sum))));
    let holds_says = move || match says::volume(ui, t.holds(), t.holds_unit()) {
        Says::Nothing if ui.draft.with(|draft| reckon(draft).is_some_and(|sum| odd(&sum))) => {
            Says::Echo(w::SIZE_ODD.to_owned())
        }
        says => says,
    };
    let caution = move || {
        shown.with(|shown| shown.cautions.first().cloned()).unwrap_or_else(|| w::HALF_FULL.to_owned())
    };
    shown::body()
        .kid(shown::fields([
            Stepper::new("hives", w::HIVES, t.hives(), 0, MOST_HIVES)
                .says(move || says::count(t.hives(), 0, MOST_HIVES))
                .view(),
            Stepper::new("boxes", w::BOXES, t.boxes(), 0, MOST_BOXES)
                .says(move || says::count(t.boxes(), 0, MOST_BOXES))
                .view(),
            Field::new("holds", w::HOLDS, t.holds()).decimal().volume(t.holds_unit()).says(holds_says).view(),
        ]))
        .kid(live(move || show_in(ui)))
        .kid(answer(w::TRAPS, shown, 0).view())
        .kid(answer(w::OIL, shown, 1).why(w::RESERVE_WHY).view())
        .kid(Notice::caution(w::HALF_FULL).text(caution).why(w::HALF_FULL_WHY).view())
        .kid(Notice::caution(w::FOOD_GRADE).view())
        .kid(more(w::REST, rest(ui)))
        .kid(live(move || figure(ui)))
        .kid(why(w::TRAPS_WHY))
        .kid(keep::view(ui))
}

/// Offers to show every volume in the unit that was chosen for the trap, while they are shown in another.
fn show_in(ui: Ui) -> Bit {
    let unit = ui.bench().holds_unit().with(|code| prefs::volume_unit(code));
    let shown = ui.prefs.get().volume;
    let metric = |unit| matches!(unit, VolumeUnit::Millilitre | VolumeUnit::Litre);
    if unit == shown || metric(unit) && metric(shown) {
        return Bit::Nothing;
    }
    let show = move || ui.prefs.update(|prefs| prefs.volume = unit);
    el("p").class("keys").kid(Key::new(w::show_in(en::volume_name(unit)), show).quiet().view()).into()
}

fn rest(ui: Ui) -> El {
    let t = ui.bench();
    shown::fields([
        Stepper::new("a-box", w::A_BOX, t.a_box(), 0, MOST_TRAPS_A_BOX)
            .says(move || says::count(t.a_box(), 0, MOST_TRAPS_A_BOX))
            .view(),
        Field::new("fill", w::FILL, t.fill()).says(move || says::share(t.fill())).view(),
        Field::new("reserve", w::RESERVE, t.reserve()).says(move || says::share(t.reserve())).view(),
        Field::new("bottle", w::BOTTLE, t.bottle())
            .decimal()
            .volume(t.bottle_unit())
            .hint(w::MAY_BE_EMPTY)
            .says(move || {
                t.bottle().with(|text| says::optional(says::volume(ui, t.bottle(), t.bottle_unit()), text))
            })
            .view(),
    ])
}

fn show(ui: Ui, sum: &YardSum) -> Shown {
    Shown {
        answers: vec![(traps(sum), traps_sum(sum)), (ui.volume_up(sum.oil.carry), oil_sum(ui, sum))],
        cautions: vec![fill_caution(sum)],
        list: Vec::new(),
    }
}

fn odd(sum: &YardSum) -> bool {
    !(1.0..=500.0).contains(&sum.holds.volume().millilitres())
}

fn traps(sum: &YardSum) -> String {
    w::traps(sum.total.traps, &locale::whole(sum.total.traps))
}

fn traps_sum(sum: &YardSum) -> Vec<String> {
    vec![w::traps_sum(sum.total.hives, sum.total.boxes, sum.total.a_box, &traps(sum))]
}

/// "½" where it is one half: shorter than 50 % and what keepers say.
fn part(share: Share) -> String {
    if share == Share::HALF { "½".to_owned() } else { locale::percent(share.fraction(), 1) }
}

fn oil_sum(ui: Ui, sum: &YardSum) -> Vec<String> {
    let oil = &sum.oil;
    let total = ui.volume(oil.sum);
    // In the unit the capacity was typed in, so that the figures multiply as they stand.
    let unit = sum.holds.unit();
    let (holds, typed_total) = (locale::volume(sum.holds.volume(), unit), locale::volume(oil.sum, unit));
    let fill = part(sum.fill);
    let mut product = w::oil_sum(&locale::whole(sum.total.traps), &holds, &fill, &typed_total);
    if typed_total != total {
        product = w::same(&product, &total);
    }
    let mut lines = vec![w::fills(&total, sum.fill == Share::HALF, &fill), product];
    if oil.reserve > Share::NONE {
        let reserve = locale::percent(oil.reserve.fraction(), 1);
        lines.push(w::reserve_sum(&reserve, &ui.volume(oil.with_reserve)));
    }
    lines.push(w::step_sum(&ui.volume_up(oil.carry)));
    if let (Some(bottles), Some(bottle)) = (oil.bottles, sum.bottle) {
        lines.push(w::bottles_sum(bottles, &ui.volume(bottle)));
    }
    lines
}

fn fill_caution(sum: &YardSum) -> String {
    if sum.fill.fraction() > 0.6 {
        w::too_full(&locale::percent(sum.fill.fraction(), 1))
    } else {
        w::HALF_FULL.to_owned()
    }
}

/// One hive from the side, and each different box from above.
fn figure(ui: Ui) -> Bit {
    ui.draft.with(|draft| {
        let Some(sum) = reckon(draft).filter(|sum| sum.spots.iter().any(|spots| !spots.is_empty())) else {
            return Bit::Nothing;
        };
        let depths = depth_codes(draft.keep_depths(), sum.spots.len());
        let sides: Vec<BoxSide> = depths
            .into_iter()
            .zip(&sum.spots)
            .map(|(code, spots)| BoxSide {
                depth: depth(code).unwrap_or_default().depth(),
                spots: spots.clone(),
            })
            .collect();
        let plans = plans(&sum.spots).into_iter().rev();
        let plans =
            plans.map(|(numbers, spots)| drawn(box_plan(&spots, HiveSize::Full), &w::boxes(&numbers)));
        el("div").class("figure").kid(drawn(hive_side(&sides), w::SIDE)).kids(plans).into()
    })
}

fn drawn(drawing: El, caption: &str) -> El {
    el("figure").kid(drawing).kid(el("figcaption").text(caption))
}

/// Boxes with the same places share a drawing: their numbers from the floor up, and the places.
fn plans(boxes: &[Vec<Spot>]) -> Vec<(Vec<usize>, Vec<Spot>)> {
    let mut plans: Vec<(Vec<usize>, Vec<Spot>)> = Vec::new();
    for (index, spots) in boxes.iter().enumerate() {
        match plans.iter_mut().find(|(_, known)| known == spots) {
            Some((numbers, _)) => numbers.push(index + 1),
            None => plans.push((vec![index + 1], spots.clone())),
        }
    }
    plans
}
