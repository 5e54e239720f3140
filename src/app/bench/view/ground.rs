//! The ground round the hives.

use super::says::Reads;
use super::shown::{self, Shown, Typed, answer};
use crate::app::bench::draft::{BenchDraft, Slot};
use crate::app::bench::ground::{GroundSum, reckon};
use crate::app::bench::read::{self, MOST_HIVES};
use crate::app::edge::locale;
use crate::app::el::{Bit, El};
use crate::app::parts::card::more;
use crate::app::parts::notice::Notice;
use crate::app::state::Ui;
use crate::app::wording::en::{counted, with_unit};
use crate::app::wording::en_decide::ground as w;
use crate::app::wording::en_records;

/// Units of ways in the yard.
const FAR: &[&str] = &["m", "ft"];

/// Units of the sides of a hive.
const NEAR: &[&str] = &["cm", "in"];

const FIELDS: &[Typed] = &[
    Typed::new("ground-hives", w::HIVES, Slot::ground_hives, Reads::Count(1, MOST_HIVES)),
    Typed::new("ground-in-row", w::IN_ROW, Slot::ground_in_row, Reads::Count(1, MOST_HIVES)),
    Typed::new("ground-apart", w::APART, Slot::ground_apart, Reads::Way(FAR)).unit(Slot::ground_apart_unit),
];

const ROWS: &[Typed] =
    &[Typed::new("ground-rows", w::ROWS, Slot::ground_rows, Reads::Way(FAR)).unit(Slot::ground_rows_unit)];

/// How far out, and the hive.
pub(in crate::app) const RING: &[Typed] = &[
    Typed::new("ground-reach", w::REACH, Slot::ground_reach, Reads::Way(FAR))
        .unit(Slot::ground_reach_unit)
        .hint(w::REACH_HINT),
    Typed::new("ground-width", w::WIDTH, Slot::ground_width, Reads::Way(NEAR)).unit(Slot::ground_width_unit),
    Typed::new("ground-length", w::LENGTH, Slot::ground_length, Reads::Way(NEAR))
        .unit(Slot::ground_length_unit),
];

/// What is paved.
pub(in crate::app) const PAVED: &[Typed] =
    &[Typed::new("ground-paved", w::PAVED, Slot::ground_paved, Reads::Area)
        .unit(Slot::ground_unit)
        .may_be_empty()];

/// What the label says.
pub(in crate::app) const LABEL: &[Typed] = &[
    Typed::new("ground-rate", w::RATE, Slot::ground_rate, Reads::More).may_be_empty(),
    Typed::new("ground-per", w::PER, Slot::ground_per, Reads::Area).unit(Slot::ground_unit),
    Typed::new("ground-water", w::WATER, Slot::ground_water, Reads::Holds)
        .unit(Slot::ground_water_unit)
        .may_be_empty(),
];

/// The card's body.
pub(in crate::app) fn view(ui: Ui) -> El {
    let shown = shown::follow(ui, show);
    shown::body()
        .kid(shown::fields(ui, FIELDS))
        .kid(more(
            w::REST,
            [shown::fields(ui, ROWS), shown::fields(ui, RING), shown::fields(ui, PAVED)].map(Bit::from),
        ))
        .kid(answer(w::GROUND, shown, 0).why(w::WHY).view())
        .kid(Notice::caution(w::LAW).why(w::LAW_WHY).view())
        .kid(shown::fields(ui, LABEL))
        .kid(answer(w::PRODUCT, shown, 1).view())
        .kid(answer(w::WATER_FOR, shown, 2).view())
        .kid(shown::small(w::LIVING))
        .kid(shown::small(w::LIME))
}

fn show(ui: Ui, draft: &BenchDraft, shown: &mut Shown) -> Option<()> {
    reckon(draft).map(|sum| say(ui, draft, &sum, shown))
}

/// Area, product and water.
pub(in crate::app) fn say(ui: Ui, draft: &BenchDraft, sum: &GroundSum, shown: &mut Shown) {
    let name = if draft.ground_unit() == "sq_ft" { "sq_ft" } else { "m2" };
    let area = |area: f64, decimals: u8| with_unit(&locale::number(area, decimals), en_records::unit(name));
    let treated = area(sum.treated, 1);
    shown.answer(treated.clone());
    shown.line(w::one(&reach(sum, draft), &area(sum.one, 2)));
    if sum.hives > 1 {
        let apart = area(f64::from(sum.hives) * sum.one, 1);
        let hives = counted(sum.hives, "hive", "hives");
        shown.line(w::all(&hives, &area(sum.all, 1), &locale::whole(sum.hives), &apart));
    }
    if let Some(paved) = sum.paved {
        if paved >= sum.all {
            shown.line(w::ALL_PAVED.to_owned());
        }
        shown.line(w::paved(&area(paved, 3), &treated));
    }
    let per = area(sum.per.as_f64(), 6);
    if let Some((rate, product)) = sum.rate {
        let product = locale::number(product, 2);
        shown.answer(product.clone());
        shown.line(w::by_rate(&treated, &per, &locale::number(rate.as_f64(), 6), &product));
    } else {
        shown.waits(w::NO_RATE);
    }
    if let Some((each, water)) = sum.water {
        let times = sum.treated / sum.per.as_f64();
        shown.answer(ui.volume_up(water));
        shown.line(w::by_rate(
            &treated,
            &per,
            &ui.volume_in_sum(each, times, water, true),
            &ui.volume_up(water),
        ));
    } else {
        shown.waits(w::NO_WATER);
    }
}

/// The reach in the unit that was chosen beside it.
fn reach(sum: &GroundSum, draft: &BenchDraft) -> String {
    let unit = if draft.ground_reach_unit() == "ft" { "ft" } else { "m" };
    with_unit(&locale::number(sum.reach.millimetres() / read::way_unit(unit), 3), unit)
}
