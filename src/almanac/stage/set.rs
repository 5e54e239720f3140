//! The constants of development that could be read, as they were published or follow from what was.

use super::Stage;

/// Development in proportion to the degrees above a floor.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Line {
    /// Degree-days that the stage takes, °C·d.
    pub sum: f64,
    /// Below this nothing develops, °C.
    pub floor: f64,
}

impl Line {
    /// Share of the stage that is done in a day at `celsius` all day, without regard to heat.
    pub fn rate(self, celsius: f64) -> f64 {
        (celsius - self.floor).max(0.0) / self.sum
    }

    /// Days at `celsius` all day. `None` at or below the floor.
    pub fn days(self, celsius: f64) -> Option<f64> {
        (celsius > self.floor).then(|| self.sum / (celsius - self.floor))
    }
}

/// Brière's curve: a · T · (T − T0) · √(Tm − T).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Curve {
    /// a.
    pub scale: f64,
    /// T0, °C.
    pub floor: f64,
    /// Tm, °C.
    pub ceiling: f64,
}

impl Curve {
    /// Share of the stage that is done in a day at `celsius` all day.
    pub fn rate(self, celsius: f64) -> f64 {
        if celsius > self.floor && celsius < self.ceiling {
            self.scale * celsius * (celsius - self.floor) * (self.ceiling - celsius).sqrt()
        } else {
            0.0
        }
    }
}

impl Stage {
    /// Set A: fits the warm end (Meikle & Patt 2011, J. Econ. Entomol. 104: floors, and days at 21 and 35 °C).
    pub fn first(self) -> Line {
        match self {
            Stage::Egg => Line { sum: 19.4, floor: 13.5 },
            Stage::Larva => Line { sum: 195.0, floor: 10.0 },
            _ => Line { sum: 365.0, floor: 10.0 },
        }
    }

    /// Set B. Egg and larva: lines through the days at 21 and 35 °C of the same study. Soil: a line through 16–21 °C
    /// (Bernier et al. 2014, and 21 °C of Meikle & Patt).
    pub fn second(self) -> Line {
        match self {
            Stage::Egg => Line { sum: 20.07, floor: 13.10 },
            Stage::Larva => Line { sum: 211.6, floor: 8.56 },
            _ => Line { sum: 295.7, floor: 12.05 },
        }
    }

    /// Eggs of another laboratory, which took twice as long: a line through 2 d at 34 °C and 3 d at 26 °C (de Guzman &
    /// Frake 2007, J. Apic. Res. 46; 26 is the middle of a room of 24–28 °C). For the latest edge only.
    pub const SLOW_EGG: Line = Line { sum: 48.0, floor: 10.0 };

    /// The soil stage as a curve, fitted to 16, 18, 20 °C of Bernier et al. and 21, 35 °C of Meikle & Patt.
    pub const SOIL_CURVE: Curve = Curve { scale: 2.98952e-5, floor: 10.4291, ceiling: 41.9097 };

    /// Where the stage is quickest, and above what nothing develops, °C (a study of thermal limits in Korea, Insects).
    pub fn heat(self) -> (f64, f64) {
        match self {
            Stage::Egg => (39.1, 46.5),
            Stage::Larva => (36.5, 44.0),
            _ => (35.5, 42.5),
        }
    }

    /// What each of the stage's sets makes of `celsius` in a day: A, B, and where there is one the third.
    ///
    /// Lines stop rising where the stage is quickest and give nothing above its limit.
    pub fn sets(self, celsius: f64) -> [f64; 3] {
        let (quickest, limit) = self.heat();
        if celsius > limit {
            return [0.0; 3];
        }
        let held = celsius.min(quickest);
        let third = match self {
            Stage::Egg => Stage::SLOW_EGG.rate(held),
            Stage::Soil => Stage::SOIL_CURVE.rate(celsius),
            _ => 0.0,
        };
        [self.first().rate(held), self.second().rate(held), third]
    }
}
