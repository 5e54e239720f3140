//! English: the Beetle. The day-by-day table and what stands around it.

/// Chooses the edge.
pub const WHICH: &str = "Which of the three dates";
/// Headings of the table: day, stage, temperature, share of the stage that day, share so far.
pub const HEADINGS: [&str; 5] = ["Day", "Stage", "°C", "Share", "Sum"];
/// Nothing to show.
pub const NONE: &str = "There is no date to work out here.";
/// What the table does.
pub const TABLE: &str = "Each day does its share of a stage; when the shares come to 1, the next stage begins. A day on which a stage begins or ends counts as far as it belongs to it.";
/// How a share follows from the temperature.
pub const SHARES: [&str; 4] = [
    "Share of a day at an even temperature T: (T − floor) ÷ sum. Set A: egg 19.4 above 13.5 °C, larva 195 above 10, ground 365 above 10. Set B: egg 20.07 above 13.10, larva 211.6 above 8.56, ground 295.7 above 12.05. For the ground a curve too: 0.0000298952 × T × (T − 10.4291) × √(41.9097 − T). Where a day swings between a low and a high, the mean of the shares along a sine.",
    "Likely: the middle of the sets (ground: the middle one of three; egg and larva: the mean of both) at the likely temperature.",
    "Earliest: the quickest set at the warm end of the temperatures, or the likely share ÷ (1 − b) if that is more. Latest: the slowest set at the cool end, or the likely share ÷ (1 + b) if that is less; for eggs also 48 above 10 °C, from a laboratory where they took twice as long.",
    "b is 0.35 up to 20 °C and falls straight to 0.20 at 24 °C: by so much the sets miss whole lives that were measured elsewhere. It describes those misses and is no rate of error.",
];
/// What does not go by temperature.
pub const FIXED: &str = "Not by temperature: leaving 0, 1 or 2 days; young, until they lay, 7, 7 or 14 days (published pages say one week or two).";
/// Where the figures are from.
pub const SOURCES: &str = "Sources: Meikle & Patt 2011 (stages at 21 and 35 °C, floors); Bernier et al. 2014 (ground at 16, 18, 20 °C); de Guzman & Frake 2007 (eggs at 26 and 34 °C); a study of thermal limits in Korea (optimum and upper limit); Ellis et al. 2004 (dry ground); Kusuda & Achenbach 1965 (the year’s wave in the ground). The lines and the curve were fitted for this page to the published days.";
