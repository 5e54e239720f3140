"""Pieces out of a sheet, laid one by one: [unit, sheet, piece, pieces, need, sheets]; sides are whole parts of the unit, mm or
eighths of an inch.

Every piece is put down at the first free place of its row, row after row, in whole numbers, once for each of the two ways
round; the better way counts. Sheets are added one after the other until there are enough pieces. Pieces that do not fit give
no sheets: -1.
"""

import random

DRAWN = 800


def laid(sheet, piece):
    count, top = 0, 0
    while top + piece[1] <= sheet[1]:
        left = 0
        while left + piece[0] <= sheet[0]:
            count, left = count + 1, left + piece[0]
        top += piece[1]
    return count


def enough(need, pieces):
    if not pieces:
        return -1
    sheets, have = 0, 0
    while have < need:
        sheets, have = sheets + 1, have + pieces
    return sheets


def rows():
    draw = random.Random(20260725)
    for number in range(DRAWN):
        unit = "mm" if number % 2 else "eighth"
        large = 2400 if unit == "mm" else 400
        sheet = [draw.randrange(20, large), draw.randrange(20, large)]
        if number % 5 == 0:
            # Sides that go in without a rest: there a slip of the last digit would lose a row.
            piece = [max(1, side // draw.randrange(1, 14)) for side in sheet]
            sheet = [part * draw.randrange(1, 14) for part in piece]
        else:
            piece = [draw.randrange(5, max(sheet) // draw.choice([1, 2, 4, 8]) + 6) for _ in range(2)]
        pieces = max(laid(sheet, piece), laid(sheet, piece[::-1]))
        need = draw.choice([0, 1, 2, 10, draw.randrange(1, 501)])
        yield [unit, sheet, piece, pieces, need, enough(need, pieces)]
