//! "Keep this yard": what the first sum of the Bench hands over to the records.

use super::draft::BenchDraft;
use super::fits::depth;
use super::read::{self, MOST_BOXES, MOST_HIVES, MOST_TRAPS_A_BOX};
use super::yard;
use crate::almanac::day::Day;
use crate::almanac::stack::BoxDepth;
use crate::almanac::table::Table;
use crate::almanac::text::{LABEL_MOST, LabelError, Letters, key, label};
use crate::almanac::trap::{TrapForm, TrapKind};
use crate::almanac::typed::{self, DayTypedError, TagsError};
use crate::app::wording::en_bench::{keep as w, yard as wy};

/// A yard as typed in the short form, checked and ready to be recorded.
#[derive(Clone, Debug, PartialEq)]
pub struct KeepPlan {
    /// Name of the yard, 1–60 visible characters.
    pub yard: String,
    /// Tags of its hives, in walking order, each once, 1–60 visible characters.
    pub tags: Vec<String>,
    /// Boxes of each hive that get traps, from the floor up. All hives alike.
    pub boxes: Vec<BoxDepth>,
    /// Traps in each box.
    pub traps_a_box: u8,
    /// The kind of trap, with its capacity, fill and the longest days between services.
    pub kind: TrapKind,
    /// The day the traps were filled; none when they are not in yet.
    pub filled: Option<Day>,
}

/// Tags of a line, each fit to be a label.
///
/// # Errors
/// [`TagsError`]; a tag that is too long or invisible counts as none, and one that differs from another only as tags of
/// a yard may not counts as the same.
pub fn tags(text: &str, letters: &impl Letters) -> Result<Vec<String>, TagsError> {
    let (mut tags, mut keys) = (Vec::new(), Vec::new());
    for tag in typed::tags(text, MOST_HIVES as usize)? {
        let tag = label(&tag, LABEL_MOST, letters).map_err(|_| TagsError::Empty)?;
        keys.push(key(&tag, letters));
        tags.push(tag);
    }
    let mut seen = Table::new();
    for (tag, key) in tags.iter().zip(&keys) {
        if seen.insert(key.as_str(), ()).is_some() {
            return Err(TagsError::Repeated { tag: tag.clone() });
        }
    }
    Ok(tags)
}

/// A name for a yard or a trap.
///
/// # Errors
/// [`LabelError`].
pub fn name(text: &str, letters: &impl Letters) -> Result<String, LabelError> {
    label(text, LABEL_MOST, letters)
}

/// The name with a number behind it that is free, where `taken` says that a yard has the name; none where it has not.
pub fn free_name(name: &str, taken: &dyn Fn(&str) -> bool) -> Option<String> {
    let mut free = name.to_owned();
    let mut number = 1_u32;
    while taken(&free) {
        number += 1;
        free = [name, " ", &number.to_string()].concat();
    }
    (number > 1).then_some(free)
}

/// The day the traps were filled; none when they are not in yet.
///
/// # Errors
/// [`DayTypedError`] for an earlier day that cannot be read.
pub fn filled(draft: &BenchDraft, today: Day) -> Result<Option<Day>, DayTypedError> {
    match draft.keep_filled() {
        "today" => Ok(Some(today)),
        "earlier" => typed::day_done(draft.keep_filled_on(), today).map(Some),
        _ => Ok(None),
    }
}

/// Codes of the depths of `boxes` boxes, from the floor up; what was not chosen is a deep.
pub fn depth_codes(text: &str, boxes: usize) -> Vec<&str> {
    text.split(' ')
        .filter(|code| depth(code).is_some())
        .chain(std::iter::repeat("deep"))
        .take(boxes)
        .collect()
}

/// How a trap with this code is built.
pub fn form(code: &str) -> TrapForm {
    match code {
        "one_well" => TrapForm::Lidded { wells: 1, bait: false },
        "two_wells" => TrapForm::Lidded { wells: 2, bait: false },
        "floor" => TrapForm::FloorLure,
        _ => TrapForm::BetweenFrame,
    }
}

/// Whether the traps are used again: as the keeper says, else as traps built so usually are.
pub fn again(draft: &BenchDraft) -> bool {
    match draft.keep_again() {
        "yes" => true,
        "no" => false,
        _ => form(draft.keep_form()) != TrapForm::BetweenFrame,
    }
}

/// Names of the fields that hold the form back, those of the sum above it included.
pub fn to_mend(draft: &BenchDraft, today: Day, letters: &impl Letters) -> Vec<&'static str> {
    let count = |text: &str, most| typed::count(text, 0, most).is_ok();
    let (least, most) = (*TrapKind::MAX_DAYS.start(), *TrapKind::MAX_DAYS.end());
    let bottle = read::maybe(read::holds(draft.bottle(), draft.bottle_unit())).is_ok();
    let mut names = Vec::new();
    for (right, name) in [
        (count(draft.hives(), MOST_HIVES), wy::HIVES),
        (count(draft.boxes(), MOST_BOXES), wy::BOXES),
        (read::holds(draft.holds(), draft.holds_unit()).is_ok(), wy::HOLDS),
        (count(draft.a_box(), MOST_TRAPS_A_BOX), wy::A_BOX),
        (typed::share(draft.fill()).is_ok(), wy::FILL),
        (typed::share(draft.reserve()).is_ok(), wy::RESERVE),
        (bottle, wy::BOTTLE),
        (name(draft.keep_name(), letters).is_ok(), w::NAME),
        (tags(draft.keep_tags(), letters).is_ok(), w::TAGS),
        (name(draft.keep_trap(), letters).is_ok(), w::TRAP),
        (filled(draft, today).is_ok(), w::FILLED_ON),
        (typed::count(draft.keep_days(), u32::from(least), u32::from(most)).is_ok(), w::DAYS),
    ] {
        if !right {
            names.push(name);
        }
    }
    names
}

