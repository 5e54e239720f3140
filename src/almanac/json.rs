//! How plain values lie in a file.
//!
//! One short piece of code reads every record from a JSON value and one writes it. `serde`'s derive compiles a reader
//! of its own for every type and every source; for the entries of the book that came to a fifth of the whole page
//! (figures in DEVELOPERS.md). `serde_json` still does the parsing, and the types still are `Serialize` and
//! `Deserialize`, by way of this trait.
//!
//! Reading is strict: a field that is missing, unknown or of another type makes the value unreadable as a whole, so
//! that nothing is taken in half.

use serde_json::{Map, Value};

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
pub struct Fields(Map<String, Value>);

impl Fields {
    /// None when the value is no object.
    pub fn of(value: Value) -> Option<Fields> {
        match value {
            Value::Object(map) => Some(Fields(map)),
            _ => None,
        }
    }

    /// A field that must be there.
    pub fn take<T: Json>(&mut self, name: &str) -> Option<T> {
        T::read(self.0.remove(name)?)
    }

    /// A field that may be left out.
    pub fn maybe<T: MaybeJson>(&mut self, name: &str) -> Option<T> {
        T::read_if(self.0.remove(name))
    }

    /// None when fields are left that nobody asked for.
    pub fn end(self) -> Option<()> {
        self.0.is_empty().then_some(())
    }

    /// The only field and what it says; none when there are more or fewer.
    pub fn only(self) -> Option<(String, Value)> {
        let mut fields = self.0.into_iter();
        let only = fields.next()?;
        fields.next().is_none().then_some(only)
    }
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
    // A text can always be written.
    out.push_str(&serde_json::to_string(text).unwrap_or_default());
}

impl Json for bool {
    fn write(&self, out: &mut String) {
        out.push_str(if *self { "true" } else { "false" });
    }

    fn read(value: Value) -> Option<bool> {
        value.as_bool()
    }
}

macro_rules! whole_numbers {
    ($($type:ty),+) => {$(
        impl Json for $type {
            fn write(&self, out: &mut String) {
                out.push_str(&self.to_string());
            }

            fn read(value: Value) -> Option<$type> {
                value.as_u64()?.try_into().ok()
            }
        }
    )+};
}

whole_numbers!(u8, u16, u32);

impl<T: Json> Json for Vec<T> {
    fn write(&self, out: &mut String) {
        out.push('[');
        for (index, item) in self.iter().enumerate() {
            if index > 0 {
                out.push(',');
            }
            item.write(out);
        }
        out.push(']');
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
macro_rules! json_object {
    ($type:ty { $($field:ident $(as $name:literal)?),* $(,)? } $(maybe { $($opt:ident),* $(,)? })?) => {
        impl $crate::almanac::json::Json for $type {
            fn write(&self, out: &mut String) {
                let mut object = $crate::almanac::json::Object::open(out);
                $(object.field($crate::almanac::json::json_name!($field $($name)?), &self.$field);)*
                $($($crate::almanac::json::MaybeJson::write_if(&self.$opt, &mut object, stringify!($opt));)*)?
                object.close();
            }

            fn read(value: serde_json::Value) -> Option<Self> {
                let mut fields = $crate::almanac::json::Fields::of(value)?;
                let made = Self {
                    $($field: fields.take($crate::almanac::json::json_name!($field $($name)?))?,)*
                    $($($opt: fields.maybe(stringify!($opt))?,)*)?
                };
                fields.end()?;
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
            fn read(value: serde_json::Value) -> Option<Self> {
                if let serde_json::Value::String(word) = &value {
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

            fn read(value: serde_json::Value) -> Option<Self> {
                <$type>::parse(value.as_str()?).ok()
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
                let mut text = String::new();
                $crate::almanac::json::Json::write(self, &mut text);
                let raw =
                    serde_json::value::RawValue::from_string(text).map_err(serde::ser::Error::custom)?;
                raw.serialize(serializer)
            }
        }

        impl<'de> serde::Deserialize<'de> for $type {
            fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
                let value = serde_json::Value::deserialize(deserializer)?;
                let unreadable = || serde::de::Error::custom(concat!("not a ", stringify!($type)));
                $crate::almanac::json::Json::read(value).ok_or_else(unreadable)
            }
        }
    };
}

pub(crate) use {json_choice, json_name, json_object, json_text, serde_by_json};
