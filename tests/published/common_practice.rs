//! Values that are common practice, or judgement, with no source. They stand here so that a change of one is a decision
//! and not a slip.

use beetle_almanac::almanac::climate::{Climate, KNOWN};
use beetle_almanac::almanac::fit::Place;
use beetle_almanac::almanac::generations::season;
use beetle_almanac::almanac::oil::USUAL_RESERVE;
use beetle_almanac::almanac::quantity::Share;
use beetle_almanac::almanac::refill::working_floor;
use beetle_almanac::almanac::soil::{Shade, Soil, SoilKind};
use beetle_almanac::almanac::spill::LEAST_DEPTH_MM;
use beetle_almanac::almanac::stack::{BoxDepth, Corner, HiveSize, Spot, stack_spots};
use beetle_almanac::almanac::stage::{Edge, Stage, Strength, Walk, Weather, days};
use beetle_almanac::almanac::trap::TrapKind;

use std::path::Path;

use super::{celsius, close, day, mm, percent};

/// Common practice, no source: two traps a box, in a nucleus one.
#[test]
fn traps_a_box() {
    assert_eq!((HiveSize::Full.usual_traps(), HiveSize::Nuc.usual_traps()), (2, 1));
    assert_eq!((HiveSize::Full.usual_frames(), HiveSize::Nuc.usual_frames()), (10, 5));
}

/// Common practice, no source: opposite corners, the diagonal changing from box to box.
#[test]
fn corners() {
    use Corner::{BackLeft, BackRight, FrontLeft, FrontRight};
    let corners = |pair: [Corner; 2]| pair.map(Spot::Corner).to_vec();
    let (odd, even) = (corners([FrontLeft, BackRight]), corners([FrontRight, BackLeft]));
    assert_eq!(stack_spots(&[2, 2, 2], HiveSize::Full), [odd.clone(), even, odd]);
}

/// Common practice, no source: nominal woodenware in inches.
#[test]
fn woodenware() {
    for (depth, boxed, side) in
        [(BoxDepth::Deep, 9.625, 9.125), (BoxDepth::Medium, 6.625, 6.25), (BoxDepth::Shallow, 5.6875, 5.375)]
    {
        close(depth.depth().millimetres(), boxed * 25.4, 1e-9);
        close(depth.frame_side().millimetres(), side * 25.4, 1e-9);
        let place = Place::usual(depth);
        assert_eq!(place.frame_side, depth.frame_side());
        close(place.gap.millimetres(), (1.375 - 1.0625) * 25.4, 1e-9);
        close(place.inside.millimetres(), 18.375 * 25.4, 1e-9);
        // A top bar of 19 in is longer than the box inside, because its lugs lie on rebates of 3/8 in: a trap between
        // frames hangs lower, from wall to wall, and what is as long as a top bar does not go in.
        let top_bar = 19.0 * 25.4;
        assert!(place.inside.millimetres() < top_bar);
        assert!(top_bar < place.inside.millimetres() + 2.0 * 0.375 * 25.4);
        close(place.clearance.millimetres(), 5.0, 1e-9);
    }
}

/// Judgement: a quarter in reserve.
#[test]
fn reserve() {
    assert_eq!(USUAL_RESERVE, percent(25.0));
}

/// Judgement: 6 mm of oil cover a beetle (bodies of 5.3–6.3 mm by about 3.5 mm are published).
#[test]
fn working_depth() {
    close(LEAST_DEPTH_MM, 6.0, 0.0);
    assert_eq!(working_floor(mm(20.0)), Some(percent(30.0)));
}

/// Judgement: an interval of 1 to 120 days; common practice, no source: half full.
#[test]
fn service() {
    assert_eq!(TrapKind::MAX_DAYS, 1..=120);
    assert_eq!(Share::HALF, percent(50.0));
}

