//! What lies beside the book: pages that could not be read, and pages that say something else of a line than the book.

use super::words;
use crate::app::aside::{Aside, Why};
use crate::app::edge::files;
use crate::app::el::{Bit, El, el, live};
use crate::app::parts::key::Key;
use crate::app::parts::notice::Notice;
use crate::app::records::Records;
use crate::app::wording::en_book::asides as w;
use crate::book::Book;

/// How many could not be read, and how many clash.
pub fn counted(asides: &[Aside]) -> (usize, usize) {
    let twice = asides.iter().filter(|aside| aside.why == Why::Clash).count();
    (asides.len() - twice, twice)
}

/// Each text as a file.
pub fn view(records: Records) -> Bit {
    live(move || {
        let mut asides = records.asides.get();
        let (unread, twice) = counted(&asides);
        let mut cards = Vec::new();
        for (clash, count, title, left) in
            [(false, unread, w::TITLE, w::LEFT), (true, twice, w::TWICE, w::TWICE_HOW)]
        {
            if count > 0 {
                let mut list = el("ul").class("asides");
                let of_card = asides.extract_if(.., |aside| (aside.why == Why::Clash) == clash);
                for (nth, aside) in (1..).zip(of_card) {
                    list = list.kid(records.book.with_untracked(|book| one(book, aside, nth)));
                }
                let said = if clash { w::twice(count) } else { w::count(count) };
                let card = el("section").class("card").kid(el("h2").text(title));
                cards.push(card.kid(Notice::alarm(said).view()).kid(el("p").text(left)).kid(list).into());
            }
        }
        Bit::Many(cards)
    })
}

fn one(book: &Book, aside: Aside, nth: usize) -> El {
    let words = match aside.why {
        Why::Newer => w::NEWER,
        Why::Damaged => w::DAMAGED,
        Why::Clash => w::CLASH,
    };
    let said = [&w::page(nth, aside.raw.chars().count()), ". ", words].concat();
    let mut item = el("li").kid(el("p").text(&said));
    for (here, there) in aside.clashes(book) {
        item = item.kid(el("p").text(&[w::IN_BOOK, &words::entry(book, here)].concat()));
        item = item.kid(el("p").text(&[w::ON_PAGE, &words::entry(book, &there)].concat()));
    }
    let save = move || {
        // Nothing but letters and digits of the key goes into a file name.
        let plain = aside.key.replace(|c: char| !c.is_ascii_alphanumeric(), "-");
        files::save(&[plain.as_str(), ".txt"].concat(), "text/plain", &aside.raw);
    };
    item.kid(el("p").class("keys").kid(Key::new(w::SAVE, save).mark("aside-save").view()))
}
