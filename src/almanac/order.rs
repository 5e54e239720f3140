//! Sorting, by one piece of code for all types: the sort of the standard library comes to four kilobytes for each.

use std::cmp::Ordering;

/// Sorts by `compare`; what is equal stays in its order.
pub fn sort_by<T>(items: &mut [T], mut compare: impl FnMut(&T, &T) -> Ordering) {
    let order = sorted(items.len(), &mut |a, b| match (items.get(a), items.get(b)) {
        (Some(a), Some(b)) => compare(a, b),
        _ => Ordering::Equal,
    });
    for (one, other) in swaps(order) {
        items.swap(one, other);
    }
}

/// What to swap so that each place holds what lay where `order` says.
fn swaps(mut order: Vec<usize>) -> Vec<(usize, usize)> {
    let mut swaps = Vec::new();
    for start in 0..order.len() {
        let mut at = start;
        // Along the ring of places that change hands, until it comes back to where it began.
        while let Some(from) = order.get_mut(at).map(|from| std::mem::replace(from, at))
            && from != start
            && from != at
        {
            swaps.push((at, from));
            at = from;
        }
    }
    swaps
}

/// The places from 0 to `count` in order: runs merged with their neighbours until one is left. What lies in order
/// already costs a comparison each.
fn sorted(count: usize, compare: &mut dyn FnMut(usize, usize) -> Ordering) -> Vec<usize> {
    let mut order: Vec<usize> = (0..count).collect();
    let mut merged = Vec::with_capacity(count);
    let mut width = 1;
    while width < count {
        for run in order.chunks(width * 2) {
            let (mut left, mut right) = run.split_at(width.min(run.len()));
            if let (Some(a), Some(b)) = (left.last(), right.first())
                && compare(*a, *b) != Ordering::Greater
            {
                merged.extend_from_slice(run);
                continue;
            }
            while let (Some((a, more)), Some((b, others))) = (left.split_first(), right.split_first()) {
                if compare(*a, *b) == Ordering::Greater {
                    merged.push(*b);
                    right = others;
                } else {
                    merged.push(*a);
                    left = more;
                }
            }
            merged.extend_from_slice(left);
            merged.extend_from_slice(right);
        }
        std::mem::swap(&mut order, &mut merged);
        merged.clear();
        width *= 2;
    }
    order
}

#[cfg(test)]
mod tests {
    use super::sort_by;

    #[test]
    fn equal_things_stay_in_their_order_whatever_the_number() {
        for count in 0..70_u32 {
            for turn in 0..20 {
                let mut own: Vec<(u32, u32)> =
                    (0..count).map(|n| ((n * 7919 + turn * 104_729) % 11, n)).collect();
                let mut other = own.clone();
                sort_by(&mut own, |a, b| a.0.cmp(&b.0));
                other.sort_by_key(|a| a.0);
                assert_eq!(own, other);
            }
        }
    }
}
