//! Minutes of a trip, and what is left for another day where they do not suffice.

/// What a hive waits for, the most pressing first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Pressing {
    /// Larvae were seen in it.
    Larvae,
    /// Its trap work is overdue, or a trap does not fish.
    Overdue,
    /// Its trap work is due on the day.
    Due,
    /// Anything else, such as a second look.
    Rest,
}

/// A hive on the way.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stop {
    /// Place of its yard among the yards.
    pub yard: usize,
    /// What it waits for.
    pub pressing: Pressing,
}

/// The minutes of a trip.
#[derive(Clone, Debug, PartialEq)]
pub struct Route {
    /// Ways and setting up in the yards that are gone to.
    pub ways: f64,
    /// At the hives.
    pub hives: f64,
    /// Places of the hives that are left, the least pressing and farthest first.
    pub left: Vec<usize>,
}

impl Route {
    /// All minutes.
    pub fn minutes(&self) -> f64 {
        self.ways + self.hives
    }
}

/// The minutes of a trip to `stops`, which stand in the order in which they are walked: the way to each yard and setting up
/// there from `ways`, and `each` at every hive. Where that is more than `have` the least pressing are left, of those alike
/// the last on the way first; a yard of which every hive is left costs nothing.
pub fn route(stops: &[Stop], ways: &[f64], each: f64, have: Option<f64>) -> Route {
    let mut kept = vec![true; stops.len()];
    let mut left = Vec::new();
    loop {
        let mut route = Route { ways: 0.0, hives: 0.0, left: Vec::new() };
        for (yard, way) in ways.iter().enumerate() {
            let there = stops.iter().zip(&kept).filter(|(stop, kept)| **kept && stop.yard == yard).count();
            if there > 0 {
                route.ways += way;
            }
            for _ in 0..there {
                route.hives += each;
            }
        }
        let mut last: Option<(usize, Pressing)> = None;
        for (at, stop) in stops.iter().enumerate().filter(|(at, _)| kept.get(*at) == Some(&true)) {
            if last.is_none_or(|(_, known)| known <= stop.pressing) {
                last = Some((at, stop.pressing));
            }
        }
        // What is a minute but for the noise of its sum fits.
        let fits = have.is_none_or(|have| route.minutes() <= have + 1e-6);
        let Some((at, _)) = last.filter(|_| !fits) else {
            route.left = left;
            return route;
        };
        if let Some(kept) = kept.get_mut(at) {
            *kept = false;
        }
        left.push(at);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn stop(yard: usize, pressing: Pressing) -> Stop {
        Stop { yard, pressing }
    }

    /// Worked by hand: 30 + 10 minutes of ways and 5 hives of 4 minutes are 60; in 50 there is time for two hives fewer and
    /// three more minutes, in 34 for one hive of the first yard.
    #[test]
    fn the_least_pressing_and_farthest_are_left_and_a_yard_without_hives_is_not_gone_to() {
        use Pressing::{Due, Larvae, Overdue, Rest};
        let stops = [stop(0, Due), stop(0, Overdue), stop(0, Rest), stop(1, Due), stop(1, Larvae)];
        let of = |have| route(&stops, &[30.0, 10.0], 4.0, have);
        assert_eq!((of(None).minutes(), of(None).left), (60.0, vec![]));
        assert_eq!((of(Some(60.0)).minutes(), of(Some(60.0)).left), (60.0, vec![]));
        let short = of(Some(53.0));
        assert_eq!((short.minutes(), short.left), (52.0, vec![2, 3]));
        // With the first yard left altogether its way is saved.
        let shorter = of(Some(20.0));
        assert_eq!((shorter.minutes(), shorter.left), (14.0, vec![2, 3, 0, 1]));
        assert_eq!(of(Some(5.0)).left.len(), 5);
        assert!(route(&[], &[30.0], 4.0, Some(0.0)).minutes().abs() < 1e-9);
    }

    #[test]
    fn more_time_never_leaves_more_hives_and_what_is_left_is_never_more_pressing_than_what_is_kept() {
        use Pressing::{Due, Larvae, Overdue, Rest};
        let all = [Larvae, Overdue, Due, Rest];
        let stops: Vec<Stop> = (0..12).map(|at| stop(at / 4, all[at * 7 % 4])).collect();
        let mut before = usize::MAX;
        for have in 0..120 {
            let found = route(&stops, &[12.0, 7.0, 20.0], 5.0, Some(f64::from(have)));
            assert!(found.left.len() <= before && found.minutes() <= f64::from(have) + 1e-6);
            before = found.left.len();
            for left in &found.left {
                let kept = (0..stops.len()).filter(|at| !found.left.contains(at));
                assert!(kept.map(|at| stops[at].pressing).all(|kept| kept <= stops[*left].pressing));
            }
        }
        assert_eq!(before, 0);
    }
}
