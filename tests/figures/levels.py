"""Oil level and volume by numpy.interp: [profile as [level %, volume %] pairs, level %, volume %].

The pairs lie strictly between 0 and 100 % and rise strictly; the ends (0, 0) and (100, 100) are added.
"""

import random

import numpy


def rows():
    draw = random.Random(20260714)
    for _ in range(150):
        count = draw.randrange(5)
        profile = [list(pair) for pair in zip(*(sorted(draw.sample(range(1, 100), count)) for _ in "xy"))]
        level = draw.randrange(0, 1001) / 10
        depth, volume = zip([0, 0], *profile, [100, 100])
        yield [profile, level, round(float(numpy.interp(level, depth, volume)), 9)]
