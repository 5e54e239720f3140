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

/// A rate or a ratio: to the nearest, or outward for a lower (`Some(false)`) or an upper limit.
pub fn shown(value: f64, up: Option<bool>, write: Write) -> String {
    let decimals = decimals(value);
    let steps = 10f64.powi(i32::from(decimals));
    // Float noise moves no limit.
    let value = match up {
        None => value,
        Some(true) => (value * steps - 1e-9).ceil() / steps,
        Some(false) => (value * steps + 1e-9).floor() / steps,
    };
    write(value, decimals)
}

/// "0.92 to 2.8", "9 or more".
pub fn limits((low, high): (Option<f64>, Option<f64>), write: Write) -> String {
    let low = shown(low.unwrap_or(0.0), Some(false), write);
    w::range(&low, high.map(|high| shown(high, Some(true), write)).as_deref())
}

/// What was seen, to the nearest; as a span, rounded outward, where counts were ranges.
pub fn seen((low, high): (f64, Option<f64>), write: Write) -> String {
    let exact = high.is_some_and(|high| high <= low);
    let round = |up: bool| (!exact).then_some(up);
    let low = shown(low, round(false), write);
    w::range(&low, high.map(|high| shown(high, round(true), write)).as_deref())
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

/// The word and its sum. `of_hives` where hives are known.
pub fn trend(trend: &Trend, of_hives: bool, write: Write, percent: Write) -> (String, Vec<String>) {
    let nearest = |value: f64| shown(value, None, write);
    // A ratio that may be anything between two is told by its ends.
    let times = match trend.ratio {
        (Some(low), Some(high)) if high > 0.0 => Some(w::range(&nearest(low), Some(&nearest(high)))),
        (Some(low), None) if low > 0.0 => Some(w::range(&nearest(low), None)),
        _ => None,
    };
    let big = w::big(trend.word, times.as_deref());
    if trend.word == Word::NoData {
        return (big, vec![w::reads(Word::NoData).to_owned()]);
    }
    let [first, second] = w::WHICH;
    let mut lines = vec![side(first, &trend.first, write), side(second, &trend.second, write)];
    if let Some(times) = times.filter(|_| trend.limits.0.is_some()) {
        let hives = of_hives.then_some(trend.hives);
        lines.push(w::ratio(&times, &limits(trend.limits, write), hives));
        if trend.spread > 1.0 {
            lines.push(w::spread(&nearest(trend.spread)));
        } else if of_hives && trend.hives > 1 {
            lines.push(w::NO_SPREAD.to_owned());
        }
    }
    if let Some(chance) = trend.chance {
        lines.push(w::exact(&percent(chance, 1)));
    }
    if of_hives && trend.hives > 1 && trend.rose + trend.fell > 0 {
        lines.push(w::sign(trend.rose, trend.fell, &percent(trend.sign(), 1)));
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

    #[test]
    fn hives_are_told_with_their_spread_and_signs_and_nothing_is_told_of_nothing() {
        let pairs: Vec<_> = (0..8).map(|n| (stretch(40 + n, 100), stretch(10 + n, 100))).collect();
        let (big, lines) = trend(&compare(&pairs), true, write, percent);
        assert!(big.starts_with("Fewer: 0.3"), "{big}");
        assert!(
            lines.iter().any(|line| line.starts_with("0\u{a0}hives rose, 8\u{a0}hives fell")),
            "{lines:?}"
        );
        assert_eq!(trend(&compare(&[]), true, write, percent).0, "Nothing to compare yet");
        let none = trend(&compare(&[(stretch(40, 100), stretch(0, 100))]), true, write, percent);
        assert_eq!(none.0, "Fewer: none left in the traps");
        assert!(none.1.iter().all(|line| !line.contains('÷')), "{none:?}");
    }
}
