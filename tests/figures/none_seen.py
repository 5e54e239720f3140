"""None seen in so many hives: [hives, opened, chance to notice %, certainty %, at most so many are affected].

By the table of all numbers affected, from the chances that samples.py works out with scipy.stats.
"""

import numpy
import samples

LEFT = {95: 0.05, 80: 0.2, 99: 0.01}


def rows():
    for hives in [*range(1, 26), 40, 50, 75, 100]:
        table = numpy.array([samples.misses(hives, affected) for affected in range(hives + 1)])
        for opened in sorted({1, hives // 4, hives // 3, hives // 2, hives - 1, hives} - {0}):
            for column, notice in enumerate(samples.NOTICES):
                for sure, left in LEFT.items():
                    unseen = numpy.flatnonzero(table[:, opened, column] >= left - 1e-9)
                    yield [hives, opened, notice, sure, int(unseen[-1])]
