//! Mesh and cracks.

use super::says::Reads;
use super::shown::{self, Shown, Typed, answer};
use crate::almanac::mesh::{stops, widest};
use crate::almanac::quantity::{Length, LengthUnit};
use crate::app::bench::draft::{BenchDraft, Slot};
use crate::app::bench::mesh::reckon;
use crate::app::edge::locale;
use crate::app::el::El;
use crate::app::state::Ui;
use crate::app::wording::en;
use crate::app::wording::en_decide::mesh as w;

const FIELDS: &[Typed] = &[
    Typed::new("mesh-count", w::COUNT, Slot::mesh_count, Reads::More).hint(w::COUNT_HINT),
    Typed::new("mesh-wire", w::WIRE, Slot::mesh_wire, Reads::Side).unit(Slot::mesh_wire_unit),
];

const CRACK: &[Typed] = &[Typed::new("mesh-crack", w::CRACK, Slot::mesh_crack, Reads::Side)
    .unit(Slot::mesh_crack_unit)
    .may_be_empty()];

/// The card's body.
pub(super) fn view(ui: Ui) -> El {
    let shown = shown::follow(ui, show);
    shown::body()
        .kid(shown::fields(ui, FIELDS))
        .kid(answer(w::OPENING, shown, 0).why(w::WHY).view())
        .kid(shown::small(w::SCREEN))
        .kid(shown::fields(ui, CRACK))
        .kid(answer(w::CRACKS, shown, 1).view())
}

/// To the hundredth of a millimetre, or the thousandth of an inch: an opening is compared with 2 mm.
fn fine(ui: Ui, length: Length) -> String {
    let unit = ui.prefs.get().length;
    let decimals = if unit == LengthUnit::Inch { 3 } else { 2 };
    // Half a step goes up as it does by hand: 3.175 − 0.43 is 2.75.
    en::with_unit(&locale::number(length.in_unit(unit) + 1e-9, decimals), en::length_name(unit))
}

fn show(ui: Ui, draft: &BenchDraft, shown: &mut Shown) -> Option<()> {
    let sum = reckon(draft)?;
    let against = |open| w::against(&fine(ui, open), !stops(open), &fine(ui, widest()));
    if let Some(open) = sum.open {
        let inch = Length::from_millimetres(25.4).unwrap_or_default();
        let count = locale::number(sum.count.as_f64(), 3);
        shown.answer(fine(ui, open));
        shown.line(if stops(open) { w::STOPS } else { w::LETS_IN }.to_owned());
        shown.line(w::sum(&fine(ui, inch), &count, &fine(ui, sum.wire), &fine(ui, open)));
        shown.line(against(open));
    } else {
        shown.waits(w::SHUT);
    }
    if let Some(crack) = sum.crack {
        shown.answer(if stops(crack) { w::LEAVE } else { w::REPAIR }.to_owned());
        shown.line(against(crack));
    } else {
        shown.waits(w::NO_CRACK);
    }
    Some(())
}
