//! Why nothing was written, in a sentence.

use crate::app::records::Stop;
use crate::app::wording::en_round as w;
use leptos::prelude::*;

/// The sentence.
pub fn stop(stop: &Stop) -> String {
    match stop {
        Stop::Refused(refusal) => w::refusal(refusal),
        Stop::NotSaved => w::NOT_KEPT.to_owned(),
    }
}

/// The sentence under a form, read out when it appears.
pub fn stopped(stopped: RwSignal<Option<Stop>>) -> AnyView {
    let said = move || stopped.with(|stopped| stopped.as_ref().map(stop)).unwrap_or_default();
    let class = move || {
        if stopped.with(Option::is_some) { "field-says field-wrong" } else { "field-says" }
    };
    view! { <p class=class role="alert">{said}</p> }.into_any()
}
