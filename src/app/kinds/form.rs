//! The form of one kind.

use super::draft::{KindDraft, MOST_PACKS, MOST_POINTS, Wrong, side};
use super::keep::{self, Which};
use super::rows::Rows;
use crate::almanac::spill::spill;
use crate::almanac::text::LabelError;
use crate::almanac::typed::{self, TypedError};
use crate::app::bench::read::MOST_PIECES;
use crate::app::bench::view::says::{self, Reads};
use crate::app::edge::letters::BrowserLetters;
use crate::app::edge::locale;
use crate::app::el::{Bit, El, el, live};
use crate::app::frame::heading;
use crate::app::graph::{Memo, RwSignal, StoredValue, effect};
use crate::app::ledger::edit;
use crate::app::load::page::tick;
use crate::app::parts::answer::Answer;
use crate::app::parts::card::more;
use crate::app::parts::choice::Choice;
use crate::app::parts::field::{Field, Says};
use crate::app::parts::key::link;
use crate::app::parts::notice::{Notice, why};
use crate::app::parts::stepper::Stepper;
use crate::app::place::Place;
use crate::app::records::Records;
use crate::app::round::form::level_says;
use crate::app::state::Ui;
use crate::app::wording::en_book::history;
use crate::app::wording::en_kinds as w;
use crate::app::wording::{en, en_typed};
use crate::book::entry::What;
use crate::book::id::ThingId;

type Text = RwSignal<String>;
/// A text and the code of its unit.
type Sides = [(Text, Text); 3];

/// A signal for every field. Handed about behind one handle: together they are too many.
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
pub fn view(ui: Ui, records: Records, id: &str) -> Bit {
    let prefs = ui.prefs.get_untracked();
    // A line as it was written, or the kind as it stands.
    let line = records.book.with_untracked(|book| {
        let line = book.log().get(&super::line_of(id)?)?;
        let kind = edit::kind(line)?;
        let root = book.log().chains().root(line).thing(0);
        let of = if let What::KindChanged { kind, .. } = &line.what { kind.clone() } else { root };
        Some((line.clone(), of, KindDraft::of(kind, prefs.volume, prefs.length)))
    });
    let of = line.as_ref().map(|(_, of, _)| of.clone()).or_else(|| ThingId::parse(id).ok());
    let known = records.book.with_untracked(|book| {
        let now = book.standing().kinds.get(of.as_ref()?)?;
        Some(KindDraft::of(&now.kind, prefs.volume, prefs.length))
    });
    let (line, known) = match line {
        Some((line, _, draft)) => (Some(line), Some(draft)),
        None => (None, known),
    };
    let back = match &line {
        Some(_) => link(history::TITLE, &Place::History(None)),
        None => link(w::TITLE, &Place::Kinds),
    };
    let back = el("p").class("back").kid(back);
    let draft = match known {
        // The demonstration stays as it is: what is written about it would outlive it.
        Some(_) if of.as_ref().is_some_and(ThingId::is_demo) => None,
        None if id == "new" => Some(KindDraft::empty(prefs.volume, prefs.length)),
        known => known,
    };
    let body = match draft {
        Some(draft) => {
            let left = ui.kind_draft.get_value().filter(|(address, _)| address == id);
            let typed = StoredValue::new(Typed::new(left.map_or_else(|| draft.clone(), |(_, left)| left)));
            let address = id.to_owned();
            // What is typed is still there after a look elsewhere.
            effect(move || {
                let now = typed.with_value(Typed::draft);
                let mine =
                    ui.kind_draft.with_value(|left| left.as_ref().is_some_and(|left| left.0 == address));
                if mine || now != draft {
                    ui.kind_draft.set_value((now != draft).then(|| (address.clone(), now)));
                }
            });
            fields(ui, records, Which { of, line }, typed)
        }
        None => el("p").text(w::UNKNOWN),
    };
    Bit::Many(vec![back.into(), heading(w::NEW).into(), body.into()])
}

fn fields(ui: Ui, records: Records, which: Which, typed: StoredValue<Typed>) -> El {
    let t = typed.get_value();
    let tried = RwSignal::new(false);
    let draft = Memo::new(move || typed.with_value(Typed::draft));
    let oil = Memo::new(move || draft.with(|draft| draft.built().takes_oil()));
    let lidded = Memo::new(move || draft.with(|draft| draft.built().lidded()));
    let own = which.of.clone();
    let twice = move |name: &str| {
        records.book.with(|book| {
            let mut kinds = book.standing().kinds.iter().filter(|(id, now)| !now.retired && !id.is_demo());
            kinds.any(|(id, now)| Some(id) != own.as_ref() && super::same_name(&now.kind.name, name))
        })
    };
    let name_says = move || match draft.with(|draft| draft.named(&BrowserLetters)) {
        Ok(name) if twice(&name) => Says::Echo(w::TWICE.to_owned()),
        // A form that was just opened has nothing wrong with it yet.
        Err(LabelError::Empty) if t.name.with(String::is_empty) && !tried.get() => Says::Nothing,
        Ok(_) => Says::Nothing,
        Err(error) => Says::Wrong(en_typed::label(error)),
    };
    let (bait_code, points_rows) = (t.bait, t.points);
    let bait = live(move || {
        lidded.get().then(|| {
            let choice =
                Choice::new("kind-bait", w::BAIT).options(&[("no", w::BAIT_OFF), ("yes", w::BAIT_ON)]);
            [choice.text(bait_code).view(), why(w::BAIT_WHY)]
        })
    });
    let form = Choice::new("kind-form", w::FORM)
        .options(&[
            ("between", w::FORM_BETWEEN),
            ("one_well", w::FORM_ONE),
            ("two_wells", w::FORM_TWO),
            ("floor", w::FORM_FLOOR),
        ])
        .text(t.form);
    let reuse = Choice::new("kind-reuse", w::REUSE).options(&[("no", w::REUSE_NO), ("yes", w::REUSE_YES)]);
    let typed_days = t.days;
    let days =
        Stepper::new("kind-days", w::DAYS, typed_days, 1, 120).says(move || says::count(typed_days, 1, 120));
    el("div")
        .class("card-body kind-form")
        .kid(Field::new("kind-name", w::NAME, t.name).wide().says(name_says).view())
        .kid(form.view())
        .kid(bait)
        .kid(reuse.text(t.reuse).view())
        .kid(live(move || oil.get().then(|| typed.with_value(|t| oil_fields(ui, t, draft)))))
        .kid(days.view())
        .kid(more(w::SIZES, sizes(ui, &t, draft)))
        .kid(more(w::PACKS, packs(t.packs)))
        .kid(live(move || oil.get().then(|| more(w::POINTS, points(points_rows, draft)))))
        .kid(keep::view(ui, records, which, draft, tried))
}

