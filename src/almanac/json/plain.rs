//! Texts, whole numbers, yes and no, lists and pairs.

use super::{Json, MaybeJson, Object, Value};

/// Writes a text with the escapes it needs.
pub fn write_text(text: &str, out: &mut String) {
    out.push('"');
    for c in text.chars() {
        match c {
            '"' => out.push_str("\\\""),
            '\\' => out.push_str("\\\\"),
            '\u{8}' => out.push_str("\\b"),
            '\u{c}' => out.push_str("\\f"),
            '\n' => out.push_str("\\n"),
            '\r' => out.push_str("\\r"),
            '\t' => out.push_str("\\t"),
            '\0'..'\u{20}' => {
                out.push_str(if c < '\u{10}' { "\\u000" } else { "\\u001" });
                out.extend(char::from_digit(u32::from(c) & 15, 16));
            }
            c => out.push(c),
        }
    }
    out.push('"');
}

impl Json for String {
    fn write(&self, out: &mut String) {
        write_text(self, out);
    }

    fn read(value: Value) -> Option<String> {
        match value {
            Value::String(text) => Some(text),
            _ => None,
        }
    }
}

/// A text, or `null`.
impl Json for Option<String> {
    fn write(&self, out: &mut String) {
        match self {
            Some(text) => text.write(out),
            None => out.push_str("null"),
        }
    }

    fn read(value: Value) -> Option<Option<String>> {
        match value {
            Value::Null => Some(None),
            value => String::read(value).map(Some),
        }
    }
}

impl Json for bool {
    fn write(&self, out: &mut String) {
        out.push_str(if *self { "true" } else { "false" });
    }

    fn read(value: Value) -> Option<bool> {
        match value {
            Value::Bool(bool) => Some(bool),
            _ => None,
        }
    }
}

/// Writes a whole number.
pub(crate) fn write_whole(number: u64, out: &mut String) {
    if number > 9 {
        write_whole(number / 10, out);
    }
    out.push(char::from(b'0' + u8::try_from(number % 10).unwrap_or(0)));
}

/// Digits and nothing else: `1.0` and `1e0` are no whole numbers.
fn whole(value: &Value) -> Option<u64> {
    value.number()?.parse().ok()
}

macro_rules! whole_numbers {
    ($($type:ty),+) => {$(
        impl Json for $type {
            fn write(&self, out: &mut String) {
                #[allow(clippy::cast_lossless)] // of `usize`, which here is never wider than 64 bits
                write_whole(*self as u64, out);
            }

            fn read(value: Value) -> Option<$type> {
                whole(&value)?.try_into().ok()
            }
        }
    )+};
}

whole_numbers!(u8, u16, u32, usize);

fn items(value: Value) -> Option<Vec<Value>> {
    match value {
        Value::Array(items) => Some(items),
        _ => None,
    }
}

impl<T: Json> Json for Vec<T> {
    fn write(&self, out: &mut String) {
        write_list(self, out);
    }

    fn read(value: Value) -> Option<Vec<T>> {
        let mut values = Vec::new();
        for item in items(value)? {
            values.push(T::read(item)?);
        }
        Some(values)
    }
}

impl<A: Json, B: Json> Json for (A, B) {
    fn write(&self, out: &mut String) {
        out.push('[');
        self.0.write(out);
        out.push(',');
        self.1.write(out);
        out.push(']');
    }

    fn read(value: Value) -> Option<(A, B)> {
        let mut items = items(value)?;
        let (b, a) = (items.pop()?, items.pop()?);
        if items.is_empty() { Some((A::read(a)?, B::read(b)?)) } else { None }
    }
}

pub(super) fn write_list<T: Json>(values: &[T], out: &mut String) {
    out.push('[');
    for (index, value) in values.iter().enumerate() {
        if index > 0 {
            out.push(',');
        }
        value.write(out);
    }
    out.push(']');
}

impl<T: Json> MaybeJson for Option<T> {
    fn write_if(&self, out: &mut Object<'_>, name: &str) {
        if let Some(value) = self {
            out.field(name, value);
        }
    }

    fn read_if(value: Option<Value>) -> Option<Self> {
        value.map_or(Some(None), |value| T::read(value).map(Some))
    }
}

/// An empty text is left out.
impl MaybeJson for String {
    fn write_if(&self, out: &mut Object<'_>, name: &str) {
        if !self.is_empty() {
            out.field(name, self);
        }
    }

    fn read_if(value: Option<Value>) -> Option<Self> {
        value.map_or(Some(String::new()), Json::read)
    }
}

impl<T: Json> MaybeJson for Vec<T> {
    fn write_if(&self, out: &mut Object<'_>, name: &str) {
        if !self.is_empty() {
            out.field(name, self);
        }
    }

    fn read_if(value: Option<Value>) -> Option<Self> {
        value.map_or(Some(Vec::new()), Json::read)
    }
}
