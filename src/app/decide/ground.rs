//! The ground to treat, from where the hives stand.

use super::chosen::{Chosen, choose};
use super::page::Asked;
use crate::almanac::day::Day;
use crate::almanac::ground::{Ring, Stand};
use crate::almanac::sighting::Seen;
use crate::almanac::typed;
use crate::app::beetle::{bars, told};
use crate::app::bench::draft::{BenchDraft, Slot};
use crate::app::bench::ground::{reckon_on, ring};
use crate::app::bench::read::{self, MOST_HIVES};
use crate::app::bench::view::ground::{self as bench, LABEL, PAVED, RING, say};
use crate::app::bench::view::says::Reads;
use crate::app::bench::view::shown::{self, Shown, Typed};
use crate::app::edge::locale;
use crate::app::el::{Bit, El, below, el, live};
use crate::app::graph::{Memo, RwSignal, StoredValue, untrack};
use crate::app::parts::answer::Answer;
use crate::app::parts::card::more;
use crate::app::parts::choice::Choice;
use crate::app::parts::drawing::{MapStand, stand_map};
use crate::app::parts::field::{Field, Says};
use crate::app::parts::key::{Key, link};
use crate::app::parts::notice::{self, Notice};
use crate::app::place::Place;
use crate::app::round::bits;
use crate::app::round::form::{fold, keys};
use crate::app::state::Ui;
use crate::app::wording::en::{NO_ANSWER, with_unit};
use crate::app::wording::en_beetle::{NO_CLIMATE, TO_CLIMATE};
use crate::app::wording::en_decide::ground as wg;
use crate::app::wording::en_typed;
use crate::app::wording::en_yard_decides::ground as w;
use crate::book::finds;
use crate::book::ground::Ground;
use crate::book::record::Blank;
use crate::book::stands::{Placed, paved, placed};

const PACK: &[Typed] = &[Typed::new("decide-pack", w::PACK, Slot::decide_pack, Reads::More).may_be_empty()];

/// The hives, what is paved, whether the yard is, and the day.
type Found = (Vec<(Placed, String)>, Option<f64>, bool, Day);

pub(super) fn view(asked: &Asked) -> Bit {
    let ui = asked.ui;
    let found = asked.follow(|standing, yard, today| -> Found {
        let mut hives = Vec::new();
        for hive in placed(standing, yard, today) {
            let tag = standing.hives.get(&hive.hive).map(|now| now.tag.clone()).unwrap_or_default();
            hives.push((hive, tag));
        }
        let facts = standing.facts(Blank::YardFacts, Some(yard), None);
        (hives, paved(standing, yard), facts.word("surface") == Some("paved"), today)
    });
    let which = ui.bench().decide_ground();
    let tags = ui.bench().decide_tags();
    // What is drawn and reckoned: the hives that were chosen, and those of them nobody placed.
    let chosen: Memo<Chosen> = Memo::new(move || {
        found.with(|(hives, ..)| which.with(|which| tags.with(|tags| choose(hives, which, tags))))
    });
    let worked = shown::following(
        ui,
        Box::new(move |ui, draft, shown| {
            let stands: Vec<Stand> =
                chosen.with(|(placed, _)| placed.iter().map(|(stand, _)| *stand).collect());
            show(ui, draft, &stands, found.with(|(_, paved, ..)| *paved), shown)
        }),
    );
    let none_placed =
        Memo::new(move || found.with(|(hives, ..)| hives.iter().all(|(hive, _)| hive.stand.is_none())));
    // Rows of an example are shown to whoever asks for one, and never pass for the yard.
    let example = RwSignal::new(false);
    let choice = Choice::new("decide-ground", w::WHICH).options(&w::CHOICES).text(which).view();
    let tags_field = live(move || {
        let by_tag = which.with(|which| which == "tags");
        by_tag.then(|| {
            let says = move || match tags.with(|tags| typed::tags(tags, MOST_HIVES as usize)) {
                Ok(_) => Says::Nothing,
                Err(error) => Says::Wrong(en_typed::tags(&error)),
            };
            Field::new("decide-tags", w::TAGS, tags).wide().hint(w::TAGS_HINT).says(says).view()
        })
    });
    // Asked apart: another stand moves the drawing, and draws nothing anew around it.
    let told_paved = Memo::new(move || found.with(|(_, paved, ..)| paved.is_some()));
    let body = live(move || {
        if none_placed.get() {
            return nobody_placed(ui, &found, example);
        }
        let paving = if told_paved.get() {
            Bit::from(el("p").class("small").text(w::PAVED_TOLD))
        } else {
            shown::fields(ui, PAVED).into()
        };
        bits![
            live(move || chosen.with(|chosen| left_out(&found, chosen, which))),
            paving,
            more(w::REST, below(move || shown::fields(ui, RING))),
            shown::answer(wg::GROUND, worked, 0).why(wg::WHY).mark("ground-area").view(),
            below(move || bits![
                el("div").test_id("ground-map").kid(live(move || map(ui, chosen))),
                Notice::caution(wg::LAW).why(wg::LAW_WHY).view(),
                shown::fields(ui, LABEL),
                shown::answer(wg::PRODUCT, worked, 1).mark("ground-product").view(),
                shown::answer(wg::WATER_FOR, worked, 2).view(),
            ]),
        ]
    });
    let pack = move || {
        let stands = chosen.with(|(placed, _)| placed.iter().map(|(stand, _)| *stand).collect::<Vec<_>>());
        let paved = found.with(|(_, paved, ..)| *paved);
        let by_rows = none_placed.get();
        if by_rows && !example.get() {
            return Some((NO_ANSWER.to_owned(), vec![w::NO_STANDS.to_owned()]));
        }
        ui.draft.with(|draft| packs_of(draft, (!by_rows).then_some(&*stands), paved))
    };
    let surface =
        live(move || found.with(|(_, _, paved, _)| paved.then(|| Notice::caution(w::SURFACE).view())));
    let (of, yard) = (asked.clone(), asked.yard.to_string());
    bits![
        surface,
        el("div").class("card-body stack").kid(choice).kid(tags_field).kid(body).kid(below(move || bits![
            shown::fields(ui, PACK),
            Answer::of(w::PACKS, pack).mark("ground-packs").view()
        ])),
        // A year of soil for each find: the ground is measured and drawn before.
        below(move || bits![
            el("h2").class("part-title").text(w::WINDOW),
            window(&of, &found),
            el("h2").class("part-title").text(w::CARD),
            el("ul").class("plain-list").kids(w::CARD_LINES.map(|line| el("li").text(line))),
            notice::why(w::CARD_WHY),
            el("p").class("small").text(wg::LIME),
            keys(link(w::WRITE, &Place::Write(Blank::Ground, Some(yard.clone()))).class("key key-big")),
        ]),
    ]
}