fn oil_fields(ui: Ui, t: &Typed, draft: Memo<KindDraft>) -> El {
    let (holds_typed, sure_ticked, fill_typed) = (t.holds, t.sure, t.fill);
    let holds = move || match draft.with(KindDraft::capacity) {
        Ok(None) => Says::Nothing,
        Ok(Some(_)) => says::said(ui, holds_typed, Reads::Holds),
        Err(wrong) => Says::Wrong(w::wrong(wrong)),
    };
    let unusual = Memo::new(move || draft.with(KindDraft::unusual));
    let sure = live(move || {
        unusual.get().map(|holds| {
            let words = w::sure(&ui.volume(holds.volume()));
            tick(&words, move || sure_ticked.get(), move |on| sure_ticked.set(on))
        })
    });
    let fill = move || match draft.with(KindDraft::filled_to) {
        Ok(_) => says::share(fill_typed),
        Err(Wrong::Typed(error)) => Says::Wrong(en_typed::share(error)),
        Err(wrong) => Says::Wrong(w::wrong(wrong)),
    };
    let takes = move || {
        let (capacity, share) = draft.with(KindDraft::one_fill)?;
        let each = ui.volume(capacity.times(share));
        let holds = ui.volume_in_sum(capacity, share, capacity.times(share), false);
        let sum = w::fill_sum(&holds, &locale::percent(share, 1), &each);
        Some((each, vec![sum]))
    };
    let holds_field = Field::new("kind-holds", w::HOLDS, holds_typed.0).decimal().volume(holds_typed.1);
    el("div")
        .class("stack")
        .kid(
            el("div")
                .class("fields")
                .kid(holds_field.hint(w::HOLDS_HINT).says(holds).view())
                .kid(Field::new("kind-fill", en::in_percent(w::FILL), fill_typed).says(fill).view()),
        )
        .kid(sure)
        .kid(Answer::of(w::TAKES, takes).view())
        .kid(live(move || draft.with(spills)))
}

/// The spill angle and what follows from it.
fn spills(draft: &KindDraft) -> Bit {
    let Ok(fill) = draft.filled_to() else { return Bit::Nothing };
    if draft.built().lidded() {
        return Notice::plain(w::LID).view().into();
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
        None => el("p").class("small").text(w::NO_SIDES),
    };
    Bit::Many(vec![answer.into(), notice.view().into()])
}

fn sizes(ui: Ui, t: &Typed, draft: Memo<KindDraft>) -> Bit {
    let group = move |id: &str, sides: Sides, label: fn(&str) -> String, outside: bool| {
        let mut fields = el("div").class("fields");
        for (place, (at, name)) in sides.into_iter().zip(w::SIDES).enumerate() {
            let field = says::field(ui, &[id, name].concat(), &label(name), at, Reads::Side, true);
            let says = move || {
                if outside && draft.with(|draft| draft.turned(place)) {
                    return Says::Wrong(w::TURNED.to_owned());
                }
                at.0.with(|text| says::optional(says::said(ui, at, Reads::Side), text))
            };
            fields = fields.kid(field.says(says).view());
        }
        fields
    };
    Bit::Many(vec![
        el("h2").class("sub").text(w::INNER).into(),
        el("p").class("small").text(w::INNER_HINT).into(),
        group("kind-inner-", t.inner, w::inside, false).into(),
        el("h2").class("sub").text(w::OUTER).into(),
        el("p").class("small").text(w::OUTER_HINT).into(),
        group("kind-outer-", t.outer, w::outside, true).into(),
    ])
}

fn packs(rows: Rows) -> Bit {
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
    Bit::Many(vec![el("p").class("small").text(w::PACKS_HINT).into(), rows])
}

fn points(rows: Rows, draft: Memo<KindDraft>) -> Bit {
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
            Field::new(
                ["kind-level-", &number].concat(),
                en::in_percent(&w::row(w::LEVEL, place + 1)),
                level,
            )
            .says(move || level_says(level)),
            Field::new(["kind-oil-", &number].concat(), w::row(w::OIL, place + 1), oil)
                .decimal()
                .says(oil_says),
        )
    });
    Bit::Many(vec![el("p").class("small").text(w::POINTS_HINT).into(), rows])
}
