//! The form of one kind.

use super::draft::{KindDraft, MOST_PACKS, MOST_POINTS, Wrong, side};
use super::rows::Rows;
use crate::almanac::spill::spill;
use crate::almanac::typed::{self, TypedError};
use crate::app::bench::read::MOST_PIECES;
use crate::app::bench::view::says;
use crate::app::edge::letters::BrowserLetters;
use crate::app::edge::locale;
use crate::app::frame::heading;
use crate::app::parts::answer::Answer;
use crate::app::parts::card::more;
use crate::app::parts::choice::Choice;
use crate::app::parts::field::{Field, Says};
use crate::app::parts::key::link;
use crate::app::parts::notice::{Notice, why};
use crate::app::parts::stepper::Stepper;
use crate::app::place::Place;
use crate::app::records::Records;
use crate::app::state::Ui;
use crate::app::wording::en_kinds as w;
use crate::app::wording::{en, en_typed};
use crate::book::entry::What;
use crate::book::id::ThingId;
use leptos::prelude::*;

type Text = RwSignal<String>;
/// A text and the code of its unit.
type Sides = [(Text, Text); 3];

/// A signal for every field.
#[derive(Clone, Copy)]
struct Typed {
    name: Text,
    form: Text,
    bait: Text,
    reuse: Text,
    inner: Sides,
    outer: Sides,
    holds: (Text, Text),
    sure: RwSignal<bool>,
    fill: Text,
    days: Text,
    packs: Rows,
    points: Rows,
}

/// The codes of a yes and a no.
fn code(yes: bool) -> String {
    if yes { "yes" } else { "no" }.to_owned()
}

impl Typed {
    fn new(draft: KindDraft) -> Typed {
        let pair = |(text, unit): (String, String)| (RwSignal::new(text), RwSignal::new(unit));
        Typed {
            name: RwSignal::new(draft.name),
            form: RwSignal::new(draft.form),
            bait: RwSignal::new(code(draft.bait)),
            reuse: RwSignal::new(code(draft.reusable)),
            inner: draft.inner.map(pair),
            outer: draft.outer.map(pair),
            holds: pair(draft.holds),
            sure: RwSignal::new(draft.sure),
            fill: RwSignal::new(draft.fill),
            days: RwSignal::new(draft.days),
            packs: Rows::new(draft.packs, MOST_PACKS),
            points: Rows::new(draft.points, MOST_POINTS),
        }
    }

    fn draft(&self) -> KindDraft {
        let pair = |(text, unit): (Text, Text)| (text.get(), unit.get());
        KindDraft {
            name: self.name.get(),
            form: self.form.get(),
            bait: self.bait.with(|code| code == "yes"),
            reusable: self.reuse.with(|code| code == "yes"),
            inner: self.inner.map(pair),
            outer: self.outer.map(pair),
            holds: pair(self.holds),
            sure: self.sure.get(),
            fill: self.fill.get(),
            days: self.days.get(),
            packs: self.packs.typed(),
            points: self.points.typed(),
        }
    }
}

/// The form of the kind with the id `id`, or of a new one.
pub fn view(ui: Ui, records: Records, id: &str) -> AnyView {
    let prefs = ui.prefs.get_untracked();
    let of = if id == "new" { None } else { ThingId::parse(id).ok() };
    let known = records.book.with_untracked(|book| {
        let now = book.standing().kinds.get(of.as_ref()?)?;
        Some(KindDraft::of(&now.kind, prefs.volume, prefs.length))
    });
    let back = view! { <p class="back">{link(w::TITLE, &Place::Kinds)}</p> };
    let draft = match known {
        // The demonstration stays as it is: what is written about it would outlive it.
        Some(_) if of.as_ref().is_some_and(ThingId::is_demo) => None,
        None if id == "new" => Some(KindDraft::empty(prefs.volume, prefs.length)),
        known => known,
    };
    let Some(draft) = draft else {
        return view! {
            {back}
            {heading(w::NEW)}
            <p>{w::UNKNOWN}</p>
        }
        .into_any();
    };
    view! {
        {back}
        {heading(w::NEW)}
        {fields(ui, records, of, Typed::new(draft))}
    }
    .into_any()
}

