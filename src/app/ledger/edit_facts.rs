//! A line that says how a yard or a hive is called, how one moved or ended, in which order the hives are walked or what
//! the keeper has set, as it is corrected: what stands in the fields, as typed.

use super::edit::Fields;
use crate::almanac::stack::HiveSize;
use crate::almanac::text::{LABEL_MOST, Letters, label_if_any};
use crate::almanac::typed;
use crate::app::bench::read;
use crate::app::prefs;
use crate::book::entry::{Ending, Entry, KeeperChange, What};
use crate::book::id::ThingId;

/// How the care for a hive ended, in the order of the chooser.
pub const ENDINGS: [Ending; 4] = [Ending::Dead, Ending::Sold, Ending::Joined { into: None }, Ending::Gone];
/// The code of a full hive and that of a nuc.
pub const SIZES: [(&str, HiveSize); 2] = [("full", HiveSize::Full), ("nuc", HiveSize::Nuc)];

/// What stands in the fields.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Texts {
    /// Name, tag, permit, place among [`ENDINGS`], or reserve.
    pub first: String,
    /// Time zone, code of a size, name of the hive that took another in, or what a bottle holds.
    pub second: String,
    /// Code of the bottle's unit.
    pub unit: String,
    /// The walk.
    pub hives: Vec<ThingId>,
}

/// The fields of such a line; none of any other.
pub fn fields(what: &What) -> Option<Fields> {
    match what {
        What::Yard { .. } | What::YardChanged { .. } => Some(Fields::Yard),
        What::HiveChanged { .. } => Some(Fields::Tag),
        What::HiveMoved { .. } => Some(Fields::Permit),
        What::HiveEnded { .. } => Some(Fields::Ended),
        What::Order { .. } => Some(Fields::Walk),
        What::Keeper(_) => Some(Fields::Settings),
        _ => None,
    }
}

/// What stands in the fields at first. Read again unchanged it is the line as it was.
pub fn texts(what: &What) -> Texts {
    let two = |first: Option<&String>, second: String| Texts {
        first: first.cloned().unwrap_or_default(),
        second,
        ..Texts::default()
    };
    match what {
        What::Yard { name, zone } => two(Some(name), zone.clone()),
        What::YardChanged { name, zone, .. } => two(name.as_ref(), zone.clone().unwrap_or_default()),
        What::HiveChanged { tag, size, .. } => {
            let code = SIZES.iter().find(|(_, known)| Some(*known) == *size).map_or("", |(code, _)| code);
            two(tag.as_ref(), code.to_owned())
        }
        What::HiveMoved { permit, .. } => two(permit.as_ref(), String::new()),
        What::HiveEnded { how, .. } => {
            let joined = |how: &Ending| matches!(how, Ending::Joined { .. });
            let at = ENDINGS.iter().position(|known| known == how || joined(known) && joined(how));
            let into =
                if let Ending::Joined { into: Some(into) } = how { into.to_string() } else { String::new() };
            Texts { first: at.unwrap_or_default().to_string(), second: into, ..Texts::default() }
        }
        What::Order { hives, .. } => Texts { hives: hives.clone(), ..Texts::default() },
        What::Keeper(change) => {
            let reserve = change.reserve.map(|share| super::edit::level(Some(share)));
            let mut texts = two(reserve.as_ref(), String::new());
            if let Some(bottle) = change.bottle {
                texts.second = bottle.number().to_string();
                prefs::volume_code(bottle.unit()).clone_into(&mut texts.unit);
            }
            texts
        }
        _ => Texts::default(),
    }
}

/// What the line says with these fields; none when one of them cannot be read or nothing is left.
pub fn what(line: &What, texts: &Texts, letters: &impl Letters) -> Option<What> {
    let name = |text: &str| label_if_any(text, LABEL_MOST, letters).ok();
    let first = |before: Option<&String>| {
        // What was left alone is not measured anew: it may be longer than what can be typed.
        if before == Some(&texts.first) { Some(before.cloned()) } else { name(&texts.first) }
    };
    Some(match line {
        What::Yard { name: before, .. } => {
            What::Yard { name: first(Some(before))??, zone: zone(&texts.second).ok()?? }
        }
        What::YardChanged { yard, name: before, .. } => {
            let (name, zone) = (first(before.as_ref())?, zone(&texts.second).ok()?);
            if name.is_none() && zone.is_none() {
                return None;
            }
            What::YardChanged { yard: yard.clone(), name, zone }
        }
        What::HiveChanged { hive, tag: before, .. } => {
            let size = SIZES.iter().find(|(code, _)| *code == texts.second).map(|(_, size)| *size);
            let tag = first(before.as_ref())?;
            if tag.is_none() && size.is_none() {
                return None;
            }
            What::HiveChanged { hive: hive.clone(), tag, size }
        }
        What::HiveMoved { hive, to, permit } => {
            What::HiveMoved { hive: hive.clone(), to: to.clone(), permit: first(permit.as_ref())? }
        }
        What::HiveEnded { hive, .. } => {
            let mut how = ENDINGS.get(texts.first.parse::<usize>().ok()?)?.clone();
            if let Ending::Joined { into } = &mut how {
                *into = ThingId::parse(&texts.second).ok();
            }
            What::HiveEnded { hive: hive.clone(), how }
        }
        What::Order { yard, .. } => What::Order { yard: yard.clone(), hives: texts.hives.clone() },
        What::Keeper(change) => {
            let empty = |text: &str| text.trim().is_empty();
            let reserve = if empty(&texts.first) { None } else { Some(typed::share(&texts.first).ok()?) };
            let bottle =
                if empty(&texts.second) { None } else { Some(read::holds(&texts.second, &texts.unit).ok()?) };
            What::Keeper(KeeperChange { reserve, bottle, ..change.clone() })
        }
        _ => return None,
    })
}

