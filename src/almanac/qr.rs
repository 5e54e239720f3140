//! QR symbols of the alphanumeric mode at level M, versions 1 to 20 (ISO/IEC 18004).
//!
//! Just what a camera code needs: one mode, one level, and no version larger than a narrow phone can show.

use super::base45;

/// Error correction codewords of a block and number of blocks at level M, from version 1 (ISO/IEC 18004, table 9).
const BLOCKS: [(u8, u8); 20] = [
    (10, 1),
    (16, 1),
    (26, 1),
    (18, 2),
    (24, 2),
    (16, 4),
    (18, 4),
    (22, 4),
    (22, 5),
    (26, 5),
    (30, 5),
    (22, 8),
    (22, 9),
    (24, 9),
    (24, 10),
    (28, 10),
    (28, 11),
    (26, 13),
    (26, 14),
    (26, 16),
];

const DARK: u8 = 1;
/// A module that belongs to a pattern and carries no data.
const FIXED: u8 = 2;

/// A symbol, module by module, without the white around it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Grid {
    /// Modules on each side.
    pub side: usize,
    modules: Vec<u8>,
}

/// The symbol of `text`. None for letters that the mode has not, or more of them than version 20 holds.
pub fn grid(text: &str) -> Option<Grid> {
    let letters = text.len();
    for (version, (ecc, blocks)) in (1..).zip(BLOCKS) {
        let mut grid = Grid::blank(version);
        let mut free = 0;
        for module in &grid.modules {
            free += usize::from(*module == 0);
        }
        let (ecc, blocks) = (usize::from(ecc), usize::from(blocks));
        let room = free / 8 - ecc * blocks;
        let of_count = if version < 10 { 9 } else { 11 };
        if 4 + of_count + letters / 2 * 11 + letters % 2 * 6 <= room * 8 {
            let data = data(text, of_count, room)?;
            grid.fill(&interleaved(&data, ecc, blocks));
            grid.masked();
            return Some(grid);
        }
    }
    None
}

/// The text as codewords, padded to as many as there is room for (7.4).
fn data(text: &str, of_count: usize, room: usize) -> Option<Vec<u8>> {
    let mut data = vec![0; room];
    let mut at = 0;
    let mut put = |value: usize, bits: usize| {
        for bit in (0..bits).rev() {
            // The end mark is cut off where there is no room for it.
            if let Some(byte) = data.get_mut(at / 8) {
                *byte |= u8::from(value >> bit & 1 == 1) << (7 - at % 8);
            }
            at += 1;
        }
        at
    };
    put(2, 4);
    put(text.len(), of_count);
    for pair in text.as_bytes().chunks(2) {
        let mut value = 0;
        for letter in pair {
            value = value * 45 + base45::value_of(*letter)?;
        }
        put(value, pair.len() * 5 + 1);
    }
    let end = put(0, 4).div_ceil(8);
    for (byte, pad) in data.iter_mut().skip(end).zip([0xec, 0x11].into_iter().cycle()) {
        *byte = pad;
    }
    Some(data)
}

/// Data and error correction in the order in which they are drawn (7.5, 7.6).
fn interleaved(data: &[u8], ecc: usize, blocks: usize) -> Vec<u8> {
    // The last ones are longer by one where it does not come out even.
    let (short, long) = (data.len() / blocks, data.len() % blocks);
    let divisor = divisor(ecc);
    let mut parts = Vec::new();
    let mut rest = data;
    for block in 0..blocks {
        let (part, others) = rest.split_at((short + usize::from(block >= blocks - long)).min(rest.len()));
        parts.push((part, remainder(part, &divisor)));
        rest = others;
    }
    let mut all = Vec::new();
    let mut column = |of: &[u8], at: usize| all.extend_from_slice(of.get(at..=at).unwrap_or_default());
    for at in 0..=short {
        for (part, _) in &parts {
            column(part, at);
        }
    }
    for at in 0..ecc {
        for (_, ecc) in &parts {
            column(ecc, at);
        }
    }
    all
}

