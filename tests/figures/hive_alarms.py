"""How often one hive of a yard is said to have changed where nothing has: ["alarms", [[k, hives, beetles a hive, of 1,000 cases
ours, with three hives as well, by the spread of the hive's own counts], ...]] and, of other cases, what the rule of
src/almanac/trend.rs says of the first hive: ["words", [[[[first, days, second, days], ...], word], ...]].

Each hive is counted six times in each year. Beetles clump by hive and year: a hive that has many has them all year (negative
binomial, as a gamma of which the counts are Poisson). The spread of its own counts is Pearson's within both years, with
Student's t of ten.
"""

import numpy
import trends
from scipy import stats

CASES = 4000
COUNTS = 6
SMALL = 30
WORDS = 720
# Fewest hives with beetles by which one of them is judged.
LEAST = 4


def words(first, second, before, after, spread, quantile):
    """Up, down or neither of one hive a row, as a spread that is known has it."""
    share = after / (before + after)

    def exact(one, other):
        few, many = stats.binom.cdf(other, one + other, share), stats.binom.cdf(one, one + other, 1 - share)
        return 2 * numpy.minimum(few, many) < 0.05

    with numpy.errstate(all="ignore"):
        far = numpy.log(second * before / (first * after))
        clear = numpy.abs(far) > quantile * numpy.sqrt(spread * (1 / first + 1 / second))
    small = numpy.minimum(first, second) < SMALL
    said = numpy.where(small, exact(first, second) & (clear | (spread <= 1)), clear)
    # None in one of the two: both counts in whole spreads.
    none = exact(numpy.floor(first / spread), numpy.floor(second / spread)) & (first != second)
    said = numpy.where((first > 0) & (second > 0), said, none)
    return numpy.where(said, numpy.sign(second * before - first * after), 0)


def yards(first, second):
    """The spread of each yard, and the hives that tell of it, none where one of the years had no beetles; all traps fish as long."""
    both = first + second
    told, used = both.sum(1) / 4, (both > 0).sum(1)
    up, down = second.sum(1) / 2, first.sum(1) / 2
    with numpy.errstate(all="ignore"):
        ratio = (up / down)[:, None]
        share = ratio / (1 + ratio)
        pearson = numpy.where(both > 0, (second - both * share) ** 2 / (both * share * (1 - share)), 0).sum(1) / (used - 1)
        own = (second - ratio * first) / 2 / numpy.maximum(1 - both / 4 / told[:, None], 0.02)
        moved = (own**2).sum(1) / up**2 / (told / (up * down))
    spread = numpy.fmax(1, numpy.fmax(pearson, moved))
    known = (up > 0) & (down > 0) & (used > 1)
    return numpy.where(known, spread, 1), numpy.where(known, used, 0)


def alarms(draw, k, hives, mean):
    clump = draw.gamma(k, 1 / k, (2, CASES, hives, 1))
    counts = draw.poisson(clump * mean / COUNTS * numpy.ones(COUNTS))
    first, second = counts.sum(3)
    spread, used = yards(first, second)
    counts = counts[:, :, 0, :]
    middle = counts.mean(2, keepdims=True)
    with numpy.errstate(all="ignore"):
        own = numpy.where(middle > 0, (counts - middle) ** 2 / middle, 0).sum((0, 2)) / (2 * COUNTS - 2)
    one, other, days = first[:, 0], second[:, 0], numpy.full(CASES, 90)
    normal, student = stats.norm.ppf(0.975), stats.t.ppf(0.975, 2 * COUNTS - 2)
    by_yard = words(one, other, days, days, spread, normal)
    said = [
        numpy.where(used >= LEAST, by_yard, 0),
        numpy.where(used >= LEAST - 1, by_yard, 0),
        words(one, other, days, days, numpy.fmax(1, own), student),
    ]
    return [int(round(float((word != 0).mean()) * 1000)) for word in said]


def rows():
    draw = numpy.random.default_rng(34)
    found = []
    for k in (0.2, 0.5, 1, 3, 1000):
        for hives in (3, 4, 5, 10, 24):
            for mean in (5, 20, 60, 200):
                found.append([k, hives, mean, *alarms(draw, k, hives, mean)])
    yield ["alarms", found]
    told = []
    for case in range(WORDS):
        hives, mean, k = [1, 3, 4, 6, 12][case % 5], [3, 20, 90][case // 5 % 3], [3, 60, 1000][case // 15 % 3]
        days = draw.integers(40, 400, (2, hives))
        clump = draw.gamma(k, 1 / k, (2, hives))
        clump[1, 0] *= [0.1, 1, 5, 0][case // 45 % 4]
        first, second = draw.poisson(clump * days / 90 * mean)
        table = [[int(number) for number in row] for row in zip(first, days[0], second, days[1])]
        spread, used = trends.judged(table)[4], int(((first + second) > 0).sum())
        known = used >= LEAST and first.sum() > 0 and second.sum() > 0
        of = [numpy.array([number]) for number in (first[0], second[0], days[0][0], days[1][0])]
        word = int(words(*of, numpy.array([spread]), stats.norm.ppf(0.975))[0])
        told.append([table, word if known else None])
    yield ["words", told]
