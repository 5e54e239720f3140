//! English: the Beetle. From a find to dates.

/// Chooses what was found.
pub const SEEN: &str = "What you found";
/// When.
pub const ON: &str = "Found on";
/// Chooses whose temperatures count.
pub const WHERE: &str = "Temperatures";
/// Those in the fields.
pub const TYPED: &str = "as typed here";
/// Field.
pub const SOIL_LOW: &str = "Ground, 5–10 cm deep: coolest";
/// Field.
pub const SOIL_HIGH: &str = "Ground: warmest";
/// Field.
pub const HIVE_LOW: &str = "Among the combs: coolest";
/// Field.
pub const HIVE_HIGH: &str = "Among the combs: warmest";
/// Under the field for the combs.
pub const HIVE_HINT: &str = "A brood nest full of bees is 34–35 °C.";
/// The warmest lies below the coolest.
pub const UPSIDE_DOWN: &str = "This is below the coolest.";
/// Chooses how many bees keep the combs warm.
pub const BEES: &str = "Bees on the combs";
/// The choices.
pub const BEES_ARE: [&str; 3] = ["full of bees", "half covered", "no bees, or supers pulled"];
/// Chooses how the ground is.
pub const GROUND: &str = "The ground";
/// The choices, without the records.
pub const GROUND_IS: [&str; 3] = ["moist", "dry", "dry until rain on"];
/// The first choice, where a yard's records say how its ground is.
pub const AS_WRITTEN: &str = "as written down";
/// The day of the rain.
pub const RAIN: &str = "Rain on";
/// Heading over the answer.
pub const DATES: &str = "What comes of it";
/// While a field cannot be read.
pub const WAITS: &str = "The dates stand here once every field above can be read.";
