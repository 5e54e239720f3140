//! What trap work cost for each hive and season, and how many colonies it has to save to pay.

/// A season's cost, by what it is spread over. Each is none where what it is spread over is nothing or not known.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Cost {
    /// Of all.
    pub total: f64,
    /// Hives by the season: hive-days ÷ days of the season. A hive that died counts its days alone.
    pub hive_seasons: f64,
    /// For one hive over one season.
    pub each_hive: Option<f64>,
    /// For one trap on one day.
    pub each_trap_day: Option<f64>,
    /// For one kilogram of honey.
    pub each_kg: Option<f64>,
    /// Colonies whose loss has to be avoided for the work to pay, not rounded.
    pub break_even: Option<f64>,
}

/// Spreads `total`, in the keeper's currency, over the days that hives and traps stood, over the honey in kilograms, and
/// over the value of a colony.
pub fn cost(
    total: f64,
    (hive_days, season_days): (u32, u32),
    trap_days: u32,
    honey: Option<f64>,
    colony: Option<f64>,
) -> Cost {
    let over = |of: f64| (of > 0.0).then(|| total / of);
    let hive_seasons = if season_days > 0 { f64::from(hive_days) / f64::from(season_days) } else { 0.0 };
    Cost {
        total,
        hive_seasons,
        each_hive: over(hive_seasons),
        each_trap_day: over(f64::from(trap_days)),
        each_kg: honey.and_then(over),
        break_even: colony.and_then(over),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Worked by hand: 10 hives of 200 days and one that died after 100 are 10.5 hive-seasons; 420 ÷ 10.5 = 40.
    #[test]
    fn a_hive_that_died_counts_its_days_alone() {
        let found = cost(420.0, (2100, 200), 8400, Some(84.0), Some(150.0));
        assert_eq!((found.hive_seasons, found.each_hive), (10.5, Some(40.0)));
        assert_eq!(
            (found.each_trap_day, found.each_kg, found.break_even),
            (Some(0.05), Some(5.0), Some(2.8))
        );
    }

    #[test]
    fn nothing_is_spread_over_nothing() {
        let found = cost(420.0, (0, 200), 0, Some(0.0), None);
        assert_eq!(
            (found.each_hive, found.each_trap_day, found.each_kg, found.break_even),
            (None, None, None, None)
        );
        assert_eq!(cost(1.0, (10, 0), 0, None, None).each_hive, None);
        assert_eq!(cost(0.0, (10, 10), 1, None, Some(1.0)).break_even, Some(0.0));
    }
}