/// Common practice, no source: 4–5 generations a season in the warm, humid south-east of the United States. Greensboro is
/// its cool end; the second climate is typed as a keeper on the Gulf coast might, in round figures, from no station.
#[test]
fn a_warm_humid_south_east_has_room_for_four_to_five_generations() {
    let highs = [16.0, 18.0, 21.5, 25.0, 29.0, 31.5, 32.5, 32.5, 30.5, 26.0, 21.0, 17.0];
    let lows = [5.0, 7.0, 10.0, 14.0, 18.5, 22.0, 23.0, 23.0, 20.5, 14.5, 9.0, 6.0];
    let gulf = Climate::new(highs.map(celsius), lows.map(celsius)).expect("a climate");
    for (name, climate) in [("Greensboro", KNOWN[0].climate()), ("Gulf coast", gulf)] {
        for shade in Shade::ALL {
            let weather = Weather::of(&climate, &Soil::of(&climate, SoilKind::Unknown, shade));
            let walk = Walk { weather: &weather, strength: Strength::Strong, dry: &[] };
            let [most, likely, fewest] = season(&walk, day("2026-07-01")).count;
            println!("{name}, {shade:?}: {fewest}–{most} generations, likely {likely}");
            assert!(fewest <= 4 && 4 <= most, "{name} {shade:?}");
            assert!(5 <= most || (name, shade) == ("Greensboro", Shade::Shade), "{name} {shade:?}");
        }
    }
}

/// Common practice, no source: eggs 2–3 days, soil stage 3–4 weeks, laying about a week after the beetles come out.
#[test]
fn rules_of_thumb_of_the_stages_lie_in_their_spans() {
    let span =
        |stage, warmth: f64| Edge::ALL.map(|edge| days(stage, celsius(warmth), edge).expect("it develops"));
    // In the nest the latest edge comes to two days; a cooler comb has the three.
    let [_, _, nest] = span(Stage::Egg, 34.5);
    let [first, _, comb] = span(Stage::Egg, 26.0);
    assert!(nest > 1.9 && first < 2.0 && comb >= 3.0 - 1e-9, "{nest} {first} {comb}");
    let [earliest, _, latest] = span(Stage::Soil, 24.0);
    assert!(earliest <= 21.0 && 28.0 <= latest, "{earliest}–{latest}");
    assert_eq!(Stage::BeforeLaying.fixed_days(), Some([7.0, 7.0, 14.0]));
}

/// Judgement, no source: how far soil and air may be off, what a thermometer's reading is worth, the colony nobody noted.
#[test]
fn choices_of_the_stage_model() {
    use beetle_almanac::almanac::soil::{CLOSEST, READING, READING_LASTS, UNPROBED};
    use beetle_almanac::almanac::stage::{AIR, COMB, NARROW, NEST, WIDE};
    assert_eq!((UNPROBED, READING, CLOSEST, READING_LASTS), (2.0, 1.5, 0.5, 400));
    assert_eq!((AIR, COMB, NEST), (2.0, 0.5, (34.5, 0.5)));
    assert_eq!((WIDE, NARROW), ((0.35, 20.0), (0.20, 24.0)));
    for (shade, kelvin) in Shade::ALL.iter().zip([1.0, 0.0, -2.0]) {
        close(shade.kelvin(), kelvin, 1e-12);
    }
    assert_eq!(Stage::Wandering.fixed_days(), Some([0.0, 1.0, 2.0]));
}

