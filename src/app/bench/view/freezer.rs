//! Comb through the freezer.

use super::says::Reads;
use super::shown::{self, Shown, Typed, answer};
use crate::app::bench::draft::{BenchDraft, Slot};
use crate::app::bench::freezer::{MOST_FRAMES, MOST_HOURS, reckon};
use crate::app::edge::locale;
use crate::app::el::El;
use crate::app::parts::notice::Notice;
use crate::app::state::Ui;
use crate::app::wording::en::days;
use crate::app::wording::en_decide::freezer as w;

const FIELDS: &[Typed] = &[
    Typed::new("freezer-frames", w::FRAMES, Slot::freezer_frames, Reads::Count(0, MOST_FRAMES)),
    Typed::new("freezer-fit", w::FIT, Slot::freezer_fit, Reads::Count(1, MOST_FRAMES)),
    Typed::new("freezer-cold", w::COLD, Slot::freezer_cold, Reads::Warmth).unit(Slot::freezer_cold_unit),
    Typed::new("freezer-chill", w::CHILL, Slot::freezer_chill, Reads::Count(0, MOST_HOURS)),
    Typed::new("freezer-hold", w::HOLD, Slot::freezer_hold, Reads::Count(0, MOST_HOURS)),
];

/// The card's body.
pub(super) fn view(ui: Ui) -> El {
    let shown = shown::follow(ui, show);
    shown::body()
        .kid(shown::fields(ui, FIELDS))
        .kid(answer(w::TAKES, shown, 0).why(w::WHY).view())
        .kid(shown::cautions(shown))
        .kid(Notice::caution(w::HONEY).why(w::HONEY_WHY).view())
        .kid(shown::small(w::FIRST))
}

fn show(_: Ui, draft: &BenchDraft, shown: &mut Shown) -> Option<()> {
    let sum = reckon(draft)?;
    let found = &sum.batches;
    let whole = locale::whole;
    shown.answer(days(found.days));
    shown.line(w::batches(&whole(sum.frames), &whole(sum.fit), found.batches, found.last));
    shown.line(w::sum(found.batches, &whole(sum.chill), &whole(sum.hold), &whole(found.hours), found.days));
    if sum.too_warm {
        shown.caution(w::TOO_WARM);
    }
    if sum.too_short {
        shown.caution(w::TOO_SHORT);
    }
    Some(())
}
