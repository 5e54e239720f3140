//! Why nothing was written, in a sentence.

use crate::app::cabinet::NotSaved;
use crate::app::records::Stop;
use crate::app::wording::en_notices::why;
use crate::app::wording::en_round as w;

/// The sentence.
pub fn stop(stop: &Stop) -> String {
    match stop {
        Stop::Refused(refusal) => w::refusal(refusal),
        Stop::NotSaved => w::NOT_KEPT.to_owned(),
        Stop::OnlyShows => why(&NotSaved::OnlyShows).to_owned(),
    }
}

/// Why the bar took nothing back.
pub fn not_undone(stop: &Stop) -> String {
    let why = if *stop == Stop::NotSaved { w::NOT_UNDONE.to_owned() } else { self::stop(stop) };
    [w::UNCHANGED, &why].concat()
}
