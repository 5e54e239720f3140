//! How much of their comb the bees cover.

use super::says::Reads;
use super::shown::{self, Shown, Typed, answer};
use crate::almanac::cover::Guard;
use crate::app::bench::cover::{MOST_FRAMES, reckon};
use crate::app::bench::draft::{BenchDraft, Slot};
use crate::app::edge::locale;
use crate::app::el::El;
use crate::app::state::Ui;
use crate::app::wording::en_decide::cover as w;

const FIELDS: &[Typed] = &[
    Typed::new("cover-sides", w::SIDES, Slot::cover_sides, Reads::Count(0, 2 * MOST_FRAMES))
        .hint(w::SIDES_HINT),
    Typed::new("cover-frames", w::FRAMES, Slot::cover_frames, Reads::Count(1, MOST_FRAMES)),
    Typed::new("cover-box", w::A_BOX, Slot::cover_a_box, Reads::Count(1, MOST_FRAMES)),
];

/// The card's body.
pub(super) fn view(ui: Ui) -> El {
    let shown = shown::follow(ui, show);
    shown::body()
        .kid(shown::fields(ui, FIELDS))
        .kid(answer(w::COVERED, shown, 0).why(w::WHY).view())
        .kid(shown::small(w::FLOW))
}

fn show(_: Ui, draft: &BenchDraft, shown: &mut Shown) -> Option<()> {
    let sum = reckon(draft)?;
    let cover = &sum.cover;
    let worked = |frames: u32, share: f64| {
        w::sum(&locale::whole(sum.sides), &locale::whole(frames), &locale::percent(share, 0))
    };
    shown.answer(locale::percent(cover.share, 0));
    shown.line(w::guard(cover).to_owned());
    shown.line(worked(sum.frames, cover.share));
    match cover.off {
        Some(off) => {
            let left = worked(sum.frames - off * sum.a_box, cover.then);
            shown.line(w::off(off, &locale::whole(sum.a_box), &left));
        }
        None if cover.guard == Guard::Well => {}
        None => shown.line(w::JOIN.to_owned()),
    }
    Some(())
}
