//! What a season came to, counted once more from the entries of a backup by a script of its own
//! (`tests/figures/seasons.py`).

use super::papers::Tale;
use super::{day, rows};
use beetle_almanac::book::caught::all;
use beetle_almanac::book::review::Review;
use beetle_almanac::book::season::Season;

const SEASONS: &str = include_str!("../figures/seasons.json");

#[derive(serde::Deserialize)]
struct Figures {
    yard: String,
    from: String,
    to: String,
    visits: usize,
    skips: usize,
    median: Option<i32>,
    longest: Option<i32>,
    gaps: usize,
    did: [usize; 6],
    not_counted: usize,
    not_read: usize,
    placed: usize,
    counts: usize,
    low: u32,
    high: Option<u32>,
    trap_days: u32,
    left_out: usize,
    limits: Option<(f64, Option<f64>)>,
    new: usize,
    dead: usize,
    moved_in: usize,
    moved_out: usize,
}

#[test]
fn a_script_counts_the_same_from_the_entries() {
    let tale = Tale::first();
    let caught = all(&tale.book);
    let (mut visits, mut limits, mut left_out, mut placed) = (0, 0, 0, 0);
    for row in rows::<Figures>(SEASONS) {
        // A backup gives the demonstration another name.
        let name = row.yard.replace("invented", "demo");
        let yard = tale.book.standing().yards.keys().find(|id| id.to_string() == name).expect("the yard");
        let season = Season::of(&tale.book, yard, day(&row.from), day(&row.to));
        let figures = &season.yard;
        let at = format!("{name} from {} to {}", row.from, row.to);
        assert_eq!((figures.visits, figures.skips), (row.visits, row.skips), "{at}");
        assert_eq!(figures.rhythm(), row.median.zip(row.longest), "{at}");
        assert_eq!((figures.gaps.len(), figures.did), (row.gaps, row.did), "{at}");
        assert_eq!((figures.not_counted, figures.not_read), (row.not_counted, row.not_read), "{at}");
        assert_eq!(season.placed, row.placed, "{at}");
        let review = Review::of(&caught, yard, day(&row.from), day(&row.to));
        let sum = review.both.sums.1;
        assert_eq!((review.counts().1, sum.trap_days), (row.counts, row.trap_days), "{at}");
        assert_eq!((sum.count.low(), sum.count.high()), (row.low, row.high), "{at}");
        assert_eq!(review.both.straddling, row.left_out, "{at}");
        let near = |one: f64, other: f64| (one - other).abs() < 1e-6 * other.max(1.0);
        match (review.rates().1, row.limits) {
            (Some(rate), Some((low, high))) => {
                assert!(near(rate.limits.0, low), "{at}");
                assert_eq!(rate.limits.1.is_some(), high.is_some(), "{at}");
                assert!(rate.limits.1.zip(high).is_none_or(|(one, other)| near(one, other)), "{at}");
                limits += 1;
            }
            (None, None) => {}
            _ => panic!("{at}: said by one of the two alone"),
        }
        left_out += row.left_out;
        assert_eq!((season.new, season.ended[0]), (row.new, row.dead), "{at}");
        assert_eq!((season.moved_in, season.moved_out), (row.moved_in, row.moved_out), "{at}");
        let of_hives: usize = season.hives.iter().map(|(_, of)| of.visits).sum();
        assert_eq!(of_hives, row.visits, "{at}");
        visits += row.visits;
        placed += row.placed;
    }
    assert!(placed > 0 && visits > 150 && limits > 0 && left_out > 0, "{visits} {limits} {left_out}");
}
