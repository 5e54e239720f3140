//! How plain values lie in a file.
//!
//! One short piece of code parses JSON, one reads every record from it and one writes it. `serde`'s derive compiles a
//! reader of its own for every type and every source, and `serde_json` brings tables for floating-point numbers that
//! no record holds; together that came to a tenth of the whole page (figures in DEVELOPERS.md). The types still are
//! `Serialize` and `Deserialize`, by way of this trait, for programs that have `serde_json` at hand anyway.
//!
//! Reading is strict: a field that is missing, unknown or of another type makes the value unreadable as a whole, so
//! that nothing is taken in half.

mod parse;

pub use parse::{Value, fields_as_written, parse};

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

/// An object being written.
pub struct Object<'a> {
    out: &'a mut String,
    next: char,
}

impl<'a> Object<'a> {
    /// Begins an object.
    pub fn open(out: &'a mut String) -> Object<'a> {
        Object { out, next: '{' }
    }

    /// Writes a field. Names are identifiers of this program and need no escape.
    pub fn field(&mut self, name: &str, value: &impl Json) {
        self.name(name);
        value.write(self.out);
    }

    /// Writes a field that is an object itself. The names of its fields need no escape.
    pub fn object<'v, T: Json + 'v>(&mut self, name: &str, fields: impl Iterator<Item = (String, &'v T)>) {
        self.name(name);
        let mut object = Object::open(self.out);
        for (name, value) in fields {
            object.field(&name, value);
        }
        object.close();
    }

    /// Ends the object.
    pub fn close(self) {
        if self.next == '{' {
            self.out.push('{');
        }
        self.out.push('}');
    }

    fn name(&mut self, name: &str) {
        self.out.push(self.next);
        self.next = ',';
        self.out.push('"');
        self.out.push_str(name);
        self.out.push_str("\":");
    }
}

/// The fields of an object being read.
pub struct Fields(Vec<(String, Value)>);

impl Fields {
    /// None when the value is no object.
    pub fn of(value: Value) -> Option<Fields> {
        match value {
            Value::Object(fields) => Some(Fields(fields)),
            _ => None,
        }
    }

    /// A field that must be there.
    pub fn take<T: Json>(&mut self, name: &str) -> Option<T> {
        T::read(self.remove(name)?)
    }

    /// A field that may be left out.
    pub fn maybe<T: MaybeJson>(&mut self, name: &str) -> Option<T> {
        T::read_if(self.remove(name))
    }

    /// A field that stands for its default when it is left out.
    pub fn or_default<T: Json + Default>(&mut self, name: &str) -> Option<T> {
        self.remove(name).map_or_else(|| Some(T::default()), T::read)
    }

    /// None when fields are left that nobody asked for.
    pub fn end(self) -> Option<()> {
        self.0.is_empty().then_some(())
    }

    /// Fields that nobody asked for are passed over.
    #[allow(clippy::unnecessary_wraps)] // as `end`
    pub fn pass_over(self) -> Option<()> {
        Some(())
    }

    /// The only field and what it says; none when there are more or fewer.
    pub fn only(mut self) -> Option<(String, Value)> {
        let only = self.0.pop()?;
        self.0.is_empty().then_some(only)
    }

    /// Of fields of one name the last counts.
    fn remove(&mut self, name: &str) -> Option<Value> {
        let mut found = None;
        self.0.retain_mut(|(field, value)| {
            let other = field != name;
            if !other {
                found = Some(std::mem::replace(value, Value::Null));
            }
            other
        });
        found
    }
}

/// The value in a text; none when the text is no JSON or says something else.
pub fn from_text<T: Json>(text: &str) -> Option<T> {
    T::read(parse(text)?)
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
    write_list(values, &mut text);
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

fn write_list<T: Json>(values: &[T], out: &mut String) {
    out.push('[');
    for (index, value) in values.iter().enumerate() {
        if index > 0 {
            out.push(',');
        }
        value.write(out);
    }
    out.push(']');
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

macro_rules! whole_numbers {
    ($($type:ty),+) => {$(
        impl Json for $type {
            fn write(&self, out: &mut String) {
                out.push_str(&self.to_string());
            }

            fn read(value: Value) -> Option<$type> {
                // Digits and nothing else: `1.0` and `1e0` are no whole numbers.
                value.number()?.parse().ok()
            }
        }
    )+};
}

whole_numbers!(u8, u16, u32, usize);

impl<T: Json> Json for Vec<T> {
    fn write(&self, out: &mut String) {
        write_list(self, out);
    }

    fn read(value: Value) -> Option<Vec<T>> {
        match value {
            Value::Array(items) => items.into_iter().map(T::read).collect(),
            _ => None,
        }
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
        match value {
            Value::Array(items) => {
                let [a, b] = <[Value; 2]>::try_from(items).ok()?;
                Some((A::read(a)?, B::read(b)?))
            }
            _ => None,
        }
    }
}

/// A struct: its fields, then those that are left out when they hold nothing. `field as "name"` where the name in the
/// file is no identifier.
///
/// `loose` before the type: fields that nobody knows are passed over, for what the app remembers of itself.
macro_rules! json_object {
    (loose $type:ty { $($fields:tt)* } $(maybe { $($opt:tt)* })?) => {
        $crate::almanac::json::json_object!(@ pass_over, $type { $($fields)* } $(maybe { $($opt)* })?);
    };
    ($type:ty { $($fields:tt)* } $(maybe { $($opt:tt)* })?) => {
        $crate::almanac::json::json_object!(@ end, $type { $($fields)* } $(maybe { $($opt)* })?);
    };
    (@ $end:ident, $type:ty { $($field:ident $(as $name:literal)?),* $(,)? } $(maybe { $($opt:ident),* $(,)? })?) => {
        impl $crate::almanac::json::Json for $type {
            fn write(&self, out: &mut String) {
                let mut object = $crate::almanac::json::Object::open(out);
                $(object.field($crate::almanac::json::json_name!($field $($name)?), &self.$field);)*
                $($($crate::almanac::json::MaybeJson::write_if(&self.$opt, &mut object, stringify!($opt));)*)?
                object.close();
            }

            fn read(value: $crate::almanac::json::Value) -> Option<Self> {
                let mut fields = $crate::almanac::json::Fields::of(value)?;
                let made = Self {
                    $($field: fields.take($crate::almanac::json::json_name!($field $($name)?))?,)*
                    $($($opt: fields.maybe(stringify!($opt))?,)*)?
                };
                fields.$end()?;
                Some(made)
            }
        }
        $crate::almanac::json::serde_by_json!($type);
    };
}

macro_rules! json_name {
    ($field:ident) => {
        stringify!($field)
    };
    ($field:ident $name:literal) => {
        $name
    };
}

/// An enum whose variants are words, wrap one value, or have fields: `"word"`, `{"one": …}`, `{"many": {…}}`.
macro_rules! json_choice {
    (
        $type:ident
        words { $($word:ident = $word_name:literal),* $(,)? }
        one { $($one:ident = $one_name:literal),* $(,)? }
        many { $($many:ident = $many_name:literal
            { $($field:ident $(as $name:literal)?),* $(,)? } $(maybe { $($opt:ident),* $(,)? })?),* $(,)? }
    ) => {
        impl $crate::almanac::json::Json for $type {
            fn write(&self, out: &mut String) {
                match self {
                    $($type::$word => $crate::almanac::json::write_text($word_name, out),)*
                    $($type::$one(value) => {
                        let mut object = $crate::almanac::json::Object::open(out);
                        object.field($one_name, value);
                        object.close();
                    })*
                    $($type::$many { $($field,)* $($($opt,)*)? } => {
                        out.push_str(concat!("{\"", $many_name, "\":"));
                        let mut object = $crate::almanac::json::Object::open(out);
                        $(object.field($crate::almanac::json::json_name!($field $($name)?), $field);)*
                        $($($crate::almanac::json::MaybeJson::write_if($opt, &mut object, stringify!($opt));)*)?
                        object.close();
                        out.push('}');
                    })*
                }
            }

            #[allow(unused_mut, unused_variables, unreachable_code)] // where there are no words or only words
            fn read(value: $crate::almanac::json::Value) -> Option<Self> {
                if let $crate::almanac::json::Value::String(word) = &value {
                    return match word.as_str() {
                        $($word_name => Some($type::$word),)*
                        _ => None,
                    };
                }
                let (name, value) = $crate::almanac::json::Fields::of(value)?.only()?;
                match name.as_str() {
                    $($one_name => Some($type::$one($crate::almanac::json::Json::read(value)?)),)*
                    $($many_name => {
                        let mut fields = $crate::almanac::json::Fields::of(value)?;
                        let made = $type::$many {
                            $($field: fields.take($crate::almanac::json::json_name!($field $($name)?))?,)*
                            $($($opt: fields.maybe(stringify!($opt))?,)*)?
                        };
                        fields.end()?;
                        Some(made)
                    })*
                    _ => None,
                }
            }
        }
        $crate::almanac::json::serde_by_json!($type);
    };
}

/// A type that lies in a file as the text it displays and parses.
macro_rules! json_text {
    ($($type:ty),+) => {$(
        impl $crate::almanac::json::Json for $type {
            fn write(&self, out: &mut String) {
                // Their texts are letters, digits and marks that need no escape.
                out.push('"');
                out.push_str(&self.to_string());
                out.push('"');
            }

            fn read(value: $crate::almanac::json::Value) -> Option<Self> {
                <$type>::parse(value.text()?).ok()
            }
        }
        $crate::almanac::json::serde_by_json!($type);
    )+};
}

/// `Serialize` and `Deserialize` by way of [`Json`].
macro_rules! serde_by_json {
    ($type:ty) => {
        impl serde::Serialize for $type {
            fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                let text = $crate::almanac::json::to_text(self);
                let raw =
                    serde_json::value::RawValue::from_string(text).map_err(serde::ser::Error::custom)?;
                raw.serialize(serializer)
            }
        }

        impl<'de> serde::Deserialize<'de> for $type {
            fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
                let raw = Box::<serde_json::value::RawValue>::deserialize(deserializer)?;
                let unreadable = || serde::de::Error::custom(concat!("not a ", stringify!($type)));
                $crate::almanac::json::from_text(raw.get()).ok_or_else(unreadable)
            }
        }
    };
}

pub(crate) use {json_choice, json_name, json_object, json_text, serde_by_json};
