//! More hives in a yard, many at a time.

use super::keys::Desk;
use crate::almanac::day::Day;
use crate::almanac::quantity::Share;
use crate::almanac::stack::{BoxDepth, HiveSize};
use crate::almanac::typed::{self, DayTypedError};
use crate::app::bench::keep::tags;
use crate::app::bench::read::MOST_BOXES;
use crate::app::bench::view::says;
use crate::app::edge::letters::BrowserLetters;
use crate::app::el::{Bit, live};
use crate::app::graph::{RwSignal, effect, untrack};
use crate::app::hive::{kind_choice, trap_fits};
use crate::app::parts::choice::Choice;
use crate::app::parts::field::{Field, Says};
use crate::app::parts::notice::Notice;
use crate::app::parts::stepper::Stepper;
use crate::app::round::bits;
use crate::app::round::form::{Make, clear, go};
use crate::app::wording::{en, en_bench, en_hive as w, en_round, en_typed};
use crate::book::Book;
use crate::book::id::ThingId;
use crate::book::write::{HivePlan, KindChoice, MOST_HIVES};

/// What stands in the form.
#[derive(Clone, Copy)]
struct Typed {
    tags: RwSignal<String>,
    size: RwSignal<String>,
    boxes: RwSignal<String>,
    depth: RwSignal<String>,
    a_box: RwSignal<String>,
    kind: RwSignal<String>,
    filled: RwSignal<String>,
    filled_on: RwSignal<String>,
}

impl Typed {
    fn size(self) -> HiveSize {
        if self.size.with(|code| code == "nuc") { HiveSize::Nuc } else { HiveSize::Full }
    }

    fn depth(self) -> BoxDepth {
        self.depth.with(|code| match code.as_str() {
            "medium" => BoxDepth::Medium,
            "shallow" => BoxDepth::Shallow,
            _ => BoxDepth::Deep,
        })
    }

    /// The day the traps were filled; none when they are not in yet.
    fn filled(self, today: Day) -> Result<Option<Day>, DayTypedError> {
        match self.filled.get().as_str() {
            "today" => Ok(Some(today)),
            "earlier" => self.filled_on.with(|text| typed::day_done(text, today)).map(Some),
            _ => Ok(None),
        }
    }

    fn kind(self) -> Option<ThingId> {
        self.kind.with(|kind| ThingId::parse(kind).ok())
    }

    /// The plan, when every field can be read.
    fn plan(self, book: &Book, today: Day) -> Option<(ThingId, HivePlan)> {
        let kind = self.kind()?;
        let size = self.size();
        let boxes = self.boxes.with(|text| typed::count(text, 0, MOST_BOXES)).ok()?;
        let a_box = self.a_box.with(|text| typed::count(text, 0, u32::from(size.places()))).ok()?;
        let filled = self.filled(today).ok()?;
        let fill: Option<Share> = book.standing().kinds.get(&kind).map(|now| now.kind.fill);
        let plan = HivePlan {
            tags: self.tags.with(|text| tags(text, &BrowserLetters)).ok()?,
            size,
            boxes: vec![(self.depth(), u8::try_from(a_box).ok()?); boxes as usize],
            since: filled.unwrap_or(today),
            filled: filled.and(fill),
        };
        Some((kind, plan))
    }
}