/// A time zone as it is kept; none inside where nothing is typed. Whether there is one of that name the browser knows.
fn zone(text: &str) -> Result<Option<String>, ()> {
    let zone = text.trim();
    if zone.chars().count() > Entry::NAME_MOST {
        return Err(());
    }
    Ok((!zone.is_empty()).then(|| zone.to_owned()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::almanac::quantity::{Decimal, Share, TypedVolume, VolumeUnit};
    use crate::app::ledger::words::tests::Plain;
    use crate::book::id::{EntryId, Writer};

    fn thing(n: u32) -> ThingId {
        EntryId::new(Writer::new("test").unwrap(), n).unwrap().thing(0)
    }

    fn lines() -> Vec<What> {
        let (yard, hive) = (thing(1), thing(3));
        let changed = |name: Option<&str>, zone: Option<&str>| What::YardChanged {
            yard: yard.clone(),
            name: name.map(str::to_owned),
            zone: zone.map(str::to_owned),
        };
        let hive_now = |tag: Option<&str>, size| What::HiveChanged {
            hive: hive.clone(),
            tag: tag.map(str::to_owned),
            size,
        };
        let ended = |how| What::HiveEnded { hive: hive.clone(), how };
        let moved = |permit: Option<&str>| What::HiveMoved {
            hive: hive.clone(),
            to: thing(2),
            permit: permit.map(str::to_owned),
        };
        let bottle = TypedVolume::new(Decimal::from_millionths(1_500_000).unwrap(), VolumeUnit::Litre).ok();
        let reserve = Share::from_percent(Decimal::from_millionths(12_345_678).unwrap()).ok();
        let currency = Some("EUR".to_owned());
        vec![
            What::Yard { name: "Ferry “Field”".to_owned(), zone: "Europe/Berlin".to_owned() },
            // Longer than can be typed by now, but in the book.
            What::Yard { name: "x".repeat(200), zone: "UTC".to_owned() },
            changed(Some("Mill"), None),
            changed(None, Some("America/New_York")),
            changed(Some("Mill"), Some("UTC")),
            hive_now(Some("7"), None),
            hive_now(None, Some(HiveSize::Nuc)),
            hive_now(Some("7"), Some(HiveSize::Full)),
            moved(None),
            moved(Some("P 7/26")),
            ended(Ending::Dead),
            ended(Ending::Sold),
            ended(Ending::Gone),
            ended(Ending::Joined { into: None }),
            ended(Ending::Joined { into: Some(thing(4)) }),
            What::Order { yard: yard.clone(), hives: vec![thing(4), thing(3)] },
            What::Keeper(KeeperChange { reserve, bottle, ..KeeperChange::default() }),
            What::Keeper(KeeperChange { currency, season_start: Some(301), ..KeeperChange::default() }),
        ]
    }

    #[test]
    fn a_line_that_is_opened_and_left_alone_says_what_it_said() {
        for line in lines() {
            assert!(fields(&line).is_some());
            assert_eq!(what(&line, &texts(&line), &Plain), Some(line));
        }
    }

    #[test]
    fn what_is_typed_anew_is_what_the_line_says_then_and_the_rest_stays() {
        let all = lines();
        let typed = |at: usize, first: &str, second: &str| {
            let texts = Texts { first: first.to_owned(), second: second.to_owned(), ..texts(&all[at]) };
            what(&all[at], &texts, &Plain)
        };
        let mill = What::Yard { name: "Mill".to_owned(), zone: "UTC".to_owned() };
        assert_eq!(typed(0, " Mill ", " UTC "), Some(mill));
        let tag = What::HiveChanged { hive: thing(3), tag: Some("17".into()), size: Some(HiveSize::Nuc) };
        assert_eq!(typed(5, "17", "nuc"), Some(tag));
        let into = Ending::Joined { into: Some(thing(9)) };
        assert_eq!(typed(10, "2", "test-9"), Some(What::HiveEnded { hive: thing(3), how: into }));
        assert_eq!(typed(9, "", ""), Some(What::HiveMoved { hive: thing(3), to: thing(2), permit: None }));
        let kept =
            KeeperChange { reserve: Share::from_percent(Decimal::whole(10)).ok(), ..KeeperChange::default() };
        assert_eq!(typed(16, "10 %", ""), Some(What::Keeper(kept)));
        let more = typed(17, "10 %", "");
        assert!(matches!(
            more,
            Some(What::Keeper(KeeperChange { season_start: Some(301), reserve: Some(_), .. }))
        ));
    }

    #[test]
    fn what_cannot_be_read_or_says_nothing_any_more_is_not_written() {
        let all = lines();
        let typed = |at: usize, first: &str, second: &str| {
            let texts = Texts { first: first.to_owned(), second: second.to_owned(), ..texts(&all[at]) };
            what(&all[at], &texts, &Plain)
        };
        assert_eq!(typed(0, " ", "UTC"), None, "a yard has a name");
        assert_eq!(typed(0, "Mill", ""), None, "and a time zone");
        assert_eq!(typed(0, "Mill", &"x".repeat(Entry::NAME_MOST + 1)), None);
        assert_eq!(typed(0, &"x".repeat(100), "UTC"), None);
        assert_eq!(typed(2, "", ""), None);
        assert_eq!(typed(5, "", ""), None);
        assert_eq!(typed(10, "9", ""), None);
        assert_eq!(typed(16, "120 %", ""), None);
        assert_eq!(typed(16, "10 %", "-1"), None);
        let note = What::Note { hive: None, text: "wet".to_owned() };
        assert_eq!((fields(&note), what(&note, &texts(&note), &Plain)), (None, None));
    }
}
