//! Looks and the broods they see: planned ones from typed figures, real ones from the book.

use crate::almanac::day::Day;
use crate::almanac::rhythm::{gaps, longest, share};
use crate::almanac::stage::{Edge, Stage, days};
use crate::almanac::typed;
use crate::almanac::warmth::Warmth;
use crate::app::bench::draft::BenchDraft;
use crate::app::bench::read;
use crate::book::Book;
use crate::book::entry::What;
use crate::book::id::ThingId;

/// Most days between looks.
pub const MOST_DAYS: u32 = 90;
/// Days of which looks are told: half a year.
pub const BACK: i32 = 182;

/// What every share is reckoned with.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stay {
    /// Days that larvae are in the comb: the shortest, the likely, the longest.
    pub days: [f64; 3],
    /// In a comb of so many °C.
    pub celsius: f64,
    /// Chance, 0–1, that a look finds what is there.
    pub notice: f64,
}

impl Stay {
    /// The share of broods that looks with these gaps see, at each of the three stays; none without a gap.
    pub fn seen(&self, gaps: &[u32]) -> Option<[f64; 3]> {
        let [short, likely, long] = self.days.map(|days| share(gaps, days));
        Some([short?, likely?, long?].map(|seen| seen * self.notice))
    }
}

/// A plan: a look every so many days.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Plan {
    /// What it is reckoned with.
    pub stay: Stay,
    /// Days from look to look.
    pub every: u32,
    /// The share of broods that it sees.
    pub seen: [f64; 3],
    /// The share that is wanted.
    pub wanted: f64,
    /// The longest days between looks that reach it; none where none does.
    pub longest: [Option<u32>; 3],
}

/// How warm the comb is, in °C; none while the field cannot be read.
pub fn comb(draft: &BenchDraft) -> Option<f64> {
    read::warmth(draft.rhythm_comb(), draft.rhythm_comb_unit()).ok()
}

/// Days that larvae are in that comb: the shortest, the likely, the longest; none where it is too cold or too hot for them.
pub fn grow(draft: &BenchDraft) -> Option<[f64; 3]> {
    let warmth = Warmth::from_celsius(comb(draft)?).ok()?;
    let [short, likely, long] = Edge::ALL.map(|edge| days(Stage::Larva, warmth, edge));
    Some([short?, likely?, long?])
}

/// The days from look to look.
pub fn every(draft: &BenchDraft) -> Option<u32> {
    typed::count(draft.rhythm_every(), 1, MOST_DAYS).ok()
}

/// What stands in the fields of comb and notice; none while one cannot be read or where it is too cold for larvae.
pub fn stay(draft: &BenchDraft) -> Option<Stay> {
    let notice = typed::share(draft.rhythm_notice()).ok()?.fraction();
    Some(Stay { days: grow(draft)?, celsius: comb(draft)?, notice })
}

/// The plan in the fields.
pub fn plan(draft: &BenchDraft) -> Option<Plan> {
    let stay = stay(draft)?;
    let every = every(draft)?;
    let wanted = typed::share(draft.rhythm_wanted()).ok()?.fraction();
    let longest = stay.days.map(|days| longest(wanted, days, stay.notice));
    Some(Plan { stay, every, seen: stay.seen(&[every])?, wanted, longest })
}

/// The looks at a hive.
#[derive(Clone, Debug, PartialEq)]
pub struct Looked {
    /// Which.
    pub hive: ThingId,
    /// What stands on it.
    pub tag: String,
    /// The days, in order, each once.
    pub days: Vec<Day>,
}

/// The looks for larvae at the hives of `yard` in the half-year up to `today`; trap work counts as a look where `visits`
/// says so.
pub fn looked(book: &Book, yard: &ThingId, today: Day, visits: bool) -> Vec<Looked> {
    let standing = book.standing();
    let mut all: Vec<Looked> = Vec::new();
    for (id, hive) in standing.hives_of(yard, true) {
        all.push(Looked { hive: id.clone(), tag: hive.tag.clone(), days: Vec::new() });
    }
    let mut add = |hive: &ThingId, day: Day| {
        let hive = standing.kept(hive);
        if let Some(looked) = all.iter_mut().find(|looked| looked.hive == *hive)
            && (today.plus(-BACK)..=today).contains(&day)
            && !looked.days.contains(&day)
        {
            let at = looked.days.iter().take_while(|known| **known < day).count();
            looked.days.insert(at, day);
        }
    };
    for now in standing.records.values().filter(|now| now.record.looked_for_larvae()) {
        for hive in &now.record.hives {
            add(hive, now.day);
        }
    }
    // The log is gone through only where she asks for it: what stands knows no work but the last.
    let lines = if visits { book.log().in_effect() } else { Vec::new() };
    for (_, entry) in lines {
        if let What::Check(work) = &entry.what {
            add(&work.hive, entry.day);
        }
    }
    all
}

