//! A map that is a sorted list: for the few hundred things of a book it is as quick as a tree, and every tree of the
//! standard library is eight kilobytes of its own.

use std::borrow::Borrow;
use std::ops::Index;

/// A map in the order of its keys. Looking up takes a few comparisons; adding at the end, which is where new things
/// go, costs next to nothing, adding or removing elsewhere moves what comes after.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Table<K, V>(Vec<(K, V)>);

impl<K, V> Default for Table<K, V> {
    fn default() -> Table<K, V> {
        Table(Vec::new())
    }
}

impl<K: Ord, V> Table<K, V> {
    /// Nothing in it.
    pub fn new() -> Table<K, V> {
        Table::default()
    }

    fn find<Q: Ord + ?Sized>(&self, key: &Q) -> Result<usize, usize>
    where
        K: Borrow<Q>,
    {
        match self.0.last() {
            Some((last, _)) if last.borrow() < key => Err(self.0.len()),
            _ => self.0.binary_search_by(|(known, _)| known.borrow().cmp(key)),
        }
    }

    /// What lies under `key`.
    pub fn get<Q: Ord + ?Sized>(&self, key: &Q) -> Option<&V>
    where
        K: Borrow<Q>,
    {
        self.get_key_value(key).map(|(_, value)| value)
    }

    /// The key as it is kept, and what lies under it.
    pub fn get_key_value<Q: Ord + ?Sized>(&self, key: &Q) -> Option<(&K, &V)>
    where
        K: Borrow<Q>,
    {
        self.0.get(self.find(key).ok()?).map(|(key, value)| (key, value))
    }

    /// What lies under `key`, to change.
    pub fn get_mut<Q: Ord + ?Sized>(&mut self, key: &Q) -> Option<&mut V>
    where
        K: Borrow<Q>,
    {
        let at = self.find(key).ok()?;
        self.0.get_mut(at).map(|(_, value)| value)
    }

    /// Whether something lies under `key`.
    pub fn contains_key<Q: Ord + ?Sized>(&self, key: &Q) -> bool
    where
        K: Borrow<Q>,
    {
        self.find(key).is_ok()
    }

    /// Puts `value` under `key` and returns what was there.
    pub fn insert(&mut self, key: K, value: V) -> Option<V> {
        match self.find(&key) {
            Ok(at) => self.0.get_mut(at).map(|(_, old)| std::mem::replace(old, value)),
            Err(at) => {
                self.0.insert(at, (key, value));
                None
            }
        }
    }

    /// What lies under `key`, which is `fresh` when nothing did.
    pub fn or_insert(&mut self, key: K, fresh: V) -> &mut V {
        let at = self.find(&key).unwrap_or_else(|at| {
            self.0.insert(at, (key, fresh));
            at
        });
        &mut self.0[at].1
    }

    /// Takes out what lies under `key`.
    pub fn remove<Q: Ord + ?Sized>(&mut self, key: &Q) -> Option<V>
    where
        K: Borrow<Q>,
    {
        self.find(key).ok().map(|at| self.0.remove(at).1)
    }

    /// Keeps what `keep` says.
    pub fn retain(&mut self, mut keep: impl FnMut(&K, &mut V) -> bool) {
        self.0.retain_mut(|(key, value)| keep(key, value));
    }

    /// All of it in the order of the keys.
    pub fn iter(&self) -> Iter<'_, K, V> {
        self.0.iter().map(|(key, value)| (key, value))
    }

    /// All of it, to change.
    pub fn iter_mut(&mut self) -> impl DoubleEndedIterator<Item = (&K, &mut V)> {
        self.0.iter_mut().map(|(key, value)| (&*key, value))
    }

    /// The keys in order.
    pub fn keys(&self) -> impl DoubleEndedIterator<Item = &K> + Clone {
        self.0.iter().map(|(key, _)| key)
    }

    /// The values in the order of their keys.
    pub fn values(&self) -> impl DoubleEndedIterator<Item = &V> + Clone {
        self.0.iter().map(|(_, value)| value)
    }

    /// The values, to change.
    pub fn values_mut(&mut self) -> impl DoubleEndedIterator<Item = &mut V> {
        self.0.iter_mut().map(|(_, value)| value)
    }

    /// How many there are.
    pub fn len(&self) -> usize {
        self.0.len()
    }

    /// Nothing in it.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }
}

/// What [`Table::iter`] goes through.
pub type Iter<'a, K, V> = std::iter::Map<std::slice::Iter<'a, (K, V)>, fn(&'a (K, V)) -> (&'a K, &'a V)>;

impl<'a, K: Ord, V> IntoIterator for &'a Table<K, V> {
    type Item = (&'a K, &'a V);
    type IntoIter = Iter<'a, K, V>;

    fn into_iter(self) -> Iter<'a, K, V> {
        self.iter()
    }
}

impl<K, V> IntoIterator for Table<K, V> {
    type Item = (K, V);
    type IntoIter = std::vec::IntoIter<(K, V)>;

    fn into_iter(self) -> Self::IntoIter {
        self.0.into_iter()
    }
}

impl<K: Ord, V> FromIterator<(K, V)> for Table<K, V> {
    fn from_iter<I: IntoIterator<Item = (K, V)>>(items: I) -> Table<K, V> {
        let mut table = Table::default();
        for (key, value) in items {
            table.insert(key, value);
        }
        table
    }
}

impl<Q: Ord + ?Sized, K: Ord + Borrow<Q>, V> Index<&Q> for Table<K, V> {
    type Output = V;

    /// # Panics
    /// When nothing lies under `key`.
    #[allow(clippy::panic)] // as every map
    fn index(&self, key: &Q) -> &V {
        match self.get(key) {
            Some(value) => value,
            None => panic!("no such key"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::Table;
    use std::collections::BTreeMap;

    #[test]
    fn it_does_what_a_tree_does() {
        let (mut table, mut tree) = (Table::new(), BTreeMap::new());
        for n in 0..2000_u32 {
            let key = n.wrapping_mul(2_654_435_761) % 101;
            if n % 3 == 0 {
                assert_eq!(table.remove(&key), tree.remove(&key));
            } else if n % 7 == 0 {
                assert_eq!(table.or_insert(key, n), tree.entry(key).or_insert(n));
            } else {
                assert_eq!(table.insert(key, n), tree.insert(key, n));
            }
            assert_eq!((table.get(&n), table.contains_key(&key)), (tree.get(&n), tree.contains_key(&key)));
            assert!(table.iter().eq(tree.iter()));
        }
        assert_eq!(table.len(), tree.len());
    }
}
