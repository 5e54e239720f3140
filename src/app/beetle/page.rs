//! The first page of the Beetle: what is on the way in the yards, and the ways to its clocks.

use super::{bars, dates, honey_page, rhythm_page, season, told};
use crate::app::el::{Bit, El, el, live};
use crate::app::frame::heading;
use crate::app::graph::{Memo, untrack};
use crate::app::ledger::papers::events::yards;
use crate::app::ledger::words;
use crate::app::parts::card::more;
use crate::app::parts::key::link;
use crate::app::parts::notice::Notice;
use crate::app::place::{Clock, Place, Section};
use crate::app::records::Records;
use crate::app::round::bits;
use crate::app::round::form::keys;
use crate::app::state::Ui;
use crate::app::wording::{en, en_beetle as w, en_beetle_honey as wh, en_records as wr};
use crate::book::baited::past_due;
use crate::book::ground::Ground;
use crate::book::id::ThingId;
use crate::book::record::Blank;

/// The forms that the dates of a yard go by.
const GO_BY: [Blank; 4] = [Blank::Climate, Blank::Soil, Blank::Rain, Blank::YardFacts];

/// The section of the Beetle: whichever of its clocks the address names.
pub fn page(ui: Ui) -> El {
    let records = Records::get();
    let place = Memo::new(move || ui.place.get());
    let shown = live(move || {
        let place = place.get();
        untrack(|| match place {
            Place::Beetle(Some(clock)) => of(ui, records, clock),
            _ => first(ui, records),
        })
    });
    el("div").class("ledger").kid(shown)
}

fn first(ui: Ui, records: Records) -> Bit {
    let ids = Memo::new(move || records.book.with(yards));
    let under_way = live(move || {
        let ids = ids.get();
        untrack(|| {
            if ids.is_empty() {
                return Bit::from(el("p").class("lead").text(w::EMPTY));
            }
            let mut bits: Vec<Bit> = vec![el("h2").class("part-title").text(w::UNDER_WAY).into()];
            for id in ids {
                bits.push(yard(ui, records, id));
            }
            bits.push(Notice::plain(w::ESTIMATE).why(w::RULE).view().into());
            Bit::Many(bits)
        })
    });
    let ways = Clock::ALL.map(|clock| el("li").kid(link(w::clock(clock), &Place::Beetle(Some(clock)))));
    bits![
        heading(en::section(Section::Beetle)),
        el("nav").attr("aria-label", w::INDEX).kid(el("ul").class("ways").kids(ways)),
        under_way,
    ]
}

/// Bait and patties that are past their day.
fn bait(records: Records, yard: ThingId) -> Bit {
    live(move || {
        let today = records.today(&yard);
        records.book.with(|book| {
            let mut bits = Vec::new();
            for (hive, baited) in past_due(book.standing(), &yard, today) {
                let said = wh::bait(&words::hive_name(book, &hive), &baited);
                bits.push(Bit::from(Notice::alarm(said).why(wh::BAIT_WHY).view()));
            }
            Bit::Many(bits)
        })
    })
}

fn yard(ui: Ui, records: Records, id: ThingId) -> Bit {
    let name = records.book.with_untracked(|book| words::yard_name(book, &id));
    let address = id.to_string();
    let climate = Place::Write(Blank::Climate, Some(address.clone()));
    let bait = bait(records, id.clone());
    let of = id.clone();
    let soil = live(move || {
        let today = records.today(&of);
        let soil = records.book.with(|book| Ground::of(book.standing(), &of, today))?.soil(today);
        season::probed(ui, &soil)
    });
    let told = Memo::new(move || {
        let today = records.today(&id);
        records.book.with(|book| told::of_yard(book, &id, today, None).map(|told| (told, today)))
    });
    let shown = live(move || {
        told.with(|told| match told {
            None => bits![el("p").text(w::NO_CLIMATE), keys(link(w::TO_CLIMATE, &climate))],
            Some((told, _)) if told.is_empty() => el("p").text(w::NOTHING).into(),
            Some((told, today)) => bits![
                told.iter().any(|way| way.in_comb).then(|| Notice::caution(w::LARVAE).view()),
                bars::all(told, *today),
                el("p").class("small").text(w::AXIS),
            ],
        })
    });
    let forms = GO_BY
        .map(|blank| el("li").kid(link(wr::blank(blank).title, &Place::Write(blank, Some(address.clone())))));
    bits![
        el("h2").class("sub").text(&name),
        el("div").test_id("beetle-bait").kid(bait),
        el("div").test_id("beetle-yard").kid(shown),
        more(w::GO_BY, bits![soil, el("ul").class("ways").kids(forms)]),
    ]
}

fn of(ui: Ui, records: Records, clock: Clock) -> Bit {
    rhythm_page::by_aims(ui, records);
    let shown = match clock {
        Clock::Dates => dates::view(ui, records),
        Clock::Season => season::view(ui, records),
        Clock::Rhythm => rhythm_page::view(ui, records),
        Clock::Honey => honey_page::view(ui, records),
    };
    bits![el("p").class("back").kid(link(en::section(Section::Beetle), &Place::Beetle(None))), shown]
}
