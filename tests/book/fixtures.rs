//! Format version 1, pinned by files that are never edited: every kind of entry, once.

use crate::support::{day, pen};
use crate::trap;
use beetle_almanac::almanac::day::Stamp;
use beetle_almanac::almanac::quantity::{Decimal, LengthUnit, Share, TypedLength, TypedVolume, VolumeUnit};
use beetle_almanac::almanac::stack::{BoxDepth, Corner, HiveSize, Spot};
use beetle_almanac::almanac::tally::CountRange;
use beetle_almanac::almanac::trap::{Pack, TrapForm, TrapKind};
use beetle_almanac::book::entry::{
    Check, Did, Ending, Entry, KeeperChange, NewBox, NewTrap, PlacedTrap, SkipReason, TrapsWent, What,
};
use beetle_almanac::book::id::{EntryId, ThingId};
use beetle_almanac::book::log::Log;
use beetle_almanac::book::page::Page;
use beetle_almanac::papers::backup;

const PAGE: &str = include_str!("../fixtures/v1/page.json");
const BACKUP: &str = include_str!("../fixtures/v1/yard-backup-2026-07-14.json");

fn thing(text: &str) -> ThingId {
    ThingId::parse(text).unwrap()
}

fn percent(text: &str) -> Share {
    Share::from_percent(serde_json::from_str(text).unwrap()).unwrap()
}

/// A lidded trap with sloping walls, two packs, one without a price.
fn sloping() -> TrapKind {
    TrapKind {
        name: "Two-well, lidded".to_owned(),
        form: TrapForm::Lidded { wells: 2, bait: false },
        reusable: true,
        capacity: TypedVolume::new(serde_json::from_str("1.25").unwrap(), VolumeUnit::UsFluidOunce).ok(),
        profile: vec![(percent("25"), percent("12.5")), (percent("50"), percent("37.5"))],
        packs: vec![
            Pack { pieces: 1, price: serde_json::from_str("6.5").ok() },
            Pack { pieces: 6, price: None },
        ],
        ..trap()
    }
}

