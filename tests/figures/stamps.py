"""Moments as datetime.fromisoformat reads them: [text, day, seconds after midnight, minutes east of UTC], or [text].

A row of one text is refused by it. All texts have the shape of an RFC 3339 date-time; half are spoilt in one figure.
Hour 24 is left out: Python's releases disagree about it, RFC 3339 does not have it.
"""

import datetime
import random


def read(text):
    try:
        moment = datetime.datetime.fromisoformat(text)
    except ValueError:
        return [text]
    day = moment.date()
    midnight = datetime.datetime.combine(day, datetime.time(), moment.tzinfo)
    return [
        text,
        day.isoformat(),
        (moment - midnight) // datetime.timedelta(seconds=1),
        moment.utcoffset() // datetime.timedelta(minutes=1),
    ]


def rows():
    draw = random.Random(20000229)
    first, last = datetime.date(2000, 1, 1).toordinal(), datetime.date(2199, 12, 31).toordinal()
    for index in range(400):
        day = datetime.date.fromordinal(draw.randrange(first, last + 1))
        parts = [day.year, day.month, day.day, draw.randrange(24), draw.randrange(60), draw.randrange(60)]
        east = [draw.randrange(24), draw.choice([0, 0, 15, 30, 45, 59])]
        if index % 2:
            at, value = draw.choice(
                [(1, 0), (1, 13), (2, 0), (2, 29), (2, 30), (2, 31), (2, 32), (3, 25), (3, 99), (4, 60), (5, 60), (5, 61)]
            )
            parts[at] = value
        if index % 10 == 3:
            east[0] = draw.choice([24, 25, 99])
        yield read("{:04}-{:02}-{:02}T{:02}:{:02}:{:02}".format(*parts) + draw.choice("+-") + "{:02}:{:02}".format(*east))
