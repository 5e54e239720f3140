"""Ground round hives, by shapely: [width, length, reach, stands as [across, along] pairs, area]; mm, and m² for the area.

The footprint of a hive is a box, the ground round it the box's buffer with 128 pieces a quarter of a circle, and the area
that of the union of all. Stands are drawn three ways: rows and grids, cramped and wide; places by chance; and heaps where
nearly all overlap.
"""

import random

import shapely

DRAWN = 510


def area(width, length, reach, stands):
    boxes = [shapely.box(x - width / 2, y - length / 2, x + width / 2, y + length / 2) for x, y in stands]
    return shapely.union_all([box.buffer(reach, quad_segs=128) for box in boxes]).area / 1e6


def rows():
    draw = random.Random(20260714)
    for number in range(DRAWN):
        width, length = draw.randrange(200, 700), draw.randrange(200, 700)
        reach = draw.choice([0, 5, 50, 300, 900, 900, 900, 1500, 3000])
        count = draw.choice([1, 2, 3, 5, 8, 13, 24, 40])
        if number % 3 == 0:
            across, along = draw.randrange(200, 4000), draw.randrange(200, 6000)
            columns = draw.choice([1, 2, 5, 10, 40])
            stands = [[i % columns * across, i // columns * along] for i in range(count)]
        else:
            wide = draw.randrange(100, 30_000 if number % 3 == 1 else 2000)
            stands = [[draw.randrange(-wide, wide), draw.randrange(-wide, wide)] for _ in range(count)]
        yield [width, length, reach, stands, round(area(width, length, reach, stands), 6)]
