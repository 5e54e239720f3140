//! Hives to open.

use super::says::Reads;
use super::shown::{self, Shown, Typed, answer};
use crate::almanac::quantity::Share;
use crate::almanac::sample::ToOpen;
use crate::app::bench::draft::{BenchDraft, Slot};
use crate::app::bench::read::MOST_HIVES;
use crate::app::bench::sample::reckon;
use crate::app::edge::{device, locale};
use crate::app::el::El;
use crate::app::parts::key::Key;
use crate::app::state::Ui;
use crate::app::wording::en_decide::sample as w;

const FIELDS: &[Typed] = &[Typed::new("open-hives", w::HIVES, Slot::open_hives, Reads::Count(1, MOST_HIVES))];

/// Share, certainty and chance to notice.
pub(in crate::app) const CHANCES: &[Typed] = &[
    Typed::new("open-share", w::SHARE, Slot::open_share, Reads::Share),
    Typed::new("open-sure", w::SURE, Slot::open_sure, Reads::Share),
    Typed::new("open-notice", w::NOTICE, Slot::open_notice, Reads::Share).hint(w::NOTICE_HINT),
];

const OPENED: &[Typed] =
    &[Typed::new("open-opened", w::OPENED, Slot::open_opened, Reads::Count(0, MOST_HIVES))
        .may_be_empty()
        .hint(w::OPENED_HINT)];

/// Of 32: more draws than anybody makes.
const SEED_LETTERS: usize = 8;

/// The card's body.
pub(super) fn view(ui: Ui) -> El {
    let shown = shown::follow(ui, show);
    let seed = ui.bench().open_seed();
    shown::body()
        .kid(shown::then_fields(shown::fields(ui, FIELDS), ui, CHANCES))
        .kid(answer(w::OPEN, shown, 0).why(w::WHY).view())
        .kid(shown::small(w::BY_LOT))
        .kid(Key::new(w::DRAW, move || seed.set(device::id(SEED_LETTERS))).mark("draw").view())
        .kid(shown::list(shown))
        .kid(shown::fields(ui, OPENED))
        .kid(answer(w::PROVES, shown, 1).view())
        .kid(shown::cautions(shown))
}

fn show(_: Ui, draft: &BenchDraft, shown: &mut Shown) -> Option<()> {
    let sum = reckon(draft)?;
    let hives = locale::whole(sum.hives);
    if let Some(open) = &sum.open {
        show_open(sum.share, sum.sure, open, &hives, shown);
    } else {
        shown.waits(w::NOTHING);
    }
    if !sum.drawn.is_empty() {
        shown.list.push(w::drawn(&sum.drawn));
    }
    let opened = locale::whole(sum.opened);
    shown.answer(w::at_most(&locale::whole(sum.at_most), &hives));
    if sum.at_most < sum.hives {
        let more = locale::whole(sum.at_most + 1);
        shown.line(w::proves(&more, &opened, &locale::percent(sum.sure.fraction(), 1)));
    }
    shown.caution(&w::none_seen(&opened, &hives));
    Some(())
}

/// How many, and the chances that it is enough.
pub(in crate::app) fn show_open(share: Share, sure: Share, open: &ToOpen, hives: &str, shown: &mut Shown) {
    let percent = |chance: f64| locale::percent(chance, 1);
    shown.answer(locale::whole(open.opened));
    shown.line(w::affected(&percent(share.fraction()), hives, &locale::whole(open.affected)));
    if open.opened > 1 {
        shown.line(w::chance(&locale::whole(open.opened - 1), &percent(open.before)));
    }
    shown.line(w::chance(&locale::whole(open.opened), &percent(open.chance)));
    if !open.reached {
        shown.line(w::all(&percent(sure.fraction()), &percent(open.twice)));
    }
}
