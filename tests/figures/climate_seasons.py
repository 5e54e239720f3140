"""From twelve monthly means to seasons and dates in numpy, by arrays over days, edges and sightings.

[place, "season", kelvin warmer, kelvin of the shade, generations at the quick, the likely and the slow edge], and [place,
"dates", kind of sighting, day of the year, days on which adults come at the three edges]; null is more than two years.
The year has 365 days. The hive is a strong one; tests/bench/march.py times the same functions.
"""

import json
import pathlib

import numpy as np

import stage_sets

HERE = pathlib.Path(__file__).parent
ROWS = [json.loads(line.rstrip(",\n")) for line in open(HERE / "weather_years.json") if '"months"' in line]
PLACES = {row[0]: (np.array(row[2]), np.array(row[3])) for row in ROWS}
LENGTHS = np.array([31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31])
MIDDLES = np.cumsum(LENGTHS) - LENGTHS / 2
TURNS = 2 * np.pi * (np.arange(365) + 0.5) / 365
# Days of wandering and before laying, and what was chosen of each sighting, at the three edges.
WANDER, LAY = np.array([0.0, 1.0, 2.0]), np.array([7.0, 7.0, 14.0])


def rates(stage, cool, likely, warm):
    """Three rates of each day: arrays of temperatures in, an array (3, days) out."""
    ends = [np.array(stage_sets.sets(stage, t)) for t in (cool, likely, warm)]
    quick, middle, slow = stage_sets.edges(stage, ends[1], likely)
    fast = ends if stage == stage_sets.SOIL else [end[:2] for end in ends]
    return np.array([np.maximum(quick, np.max(fast, axis=(0, 1))), middle, np.minimum(slow, np.min(ends, axis=(0, 1)))])


def yard(highs, lows, shade=0.0):
    """Rates of the soil stage for each day of the year."""
    means = (highs + lows) / 2
    weights = LENGTHS / 365
    wave = 2 * np.sum(weights * means * np.exp(-2j * np.pi * MIDDLES / 365)) / 0.988615929465369
    soil = np.zeros(365)
    for depth in (0.05, 0.10):
        damping = depth * np.sqrt(np.pi / (365 * 0.0557418))
        soil += 0.5 * np.real(wave * np.exp(1j * TURNS - (1 + 1j) * damping))
    soil += np.sum(weights * means) + shade
    return soil, rates(stage_sets.SOIL, soil - 2, soil, soil + 2)


NEST = [rates(stage, *(np.array([t]) for t in (34.0, 34.5, 35.0)))[:, 0] for stage in (stage_sets.EGG, stage_sets.LARVA)]


def march(table, start, done):
    """Ends of soil stages that begin at `start` (3, n) with `done` behind them, a day a step for all of them."""
    time_, sums, ends = start.copy(), done.copy(), np.where(done >= 1, start, np.nan)
    edge = np.arange(3)[:, None]
    for _ in range(732):
        open_ = np.isnan(ends)
        if not open_.any():
            break
        day = np.floor(time_ + 1e-9)
        rate = table[edge, day.astype(int) % 365]
        left = day + 1 - time_
        over = open_ & (sums + rate * left >= 1 - 1e-12)
        ends[over] = (time_ + (1 - sums) / np.where(rate > 0, rate, 1))[over]
        sums += rate * left
        time_ = day + 1
    return ends


def season(highs, lows, shade=0.0):
    soil, table = yard(highs, lows, shade)
    begin = int(np.argmin(soil))
    hive = LAY + 1 / NEST[0] + 1 / NEST[1] + WANDER
    count = [0, 0, 0]
    for edge in range(3):
        goes = table[edge][(begin + np.arange(365)) % 365] > 0
        if not goes.any():
            continue
        at = float(begin + np.argmax(goes))
        cumulative = np.concatenate([[0.0], np.cumsum(np.tile(table[edge], 4))])
        while True:
            day = int(at)
            target = cumulative[day] + (at - day) * (cumulative[day + 1] - cumulative[day]) + 1
            over = int(np.searchsorted(cumulative, target))
            if over >= len(cumulative):
                break
            out = over - 1 + (target - cumulative[over - 1]) / (cumulative[over] - cumulative[over - 1])
            if out >= begin + 365:
                break
            count[edge] += 1
            at = out + hive[edge]
    return count


def dates(table, kind, day):
    egg, larva = (1 / rate[:, None] for rate in NEST)
    wander = WANDER[:, None]
    left = np.select(
        [kind == 0, kind == 1, kind == 2, kind == 3],
        [
            day + np.array([[0.0], [3.0], [7.0]]) + egg + larva + wander,
            np.maximum(day - np.array([[4.0], [2.5], [1.0]]) + larva, day) + wander,
            day + wander,
            day + np.array([[-3.0], [0.0], [2.0]]),
        ],
        np.broadcast_to(day, (3, len(day))),
    )
    done = np.where(kind == 4, np.array([[1.0], [0.5], [0.0]]), 0.0)
    adults = march(table, left, done)
    return left, adults, adults + LAY[:, None]


def rows():
    for place, (highs, lows) in PLACES.items():
        for warmer in range(-3, 4):
            for shade in (1.0, 0.0, -2.0):
                yield [place, "season", warmer, shade, season(highs + warmer, lows + warmer, shade)]
        kind, day = (grid.ravel() for grid in np.meshgrid(np.arange(5), np.arange(0.0, 365.0, 7.0)))
        _, adults, _ = dates(yard(highs, lows)[1], kind, day)
        for number, (which, start) in enumerate(zip(kind, day)):
            ends = [None if np.isnan(end) else round(float(end), 4) for end in adults[:, number]]
            yield [place, "dates", int(which), int(start), ends]