impl Looked {
    /// Days from look to look.
    pub fn gaps(&self) -> Vec<u32> {
        gaps(&self.days)
    }
}

/// The next look, and what comes of leaving it out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Skip {
    /// The day of the next look.
    pub next: Day,
    /// What it sees of the broods since the look before it.
    pub seen: [f64; 3],
    /// The day of the look after it.
    pub after: Day,
    /// What that one sees of them when the next one is left out.
    pub skipped: [f64; 3],
    /// Days without a look then.
    pub gap: u32,
}

/// What comes of leaving out the next look, `every` days after the `last` one, or today where that is over.
pub fn skip(last: Day, every: u32, today: Day, stay: &Stay) -> Option<Skip> {
    let step = i32::try_from(every).ok()?;
    let next = last.plus(step).max(today);
    let after = next.plus(step);
    let gap = |to: Day| u32::try_from(to.days_since(last)).ok().filter(|days| *days > 0);
    Some(Skip {
        next,
        seen: stay.seen(&[gap(next)?])?,
        after,
        skipped: stay.seen(&[gap(after)?])?,
        gap: gap(after)?,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::app::ledger::words::tests::{book, pen, today};
    use crate::book::record::{Answer, Blank, Record};

    #[test]
    fn the_example_sees_some_three_broods_in_five_and_ten_days_see_four() {
        let plan = plan(&BenchDraft::default()).unwrap();
        let [low, likely, high] = plan.seen;
        assert!(low < likely && likely < high && (likely - 8.22 / 14.0).abs() < 0.001, "{plan:?}");
        assert_eq!(plan.longest, [Some(8), Some(10), Some(12)]);
        let cold = BenchDraft::default().with("rhythm_comb", "8");
        assert!(stay(&cold).is_none() && comb(&cold).is_some() && grow(&cold).is_none());
        let blind = super::plan(&BenchDraft::default().with("rhythm_notice", "70 %")).unwrap();
        assert_eq!(blind.longest, [None; 3]);
        assert!((blind.seen[1] - likely * 0.7).abs() < 1e-9);
    }

    #[test]
    fn a_look_that_is_left_out_doubles_the_gap_and_an_overdue_one_is_today() {
        let stay = Stay { days: [6.0, 8.0, 10.0], celsius: 34.0, notice: 1.0 };
        let day = |text| Day::parse(text).unwrap();
        let skip = |today| skip(day("2026-07-04"), 10, day(today), &stay).unwrap();
        let saturday = skip("2026-07-08");
        assert_eq!((saturday.next, saturday.after, saturday.gap), (day("2026-07-14"), day("2026-07-24"), 20));
        assert_eq!((saturday.seen, saturday.skipped), ([0.6, 0.8, 1.0], [0.3, 0.4, 0.5]));
        assert_eq!(skip("2026-07-20").next, day("2026-07-20"));
    }

    #[test]
    fn looks_for_larvae_count_and_trap_work_only_where_she_says_so() {
        let mut book = book();
        let (hive, yard) = {
            let (hive, now) = book.standing().hives.iter().next().unwrap();
            (hive.clone(), now.yard.clone())
        };
        let of = |book: &Book, visits| {
            let all = looked(book, &yard, today(), visits);
            all.into_iter().find(|looked| looked.hive == hive).unwrap().days
        };
        // Four walks of the demonstration, every one of them and not the last alone.
        let walks = [1, 2, 3, 4].map(|walk| today().plus(-5 * 14 + walk * 14));
        assert_eq!(of(&book, true), walks);
        assert!(of(&book, false).is_empty());
        for (ago, larvae) in [(9, 1), (16, 2), (12, 0), (9, 1)] {
            let mut look = Record::empty(Blank::Look, vec![hive.clone()]);
            look.answers[0] = Some(Answer::Word(larvae));
            let on = today().plus(-ago);
            let Ok(written) = book.record(&pen(), on, today(), Some(&yard), look) else { continue };
            book.add(written);
        }
        // Nobody looked for larvae twelve days ago.
        assert_eq!(of(&book, false), [today().plus(-16), today().plus(-9)]);
        let mut both = [walks.as_slice(), &of(&book, false)].concat();
        both.sort();
        both.dedup();
        assert_eq!(of(&book, true), both);
    }
}
