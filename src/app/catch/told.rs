//! Two stretches of catch in words, with the sum under them.

use crate::almanac::trend::{Rate, Stretch, Trend, Word};
use crate::app::wording::en_catch as w;

/// Writes a number with at most so many decimals.
pub type Write = fn(f64, u8) -> String;

/// Decimals that tell something of a rate or a ratio: two digits that count, whatever its size.
fn decimals(value: f64) -> u8 {
    if value >= 10.0 {
        0
    } else if value >= 1.0 {
        1
    } else {
        2
    }
}

/// A rate or a ratio: to the nearest, or outward for a lower (`Some(false)`) or an upper end (`Some(true)`).
fn rounded(value: f64, up: Option<bool>) -> f64 {
    let steps = 10f64.powi(i32::from(decimals(value)));
    // Float noise moves no end.
    match up {
        None => value,
        Some(true) => (value * steps - 1e-9).ceil() / steps,
        Some(false) => (value * steps + 1e-9).floor() / steps,
    }
}

/// As [`rounded`], in words.
pub fn shown(value: f64, up: Option<bool>, write: Write) -> String {
    write(rounded(value, up), decimals(value))
}

/// The ends of what was seen, as they are shown everywhere: of a count to the nearest, of a range outward.
pub fn ends((low, high): (f64, Option<f64>)) -> (f64, Option<f64>) {
    let round = |up: bool| (high != Some(low)).then_some(up);
    (rounded(low, round(false)), high.map(|high| rounded(high, round(true))))
}

/// "0.92 to 2.8", "9 or more".
pub fn limits((low, high): (Option<f64>, Option<f64>), write: Write) -> String {
    let low = shown(low.unwrap_or(0.0), Some(false), write);
    w::range(&low, high.map(|high| shown(high, Some(true), write)).as_deref())
}

/// What was seen, as [`ends`] rounds it.
pub fn seen(of: (f64, Option<f64>), write: Write) -> String {
    let (low, high) = ends(of);
    let nearest = |value: f64| shown(value, None, write);
    w::range(&nearest(low), high.map(nearest).as_deref())
}

/// "12 (9.2 to 15.5)".
pub fn rate(rate: &Rate, write: Write) -> (String, String) {
    (seen(rate.seen, write), limits((Some(rate.limits.0), rate.limits.1), write))
}

fn beetles(stretch: &Stretch, write: Write) -> String {
    let each = |count: u32| write(f64::from(count), 0);
    let range = w::range(&each(stretch.count.low()), stretch.count.high().map(each).as_deref());
    [range.as_str(), if range == "1" { " beetle" } else { " beetles" }].concat()
}

/// "First: 60 beetles in 500\u{a0}trap-days = 12 for 100 (9.2 to 15.5)".
pub fn side(which: &str, stretch: &Stretch, write: Write) -> String {
    let said = stretch.rate().map(|known| {
        let (seen, limits) = rate(&known, write);
        w::rate(&seen, &limits)
    });
    w::side(which, &beetles(stretch, write), stretch.trap_days, said.as_deref().unwrap_or_default())
}

/// Smallest chance that is told by its number, with the one decimal it has.
const LEAST_CHANCE: f64 = 0.001;

/// A chance of what was seen, which is never none: "21.5 %", "under 0.1 %".
pub fn chance(chance: f64, percent: Write) -> String {
    let said = percent(chance.max(LEAST_CHANCE), 1);
    if chance < LEAST_CHANCE { w::under(&said) } else { said }
}

