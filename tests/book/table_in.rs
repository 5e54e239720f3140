//! She brings the table she kept before: it is read, written in one act, taken back in one, and brings nothing twice.

use super::support::{Unicode, day, pen};
use beetle_almanac::almanac::day::Day;
use beetle_almanac::almanac::quantity::Share;
use beetle_almanac::almanac::stack::HiveSize;
use beetle_almanac::almanac::tally::CountRange;
use beetle_almanac::almanac::trap::{TrapForm, TrapKind, TrapSize};
use beetle_almanac::book::Book;
use beetle_almanac::book::demo::demo;
use beetle_almanac::book::entry::{Check, Did, Ending, Entry, What};
use beetle_almanac::book::write::{KindChoice, Refusal, TableLine, TableTaken, TableTerms};
use beetle_almanac::papers::records::Records;
use beetle_almanac::papers::table::Style;
use beetle_almanac::papers::table_in::cells::Order;
use beetle_almanac::papers::table_in::columns::{self, Column};
use beetle_almanac::papers::table_in::lines::{self, Matching, RowError};
use beetle_almanac::papers::table_in::{MOST_CELLS, Row, Sheet};

fn today() -> Day {
    day("2026-07-14")
}

fn kind() -> TrapKind {
    TrapKind {
        name: "Slim".to_owned(),
        form: TrapForm::BetweenFrame,
        reusable: true,
        capacity: None,
        inner: TrapSize::default(),
        outer: TrapSize::default(),
        fill: Share::HALF,
        max_days: 14,
        profile: Vec::new(),
        packs: Vec::new(),
    }
}

fn terms(book: &Book) -> TableTerms {
    let known = book.standing().kinds.keys().find(|kind| !kind.is_demo());
    TableTerms {
        kind: known.map_or_else(|| KindChoice::New(kind()), |kind| KindChoice::Known(kind.clone())),
        boxes: vec![2, 2],
        earlier: false,
        zone: "America/New_York".to_owned(),
        today: today(),
    }
}

fn guessed(sheet: &Sheet) -> Matching {
    Matching {
        header: columns::has_header(sheet),
        columns: columns::guess(sheet),
        order: None,
        per_cent: columns::in_per_cent(sheet),
        yard: String::new(),
        words: Vec::new(),
    }
}

fn read(text: &str) -> (Vec<TableLine>, Vec<(usize, RowError)>) {
    let sheet = Sheet::read(text).unwrap();
    lines::lines(&sheet, &guessed(&sheet), &Unicode)
}

fn taken(book: &Book, text: &str) -> TableTaken {
    let (lines, wrong) = read(text);
    assert_eq!(wrong, []);
    book.take_in_table(&pen("table", today()), &lines, &terms(book), &Unicode).unwrap()
}

fn add(book: &mut Book, text: &str) -> TableTaken {
    let taken = taken(book, text);
    for entry in &taken.entries {
        assert_eq!(entry.check(), Ok(()));
    }
    book.add(taken.entries.clone());
    assert_eq!(book.standing().orphans, 0);
    taken
}

/// Yard, tag, size, first day, boxes and traps of every hive.
fn hives(book: &Book) -> Vec<(String, String, HiveSize, Day, Vec<usize>)> {
    let standing = book.standing();
    let mut all = Vec::new();
    for (yard, now) in &standing.yards {
        for (_, hive) in standing.hives_of(yard, true) {
            let boxes = hive.boxes.iter().map(|part| part.traps.len()).collect();
            all.push((now.name.clone(), hive.tag.clone(), hive.size, hive.since, boxes));
        }
    }
    all
}

/// Yard, tag, day and all that was said of every visit that counts, sorted.
fn visits(book: &Book) -> Vec<String> {
    let mut all: Vec<String> = Vec::new();
    for (_, entry) in book.log().in_effect() {
        if let What::Check(Check { hive, traps, did, before, after, count, note }) = &entry.what {
            assert_eq!(*traps, None);
            let hive = &book.standing().hives[hive];
            let yard = &book.standing().yards[&hive.yard].name;
            all.push(format!(
                "{yard} {} {} {did:?} {before:?} {after:?} {count:?} {note:?}",
                hive.tag, entry.day
            ));
        }
    }
    all.sort();
    all
}