#[allow(clippy::too_many_lines)] // one of each, and there are many
fn everything() -> Vec<What> {
    let (yard, hive, kind) = (thing("k7f3qa9x-2"), thing("k7f3qa9x-5"), thing("k7f3qa9x-1"));
    let new_trap =
        |at: Corner| NewTrap { spot: Spot::Corner(at), kind: kind.clone(), level: Some(Share::HALF) };
    let own = TypedLength::new(serde_json::from_str("7.625").unwrap(), LengthUnit::Inch).unwrap();
    vec![
        What::Kind(trap()),
        What::Yard { name: "Ferry Field".to_owned(), zone: "Europe/Berlin".to_owned() },
        What::Keeper(KeeperChange {
            name: Some("A keeper".to_owned()),
            volume: Some(VolumeUnit::ImperialFluidOunce),
            length: Some(LengthUnit::Inch),
            reserve: Some(Share::QUARTER),
            bottle: TypedVolume::new(Decimal::whole(1), VolumeUnit::Litre).ok(),
            currency: Some("EUR".to_owned()),
            season_start: Some(301),
            colony_value: Some(Decimal::whole(180)),
        }),
        What::KindChanged { kind: kind.clone(), now: sloping() },
        What::Hive {
            yard: yard.clone(),
            tag: "Blue \u{201c}7\u{201d}, \u{5db}\u{5d5}\u{5d5}\u{5e8}\u{5ea}".to_owned(),
            size: HiveSize::Full,
            boxes: vec![
                NewBox {
                    depth: BoxDepth::Deep,
                    wants: 2,
                    traps: vec![new_trap(Corner::FrontLeft), new_trap(Corner::BackRight)],
                },
                NewBox { depth: BoxDepth::Own(own), wants: 0, traps: Vec::new() },
            ],
        },
        What::Hive { yard: yard.clone(), tag: "N1".to_owned(), size: HiveSize::Nuc, boxes: Vec::new() },
        What::KindRetired { kind: kind.clone() },
        What::YardChanged {
            yard: yard.clone(),
            name: Some("Ferry".to_owned()),
            zone: Some("Europe/Paris".to_owned()),
        },
        What::Season { yard: yard.clone(), running: false },
        What::Order { yard: yard.clone(), hives: vec![thing("k7f3qa9x-6"), hive.clone()] },
        What::HiveChanged { hive: hive.clone(), tag: Some("7".to_owned()), size: Some(HiveSize::Nuc) },
        What::BoxesOn {
            hive: hive.clone(),
            above: 2,
            boxes: vec![
                NewBox { depth: BoxDepth::Medium, wants: 2, traps: vec![new_trap(Corner::FrontRight)] },
                NewBox { depth: BoxDepth::Shallow, wants: 0, traps: Vec::new() },
            ],
        },
        What::BoxWants { hive: hive.clone(), part: thing("k7f3qa9x-5.4"), traps: 1 },
        What::TrapsOn {
            hive: hive.clone(),
            traps: vec![PlacedTrap {
                part: thing("k7f3qa9x-5.4"),
                trap: NewTrap { spot: Spot::Between(3), kind: kind.clone(), level: None },
            }],
        },
        What::TrapsOff {
            hive: hive.clone(),
            traps: vec![thing("k7f3qa9x-5.2"), thing("k7f3qa9x-14")],
            went: TrapsWent::Lost,
        },
        What::BoxOff { hive: hive.clone(), part: thing("k7f3qa9x-12"), traps: TrapsWent::Stock },
        What::Check(Check {
            hive: hive.clone(),
            traps: None,
            did: Did::ToppedUp,
            before: Some(percent("33.333333")),
            after: Some(Share::HALF),
            count: Some(CountRange::exact(12)),
            note: Some("=2+2, \"quoted\"\nsecond line".to_owned()),
        }),
        What::Check(Check {
            hive: hive.clone(),
            traps: Some(vec![thing("k7f3qa9x-5.3")]),
            did: Did::AsFound,
            before: None,
            after: None,
            count: CountRange::new(50, None).ok(),
            note: None,
        }),
        What::Check(Check {
            hive: hive.clone(),
            traps: None,
            did: Did::Spilled,
            before: None,
            after: None,
            count: CountRange::new(5, Some(19)).ok(),
            note: None,
        }),
        What::Check(Check {
            hive: hive.clone(),
            traps: None,
            did: Did::Replaced,
            before: Some(Share::NONE),
            after: Some(Share::FULL),
            count: Some(CountRange::exact(0)),
            note: None,
        }),
        What::Check(Check {
            hive: hive.clone(),
            traps: None,
            did: Did::Missing,
            before: None,
            after: None,
            count: None,
            note: None,
        }),
        What::Check(Check {
            hive: hive.clone(),
            traps: None,
            did: Did::GluedShut,
            before: None,
            after: None,
            count: None,
            note: None,
        }),
        What::Skip { hive: hive.clone(), why: SkipReason::Other, note: Some("wasps".to_owned()) },
        What::Note { hive: Some(hive.clone()), text: "laying well".to_owned() },
        What::Note { hive: None, text: "gate stuck".to_owned() },
        What::HiveMoved { hive: hive.clone(), to: yard.clone(), permit: Some("P-17".to_owned()) },
        What::HiveEnded { hive: hive.clone(), how: Ending::Joined { into: Some(thing("k7f3qa9x-6")) } },
        What::HiveBack { hive: hive.clone() },
        What::HiveEnded { hive: hive.clone(), how: Ending::Dead },
        What::HiveEnded { hive: hive.clone(), how: Ending::Sold },
        What::HiveEnded { hive, how: Ending::Gone },
        What::Struck { entries: vec![EntryId::parse("k7f3qa9x-22").unwrap()] },
        What::YardClosed { yard },
    ]
}

fn entries() -> Vec<Entry> {
    let pen = pen("k7f3qa9x", day("2026-07-14"));
    (1..)
        .zip(everything())
        .map(|(n, what)| Entry {
            id: EntryId::new(pen.writer.clone(), n).unwrap(),
            day: day("2026-07-14"),
            at: Stamp::parse("2026-07-14T08:05:31-03:30").unwrap(),
            by: (n % 2 == 0).then(|| "Truck phone".to_owned()),
            yard: (n > 1).then(|| thing("k7f3qa9x-2")),
            replaces: (n == 20).then(|| EntryId::parse("k7f3qa9x-19").unwrap()),
            bulk: (n == 6).then(|| EntryId::parse("k7f3qa9x-5").unwrap()),
            what,
        })
        .collect()
}

#[test]
fn a_page_of_version_1_is_read_and_written_byte_for_byte() {
    let page: Page = serde_json::from_str(PAGE).unwrap();
    assert_eq!(page, Page { entries: entries() });
    assert!(page.check().is_ok());
    assert_eq!(serde_json::to_string(&page).unwrap(), PAGE.trim_end());
}

#[test]
fn a_backup_of_version_1_is_read_and_written_byte_for_byte() {
    let log: Log = entries().into_iter().collect();
    let made = Stamp::parse("2026-07-14T20:15:00+02:00").unwrap();
    assert_eq!(backup::write(&log, made, Some("Truck phone")), BACKUP.trim_end());
    let opened = backup::open(BACKUP).unwrap();
    assert_eq!(opened.entries, entries());
    assert_eq!((opened.made, opened.by.as_deref()), (made, Some("Truck phone")));
}
