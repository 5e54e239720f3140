"""Trials in pairs, by scipy.stats: ["power", [[pairs, mean, k, left, chance], ...]] and ["outcome", [[[[with, days, without,
days], ...], sign, permuted], ...]].

The power is summed over the numbers of pairs with fewer, more and as many beetles at once (multinomial), with binomtest as the
judge; the permutations are those of scipy's permutation_test, all of them.
"""

import numpy
from scipy import stats


def power(pairs, mean, k, left):
    most = numpy.arange(int(mean + max(60 * numpy.sqrt(mean + mean * mean / k), 40 * mean / k)) + 60)
    without, having = (stats.nbinom.pmf(most, k, k / (k + m)) for m in (mean, mean * left))
    less = float((without * (numpy.cumsum(having) - having)).sum())
    even = float((without * having).sum())
    chances = [less, max(0.0, 1 - less - even), even]
    told = 0.0
    for wins in range(pairs + 1):
        for losses in range(pairs - wins + 1):
            both = wins + losses
            if wins > losses and stats.binomtest(wins, both).pvalue < 0.05:
                told += stats.multinomial.pmf([wins, losses, pairs - both], pairs, chances)
    return float(told)


def rows():
    draw = numpy.random.default_rng(77)
    cases = []
    for case in range(200):
        pairs = int(draw.integers(1, 31))
        mean = round(float(numpy.exp(draw.uniform(0, 4.5))), 3)
        k = round(float(numpy.exp(draw.uniform(-0.7, 3))), 3)
        left = [0.5, 0.25, 0.75, 0.1][case % 4]
        cases.append([pairs, mean, k, left, float(f"{power(pairs, mean, k, left):.9g}")])
    # Few hives have nearly all beetles: the tail is counted to its end.
    for case in range(24):
        pairs = [16, 24, 40, 50][case % 4]
        mean = round(float(draw.uniform(300, 1000)), 3)
        k = round(float(numpy.exp(draw.uniform(-4.6, -1.6))), 4)
        left = [0.5, 0.1, 0.02][case % 3]
        cases.append([pairs, mean, k, left, float(f"{power(pairs, mean, k, left):.9g}")])
    yield ["power", cases]
    outcomes = []
    for case in range(150):
        pairs = int(draw.integers(2, 11))
        days = draw.integers(20, 200, (pairs, 2)) if case % 2 else numpy.full((pairs, 2), 100)
        counts = draw.negative_binomial(1.5, 1.5 / (1.5 + 12), (pairs, 2))
        counts[:, 0] = draw.binomial(counts[:, 0], [1, 0.4, 0.1][case % 3])
        one, other = counts[:, 0] / days[:, 0], counts[:, 1] / days[:, 1]
        fewer, more = int((one < other).sum()), int((one > other).sum())
        sign = stats.binomtest(fewer, fewer + more).pvalue if fewer + more else 1.0
        gaps = numpy.round((one - other) * 100, 9)
        sums = stats.permutation_test(
            (gaps,), lambda sample, axis: sample.sum(axis), permutation_type="samples", vectorized=True, n_resamples=numpy.inf
        )
        table = [[int(n) for n in row] for row in zip(counts[:, 0], days[:, 0], counts[:, 1], days[:, 1])]
        outcomes.append([table, float(f"{sign:.10g}"), float(f"{sums.pvalue:.10g}")])
    yield ["outcome", outcomes]
