"""Splits, by trying: [frames of bees in hundredths, comb that stays, comb that goes, share that flies back in hundredths of a
per cent, frames to take, what they cover of the new hive and of the old one, frames wanted before, enough].

Frames of bees are carried over one by one, in fractions, until the new hive covers its comb once the foragers are gone. Then
the hive is made stronger frame by frame, from nothing, until the old one covers nine tenths with them home again.
"""

import random
from fractions import Fraction

DRAWN = 600


def rows():
    draw = random.Random(20260726)
    for number in range(DRAWN):
        bees = Fraction(draw.randrange(0, 6000), 100)
        stays, goes = draw.randrange(1, 41), draw.randrange(1, 21)
        back = Fraction(draw.choice([0, 1000, 2500, 3000, 3333, 5000, 9000, draw.randrange(0, 9500)]), 10000)
        if number % 4 == 0:
            bees = Fraction(draw.randrange(0, 61))
        take = 0
        while take * (1 - back) < goes:
            take += 1
        gone = take * (1 - back)
        wants = take
        while wants - gone < Fraction(9, 10) * stays:
            wants += 1
        old = max(Fraction(0), (bees - gone) / stays)
        enough = bees >= take and old >= Fraction(9, 10)
        yield [
            int(bees * 100), stays, goes, int(back * 10000), take,
            round(float(gone / goes), 9), round(float(old), 9), wants, enough,
        ]
