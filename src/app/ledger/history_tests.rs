use super::{Counts, days, lines};
use crate::app::ledger::words::tests::{Plain, book, pen, today};
use crate::book::entry::What;
use crate::book::id::Writer;
use crate::book::write::Pen;

#[test]
fn the_newest_day_comes_first_and_every_line_is_there_once() {
    let book = book();
    let lines = lines(&book, None);
    assert_eq!(lines.len(), book.log().len());
    assert!(lines.windows(2).all(|pair| pair[0].entry.day >= pair[1].entry.day));
    let days: Vec<_> = days(&lines).collect();
    assert!(days.windows(2).all(|pair| pair[0][0].entry.day > pair[1][0].entry.day));
    assert_eq!(days.iter().map(|lines| lines.len()).sum::<usize>(), lines.len());
}

#[test]
fn a_yard_or_a_hive_alone() {
    let book = book();
    let yard = book.standing().yards.keys().next().unwrap();
    let of_yard = lines(&book, Some(yard));
    assert!(
        of_yard.len() < book.log().len() && of_yard.iter().all(|line| line.entry.yard.as_ref() == Some(yard))
    );
    let hive = book.standing().hives_of(yard, true).find(|(_, hive)| hive.tag == "5").unwrap().0;
    let of_hive = lines(&book, Some(hive));
    // Brought, walked four times, one more box.
    assert_eq!(of_hive.len(), 6);
}

#[test]
fn a_struck_bulk_stays_in_its_place_and_says_how_many_come_back() {
    let mut book = book();
    let hive = book.log().entries().find(|entry| matches!(entry.what, What::Hive { .. })).unwrap().id.clone();
    let bulk = book.together(&hive);
    let strike = book.strike(&pen(), today(), &bulk, &Plain).unwrap();
    let by = strike[0].id.clone();
    let before = lines(&book, None).len();
    book.add(strike);
    let after = lines(&book, None);
    assert_eq!(after.len(), before);
    let line = after.iter().find(|line| line.entry.id == hive).unwrap();
    assert_eq!(
        (line.together, &line.counts),
        (bulk.len(), &Counts::Struck { by: by.clone(), lines: bulk.len() })
    );
    let again = book.strike(&pen(), today(), &[by], &Plain).unwrap();
    book.add(again);
    assert!(lines(&book, None).iter().all(|line| line.counts == Counts::Yes));
}

/// The earlier start stands, whichever phone wrote last, and the history says the same.
#[test]
fn of_two_starts_moved_back_on_two_phones_the_one_that_stands_is_shown_as_counting() {
    for (first, second) in [(9, 4), (4, 9)] {
        let mut book = book();
        let hive = book.standing().hives.keys().next().unwrap().clone();
        let since = book.standing().hives[&hive].since;
        let mut both = Vec::new();
        for (writer, back) in [("aa", first), ("zz", second)] {
            let pen = Pen { writer: Writer::new(writer).unwrap(), ..pen() };
            both.extend(book.hive_since(&pen, since.plus(-back), today(), &hive).unwrap());
        }
        book.add(both);
        let stands = book.standing().hives[&hive].since;
        assert_eq!(stands, since.plus(-9));
        let starts: Vec<_> = lines(&book, Some(&hive))
            .into_iter()
            .filter(|line| matches!(line.entry.what, What::Hive { .. }))
            .map(|line| (line.entry.day, line.counts))
            .collect();
        let shown = [(since, Counts::Corrected), (since.plus(-4), Counts::Corrected), (stands, Counts::Yes)];
        assert_eq!(starts, shown);
    }
}
