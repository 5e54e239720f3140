"""Median loss of oil by statistics.median: [[[days, from %, to %], ...], median %/day or null, intervals used].

Usable are intervals of at least one day in which the level did not rise; the last five of them count.
"""

import fractions
import random
import statistics


def rows():
    draw = random.Random(20260501)
    for _ in range(250):
        intervals = [
            [draw.choice([0, 1, 3, 7, 7, 9, 14, 14, 21, 30]), draw.randrange(201) / 2, draw.randrange(201) / 2]
            for _ in range(draw.randrange(13))
        ]
        for interval in intervals:
            # Levels mostly fall.
            if draw.random() < 0.75:
                interval[1:] = sorted(interval[1:], reverse=True)
        rates = [
            (fractions.Fraction(before) - fractions.Fraction(after)) / days
            for days, before, after in intervals
            if days > 0 and after <= before
        ][-5:]
        median = round(float(statistics.median(rates)), 12) if rates else None
        yield [intervals, median, len(rates)]
