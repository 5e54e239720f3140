//! Bytes as the letters that a camera code holds best: Base45 (RFC 9285).
//!
//! The alphanumeric mode of a QR symbol packs two of its 45 characters into eleven bits. Two bytes are three of them, so
//! bytes written this way lose three in a hundred.

/// Character for each value (RFC 9285, table 1).
const ALPHABET: &[u8; 45] = b"0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:";

/// The bytes as text.
///
/// ```
/// assert_eq!(beetle_almanac::almanac::base45::encode(b"AB"), "BB8");
/// ```
pub fn encode(bytes: &[u8]) -> String {
    let mut text = String::with_capacity(bytes.len() / 2 * 3 + 3);
    for pair in bytes.chunks(2) {
        let mut value = pair.iter().fold(0, |value, byte| value * 256 + usize::from(*byte));
        for _ in 0..=pair.len() {
            text.extend(ALPHABET.get(value % 45).map(|letter| char::from(*letter)));
            value /= 45;
        }
    }
    text
}

/// The bytes of a text; none where it is not Base45: another character, one left over, or a value no bytes have.
pub fn decode(text: &str) -> Option<Vec<u8>> {
    let mut bytes = Vec::with_capacity(text.len() / 3 * 2 + 1);
    for three in text.as_bytes().chunks(3) {
        let mut value = 0_usize;
        for letter in three.iter().rev() {
            value = value * 45 + ALPHABET.iter().position(|known| known == letter)?;
        }
        match three.len() {
            3 => bytes.extend(u16::try_from(value).ok()?.to_be_bytes()),
            2 => bytes.push(u8::try_from(value).ok()?),
            _ => return None,
        }
    }
    Some(bytes)
}
