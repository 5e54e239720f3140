//! The door of a table that was kept elsewhere: read, matched by its own header, taken in, and brought once more.

use crate::doors::{Keeper, Verdict};
use crate::seeds::today;
use crate::support::{Unicode, pen};
use beetle_almanac::almanac::quantity::{Decimal, Share, TypedVolume, VolumeUnit};
use beetle_almanac::app::bench::yard::plain_trap;
use beetle_almanac::book::Book;
use beetle_almanac::book::write::{KindChoice, TableTerms};
use beetle_almanac::papers::records::Records;
use beetle_almanac::papers::table::Style;
use beetle_almanac::papers::table_in::lines::{self, Matching};
use beetle_almanac::papers::table_in::{Sheet, columns};

pub(crate) fn open(keeper: &Keeper, text: &str) -> Verdict {
    let Ok(sheet) = Sheet::read(text) else { return Ok(false) };
    let matching = Matching {
        header: columns::has_header(&sheet),
        columns: columns::guess(&sheet),
        order: None,
        per_cent: columns::in_per_cent(&sheet),
        yard: "Mill".to_owned(),
        words: Vec::new(),
    };
    let (lines, _) = lines::lines(&sheet, &matching, &Unicode);
    let holds = TypedVolume::new(Decimal::whole(20), VolumeUnit::Millilitre).map_err(|_| "no volume")?;
    let mut trap = plain_trap(holds, Share::HALF);
    "Trap".clone_into(&mut trap.name);
    let terms = TableTerms {
        kind: KindChoice::New(trap),
        boxes: vec![2],
        earlier: text.len().is_multiple_of(2),
        zone: "Europe/Berlin".to_owned(),
        today: today(),
    };
    let pen = pen("table", today());
    let mut book: Book = keeper.book().clone();
    let Ok(taken) = book.take_in_table(&pen, &lines, &terms, &Unicode) else { return Ok(false) };
    if let Some(wrong) = taken.entries.iter().find_map(|entry| entry.check().err()) {
        return Err(format!("a table brings an entry that no file may bring: {wrong:?}"));
    }
    let orphans = book.standing().orphans;
    let any = !taken.entries.is_empty();
    book.add(taken.entries);
    if book.standing().orphans > orphans {
        return Err("a table brings what the book does not hold".to_owned());
    }
    let again = book.take_in_table(&pen, &lines, &terms, &Unicode).map_err(|why| format!("{why:?}"))?;
    if again.entries.is_empty() { Ok(any) } else { Err("the same table brings something twice".to_owned()) }
}

pub(crate) fn seeds() -> Vec<String> {
    let keeper = Keeper::new();
    let table = |which: Records| which.table(keeper.book(), Style::default(), &|_| String::new());
    vec![
        table(Records::Hives),
        table(Records::Checks),
        "Yard;Hive;Date;Action;Level;Beetles;Notes\nMill;1;04/05/2026;topped up;40 %;5-19;\"a; b\"\n"
            .to_owned(),
        "hive\tday\tdid\n7\t14 July 2026\treplaced\n8\t2026-07-01\tlooked\n".to_owned(),
    ]
}
