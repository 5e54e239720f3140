"""Hives to open, by scipy.stats: [hives, chance to notice %, certainty %, hives to open at each share, share %, chance].

All yards of up to 200 hives and all shares of 1 to 50 %, in order. Hives to open are -1 where even all of them do not reach
the certainty. The chance at the end is that of the number to open (of all, where it is -1) at the share before it.

Worked out the other way round from the almanac: how many affected hives lie among those opened is drawn first
(hypergeometric), then how many of these are noticed (binomial), and the chance of none is summed.
"""

import math

import numpy
from scipy import stats

NOTICES = [100, 95, 85, 60, 30]


def misses(hives, affected):
    """Chances of seeing none: a row for each number opened, a column for each chance to notice."""
    among = numpy.arange(affected + 1)
    drawn = stats.hypergeom.pmf(among[None, :], hives, affected, numpy.arange(hives + 1)[:, None])
    return drawn @ stats.binom.pmf(0, among[:, None], numpy.array(NOTICES)[None, :] / 100)


def rows():
    for hives in range(1, 201):
        shares = [math.ceil(share * hives / 100) for share in range(1, 51)]
        seen = {affected: 1 - misses(hives, affected) for affected in sorted(set(shares))}
        for column, notice in enumerate(NOTICES):
            sure = 95 if hives % 4 else [80, 90, 99][hives // 4 % 3]
            opened = []
            for affected in shares:
                enough = numpy.flatnonzero(seen[affected][:, column] >= sure / 100 - 1e-9)
                opened.append(int(enough[0]) if enough.size else -1)
            share = hives * 7 % 50 + 1
            chance = seen[shares[share - 1]][opened[share - 1], column]
            yield [hives, notice, sure, opened, share, round(float(chance), 9)]
