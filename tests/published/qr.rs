//! QR symbols beside those of `qrcodegen`, module by module: another program from the same standard, ISO/IEC 18004.

use beetle_almanac::almanac::qr::grid;
use qrcodegen::{Mask, QrCode, QrCodeEcc, QrSegment, Version};

const LETTERS: &[u8; 45] = b"0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:";
/// Letters that version 20 holds at level M (table 7).
const MOST: usize = 970;

fn text(length: usize) -> String {
    (0..length).map(|at| char::from(LETTERS[(at * 7919 + at * at / 3 + length) % 45])).collect()
}

/// Row by row, a digit a module.
type Rows = Vec<String>;

fn own(text: &str) -> Rows {
    let own = grid(text).unwrap();
    let row = |y| (0..own.side).map(|x| if own.dark(x, y) { '1' } else { '0' }).collect();
    (0..own.side).map(row).collect()
}

fn other(text: &str, mask: u8) -> Rows {
    let (least, most, mask) = (Version::MIN, Version::MAX, Some(Mask::new(mask)));
    let segments = [QrSegment::make_alphanumeric(text)];
    let made =
        QrCode::encode_segments_advanced(&segments, QrCodeEcc::Medium, least, most, mask, false).unwrap();
    let row = |y| (0..made.size()).map(|x| if made.get_module(x, y) { '1' } else { '0' }).collect();
    (0..made.size()).map(row).collect()
}

/// Points of table 11, counted on the rows as texts.
fn penalty(rows: &Rows) -> usize {
    let letters: Vec<Vec<char>> = rows.iter().map(|row| row.chars().collect()).collect();
    let side = rows.len();
    let column = |x: usize| letters.iter().map(|row| row[x]).collect::<String>();
    let mut points = 0;
    for line in rows.iter().cloned().chain((0..side).map(column)) {
        let runs = line.replace("01", "0 1").replace("10", "1 0");
        points += runs.split(' ').filter(|run| run.len() >= 5).map(|run| run.len() - 2).sum::<usize>();
        let white = format!("0000{line}0000");
        let like = ["10111010000", "00001011101"]
            .map(|finder| (0..white.len()).filter(|at| white[*at..].starts_with(finder)).count());
        points += 40 * (like[0] + like[1]);
    }
    for (y, x) in (1..side).flat_map(|y| (1..side).map(move |x| (y, x))) {
        let four = [letters[y][x], letters[y - 1][x], letters[y][x - 1], letters[y - 1][x - 1]];
        points += if four.iter().all(|one| *one == four[0]) { 3 } else { 0 };
    }
    let dark = letters.iter().flatten().filter(|one| **one == '1').count();
    let away = (2 * dark).abs_diff(side * side) * 50 / (side * side);
    points + away / 5 * 10
}

#[test]
fn every_length_up_to_version_20_is_drawn_alike() {
    let mut masks = [0; 8];
    for length in (1..=MOST).step_by(11).chain([MOST]) {
        let text = text(length);
        let own = own(&text);
        let all: Vec<Rows> = (0..8).map(|mask| other(&text, mask)).collect();
        let mask = all.iter().position(|other| *other == own);
        let mask = mask.unwrap_or_else(|| panic!("{length} letters: no mask makes them alike"));
        let points: Vec<usize> = all.iter().map(penalty).collect();
        assert_eq!(points[mask], *points.iter().min().unwrap(), "{length} letters, mask {mask}: {points:?}");
        masks[mask] += 1;
    }
    assert!(masks.iter().all(|count| *count > 0), "every mask is chosen now and then: {masks:?}");
    assert_eq!(grid(&text(MOST + 1)), None);
}
