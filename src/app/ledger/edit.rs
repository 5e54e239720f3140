//! A line of the book as it is corrected: what stands in the fields, as typed.

use super::edit_facts;
use crate::almanac::quantity::Share;
use crate::almanac::tally::CountRange;
use crate::almanac::trap::TrapKind;
use crate::app::round::draft::{Typed, Wrong};
use crate::book::entry::{Did, Entry, SkipReason, What};

/// What was done to traps, in the order of the chooser.
pub const DIDS: [Did; 6] =
    [Did::AsFound, Did::ToppedUp, Did::Replaced, Did::Spilled, Did::Missing, Did::GluedShut];
/// Why a hive was skipped, in the order of the chooser.
pub const SKIPS: [SkipReason; 5] =
    [SkipReason::Temper, SkipReason::Robbing, SkipReason::Weather, SkipReason::NoTime, SkipReason::Other];

/// Which fields a line has besides its day.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fields {
    /// Trap work: what was done, levels, count, note.
    Work,
    /// A skip: reason and note.
    Skip,
    /// A note alone.
    Note,
    /// Name and time zone of a yard.
    Yard,
    /// Tag and size of a hive.
    Tag,
    /// The permit for a move.
    Permit,
    /// How the care for a hive ended.
    Ended,
    /// The order of the walk.
    Walk,
    /// The keeper's settings.
    Settings,
    /// None.
    Day,
}

impl Fields {
    /// Whether what stands in them is that of `edit_facts`.
    pub fn are_facts(self) -> bool {
        !matches!(self, Fields::Work | Fields::Skip | Fields::Note | Fields::Day)
    }
}

/// The fields in which `entry` can be corrected; none here for records and kinds of trap, which have forms of their own.
pub fn fields(entry: &Entry) -> Option<Fields> {
    match &entry.what {
        What::Check(_) => Some(Fields::Work),
        What::Skip { .. } => Some(Fields::Skip),
        What::Note { .. } => Some(Fields::Note),
        What::Season { .. } | What::YardClosed { .. } | What::KindRetired { .. } => Some(Fields::Day),
        // A record has a form of its own; two hives were one all along, and the day says nothing.
        What::Record(_) | What::HiveSame { .. } => None,
        what => edit_facts::fields(what).or_else(|| entry.hive().map(|_| Fields::Day)),
    }
}

/// The kind of trap that `entry` describes, in a form of its own. Written beside hives it says only which kind they want.
pub fn kind(entry: &Entry) -> Option<&TrapKind> {
    match &entry.what {
        What::Kind(kind) => Some(kind),
        What::KindChanged { now, .. } if entry.bulk.is_none() => Some(now),
        _ => None,
    }
}

/// Whether the day can be corrected too. What brought a yard or a kind comes first whatever day it carries.
pub fn has_day(entry: &Entry) -> bool {
    !entry.is_ground()
}

/// What stands in the fields at first, and which of [`DIDS`] or [`SKIPS`] is chosen. Read again unchanged it is the
/// line as it was, to the last millionth.
pub fn typed(entry: &Entry) -> (usize, Typed) {
    let note = |note: &Option<String>| note.clone().unwrap_or_default();
    match &entry.what {
        What::Check(work) => {
            let typed = Typed {
                before: level(work.before),
                after: level(work.after),
                count: work.count.map(count).unwrap_or_default(),
                note: note(&work.note),
                traps: work.traps.clone().unwrap_or_default(),
                begun: None,
            };
            (DIDS.iter().position(|did| *did == work.did).unwrap_or(0), typed)
        }
        What::Skip { why, note: words, .. } => {
            let typed = Typed { note: note(words), ..Typed::default() };
            (SKIPS.iter().position(|reason| reason == why).unwrap_or(0), typed)
        }
        What::Note { text, .. } => (0, Typed { note: text.clone(), ..Typed::default() }),
        _ => (0, Typed::default()),
    }
}

/// What the line says with these fields.
///
/// # Errors
/// The first field that cannot be read.
pub fn what(entry: &Entry, chosen: usize, typed: &Typed) -> Result<What, Wrong> {
    // The fields that a line does not have are empty, and empty fields can be read.
    let hive = entry.hive().unwrap_or_else(|| entry.id.thing(0));
    let did = DIDS.get(chosen).copied().unwrap_or(Did::AsFound);
    let work = typed.check(&hive, did, None)?;
    Ok(match &entry.what {
        What::Check(_) => What::Check(work),
        What::Skip { hive, .. } => {
            let why = SKIPS.get(chosen).copied().unwrap_or(SkipReason::Other);
            What::Skip { hive: hive.clone(), why, note: work.note }
        }
        // A note without words is struck out, not emptied.
        What::Note { hive, text } => {
            What::Note { hive: hive.clone(), text: work.note.unwrap_or_else(|| text.clone()) }
        }
        other => other.clone(),
    })
}

