//! How large a split is to be.

use super::says::Reads;
use super::shown::{self, Shown, Typed, answer};
use crate::almanac::cover::ENOUGH_TWENTIETHS;
use crate::app::bench::cover::MOST_FRAMES;
use crate::app::bench::divide::reckon;
use crate::app::bench::draft::{BenchDraft, Slot};
use crate::app::edge::locale;
use crate::app::el::{El, el, live};
use crate::app::state::Ui;
use crate::app::wording::en_yard_decides::split as w;

const FIELDS: &[Typed] = &[
    Typed::new("split-bees", w::BEES, Slot::split_bees, Reads::Frames(MOST_FRAMES)).may_be_empty(),
    Typed::new("split-stays", w::STAYS, Slot::split_stays, Reads::Count(1, MOST_FRAMES)).may_be_empty(),
    Typed::new("split-goes", w::GOES, Slot::split_goes, Reads::Count(1, MOST_FRAMES)),
    Typed::new("split-back", w::BACK, Slot::split_back, Reads::Share).hint(w::BACK_HINT),
];

/// The card's body.
pub(in crate::app) fn view(ui: Ui) -> El {
    let shown = shown::follow(ui, show);
    let looks = move || {
        let today = ui.today.get();
        w::looks(today.plus(3), today.plus(7))
    };
    // The bees and the comb of a hive have no example; what flies back is told as judgement beside its field.
    let examples = move || {
        let example = ui.draft.with(|draft| draft.is_example(Slot::split_goes));
        example.then(|| shown::small(w::EXAMPLE).test_id("split-examples"))
    };
    shown::body()
        .kid(live(examples))
        .kid(shown::fields(ui, FIELDS))
        .kid(answer(w::TAKE, shown, 0).why(w::WHY).view())
        .kid(answer(w::GO, shown, 1).view())
        .kid(el("p").live_text(looks))
        .kid(el("p").text(w::TRAPS))
        .kid(shown::small(w::SEASON))
}

fn show(_: Ui, draft: &BenchDraft, shown: &mut Shown) -> Option<()> {
    if [draft.split_bees(), draft.split_stays()].iter().any(|text| text.trim().is_empty()) {
        shown.waits(w::NO_HIVE);
        shown.waits(w::NO_HIVE);
        return Some(());
    }
    let sum = reckon(draft)?;
    let of = &sum.of;
    let Some(divided) = &sum.divided else {
        shown.waits(w::ALL_BACK);
        shown.waits(w::ALL_BACK);
        return Some(());
    };
    let percent = |share: f64| locale::percent(share, 0);
    let (take, bees) = (locale::whole(divided.take), locale::number(of.bees.as_f64(), 1));
    let back = locale::percent(of.back.fraction(), 1);
    let keeps = locale::percent(1.0 - of.back.fraction(), 1);
    shown.answer(take.clone());
    shown.line(w::take(of.goes, &back, &take));
    shown.line(w::new(&take, &keeps, of.goes, &percent(divided.new)));
    shown.line(w::old(&bees, &take, &keeps, of.stays, &percent(divided.old)));
    shown.answer(w::go(divided.enough).to_owned());
    shown.line(w::wants(divided.enough, divided.wants, &bees));
    let nine_tenths = percent(f64::from(ENOUGH_TWENTIETHS) / 20.0);
    shown.line(w::wanted(of.stays, &nine_tenths, &take, &keeps, divided.wants));
    Some(())
}