#[test]
fn our_own_tables_of_the_demonstration_come_back_to_the_same_hives_and_visits() {
    let mut was = Book::default();
    was.add(demo(today(), "America/New_York", -240, &Unicode).unwrap());
    for style in [Style::default(), Style { mark: true, guard: true }] {
        let table = |which: Records| which.table(&was, style, &|_: &Entry| String::new());
        let mut book = Book::default();
        let first = add(&mut book, &table(Records::Hives));
        assert_eq!((first.yards, first.hives, first.visits), (2, was.standing().hives.len(), 0));
        assert_eq!(hives(&book), hives(&was));
        let second = add(&mut book, &table(Records::Checks));
        assert_eq!((second.yards, second.hives, second.same), (0, 0, 0));
        assert!(second.visits > 90 && second.refused.is_empty());
        assert_eq!(visits(&book), visits(&was));
        assert_eq!(hives(&book), hives(&was));
        // Once more: nothing.
        for which in [Records::Hives, Records::Checks] {
            let again = add(&mut book, &table(which));
            assert_eq!((again.entries.len(), again.hives, again.visits), (0, 0, 0));
            assert!(again.same > 30);
        }
        // The other way round: a hive begins at its first visit.
        let mut late = Book::default();
        add(&mut late, &table(Records::Checks));
        assert_eq!(visits(&late), visits(&was));
        let first = late.standing().hives.values().map(|hive| hive.since).min();
        assert_eq!(
            first,
            was.log()
                .in_effect()
                .iter()
                .filter(|(_, e)| matches!(e.what, What::Check(_)))
                .map(|(_, e)| e.day)
                .min()
        );
    }
}

const OWN: &str = "Yard;Hive;Boxes;Traps per box;Date;Action;Oil found;Oil left;Beetles;Notes\n\
    Mill;1;2;2;04/05/2026;topped up;40 %;50 %;5-19;\"first; warm\"\n\
    Mill;2;2;2;14/05/2026;replaced;;50 %;0;\n\
    mill;1;;;28/05/2026;topped up;35 %;50 %;50+;\n\
    Mill;3;1;1;;;;;;\n";

#[test]
fn one_act_takes_the_whole_table_back() {
    let mut book = Book::default();
    let taken = add(&mut book, OWN);
    assert_eq!((taken.yards, taken.hives, taken.visits, taken.same), (1, 3, 3, 0));
    let bulk = &taken.entries[0].id;
    assert!(taken.entries.iter().all(|entry| entry.bulk.as_ref() == Some(bulk)));
    let hive = book.standing().hives.values().next().unwrap();
    assert_eq!((hive.since, hive.catches.len()), (day("2026-05-04"), 2));
    assert_eq!(book.standing().hives.values().map(|hive| hive.since).max(), Some(today()));
    let strike = book.strike(&pen("table", today()), today(), &book.together(bulk), &Unicode).unwrap();
    book.add(strike);
    assert!(book.standing().hives.is_empty() && book.standing().yards.is_empty());
    // What was taken back can be brought again.
    assert_eq!(add(&mut book, OWN).visits, 3);
}

