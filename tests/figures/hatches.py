"""Eggs in a room whose temperature is a sine over the day: [coolest C, warmest C, share of an egg's development in a day].

The rate of the egg at a constant temperature, integrated over the sine by scipy.
"""

import math
import random

from scipy.integrate import quad


def rate(celsius):
    """19.4 degree-days above 13.5 C, no faster than at 39.1, nothing above 46.5."""
    if celsius <= 13.5 or celsius > 46.5:
        return 0.0
    return (min(celsius, 39.1) - 13.5) / 19.4


def mean(low, high):
    middle, half = (low + high) / 2, (high - low) / 2
    # Over half a turn the sine runs through every value once; the corners of the rate are told to the integrator.
    corners = [math.acos((at - middle) / half) for at in (13.5, 39.1, 46.5) if half and abs(at - middle) < half]
    value, _ = quad(lambda t: rate(middle + half * math.cos(t)), 0, math.pi, points=sorted(corners) or None, limit=200)
    return value / math.pi


def rows():
    draw = random.Random(19550419)
    cases = [(20, 20), (24, 24), (28, 28), (35, 35), (13.5, 13.5), (47, 47)]
    while len(cases) < 1006:
        low, high = sorted(draw.randrange(0, 480) / 10 for _ in range(2))
        cases.append((low, high))
    for low, high in cases:
        yield [low, high, round(mean(low, high), 7)]
