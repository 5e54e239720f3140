//! A text on the shelf that this version leaves alone.

/// A text on the shelf that this version leaves alone.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Aside {
    /// Its key.
    pub key: String,
    /// The text, byte for byte.
    pub raw: String,
    /// Sound, but written by a newer version of the app. Otherwise it is damaged, or has other words for a line that was
    /// read elsewhere.
    pub newer: bool,
}