/// No stand is known: nothing is drawn or reckoned, but for an example that somebody asks for.
fn nobody_placed(ui: Ui, found: &Memo<Found>, example: RwSignal<bool>) -> Bit {
    let rows = move || {
        if example.get() {
            let caution = Notice::caution(w::EXAMPLE).view().test_id("ground-example");
            bits![caution, untrack(|| bench::view(ui))]
        } else {
            keys(Key::new(w::EXAMPLE_KEY, move || example.set(true)).mark("ground-show").view()).into()
        }
    };
    bits![
        el("p").class("lead").test_id("ground-no-stands").text(w::NO_STANDS),
        stands_keys(found, None),
        live(rows),
    ]
}

/// Hives without a stand, by name, and the ways to write it down.
fn left_out(found: &Memo<Found>, chosen: &Chosen, which: RwSignal<String>) -> Bit {
    let (placed, left_out) = chosen;
    let mut bits = Vec::new();
    if placed.is_empty() && left_out.is_empty() {
        let why = if which.with_untracked(|which| which == "larvae") { w::NO_LARVAE } else { w::NONE };
        bits.push(Bit::from(el("p").text(why)));
    }
    if !left_out.is_empty() {
        let said = [w::NO_STAND, &left_out.join(", ")].concat();
        bits.push(Notice::caution(&said).view().test_id("ground-left-out").into());
        bits.push(stands_keys(found, Some(left_out)).into());
    }
    Bit::Many(bits)
}

/// Ways to the forms of the hives that nobody placed: of all of them, or of those with these tags. One that stands elsewhere
/// by now would be placed there.
fn stands_keys(found: &Memo<Found>, of: Option<&[String]>) -> Option<El> {
    let ways = found.with_untracked(|(hives, ..)| {
        hives
            .iter()
            .filter(|(hive, tag)| hive.here && hive.stand.is_none() && of.is_none_or(|of| of.contains(tag)))
            .map(|(hive, tag)| {
                let place = Place::Write(Blank::Stand, Some(hive.hive.to_string()));
                el("li").kid(link(crate::app::wording::en_round::hive(tag), &place))
            })
            .collect::<Vec<El>>()
    });
    (!ways.is_empty()).then(|| more(w::STANDS, el("ul").class("ways").kids(ways)))
}

