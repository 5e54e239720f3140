"""Yards as they are written down, by shapely: [unit, stands as [across, along] hundredths of the unit, unit of the paved area,
what is paved in tenths of its unit or -1, reach in mm, area in m², area left in m²].

Ground round a hive is the buffer of a box of 413 by 505 mm, that of the yard the area of the union, and what is paved comes
off it and leaves nothing at the least.
"""

import random

import shapely

YARDS = 200
WIDTH, LENGTH = 413, 505
MM = {"m": 10, "ft": 3.048}
SQUARE = {"m2": 1.0, "sq_ft": 0.3048**2}


def rows():
    draw = random.Random(20260727)
    for number in range(YARDS):
        unit = draw.choice(["m", "ft"])
        wide = draw.choice([100, 500, 2000, 6000])
        count = draw.choice([1, 2, 3, 5, 8, 13])
        stands = [[draw.randrange(-wide, wide), draw.randrange(-wide, wide)] for _ in range(count)]
        reach = draw.choice([0, 300, 900, 900, 1500])
        boxes = []
        for across, along in stands:
            x, y = across * MM[unit], along * MM[unit]
            boxes.append(shapely.box(x - WIDTH / 2, y - LENGTH / 2, x + WIDTH / 2, y + LENGTH / 2))
        area = shapely.union_all([box.buffer(reach, quad_segs=128) for box in boxes]).area / 1e6
        square = draw.choice(["m2", "sq_ft"])
        paved = -1 if number % 3 == 0 else draw.randrange(0, 300)
        left = max(0.0, area - max(paved, 0) / 10 * SQUARE[square])
        yield [unit, stands, square, paved, reach, round(area, 6), round(left, 6)]
