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

use crc::{CRC_32_ISO_HDLC, Crc, Table};
use serde::Deserialize;
use serde_json::value::RawValue;

const CRC: Crc<u32, Table<1>> = Crc::<u32, Table<1>>::new(&CRC_32_ISO_HDLC);

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

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Fields<'a> {
    v: u32,
    g: u64,
    c: &'a str,
    #[serde(borrow)]
    d: &'a RawValue,
}

fn checksum(version: u32, generation: u64, payload: &str) -> u32 {
    let mut digest = CRC.digest();
    digest.update(format!("{version}:{generation}:").as_bytes());
    digest.update(payload.as_bytes());
    digest.finalize()
}

/// Puts `payload`, which must be JSON text, into an envelope. White space around the payload is left out.
///
/// What comes out opens again if the version is not 0, the generation is from 1 to [`MAX_GENERATION`] and the
/// payload is one JSON value; the callers in this module check that before they write.
pub fn wrap(version: u32, generation: u64, payload: &str) -> String {
    let payload = payload.trim_matches([' ', '\t', '\n', '\r']);
    let sum = checksum(version, generation, payload);
    format!("{{\"v\":{version},\"g\":{generation},\"c\":\"{sum:08x}\",\"d\":{payload}}}")
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
    let fields: Fields<'_> = serde_json::from_str(text).map_err(|_| EnvelopeError::Shape)?;
    let payload = fields.d.get();
    let sum = checksum(fields.v, fields.g, payload);
    if u32::from_str_radix(fields.c, 16) != Ok(sum) {
        return Err(EnvelopeError::Checksum);
    }
    if fields.v == 0 {
        return Err(EnvelopeError::Version);
    }
    if fields.g == 0 || fields.g > MAX_GENERATION {
        return Err(EnvelopeError::Generation);
    }
    // White space, another order of fields or another way to write a digit would be harmless, but nobody of this
    // house wrote it: then it is safer to keep the bytes than to trust them.
    if wrap(fields.v, fields.g, payload) != text {
        return Err(EnvelopeError::Shape);
    }
    Ok(Envelope { version: fields.v, generation: fields.g, payload })
}
