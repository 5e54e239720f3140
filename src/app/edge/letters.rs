//! Letters as people see them, through the browser's own Unicode tables.

use super::{call, intl};
use crate::almanac::text::Letters;
use js_sys::{Array, JsString, try_iter};

/// The browser's letters. Where it cannot segment text, every code point counts as one visible letter: a label is
/// then refused a little early, never cut.
#[derive(Clone, Copy, Debug, Default)]
pub struct BrowserLetters;

impl Letters for BrowserLetters {
    fn normal(&self, text: &str) -> String {
        String::from(JsString::from(text).normalize("NFC"))
    }

    fn lower(&self, text: &str) -> String {
        String::from(JsString::from(text).to_lower_case())
    }

    fn visible(&self, text: &str) -> usize {
        segments(text).unwrap_or_else(|| text.chars().count())
    }
}

fn segments(text: &str) -> Option<usize> {
    let segmenter = intl("Segmenter", &Array::new())?;
    let segments = call(&segmenter, "segment", &text.into())?;
    // The result is iterable but has no length.
    Some(try_iter(&segments).ok()??.count())
}
