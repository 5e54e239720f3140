//! The checksum that tells a text from one that was damaged on the way.

use crc::{CRC_32_ISO_HDLC, Crc, Table};
use std::sync::OnceLock;

/// The tables are worked out at the first use: they are what looks like noise, and would travel in the page. Sixteen of
/// them take sixteen bytes a turn, since a start sums up every page there is.
static CRC: OnceLock<Crc<u32, Table<16>>> = OnceLock::new();

/// CRC-32 (ISO-HDLC) of these texts one after the other, in eight lower-case hexadecimal digits.
///
/// ```
/// // The check value of the catalogue of parametrised CRC algorithms.
/// assert_eq!(beetle_almanac::almanac::checksum::of(&["1234", "56789"]), "cbf43926");
/// ```
pub fn of(texts: &[&str]) -> String {
    let mut bytes: Vec<&[u8]> = Vec::with_capacity(texts.len());
    for text in texts {
        bytes.push(text.as_bytes());
    }
    of_bytes(&bytes)
}

/// The same of bytes.
pub fn of_bytes(pieces: &[&[u8]]) -> String {
    let mut digest = CRC.get_or_init(|| Crc::<u32, Table<16>>::new(&CRC_32_ISO_HDLC)).digest();
    for piece in pieces {
        digest.update(piece);
    }
    let sum = digest.finalize();
    (0..8).rev().filter_map(|digit| char::from_digit(sum >> (4 * digit) & 15, 16)).collect()
}
