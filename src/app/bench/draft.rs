//! What stands in the fields of the Bench, exactly as typed.
//!
//! Only fields that differ from the example are stored, so that a better example in a later version reaches
//! everyone who did not type over it, and a field that is gone or new never spoils the rest. The texts lie in one
//! table: a hundred fields of a struct would be a tenth of the whole page.

mod fields;

use fields::FIELDS;
pub use fields::Slot;

use crate::almanac::json::{Json, Object, Value, serde_by_json};

/// The typed text of every field of the Bench; the default holds the examples.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BenchDraft {
    texts: Vec<String>,
}

impl Default for BenchDraft {
    fn default() -> BenchDraft {
        BenchDraft { texts: FIELDS.iter().map(|(_, example)| (*example).to_owned()).collect() }
    }
}

impl BenchDraft {
    /// The same draft with another text in the field of this name; a name that is no field changes nothing.
    #[must_use]
    pub fn with(mut self, field: &str, text: &str) -> BenchDraft {
        let index = FIELDS.iter().position(|(name, _)| *name == field);
        if let Some(own) = index.and_then(|index| self.texts.get_mut(index)) {
            text.clone_into(own);
        }
        self
    }

    /// The example stands in the field, be it that nobody has typed there.
    pub fn is_example(&self, field: Slot) -> bool {
        FIELDS.get(field as usize).is_some_and(|(_, example)| self.text(field) == *example)
    }

    fn text(&self, field: Slot) -> &str {
        self.texts.get(field as usize).map_or("", String::as_str)
    }
}

/// Only what differs from the example, in the order of the names.
impl Json for BenchDraft {
    fn write(&self, out: &mut String) {
        let changed = || {
            let fields = FIELDS.iter().zip(&self.texts);
            fields.filter(|((_, example), text)| example != text).map(|((name, _), text)| (*name, text))
        };
        let mut object = Object::open(out);
        let mut last = "";
        // A handful at most: looking for the next name each time is shorter than a sort.
        while let Some((name, text)) =
            changed().filter(|(name, _)| *name > last).min_by_key(|(name, _)| *name)
        {
            object.field(name, text);
            last = name;
        }
        object.close();
    }

    fn read(value: Value) -> Option<BenchDraft> {
        let Value::Object(fields) = value else { return None };
        fields
            .into_iter()
            .try_fold(BenchDraft::default(), |draft, (name, text)| Some(draft.with(&name, text.text()?)))
    }
}

serde_by_json!(BenchDraft);

/// The same fields, each a signal of its own, so that a keystroke wakes only what depends on it.
#[cfg(target_arch = "wasm32")]
#[derive(Clone, Copy)]
pub struct BenchTyped {
    texts: crate::app::graph::StoredValue<Vec<crate::app::graph::RwSignal<String>>>,
}

#[cfg(target_arch = "wasm32")]
impl BenchTyped {
    /// Signals that start with `draft`.
    pub fn new(draft: BenchDraft) -> BenchTyped {
        let signals = draft.texts.into_iter().map(crate::app::graph::RwSignal::new).collect();
        BenchTyped { texts: crate::app::graph::StoredValue::new(signals) }
    }

    /// What stands in the fields now; tracks all of them.
    pub fn draft(self) -> BenchDraft {
        BenchDraft { texts: self.texts.with_value(|texts| texts.iter().map(|text| text.get()).collect()) }
    }

    /// The text of one field.
    pub fn text(self, field: Slot) -> crate::app::graph::RwSignal<String> {
        let text = self.texts.with_value(|texts| texts.get(field as usize).copied());
        // The table has a text for every field; a spare one is better than a page that stops.
        text.unwrap_or_else(|| crate::app::graph::RwSignal::new(String::new()))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_field_is_an_example_until_something_else_stands_in_it() {
        let draft = BenchDraft::default().with("split_back", "20 %");
        assert!(draft.is_example(Slot::split_goes) && !draft.is_example(Slot::split_back));
        assert!(draft.with("split_back", "30 %").is_example(Slot::split_back));
    }

    #[test]
    fn only_what_was_typed_is_stored() {
        assert_eq!(serde_json::to_string(&BenchDraft::default()).unwrap(), "{}");
        let draft = BenchDraft::default().with("hives", "24").with("bottle", "1");
        let stored = serde_json::to_string(&draft).unwrap();
        assert_eq!(stored, r#"{"bottle":"1","hives":"24"}"#);
        assert_eq!(serde_json::from_str::<BenchDraft>(&stored).unwrap(), draft);
    }

    #[test]
    fn an_emptied_field_stays_empty_and_a_strange_one_does_no_harm() {
        let draft: BenchDraft = serde_json::from_str(r#"{"hives":"","honey":"5"}"#).unwrap();
        assert_eq!(draft, BenchDraft::default().with("hives", ""));
    }
}
