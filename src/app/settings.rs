//! Look and units.

use super::edge::install::Install;
use super::el::{Bit, El, el, live};
use super::parts::choice::Choice;
use super::parts::key::Key;
use super::parts::sheet::sheet;
use super::prefs::{self, Hand, Scheme, TextSize, WarmthUnit};
use super::state::Ui;
use super::wording::en::{self, page as w};
use crate::almanac::quantity::{LengthUnit, VolumeUnit};
use crate::app::graph::RwSignal;

/// The sheet behind the key in the head.
pub fn settings(ui: Ui, open: RwSignal<bool>) -> El {
    sheet(open, w::SETTINGS, move || {
        let scheme = Choice::new("scheme", w::SCHEME)
            .options(&[
                (Scheme::System.code(), w::SCHEME_SYSTEM),
                (Scheme::Sun.code(), w::SCHEME_SUN),
                (Scheme::Night.code(), w::SCHEME_NIGHT),
            ])
            .chosen(move || ui.prefs.get().scheme.code())
            .choose(move |code| {
                ui.prefs.update(|prefs| prefs.scheme = Scheme::from_code(&code).unwrap_or_default());
            });
        let text = Choice::new("text", w::TEXT)
            .options(&[
                (TextSize::Usual.code(), w::TEXT_USUAL),
                (TextSize::Large.code(), w::TEXT_LARGE),
                (TextSize::Largest.code(), w::TEXT_LARGEST),
            ])
            .chosen(move || ui.prefs.get().text.code())
            .choose(move |code| {
                ui.prefs.update(|prefs| prefs.text = TextSize::from_code(&code).unwrap_or_default());
            });
        let hand = Choice::new("hand", w::HAND)
            .options(&[(Hand::Left.code(), w::HAND_LEFT), (Hand::Right.code(), w::HAND_RIGHT)])
            .chosen(move || ui.prefs.get().hand.code())
            .choose(move |code| {
                ui.prefs.update(|prefs| prefs.hand = Hand::from_code(&code).unwrap_or_default());
            });
        let volume = Choice::new("volume", w::VOLUME)
            .options(&VolumeUnit::ALL.map(|unit| (prefs::volume_code(unit), en::volume_name(unit))))
            .chosen(move || prefs::volume_code(ui.prefs.get().volume))
            .choose(move |code| ui.prefs.update(|prefs| prefs.volume = prefs::volume_unit(&code)));
        let length = Choice::new("length", w::LENGTH)
            .options(&LengthUnit::ALL.map(|unit| (prefs::length_code(unit), en::length_name(unit))))
            .chosen(move || prefs::length_code(ui.prefs.get().length))
            .choose(move |code| ui.prefs.update(|prefs| prefs.length = prefs::length_unit(&code)));
        let warmth = Choice::new("warmth", w::WARMTH)
            .options(&[
                (WarmthUnit::Celsius.code(), en::warmth_name(WarmthUnit::Celsius)),
                (WarmthUnit::Fahrenheit.code(), en::warmth_name(WarmthUnit::Fahrenheit)),
            ])
            .chosen(move || ui.prefs.get().warmth.code())
            .choose(move |code| {
                ui.prefs.update(|prefs| prefs.warmth = WarmthUnit::from_code(&code).unwrap_or_default());
            });
        let mut bits: Vec<Bit> = Vec::new();
        for choice in [scheme, text, hand, volume, length, warmth] {
            bits.push(choice.view().into());
        }
        bits.push(el("p").class("small").text(w::UNITS_NOTE).into());
        bits.push(live(move || install(ui)));
        bits
    })
}

/// How to put the page on the home screen; nothing once it is there.
fn install(ui: Ui) -> Bit {
    let offered = ui.install.state();
    if offered == Install::Done {
        return Bit::Nothing;
    }
    let ask = (offered == Install::Ask)
        .then(|| el("p").class("keys").kid(Key::new(w::INSTALL_KEY, move || ui.install.ask()).view()));
    Bit::Many(vec![
        el("h3").text(w::INSTALL).into(),
        ask.into(),
        el("ul")
            .class("plain-list")
            .kids([w::INSTALL_SHARE, w::INSTALL_MENU].map(|how| el("li").text(how)))
            .into(),
        el("p").class("small").text(w::INSTALL_NOTE).into(),
    ])
}
