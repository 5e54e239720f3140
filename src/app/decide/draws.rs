//! The hives that were drawn by lot, to be opened or for a trial, yard by yard, as they are kept like a field.
//!
//! The hives themselves are kept and not the seed: a hive that is added later, or a count, does not change who was drawn.

use crate::almanac::day::Day;
use crate::book::id::ThingId;
use crate::book::opened::Opened;
use crate::book::standing::Standing;

/// A draw.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Drawn {
    /// The day it was made.
    pub day: Day,
    /// The hives, in the order in which they were walked.
    pub hives: Vec<ThingId>,
    /// All hives out of which they were drawn; empty where nobody kept them.
    pub from: Vec<ThingId>,
    /// How many these were, where that alone was kept.
    pub number: Option<u32>,
}

/// What came of a draw.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Outcome {
    /// Hives that were drawn.
    pub drawn: u32,
    /// Out of so many: what nothing seen proves is about these.
    pub from: u32,
    /// Hives in which nothing was seen.
    pub clean: u32,
    /// Hives in which something was.
    pub found: u32,
    /// There are hives to draw from now that were not among those drawn from: they came later, or were left out then.
    pub later: bool,
}

impl Drawn {
    /// The same with each hive once, by the name the book keeps it under: two that were drawn may prove to be one.
    #[must_use]
    pub fn each_once(mut self, standing: &Standing) -> Drawn {
        for hives in [&mut self.hives, &mut self.from] {
            *hives = standing.kept_of(hives).into_iter().cloned().collect();
        }
        self
    }

    /// What came of it by what is known of each of its hives, whatever became of them. The hives `now` are those to draw
    /// from today: they stand for those drawn from where nobody kept these, nor how many they were.
    pub fn outcome(&self, states: &[Opened], now: &[ThingId]) -> Outcome {
        let count = |number: usize| u32::try_from(number).unwrap_or(u32::MAX);
        let in_state = |wanted| count(states.iter().filter(|state| **state == wanted).count());
        let drawn = count(states.len());
        let from = if self.from.is_empty() { now } else { &self.from };
        Outcome {
            drawn,
            // Where some of them are gone since, fewer may be left than were drawn.
            from: self.number.unwrap_or(count(from.len())).max(drawn),
            clean: in_state(Opened::Clean),
            found: in_state(Opened::Found),
            later: now.iter().any(|hive| !from.contains(hive))
                || self.number.is_some_and(|number| count(now.len()) > number),
        }
    }

    /// Its hives with what is known of each. Nobody is sent to one that was not opened and is not among those that `may` be
    /// opened today.
    pub fn list(&self, states: &[Opened], may: &[ThingId]) -> Vec<(ThingId, Opened)> {
        let all = self.hives.iter().cloned().zip(states.iter().copied());
        all.filter(|(hive, state)| *state != Opened::NotYet || may.contains(hive)).collect()
    }
}

/// The draw of `yard` in the kept text; none before the first.
pub fn of(kept: &str, yard: &ThingId) -> Option<Drawn> {
    let named = yard.to_string();
    let mut parts = kept.split(';').find(|draw| draw.split('|').next() == Some(&*named))?.split('|').skip(1);
    let day = Day::parse(parts.next()?).ok()?;
    let hives = ids(parts.next()?);
    // A text of before held none, or their number, which names none.
    let last = parts.next().unwrap_or_default();
    Some(Drawn { day, hives, from: ids(last), number: last.parse().ok() })
}

fn ids(text: &str) -> Vec<ThingId> {
    text.split(',').filter_map(|id| ThingId::parse(id).ok()).collect()
}

/// The kept text with no draw for `yard`.
pub fn without(kept: &str, yard: &ThingId) -> String {
    let named = yard.to_string();
    let mut text = String::new();
    for draw in kept.split(';').filter(|draw| !draw.is_empty() && draw.split('|').next() != Some(&*named)) {
        text.push_str(draw);
        text.push(';');
    }
    text
}

/// The kept text with another draw for `yard`.
pub fn with(kept: &str, yard: &ThingId, drawn: &Drawn) -> String {
    let named = yard.to_string();
    let mut text = without(kept, yard);
    text.push_str(&[&named, "|", &drawn.day.to_string()].concat());
    for hives in [&drawn.hives, &drawn.from] {
        text.push('|');
        for (at, hive) in hives.iter().enumerate() {
            if at > 0 {
                text.push(',');
            }
            text.push_str(&hive.to_string());
        }
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_yard_has_its_own_draw_and_the_last_counts() {
        let id = |text: &str| ThingId::parse(text).unwrap();
        let day = |text: &str| Day::parse(text).unwrap();
        let drawn = |on: &str, hives: &[&str]| Drawn {
            day: day(on),
            hives: hives.iter().map(|h| id(h)).collect(),
            from: hives.iter().filter(|_| hives.len() > 1).map(|h| id(h)).collect(),
            number: None,
        };
        let (mill, ford) = (id("aaaaaaaa-1"), id("aaaaaaaa-12"));
        let one = drawn("2026-06-01", &["aaaaaaaa-3", "aaaaaaaa-5.1"]);
        let two = drawn("2026-06-02", &["aaaaaaaa-4"]);
        let kept = with("", &mill, &one);
        let kept = with(&kept, &ford, &two);
        assert_eq!((of(&kept, &mill), of(&kept, &ford)), (Some(one), Some(two.clone())));
        let kept = with(&kept, &mill, &two);
        assert_eq!(of(&kept, &mill), Some(two));
        assert_eq!(kept.split(';').count(), 2);
        let rest = without(&kept, &mill);
        assert_eq!((of(&rest, &mill), of(&rest, &ford)), (None, of(&kept, &ford)));
        // As it was kept before those drawn from were, and when their number was.
        let old = Drawn { from: Vec::new(), ..drawn("2026-06-01", &["aaaaaaaa-3", "aaaaaaaa-4"]) };
        assert_eq!(of("aaaaaaaa-1|2026-06-01|aaaaaaaa-3,aaaaaaaa-4;", &mill), Some(old.clone()));
        let old = Drawn { number: Some(20), ..old };
        assert_eq!(of("aaaaaaaa-1|2026-06-01|aaaaaaaa-3,aaaaaaaa-4|20;", &mill), Some(old.clone()));
        // Fewer hives of now make no more of it, and more than were drawn from are some that were not among them.
        let now: Vec<ThingId> = (1..=21).map(|nth| id(&["aaaaaaaa-", &nth.to_string()].concat())).collect();
        let outcome = |now: &[ThingId]| {
            let outcome = old.outcome(&[Opened::Clean, Opened::NotYet], now);
            (outcome.from, outcome.later)
        };
        assert_eq!((outcome(&now[..12]), outcome(&now)), ((20, false), (20, true)));
        assert_eq!((of("", &mill), of("spoiled", &mill), of("aaaaaaaa-1|x|", &mill)), (None, None, None));
    }
}
