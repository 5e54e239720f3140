"""Counts by scipy.stats, one list of cases a row: Poisson limits from the chi-square distribution, limits of a share from the
beta distribution, two counts by binomtest, chances of clumped counts by nbinom, and Student's t.

["limits", [[count, low, high], ...]] · ["shares", [[some, all, low, high], ...]] · ["two", [[first, second, days, days, p], ...]]
· ["clumped", [[count, mean, k, chance], ...]] · ["student", [[freedom, t], ...]]
"""

import numpy
from scipy import stats

CASES = 1200


def digits(number):
    """Twelve digits that count, whatever their size."""
    return float(f"{number:.12g}")


def rows():
    draw = numpy.random.default_rng(20260714)
    limits = []
    for count in [*range(400), *draw.integers(400, 60_000, CASES - 400).tolist()]:
        low = stats.chi2.ppf(0.025, 2 * count) / 2 if count else 0.0
        limits.append([count, digits(low), digits(stats.chi2.ppf(0.975, 2 * count + 2) / 2)])
    yield ["limits", limits]
    shares = []
    for case in range(CASES):
        every = int(draw.integers(1, 40 if case % 2 else 3000))
        some = int(draw.integers(0, every + 1)) if case % 5 else [0, every][case // 5 % 2]
        low = stats.beta.ppf(0.025, some, every - some + 1) if some else 0.0
        high = stats.beta.ppf(0.975, some + 1, every - some) if some < every else 1.0
        shares.append([some, every, digits(low), digits(high)])
    yield ["shares", shares]
    two = []
    for case in range(CASES):
        most = 30 if case % 2 else 400
        first, second = (int(number) for number in draw.integers(0, most, 2))
        days = [int(number) for number in draw.integers(1, 900, 2)] if case % 3 else [100, 100]
        both = first + second
        chance = stats.binomtest(second, both, days[1] / sum(days)).pvalue if both else 1.0
        two.append([first, second, *days, digits(chance)])
    yield ["two", two]
    clumped = []
    for _ in range(CASES):
        mean = digits(float(numpy.exp(draw.uniform(-3, 5))))
        k = digits(float(numpy.exp(draw.uniform(-2.5, 3))))
        count = int(draw.integers(0, 4 * mean + 6))
        clumped.append([count, mean, k, digits(stats.nbinom.pmf(count, k, k / (k + mean)))])
    yield ["clumped", clumped]
    yield ["student", [[freedom, digits(stats.t.ppf(0.975, freedom))] for freedom in [*range(1, 200), 1000, 100_000]]]
