"""Several things from one shop with one delivery, by integer programming (scipy.optimize.milp).

[[[need, [[pieces, price in hundredths], ...]], ...], fee, free from or null, total in hundredths]

One programme a row: whole packs of every offer and z = 1 when the delivery is free.
"""

import random

import numpy
from scipy.optimize import Bounds, LinearConstraint, milp

from packs import offer


def cheapest(items, fee, free_from):
    """The least goods + fee - fee z; every need is met, and z = 1 needs goods from the limit on."""
    prices = [price for _, offers in items for _, price in offers]
    limits = []
    at = 0
    most = []
    for need, offers in items:
        row = [0] * (len(prices) + 1)
        for size, _ in offers:
            row[at] = size
            at += 1
        limits.append(LinearConstraint(numpy.array(row), need, numpy.inf))
        # Nothing bought beyond the need and beyond the limit can pay off.
        most += [need + (free_from or 0) // min(price for _, price in offers) + 2] * len(offers)
    last = numpy.array(prices + [-(free_from or 0)])
    limits.append(LinearConstraint(last, 0, numpy.inf))
    answer = milp(
        prices + [-fee],
        constraints=limits,
        integrality=numpy.ones(len(prices) + 1),
        bounds=Bounds(numpy.zeros(len(prices) + 1), numpy.array(most + [0 if free_from is None else 1])),
        options={"mip_rel_gap": 0},
    )
    if not answer.success:
        raise RuntimeError(answer.message)
    whole = [round(value) for value in answer.x]
    return sum(price * count for price, count in zip(prices, whole)) + fee - fee * whole[-1]


def rows():
    draw = random.Random(20260714)
    for index in range(400):
        items = []
        for _ in range(draw.randrange(2, 5)):
            offers = [offer(draw) for _ in range(draw.randrange(1, 4))]
            items.append([draw.choice([0, 1, draw.randrange(1, 13), draw.randrange(1, 60)]), offers])
        if not any(need for need, _ in items):
            items[0][0] = 1
        fee = draw.choice([290, 390, 495, 690, 1200])
        free_from = None
        if index % 4 > 0:
            plain = cheapest(items, 0, None)
            free_from = max(0, plain + draw.randrange(-300, fee + 300))
            if draw.random() < 0.5:
                free_from = round(free_from, -2)
        yield [items, fee, free_from, cheapest(items, fee, free_from)]
    # Packs of nearly one price a piece, and a limit far above the plain order.
    for index in range(60):
        items = []
        for _ in range(1 + index % 3):
            sizes = draw.sample(range(5, 40), 3)
            items.append([draw.randrange(50, 400), [[size, size * 100 + draw.randrange(0, 30)] for size in sizes]])
        plain = cheapest(items, 0, None)
        fee = draw.choice([2000, 8000, 20000])
        free_from = plain + draw.randrange(fee // 2, fee)
        yield [items, fee, free_from, cheapest(items, fee, free_from)]
