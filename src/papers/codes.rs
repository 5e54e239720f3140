//! A pack as a run of camera codes: QR symbols (ISO/IEC 18004) that are shown one after the other.
//!
//! Each symbol is a text of the alphanumeric mode, and says by itself which run it belongs to and where:
//!
//! ```text
//! BH1  Z     02      03     4F09A1C2     …       77B0D3E1
//! name packed number of all whole's sum payload  own sum
//! ```
//!
//! The sum of the whole, a CRC-32 of all payloads one after the other, is the name of the run: two runs of the same bytes
//! are one. The payload is a stretch of the bytes in Base45 (RFC 9285). The own sum is of all that stands before it, so a
//! text that was damaged on its way is refused by itself; it also keeps a blank from the end, which other apps cut off.

use crate::almanac::base45;
use crate::almanac::checksum;
use qrcodegen::{Mask, QrCode, QrCodeEcc, QrSegment, Version};

/// Name and version of the texts.
const NAME: &str = "BH1";
/// Letters of a text before its payload.
const HEAD: usize = 16;
/// Letters of a checksum.
const SUM: usize = 8;
/// Bytes of a symbol: 900 letters of payload and 24 of its own are a symbol of 97 modules at level M, which a camera
/// reads from the narrowest phone.
pub const BYTES: usize = 600;
/// Symbols of one run. More than that nobody holds a phone up for; the number has two digits.
pub const MOST: usize = 99;
/// Largest pack that codes are opened into, in bytes: a hundred symbols that are packed as well as words are hold a tenth.
/// What unpacks to more was made to fill the phone.
pub const MOST_UNPACKED: u32 = 4 * 1024 * 1024;
/// Modules that stay white around a symbol (ISO/IEC 18004, 6.3.8).
pub const QUIET: i32 = 4;

/// What the codes hold.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Packed {
    /// The text as it is, in UTF-8.
    No,
    /// The text deflated (RFC 1951).
    Deflated,
}

/// One code that was read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Code {
    /// The run it belongs to: how it is packed, the sum of the whole, and how many codes there are.
    pub run: (Packed, String, usize),
    /// Its place in it, from 1.
    pub number: usize,
    /// Its stretch of the bytes.
    bytes: Vec<u8>,
}

/// Why a text is no code.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CodeError {
    /// Something else.
    NotOurs,
    /// Made by a newer version of this page.
    Newer,
    /// Changed or cut off on the way.
    Damaged,
}

/// What came of a code.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Added {
    /// It was missing.
    New,
    /// It was read before.
    Known,
    /// It is one of another run.
    OtherRun,
}

/// The texts of the codes for `bytes`, as even in length as can be. None when that would be more than [`MOST`], or there
/// is nothing to show.
pub fn write(bytes: &[u8], packed: Packed) -> Option<Vec<String>> {
    let all = bytes.len().div_ceil(BYTES);
    if !(1..=MOST).contains(&all) {
        return None;
    }
    // An even number of bytes leaves no odd one within the run.
    let each = bytes.len().div_ceil(all).next_multiple_of(2).min(BYTES);
    let whole = sum(bytes);
    let mut texts = Vec::with_capacity(all);
    for (at, stretch) in bytes.chunks(each).enumerate() {
        let mut text = String::with_capacity(HEAD + SUM + each / 2 * 3);
        text.push_str(NAME);
        text.push(if packed == Packed::Deflated { 'Z' } else { 'P' });
        two_digits(at + 1, &mut text);
        two_digits(bytes.len().div_ceil(each), &mut text);
        text.push_str(&whole);
        text.push_str(&base45::encode(stretch));
        let own = sum(text.as_bytes());
        text.push_str(&own);
        texts.push(text);
    }
    Some(texts)
}

/// Reads the text of one code.
///
/// # Errors
/// [`CodeError`]
pub fn read(text: &str) -> Result<Code, CodeError> {
    let text = text.trim();
    if !text.starts_with(NAME) {
        let name = NAME.len() - 1;
        let newer = text.get(..name) == NAME.get(..name)
            && text.as_bytes().get(name).is_some_and(|version| (b'2'..=b'9').contains(version));
        return Err(if newer { CodeError::Newer } else { CodeError::NotOurs });
    }
    code(text).ok_or(CodeError::Damaged)
}