fn fields(ui: Ui, records: Records, of: Option<ThingId>, typed: Typed) -> AnyView {
    // A handle: the fields together are too many to be carried into every closure.
    let typed = StoredValue::new(typed);
    let t = typed.get_value();
    let draft = Memo::new(move |_| typed.with_value(Typed::draft));
    let oil = Memo::new(move |_| draft.with(|draft| draft.built().takes_oil()));
    let lidded = Memo::new(move |_| draft.with(|draft| draft.built().lidded()));
    let bait = move || {
        lidded.get().then(|| {
            view! {
                {Choice::new("kind-bait", w::BAIT).option("no", w::BAIT_OFF).option("yes", w::BAIT_ON).text(t.bait).view()}
                {why(w::BAIT_WHY.to_owned())}
            }
        })
    };
    view! {
        <div class="card-body kind-form">
            {Field::new("kind-name", w::NAME, t.name)
                .wide()
                .says(move || match draft.with(|draft| draft.named(&BrowserLetters)) {
                    Ok(_) => Says::Nothing,
                    Err(error) => Says::Wrong(en_typed::label(error)),
                })
                .view()}
            {Choice::new("kind-form", w::FORM)
                .option("between", w::FORM_BETWEEN)
                .option("one_well", w::FORM_ONE)
                .option("two_wells", w::FORM_TWO)
                .option("floor", w::FORM_FLOOR)
                .text(t.form)
                .view()}
            {bait}
            {Choice::new("kind-reuse", w::REUSE)
                .option("no", w::REUSE_NO)
                .option("yes", w::REUSE_YES)
                .text(t.reuse)
                .view()}
            {move || oil.get().then(|| typed.with_value(|t| oil_fields(ui, t, draft)))}
            {Stepper::new("kind-days", w::DAYS, t.days, 1, 120)
                .says(move || said(draft.with(KindDraft::longest).map(|_| Says::Nothing)))
                .view()}
            {more(w::SIZES, sizes(ui, &t))}
            {more(w::PACKS, packs(t.packs))}
            {move || oil.get().then(|| more(w::POINTS, points(t.points, draft)))}
            {keep(ui, records, of, draft)}
        </div>
    }
    .into_any()
}

fn said(read: Result<Says, Wrong>) -> Says {
    read.unwrap_or_else(|wrong| Says::Wrong(w::wrong(wrong)))
}

fn oil_fields(ui: Ui, t: &Typed, draft: Memo<KindDraft>) -> AnyView {
    let (holds_typed, sure_ticked, fill_typed) = (t.holds, t.sure, t.fill);
    let holds = move || match draft.with(KindDraft::capacity) {
        Ok(None) => Says::Nothing,
        Ok(Some(_)) => says::volume(ui, holds_typed.0, holds_typed.1),
        Err(wrong) => Says::Wrong(w::wrong(wrong)),
    };
    let sure = move || {
        draft.with(KindDraft::unusual).map(|holds| {
            view! {
                <label class="tick">
                    <input
                        type="checkbox"
                        prop:checked=move || sure_ticked.get()
                        on:change=move |event| sure_ticked.set(event_target_checked(&event))
                    />
                    <span>{w::sure(&ui.volume(holds.volume()))}</span>
                </label>
            }
        })
    };
    let fill = move || match draft.with(KindDraft::filled_to) {
        Ok(_) => says::share(fill_typed),
        Err(Wrong::Typed(error)) => Says::Wrong(en_typed::share(error)),
        Err(wrong) => Says::Wrong(w::wrong(wrong)),
    };
    view! {
        <div class="fields">
            {Field::new("kind-holds", w::HOLDS, holds_typed.0)
                .decimal()
                .volume(holds_typed.1)
                .hint(w::HOLDS_HINT)
                .says(holds)
                .view()}
            {Field::new("kind-fill", w::FILL, fill_typed).says(fill).view()}
        </div>
        {sure}
        {Answer::new(w::TAKES, move || draft.with(|draft| takes(ui, draft)).map_or_else(|| en::NO_ANSWER.to_owned(), |(each, _)| each))
            .sum(move || draft.with(|draft| takes(ui, draft)).into_iter().map(|(_, sum)| sum).collect())
            .view()}
        {move || draft.with(spills)}
    }
    .into_any()
}

/// Oil for one fill, and its sum.
fn takes(ui: Ui, draft: &KindDraft) -> Option<(String, String)> {
    let (capacity, share) = draft.one_fill()?;
    let each = ui.volume(capacity.times(share));
    Some((each.clone(), w::fill_sum(&ui.volume(capacity), &locale::percent(share, 1), &each)))
}

/// The spill angle and what follows from it.
fn spills(draft: &KindDraft) -> AnyView {
    let Ok(fill) = draft.filled_to() else { return ().into_any() };
    if draft.built().lidded() {
        return Notice::plain(w::LID).view();
    }
    let sides = (side(&draft.inner[0]), side(&draft.inner[2]));
    let angle = match sides {
        (Ok(Some(length)), Ok(Some(depth))) => spill(length.length(), depth.length(), fill),
        _ => None,
    };
    let degrees = angle.map(|angle| w::degrees(&locale::number(angle.degrees, 1)));
    let percent = fill.fraction() * 100.0;
    let notice = match (&degrees, percent) {
        (Some(degrees), p) if p > 75.0 => Notice::alarm(w::too_full(degrees)),
        (None, p) if p > 75.0 => Notice::alarm(w::TOO_FULL),
        (Some(degrees), p) if p > 60.0 => Notice::caution(w::full(degrees)),
        _ => Notice::caution(w::HALF),
    };
    let answer = match degrees {
        Some(degrees) => Answer::new(w::SPILLS, move || degrees.clone()).view(),
        None => view! { <p class="small">{w::NO_SIDES}</p> }.into_any(),
    };
    view! { {answer} {notice.view()} }.into_any()
}

