//! The kinds of trap the keeper uses, in the keeper's own words and sizes.

pub mod draft;

#[cfg(target_arch = "wasm32")]
pub mod form;
#[cfg(target_arch = "wasm32")]
mod keep;
#[cfg(target_arch = "wasm32")]
pub mod list;
#[cfg(target_arch = "wasm32")]
mod rows;

use crate::almanac::day::Day;
use crate::almanac::trap::TrapKind;
use crate::app::wording::en;
use crate::book::Book;
use crate::book::id::{EntryId, ThingId};
use crate::book::standing::{KindNow, Standing};

/// The keeper's word for a kind, with what it holds behind it where another kind of the same book (the demonstration
/// is one of its own) has the same word: "Oil trap, 20 mL". As typed: whoever shows it in a sentence isolates it.
pub fn kind_name(standing: &Standing, kind: &ThingId) -> String {
    let Some(now) = standing.kinds.get(kind) else { return String::new() };
    let name = &now.kind.name;
    let alike = |other: &ThingId, its: &KindNow| {
        other != kind && other.is_demo() == kind.is_demo() && same_name(&its.kind.name, name)
    };
    if !standing.kinds.iter().any(|(other, its)| alike(other, its)) {
        return name.clone();
    }
    let holds = now.kind.capacity.map_or_else(
        || crate::app::wording::en_kinds::NOT_MEASURED.to_owned(),
        |holds| en::with_unit(&holds.number().to_string(), en::volume_name(holds.unit())),
    );
    [name, ", ", &holds].concat()
}

/// Whether `item`, as somebody wrote it down under stock, is of `kind`: what lies in store and what it cost go by this. The
/// word that several kinds share means the first of them that is still offered: it was there when nobody had to tell them
/// apart.
pub fn names(standing: &Standing, kind: &ThingId, item: &str) -> bool {
    let alike =
        |(id, now): &(&ThingId, &KindNow)| id.is_demo() == kind.is_demo() && same_name(&now.kind.name, item);
    let first = standing.kinds.iter().filter(alike).min_by_key(|(_, now)| now.retired);
    first.is_some_and(|(id, _)| id == kind) || same_name(item, &kind_name(standing, kind))
}

/// The kind of the keeper's own, still offered, that `described` is: the same word, and the same in everything the Bench
/// asks for. What else was written down of it since, such as packs and sizes, makes no other kind of it.
pub fn known<'a>(standing: &'a Standing, described: &TrapKind) -> Option<&'a ThingId> {
    let same = |known: &TrapKind| {
        same_name(&known.name, &described.name)
            && (known.form, known.reusable, known.fill, known.max_days)
                == (described.form, described.reusable, described.fill, described.max_days)
            && known.capacity == described.capacity
    };
    let mut kinds = standing.kinds.iter();
    kinds.find(|(id, now)| !id.is_demo() && !now.retired && same(&now.kind)).map(|(id, _)| id)
}

/// Whether a keeper would take the two for one: spaces at the ends and capitals make no difference.
pub fn same_name(one: &str, other: &str) -> bool {
    lower(one.trim()) == lower(other.trim())
}

/// The page asks the browser, which has the tables of letters at hand.
fn lower(text: &str) -> String {
    #[cfg(target_arch = "wasm32")]
    return crate::almanac::text::Letters::lower(&crate::app::edge::letters::BrowserLetters, text);
    #[cfg(not(target_arch = "wasm32"))]
    text.to_lowercase()
}

/// Before the name of a line in the address of a form that corrects it: a kind and the line that brought it have one name.
const LINE: &str = "line-";

/// The address of the form in which the line `id`, which describes a kind, is corrected.
pub fn of_line(id: &EntryId) -> String {
    [LINE, &id.to_string()].concat()
}

/// The line that such an address names.
pub fn line_of(address: &str) -> Option<EntryId> {
    EntryId::parse(address.strip_prefix(LINE)?).ok()
}

/// The day a kind came into the book. What changes it is never dated earlier: a yard far to the east may be a day
/// ahead of the phone.
pub fn first_day(book: &Book, kind: &ThingId) -> Day {
    book.log().get(kind.entry()).map_or(Day::FIRST, |entry| entry.day)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::app::ledger::words::tests::book;
    use crate::book::id::Writer;

    #[test]
    fn kinds_of_one_name_are_told_apart_by_what_they_hold() {
        let mut standing = book().standing().clone();
        let ids: Vec<ThingId> = standing.kinds.keys().cloned().collect();
        let plain = kind_name(&standing, &ids[0]);
        assert_eq!(plain, standing.kinds[&ids[0]].kind.name);
        let twin = plain.to_uppercase();
        standing.kinds.get_mut(&ids[1]).unwrap().kind.name = twin.clone();
        standing.kinds.get_mut(&ids[1]).unwrap().kind.capacity = None;
        assert!(kind_name(&standing, &ids[0]).starts_with(&[&plain, ", "].concat()));
        assert_eq!(kind_name(&standing, &ids[1]), [&twin, ", not measured yet"].concat());
    }

    #[test]
    fn the_address_of_a_line_is_not_that_of_the_kind_it_brought() {
        let id = EntryId::new(Writer::new("aa").unwrap(), 2).unwrap();
        assert_eq!(line_of(&of_line(&id)), Some(id.clone()));
        assert_eq!((line_of(&id.thing(0).to_string()), line_of("new"), line_of("line-")), (None, None, None));
        assert!(ThingId::parse(&of_line(&id)).is_err());
    }

    #[test]
    fn keeper_describes_the_same_trap_for_a_second_yard_and_it_is_one_kind() {
        let mut standing = book().standing().clone();
        let id = EntryId::new(Writer::new("aa").unwrap(), 1).unwrap().thing(0);
        let kind = standing.kinds.values().next().unwrap().kind.clone();
        standing.kinds.insert(id.clone(), KindNow { kind: kind.clone(), retired: false, stock: 0 });
        let typed = |change: fn(&mut TrapKind)| {
            let mut typed = TrapKind { packs: Vec::new(), profile: Vec::new(), ..kind.clone() };
            typed.inner = crate::almanac::trap::TrapSize::default();
            change(&mut typed);
            typed
        };
        let same = |standing: &Standing, typed: &TrapKind| known(standing, typed).cloned();
        assert_eq!(same(&standing, &typed(|kind| kind.name = kind.name.to_uppercase())), Some(id.clone()));
        let others: [fn(&mut TrapKind); 5] = [
            |kind| kind.name.push('2'),
            |kind| kind.reusable = !kind.reusable,
            |kind| kind.capacity = None,
            |kind| kind.max_days += 1,
            |kind| kind.fill = crate::almanac::quantity::Share::QUARTER,
        ];
        for other in others {
            assert_eq!(same(&standing, &typed(other)), None);
        }
        standing.kinds.get_mut(&id).unwrap().retired = true;
        assert_eq!(same(&standing, &typed(|_| ())), None, "no longer offered");
    }
}
