//! The warmth of the soil through a year, and what the keeper's own probe says of it.

use super::climate::{Climate, DAYS, LENGTHS, MIDDLES, place, real};
use super::day::Day;
use super::quantity::Length;
use super::warmth::{Span, Swing, Warmth};
use std::f64::consts::{PI, TAU};

/// What the soil is, by how fast warmth goes through it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum SoilKind {
    /// Nobody said: 0.025 ft²/h, as public weather files take for all soils.
    #[default]
    Unknown,
    /// 1 · 10⁻⁷ m²/s, from memory, unverified; so are the four below.
    DryClay,
    /// 2 · 10⁻⁷ m²/s.
    DrySand,
    /// 4 · 10⁻⁷ m²/s.
    MoistClay,
    /// 5 · 10⁻⁷ m²/s.
    MoistLoam,
    /// 8.5 · 10⁻⁷ m²/s.
    WetSand,
}

impl SoilKind {
    /// All kinds.
    pub const ALL: [SoilKind; 6] = [
        SoilKind::Unknown,
        SoilKind::DryClay,
        SoilKind::DrySand,
        SoilKind::MoistClay,
        SoilKind::MoistLoam,
        SoilKind::WetSand,
    ];

    /// Thermal diffusivity in m²/day.
    pub fn diffusivity(self) -> f64 {
        const PER_DAY: f64 = 86_400.0;
        match self {
            // A foot is 0.3048 m.
            SoilKind::Unknown => 0.025 * 24.0 * 0.3048 * 0.3048,
            SoilKind::DryClay => 1e-7 * PER_DAY,
            SoilKind::DrySand => 2e-7 * PER_DAY,
            SoilKind::MoistClay => 4e-7 * PER_DAY,
            SoilKind::MoistLoam => 5e-7 * PER_DAY,
            SoilKind::WetSand => 8.5e-7 * PER_DAY,
        }
    }
}

/// How much sun the ground gets.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Shade {
    /// Sun all day.
    Sun,
    /// Half of the day, or nobody said.
    #[default]
    Part,
    /// Shade all day.
    Shade,
}

impl Shade {
    /// All of them.
    pub const ALL: [Shade; 3] = [Shade::Sun, Shade::Part, Shade::Shade];

    /// How much warmer the ground is than its air, in kelvin. Chosen here, no source: a probe puts it right.
    pub fn kelvin(self) -> f64 {
        match self {
            Shade::Sun => 1.0,
            Shade::Part => 0.0,
            Shade::Shade => -2.0,
        }
    }
}

/// A reading of the keeper's own thermometer in the ground.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Probe {
    /// When.
    pub day: Day,
    /// How deep.
    pub depth: Length,
    /// What it showed.
    pub warmth: Warmth,
}

/// How far the soil may be off without a reading, one standard deviation in kelvin. Chosen here, no source.
pub const UNPROBED: f64 = 2.0;
/// How far one reading may be off the mean of its day and ground, likewise. Chosen here, no source.
pub const READING: f64 = 1.5;
/// However many readings: no closer than this. Chosen here, no source.
pub const CLOSEST: f64 = 0.5;
/// Readings older than this many days do not count: trees grow and hives move. Chosen here, no source.
pub const READING_LASTS: i32 = 400;

/// The yearly wave of the ground of a yard: Kusuda & Achenbach 1965, with the first harmonic of the monthly means of
/// the air in place of a measured surface.
///
/// The ground has no day and night here: at 5–10 cm they leave about half of the air's swing, which changes the soil
/// stage by less than its span.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Soil {
    /// Mean of the year, °C.
    mean: f64,
    /// Cosine and sine of the year's wave at the surface, in kelvin, counted from 1 January.
    wave: (f64, f64),
    diffusivity: f64,
    /// What readings add, in kelvin.
    offset: f64,
    /// How sure that is: one standard deviation in kelvin, and the span of every temperature.
    give: f64,
    readings: usize,
}

impl Soil {
    /// Of the air of `climate`, ground of this kind under this shade.
    pub fn of(climate: &Climate, kind: SoilKind, shade: Shade) -> Soil {
        // A month's mean of a wave of a year is lower than the wave in its middle by sin(x)/x, x = π/12.
        const FLATTENED: f64 = 0.988_615_929_465_369;
        let mut mean = 0.0;
        let mut wave = (0.0, 0.0);
        for (warmth, (length, middle)) in climate.means().iter().zip(LENGTHS.iter().zip(&MIDDLES)) {
            let (weight, turn) = (warmth.celsius() * length / real(DAYS), middle / real(DAYS));
            mean += weight;
            wave.0 += weight * cosine(turn) * 2.0 / FLATTENED;
            wave.1 += weight * cosine(turn - 0.25) * 2.0 / FLATTENED;
        }
        Soil {
            mean: mean + shade.kelvin(),
            wave,
            diffusivity: kind.diffusivity(),
            offset: 0.0,
            give: UNPROBED,
            readings: 0,
        }
    }

