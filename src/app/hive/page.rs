//! The page of a hive.

use crate::app::parts::key;
use crate::app::place::Place;
use crate::app::round::Walk;
use crate::app::wording::en_round as w;
use crate::book::id::ThingId;
use leptos::prelude::*;

/// The page.
pub fn view(walk: Walk, hive: ThingId) -> AnyView {
    let book = walk.records().book;
    let named = Memo::new(move |_| {
        book.with(|book| book.standing().hives.get(&hive).map(|now| (now.tag.clone(), now.yard.clone())))
    });
    let name = move || named.with(|named| named.as_ref().map(|(tag, _)| w::hive(tag)).unwrap_or_default());
    let back = move || {
        let yard = named.with(|named| named.as_ref().map(|(_, yard)| yard.to_string()))?;
        Some(key::link(w::ALL_YARDS, &Place::Yard(yard)))
    };
    view! {
        <h1 class="place-name" tabindex="-1">{name}</h1>
        <p class="keys">{back}</p>
    }
    .into_any()
}
