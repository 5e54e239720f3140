//! What follows from a record, in sentences.

use crate::app::wording::en;
use crate::app::wording::en_records as w;
use crate::book::id::EntryId;
use crate::book::record::{Blank, Clear, clear_of_product, keep_until, lot};
use crate::book::standing::{RecordNow, Standing};

/// Years for which the keeper keeps records of products: as chosen, else five.
const YEARS: u16 = 5;

/// When supers may be on after a product.
pub fn product(clear: Clear) -> String {
    match clear {
        Clear::StillIn => w::STILL_IN.to_owned(),
        Clear::From(day) => w::clear_from(&en::date(day)),
    }
}

/// What follows from `now`, whose line is `id`.
pub(super) fn follows(standing: &Standing, id: &EntryId, now: &RecordNow) -> Vec<String> {
    let record = &now.record;
    let mut said = Vec::new();
    said.extend(clear_of_product(record).map(product));
    if matches!(record.blank, Blank::Product | Blank::Ground) {
        let chosen = standing.facts(Blank::KeeperFacts, None, None).word("keep_years");
        let years = chosen.and_then(|years| years.parse().ok()).unwrap_or(YEARS);
        said.push(w::keep_until(&en::date(keep_until(record, now.day, years))));
    }
    if record.blank == Blank::Harvest {
        said.push(w::lot(&lot(now.day, id)));
    }
    said
}
