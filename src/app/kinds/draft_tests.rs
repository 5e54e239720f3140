use super::*;
use crate::app::ledger::words::tests::Plain;

fn typed() -> KindDraft {
    let mut draft = KindDraft::empty(VolumeUnit::Millilitre, LengthUnit::Millimetre);
    draft.name = "Slim".to_owned();
    draft.holds.0 = "20".to_owned();
    draft.inner[2] = ("3/4".to_owned(), "in".to_owned());
    draft.packs = vec![
        ("12".to_owned(), "18".to_owned()),
        (String::new(), " ".to_owned()),
        ("1".to_owned(), String::new()),
    ];
    draft.points = vec![("½".to_owned(), "7".to_owned()), ("75 %".to_owned(), "12,5".to_owned())];
    draft
}

#[test]
fn a_form_survives_being_kept_and_opened_again() {
    let kind = typed().read(&Plain).unwrap();
    assert_eq!(kind.packs.len(), 2);
    assert_eq!(kind.packs[1].price, None);
    assert!((kind.filled(Share::HALF) - 0.35).abs() < 1e-9);
    let again = KindDraft::of(&kind, VolumeUnit::Litre, LengthUnit::Inch);
    assert_eq!(again.points, [("50 %".to_owned(), "7".to_owned()), ("75 %".to_owned(), "12.5".to_owned())]);
    assert_eq!(again.read(&Plain).unwrap(), kind);
}

#[test]
fn an_unusual_capacity_is_asked_about_and_none_is_refused() {
    let holding = |text: &str, sure| {
        let mut draft = typed();
        draft.points.clear();
        (draft.holds.0, draft.sure) = (text.to_owned(), sure);
        draft.capacity().map(|capacity| capacity.is_some())
    };
    assert_eq!(holding("", false), Ok(false));
    assert_eq!(holding("0", true), Err(Wrong::Zero));
    assert_eq!(holding("500", false), Ok(true));
    assert_eq!(holding("5 l", false), Err(Wrong::Unsure));
    assert_eq!(holding("5 l", true), Ok(true));
    assert_eq!(holding("0.5", false), Err(Wrong::Unsure));
    assert_eq!(holding("12 g", false), Err(Wrong::Typed(TypedError::Weight)));
}

#[test]
fn measured_points_rise_between_the_floor_and_the_rim() {
    let with = |points: &[(&str, &str)]| {
        let mut draft = typed();
        draft.points = points.iter().map(|(a, b)| ((*a).to_owned(), (*b).to_owned())).collect();
        draft.measured().map(|points| points.len())
    };
    assert_eq!(with(&[]), Ok(0));
    assert_eq!(with(&[("50 %", "7"), ("", ""), ("60 %", "9")]), Ok(2));
    assert_eq!(with(&[("50 %", "7"), ("50 %", "9")]), Err((1, Wrong::NotRising)));
    assert_eq!(with(&[("50 %", "7"), ("60 %", "7")]), Err((1, Wrong::NotRising)));
    assert_eq!(with(&[("100 %", "7")]), Err((0, Wrong::AtTheEnd)));
    assert_eq!(with(&[("50 %", "20")]), Err((0, Wrong::AtTheEnd)));
    assert_eq!(with(&[("50 %", "25")]), Err((0, Wrong::AtTheEnd)));
    let mut draft = typed();
    draft.holds.0 = String::new();
    assert_eq!(draft.measured(), Err((0, Wrong::NoCapacity)));
}

#[test]
fn a_trap_is_not_smaller_outside_than_inside() {
    let mut draft = typed();
    draft.outer[2] = ("19".to_owned(), "mm".to_owned());
    assert!(draft.turned(2), "3/4 in are 19.05 mm");
    assert!(draft.read(&Plain).is_none());
    draft.outer[2].0 = "19.05".to_owned();
    assert!(!draft.turned(2) && draft.read(&Plain).is_some());
    draft.outer = draft.inner.clone();
    draft.inner[2].0 = String::new();
    assert!((0..3).all(|place| !draft.turned(place)));
}

#[test]
fn fill_days_and_sides_keep_to_what_a_trap_can_be() {
    let mut draft = typed();
    for (days, read) in [("0", false), ("1", true), ("120", true), ("121", false), ("999", false)] {
        draft.days = days.to_owned();
        assert_eq!(draft.longest().is_ok(), read, "{days}");
    }
    draft.fill = "0 %".to_owned();
    assert_eq!(draft.filled_to(), Err(Wrong::Zero));
    draft.fill = "120 %".to_owned();
    assert_eq!(draft.filled_to(), Err(Wrong::Typed(TypedError::OverFull)));
    assert_eq!(side(&("0".to_owned(), "mm".to_owned())), Err(Wrong::Zero));
    assert_eq!(side(&(String::new(), "mm".to_owned())), Ok(None));
}

#[test]
fn one_fill_follows_the_walls_and_a_floor_trap_holds_no_oil() {
    assert_eq!(typed().one_fill().map(|(_, share)| share), Some(0.35));
    let mut draft = typed();
    draft.form = "floor".to_owned();
    let kind = draft.read(&Plain).unwrap();
    assert_eq!((kind.capacity, kind.profile.len()), (None, 0));
}
