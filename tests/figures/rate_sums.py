"""Mean rates of a day by scipy.integrate.quad: [stage, low, high, set A, set B, third set or 0].

The temperature runs as a sine from low to high °C. The integral is cut wherever a set has a corner, so that quad sees
smooth pieces only.
"""

import math
import random

from scipy.integrate import quad

import stage_sets


def mean_rate(stage, which, low, high):
    middle, reach = (low + high) / 2, (high - low) / 2
    corners = [floor for _, floor in stage_sets.LINES[stage]] + list(stage_sets.HEAT[stage])
    corners += [stage_sets.BRIERE[1], stage_sets.BRIERE[2]]
    cuts = sorted({0.0, math.pi} | {math.acos((c - middle) / reach) for c in corners if abs(c - middle) < reach})
    rate = lambda turn: float(stage_sets.sets(stage, middle + reach * math.cos(turn))[which])
    return sum(quad(rate, a, b, epsabs=1e-11, limit=200)[0] for a, b in zip(cuts, cuts[1:])) / math.pi


def rows():
    draw = random.Random(19690605)
    for stage in (stage_sets.EGG, stage_sets.LARVA, stage_sets.SOIL):
        for _ in range(400):
            low = draw.randrange(-100, 320) / 10
            high = low + draw.randrange(1, 250) / 10
            sums = [mean_rate(stage, which, low, high) for which in range(len(stage_sets.sets(stage, 20.0)))]
            yield [stage, low, round(high, 1)] + [round(value, 8) for value in (sums + [0.0])[:3]]
