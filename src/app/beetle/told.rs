//! What is under way in a yard, as it is told: rows of words, each with the days of its bar.

use crate::almanac::day::Day;
use crate::almanac::sighting::Dates;
use crate::almanac::stage::{Edge, Outcome};
use crate::app::ledger::words;
use crate::app::wording::en_beetle as w;
use crate::book::Book;
use crate::book::finds::{self, UnderWay};
use crate::book::ground::Ground;
use crate::book::id::ThingId;

/// One line of dates.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Row {
    /// What happens.
    pub label: String,
    /// When, or why not.
    pub said: String,
    /// Earliest, likely as far as it comes, latest; none where there is no stretch to draw.
    pub days: Option<(Day, Option<Day>, Day)>,
}

/// Finds of a hive and what may come of them.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Told {
    /// Which hive.
    pub hive: ThingId,
    /// Its name.
    pub name: String,
    /// What was found, by day.
    pub finds: Vec<String>,
    /// The first of these days.
    pub since: Option<Day>,
    /// What comes of it.
    pub rows: Vec<Row>,
    /// Larvae were seen, not adults alone.
    pub larvae: bool,
    /// And may still be in the comb.
    pub in_comb: bool,
    /// Where adults alone were seen: look again by then.
    pub look_by: Option<Day>,
}

/// What comes of a find, in words.
pub fn rows(dates: &Dates, today: Day) -> Vec<Row> {
    let mut rows = Vec::new();
    let mut row = |label: &str, three: &[Outcome; 3]| {
        let [one, two, three_] = Edge::ALL.map(|edge| edge.of(*three).ok().map(|when| when.day));
        let days = match (one, two, three_) {
            (Some(one), two, Some(three)) => Some((one, two, three)),
            _ => None,
        };
        rows.push(Row { label: label.to_owned(), said: w::dates(three, today), days });
    };
    if let Some(leaving) = &dates.leaving {
        row(w::LEAVING, leaving);
    }
    row(w::YOUNG, &dates.adults);
    // Without young adults there is nothing to lay: the row before has said why.
    if dates.adults.iter().any(Result::is_ok) {
        row(w::EGGS, &dates.eggs);
    }
    rows
}

/// What is under way in the hives of `yard` on `today`, of one where `only` names it; none as long as nobody wrote down
/// its temperatures.
pub fn of_yard(book: &Book, yard: &ThingId, today: Day, only: Option<&ThingId>) -> Option<Vec<Told>> {
    let ground = Ground::of(book.standing(), yard, today)?;
    let all = finds::under_way(book.standing(), yard, today, &ground, &ground.weather(today), only);
    Some(all.iter().map(|way| told(book, way, today)).collect())
}

fn told(book: &Book, way: &UnderWay, today: Day) -> Told {
    let mut finds = Vec::new();
    for find in &way.finds {
        finds.push(w::found(find.seen, find.day, find.ended, today));
    }
    let larvae = !way.adults_only();
    Told {
        hive: way.hive.clone(),
        name: words::hive_name(book, &way.hive),
        finds,
        since: way.since(),
        rows: rows(&way.dates, today),
        larvae,
        in_comb: way.in_comb(),
        look_by: way.leaving().filter(|_| !larvae),
    }
}

/// When larvae and pupae may be in the ground of a yard: from the first day on which larvae leave a hive, or were found
/// to have left, to the last on which young beetles come out, as far as that is known; and at how many hives.
pub fn in_ground(all: &[UnderWay]) -> Option<(Day, Option<Day>, usize)> {
    let mut hives: Vec<&ThingId> = Vec::new();
    let mut ends: Option<(Day, Option<Day>)> = None;
    for way in all.iter().filter(|way| !way.adults_only()) {
        let leaves = way.dates.leaving.and_then(|three| Edge::Earliest.of(three).ok());
        let Some(from) = leaves.map(|when| when.day).or(way.since()) else { continue };
        let until = Edge::Latest.of(way.dates.adults).ok().map(|when| when.day);
        let (first, last) = ends.unwrap_or((from, until));
        // One end that nobody knows leaves that of all open.
        ends = Some((first.min(from), last.zip(until).map(|(one, other)| one.max(other))));
        if !hives.contains(&&way.hive) {
            hives.push(&way.hive);
        }
    }
    ends.map(|(from, until)| (from, until, hives.len()))
}

/// When young beetles may come out at the hives of a yard in which larvae were seen, each hive once: from the first of
/// its days to the last, as far as that is known; and whether that is so today.
pub fn young(all: &[UnderWay], today: Day) -> Vec<(ThingId, (String, bool))> {
    let mut said: Vec<(ThingId, (String, bool))> = Vec::new();
    for way in all {
        let Ok(first) = Edge::Earliest.of(way.dates.adults) else { continue };
        if !way.adults_only() && said.iter().all(|(hive, _)| *hive != way.hive) {
            let last = |three: [Outcome; 3]| Edge::Latest.of(three).ok().map(|when| when.day);
            let (until, laying) = (last(way.dates.adults), last(way.dates.eggs));
            let line = w::young(first.day, until, laying, today);
            said.push((way.hive.clone(), (line, first.day <= today)));
        }
    }
    said
}
