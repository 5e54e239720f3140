//! The lots on their way, a line each.

use super::honey::{YardClock, stacks};
use super::honey_told;
use crate::almanac::moment::Moment;
use crate::app::ledger::words::yard_name;
use crate::app::wording::en_beetle_honey as w;
use crate::book::Book;

/// Each lot that is on its way, with the hours that are gone and left, and whether a limit is over. Not the old ones.
pub fn lots_said(book: &Book, clock: &YardClock, now: Moment) -> Vec<(String, bool)> {
    let mut said = Vec::new();
    for stack in stacks(book, clock) {
        if !stack.is_old(now) {
            let name = stack.yard.as_ref().map(|yard| yard_name(book, yard)).unwrap_or_default();
            let told = honey_told::stack(&stack, now, clock);
            said.push((w::lot(&w::stack(&name, stack.supers), &told.big), stack.is_over(now)));
        }
    }
    said
}
