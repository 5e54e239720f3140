"""Marches hour by hour through public-domain weather years, in numpy: the beetle's stages without any sine.

Of each place first [place, "months", mean highs, mean lows, the year's degree-days above 10, 12 and 13.5 °C as the sum of
the hours]; then [place, "day", low, high of the air, low, high of the soil] for each day; then the marches, [place,
"air" or "soil", first day, of the quick, the likely and the slow edge the day numbers at which its stages end]. "air" is
egg, larva and soil stage at the temperature of the air, with all its roughness; "soil" the soil stage in soil. A day number
above 365 lies in the same year run through once more; null is more than two years.

The soil is that of the air by the heat equation: each of the year's waves damped and late at its depth (α 0.0557418 m²/day),
the mean of what it is at 5 and 10 cm, hour by hour.
Weather years: NREL, TMY3 723170 (Greensboro, North Carolina) and 703165 (Sand Point, Alaska), TMY2 12839 (Miami,
Florida), as the library pvlib carries them.
"""

import pathlib

import numpy as np
import pvlib

import stage_sets

DATA = pathlib.Path(pvlib.__file__).parent / "data"
STARTS = range(5, 365, 5)


def tmy3(name):
    frame, _ = pvlib.iotools.read_tmy3(DATA / name, map_variables=True)
    return frame["temp_air"].to_numpy()


def tmy2(name):
    frame, _ = pvlib.iotools.read_tmy2(DATA / name)
    return frame["DryBulb"].to_numpy() / 10


PLACES = {
    "Greensboro, North Carolina": lambda: tmy3("723170TYA.CSV"),
    "Miami, Florida": lambda: tmy2("12839.tm2"),
    "Sand Point, Alaska": lambda: tmy3("703165TY.csv"),
}
MONTHS = np.repeat(np.arange(12), [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31])


def hourly_rates(stage, hours):
    """Each edge's rate in each hour: what the day's share is, spread over its hours as the hours' own rates fall."""
    by_hour = stage_sets.sets(stage, hours)
    days = np.array([rate.reshape(365, 24).mean(axis=1) for rate in by_hour])
    mean = hours.reshape(365, 24)
    edges = stage_sets.edges(stage, days, (mean.min(axis=1) + mean.max(axis=1)) / 2)
    shape = np.mean(by_hour, axis=0).reshape(365, 24)
    whole = shape.mean(axis=1, keepdims=True)
    weight = np.divide(shape, whole, out=np.ones_like(shape), where=whole > 0)
    return [(edge[:, None] * weight).ravel() for edge in edges]


def end_of(rates, start):
    """Day number at which the sum of hourly `rates` from day number `start` on is whole."""
    twice = np.tile(rates, 4) / 24
    begin = start * 24
    hour = int(begin)
    done = np.cumsum(twice[hour:]) - twice[hour] * (begin - hour)
    over = np.searchsorted(done, 1.0)
    if over > 731 * 24 or over >= len(done):
        return None
    before = done[over - 1] if over else 0.0
    return (hour + over + (1.0 - before) / (done[over] - before)) / 24 if over else start + 1.0 / rates[hour]


def soil_of(air):
    waves = np.fft.rfft(air)
    turns = 2 * np.pi * np.arange(len(waves)) / 365.0
    root = np.sqrt(turns / (2 * 0.0557418))
    depths = [np.fft.irfft(waves * np.exp(-(1 + 1j) * depth * root), n=len(air)) for depth in (0.05, 0.10)]
    return np.mean(depths, axis=0)


def courses(stages, start):
    """Of each edge the ends of the stages that follow each other from day number `start` on."""
    for edge in range(3):
        time, course = float(start), []
        for rates in stages:
            time = None if time is None else end_of(rates[edge], time)
            course.append(None if time is None else round(float(time), 3))
        yield course


def rows():
    for place, read in PLACES.items():
        air = read()
        assert air.shape == (8760,)
        soil = soil_of(air)
        low, high = (ends(air.reshape(365, 24), axis=1) for ends in (np.min, np.max))
        months = [[round(float(ends[MONTHS == month].mean()), 2) for month in range(12)] for ends in (high, low)]
        sums = [round(float(np.maximum(air - base, 0.0).sum() / 24), 1) for base in (10.0, 12.0, 13.5)]
        yield [place, "months", *months, sums]
        bed = soil.reshape(365, 24)
        for day in zip(low, high, bed.min(axis=1), bed.max(axis=1)):
            yield [place, "day", *(round(float(end), 2) for end in day)]
        for what, stages in {
            "air": [hourly_rates(stage, air) for stage in (stage_sets.EGG, stage_sets.LARVA, stage_sets.SOIL)],
            "soil": [hourly_rates(stage_sets.SOIL, soil)],
        }.items():
            for start in STARTS:
                yield [place, what, start, list(courses(stages, start))]
