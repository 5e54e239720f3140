//! A draw by lot that can be done again: who holds the same seed draws the same hives.

/// Draws `count` of the places 1 to `hives`, in rising order: the order of the walk. Every set of so many is as likely
/// as any other, as far as the seed is drawn at random (selection sampling: Knuth, The Art of Computer Programming 2,
/// 3.4.2 S).
pub fn draw(hives: u32, count: u32, seed: &str) -> Vec<u32> {
    let mut state = start(seed);
    let mut drawn = Vec::new();
    let mut wanted = count.min(hives);
    for place in 1..=hives {
        // A number below those still to come, each as likely but for one in four thousand million.
        let left = u64::from(hives - place + 1);
        if ((next(&mut state) >> 32) * left) >> 32 < u64::from(wanted) {
            drawn.push(place);
            wanted -= 1;
        }
    }
    drawn
}

/// Tosses `count` coins, each by itself.
pub fn coins(count: usize, seed: &str) -> Vec<bool> {
    let mut state = start(seed);
    (0..count).map(|_| next(&mut state) >> 63 == 1).collect()
}

/// FNV-1a of 64 bits.
fn start(seed: &str) -> u64 {
    seed.bytes()
        .fold(0xcbf2_9ce4_8422_2325, |state, byte| (state ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3))
}

/// `SplitMix64` (Steele, Lea & Flood 2014).
fn next(state: &mut u64) -> u64 {
    *state = state.wrapping_add(0x9e37_79b9_7f4a_7c15);
    let mixed = (*state ^ (*state >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    let mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    mixed ^ (mixed >> 31)
}

#[cfg(test)]
mod tests {
    use super::{next, start};

    /// The first numbers of the authors' own program for the seed 1234567, as other implementations print them.
    #[test]
    fn numbers_are_those_of_split_mix() {
        let mut state = 1_234_567;
        let numbers = [6_457_827_717_110_365_317, 3_203_168_211_198_807_973, 9_817_491_932_198_370_423];
        assert_eq!(numbers.map(|_| next(&mut state)), numbers);
    }

    /// Test vectors of the hash's own specification.
    #[test]
    fn a_seed_begins_where_the_hash_says() {
        assert_eq!(start(""), 0xcbf2_9ce4_8422_2325);
        assert_eq!(start("a"), 0xaf63_dc4c_8601_ec8c);
        assert_eq!(start("foobar"), 0x8594_4171_f739_67e8);
    }
}
