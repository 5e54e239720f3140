//! What closes the hives up: hive by hive in the order of the walk, then what to buy and cut for all of them.

use super::page::{Asked, lines, most, others};
use crate::almanac::day::Day;
use crate::almanac::quantity::Length;
use crate::app::bench::closing::{Wanted, entrance, reckon_for};
use crate::app::bench::draft::{BenchDraft, Slot};
use crate::app::bench::view::closing::{SIZES, say};
use crate::app::bench::view::says::Reads;
use crate::app::bench::view::shown::{self, Shown, Typed};
use crate::app::el::{Bit, El, below, el, live};
use crate::app::graph::RwSignal;
use crate::app::parts::card::more;
use crate::app::parts::key::link;
use crate::app::place::Place;
use crate::app::round::bits;
use crate::app::round::form::keys;
use crate::app::state::Ui;
use crate::app::wording::en_beetle_honey::bait_in;
use crate::app::wording::{en_records as wr, en_yard_decides::closing as w};
use crate::book::record::Blank;
use crate::book::shell::{Board, Known, Shell, clean_every, shells};

const ENTRANCE: &[Typed] =
    &[Typed::new("closing-entrance", w::ENTRANCE, Slot::closing_entrance, Reads::Side)
        .unit(Slot::closing_entrance_unit)
        .may_be_empty()
        .hint(w::ENTRANCE_HINT)];

/// How the hives are closed, whether an interval of cleaning is set, and the day that counts.
type Found = (Vec<Shell>, bool, Day);

pub(super) fn view(asked: &Asked) -> Bit {
    let ui = asked.ui;
    let found = asked.follow(|standing, yard, today| {
        (shells(standing, yard, today), clean_every(standing).is_some(), today)
    });
    let of = asked.clone();
    let all = RwSignal::new(false);
    let most = most(all);
    let list = live(move || {
        let many = most.get();
        let widest = ui.draft.with(entrance);
        found.with(|(shells, every, today)| {
            if shells.is_empty() {
                return Bit::from(el("p").text(crate::app::wording::en_yard_decides::EMPTY));
            }
            let hives = shells.iter().take(many).map(|shell| hive(&of, shell, widest, *today));
            let no_every = (!every).then(|| {
                let aims = link(wr::blank(Blank::Aims).title, &Place::Write(Blank::Aims, None));
                bits![el("p").class("small").text(w::NO_EVERY), keys(aims)]
            });
            bits![
                el("ul").class("decide-hives").test_id("close-hives").kids(hives),
                others(shells.len(), all),
                no_every
            ]
        })
    });
    let of = asked.clone();
    let worked = shown::following(
        ui,
        Box::new(move |_, draft, shown| found.with(|found| materials(&of, found, draft, shown))),
    );
    bits![
        shown::fields(ui, ENTRANCE),
        el("h2").class("part-title").text(crate::app::wording::en_yard_decides::HIVES),
        list,
        below(move || bits![
            el("h2").class("part-title").text(w::BUY),
            el("div")
                .class("card-body stack")
                .test_id("close-buy")
                .kid(shown::answer(w::SHEETS, worked, 0).why(w::WHY).view())
                .kid(shown::answer(w::SEALANT, worked, 1).why(w::SEALANT_WHY).view())
                .kid(shown::answer(w::TINS, worked, 2).view())
                .kid(shown::list(worked))
                .kid(shown::small(w::EXAMPLES))
                .kid(more(w::SIZES, shown::fields(ui, SIZES))),
        ]),
    ]
}

/// A hive: what is to be done first, then what is fine, then what nobody knows.
fn hive(asked: &Asked, shell: &Shell, widest: Option<Length>, today: Day) -> El {
    let (to_do, fine) = told(asked.ui, shell, widest, today);
    let mut body = el("li").kid(el("h3").kid(asked.way(&shell.hive)));
    if !to_do.is_empty() {
        let lines = to_do.iter().map(|line| el("li").text(&["! ", line].concat()));
        body = body.kid(el("ul").class("to-do").kids(lines));
    }
    if shell.told() {
        if to_do.is_empty() {
            body = body.kid(el("p").text(w::FINE));
        }
        body = body.kid(lines(&fine));
        for (looked, parts) in [(false, missing(shell, false)), (true, missing(shell, true))] {
            body = body.kid((!parts.is_empty()).then(|| el("p").text(&w::not_known(&parts, looked))));
        }
    } else {
        body = body.kid(el("p").text(w::NO_DATA));
    }
    let form = Place::Write(Blank::Shell, Some(shell.hive.to_string()));
    body.kid(keys(link(w::WRITE, &form)))
}