/// The form as a plan; none while one of its fields cannot be read.
pub fn plan(draft: &BenchDraft, today: Day, letters: &impl Letters) -> Option<KeepPlan> {
    let sum = yard::reckon(draft)?;
    let tags = tags(draft.keep_tags(), letters).ok()?;
    let boxes = depth_codes(draft.keep_depths(), sum.total.boxes as usize);
    let (least, most) = (*TrapKind::MAX_DAYS.start(), *TrapKind::MAX_DAYS.end());
    let max_days = typed::count(draft.keep_days(), u32::from(least), u32::from(most)).ok()?;
    let form = form(draft.keep_form());
    let kind = TrapKind {
        name: name(draft.keep_trap(), letters).ok()?,
        form,
        reusable: again(draft),
        capacity: form.takes_oil().then_some(sum.holds),
        max_days: u16::try_from(max_days).ok()?,
        ..yard::plain_trap(sum.holds, sum.fill)
    };
    Some(KeepPlan {
        yard: name(draft.keep_name(), letters).ok()?,
        tags,
        boxes: boxes.into_iter().filter_map(depth).collect(),
        traps_a_box: u8::try_from(sum.total.a_box).ok()?,
        kind,
        filled: filled(draft, today).ok()?,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use unicode_normalization::UnicodeNormalization;
    use unicode_segmentation::UnicodeSegmentation;

    struct Tables;

    impl Letters for Tables {
        fn normal(&self, text: &str) -> String {
            text.nfc().collect()
        }

        fn visible(&self, text: &str) -> usize {
            text.graphemes(true).count()
        }
    }

    #[test]
    fn the_form_as_it_opens_keeps_ten_hives_of_two_deeps() {
        let today = Day::parse("2026-07-14").unwrap();
        let draft = BenchDraft::default().with("keep_tags", "1–10");
        let plan = plan(&draft, today, &Tables).unwrap();
        assert_eq!((plan.yard.as_str(), plan.tags.len(), plan.traps_a_box), ("My yard", 10, 2));
        assert_eq!(plan.boxes, [BoxDepth::Deep, BoxDepth::Deep]);
        assert_eq!((plan.kind.max_days, plan.filled), (14, Some(today)));
    }

    #[test]
    fn keeper_gives_a_second_yard_the_name_of_the_first_and_is_told_a_free_one() {
        let yards = ["Home", "Home 2"];
        let taken = |name: &str| yards.iter().any(|yard| crate::app::kinds::same_name(yard, name));
        assert_eq!(free_name("home", &taken).as_deref(), Some("home 3"));
        assert_eq!(free_name("HOME 2", &taken).as_deref(), Some("HOME 2 2"));
        assert_eq!(free_name("Hill", &taken), None);
    }

    #[test]
    fn a_trap_is_used_again_as_its_kind_usually_is_until_the_keeper_says_otherwise() {
        let today = Day::parse("2026-07-14").unwrap();
        let used_again = |form: &str, again: &str| {
            let draft = BenchDraft::default().with("keep_tags", "1").with("keep_form", form);
            plan(&draft.with("keep_again", again), today, &Tables).unwrap().kind.reusable
        };
        assert_eq!(["between", "one_well", "floor"].map(|form| used_again(form, "")), [false, true, true]);
        assert_eq!(["between", "one_well"].map(|form| used_again(form, "yes")), [true, true]);
        assert_eq!(["between", "one_well"].map(|form| used_again(form, "no")), [false, false]);
    }

    #[test]
    fn every_field_of_the_form_can_hold_it_back() {
        let today = Day::parse("2026-07-14").unwrap();
        let good = BenchDraft::default().with("keep_tags", "1–10");
        let wrong = [
            good.clone().with("keep_tags", "1, 1"),
            good.clone().with("keep_tags", "1–501"),
            good.clone().with("keep_tags", "A1, a1"),
            good.clone().with("keep_name", " "),
            good.clone().with("keep_trap", "\u{200b}"),
            good.clone().with("keep_days", "0"),
            good.clone().with("keep_filled", "earlier"),
            good.clone().with("keep_filled", "earlier").with("keep_filled_on", "2026-07-15"),
            good.clone().with("fill", "all"),
        ];
        assert_eq!(to_mend(&good, today, &Tables), [""; 0]);
        for draft in wrong {
            assert_eq!(plan(&draft, today, &Tables), None);
            assert_eq!(to_mend(&draft, today, &Tables).len(), 1, "the one that is wrong is named");
        }
        let two = good.clone().with("bottle", "0").with("keep_name", "");
        assert_eq!(to_mend(&two, today, &Tables), [wy::BOTTLE, w::NAME]);
        assert_eq!(plan(&two, today, &Tables), None);
        let later = good.with("keep_filled", "not_yet").with("keep_depths", "medium shallow");
        let plan = plan(&later, today, &Tables).unwrap();
        assert_eq!((plan.filled, plan.boxes), (None, vec![BoxDepth::Medium, BoxDepth::Shallow]));
    }
}
