//! Which labels of a drawing have room.

/// A label or what it must not cover, in the units of a drawing; y goes down.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Patch {
    /// Its left edge.
    pub left: f64,
    /// Its upper edge.
    pub top: f64,
    /// Its right edge.
    pub right: f64,
    /// Its lower edge.
    pub bottom: f64,
}

impl Patch {
    fn meets(&self, other: &Patch) -> bool {
        self.left < other.right
            && other.left < self.right
            && self.top < other.bottom
            && other.top < self.bottom
    }

    fn within(&self, other: &Patch) -> bool {
        self.left >= other.left
            && self.right <= other.right
            && self.top >= other.top
            && self.bottom <= other.bottom
    }
}

/// For each of `labels`, in this order, whether it is written: within `page`, covering nothing of `taken` and no label
/// written before it.
pub fn written(labels: &[Patch], taken: &[Patch], page: &Patch) -> Vec<bool> {
    let mut said: Vec<bool> = Vec::new();
    for label in labels {
        let before = labels.iter().zip(&said).filter(|(_, said)| **said).map(|(before, _)| before);
        let free = !taken.iter().chain(before).any(|other| label.meets(other));
        said.push(free && label.within(page));
    }
    said
}

#[cfg(test)]
mod tests {
    use super::*;

    const PAGE: Patch = Patch { left: 0.0, top: 0.0, right: 100.0, bottom: 50.0 };

    fn at(left: f64, top: f64) -> Patch {
        Patch { left, top, right: left + 20.0, bottom: top + 10.0 }
    }

    #[test]
    fn a_row_too_close_has_every_second_label_and_edges_may_touch() {
        let row = [0.0, 10.0, 20.0, 30.0, 80.0, 81.0].map(|left| at(left, 5.0));
        assert_eq!(written(&row, &[], &PAGE), [true, false, true, false, true, false]);
        // Below each other there is room for all.
        let column = [0.0, 10.0, 20.0].map(|top| at(0.0, top));
        assert_eq!(written(&column, &[], &PAGE), [true; 3]);
        assert_eq!(written(&[at(0.0, 0.0), at(0.0, 0.0)], &[], &PAGE), [true, false]);
    }

    #[test]
    fn nothing_is_written_over_a_hive_or_past_the_page() {
        let hive = [at(40.0, 12.0)];
        assert_eq!(
            written(&[at(40.0, 2.0), at(59.0, 21.0), at(60.0, 22.0)], &hive, &PAGE),
            [true, false, true]
        );
        let outside = [at(-1.0, 0.0), at(81.0, 0.0), at(0.0, -1.0), at(0.0, 41.0)];
        assert_eq!(written(&outside, &[], &PAGE), [false; 4]);
    }
}
