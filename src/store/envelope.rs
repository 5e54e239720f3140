//! Version, generation and checksum around a payload.
//!
//! Every value on the shelf is one JSON object with exactly these four fields, in this order, without white space
//! outside the payload:
//!
//! ```json
//! {"v":1,"g":7,"c":"0a1b2c3d","d":…}
//! ```
//!
//! * `v`: version of the payload, 1 or more. It counts what lies under `d`; the envelope itself is for ever.
//! * `g`: generation, 1 or more, one higher at every save. At most 2⁵³ − 1, so that any JSON reader reads it whole.
//! * `c`: CRC-32 (ISO-HDLC) in eight lower-case hex digits of the UTF-8 bytes `v:g:` and the payload text, so that
//!   a flipped digit in the version or the generation is found as well.
//! * `d`: the payload, any JSON value, checked as the bytes that are there and not as what they mean.
//!
//! [`open`] accepts nothing that [`wrap`] would not have written.

use crate::almanac::checksum;
use crate::almanac::json::fields_as_written;

/// The highest generation: 2⁵³ − 1.
pub const MAX_GENERATION: u64 = (1 << 53) - 1;

/// An opened envelope.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Envelope<'a> {
    /// Version of the payload, 1 or more.
    pub version: u32,
    /// How often this value has been saved, 1 or more.
    pub generation: u64,
    /// The payload, JSON text.
    pub payload: &'a str,
}

/// Why a text is not an envelope.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum EnvelopeError {
    /// Not the four fields as [`wrap`] writes them: cut off, garbage, something added, or never an envelope.
    Shape,
    /// The checksum does not belong to the rest.
    Checksum,
    /// Version 0: no app ever wrote that.
    Version,
    /// Generation 0, or more than [`MAX_GENERATION`].
    Generation,
}

/// The version, the generation and the checksum of an envelope, as text.
fn head(version: u32, generation: u64, payload: &str) -> [String; 3] {
    let (version, generation) = (version.to_string(), generation.to_string());
    let sum = checksum::of(&[&version, ":", &generation, ":", payload]);
    [version, generation, sum]
}

/// Puts `payload`, which must be JSON text, into an envelope. White space around the payload is left out.
///
/// What comes out opens again if the version is not 0, the generation is from 1 to [`MAX_GENERATION`] and the
/// payload is one JSON value; the callers in this module check that before they write.
pub fn wrap(version: u32, generation: u64, payload: &str) -> String {
    let payload = trimmed(payload);
    let [version, generation, sum] = head(version, generation, payload);
    [&before(&version, &generation, &sum), payload, "}"].concat()
}

/// Everything in front of the payload.
fn before(version: &str, generation: &str, sum: &str) -> String {
    ["{\"v\":", version, ",\"g\":", generation, ",\"c\":\"", sum, "\",\"d\":"].concat()
}

/// Without the white space of JSON at its ends.
fn trimmed(payload: &str) -> &str {
    payload.trim_matches([' ', '\t', '\n', '\r'])
}

/// Opens what [`wrap`] wrote.
///
/// ```
/// use beetle_almanac::store::envelope::{open, wrap};
/// let text = wrap(1, 7, "[\"topped up\"]");
/// assert_eq!(text, r#"{"v":1,"g":7,"c":"45a8edb3","d":["topped up"]}"#);
/// assert_eq!(open(&text).map(|inside| inside.generation), Ok(7));
/// assert!(open(&text.replace("up", "on")).is_err());
/// ```
///
/// # Errors
/// [`EnvelopeError`] for every other text.
pub fn open(text: &str) -> Result<Envelope<'_>, EnvelopeError> {
    let (version, generation, written, payload) = fields(text).ok_or(EnvelopeError::Shape)?;
    let [_, _, sum] = head(version, generation, payload);
    if u32::from_str_radix(written, 16) != u32::from_str_radix(&sum, 16) {
        return Err(EnvelopeError::Checksum);
    }
    if version == 0 {
        return Err(EnvelopeError::Version);
    }
    if generation == 0 || generation > MAX_GENERATION {
        return Err(EnvelopeError::Generation);
    }
    // White space, another order of fields or another way to write a digit would be harmless, but nobody of this
    // house wrote it: then it is safer to keep the bytes than to trust them.
    peek(text).filter(|inside| inside.payload == payload).ok_or(EnvelopeError::Shape)
}

/// As [`open`] for whoever reads the payload next: all is checked but that the payload is one JSON value, which takes
/// as long as reading it. A text that is no envelope is none here too; [`open`] says why.
pub(super) fn peek(text: &str) -> Option<Envelope<'_>> {
    let (version, generation, rest) = numbers(text)?;
    let payload = rest.strip_prefix("\"c\":\"")?.get(8..)?.strip_prefix("\",\"d\":")?.strip_suffix('}')?;
    let [v, g, sum] = head(version, generation, payload);
    let before = before(&v, &g, &sum);
    let whole = text.len() == before.len() + payload.len() + 1 && text.starts_with(&before);
    let sound = version > 0 && (1..=MAX_GENERATION).contains(&generation) && payload == trimmed(payload);
    (whole && sound).then_some(Envelope { version, generation, payload })
}

/// Version and generation as the text gives them, with nothing checked, and what follows.
fn numbers(text: &str) -> Option<(u32, u64, &str)> {
    let (version, rest) = text.strip_prefix("{\"v\":")?.split_once(',')?;
    let (generation, rest) = rest.strip_prefix("\"g\":")?.split_once(',')?;
    Some((version.parse().ok()?, generation.parse().ok()?, rest))
}

/// The generation that the text gives for itself, with nothing checked.
pub(super) fn generation(text: &str) -> Option<u64> {
    numbers(text).map(|(_, generation, _)| generation)
}

/// The four fields, each once, in whatever order.
fn fields(text: &str) -> Option<(u32, u64, &str, &str)> {
    let fields = fields_as_written(text)?;
    let get = |name: &str| fields.iter().find(|(field, _)| field == name).map(|(_, value)| *value);
    let sum = get("c")?.strip_prefix('"')?.strip_suffix('"')?;
    let found = (get("v")?.parse().ok()?, get("g")?.parse().ok()?, sum, get("d")?);
    (fields.len() == 4 && !sum.contains('\\')).then_some(found)
}
