//! Numbers by chance for tests, the same at every run: the linear congruential generator of Knuth's MMIX.

/// A number from `from` on and below `to` at each call.
pub(super) fn dice(seed: u64) -> impl FnMut(u32, u32) -> u32 {
    let mut state = seed;
    move |from, to| {
        state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        from + u32::try_from(state >> 33).unwrap_or(0) % (to - from)
    }
}
