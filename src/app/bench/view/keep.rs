//! "Keep this yard": the short form that turns the first sum into records.

use super::{says, shown};
use crate::almanac::typed;
use crate::app::bench::keep::{KeepPlan, again, depth_codes, filled, free_name, name, plan, tags, to_mend};
use crate::app::bench::read::{MOST_BOXES, MOST_HIVES};
use crate::app::edge::{self, letters::BrowserLetters};
use crate::app::el::{Bit, El, el, live};
use crate::app::graph::{Memo, RwSignal, effect, untrack};
use crate::app::kinds::same_name;
use crate::app::parts::choice::Choice;
use crate::app::parts::field::{Field, Says};
use crate::app::parts::key::Key;
use crate::app::parts::notice::Notice;
use crate::app::records::Records;
use crate::app::state::Keep;
use crate::app::state::Ui;
use crate::app::wording::en_bench::{self, keep as w};
use crate::app::wording::{en, en_kinds, en_typed};

/// The key, and the form once it was pressed. Nothing while nobody takes the plan.
pub(super) fn view(ui: Ui) -> Bit {
    let new = ui.new_yard.get_untracked();
    ui.new_yard.set(false);
    let open = RwSignal::new(new);
    if new {
        // After the jump has put the focus on the card: the form is what the keeper came for.
        edge::after_paint(|| edge::after_paint(|| edge::focus(HEADING)));
    }
    live(move || match (ui.on_keep.get(), open.get()) {
        (None, _) => Bit::Nothing,
        (Some(on_keep), true) => form(ui, on_keep, new).into(),
        (Some(_), false) => {
            let key = Key::new(w::KEEP, move || show(open)).primary().view();
            vec![el("p").class("keys").kid(key), shown::small(w::WHAT)].into()
        }
    })
}

/// Id of the heading of the form.
const HEADING: &str = "keep-heading";

/// Opens the form and moves the focus there: the key that had it is gone.
fn show(open: RwSignal<bool>) {
    open.set(true);
    edge::after_paint(|| edge::focus(HEADING));
}

fn form(ui: Ui, on_keep: Keep, new: bool) -> El {
    let title = if new { w::NEW } else { w::TITLE };
    let t = ui.bench();
    let records = Records::get();
    // What an earlier yard was kept with is no start for another one.
    if untrack(|| another_has(records, &t.keep_name().get())) {
        t.keep_name().set(String::new());
        t.keep_tags().set(String::new());
    }
    follow_hives(ui);
    let tag_says = move || match t.keep_tags().with(|text| tags(text, &BrowserLetters)) {
        Ok(tags) => {
            let hives = t.hives().with(|text| typed::count(text, 0, MOST_HIVES)).ok();
            Says::Echo(en_typed::hives_named_of(&tags, hives))
        }
        Err(error) => Says::Wrong(en_typed::tags(&error)),
    };
    let built = Choice::new("keep-form", w::FORM)
        .options(&[
            ("between", w::FORM_BETWEEN),
            ("one_well", w::FORM_ONE),
            ("two_wells", w::FORM_TWO),
            ("floor", w::FORM_FLOOR),
        ])
        .text(t.keep_form());
    let full = Choice::new("keep-again", en_kinds::REUSE)
        .options(&[("no", en_kinds::REUSE_NO), ("yes", en_kinds::REUSE_YES)])
        .chosen(move || if ui.draft.with(again) { "yes" } else { "no" })
        .choose(move |code| t.keep_again().set(code));
    let when = Choice::new("keep-filled", w::FILLED)
        .options(&[("today", w::TODAY), ("earlier", w::EARLIER), ("not_yet", w::NOT_YET)])
        .text(t.keep_filled());
    let earlier = move || t.keep_filled().with(|code| code == "earlier").then(|| filled_on(ui));
    let days = says::stepper("keep-days", w::DAYS, t.keep_days(), 1, 120);
    let name = Field::new("keep-name", w::NAME, t.keep_name())
        .wide()
        .says(move || yard_named(records, t.keep_name()));
    let trap = Field::new("keep-trap", w::TRAP, t.keep_trap()).wide().says(move || named(t.keep_trap()));
    let tags = Field::new("keep-tags", w::TAGS, t.keep_tags()).wide().hint(w::TAGS_HINT).says(tag_says);
    let ready = Memo::new(move || planned(ui, records).map(|plan| plan.tags.len()));
    let mend = move || {
        let mut names = ui.draft.with(|draft| to_mend(draft, ui.today.get(), &BrowserLetters));
        if another_has(records, &t.keep_name().get()) {
            names.push(w::NAME);
        }
        w::mend(&names)
    };
    el("section")
        .class("keep-form")
        .attr("aria-label", title)
        .kid(el("h3").attr("id", HEADING).attr("tabindex", "-1").text(title))
        .kid(new.then(|| shown::small(w::NEW_HOW)))
        .kids([name.view(), tags.view()])
        .kid(depths(ui))
        .kids([trap.view(), built.view(), full.view(), shown::small(w::AGAIN), when.view()])
        .kid(live(earlier))
        .kid(days)
        .kid(Notice::caution(w::ONLY_HERE).view())
        .kid(el("p").class("keys").kid(keep_key(ui, records, on_keep, ready)))
        .kid(el("p").attr("role", "status").live_text(mend))
}