fn sizes(ui: Ui, t: &Typed) -> AnyView {
    let group = move |id: &'static str, sides: Sides, label: fn(&str) -> String| {
        let fields: Vec<AnyView> = sides
            .into_iter()
            .zip(w::SIDES)
            .map(|((text, unit), name)| {
                let says = move || {
                    let typed = (text.get(), unit.get());
                    said(side(&typed).map(|side| match side {
                        Some(_) => says::length(ui, text, unit),
                        None => Says::Nothing,
                    }))
                };
                Field::new([id, name].concat(), label(name), text).decimal().length(unit).says(says).view()
            })
            .collect();
        view! { <div class="fields">{fields}</div> }
    };
    view! {
        <h2 class="sub">{w::INNER}</h2>
        <p class="small">{w::INNER_HINT}</p>
        {group("kind-inner-", t.inner, w::inside)}
        <h2 class="sub">{w::OUTER}</h2>
        <p class="small">{w::OUTER_HINT}</p>
        {group("kind-outer-", t.outer, w::outside)}
    }
    .into_any()
}

fn packs(rows: Rows) -> AnyView {
    let rows = rows.view(w::MORE_PACKS, |place, pieces, price| {
        let number = (place + 1).to_string();
        let blank = move || pieces.with(|text| text.trim().is_empty());
        let no_price = move || {
            price.with(|text| match typed::price(text) {
                Ok(price) => price.millionths() == 0,
                Err(error) => error == TypedError::Empty,
            })
        };
        let pieces_says = move || {
            let alone = blank() && price.with(|text| text.trim().is_empty());
            if alone { Says::Nothing } else { says::count(pieces, 1, MOST_PIECES) }
        };
        let price_says = move || match (no_price(), blank()) {
            (true, true) => Says::Nothing,
            (true, false) => Says::Echo(w::NO_PRICE.to_owned()),
            (false, _) => says::price(price),
        };
        (
            Field::new(["kind-pieces-", &number].concat(), w::row(w::PIECES, place + 1), pieces)
                .whole()
                .says(pieces_says),
            Field::new(["kind-price-", &number].concat(), w::row(w::PRICE, place + 1), price)
                .decimal()
                .says(price_says),
        )
    });
    view! { <p class="small">{w::PACKS_HINT}</p> {rows} }.into_any()
}

fn points(rows: Rows, draft: Memo<KindDraft>) -> AnyView {
    let rows = rows.view(w::MORE_POINTS, move |place, level, oil| {
        let number = (place + 1).to_string();
        let wrong = move || match draft.with(KindDraft::measured) {
            Err((at, wrong)) if at == place => Some(wrong),
            _ => None,
        };
        let oil_says = move || match wrong() {
            Some(wrong) => Says::Wrong(w::wrong(wrong)),
            None => Says::Nothing,
        };
        (
            Field::new(["kind-level-", &number].concat(), w::row(w::LEVEL, place + 1), level),
            Field::new(["kind-oil-", &number].concat(), w::row(w::OIL, place + 1), oil)
                .decimal()
                .says(oil_says),
        )
    });
    view! { <p class="small">{w::POINTS_HINT}</p> {rows} }.into_any()
}

fn keep(ui: Ui, records: Records, of: Option<ThingId>, draft: Memo<KindDraft>) -> AnyView {
    let ready = Memo::new(move |_| draft.with(|draft| draft.read(&BrowserLetters).is_some()));
    let failed = RwSignal::new(false);
    let press = move |_| {
        let Some(kind) = draft.with_untracked(|draft| draft.read(&BrowserLetters)) else { return };
        let written = records.book.with_untracked(|book| {
            let today = ui.today.get_untracked();
            let (day, what) = match &of {
                Some(of) => {
                    let day = today.max(super::first_day(book, of));
                    (day, What::KindChanged { kind: of.clone(), now: kind })
                }
                None => (today, What::Kind(kind)),
            };
            book.about_keeper(&records.pen(), day, what)
        });
        if records.put(written, w::SAVED).is_ok() {
            ui.said.set(w::SAVED.to_owned());
            ui.go(&Place::Kinds);
        } else {
            failed.set(true);
        }
    };
    view! {
        <p class="keys">
            <button
                type="button"
                class="key key-primary key-big"
                data-testid="kind-save"
                disabled=move || !ready.get()
                on:click=press
            >
                {w::SAVE}
            </button>
        </p>
        <div role="status">
            {move || (!ready.get()).then(|| view! { <p>{w::MEND}</p> })}
            {move || failed.get().then(|| Notice::alarm(w::NOT_KEPT).view())}
        </div>
    }
    .into_any()
}
