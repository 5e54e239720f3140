"""The beetle's stages as other scripts here take them: typed anew from the sheets, in numpy's ways."""

import numpy as np

# Degree-days and floor of each set; where the stage is quickest and above what nothing develops.
EGG, LARVA, SOIL = 0, 1, 2
LINES = {
    EGG: [(19.4, 13.5), (20.07, 13.10), (48.0, 10.0)],
    LARVA: [(195.0, 10.0), (211.6, 8.56)],
    SOIL: [(365.0, 10.0), (295.7, 12.05)],
}
HEAT = {EGG: (39.1, 46.5), LARVA: (36.5, 44.0), SOIL: (35.5, 42.5)}
BRIERE = (2.98952e-5, 10.4291, 41.9097)


def briere(t):
    a, floor, ceiling = BRIERE
    inside = (t > floor) & (t < ceiling)
    return np.where(inside, a * t * (t - floor) * np.sqrt(np.clip(ceiling - t, 0.0, None)), 0.0)


def sets(stage, t):
    """One array of rates for each set of the stage."""
    t = np.asarray(t, dtype=float)
    top, limit = HEAT[stage]
    out = [np.where(t > limit, 0.0, np.maximum(np.minimum(t, top) - floor, 0.0) / total) for total, floor in LINES[stage]]
    if stage == SOIL:
        out.append(np.where(t > limit, 0.0, briere(t)))
    return out


def edges(stage, days, mean):
    """Quick, likely and slow rate of each day from its sets' means over the day, and the day's mean temperature."""
    likely = np.median(days, axis=0) if stage == SOIL else (days[0] + days[1]) / 2
    quick = np.max(days if stage == SOIL else days[:2], axis=0)
    slow = np.min(days, axis=0)
    b = np.interp(mean, [20.0, 24.0], [0.35, 0.20])
    return np.array([np.maximum(quick, likely / (1 - b)), likely, np.minimum(slow, likely / (1 + b))])
