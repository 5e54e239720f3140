"""The work of tests/bench/stages.rs in numpy; prints the seconds of both parts as a JSON array.

Arrays hold the days of a year and the three edges; the sightings of a yard march together, one day a step.
"""

import json
import pathlib
import statistics
import sys
import time

import numpy as np

sys.path.insert(0, str(pathlib.Path(__file__).parent.parent / "figures"))
import climate_seasons  # noqa: E402


def median(work):
    times = []
    for _ in range(7):
        begun = time.perf_counter()
        work()
        times.append(time.perf_counter() - begun)
    return statistics.median(times)


if __name__ == "__main__":
    known = list(climate_seasons.PLACES.values())[:2]
    climates = [tuple(ends + yard / 100 for ends in known[yard % 2]) for yard in range(100)]
    table = climate_seasons.yard(*climates[0])[1]
    kind, day = np.arange(10000) % 5, 90.0 + np.arange(10000) % 180
    print(
        json.dumps(
            [
                median(lambda: [climate_seasons.season(*climate) for climate in climates]),
                median(lambda: climate_seasons.dates(table, kind, day)),
            ]
        )
    )
