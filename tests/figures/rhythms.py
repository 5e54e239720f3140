"""Looks and the broods they see: [gaps in days, days that larvae are in the hive, share of broods seen].

Every brood that hatches within the looks is followed by itself, hour by hour: it is seen when one of the looks falls on an
hour at which it is in the hive. Counted over every hour at which a brood can hatch, so the share is exact for hours. No
formula of the share is used.
"""

import random


def seen(gaps, hours):
    looks, at = [0], 0
    for gap in gaps:
        at += gap * 24
        looks.append(at)
    inside = bytearray(at)
    for look in looks:
        # Hatched in this hour, and at the look not yet gone.
        for hatched in range(max(0, look - hours), look):
            inside[hatched] = 1
    return sum(inside) / at


def rows():
    draw = random.Random(20260714)
    yield [[7, 9, 21, 14, 8], 8.0, round(seen([7, 9, 21, 14, 8], 192), 9)]
    for _ in range(1200):
        gaps = [draw.randrange(1, draw.choice([8, 15, 40])) for _ in range(draw.randrange(1, 15))]
        hours = draw.randrange(72, 24 * 25)
        yield [gaps, hours / 24, round(seen(gaps, hours), 9)]