/// Product in the field of 256 elements modulo x⁸ + x⁴ + x³ + x² + 1 (7.5.2).
fn product(x: u8, y: u8) -> u8 {
    let mut z = 0;
    for bit in (0..8).rev() {
        z = (z << 1) ^ ((z >> 7) * 0x1d) ^ ((y >> bit & 1) * x);
    }
    z
}

/// Coefficients of the generator polynomial of that degree, the highest left out (Annex A).
fn divisor(degree: usize) -> Vec<u8> {
    let mut all = vec![0; degree];
    if let Some(last) = all.last_mut() {
        *last = 1;
    }
    let mut root = 1;
    for _ in 0..degree {
        let mut above = 0;
        for own in all.iter_mut().rev() {
            let was = *own;
            *own = product(was, root) ^ above;
            above = was;
        }
        root = product(root, 2);
    }
    all
}

fn remainder(data: &[u8], divisor: &[u8]) -> Vec<u8> {
    let mut rest = vec![0; divisor.len()];
    for byte in data {
        let factor = byte ^ rest.first().unwrap_or(&0);
        rest.rotate_left(1);
        if let Some(last) = rest.last_mut() {
            *last = 0;
        }
        for (own, of) in rest.iter_mut().zip(divisor) {
            *own ^= product(*of, factor);
        }
    }
    rest
}

impl Grid {
    /// Whether a module is dark; outside none is.
    pub fn dark(&self, x: usize, y: usize) -> bool {
        x < self.side && self.modules.get(y * self.side + x).is_some_and(|module| module & DARK != 0)
    }

    /// The patterns of a version, and room for what says the mask.
    fn blank(version: usize) -> Grid {
        let side = version * 4 + 17;
        let mut grid = Grid { side, modules: vec![0; side * side] };
        for at in 0..side {
            grid.fix(6, at, at % 2 == 0);
            grid.fix(at, 6, at % 2 == 0);
        }
        for (x, y) in [(3, 3), (side - 4, 3), (3, side - 4)] {
            grid.rings(x, y, 4);
        }
        // Alignment patterns, as far apart as Annex E has them: the first at 6, the others counted from the far end.
        let count = version / 7 + 2;
        let step = (version * 4 + count * 2 + 1) / (count * 2 - 2) * 2;
        let place = |at: usize| if at == 0 { 6 } else { side - 7 - (count - 1 - at) * step };
        for a in 0..count {
            for b in 0..count {
                let last = count - 1;
                // Three corners hold the finders; version 1 has no alignment pattern at all.
                if version > 1 && (a, b) != (0, 0) && (a, b) != (0, last) && (a, b) != (last, 0) {
                    grid.rings(place(a), place(b), 2);
                }
            }
        }
        grid.format(0);
        if version >= 7 {
            let mut rest = version;
            for _ in 0..12 {
                rest = (rest << 1) ^ ((rest >> 11) * 0x1f25);
            }
            for at in 0..18 {
                let dark = (version << 12 | rest) >> at & 1 == 1;
                grid.fix(side - 11 + at % 3, at / 3, dark);
                grid.fix(at / 3, side - 11 + at % 3, dark);
            }
        }
        grid
    }

    /// A module of a pattern; what falls outside is left out.
    fn fix(&mut self, x: usize, y: usize, dark: bool) {
        if x < self.side
            && let Some(module) = self.modules.get_mut(y.wrapping_mul(self.side).wrapping_add(x))
        {
            *module = FIXED | u8::from(dark);
        }
    }

    /// A finder, which reaches 4 modules with the light ring around it, or an alignment pattern, which reaches 2.
    fn rings(&mut self, x: usize, y: usize, reach: usize) {
        for dy in 0..=reach * 2 {
            for dx in 0..=reach * 2 {
                let ring = dx.abs_diff(reach).max(dy.abs_diff(reach));
                let dark = if reach == 4 { ring != 2 && ring != 4 } else { ring != 1 };
                let (x, y) = (x + dx, y + dy);
                if x >= reach && y >= reach && y - reach < self.side {
                    self.fix(x - reach, y - reach, dark);
                }
            }
        }
    }