fn map(ui: Ui, chosen: Memo<Chosen>) -> Option<Bit> {
    let ring: Ring = ui.draft.with(|draft| ring(draft).ok())?;
    let unit = ui.draft.with(|draft| if draft.ground_reach_unit() == "ft" { "ft" } else { "m" });
    let far = |millimetres: f64| with_unit(&locale::number(millimetres / read::way_unit(unit), 1), unit);
    chosen.with(|(placed, _)| {
        let stands: Vec<MapStand<'_>> =
            placed.iter().map(|(stand, tag)| MapStand { stand: *stand, tag }).collect();
        let (drawn, left_out) = stand_map(&stands, &ring, read::way_unit(unit), &far)?;
        let said = (!left_out.is_empty()).then(|| {
            let said = [w::NO_ROOM, &left_out.join(", ")].concat();
            el("p").class("small").test_id("ground-no-room").text(&said)
        });
        Some(bits![drawn, said])
    })
}

fn show(ui: Ui, draft: &BenchDraft, stands: &[Stand], paved: Option<f64>, shown: &mut Shown) -> Option<()> {
    // Ground round no hive is no answer, and not 0.
    if stands.is_empty() {
        return None;
    }
    reckon_on(draft, stands, paved).map(|sum| say(ui, draft, &sum, shown))
}

/// Packs for what the label's rate comes to.
fn packs_of(
    draft: &BenchDraft,
    stands: Option<&[Stand]>,
    paved: Option<f64>,
) -> Option<(String, Vec<String>)> {
    let sum = match stands {
        Some([]) => return None,
        Some(stands) => reckon_on(draft, stands, paved)?,
        None => crate::app::bench::ground::reckon(draft)?,
    };
    let pack = read::maybe(read::more(draft.decide_pack())).ok()?;
    let (Some((_, amount)), Some(pack)) = (sum.rate, pack) else {
        return Some((NO_ANSWER.to_owned(), vec![w::NO_PACK.to_owned()]));
    };
    let pack = pack.as_f64();
    let whole = up(amount / pack);
    let packs = locale::whole(whole);
    let line = w::packs(&locale::number(amount, 2), &locale::number(pack, 6), &packs);
    Some((packs, vec![line]))
}

/// Up to whole ones; float noise is nothing to buy.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // a float cast stops at the ends of u32
fn up(number: f64) -> u32 {
    (number - 1e-9).ceil().max(0.0) as u32
}

/// The days by the finds, where the Beetle's clock has them.
fn window(asked: &Asked, found: &Memo<Found>) -> Bit {
    let (walk, yard, found) = (asked.walk, asked.yard.clone(), *found);
    let turn = walk.records.turn();
    let of = yard.clone();
    let ends = Memo::new(move || {
        let (today, _) = (walk.today.get(), turn.get());
        walk.records.book.with_untracked(|book| {
            let standing = book.standing();
            let Some(ground) = Ground::of(standing, &of, today) else {
                // Where nothing was found either, temperatures would bring no days.
                let dated = |find: &finds::Find| find.sighting.seen != Seen::AdultsOnly;
                return (finds::finds(standing, &of, today).iter().any(dated), None);
            };
            let ways = finds::under_way(standing, &of, today, &ground, &ground.weather(today), None);
            (false, told::in_ground(&ways))
        })
    });
    let climate = Place::Write(Blank::Climate, Some(yard.to_string()));
    // A hundred hives have a hundred bars: they are drawn where somebody asks for them.
    let each = move || {
        let today = found.with_untracked(|(.., today)| *today);
        let told = walk.records.book.with_untracked(|book| told::of_yard(book, &yard, today, None));
        bars::all(&told.unwrap_or_default(), today)
    };
    let each = StoredValue::new(each);
    live(move || {
        ends.with(|ends| match ends {
            (_, Some((from, until, hives))) => {
                let hives = u32::try_from(*hives).unwrap_or(u32::MAX);
                bits![
                    el("p").class("lead").test_id("ground-window").text(&w::window(*from, *until, hives)),
                    el("p").text(w::WINDOW_HOW),
                    fold(w::WINDOW_EACH, "ground-each", move || each.with_value(|each| each())),
                ]
            }
            (true, None) => {
                bits![el("p").test_id("ground-window").text(NO_CLIMATE), keys(link(TO_CLIMATE, &climate)),]
            }
            (false, None) => el("p").test_id("ground-window").text(w::NO_WINDOW).into(),
        })
    })
}
