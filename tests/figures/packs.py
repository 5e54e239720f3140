"""Cheapest packs by integer programming (scipy.optimize.milp).

[need, [[pieces, price in hundredths], ...], fee or null, free from or null, total in hundredths, pieces, packs]

Three programmes a row, one after the other: least total; of those, fewest pieces; of those, fewest packs.
"""

import random

import numpy
from scipy.optimize import Bounds, LinearConstraint, milp


def solve(aim, limits, count, most):
    """The least aim . (n_1 ... n_k, z) over whole n up to `most` and z in {0, 1}."""
    answer = milp(
        aim,
        constraints=[LinearConstraint(numpy.array(a), low, high) for a, low, high in limits],
        integrality=numpy.ones(count + 1),
        bounds=Bounds(numpy.zeros(count + 1), numpy.array([most] * count + [1])),
        options={"mip_rel_gap": 0},
    )
    if not answer.success:
        raise RuntimeError(answer.message)
    whole = [round(value) for value in answer.x]
    return sum(a * n for a, n in zip(aim, whole))


def cheapest(need, offers, fee, free_from):
    """z = 1 when the delivery is free: total = goods + fee - fee z."""
    count = len(offers)
    pieces = [size for size, _ in offers] + [0]
    packs = [1] * count + [0]
    total = [price for _, price in offers] + [-fee]
    infinite = numpy.inf
    limits = [(pieces, need, infinite)]
    if free_from is None:
        limits.append(([0] * count + [1], 0, 0))
    else:
        limits.append(([price for _, price in offers] + [-free_from], 0, infinite))
    # Nothing bought beyond the need and beyond the limit can pay off.
    least_price = min(price for _, price in offers)
    most = need + (free_from or 0) // least_price + 2
    best = solve(total, limits, count, most)
    limits.append((total, best, best))
    fewest = solve(pieces, limits, count, most)
    limits.append((pieces, fewest, fewest))
    return best + fee, fewest, solve(packs, limits, count, most)


def offer(draw):
    size = draw.choice([1, 1, 2, 3, 4, 5, 6, 8, 10, 12, 20, 24, 25, 50])
    # Larger packs mostly cost less a piece; round prices make ties.
    each = draw.randrange(120, 260) * (1 - 0.08 * min(size, 5))
    price = max(1, round(size * each))
    return [size, round(price, -1) or 10] if draw.random() < 0.5 else [size, price]


def rows():
    draw = random.Random(20260307)
    for index in range(600):
        offers = [offer(draw) for _ in range(draw.randrange(1, 5))]
        need = draw.choice([1, draw.randrange(1, 13), draw.randrange(1, 60), draw.randrange(1, 150)])
        fee = free_from = None
        if index % 3 > 0:
            fee = draw.choice([290, 390, 495, 690, 1200])
        if index % 3 > 1:
            plain, _, _ = cheapest(need, offers, 0, None)
            free_from = max(0, plain + draw.randrange(-300, fee + 300))
            if draw.random() < 0.5:
                free_from = round(free_from, -2)
        yield [need, offers, fee, free_from, *cheapest(need, offers, fee or 0, free_from)]
