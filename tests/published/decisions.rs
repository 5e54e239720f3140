//! The worked examples of this project's own map of the job (sections C16–C20, C25, C26), computed there by a script.

use super::{close, decimal, mm, percent};
use beetle_almanac::almanac::cover::{Guard, cover};
use beetle_almanac::almanac::freezer::batches;
use beetle_almanac::almanac::ground::{Ring, area, rows};
use beetle_almanac::almanac::mesh::{opening, stops};
use beetle_almanac::almanac::quantity::Share;
use beetle_almanac::almanac::sample::{at_most, miss, to_open};

#[test]
fn c16_hives_to_open_to_be_95_percent_sure() {
    for (share, notice, yards) in [
        (10.0, 100.0, &[(10, 10), (20, 16), (40, 21), (100, 25)][..]),
        (10.0, 85.0, &[(20, 19), (40, 25), (100, 30)]),
        (20.0, 100.0, &[(20, 10), (40, 12), (100, 13)]),
        (20.0, 85.0, &[(20, 12), (40, 14), (100, 16)]),
    ] {
        for (hives, number) in yards {
            let open = to_open(*hives, percent(share), percent(notice), percent(95.0)).unwrap();
            assert!(open.reached && open.opened == *number, "{hives}: {open:?}");
        }
    }
}

#[test]
fn c16_five_hives_are_not_enough_and_looking_twice_is() {
    let open = to_open(5, percent(10.0), percent(85.0), percent(95.0)).unwrap();
    assert!(!open.reached && open.opened == 5 && open.affected == 1);
    close(open.chance, 0.85, 1e-9);
    close(open.twice, 1.0 - 0.15 * 0.15, 1e-9);
}

#[test]
fn c17_none_seen() {
    for (hives, opened, notice, most) in
        [(40, 14, 100.0, 6), (40, 14, 85.0, 7), (100, 10, 100.0, 24), (10, 10, 85.0, 1)]
    {
        assert_eq!(at_most(hives, opened, percent(notice), percent(95.0)), most, "{opened} of {hives}");
    }
}

/// One state's least number, 5 % and at least 10, finds a problem of 10 % in 100 hives in two of three cases.
#[test]
fn c17_a_legal_floor_is_no_proof() {
    close(1.0 - miss(100, 10, 10, Share::FULL), 0.67, 0.005);
}

/// The map counted squares; a footprint of 42 by 50 cm gives its figures.
#[test]
fn c18_ground_round_one_hive_and_ten() {
    let ring = Ring { width: mm(420.0), length: mm(500.0), reach: mm(900.0) };
    close(ring.area(), 4.41, 0.005);
    for (apart, square_metres, within) in [(600.0, 16.8, 0.05), (900.0, 23.0, 0.1), (3000.0, 44.1, 0.05)] {
        close(area(&rows(10, 10, mm(apart), mm(0.0)), &ring), square_metres, within);
    }
}

#[test]
fn c20_a_box_of_eight_comes_off() {
    let cover = cover(22, 16, 8).unwrap();
    close(cover.share, 0.69, 0.005);
    assert_eq!((cover.guard, cover.off), (Guard::Little, Some(1)));
    close(cover.then, 1.38, 0.005);
}

#[test]
fn c25_160_frames_through_a_freezer_for_48() {
    let freezer = batches(160, 48, 24, 48).unwrap();
    assert_eq!((freezer.batches, freezer.days, freezer.last), (4, 12, 16));
}

#[test]
fn c26_eight_to_the_inch_lets_beetles_in_and_window_screen_does_not() {
    let eight = opening(decimal(8.0), mm(0.43)).unwrap();
    close(eight.millimetres(), 2.7, 0.05);
    assert!(!stops(eight) && stops(mm(2.0)) && !stops(mm(2.1)));
    // Window screen: 18 by 16 wires of 0.28 mm.
    for (count, millimetres) in [(18.0, 1.1), (16.0, 1.3)] {
        let screen = opening(decimal(count), mm(0.28)).unwrap();
        close(screen.millimetres(), millimetres, 0.05);
        assert!(stops(screen));
    }
}
