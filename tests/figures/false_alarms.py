"""How often the rule of trends.py says up or down where nothing has changed: [k, hives, beetles a hive, effort, of 1,000 cases
in which it did, of 1,000 in which Pearson's spread and 1.96 alone would have].

Counts are drawn from the negative binomial of numpy, hive by hive and stretch by stretch, so that hives clump anew in each:
the hardest case. Effort is 0 where it is alike, 1 where it differs up to sixfold. Limits and spreads as in trends.py, for
4,000 cases at once; the exact test of small counts is that of both sums.
"""

import numpy
from scipy import stats

CASES = 4000


def alarms(draw, k, hives, mean, uneven):
    days = draw.uniform(0.3, 1.7, (2, CASES, hives)) if uneven else numpy.ones((2, CASES, hives))
    first, second = draw.negative_binomial(k, k / (k + mean * days))
    before, after = days
    total = before + after
    up, down = (second * before / total).sum(1), (first * after / total).sum(1)
    both = first + second
    weight = both * before * after / total**2
    told = weight.sum(1)
    used = (both > 0).sum(1)
    with numpy.errstate(all="ignore"):
        ratio = up / down
        share = after * ratio[:, None] / (before + after * ratio[:, None])
        pearson = numpy.where(both > 0, (second - both * share) ** 2 / (both * share * (1 - share)), 0).sum(1) / (used - 1)
        own = (second * before - ratio[:, None] * first * after) / total
        own = own / numpy.maximum(1 - weight / told[:, None], 0.02)
        variance = told / (up * down)
        spread = numpy.fmax(1, numpy.fmax(pearson, (own**2).sum(1) / up**2 / variance))
        far = numpy.abs(numpy.log(ratio)) / numpy.sqrt(variance)
        wide = stats.t.ppf(0.975, numpy.maximum(used - 1, 1))
        ours = far > wide * numpy.sqrt(spread)
        plain = far > 1.96 * numpy.sqrt(numpy.fmax(1, pearson))
    told_of = (up > 0) & (down > 0) & (used > 1)
    sums = first.sum(1), second.sum(1)
    part = after.sum(1) / total.sum(1)
    tails = [stats.binom.cdf(sums[1], sum(sums), part), stats.binom.sf(sums[1] - 1, sum(sums), part)]
    exact = 2 * numpy.minimum(*tails) < 0.05
    small = numpy.minimum(*sums) < 30
    return [int(round(float((word & told_of & (exact | ~small)).mean()) * 1000)) for word in (ours, plain)]


def rows():
    draw = numpy.random.default_rng(5)
    for k in (0.2, 0.5, 1, 3, 1000):
        for hives in (2, 3, 4, 6, 10, 24, 60):
            for mean in (2, 5, 20, 60):
                for uneven in (0, 1):
                    yield [k, hives, mean, uneven, *alarms(draw, k, hives, mean, uneven)]