fn code(text: &str) -> Option<Code> {
    let (inside, own) = text.split_at_checked(text.len().checked_sub(SUM)?)?;
    if sum(inside.as_bytes()) != own {
        return None;
    }
    let packed = match inside.as_bytes().get(NAME.len())? {
        b'Z' => Packed::Deflated,
        b'P' => Packed::No,
        _ => return None,
    };
    let (number, all) = (inside.get(4..6)?.parse().ok()?, inside.get(6..8)?.parse().ok()?);
    let (whole, bytes) = (inside.get(8..HEAD)?.to_owned(), base45::decode(inside.get(HEAD..)?)?);
    let sound = (1..=all).contains(&number) && !bytes.is_empty() && bytes.len() <= BYTES;
    sound.then_some(Code { run: (packed, whole, all), number, bytes })
}

/// The codes of one run, as they come.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Run {
    codes: Vec<Code>,
}

impl Run {
    /// Takes a code in. The first one says which run it is.
    pub fn add(&mut self, code: Code) -> Added {
        if self.codes.first().is_some_and(|first| first.run != code.run) {
            return Added::OtherRun;
        }
        if self.codes.iter().any(|known| known.number == code.number) {
            return Added::Known;
        }
        self.codes.push(code);
        Added::New
    }

    /// How many were read, and how many there are.
    pub fn count(&self) -> (usize, usize) {
        (self.codes.len(), self.codes.first().map_or(0, |first| first.run.2))
    }

    /// The numbers that are missing.
    pub fn missing(&self) -> Vec<usize> {
        (1..=self.count().1).filter(|number| !self.codes.iter().any(|code| code.number == *number)).collect()
    }

    /// All of it, once it is there and is what was shown.
    pub fn whole(&self) -> Option<(Packed, Vec<u8>)> {
        let (packed, whole, all) = &self.codes.first()?.run;
        let mut bytes = Vec::new();
        for number in 1..=*all {
            bytes.extend(&self.codes.iter().find(|code| code.number == number)?.bytes);
        }
        (sum(&bytes) == *whole).then_some((*packed, bytes))
    }
}

/// A symbol, ready to be drawn.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Symbol {
    /// Modules on each side, the white around them included.
    pub side: i32,
    /// The dark modules, as a path in units of one module.
    pub path: String,
}

/// The symbol of a text of the alphanumeric mode, at level M or better. None for a text of other letters, or one that no
/// symbol holds.
pub fn symbol(text: &str) -> Option<Symbol> {
    if !QrSegment::is_alphanumeric(text) {
        return None;
    }
    let segment = QrSegment::make_alphanumeric(text);
    let (least, most) = (Version::MIN, Version::MAX);
    let made =
        QrCode::encode_segments_advanced(&[segment], QrCodeEcc::Medium, least, most, None::<Mask>, true);
    let code = made.ok()?;
    let (size, mut path) = (code.size(), String::new());
    for y in 0..size {
        let mut x = 0;
        while x < size {
            let start = x;
            while x < size && code.get_module(x, y) {
                x += 1;
            }
            if x > start {
                let (at, row, run) =
                    ((start + QUIET).to_string(), (y + QUIET).to_string(), (x - start).to_string());
                path.push_str(&["M", &at, " ", &row, "h", &run, "v1h-", &run, "z"].concat());
            }
            x += 1;
        }
    }
    Some(Symbol { side: size + 2 * QUIET, path })
}

/// A checksum in the letters of the alphanumeric mode.
fn sum(bytes: &[u8]) -> String {
    checksum::of_bytes(&[bytes]).to_ascii_uppercase()
}

fn two_digits(number: usize, text: &mut String) {
    if number < 10 {
        text.push('0');
    }
    text.push_str(&number.to_string());
}