fn told(ui: Ui, shell: &Shell, widest: Option<Length>, today: Day) -> (Vec<String>, Vec<String>) {
    let (mut to_do, mut fine) = (Vec::new(), Vec::new());
    let mut put = |line: String, wants: bool| if wants { to_do.push(line) } else { fine.push(line) };
    for bait in &shell.bait {
        put(bait_in(bait, today), true);
    }
    if let Some((wide, day)) = shell.crack {
        let said = ui.length(wide);
        if shell.gaps() {
            let long = shell.crack_length.and_then(|mm| Length::from_millimetres(mm).ok());
            let long = long.map(|long| ui.length(long));
            put(w::crack(&said, long.as_deref(), day), true);
        } else {
            put(w::narrow(&said, day), false);
        }
    }
    if let Some((notch, day)) = shell.notch.seen() {
        put(w::notch(notch, day), shell.open_notch());
    }
    if let Some((board, day)) = shell.board.seen() {
        let due = shell.board_due(today);
        put(w::board(board, day, shell.clean_by, due), due || board == Board::Without);
    }
    for (known, what) in [(shell.empty_space, w::SPACE), (shell.burr_comb, w::BURR)] {
        if let Known::Seen(true, day) = known {
            put(w::seen(what, day), true);
        }
    }
    if let Some((wide, since)) = shell.entrance {
        let narrower = too_wide(wide, widest);
        put(w::entrance(&ui.length(wide), since, narrower), narrower);
    }
    (to_do, fine)
}

fn too_wide(wide: Length, widest: Option<Length>) -> bool {
    widest.is_some_and(|widest| wide.millimetres() > widest.millimetres() + 1e-9)
}

/// Parts that were never told of, or at which nobody looked.
fn missing(shell: &Shell, never: bool) -> Vec<&'static str> {
    let seen = |seen: bool| if seen { None } else { Some(true) };
    let states = [
        seen(shell.crack.is_some()),
        seen(shell.entrance.is_some()),
        w::missing(&shell.notch),
        w::missing(&shell.board),
        w::missing(&shell.empty_space),
        w::missing(&shell.burr_comb),
    ];
    let mut parts = Vec::new();
    for (part, state) in w::PARTS.iter().zip(states) {
        if state == Some(never) {
            parts.push(*part);
        }
    }
    parts
}

/// Materials, and the hives that they are for.
fn materials(asked: &Asked, found: &Found, draft: &BenchDraft, shown: &mut Shown) -> Option<()> {
    let (shells, _, today) = found;
    let widest = entrance(draft);
    let mut wanted = Wanted::default();
    let [mut narrow, mut boards, mut no_length, mut untold] = [const { Vec::new() }; 4];
    let mut unknown = [0; 3];
    for shell in shells {
        wanted.screens += u32::from(shell.open_notch());
        if shell.gaps() {
            match shell.crack_length {
                Some(long) => wanted.cracks += long,
                None => no_length.push(asked.tag(&shell.hive)),
            }
        }
        if matches!(shell.board, Known::Seen(Board::Without, _)) {
            boards.push(asked.tag(&shell.hive));
        }
        wanted.boards += u32::from(shell.board_due(*today));
        if shell.entrance.is_some_and(|(wide, _)| too_wide(wide, widest)) {
            narrow.push(asked.tag(&shell.hive));
        }
        let looked_at = shell.looked_at();
        for (count, seen) in unknown.iter_mut().zip(looked_at) {
            *count += usize::from(!seen);
        }
        if looked_at == [false; 3] {
            untold.push(asked.tag(&shell.hive));
        }
    }
    let none = w::none(unknown, shells.len());
    say(draft, &reckon_for(draft, wanted)?, &none.each_ref().map(String::as_str), shown);
    for (what, tags) in
        [(w::REDUCERS, &narrow), (w::NEW_BOARDS, &boards), (w::NO_LENGTH, &no_length), (w::UNTOLD, &untold)]
    {
        if !tags.is_empty() {
            shown.list.push(w::count_of(what, tags));
        }
    }
    if widest.is_none() {
        shown.list.push(w::NO_ENTRANCE.to_owned());
    }
    Some(())
}
