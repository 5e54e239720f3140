//! Chance that comes again with its seed.

/// A linear congruential generator, of which only the high bits are used (multiplier and increment: Knuth, The Art of
/// Computer Programming 2, 3.3.4).
pub(crate) struct Chance(u64);

impl Chance {
    /// The numbers of this seed.
    pub(crate) fn of(seed: u64) -> Chance {
        let mut chance = Chance(seed);
        // Seeds that are neighbours begin alike.
        chance.below(1);
        chance.below(1);
        chance
    }

    /// A whole number below `most`; 0 when that is 0.
    pub(crate) fn below(&mut self, most: usize) -> usize {
        self.step();
        usize::try_from(self.0 >> 33).unwrap_or(0) % most.max(1)
    }

    /// The numbers that follow this state of the generator.
    pub(crate) fn from_state(state: u64) -> Chance {
        Chance(state)
    }

    /// A number from 0 to 1.
    pub(crate) fn share(&mut self) -> f64 {
        self.step();
        f64::from(u32::try_from(self.0 >> 32).unwrap()) / f64::from(u32::MAX)
    }

    fn step(&mut self) {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
    }

    /// True once in `of` times.
    pub(crate) fn once_in(&mut self, of: usize) -> bool {
        self.below(of) == 0
    }

    /// One of several.
    pub(crate) fn pick<'a, T>(&mut self, of: &'a [T]) -> &'a T {
        &of[self.below(of.len())]
    }
}
