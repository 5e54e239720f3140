//! The macros by which records read and write themselves.

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

            fn read(value: $crate::almanac::json::Value) -> Option<Self> {
                let mut fields = $crate::almanac::json::Fields::of(value)?;
                $(let $field = fields.take($crate::almanac::json::json_name!($field $($name)?));)*
                $($(let $opt = fields.maybe(stringify!($opt));)*)?
                fields.end()?;
                Some(Self { $($field: $field?,)* $($($opt: $opt?,)*)? })
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
    ($type:ident words { $($word:ident = $word_name:literal),* $(,)? } one {} many {}) => {
        impl $crate::almanac::json::Json for $type {
            fn write(&self, out: &mut String) {
                $crate::almanac::json::write_text(match self { $($type::$word => $word_name,)* }, out);
            }

            fn read(value: $crate::almanac::json::Value) -> Option<Self> {
                const ALL: &[$type] = &[$($type::$word),*];
                ALL.get($crate::almanac::json::choice(value, &[$($word_name),*], &[], &[])?.0).copied()
            }
        }
        $crate::almanac::json::serde_by_json!($type);
    };
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
                        let mut object = $crate::almanac::json::Object::open_inside(out, $many_name);
                        $(object.field($crate::almanac::json::json_name!($field $($name)?), $field);)*
                        $($($crate::almanac::json::MaybeJson::write_if($opt, &mut object, stringify!($opt));)*)?
                        object.close();
                    })*
                }
            }

            fn read(value: $crate::almanac::json::Value) -> Option<Self> {
                #[derive(Clone, Copy)]
                enum Case { $($word,)* $($one,)* $($many,)* }
                const WORDS: &[&str] = &[$($word_name),*];
                const ONE: &[&str] = &[$($one_name),*];
                const MANY: &[&str] = &[$($many_name),*];
                const CASES: &[Case] = &[$(Case::$word,)* $(Case::$one,)* $(Case::$many,)*];
                let (at, mut fields) = $crate::almanac::json::choice(value, WORDS, ONE, MANY)?;
                let made = match *CASES.get(at)? {
                    $(Case::$word => Some($type::$word),)*
                    $(Case::$one => fields.take($one_name).map($type::$one),)*
                    $(Case::$many => {
                        $(let $field = fields.take($crate::almanac::json::json_name!($field $($name)?));)*
                        $($(let $opt = fields.maybe(stringify!($opt));)*)?
                        (|| Some($type::$many { $($field: $field?,)* $($($opt: $opt?,)*)? }))()
                    })*
                };
                fields.end()?;
                made
            }
        }
        $crate::almanac::json::serde_by_json!($type);
    };
}

/// A type that lies in a file as the text it displays and parses: what its own `put` adds to a text, letters, digits and
/// marks that need no escape.
macro_rules! json_text {
    ($($type:ty),+) => {$(
        impl $crate::almanac::json::Json for $type {
            fn write(&self, out: &mut String) {
                out.push('"');
                self.put(out);
                out.push('"');
            }

            fn read(value: $crate::almanac::json::Value) -> Option<Self> {
                <$type>::parse(value.text()?).ok()
            }
        }
        $crate::almanac::json::serde_by_json!($type);

        impl std::fmt::Display for $type {
            fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                let mut text = String::new();
                self.put(&mut text);
                f.write_str(&text)
            }
        }
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
