//! Records of what was seen and done beside the traps: the form of any blank, and what was written down so far.

pub mod draft;

#[cfg(target_arch = "wasm32")]
mod fields;
#[cfg(target_arch = "wasm32")]
pub mod form;
#[cfg(target_arch = "wasm32")]
pub mod kept;
#[cfg(target_arch = "wasm32")]
pub mod list;
#[cfg(target_arch = "wasm32")]
mod months;
#[cfg(target_arch = "wasm32")]
mod places;
#[cfg(target_arch = "wasm32")]
pub mod said;
#[cfg(target_arch = "wasm32")]
mod save;

use crate::app::place::Place;
use crate::book::Book;
use crate::book::entry::What;
use crate::book::id::{EntryId, ThingId};
use crate::book::record::{About, Blank, Record};

/// What the address of a form names.
#[derive(Clone, Debug, PartialEq)]
pub enum Of {
    /// A line to correct.
    Line(EntryId),
    /// A hive.
    Hive(ThingId),
    /// A yard.
    Yard(ThingId),
    /// Nothing: the keeper, or a yard that is still to be chosen.
    Open,
}

/// Finds out what `of` names; none when it is nothing that `blank` can be about. A hive and the line that brought it
/// have one name, so the line of a record is looked for first.
pub fn of(book: &Book, blank: Blank, of: Option<&str>) -> Option<Of> {
    let Some(of) = of else { return (blank.about() != About::Hive).then_some(Of::Open) };
    if let Ok(id) = EntryId::parse(of)
        && let Some(What::Record(record)) = book.log().get(&id).map(|line| &line.what)
    {
        return (record.blank == blank).then_some(Of::Line(id));
    }
    let id = ThingId::parse(of).ok()?;
    match blank.about() {
        About::Hive => book.standing().hives.contains_key(&id).then_some(Of::Hive(id)),
        About::Keeper => None,
        _ => book.standing().yards.contains_key(&id).then_some(Of::Yard(id)),
    }
}

/// The blanks about a hive, those about a yard, those about neither.
pub fn blanks(about: &[About]) -> Vec<Blank> {
    Blank::ALL.into_iter().filter(|blank| about.contains(&blank.about())).collect()
}

/// The blanks whose newest answers stand in the form already: facts, of which only what changed is typed.
pub fn is_facts(blank: Blank) -> bool {
    matches!(
        blank,
        Blank::HiveFacts
            | Blank::Stand
            | Blank::YardFacts
            | Blank::KeeperFacts
            | Blank::Climate
            | Blank::Aims
            | Blank::Costs
    )
}

/// Where the form of `record` leads to: the page of its hive, of its yard, or the records.
pub fn home(record: &Record, yard: Option<&ThingId>) -> Place {
    match (&*record.hives, yard) {
        ([hive], _) if record.blank.about() == About::Hive => Place::Hive(hive.to_string()),
        (_, Some(yard)) => Place::Yard(yard.to_string()),
        _ => Place::Records,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::app::ledger::words::tests::{book, pen, today};
    use crate::book::record::Answer;

    #[test]
    fn an_address_names_a_hive_a_yard_or_a_line_that_the_blank_can_be_about() {
        let mut book = book();
        let (hive, yard) = {
            let (hive, now) = book.standing().hives.iter().next().unwrap();
            (hive.clone(), now.yard.clone())
        };
        let named = |book: &Book, blank, id: &str| of(book, blank, Some(id));
        assert_eq!(named(&book, Blank::Look, &hive.to_string()), Some(Of::Hive(hive.clone())));
        assert_eq!(named(&book, Blank::Look, &yard.to_string()), None);
        assert_eq!(named(&book, Blank::Product, &yard.to_string()), Some(Of::Yard(yard.clone())));
        assert_eq!(named(&book, Blank::Stock, &yard.to_string()), None);
        assert_eq!(of(&book, Blank::Look, None), None);
        assert_eq!(of(&book, Blank::Harvest, None), Some(Of::Open));
        let mut look = Record::empty(Blank::Look, vec![hive]);
        look.answers[0] = Some(Answer::Word(1));
        let written = book.record(&pen(), today(), today(), Some(&yard), look).unwrap();
        let line = written[0].id.clone();
        book.add(written);
        assert_eq!(named(&book, Blank::Look, &line.to_string()), Some(Of::Line(line.clone())));
        assert_eq!(named(&book, Blank::Comb, &line.to_string()), None);
    }
}