/// The form.
pub(super) fn view(desk: Desk) -> Bit {
    let text = |text: &str| RwSignal::new(text.to_owned());
    // As high as the last hive of the yard: new ones are mostly like those that stand there.
    let high = desk.form.walk.records.book.with_untracked(|book| {
        let standing = book.standing();
        desk.yard
            .with_value(|yard| standing.hives_of(yard, true).last().map_or(1, |(_, hive)| hive.boxes.len()))
    });
    let t = Typed {
        tags: text(""),
        size: text("full"),
        boxes: text(&high.max(1).to_string()),
        depth: text("deep"),
        a_box: text("2"),
        kind: text(""),
        filled: text("today"),
        filled_on: text(""),
    };
    // A nuc has room for half the traps; a number of the keeper's own stays.
    effect(move || {
        let usual = t.size().usual_traps().to_string();
        let plain = t.a_box.with_untracked(|text| text == "1" || text == "2");
        if plain {
            t.a_box.set(usual);
        }
    });
    let book = desk.form.walk.records.book;
    let today = desk.form.walk.today;
    let too_big = move || {
        let (kind, depth) = (t.kind()?, t.depth());
        let none = t.a_box.with(|text| text.trim() == "0");
        book.with(|book| trap_fits(book, &kind, depth)).filter(|_| !none)
    };
    let put = move || {
        if untrack(too_big).is_some() {
            return;
        }
        let Some((kind, plan)) = untrack(|| book.with(|book| t.plan(book, today.get()))) else { return };
        let yard = desk.yard.get_value();
        let kind = KindChoice::Known(kind);
        let typed = t.tags.get_untracked();
        let make: Make<'_> = &|book, pen, _, _| book.add_hives(pen, &yard, &kind, &plan, &BrowserLetters);
        let then = Box::new(move || clear(t.tags, &typed));
        desk.form.put_then("add-hives", w::hives_added(plan.tags.len()), make, then);
    };
    let filled_on = move || {
        t.filled.with(|code| code == "earlier").then(|| {
            Field::new("hives-filled-on", en_bench::keep::FILLED_ON, t.filled_on)
                .day()
                .says(move || match t.filled(today.get()) {
                    Ok(Some(day)) => Says::Echo(en::echo(&w::day_and_how_far(day, today.get()))),
                    Ok(None) => Says::Nothing,
                    Err(error) => Says::Wrong(en_typed::day(error)),
                })
                .view()
        })
    };
    let tags = Field::new("hives-tags", w::TAGS, t.tags).wide().hint(w::TAGS_HINT);
    let boxes = Stepper::new("hives-boxes", w::BOX_COUNT, t.boxes, 0, MOST_BOXES);
    let a_box = Stepper::new("hives-a-box", w::A_BOX, t.a_box, 0, 18);
    bits![
        tags.says(move || tags_says(desk, t.tags)).view(),
        Choice::new("hives-size", w::SIZE).option("full", w::FULL).option("nuc", w::NUC).text(t.size).view(),
        boxes.says(move || says::count(t.boxes, 0, MOST_BOXES)).view(),
        Choice::new("hives-depth", w::DEPTH)
            .option("deep", en_bench::DEEP)
            .option("medium", en_bench::MEDIUM)
            .option("shallow", en_bench::SHALLOW)
            .text(t.depth)
            .view(),
        a_box.says(move || says::count(t.a_box, 0, u32::from(t.size().places()))).view(),
        desk.yard.with_value(|yard| kind_choice(book, t.kind, "hives-kind", yard, None)),
        live(move || too_big().map(|too_big| Notice::alarm(too_big).view())),
        Choice::new("hives-filled", en_bench::keep::FILLED)
            .option("today", en_bench::keep::TODAY)
            .option("earlier", en_bench::keep::EARLIER)
            .option("not_yet", en_bench::keep::NOT_YET)
            .text(t.filled)
            .view(),
        live(filled_on),
        desk.form.refused("add-hives"),
        go(w::ADD_HIVES_KEY, "add-hives-go", put),
    ]
}

/// What is wrong with the tags, or which one is taken; how many hives they name.
fn tags_says(desk: Desk, text: RwSignal<String>) -> Says {
    if text.with(|text| text.trim().is_empty()) {
        return Says::Nothing;
    }
    let tags = match text.with(|text| tags(text, &BrowserLetters)) {
        Ok(tags) => tags,
        Err(error) => return Says::Wrong(en_typed::tags(&error)),
    };
    let book = desk.form.walk.records.book;
    book.with(|book| {
        desk.yard.with_value(|yard| {
            let standing = book.standing().hives_of(yard, true).count();
            if standing + tags.len() > MOST_HIVES {
                let refusal = crate::book::write::Refusal::TooManyHives { most: MOST_HIVES };
                return Says::Wrong(en_round::refusal(&refusal));
            }
            for tag in &tags {
                if let Err(refusal) = book.tag_free(yard, None, tag, &BrowserLetters) {
                    let said = [en_round::own(tag), ": ".to_owned(), en_round::refusal(&refusal)].concat();
                    return Says::Wrong(said);
                }
            }
            Says::Echo(en_typed::hives_named(&tags))
        })
    })
}
