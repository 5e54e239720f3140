//! Randomness for ids.

use super::window;
use js_sys::Math;

/// A random id of `letters` characters from 32 that nobody mistakes for another (no 1, i, l, o).
///
/// Falls back to `Math.random` where the browser withholds its better source: an id must be unlike others, not
/// secret.
pub fn id(letters: usize) -> String {
    const ALPHABET: &[u8; 32] = b"023456789abcdefghjkmnpqrstuvwxyz";
    let mut bytes = vec![0u8; letters];
    let filled = window()
        .and_then(|window| window.crypto().ok())
        .is_some_and(|crypto| crypto.get_random_values_with_u8_array(&mut bytes).is_ok());
    if !filled {
        for byte in &mut bytes {
            #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // 0 ≤ random < 1
            {
                *byte = (Math::random() * 256.0) as u8;
            }
        }
    }
    bytes.iter().filter_map(|byte| ALPHABET.get(usize::from(byte & 31)).map(|b| char::from(*b))).collect()
}