#[test]
fn a_hive_of_the_book_gets_the_visits_and_its_first_day_moves_only_on_her_word() {
    let mut book = Book::default();
    add(&mut book, "yard,tag,since\nMill,1,2026-06-01\n");
    let (lines, _) = read(OWN);
    let mut terms = terms(&book);
    let taken = |book: &Book, terms: &TableTerms| {
        book.take_in_table(&pen("later", today()), &lines, terms, &Unicode).unwrap()
    };
    let since = day("2026-06-01");
    let before = taken(&book, &terms);
    assert_eq!(before.refused, [(2, Refusal::BeforeHive { since }), (4, Refusal::BeforeHive { since })]);
    assert_eq!((before.hives, before.visits, before.moved), (2, 1, 0));
    terms.earlier = true;
    let moved = taken(&book, &terms);
    assert_eq!((moved.hives, moved.visits, moved.moved, moved.refused.len()), (2, 3, 1, 0));
    let was = book.clone();
    let ids: Vec<_> = moved.entries.iter().map(|entry| entry.id.clone()).collect();
    book.add(moved.entries);
    assert_eq!((book.standing().orphans, book.standing().hives.len()), (0, 3));
    assert_eq!(book.standing().hives.values().next().unwrap().since, day("2026-05-04"));
    let undo = book.strike(&pen("later", today()), today(), &book.undone_with(&ids), &Unicode).unwrap();
    book.add(undo);
    assert_eq!(book.standing(), was.standing());
}

#[test]
fn every_row_that_cannot_be_read_is_named_with_its_reason() {
    let text = "yard,hive,date,did,level found,beetles,traps\n\
        Mill,1,2026-02-31,looked,,,\nMill,,2026-05-01,looked,,,\n,1,2026-05-01,looked,,,\n\
        Mill,1,,topped up,,,\nMill,1,2026-05-01,painted,,,\nMill,1,2026-05-01,looked,much,,\n\
        Mill,1,2026-05-01,looked,,some,\nMill,1,2026-05-01,replaced,,,2\nMill,1,2026-05-01,looked,,,,x\n\
        Mill,1,03/04/2026,looked,,,\n";
    let (read, wrong) = read(text);
    assert_eq!(read, []);
    let text = |text: &str| text.to_owned();
    let wanted = [
        RowError::Day(text("2026-02-31")),
        RowError::NoHive,
        RowError::NoYard,
        RowError::NoDay,
        RowError::Did(text("painted")),
        RowError::Level(text("much")),
        RowError::Count(text("some")),
        RowError::SomeTraps(text("2")),
        RowError::TooLong,
        RowError::WhichDay(text("03/04/2026")),
    ];
    for ((row, error), (number, wanted)) in wrong.iter().zip((2..).zip(wanted)) {
        assert_eq!((*row, error), (number, &wanted));
    }
    assert_eq!(wrong.len(), 10);
}

#[test]
fn a_row_longer_than_the_header_and_words_she_explains() {
    let sheet = Sheet::read("hive,date,did\n1,03/04/2026,painted\n2,04/04/2026,looked,and more\n").unwrap();
    let mut matching = guessed(&sheet);
    matching.yard = "Mill".to_owned();
    matching.order = Some(Order::MonthFirst);
    assert_eq!(lines::unknown_words(&sheet, &matching, 12), ["painted"]);
    matching.words = vec![("painted".to_owned(), Some(Did::GluedShut))];
    let (read, wrong) = lines::lines(&sheet, &matching, &Unicode);
    let work = read[0].work.as_ref().unwrap();
    assert_eq!((work.day, work.did), (day("2026-03-04"), Did::GluedShut));
    assert_eq!(wrong, [(3, RowError::TooLong)]);
    assert_eq!(
        sheet.rows[2],
        Row { number: 3, cells: ["2", "04/04/2026", "looked", "and more"].map(str::to_owned).to_vec() }
    );
    matching.columns[2] = Column::Skip;
    assert_eq!(lines::lines(&sheet, &matching, &Unicode).0[0].work.as_ref().unwrap().did, Did::AsFound);
}

