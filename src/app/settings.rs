//! Look and units.

use super::edge::install::Install;
use super::parts::choice::Choice;
use super::parts::key::Key;
use super::parts::sheet::sheet;
use super::prefs::{self, Hand, Scheme, TextSize};
use super::state::Ui;
use super::wording::en::{self, page as w};
use crate::almanac::quantity::{LengthUnit, VolumeUnit};
use leptos::prelude::*;

/// The sheet behind the key in the head.
pub fn settings(ui: Ui, open: RwSignal<bool>) -> impl IntoView {
    sheet(open, w::SETTINGS, move || {
        view! {
            {Choice::new("scheme", w::SCHEME)
                .option(Scheme::System.code(), w::SCHEME_SYSTEM)
                .option(Scheme::Sun.code(), w::SCHEME_SUN)
                .option(Scheme::Night.code(), w::SCHEME_NIGHT)
                .chosen(move || ui.prefs.get().scheme.code())
                .choose(move |code| {
                    ui.prefs.update(|prefs| prefs.scheme = Scheme::from_code(&code).unwrap_or_default());
                })
                .view()}
            {Choice::new("text", w::TEXT)
                .option(TextSize::Usual.code(), w::TEXT_USUAL)
                .option(TextSize::Large.code(), w::TEXT_LARGE)
                .option(TextSize::Largest.code(), w::TEXT_LARGEST)
                .chosen(move || ui.prefs.get().text.code())
                .choose(move |code| {
                    ui.prefs.update(|prefs| prefs.text = TextSize::from_code(&code).unwrap_or_default());
                })
                .view()}
            {Choice::new("hand", w::HAND)
                .option(Hand::Left.code(), w::HAND_LEFT)
                .option(Hand::Right.code(), w::HAND_RIGHT)
                .chosen(move || ui.prefs.get().hand.code())
                .choose(move |code| {
                    ui.prefs.update(|prefs| prefs.hand = Hand::from_code(&code).unwrap_or_default());
                })
                .view()}
            {VolumeUnit::ALL
                .into_iter()
                .fold(
                    Choice::new("volume", w::VOLUME),
                    |choice, unit| choice.option(prefs::volume_code(unit), en::volume_name(unit)),
                )
                .chosen(move || prefs::volume_code(ui.prefs.get().volume))
                .choose(move |code| ui.prefs.update(|prefs| prefs.volume = prefs::volume_unit(&code)))
                .view()}
            {LengthUnit::ALL
                .into_iter()
                .fold(
                    Choice::new("length", w::LENGTH),
                    |choice, unit| choice.option(prefs::length_code(unit), en::length_name(unit)),
                )
                .chosen(move || prefs::length_code(ui.prefs.get().length))
                .choose(move |code| ui.prefs.update(|prefs| prefs.length = prefs::length_unit(&code)))
                .view()}
            <p class="small">{w::UNITS_NOTE}</p>
            {move || install(ui)}
        }
        .into_any()
    })
}

/// How to put the page on the home screen; nothing once it is there.
fn install(ui: Ui) -> AnyView {
    match ui.install.state() {
        Install::Done => ().into_any(),
        offered => view! {
            <h3>{w::INSTALL}</h3>
            {(offered == Install::Ask)
                .then(|| view! { <p class="keys">{Key::new(w::INSTALL_KEY, move || ui.install.ask()).view()}</p> })}
            <ul class="plain-list">
                <li>{w::INSTALL_SHARE}</li>
                <li>{w::INSTALL_MENU}</li>
            </ul>
            <p class="small">{w::INSTALL_NOTE}</p>
        }
        .into_any(),
    }
}
