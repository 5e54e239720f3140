//! How many decimals a figure of a sum is shown with: the one place where the rounding of sums is settled.

/// Most decimals shown: what was typed is kept to six.
const MOST: u8 = 6;

/// Decimals with which `factor` is shown in `factor × times = sum`, so that whoever works the sum out by hand, from the
/// figures on the screen, gets the shown `sum` to its last digit.
///
/// `sum` is shown with `of_sum` decimals, rounded, or up where it is carried or bought; `factor` gets at least `least`
/// decimals, and as many more as that takes.
pub fn decimals(factor: f64, times: f64, least: u8, sum: f64, of_sum: u8, up: bool) -> u8 {
    let wanted = written(sum, of_sum, up);
    let mut decimals = least;
    while decimals < MOST {
        let by_hand = rounded(factor, decimals) * times;
        if (written(by_hand, of_sum, up) - wanted).abs() < 0.5 {
            break;
        }
        decimals += 1;
    }
    decimals
}

/// `value` in whole steps of its last decimal. Float noise is nothing to carry: it does not round up.
fn written(value: f64, decimals: u8, up: bool) -> f64 {
    let steps = value * 10_f64.powi(i32::from(decimals));
    if up { (steps - 1e-6).ceil() } else { (steps + 1e-9).round() }
}

fn rounded(value: f64, decimals: u8) -> f64 {
    written(value, decimals, false) / 10_f64.powi(i32::from(decimals))
}

#[cfg(test)]
mod tests {
    use super::{MOST, decimals, rounded, written};

    /// 10 mL and 400 mL in US fluid ounces of 29.573 529 562 5 mL.
    #[test]
    fn keeper_works_a_sum_in_ounces_out_by_hand_and_it_holds() {
        let ounces = |ml: f64| ml / 29.573_529_562_5;
        // 13 × 0.34 would be 4.42, and 4.4 is shown.
        assert_eq!(decimals(ounces(10.0), 13.0, 2, ounces(130.0), 2, false), 4);
        assert!((written(0.3381 * 13.0, 2, false) - 440.0).abs() < 0.5);
        // 10 × 13.5 and a tenth would be 148.5, and 148.8 is bought.
        assert_eq!(decimals(ounces(400.0), 11.0, 1, ounces(4400.0), 1, true), 3);
        assert!((written(13.526 * 11.0, 1, true) - 1488.0).abs() < 0.5);
        // In millilitres nothing is added.
        assert_eq!(decimals(10.0, 36.0, 1, 360.0, 0, false), 1);
        assert_eq!(decimals(400.0, 0.011, 0, 4.4, 2, true), 0);
    }

    /// Every capacity to 50 mL in steps of a twentieth, every number of traps to 60, shown in US fluid ounces.
    #[test]
    fn no_shown_sum_fails_by_hand() {
        for twentieths in 1..=1000 {
            let each = f64::from(twentieths) / 20.0 / 29.573_529_562_5;
            for traps in 1..=60_u32 {
                let times = f64::from(traps);
                for up in [false, true] {
                    let shown = decimals(each, times, 2, each * times, 1, up);
                    let by_hand = written(rounded(each, shown) * times, 1, up);
                    let holds = (by_hand - written(each * times, 1, up)).abs() < 0.5;
                    assert!(holds || shown == MOST, "{each} × {traps}");
                }
            }
        }
    }
}
