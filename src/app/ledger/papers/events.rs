//! The events of the calendar file, in words.

use crate::almanac::day::Day;
use crate::app::wording::en_papers::calendar as w;
use crate::book::Book;
use crate::book::id::ThingId;
use crate::papers::calendar::{self, Event, Task, YardDay};

/// The yards that papers are about: the keeper's own that are open, or those of the demonstration while there is none.
pub fn yards(book: &Book) -> Vec<ThingId> {
    let open = || book.standing().open_yards().map(|(id, _)| id);
    let own = open().any(|id| !id.is_demo());
    open().filter(|id| own != id.is_demo()).cloned().collect()
}

/// Everything that is due from `today` on.
pub fn events(book: &Book, today: Day) -> Vec<Event> {
    let days = calendar::yard_days(book.standing(), &yards(book), today);
    days.iter().map(|day| event(book, day)).collect()
}

fn event(book: &Book, of: &YardDay) -> Event {
    let standing = book.standing();
    let name = standing.yards.get(&of.yard).map_or("", |yard| &yard.name);
    let mut lists = [Vec::new(), Vec::new(), Vec::new()];
    for item in &of.items {
        let at = match item.task {
            Task::Traps if item.due < of.day => 0,
            Task::Traps => 1,
            Task::Look => 2,
        };
        let tag = standing.hives.get(&item.hive).map_or("", |hive| &hive.tag);
        if let Some(list) = lists.get_mut(at) {
            list.push(tag);
        }
    }
    let [late, due, look] = &lists;
    let mut description = String::new();
    for (list, what) in lists.iter().zip([w::OVERDUE, w::DUE, w::LOOK]) {
        if !list.is_empty() {
            w::put_hives(&mut description, what, list);
        }
    }
    let summary = w::summary(name, late.len() + due.len(), look.len());
    Event { uid: of.uid(), day: of.day, summary, description }
}