/// What the page says of such figures in words, beside the code that goes by them.
#[test]
fn words_say_the_figures_that_have_no_source() {
    use beetle_almanac::almanac::cover::{ENOUGH_TWENTIETHS, LITTLE_TWENTIETHS};
    use beetle_almanac::almanac::{bait, freezer};
    use beetle_almanac::app::load::sum::{SPARE_LEAST, SPARE_PERCENT};
    use beetle_almanac::app::wording::{
        en_beetle, en_beetle_honey, en_decide, en_load, en_sums, en_yard_decides,
    };
    use beetle_almanac::book::oil_used::{TRIPS_LEAST, TRIPS_MOST};
    let says = |text: &str, words: &str| {
        let text = text.replace('\u{a0}', " ");
        assert!(text.contains(words), "{words}: {text}");
    };
    says(
        en_load::SPARE_WHY,
        &format!("{SPARE_PERCENT} in 100 of the traps that are due, at least {SPARE_LEAST}"),
    );
    assert_eq!((TRIPS_LEAST, TRIPS_MOST, USUAL_RESERVE), (3, 12, Share::QUARTER));
    for words in ["twelve at most", "up to the next 5 %", "From three trips on", "a quarter is our judgement"]
    {
        says(en_load::LEARNED_WHY, words);
    }
    assert_eq!((ENOUGH_TWENTIETHS, LITTLE_TWENTIETHS), (18, 14));
    says(en_decide::cover::WHY, "nine tenths is enough and less than seven tenths too little");
    says(en_yard_decides::open::WEAK_WHY, "less than seven tenths");
    says(en_yard_decides::open::WEAK_WHY, "fewer than 5 frames");
    says(en_decide::freezer::WHY, &format!("The {} hours are that twice over", 2 * freezer::KILLS_HOURS));
    says(en_beetle_honey::BAIT_WHY, &format!("After {} days", bait::USUAL_DAYS));
    says(en_beetle_honey::BAIT_WHY, "two days before the earliest larvae");
    says(en_beetle::season::SHADE_HINT, "1 °C warmer than the air in full sun, 2 °C cooler in shade");
    let place = Place::usual(BoxDepth::Deep);
    for (side, part) in [(place.clearance, "by %s mm"), (place.inside, "%s mm (18 3/8 in) long inside")] {
        let tenths = (side.millimetres() * 10.0).round() / 10.0;
        says(en_sums::fit::WHY, &part.replace("%s", &tenths.to_string()));
    }
    // For how long given comb may hold larvae, in the code's own words.
    let latest = |stage| days(stage, celsius(34.0), Edge::Latest).expect("it develops");
    close(latest(Stage::Egg) + latest(Stage::Larva), 12.0, 0.2);
}

/// The table of figures without a source in the developers' pages: file and code of each line.
fn table() -> Vec<(&'static str, Vec<&'static str>)> {
    let (_, after) =
        include_str!("../../DEVELOPERS.md").split_once("## Figures without a source").expect("it is there");
    let (table, _) = after.split_once("\n## ").expect("an end");
    let mut rows = Vec::new();
    for line in table.lines().filter(|line| line.starts_with("| ")).skip(1) {
        let mut code = line.split('`').skip(1).step_by(2);
        rows.push((code.next().expect("a file"), code.collect()));
    }
    rows
}

fn source(file: &str) -> String {
    std::fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join(file))
        .expect("a file that can be read")
}

#[test]
fn the_table_of_figures_without_a_source_says_what_the_code_does() {
    let table = table();
    assert!(table.len() > 40, "{}", table.len());
    for (file, lines) in table {
        let code = source(file);
        assert!(!lines.is_empty(), "{file}");
        for line in lines {
            assert!(code.contains(line), "{file} has no {line}");
        }
    }
}

/// Every constant under a comment that owns to no source; drawings aside, which show the keeper no figure.
#[test]
fn no_constant_without_a_source_is_missing_from_the_table() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let (table, mut folders, mut found) = (table(), vec![root.join("src")], 0);
    while let Some(folder) = folders.pop() {
        for entry in std::fs::read_dir(folder).expect("a folder") {
            let path = entry.expect("an entry").path();
            if path.is_dir() {
                folders.extend((!path.ends_with("drawing")).then_some(path));
                continue;
            }
            if path.extension().is_none_or(|ending| ending != "rs") {
                continue;
            }
            let file = path.strip_prefix(root).expect("below it").to_str().expect("a name").to_owned();
            let mut comment = String::new();
            for line in source(&file).lines().map(str::trim) {
                if let Some(text) = line.strip_prefix("///") {
                    comment.push_str(text);
                    continue;
                }
                if line.starts_with("#[") {
                    continue;
                }
                let owns = ["no source", "udgement", "hosen here"].iter().any(|word| comment.contains(word));
                comment.clear();
                let Some((_, code)) =
                    line.split_once("const ").filter(|(_, code)| owns && !code.contains("&str"))
                else {
                    continue;
                };
                found += 1;
                let listed = table
                    .iter()
                    .any(|(of, lines)| *of == file && lines.contains(&&*["const ", code].concat()));
                assert!(listed, "{file}: const {code}");
            }
        }
    }
    assert!(found > 40, "{found}");
}
