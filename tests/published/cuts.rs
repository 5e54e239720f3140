//! Pieces out of sheets and frames of bees for a split, against what Python found by laying and trying one after the other
//! (`tests/figures/sheets.py`, `splits.py`).

use super::{close, decimal, mm, percent, rows};
use beetle_almanac::almanac::closing::{Cut, cut, packs, sealant};
use beetle_almanac::almanac::divide::{Divide, divide};
use beetle_almanac::almanac::quantity::{Decimal, Share};

/// Unit, sheet, piece, pieces, need, sheets.
type Laid = (String, (f64, f64), (f64, f64), u32, u32, i64);

#[test]
fn pieces_out_of_800_sheets_are_as_many_as_were_laid() {
    let all: Vec<Laid> = rows(include_str!("../figures/sheets.json"));
    assert_eq!(all.len(), 800);
    let (mut turned, mut none) = (0, 0);
    for (unit, sheet, piece, pieces, need, sheets) in all {
        let side = |side: f64| mm(if unit == "mm" { side } else { side / 8.0 * 25.4 });
        let sides = |(one, other): (f64, f64)| (side(one), side(other));
        let found = cut(sides(sheet), sides(piece));
        assert_eq!(found.map_or(0, |cut| cut.pieces()), pieces, "{unit} {sheet:?} {piece:?}");
        let bought = found.and_then(|cut| packs(need, cut.pieces()));
        assert_eq!(bought.map_or(-1, i64::from), sheets);
        turned += u32::from(found.is_some_and(|cut| cut.turned));
        none += u32::from(found.is_none());
    }
    assert!(turned > 100 && none > 20, "{turned} {none}");
}

/// Bees, comb that stays, comb that goes, share back, take, new, old, wants, enough.
type Split = (i64, u32, u32, i64, u32, f64, f64, u32, bool);

#[test]
fn the_bees_for_600_splits_are_those_found_by_trying() {
    let all: Vec<Split> = rows(include_str!("../figures/splits.json"));
    assert_eq!(all.len(), 600);
    let mut go = 0;
    for (bees, stays, goes, back, take, new, old, wants, enough) in all {
        let of = Divide {
            bees: Decimal::from_millionths(bees * 10_000).unwrap(),
            stays,
            goes,
            back: Share::from_percent(Decimal::from_millionths(back * 10_000).unwrap()).unwrap(),
        };
        let found = divide(&of).unwrap();
        assert_eq!((found.take, found.wants, found.enough), (take, wants, enough), "{of:?}");
        close(found.new, new, 1e-8);
        close(found.old, old, 1e-8);
        go += u32::from(enough);
    }
    assert!(go > 100, "{go}");
}

/// Worked by hand.
#[test]
fn a_row_that_just_fits_is_not_lost_and_a_reserve_is_ten_per_cent() {
    let inch = |inches: f64| mm(inches * 25.4);
    let found = cut((inch(12.0), inch(12.0)), (inch(3.0), inch(0.1))).unwrap();
    assert_eq!(found, Cut { along: 4, across: 120, turned: false });
    assert_eq!(cut((mm(10.0), mm(10.0)), (mm(0.0), mm(5.0))), None);
    let seal = sealant(6000.0, percent(10.0), Some(mm(2200.0)));
    close(seal.with_reserve, 6600.0, 1e-9);
    assert_eq!(seal.tubes, Some(3));
    assert_eq!(sealant(0.0, percent(10.0), Some(mm(2200.0))).tubes, Some(0));
    assert_eq!(sealant(1.0, percent(10.0), None).tubes, None);
    let all = Divide { bees: decimal(10.0), stays: 10, goes: 5, back: Share::FULL };
    assert_eq!(divide(&all), None);
}
