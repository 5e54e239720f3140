"""Two stretches beside each other, hive by hive, by arrays in numpy: [[[first, days, second, days], ...], word, ratio, low,
high, spread, chance].

The word is 1 for up, -1 for down, 0 for cannot tell. Ratio, limits and chance are null where there are none. The rule is that
of src/almanac/trend.rs, written anew: Mantel & Haenszel's ratio as a weighted mean, Pearson's chi-square as the deviation of a
table of hives and stretches, what the hives move by leaving each out of the residuals, scipy's t, and for small counts the
smaller tail of a convolution of binomials, twice.
"""

import numpy
from scipy import stats

SMALL = 30


def judged(table):
    """What the rule says of rows of [first, days, second, days]."""
    first, before, second, after = numpy.array(table, dtype=float).T
    days = before + after
    up, down = (second * before / days).sum(), (first * after / days).sum()
    all_first, all_second = first.sum(), second.sum()
    alone = len(table) == 1
    used = int(((first + second) > 0).sum())
    chance = None
    if min(all_first, all_second) < SMALL:
        chances = numpy.ones(1)
        for one, one_days, other, other_days in table:
            both = one + other
            parts = stats.binom.pmf(numpy.arange(both + 1), both, other_days / (one_days + other_days))
            chances = numpy.convolve(chances, parts)
        seen = int(all_second)
        chance = min(1.0, 2 * float(min(chances[: seen + 1].sum(), chances[seen:].sum())))
    ratio = up / down if down else None
    low = high = None
    spread, word = 1.0, 0
    striking = chance is None or chance < 0.05
    sign = int(numpy.sign(up - down))
    if alone or used > 1:
        if up > 0 and down > 0:
            share = after * ratio / (before + after * ratio)
            quantile = stats.norm.ppf(0.975)
            both = first + second
            weight = both * before * after / days**2
            variance = weight.sum() / (up * down)
            if not alone:
                expected = numpy.array([both * (1 - share), both * share])
                found = numpy.array([first, second])
                here = both > 0
                pearson = ((found - expected) ** 2)[:, here] / expected[:, here]
                spread = max(1.0, pearson.sum() / (used - 1))
                own = (second * before - ratio * first * after) / days
                own /= numpy.maximum(1 - weight / weight.sum(), 0.02)
                spread = max(spread, (own**2).sum() / up**2 / variance)
                quantile = stats.t.ppf(0.975, used - 1)
            width = quantile * numpy.sqrt(spread * variance)
            low, high = ratio * numpy.exp(-width), ratio * numpy.exp(width)
            clear = low > 1 or high < 1 or (alone and chance is not None)
            word = sign if striking and clear else 0
        else:
            rose, fell = int((second * before > first * after).sum()), int((second * before < first * after).sum())
            agree = alone or (rose + fell > 0 and stats.binomtest(rose, rose + fell).pvalue < 0.05)
            word = sign if striking and agree else 0
    return word, ratio, low, high, spread, chance


def rows():
    draw = numpy.random.default_rng(11)
    for case in range(1200):
        hives = [1, 2, 3, 5, 8, 24][case % 6]
        mean = [1, 4, 15, 60][case // 6 % 4]
        k = [0.3, 1, 3, 50][case // 24 % 4]
        change = [1, 0.4, 2, 0.1][case // 96 % 4]
        days = draw.integers(10, 200, (2, hives)) if case % 5 else numpy.full((2, hives), 90)
        own = draw.gamma(k, 1 / k, hives)
        clump = draw.gamma(3 * k, 1 / (3 * k), (2, hives))
        first, second = draw.poisson(own * clump * days / 90 * mean * numpy.array([[1], [change]]))
        table = [[int(number) for number in row] for row in zip(first, days[0], second, days[1])]
        yield [table, *(value if value is None or isinstance(value, int) else float(f"{value:.10g}") for value in judged(table))]