#[test]
fn what_the_book_forbids_a_table_may_not_bring() {
    let mut book = Book::default();
    add(&mut book, "yard,tag,since,boxes,traps per box\nMill,1,2026-05-01,1,2\nMill,2,2026-05-01,1,0\n");
    let yard = book.standing().yards.keys().next().unwrap().clone();
    let hive = book.standing().hives.keys().next().unwrap().clone();
    let dead = What::HiveEnded { hive, how: Ending::Dead };
    let dead = book.about_yard(&pen("table", today()), day("2026-06-01"), today(), &yard, dead).unwrap();
    book.add(dead);
    let taken = taken(
        &book,
        "yard,hive,day,did\nMill,1,2026-05-20,topped up\nMill,1,2026-06-20,topped up\nMill,2,2026-06-20,topped up\n\
         Mill,2,2026-06-20,looked\nMill,2,2026-08-01,looked\n",
    );
    assert_eq!(taken.visits, 2);
    assert_eq!(
        taken.refused,
        [
            (3, Refusal::Ended { how: Ending::Dead, on: day("2026-06-01") }),
            (4, Refusal::NoTraps { wanting: 0 }),
            (6, Refusal::Future { today: today() }),
        ]
    );
    let many = (0..501).map(|n| format!("Big,h{n}")).collect::<Vec<_>>().join("\n");
    let (lines, _) = read(&["yard,hive\n", &many].concat());
    let refused = book.take_in_table(&pen("table", today()), &lines, &terms(&book), &Unicode);
    assert_eq!(refused, Err(Refusal::TooManyHives { most: 500 }));
}

#[test]
fn an_open_end_of_a_count_comes_back_open() {
    let mut book = Book::default();
    add(
        &mut book,
        "yard,hive,day,beetles_low,beetles_high\nMill,1,2026-05-20,50,\nMill,2,2026-05-20,,\nMill,3,2026-05-20,0,0\n",
    );
    let in_effect = book.log().in_effect();
    let counts = in_effect.into_iter().filter_map(|(_, entry)| match &entry.what {
        What::Check(check) => Some(check.count),
        _ => None,
    });
    let counts: Vec<_> = counts.collect();
    assert_eq!(counts, [CountRange::new(50, None).ok(), None, Some(CountRange::exact(0))]);
}

#[test]
fn an_open_end_stays_open_where_the_spreadsheet_cut_the_row_short() {
    let (lines, wrong) = read(
        "yard,hive,day,did,beetles,beetles high\nF,1,2026-07-01,look,50,\nF,2,2026-07-01,look,50\nF,3,2026-07-01,look,50,50\n",
    );
    assert_eq!(wrong, []);
    let counts: Vec<_> = lines.iter().map(|line| line.work.as_ref().unwrap().count).collect();
    let open = CountRange::new(50, None).ok();
    assert_eq!(counts, [open, open, CountRange::new(50, Some(50)).ok()]);
}

#[test]
fn a_sheet_with_cells_far_to_the_right_is_matched_as_far_as_columns_go() {
    let far = ",a".repeat(100_000);
    let text = ["yard,hive", &far, "\nF,1\nF,2", &far, "\nF,3", &",".repeat(100_000), "\n"].concat();
    let sheet = Sheet::read(&text).unwrap();
    assert_eq!(guessed(&sheet).columns.len(), MOST_CELLS);
    let (lines, wrong) = read(&text);
    assert_eq!(lines.iter().map(|line| line.row).collect::<Vec<_>>(), [2, 4]);
    assert_eq!(wrong, [(3, RowError::TooLong)]);
}

#[test]
fn the_days_her_hives_came_do_not_decide_how_her_visits_are_written() {
    let text = "yard,hive,since,day,did\nF,1,14/04/2026,05/06/2026,look\nF,2,03/04/2026,07/06/2026,look\n";
    let (lines, wrong) = read(text);
    assert_eq!(lines, []);
    let which = |text: &str| RowError::WhichDay(text.to_owned());
    assert_eq!(wrong, [(2, which("05/06/2026")), (3, which("07/06/2026"))]);
    let sheet = Sheet::read(text).unwrap();
    let matching = Matching { order: Some(Order::MonthFirst), ..guessed(&sheet) };
    let (lines, wrong) = lines::lines(&sheet, &matching, &Unicode);
    assert_eq!(wrong, []);
    let days: Vec<_> = lines.iter().map(|line| (line.since, line.work.as_ref().unwrap().day)).collect();
    let both = |since, visit| (Some(day(since)), day(visit));
    assert_eq!(days, [both("2026-04-14", "2026-05-06"), both("2026-04-03", "2026-07-06")]);
}
