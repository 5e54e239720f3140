"""Spill angles by integration in the frame of the ground: [length mm, depth mm, fill %, degrees, braking m/s2].

The rectangle of the trap is turned about its lower rim; what it can still hold lies below the height of that rim. Its
area is the integral over the height of the width of the turned rectangle, and the spill angle is where that area is
the area of the oil. No formula of the angle is used.
"""

import itertools
import math
import random

from scipy.integrate import quad
from scipy.optimize import brentq


def held(length, depth, angle):
    """Area below the lower rim of a trap turned by `angle`."""
    turn = lambda x, y: (x * math.cos(angle) - y * math.sin(angle), x * math.sin(angle) + y * math.cos(angle))
    # The lower rim is the origin; the floor lies `depth` below it before the turn.
    corners = [turn(x, y) for x, y in [(0, 0), (0, -depth), (length, -depth), (length, 0)]]

    def width(height):
        cuts = []
        for (x1, y1), (x2, y2) in zip(corners, corners[1:] + corners[:1]):
            if min(y1, y2) <= height <= max(y1, y2) and y1 != y2:
                cuts.append(x1 + (height - y1) / (y2 - y1) * (x2 - x1))
        return max(cuts) - min(cuts) if cuts else 0.0

    steps = sorted({y for _, y in corners if y < 0} | {0.0})
    return sum(quad(width, low, high, epsabs=1e-10)[0] for low, high in itertools.pairwise(steps))


def rows():
    draw = random.Random(19690720)
    cases = [(65, 20, fill) for fill in (30, 40, 50, 70, 90)]
    for share in [50] * 20 + [25] * 10:
        cases.append((draw.randrange(100, 2001) / 10, draw.randrange(50, 601) / 10, share))
    while len(cases) < 240:
        cases.append((draw.randrange(100, 2001) / 10, draw.randrange(50, 601) / 10, draw.randrange(1, 100)))
    for length, depth, fill in cases:
        oil = length * depth * fill / 100
        angle = brentq(lambda a: held(length, depth, a) - oil, 1e-6, math.pi / 2 - 1e-6, xtol=1e-13, rtol=1e-13)
        braking = 9.80665 * math.sin(angle) / math.cos(angle)
        yield [length, depth, fill, round(math.degrees(angle), 6), round(braking, 5)]
