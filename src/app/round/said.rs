//! Why nothing was written, in a sentence.

use crate::app::records::Stop;
use crate::app::wording::en_round as w;

/// The sentence.
pub fn stop(stop: &Stop) -> String {
    match stop {
        Stop::Refused(refusal) => w::refusal(refusal),
        Stop::NotSaved => w::NOT_KEPT.to_owned(),
    }
}

/// Why the bar took nothing back.
pub fn not_undone(stop: &Stop) -> String {
    let why = if let Stop::Refused(refusal) = stop { w::refusal(refusal) } else { w::NOT_UNDONE.to_owned() };
    [w::UNCHANGED, &why].concat()
}