/// The form as a plan; none while one of its fields cannot be read.
fn planned(ui: Ui, records: Records) -> Option<KeepPlan> {
    let plan = ui.draft.with(|draft| plan(draft, ui.today.get(), &BrowserLetters))?;
    (!another_has(records, &plan.yard)).then_some(plan)
}

/// Whether another open yard has this name; the demonstration is a book of its own. Tracks the book.
fn another_has(records: Records, name: &str) -> bool {
    records.book.with(|book| {
        let mut yards = book.standing().open_yards();
        yards.any(|(id, yard)| !id.is_demo() && same_name(&yard.name, name))
    })
}

fn yard_named(records: Records, text: RwSignal<String>) -> Says {
    let taken = |name: &str| another_has(records, name);
    let free = text.with(|text| free_name(&name(text, &BrowserLetters).ok()?, &taken));
    // A name that nobody has typed yet is not wrong: the key says what it waits for.
    let none = text.with(String::is_empty);
    let says = || if none { Says::Nothing } else { named(text) };
    free.map_or_else(says, |free| Says::Wrong(w::twice(&free)))
}

/// The key that keeps as many hives as the form is ready for.
fn keep_key(ui: Ui, records: Records, on_keep: Keep, ready: Memo<Option<usize>>) -> El {
    el("button")
        .attr("type", "button")
        .class("key key-primary key-big")
        .live_attr("disabled", move || ready.get().is_none().then(String::new))
        .live_text(move || ready.get().map_or_else(|| w::KEEP.to_owned(), w::keep))
        .press(move || {
            if let Some(plan) = untrack(|| planned(ui, records)) {
                on_keep(plan);
            }
        })
}

fn named(text: RwSignal<String>) -> Says {
    match text.with(|text| name(text, &BrowserLetters)) {
        Ok(_) => Says::Nothing,
        Err(error) => Says::Wrong(en_typed::label(error)),
    }
}

fn filled_on(ui: Ui) -> El {
    let says = move || match ui.draft.with(|draft| filled(draft, ui.today.get())) {
        Ok(Some(day)) => Says::Echo(en::echo(&en::date(day))),
        Ok(None) => Says::Nothing,
        Err(error) => Says::Wrong(en_typed::day(error)),
    };
    Field::new("keep-filled-on", w::FILLED_ON, ui.bench().keep_filled_on()).day().says(says).view()
}

/// One choice a box, from the floor up.
fn depths(ui: Ui) -> Bit {
    live(move || {
        let boxes = ui.bench().boxes().with(|text| typed::count(text, 0, MOST_BOXES).unwrap_or(0));
        (0..boxes as usize).map(|index| depth_choice(ui.bench().keep_depths(), index)).collect::<Vec<El>>()
    })
}

fn depth_choice(depths: RwSignal<String>, index: usize) -> El {
    let code = move || {
        depths.with(|text| match depth_codes(text, index + 1).pop() {
            Some("medium") => "medium",
            Some("shallow") => "shallow",
            _ => "deep",
        })
    };
    Choice::new(["keep-box-", &index.to_string()].concat(), w::depth_of(index + 1))
        .options(&[("deep", en_bench::DEEP), ("medium", en_bench::MEDIUM), ("shallow", en_bench::SHALLOW)])
        .chosen(code)
        .choose(move |code| depths.update(|text| *text = with_depth(text, index, &code)))
        .view()
}

fn with_depth(text: &str, index: usize, code: &str) -> String {
    let known = text.split(' ').filter(|code| !code.is_empty()).count();
    let mut codes = depth_codes(text, known.max(index + 1));
    if let Some(own) = codes.get_mut(index) {
        *own = code;
    }
    codes.join(" ")
}

/// Tags that still are a plain count go along with the number of hives; tags of the keeper's own stay.
fn follow_hives(ui: Ui) {
    let (hives, keep_tags) = (ui.bench().hives(), ui.bench().keep_tags());
    effect(move || {
        let Ok(hives) = hives.with(|text| typed::count(text, 0, MOST_HIVES)) else { return };
        let plain = keep_tags.with_untracked(|text| {
            text.is_empty()
                || text == "1"
                || text.strip_prefix("1–").is_some_and(|last| last.bytes().all(|b| b.is_ascii_digit()))
        });
        if plain {
            keep_tags.set(w::tags_for(hives));
        }
    });
}
