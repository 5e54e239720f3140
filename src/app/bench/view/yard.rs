//! Traps and oil for a yard.

use super::says::Reads;
use super::shown::{self, Shown, Typed, answer};
use super::{keep, says};
use crate::almanac::oil;
use crate::almanac::quantity::{Share, VolumeUnit};
use crate::almanac::stack::{HiveSize, Spot};
use crate::app::bench::draft::{BenchDraft, Slot};
use crate::app::bench::fits::depth;
use crate::app::bench::keep::depth_codes;
use crate::app::bench::read::{MOST_BOXES, MOST_HIVES, MOST_TRAPS_A_BOX};
use crate::app::bench::yard::{YardSum, reckon};
use crate::app::edge::locale;
use crate::app::el::{Bit, El, el, live};
use crate::app::graph::Memo;
use crate::app::parts::card::more;
use crate::app::parts::drawing::{BoxSide, box_plan, hive_side};
use crate::app::parts::field::Says;
use crate::app::parts::key::Key;
use crate::app::parts::notice::{Notice, why};
use crate::app::prefs;
use crate::app::state::Ui;
use crate::app::wording::en;
use crate::app::wording::en_bench::yard as w;

const FIELDS: &[Typed] = &[
    Typed::new("hives", w::HIVES, Slot::hives, Reads::Steps(0, MOST_HIVES)),
    Typed::new("boxes", w::BOXES, Slot::boxes, Reads::Steps(0, MOST_BOXES)),
];

const HOLDS: Typed = Typed::new("holds", w::HOLDS, Slot::holds, Reads::Holds).unit(Slot::holds_unit);

const REST: &[Typed] = &[
    Typed::new("a-box", w::A_BOX, Slot::a_box, Reads::Steps(0, MOST_TRAPS_A_BOX)),
    Typed::new("fill", w::FILL, Slot::fill, Reads::Fill),
    Typed::new("reserve", w::RESERVE, Slot::reserve, Reads::Share),
    Typed::new("bottle", w::BOTTLE, Slot::bottle, Reads::Bottle)
        .unit(Slot::bottle_unit)
        .may_be_empty()
        .hint(w::MAY_BE_EMPTY),
];

/// The card's body.
pub(super) fn view(ui: Ui) -> El {
    let t = ui.bench();
    let shown = shown::follow(ui, show);
    let holds_says = move || {
        let says = says::said(ui, (t.holds(), t.holds_unit()), Reads::Holds);
        let odd = ui.draft.with(|draft| reckon(draft).is_some_and(|sum| odd(&sum)));
        match says {
            Says::Nothing if odd => Says::Echo(w::SIZE_ODD.to_owned()),
            Says::Echo(said) if odd => Says::Echo([&said, ". ", w::SIZE_ODD].concat()),
            says => says,
        }
    };
    let caution = move || {
        shown.with(|shown| shown.cautions.first().cloned()).unwrap_or_else(|| w::HALF_FULL.to_owned())
    };
    shown::body()
        .kid(shown::fields(ui, FIELDS).kid(HOLDS.field(ui).says(holds_says).view()))
        .kid(live(move || show_in(ui)))
        .kid(answer(w::TRAPS, shown, 0).view())
        .kid(answer(w::OIL, shown, 1).why(w::RESERVE_WHY).view())
        .kid(Notice::caution(w::HALF_FULL).text(caution).why(w::HALF_FULL_WHY).view())
        .kid(Notice::caution(w::FOOD_GRADE).view())
        .kid(more(w::REST, shown::fields(ui, REST)))
        .kid(figure(ui))
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

fn odd(sum: &YardSum) -> bool {
    !(1.0..=500.0).contains(&sum.holds.volume().millilitres())
}

/// "½" where it is one half: shorter than 50 % and what keepers say.
fn part(share: Share) -> String {
    if share == Share::HALF { "½".to_owned() } else { locale::percent(share.fraction(), 1) }
}

fn show(ui: Ui, draft: &BenchDraft, shown: &mut Shown) -> Option<()> {
    let sum = reckon(draft)?;
    let (count, oil) = (&sum.total, &sum.oil);
    let number = locale::whole(count.traps);
    let traps = w::traps(count.traps, &number);
    let traps_sum = w::traps_sum(count.hives, count.boxes, count.a_box, &traps);
    shown.answer(traps);
    shown.line(traps_sum);
    let carry = ui.carried(oil.with_reserve);
    let total = ui.volume(oil.sum);
    // In the unit the capacity was typed in, so that the figures multiply as they stand.
    let unit = sum.holds.unit();
    let times = f64::from(count.traps) * sum.fill.fraction();
    let holds = locale::volume_in_sum(sum.holds.volume(), times, oil.sum, unit, false);
    let typed_total = locale::volume(oil.sum, unit);
    let fill = part(sum.fill);
    let mut product = w::oil_sum(&number, &holds, &fill, &typed_total);
    if typed_total != total {
        product = w::same(&product, &total);
    }
    shown.answer(carry.clone());
    shown.line(w::fills(&total, sum.fill == Share::HALF, &fill));
    shown.line(product);
    if oil.reserve > Share::NONE {
        let reserve = locale::percent(oil.reserve.fraction(), 1);
        shown.line(w::reserve_sum(&reserve, &ui.volume(oil.with_reserve)));
    }
    // What is a full step already is not rounded.
    if ui.volume(oil.with_reserve) != carry {
        shown.line(w::step_sum(&ui.carry_step(), &carry));
    }
    let carried = oil::carried(oil.with_reserve, ui.prefs.get().volume);
    if let Some(bottle) = sum.bottle
        && let Some(bottles) = oil::bottles(carried, bottle)
    {
        shown.line(w::bottles_sum(bottles, &ui.volume(bottle)));
    }
    if sum.fill.fraction() > says::A_LOT {
        shown.caution(&w::too_full(&locale::percent(sum.fill.fraction(), 1)));
    }
    Some(())
}

/// One hive from the side, and each different box from above.
/// Drawn anew only when the hive is another one, and not at every key.
fn figure(ui: Ui) -> Bit {
    let hive = Memo::new(move || {
        ui.draft.with(|draft| {
            let sum = reckon(draft).filter(|sum| sum.spots.iter().any(|spots| !spots.is_empty()))?;
            let depths = depth_codes(draft.keep_depths(), sum.spots.len());
            Some((depths.into_iter().map(str::to_owned).collect::<Vec<String>>(), sum.spots))
        })
    });
    live(move || hive.with(|hive| hive.as_ref().map(|(depths, spots)| hive_drawn(depths, spots))))
}

fn hive_drawn(depths: &[String], boxes: &[Vec<Spot>]) -> El {
    let mut sides = Vec::new();
    for (code, spots) in depths.iter().zip(boxes) {
        let depth = depth(code).unwrap_or_default().depth();
        sides.push(BoxSide { depth, spots: spots.clone() });
    }
    let mut figure = el("div").class("figure").kid(drawn(hive_side(&sides), w::SIDE));
    for (numbers, spots) in plans(boxes).iter().rev() {
        figure = figure.kid(drawn(box_plan(spots, HiveSize::Full), &w::boxes(numbers)));
    }
    figure
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
