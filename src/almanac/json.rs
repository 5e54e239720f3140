//! How plain values lie in a file.
//!
//! One short piece of code parses JSON, one reads every record from it and one writes it. `serde`'s derive compiles a
//! reader of its own for every type and every source, and `serde_json` brings tables for floating-point numbers that
//! no record holds; together that came to a tenth of the whole page (figures in DEVELOPERS.md). The types still are
//! `Serialize` and `Deserialize`, by way of this trait, for programs that have `serde_json` at hand anyway.
//!
//! Reading is strict: a field that is missing, unknown or of another type makes the value unreadable as a whole, so
//! that nothing is taken in half.

mod macros;
mod object;
mod parse;
mod plain;

pub(crate) use macros::{json_choice, json_name, json_object, json_text, serde_by_json};
pub(crate) use object::choice;
pub use object::{Fields, Object};
pub use parse::{Value, fields_as_written, parse};
pub use plain::write_text;
pub(crate) use plain::write_whole;

/// A value that can be written to and read from JSON.
pub trait Json: Sized {
    /// Writes it at the end of `out`.
    fn write(&self, out: &mut String);

    /// Reads it; none when `value` is anything but what [`Json::write`] writes.
    fn read(value: Value) -> Option<Self>;
}

/// A field that is left out when it holds nothing.
pub trait MaybeJson: Sized {
    /// What to write, if anything.
    fn write_if(&self, out: &mut Object<'_>, name: &str);

    /// What an object without the field means, or what the field says.
    fn read_if(value: Option<Value>) -> Option<Self>;
}

/// The value in a text; none when the text is no JSON or says something else.
pub fn from_text<T: Json>(text: &str) -> Option<T> {
    T::read(parse(text)?)
}

/// The value that `text` begins with and what stands behind it.
pub fn leading<T: Json>(text: &str) -> Option<(T, &str)> {
    let (value, rest) = parse::leading(text)?;
    Some((T::read(value)?, rest))
}

/// The value as a text.
pub fn to_text(value: &impl Json) -> String {
    let mut text = String::new();
    value.write(&mut text);
    text
}

/// Several values as a list.
pub fn list_to_text<T: Json>(values: &[T]) -> String {
    let mut text = String::new();
    plain::write_list(values, &mut text);
    text
}

/// The values in a list, read one after the other: a long list never lies in memory twice.
pub fn list_from_text<T: Json>(text: &str) -> Option<Vec<T>> {
    let mut values = Vec::new();
    parse::each_item(text, &mut |item| {
        values.push(T::read(item)?);
        Some(())
    })?;
    Some(values)
}