    /// A wave that is known: `mean` °C, `amplitude` in kelvin, coldest at the surface `coldest` days after the year began.
    pub fn known(mean: f64, amplitude: f64, coldest: f64, kind: SoilKind) -> Soil {
        let turn = coldest / real(DAYS);
        let wave = (-amplitude * cosine(turn), -amplitude * cosine(turn - 0.25));
        Soil { mean, wave, diffusivity: kind.diffusivity(), offset: 0.0, give: UNPROBED, readings: 0 }
    }

    /// Corrected by `probes`, as far as they count on `today`: the offset is the mean of what is known of it after the
    /// readings, if before them it was 0 give or take [`UNPROBED`] and each may be off by [`READING`], both normal.
    #[must_use]
    pub fn probed(&self, probes: &[Probe], today: Day) -> Soil {
        let plain = Soil { offset: 0.0, ..*self };
        let mut precision = 1.0 / (UNPROBED * UNPROBED);
        let mut pull = 0.0;
        let mut readings = 0;
        for probe in probes {
            if (0..=READING_LASTS).contains(&today.days_since(probe.day)) {
                let here = plain.at_time(real(place(probe.day)) + 0.5, metres(probe.depth));
                precision += 1.0 / (READING * READING);
                pull += (probe.warmth.celsius() - here) / (READING * READING);
                readings += 1;
            }
        }
        Soil { offset: pull / precision, give: (1.0 / precision).sqrt().max(CLOSEST), readings, ..*self }
    }

    /// Corrected as `other` is.
    #[must_use]
    pub fn with_offset_of(&self, other: &Soil) -> Soil {
        Soil { offset: other.offset, give: other.give, readings: other.readings, ..*self }
    }

    /// What readings add, in kelvin.
    pub fn offset(&self) -> f64 {
        self.offset
    }

    /// How far the temperature may be off, in kelvin: one standard deviation of the offset.
    pub fn give(&self) -> f64 {
        self.give
    }

    /// Readings that counted.
    pub fn readings(&self) -> usize {
        self.readings
    }

    /// Mean of the year.
    pub fn mean(&self) -> Warmth {
        Warmth::held(self.mean + self.offset)
    }

    /// Half of the way from the coldest to the warmest day at the surface, in kelvin.
    pub fn amplitude(&self) -> f64 {
        (self.wave.0 * self.wave.0 + self.wave.1 * self.wave.1).sqrt()
    }

    /// At `place` of the year (0 is 1 January), `depth` below the surface.
    pub fn at(&self, place: usize, depth: Length) -> Warmth {
        Warmth::held(self.at_time(real(place) + 0.5, metres(depth)) + self.offset)
    }

    /// Where larvae lie: the middle of what it is at 5 and at 10 cm.
    pub fn bed(&self, place: usize) -> Warmth {
        let time = real(place) + 0.5;
        Warmth::held(f64::midpoint(self.at_time(time, 0.05), self.at_time(time, 0.1)) + self.offset)
    }

    /// [`Soil::bed`], give or take what is not known of it.
    pub fn span(&self, place: usize) -> Span {
        Span::around(Swing::flat(self.bed(place)), self.give)
    }

    /// °C at `days` after the year began and `metres` below the surface, before any reading.
    pub fn at_time(&self, days: f64, metres: f64) -> f64 {
        let damping = metres * (PI / (real(DAYS) * self.diffusivity)).sqrt();
        let turn = days / real(DAYS) - damping / TAU;
        self.mean + decay(damping) * (self.wave.0 * cosine(turn) + self.wave.1 * cosine(turn - 0.25))
    }
}

fn metres(depth: Length) -> f64 {
    depth.millimetres() / 1000.0
}

/// The cosine of `turns` whole turns, to 10⁻⁹. That of the standard library costs four kilobytes of download.
pub fn cosine(turns: f64) -> f64 {
    // Folded to a sine between −π/2 and π/2, whose series ends with the 13th power.
    let fold = (0.25 - (turns - (turns + 0.5).floor()).abs()) * TAU;
    let square = fold * fold;
    let mut series = 1.0;
    for next in [13.0, 11.0, 9.0, 7.0, 5.0, 3.0] {
        series = 1.0 - series * square / (next * (next - 1.0));
    }
    fold * series
}

/// e to the power of −`x` for 0 ≤ `x`: a short series for the 256th part, squared eight times.
pub fn decay(x: f64) -> f64 {
    let part = x / 256.0;
    let mut power = 1.0 - part * (1.0 - part / 2.0 * (1.0 - part / 3.0 * (1.0 - part / 4.0)));
    for _ in 0..8 {
        power *= power;
    }
    power
}
