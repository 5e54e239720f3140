//! Hives to open, and what none seen proves, against scipy (`tests/figures/samples.py`, `none_seen.py`), and the table that the
//! exact hypergeometric distribution gives at 95 % (Cannon & Roe 1982 tabulate the same numbers by their approximation).

use super::{close, percent, rows};
use beetle_almanac::almanac::quantity::Share;
use beetle_almanac::almanac::sample::{at_most, miss, to_open};

const YARDS: [(u32, [u32; 3]); 7] = [
    (10, [10, 10, 8]),
    (20, [19, 16, 10]),
    (30, [23, 19, 11]),
    (50, [31, 22, 12]),
    (100, [45, 25, 13]),
    (200, [51, 27, 13]),
    (1000, [57, 29, 14]),
];

#[test]
fn the_table_of_sample_sizes_at_95_percent() {
    for (hives, numbers) in YARDS {
        for (share, number) in [5.0, 10.0, 20.0].into_iter().zip(numbers) {
            let open = to_open(hives, percent(share), Share::FULL, percent(95.0)).unwrap();
            assert_eq!(open.opened, number, "{hives} hives, {share} %");
        }
    }
}

#[test]
fn the_published_chances_to_detect() {
    for (opened, hives, affected, chance) in
        [(25, 100, 10, 0.9521), (10, 50, 5, 0.6894), (8, 12, 2, 0.9091), (5, 20, 2, 0.4474)]
    {
        close(1.0 - miss(hives, affected, opened, Share::FULL), chance, 5e-5);
    }
}

type Yard = (u32, f64, f64, Vec<i64>, usize, f64);

#[test]
fn every_yard_of_up_to_200_hives_and_every_share_to_a_half_as_scipy_finds() {
    let yards: Vec<Yard> = rows(include_str!("../figures/samples.json"));
    assert_eq!(yards.len(), 1000);
    let (mut unreachable, mut compared) = (0, 0);
    for (hives, notice, sure, numbers, of, chance) in yards {
        assert_eq!(numbers.len(), 50);
        for (index, number) in numbers.iter().enumerate() {
            let share = percent(f64::from(u32::try_from(index).unwrap() + 1));
            let open = to_open(hives, share, percent(notice), percent(sure)).unwrap();
            if *number < 0 {
                assert!(!open.reached && open.opened == hives, "{hives}, {notice} %, {share:?}");
                unreachable += 1;
            } else {
                assert!(open.reached, "{hives}, {notice} %, {share:?}");
                assert_eq!(i64::from(open.opened), *number, "{hives}, {notice} %, {share:?}");
                assert!(open.before < sure / 100.0);
            }
            if index + 1 == of {
                close(open.chance, chance, 1e-8);
            }
            compared += 1;
        }
    }
    assert!(compared == 50_000 && unreachable > 1000, "{unreachable} of {compared}");
}

#[test]
fn what_none_seen_proves_as_a_table_of_all_numbers_says() {
    let looks: Vec<(u32, u32, f64, f64, u32)> = rows(include_str!("../figures/none_seen.json"));
    assert!(looks.len() > 2000);
    for (hives, opened, notice, sure, most) in looks {
        let found = at_most(hives, opened, percent(notice), percent(sure));
        assert_eq!(found, most, "{opened} of {hives}, {notice} %, {sure} %");
    }
}
