//! What was written down beside the traps, and the ways to write more.

use super::{blanks, said};
use crate::app::edge::slot;
use crate::app::el::{Bit, El, el, live};
use crate::app::frame::heading;
use crate::app::graph::Memo;
use crate::app::ledger::words;
use crate::app::parts::key::link;
use crate::app::place::{Paper, Place, Section};
use crate::app::records::Records;
use crate::app::round::bits;
use crate::app::round::form::keys;
use crate::app::wording::en;
use crate::app::wording::en_lot as wl;
use crate::app::wording::en_records as w;
use crate::app::wording::en_round::BEGUN;
use crate::book::id::ThingId;
use crate::book::record::{About, Blank};

/// A record in words, what follows from it, and the line of one that has a sheet of its own.
type Line = (String, Vec<String>, Option<String>);

/// The page of the Book.
pub fn view(records: Records) -> Bit {
    let all = Memo::new(move || {
        records.book.with(|book| {
            let standing = book.standing();
            let own = standing.yards.keys().any(|yard| !yard.is_demo());
            let several = standing.yards.keys().filter(|yard| !own || !yard.is_demo()).nth(1).is_some();
            let mut all: Vec<(Blank, Vec<Line>)> = Vec::new();
            for blank in Blank::ALL {
                let mut lines = Vec::new();
                for (id, now) in standing.records_of(blank).into_iter().rev() {
                    if own && now.yard.as_ref().is_some_and(ThingId::is_demo) {
                        continue;
                    }
                    let record = words::record_of_all(book, several, now.yard.as_ref(), &now.record);
                    let line = [&en::date(now.day), w::SAYS, &record].concat();
                    let sheet = (blank == Blank::Harvest).then(|| id.to_string());
                    lines.push((line, said::follows(standing, id, now), sheet));
                }
                if !lines.is_empty() {
                    all.push((blank, lines));
                }
            }
            all
        })
    });
    let shown = live(move || {
        let all = all.get();
        if all.is_empty() {
            return Bit::from(el("p").text(w::NONE));
        }
        let mut sections = Vec::new();
        for (blank, lines) in all {
            let mut list = el("ul").class("plain-list");
            for (line, follows, sheet) in lines {
                let mut item = el("li").text(&line);
                for said in follows {
                    item = item.kid(el("p").class("small").text(&said));
                }
                let way = |id| keys(link(wl::OPEN, &Place::Paper(Paper::Lot, Some(id))).test_id("lot-sheet"));
                list = list.kid(item.kid(sheet.map(way)));
            }
            sections.push(Bit::from([el("h2").class("sub").text(w::blank(blank).title), list]));
        }
        Bit::Many(sections)
    });
    bits![
        el("p").class("back").kid(link(en::section(Section::Book), &Place::Book)),
        heading(w::TITLE),
        el("p").text(w::WHAT),
        el("h2").class("part-title").text(w::WRITE),
        ways(&[About::Keeper, About::Hives, About::Place], None),
        el("h2").class("part-title").text(w::SO_FAR),
        el("div").test_id("records").kid(shown),
    ]
}

/// The ways to the forms about `hive` in which something was typed and not saved: nothing else leads back to them.
pub fn begun(hive: &str) -> Bit {
    let mut found = Vec::new();
    for blank in blanks(&[About::Hive]) {
        let place = Place::Write(blank, Some(hive.to_owned()));
        if slot::read(&[slot::WRITE, &place.hash()].concat()).is_some() {
            let words = ["✎ ", w::blank(blank).title, ": ", BEGUN].concat();
            found.push(Bit::from(keys(link(&words, &place).test_id("write-begun")).class("keys begun")));
        }
    }
    Bit::Many(found)
}

/// The ways to the forms of the blanks that are about one of these.
pub fn ways(about: &[About], of: Option<&str>) -> El {
    let mut list = el("ul").class("ways");
    for blank in blanks(about) {
        let place = Place::Write(blank, of.map(str::to_owned));
        let key = link(w::blank(blank).title, &place).test_id(blank.name());
        list = list.kid(el("li").kid(key));
    }
    list
}
