//! Counts of beetles as people make them: exact, between two numbers, or "fifty and more".

use super::json::{Fields, Json, Object, Value, serde_by_json};

/// A count that may be a range. A range stays a range through every sum: its ends are never averaged away.
///
/// Stored as a plain number when exact, else as `{"low":5,"high":19}`, or `{"low":50}` without an upper end.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct CountRange {
    low: u32,
    high: Option<u32>,
}

/// The upper end of a range lies below the lower one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Backwards;

impl std::fmt::Display for Backwards {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("the upper end of a range lies below the lower one")
    }
}

impl std::error::Error for Backwards {}

impl CountRange {
    /// None at all.
    pub const NONE: CountRange = CountRange { low: 0, high: Some(0) };

    /// Counted to the last one.
    pub fn exact(count: u32) -> CountRange {
        CountRange { low: count, high: Some(count) }
    }

    /// From `low` to `high`, both included; `None` means "`low` or more".
    ///
    /// # Errors
    /// [`Backwards`] when `high` is below `low`.
    pub fn new(low: u32, high: Option<u32>) -> Result<CountRange, Backwards> {
        match high {
            Some(high) if high < low => Err(Backwards),
            _ => Ok(CountRange { low, high }),
        }
    }

    /// The fewest it can be.
    pub fn low(self) -> u32 {
        self.low
    }

    /// The most it can be; `None` when nobody knows.
    pub fn high(self) -> Option<u32> {
        self.high
    }

    /// Both ends are the same number.
    pub fn is_exact(self) -> bool {
        self.high == Some(self.low)
    }

    /// Both together. The upper end is unknown as soon as one of the two is, or when it leaves the range of `u32`.
    #[must_use]
    pub fn plus(self, other: CountRange) -> CountRange {
        CountRange {
            low: self.low.saturating_add(other.low),
            high: self.high.zip(other.high).and_then(|(a, b)| a.checked_add(b)),
        }
    }
}

/// A plain number when exact, else `{"low":5,"high":19}` or `{"low":50}`.
impl Json for CountRange {
    fn write(&self, out: &mut String) {
        if self.is_exact() {
            return self.low.write(out);
        }
        let mut object = Object::open(out);
        object.field("low", &self.low);
        if let Some(high) = self.high {
            object.field("high", &high);
        }
        object.close();
    }

    fn read(value: Value) -> Option<CountRange> {
        if value.number().is_some() {
            return u32::read(value).map(CountRange::exact);
        }
        let mut fields = Fields::of(value)?;
        let range = CountRange::new(fields.take("low")?, fields.maybe("high")?).ok()?;
        fields.end()?;
        Some(range)
    }
}

serde_by_json!(CountRange);

#[cfg(test)]
mod tests {
    use super::{Backwards, CountRange};

    #[test]
    fn an_exact_count_lies_in_the_file_as_a_number_and_a_range_as_its_ends() {
        for (count, written) in [
            (CountRange::exact(0), "0"),
            (CountRange::exact(12), "12"),
            (CountRange { low: 5, high: Some(19) }, r#"{"low":5,"high":19}"#),
            (CountRange { low: 50, high: None }, r#"{"low":50}"#),
        ] {
            assert_eq!(serde_json::to_string(&count).ok().as_deref(), Some(written));
            assert_eq!(serde_json::from_str::<CountRange>(written).ok(), Some(count));
        }
    }

    #[test]
    fn a_damaged_file_cannot_bring_in_a_backward_range_or_a_negative_count() {
        for written in
            [r#"{"low":5,"high":4}"#, "-1", "1.5", r#"{"high":4}"#, r#"{"low":1,"hihg":4}"#, "null"]
        {
            assert!(serde_json::from_str::<CountRange>(written).is_err(), "{written}");
        }
        assert_eq!(CountRange::new(5, Some(4)), Err(Backwards));
    }

    #[test]
    fn ranges_stay_ranges_when_added() {
        let sum = CountRange::exact(3).plus(CountRange { low: 5, high: Some(19) });
        assert_eq!((sum.low(), sum.high(), sum.is_exact()), (8, Some(22), false));
        assert_eq!(sum.plus(CountRange { low: 50, high: None }).high(), None);
        let most = CountRange::exact(u32::MAX);
        assert_eq!(most.plus(most), CountRange { low: u32::MAX, high: None });
    }
}
