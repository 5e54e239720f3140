//! An object, field by field: being written, and being read.

use super::{Json, MaybeJson, Value};

/// An object being written.
///
/// What is written and read field by field is in functions that are never merged into their callers: a record has
/// dozens of fields, and the page is downloaded over a bad line.
pub struct Object<'a> {
    out: &'a mut String,
    next: &'static str,
    last: &'static str,
}

impl<'a> Object<'a> {
    /// Begins an object.
    pub fn open(out: &'a mut String) -> Object<'a> {
        Object { out, next: "{\"", last: "}" }
    }

    /// Begins an object that is the only field of another.
    #[inline(never)]
    pub(crate) fn open_inside(out: &'a mut String, name: &str) -> Object<'a> {
        Object::open(out).name(name);
        Object { out, next: "{\"", last: "}}" }
    }

    /// Writes a field. Names are identifiers of this program and need no escape.
    pub fn field(&mut self, name: &str, value: &impl Json) {
        self.name(name);
        value.write(self.out);
    }

    /// Writes a field whose value writes itself.
    pub fn raw(&mut self, name: &str, value: &dyn Fn(&mut String)) {
        self.name(name);
        value(self.out);
    }

    /// Ends the object.
    #[inline(never)]
    pub fn close(self) {
        if self.next.starts_with('{') {
            self.out.push('{');
        }
        self.out.push_str(self.last);
    }

    #[inline(never)]
    fn name(&mut self, name: &str) {
        self.out.push_str(self.next);
        self.next = ",\"";
        self.out.push_str(name);
        self.out.push_str("\":");
    }
}

/// The fields of an object being read.
pub struct Fields(Vec<(String, Value)>);

impl Fields {
    /// None when the value is no object.
    #[inline(never)]
    pub fn of(value: Value) -> Option<Fields> {
        match value {
            Value::Object(fields) => Some(Fields(fields)),
            _ => None,
        }
    }

    /// A field that must be there.
    #[inline(never)]
    pub fn take<T: Json>(&mut self, name: &str) -> Option<T> {
        T::read(self.remove(name)?)
    }

    /// A field that may be left out.
    #[inline(never)]
    pub fn maybe<T: MaybeJson>(&mut self, name: &str) -> Option<T> {
        T::read_if(self.remove(name))
    }

    /// A field that must be there, whatever it holds.
    pub fn value(&mut self, name: &str) -> Option<Value> {
        self.remove(name)
    }

    /// A field that stands for its default when it is left out.
    pub fn or_default<T: Json + Default>(&mut self, name: &str) -> Option<T> {
        self.remove(name).map_or_else(|| Some(T::default()), T::read)
    }

    /// None when fields are left that nobody asked for.
    #[inline(never)]
    pub fn end(self) -> Option<()> {
        self.0.is_empty().then_some(())
    }

    /// Of fields of one name the last counts. In one go, however many there are: a file can say one a hundred thousand
    /// times.
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

/// Which of `words` a text is, or which of `one` and `many`, counted on from there, the only field of an object is;
/// with the fields to be read: the object itself for `one`, what lies in that field for `many`.
pub(crate) fn choice(value: Value, words: &[&str], one: &[&str], many: &[&str]) -> Option<(usize, Fields)> {
    let among = |names: &[&str], name: &str| names.iter().position(|known| *known == name);
    let mut fields = match value {
        Value::String(word) => return Some((among(words, &word)?, Fields(Vec::new()))),
        value => Fields::of(value)?,
    };
    let [(name, inside)] = &mut *fields.0 else { return None };
    if let Some(at) = among(one, name) {
        return Some((words.len() + at, fields));
    }
    let at = words.len() + one.len() + among(many, name)?;
    Some((at, Fields::of(std::mem::replace(inside, Value::Null))?))
}
