"""Makes the reference figures that tests/published compares the almanac with.

    python -m venv .tools/figures && .tools/figures/bin/pip install -r tests/figures/requirements.txt
    .tools/figures/bin/python tests/figures/check.py           fails when a committed file is stale
    .tools/figures/bin/python tests/figures/check.py --write [NAME…]   writes the files anew, or those of these modules

Each module beside this one has rows(), which works the figures out by a way of its own, never by the almanac's. Every
run gives the same bytes: seeds are fixed, floating results rounded far above the noise of the method.

Three modules read instead: backup_files, calendar_files and table_files say what general libraries find in the papers
that the almanac wrote into tests/figures/papers (`cargo run --example papers` writes them anew).
"""

import json
import pathlib
import sys

import backup_files
import calendar_files
import calendar_months
import climate_seasons
import counts
import false_alarms
import grounds
import hatches
import hive_alarms
import hours
import levels
import medians
import none_seen
import orders
import packs
import rate_sums
import rhythms
import samples
import seasons
import sheets
import spills
import splits
import stamps
import table_files
import tables_in
import trends
import trials
import weather_years
import yard_grounds
import zones

HERE = pathlib.Path(__file__).parent
MODULES = [
    backup_files,
    calendar_files,
    calendar_months,
    climate_seasons,
    counts,
    false_alarms,
    grounds,
    hatches,
    hive_alarms,
    hours,
    levels,
    medians,
    none_seen,
    orders,
    packs,
    rate_sums,
    rhythms,
    samples,
    seasons,
    sheets,
    spills,
    splits,
    stamps,
    table_files,
    tables_in,
    trends,
    trials,
    weather_years,
    yard_grounds,
    zones,
]


def text(rows):
    lines = ",\n".join(json.dumps(row, separators=(",", ":"), ensure_ascii=True) for row in rows)
    return f"[\n{lines}\n]\n"


def main():
    write = sys.argv[1:2] == ["--write"]
    wanted = sys.argv[2:]
    if sys.argv[1:] and not write or set(wanted) - {module.__name__ for module in MODULES}:
        sys.exit("usage: check.py [--write [NAME…]]")
    chosen = [module for module in MODULES if not wanted or module.__name__ in wanted]
    fresh = {f"{module.__name__}.json": text(module.rows()).encode() for module in chosen}
    if write:
        for name, content in fresh.items():
            (HERE / name).write_bytes(content)
    if wanted:
        return
    here = {path.name: path.read_bytes() for path in HERE.glob("*.json")}
    stale = sorted(name for name in here.keys() | fresh.keys() if here.get(name) != fresh.get(name))
    for name in stale:
        print(f"stale, or made by no script: tests/figures/{name}")
    print(f"{len(fresh)} files, {sum(map(len, fresh.values()))} bytes")
    sys.exit(1 if stale else 0)


if __name__ == "__main__":
    main()