/// The word and its sum. `of_hives` where hives are known.
pub fn trend(trend: &Trend, of_hives: bool, write: Write, percent: Write) -> (String, Vec<String>) {
    let nearest = |value: f64| shown(value, None, write);
    // A ratio that may be anything between two is told by its ends.
    let times = match trend.ratio {
        (Some(low), high) if high.unwrap_or(low) > 0.0 => Some(seen((low, high), write)),
        _ => None,
    };
    let big = w::big(trend.word, times.as_deref());
    if trend.word == Word::NoData {
        return (big, vec![w::reads(Word::NoData).to_owned()]);
    }
    let [first, second] = w::WHICH;
    let mut lines = vec![side(first, &trend.first, write), side(second, &trend.second, write)];
    if of_hives {
        lines.insert(0, w::only_both(trend.hives));
    }
    if let Some(times) = times.filter(|_| trend.limits.0.is_some()) {
        // Of one hive alone the weights cancel out.
        let weighted = of_hives && trend.hives > 1;
        lines.push(w::ratio(&times, &limits(trend.limits, write), weighted));
        if trend.spread > 1.0 {
            lines.push(w::spread(&nearest(trend.spread)));
        } else if weighted {
            lines.push(w::NO_SPREAD.to_owned());
        }
    }
    if let Some(of) = trend.chance {
        if trend.limits.0.is_none() && trend.spread > 1.0 {
            lines.push(w::divided(&nearest(trend.spread)));
        }
        lines.push(w::exact(&chance(of, percent)));
    }
    if of_hives && trend.hives > 1 && trend.rose + trend.fell > 0 {
        lines.push(w::sign(trend.rose, trend.fell, &chance(trend.sign(), percent)));
    }
    // Where limits and test part, the more careful of the two decides.
    lines.push((if trend.mixed { w::MIXED } else { w::reads(trend.word) }).to_owned());
    if (of_hives && trend.hives == 1) || (!of_hives && trend.spread <= 1.0) {
        lines.push(w::ALONE.to_owned());
    }
    (big, lines)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::almanac::tally::CountRange;
    use crate::almanac::trend::{compare, compare_sums};

    fn write(value: f64, decimals: u8) -> String {
        let text = format!("{value:.*}", usize::from(decimals));
        if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.').to_owned() } else { text }
    }

    fn percent(share: f64, decimals: u8) -> String {
        [&write(share * 100.0, decimals), " %"].concat()
    }

    fn stretch(count: u32, trap_days: u32) -> Stretch {
        Stretch { count: CountRange::exact(count), trap_days }
    }

    #[test]
    fn limits_are_rounded_outward_and_hold_what_they_are_of() {
        assert_eq!(shown(2.7961, Some(true), write), "2.8");
        assert_eq!(shown(0.9251, Some(false), write), "0.92");
        assert_eq!(shown(0.9201, Some(true), write), "0.93");
        assert_eq!(shown(12.4, Some(false), write), "12");
        assert_eq!(shown(0.3, Some(true), write), "0.3");
    }

    /// Of 1 to 40 beetles, alone and as ranges, in 1 to 60 trap-days: no span is narrower than what it is of, and a count
    /// is told by one number, the nearest.
    #[test]
    fn spans_are_rounded_outward_and_counts_to_the_nearest_wherever_they_are_shown() {
        for days in 1..=60 {
            for low in 0..=40_u32 {
                for more in [0, 1, 3] {
                    let each = |count: u32| f64::from(count) * 100.0 / f64::from(days);
                    let (least, most) = (each(low), each(low + more));
                    let (down, up) = ends((least, Some(most)));
                    let up = up.unwrap();
                    if more == 0 {
                        assert_eq!((down, up), (least, most));
                    } else {
                        assert!(down <= least + 1e-9 && up >= most - 1e-9, "{least} {most}: {down} {up}");
                        assert!(least - down < 1.0 && up - most < 1.0);
                        // Written once more, nothing moves.
                        assert_eq!(shown(down, None, write), shown(least, Some(false), write));
                        assert_eq!(shown(up, None, write), shown(most, Some(true), write));
                    }
                }
            }
        }
        assert_eq!(seen((17.2, Some(19.3)), write), "17 to 20");
        assert_eq!(seen((17.7, None), write), "17 or more");
        assert_eq!(seen((17.7, Some(17.7)), write), "18");
        assert_eq!(seen((9.93, Some(9.96)), write), "9.9 to 10");
        // The ratio of ranges as well.
        let of = |low, high| Stretch { count: CountRange::new(low, high).unwrap(), trap_days: 700 };
        let told = trend(&compare_sums(of(119, Some(119)), of(20, Some(39)), 1.0), false, write, percent);
        assert_eq!(told.0, "Fewer: 0.16 to 0.33 times as many");
    }

    /// All low or all high the hives agree; half of them low before and high after, they do not.
    #[test]
    fn ranges_that_may_hide_what_both_ends_say_are_told_as_the_reason() {
        let range = |low, high| Stretch { count: CountRange::new(low, Some(high)).unwrap(), trap_days: 100 };
        let hives = [(range(30, 60), range(6, 13)); 4];
        let (big, lines) = trend(&compare(&hives), true, write, percent);
        assert_eq!(big, "Can’t tell yet");
        assert!(lines.iter().any(|line| line == w::MIXED), "{lines:?}");
        let narrow = [(range(38, 42), range(8, 9)); 4];
        let (big, lines) = trend(&compare(&narrow), true, write, percent);
        assert!(big.starts_with("Fewer") && lines.iter().all(|line| line != w::MIXED), "{lines:?}");
    }

    #[test]
    fn sixty_and_ninety_six_are_told_with_their_sum() {
        let (big, lines) =
            trend(&compare_sums(stretch(60, 500), stretch(96, 500), 3.0), false, write, percent);
        assert_eq!(big, "Can’t tell yet");
        assert_eq!(lines[0], "First: 60 beetles in 500\u{a0}trap-days =\u{a0}12 for 100 (9.1 to 16)");
        assert_eq!(lines[2], "Second ÷ first =\u{a0}1.6, 95\u{a0}% limits 0.91 to 2.8");
        let (big, lines) =
            trend(&compare_sums(stretch(60, 500), stretch(96, 500), 1.0), false, write, percent);
        assert_eq!(big, "More: 1.6 times as many");
        assert!(lines.iter().any(|line| line == w::ALONE));
    }

    /// 900 and 20 beetles are as far apart by chance in fewer than 1 of 10^200 cases, and so are 20 000 and none.
    #[test]
    fn a_chance_that_is_not_none_is_never_told_as_none() {
        let said = |first, second| {
            trend(&compare_sums(stretch(first, 500), stretch(second, 500), 1.0), false, write, percent).1
        };
        for lines in [said(900, 20), said(20_000, 0)] {
            let exact = lines.iter().find(|line| line.starts_with("Exact test")).unwrap();
            assert!(exact.contains("in under 0.1 % of cases"), "{exact}");
        }
        assert_eq!(
            [0.2149, 0.001, 0.00099].map(|of| chance(of, percent)),
            ["21.5 %", "0.1 %", "under 0.1 %"]
        );
        let pairs = [(stretch(40, 100), stretch(10, 100)); 12];
        let lines = trend(&compare(&pairs), true, write, percent).1;
        assert!(lines.iter().any(|line| line.contains("as uneven in under 0.1 % of cases")), "{lines:?}");
    }

    #[test]
    fn hives_are_told_with_their_spread_and_signs_and_nothing_is_told_of_nothing() {
        let pairs: Vec<_> = (0..8).map(|n| (stretch(40 + n, 100), stretch(10 + n, 100))).collect();
        let (big, lines) = trend(&compare(&pairs), true, write, percent);
        assert!(big.starts_with("Fewer: 0.3"), "{big}");
        assert!(
            lines.iter().any(|line| line.starts_with("0\u{a0}hives rose, 8\u{a0}hives fell")),
            "{lines:?}"
        );
        assert_eq!(lines[0], "Only hives that fished in both times (8\u{a0}hives):");
        assert!(lines[3].contains("(weighted hive by hive, not the two sums divided), 95"), "{lines:?}");
        // Traps fished elsewhere in the second: who divides the sums finds 0.23.
        let uneven = [(stretch(10, 100), stretch(48, 600)), (stretch(480, 600), stretch(64, 100))];
        let (sums, told) =
            (trend(&compare(&uneven), true, write, percent), compare(&uneven).ratio.0.unwrap());
        assert!(sums.1[3].starts_with("Second ÷ first =\u{a0}0.8 (weighted"), "{sums:?}");
        assert!((told - 0.8).abs() < 1e-9 && (112.0 / 700.0) / (490.0 / 700.0) < 0.3);
        // Of one hive it is the plain division, and says nothing else.
        let one = trend(&compare(&[(stretch(40, 100), stretch(10, 100))]), true, write, percent).1;
        assert!(one[3].starts_with("Second ÷ first =\u{a0}0.25, 95"), "{one:?}");
        assert_eq!(trend(&compare(&[]), true, write, percent).0, "Nothing to compare yet");
        let none = trend(&compare(&[(stretch(40, 100), stretch(0, 100))]), true, write, percent);
        assert_eq!(none.0, "Fewer: none left in the traps");
        assert!(none.1.iter().all(|line| !line.contains('÷')), "{none:?}");
    }
}