    /// Says level and mask, twice (7.9).
    fn format(&mut self, mask: usize) {
        let mut rest = mask;
        for _ in 0..10 {
            rest = (rest << 1) ^ ((rest >> 9) * 0x537);
        }
        let bits = (mask << 10 | rest) ^ 0x5412;
        // The timing patterns lie between.
        let past = |at: usize| at + usize::from(at > 5);
        let side = self.side;
        for at in 0..15 {
            let dark = bits >> at & 1 == 1;
            if at < 8 {
                self.fix(8, past(at), dark);
                self.fix(side - 1 - at, 8, dark);
            } else {
                self.fix(past(14 - at), 8, dark);
                self.fix(8, side - 15 + at, dark);
            }
        }
        self.fix(8, side - 8, true);
    }

    /// Draws the codewords in columns of two, up and down from the right (7.7.3).
    fn fill(&mut self, words: &[u8]) {
        let side = self.side;
        let mut at = 0;
        for pair in 0..side / 2 {
            // The timing pattern has a column of its own.
            let right = if pair * 2 + 7 < side { side - 1 - pair * 2 } else { side - 2 - pair * 2 };
            for step in 0..side * 2 {
                let y = if pair % 2 == 0 { side - 1 - step / 2 } else { step / 2 };
                if let Some(module) = self.modules.get_mut(y * side + right - step % 2)
                    && *module == 0
                {
                    *module = words.get(at / 8).map_or(0, |word| word >> (7 - at % 8) & 1);
                    at += 1;
                }
            }
        }
    }

    /// Puts on the mask that leaves the fewest penalty points (7.8).
    fn masked(&mut self) {
        let (mut best, mut least) = (0, usize::MAX);
        for mask in 0..8 {
            self.mask(mask);
            let penalty = self.penalty();
            if penalty < least {
                (best, least) = (mask, penalty);
            }
            self.flip(mask);
        }
        self.mask(best);
    }

    fn mask(&mut self, mask: usize) {
        self.flip(mask);
        self.format(mask);
    }

    fn flip(&mut self, mask: usize) {
        for (at, module) in self.modules.iter_mut().enumerate() {
            let (x, y) = (at % self.side, at / self.side);
            let sum = match mask {
                0 => (x + y) % 2,
                1 => y % 2,
                2 => x % 3,
                3 => (x + y) % 3,
                4 => (x / 3 + y / 2) % 2,
                5 => x * y % 6,
                6 => (x * y % 2 + x * y % 3) % 2,
                _ => (x + y + x * y % 3) % 2,
            };
            if sum == 0 && *module & FIXED == 0 {
                *module ^= DARK;
            }
        }
    }

    fn penalty(&self) -> usize {
        let side = self.side;
        let (mut penalty, mut darks) = (0, 0);
        for line in 0..side * 2 {
            let (mut last, mut run, mut seen) = (false, 0, 0);
            // With the white behind the end, and before the beginning as what was seen of it.
            for at in 0..side + 4 {
                let dark = if line < side { self.dark(at, line) } else { self.dark(line - side, at) };
                run = if dark == last { run + 1 } else { 1 };
                last = dark;
                seen = (seen << 1 | u32::from(dark)) & 0x7ff;
                penalty += match run {
                    5 if at < side => 3,
                    6.. if at < side => 1,
                    _ => 0,
                };
                // What looks like a finder, white before or behind it.
                penalty += if matches!(seen, 0x5d0 | 0x05d) { 40 } else { 0 };
                if line + 1 < side && at + 1 < side {
                    let four = [(at, line), (at + 1, line), (at, line + 1), (at + 1, line + 1)];
                    let four = four.into_iter().filter(|(x, y)| self.dark(*x, *y)).count();
                    penalty += if four % 4 == 0 { 3 } else { 0 };
                }
                darks += usize::from(dark);
            }
        }
        // Every module was counted in its row and in its column; 10 points for each 5 % away from half.
        penalty + (darks * 10).abs_diff(side * side * 10) / (side * side) * 10
    }
}
