//! The yard's table of counts, for a spreadsheet to work out anew (`tests/bench/sheet.py`): the lines of the invented
//! operation, and what the almanac makes of them. `cargo run --example decisions -- FOLDER` reads FOLDER/operation.json and
//! writes FOLDER/table.json. A count belongs to the year of its day here, which a spreadsheet can work out; the page asks in
//! which days each trap's beetles can have been caught.
#![allow(clippy::unwrap_used, clippy::expect_used)]

use beetle_almanac::almanac::day::Day;
use beetle_almanac::almanac::quantity::{Decimal, Share};
use beetle_almanac::almanac::sample::to_open;
use beetle_almanac::almanac::trend::Stretch;
use beetle_almanac::book::Book;
use beetle_almanac::book::caught::{self, Days};
use beetle_almanac::book::entry::What;
use beetle_almanac::papers::backup;
use serde_json::{Value, json};
use std::collections::BTreeMap;
use std::fs;
use std::path::PathBuf;
use std::time::Instant;

/// Expected shares of hives with beetles, in per cent.
const SHARES: [u32; 3] = [5, 10, 20];
const SEASONS: i32 = 10;

fn main() {
    let folder = PathBuf::from(std::env::args().nth(1).expect("the folder to read from and write to"));
    let text = fs::read_to_string(folder.join("operation.json")).expect("the operation");
    let file = backup::open(&text).expect("a backup");
    let mut book = Book::default();
    book.add(file.entries);
    let today = file.made.day();
    let begun = Instant::now();
    let table = table(&book, today);
    eprintln!("the table of counts, worked out here: {:.1} ms", begun.elapsed().as_secs_f64() * 1000.0);
    fs::write(folder.join("table.json"), table.to_string()).expect("a file written");
}

fn table(book: &Book, today: Day) -> Value {
    let hives: Vec<_> = book.standing().hives.keys().cloned().collect();
    let place = |hive| hives.iter().position(|known| known == hive).expect("a hive") + 1;
    let number = |day: Day| day.days_since(Day::FIRST);
    let caught = caught::all(book);
    // Any work is a line; the count of beetles stands at the one that brought it.
    let mut lines = Vec::new();
    let mut last = BTreeMap::new();
    for (root, entry) in book.log().in_effect() {
        let What::Check(check) = &entry.what else { continue };
        last.insert(place(&check.hive), entry.day);
        let count = caught.iter().find(|count| count.entry == *root);
        lines.push(json!([
            place(&check.hive),
            number(entry.day),
            count.map(|count| count.count.low()),
            count.map_or(0, |count| count.trap_days),
        ]));
    }
    let seasons: Vec<Days> = (0..SEASONS)
        .rev()
        .map(|season| Days { from: today.plus(-365 * (season + 1) + 1), to: today.plus(-365 * season) })
        .collect();
    let mut known = Vec::new();
    for hive in &hives {
        let last = *last.get(&place(hive)).expect("work at every hive");
        let mut row = vec![f64::from(number(last)), f64::from(today.days_since(last))];
        for season in &seasons {
            let own =
                caught.iter().filter(|one| one.hive == *hive && (season.from..=season.to).contains(&one.day));
            let sum = own.fold(Stretch::NONE, |sum, one| sum.plus(one.stretch()));
            let rate = sum.rate();
            row.push(f64::from(sum.count.low()));
            row.push(f64::from(sum.trap_days));
            row.push(rate.map_or(-1.0, |rate| rate.limits.0));
            row.push(rate.map_or(-1.0, |rate| rate.limits.1.expect("counted to the last one")));
        }
        known.push(row);
    }
    let share = |percent| Share::from_percent(Decimal::whole(percent)).expect("a share");
    let all = u32::try_from(hives.len()).expect("a hundred");
    let opened =
        SHARES.map(|percent| to_open(all, share(percent), Share::FULL, share(95)).expect("enough").opened);
    json!({
        "lines": lines,
        "hives": (1..=hives.len()).collect::<Vec<_>>(),
        "seasons": seasons.iter().map(|season| [number(season.from), number(season.to)]).collect::<Vec<_>>(),
        "today": number(today),
        "shares": SHARES,
        "known": known,
        "to_open": opened,
    })
}