/// A level as it is typed.
pub fn level(level: Option<Share>) -> String {
    level.map_or_else(String::new, |level| [&level.percent().to_string(), " %"].concat())
}

/// A count as it is typed.
pub fn count(count: CountRange) -> String {
    let low = count.low().to_string();
    match count.high() {
        Some(_) if count.is_exact() => low,
        Some(high) => [&low, "–", &high.to_string()].concat(),
        None => [&low, "+"].concat(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::almanac::day::{Day, Stamp};
    use crate::almanac::quantity::Decimal;
    use crate::book::entry::Check;
    use crate::book::id::{EntryId, ThingId, Writer};

    fn hive() -> ThingId {
        EntryId::new(Writer::new("test").unwrap(), 1).unwrap().thing(0)
    }

    fn line(what: What) -> Entry {
        let day = Day::parse("2026-07-14").unwrap();
        let id = EntryId::new(Writer::new("test").unwrap(), 2).unwrap();
        Entry { id, day, at: Stamp::midnight(day), by: None, yard: None, replaces: None, bulk: None, what }
    }

    fn work() -> Check {
        Check {
            hive: hive(),
            traps: None,
            did: Did::ToppedUp,
            before: None,
            after: None,
            count: None,
            note: None,
        }
    }

    #[test]
    fn a_line_that_is_opened_and_left_alone_says_what_it_said() {
        let third = Share::from_percent(Decimal::from_millionths(33_333_333).unwrap()).unwrap();
        let shares = [None, Some(Share::NONE), Some(third), Some(Share::HALF), Some(Share::FULL)];
        let counts = [
            None,
            Some(CountRange::exact(0)),
            Some(CountRange::exact(12)),
            CountRange::new(5, Some(19)).ok(),
            CountRange::new(50, None).ok(),
        ];
        for did in DIDS {
            for before in shares {
                for count in counts {
                    // A trap that is gone has no level left.
                    let gone = matches!(did, Did::Missing | Did::GluedShut);
                    let after = before.filter(|_| !gone);
                    let note = Some("wet, “half”".to_owned());
                    let traps = Some(vec![hive()]);
                    let line =
                        line(What::Check(Check { hive: hive(), traps, did, before, after, count, note }));
                    let (chosen, typed) = typed(&line);
                    assert_eq!(what(&line, chosen, &typed).unwrap(), line.what);
                }
            }
        }
        for why in SKIPS {
            let line = line(What::Skip { hive: hive(), why, note: None });
            let (chosen, typed) = typed(&line);
            assert_eq!(what(&line, chosen, &typed).unwrap(), line.what);
        }
    }

    #[test]
    fn keeper_corrects_30_per_cent_to_50() {
        let thirty = Share::from_percent(Decimal::whole(30)).ok();
        let line = line(What::Check(Check { after: thirty, ..work() }));
        let (chosen, typed) = typed(&line);
        assert_eq!(typed.after, "30 %");
        let mended = what(&line, chosen, &Typed { after: "50".into(), ..typed }).unwrap();
        assert_eq!(mended, What::Check(Check { after: Some(Share::HALF), ..work() }));
    }

    #[test]
    fn what_cannot_be_read_is_named() {
        let line = line(What::Check(work()));
        let wrong = what(&line, 1, &Typed { before: "120 %".into(), ..Typed::default() });
        assert!(matches!(wrong, Err(Wrong::Before(_))));
        let wrong = what(&line, 1, &Typed { count: "-3".into(), ..Typed::default() });
        assert!(matches!(wrong, Err(Wrong::Count(_))));
    }

    #[test]
    fn every_line_but_a_strike_has_its_fields() {
        let yard = line(What::Yard { name: "Ferry Field".into(), zone: "UTC".into() });
        assert_eq!((fields(&yard), has_day(&yard)), (Some(Fields::Yard), false));
        let closed = line(What::YardClosed { yard: hive() });
        assert_eq!((fields(&closed), has_day(&closed)), (Some(Fields::Day), true));
        assert_eq!(fields(&line(What::Struck { entries: Vec::new() })), None);
        assert_eq!(fields(&line(What::HiveBack { hive: hive() })), Some(Fields::Day));
        assert_eq!(fields(&line(What::Check(work()))), Some(Fields::Work));
    }
}
