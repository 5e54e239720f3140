"""How often the rule of trends.py says up or down where nothing has changed: [k, hives, beetles a hive, effort, of 1,000 cases
in which it did, of 1,000 in which Pearson's spread and 1.96 alone would have].

Counts are drawn from the negative binomial of numpy, hive by hive and stretch by stretch, so that hives clump anew in each:
the hardest case. Effort is 0 where it is alike, 1 where it differs up to sixfold. Trap-days are whole ones, as they are in a
book. The rule is that of trends.py for 4,000 cases at once, with none in one of the stretches as well; the exact test of small
counts is the smaller tail of the sum of each hive's binomial, by Fourier's transform of its generating function. The first
cases of each setting are put to trends.py itself, which must say the same.
"""

import numpy
import trends
from scipy import stats

CASES = 4000
SMALL = 30
MOST = 5000
# Cases of each setting that trends.py judges as well.
CHECKED = 40
# Beetles up to which cases are put to the transform together.
WIDTHS = (64, 256, 1024, MOST + 1)


def exact(first, second, share):
    """Twice the smaller tail of the second sum, row by row."""
    both, seen = first + second, second.sum(1)
    chance = numpy.ones(len(both))
    size = both.sum(1)
    below = -1
    for width in WIDTHS:
        rows = numpy.flatnonzero((size > below) & (size < width))
        below = width - 1
        for some in numpy.array_split(rows, max(1, len(rows) * width * both.shape[1] // 10_000_000)):
            if not len(some):
                continue
            turn = numpy.exp(-2j * numpy.pi * numpy.arange(width) / width)
            product = numpy.ones((len(some), width), dtype=complex)
            for hive in range(both.shape[1]):
                part = share[some, hive, None]
                product *= (1 - part + part * turn) ** both[some, hive, None]
            chances = numpy.fft.ifft(product, axis=1).real
            few = numpy.cumsum(chances, axis=1)
            at = numpy.arange(len(some))
            here = seen[some]
            until = few[at, here]
            before = until - chances[at, here]
            chance[some] = numpy.minimum(1, 2 * numpy.minimum(until, 1 - before))
    return chance


def alarms(draw, k, hives, mean, uneven):
    days = draw.integers(27, 154, (2, CASES, hives)) if uneven else numpy.full((2, CASES, hives), 90)
    first, second = draw.negative_binomial(k, k / (k + mean * days / 90))
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
    sums = first.sum(1), second.sum(1)
    small = (numpy.minimum(*sums) < SMALL) & ((sums[0] + sums[1] <= MOST) | (hives == 1))
    ratios = (up > 0) & (down > 0) & (used > 1)
    rose, fell = ((second * before > first * after).sum(1), (second * before < first * after).sum(1))
    signs = [[stats.binomtest(n, n + m).pvalue if n + m else 1.0 for m in range(hives + 1)] for n in range(hives + 1)]
    agree = numpy.array(signs)[rose, fell] < 0.05
    # None in one of the two: no ratio has limits, and the hives must agree among themselves.
    bare = (used > 1) & ~((up > 0) & (down > 0)) & agree
    asked = numpy.flatnonzero(small & (bare | ratios & (ours | plain)))
    striking = ~small
    striking[asked] = exact(first[asked], second[asked], (after / total)[asked]) < 0.05
    said = [striking & (bare | ratios & word) for word in (ours, plain)]
    for case in range(CHECKED):
        table = list(zip(*(n[case].tolist() for n in (first, before, second, after)), strict=True))
        assert bool(trends.judged(table)[0]) == bool(said[0][case]), table
    return [int(round(float(word.mean()) * 1000)) for word in said]


def rows():
    draw = numpy.random.default_rng(5)
    for k in (0.2, 0.5, 1, 3, 1000):
        for hives in (2, 3, 4, 6, 10, 24, 60):
            for mean in (2, 5, 20, 60):
                for uneven in (0, 1):
                    yield [k, hives, mean, uneven, *alarms(draw, k, hives, mean, uneven)]
