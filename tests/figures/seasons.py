"""What seasons came to in the yards of tests/figures/papers/backup.json, counted from the entries alone: {yard, from, to,
and the figures that src/book/season.rs reckons}. Catch is counted trap by trap: a trap fishes from the day it came, was
emptied or counted; spilled, missing and closed traps do not fish. A count belongs to the days asked for when every day on
which its beetles can have been caught lies in them: one that began before is left out and counted as such. The limits of
beetles for 100 trap-days are those of scipy's chi-square, the lower one of the fewest and the upper one of the most; none
where there are fewer than 3 counts or 100 trap-days.
"""

import datetime
import json
import pathlib
import statistics

from scipy.stats import chi2

FILE = pathlib.Path(__file__).parent / "papers" / "backup.json"
SPANS = [("2026-05-05", "2026-07-14"), ("2026-05-19", "2026-06-30"), ("2026-06-10", "2026-06-12")]
DIDS = ["topped_up", "replaced", "as_found", "spilled", "missing", "glued_shut"]


def day(text):
    return datetime.date.fromisoformat(text)


def in_effect(entries):
    by_id = {entry["id"]: entry for entry in entries}
    order = lambda entry: (int(entry["id"].split("-")[1]), entry["id"])
    struck = set()
    for entry in sorted(entries, key=order, reverse=True):
        if "struck" in entry["what"] and entry["id"] not in struck:
            struck |= set(entry["what"]["struck"]["entries"])
    replaced = {entry["replaces"] for entry in entries if "replaces" in entry and entry["id"] not in struck}
    return [e for e in entries if e["id"] not in struck | replaced and "struck" not in e["what"]]


def traps_of(entries):
    """Hive by hive its traps with the day each came, as far as hives and boxes bring them."""
    traps = {}
    for entry in entries:
        what = entry["what"]
        boxes, hive = [], None
        if "hive" in what:
            boxes, hive = what["hive"]["boxes"], entry["id"]
        if "boxes_on" in what:
            boxes, hive = what["boxes_on"]["boxes"], what["boxes_on"]["hive"]
        for box in boxes:
            for _ in box.get("traps", []):
                traps.setdefault(hive, []).append(entry["day"])
    return traps


def season(entries, yard, start, end):
    lines = [e for e in in_effect(entries) if start <= e["day"] <= end]
    here = [e for e in lines if e.get("yard") == yard]
    checks = [e for e in here if "check" in e["what"]]
    visits = {}
    for entry in checks:
        visits.setdefault((entry["what"]["check"]["hive"], entry["day"]), []).append(entry["what"]["check"])
    gaps, last = [], {}
    for hive, on in sorted(visits, key=lambda visit: visit[1]):
        if hive in last:
            gaps.append((day(on) - day(last[hive])).days)
        last[hive] = on
    return {
        "visits": len(visits),
        "skips": len({(e["what"]["skip"]["hive"], e["day"]) for e in here if "skip" in e["what"]}),
        "median": statistics.median_low(gaps) if gaps else None,
        "longest": max(gaps, default=None),
        "gaps": len(gaps),
        "did": [sum(any(c["did"] == did for c in of_day) for of_day in visits.values()) for did in DIDS],
        "not_counted": sum(not any("count" in c for c in of_day) for of_day in visits.values()),
        "not_read": sum(not any("before" in c for c in of_day) for of_day in visits.values()),
        "placed": sum(map(placed, here)),
        **caught(entries, yard, start, end),
        "new": sum("hive" in e["what"] for e in here),
        "dead": once("hive_ended", here, lambda ended: ended["how"] == "dead"),
        "moved_in": once("hive_moved", lines, lambda moved: moved["to"] == yard),
        "moved_out": once("hive_moved", here, lambda moved: moved["to"] != yard),
    }


def placed(entry):
    """Traps that a line puts in: with a hive, with boxes, or one by one."""
    what = entry["what"]
    boxes = what.get("hive", what.get("boxes_on", {})).get("boxes", [])
    return sum(len(box.get("traps", [])) for box in boxes) + len(what.get("traps_on", {}).get("traps", []))


def once(kind, lines, counts):
    """Hives times days with a line of that kind: what two people wrote down of one day at a hive happened once."""
    told = ((e["day"], e["what"][kind]) for e in lines if kind in e["what"])
    return len({(on, what["hive"]) for on, what in told if counts(what)})


def caught(entries, yard, start, end):
    low, high, days, counts, left_out = 0, 0, 0, 0, 0
    for on, since, count, fished in every_count(entries, yard):
        if start <= since and on <= end:
            low += count if isinstance(count, int) else count["low"]
            most = count if isinstance(count, int) else count.get("high")
            high = None if high is None or most is None else high + most
            days, counts = days + fished, counts + 1
        elif since < end and on > start:
            left_out += 1
    enough = counts >= 3 and days >= 100
    lower = chi2.ppf(0.025, 2 * low) / 2 if low else 0.0
    upper = chi2.ppf(0.975, 2 * high + 2) / 2 if high is not None else None
    each = lambda beetles: None if beetles is None else round(float(beetles) * 100 / days, 9)
    return {
        "counts": counts,
        "low": low,
        "high": high,
        "trap_days": days,
        "left_out": left_out,
        "limits": [each(lower), each(upper)] if enough else None,
    }


def every_count(entries, yard):
    """Each count in a yard: its day, the first on which one of its beetles can have been caught, it, and its trap-days."""
    standing = in_effect(entries)
    work = [e for e in standing if "check" in e["what"]]
    order = lambda e: (e["day"], int(e["id"].split("-")[1]))
    for hive, placed in traps_of(standing).items():
        traps = [{"since": since, "idle": None} for since in placed]
        for entry in sorted((e for e in work if e["what"]["check"]["hive"] == hive), key=order):
            check, on = entry["what"]["check"], entry["day"]
            assert "traps" not in check, "work on some traps is not counted by this script"
            hang = [trap for trap in traps if trap["since"] <= on]
            days, since = 0, on
            for trap in hang:
                if trap["idle"] == "missing" and check["did"] != "replaced":
                    continue
                if trap["idle"] == "glued_shut" and check["did"] in ("as_found", "topped_up", "spilled"):
                    continue
                fished = trap["idle"] is None and check["did"] not in ("spilled", "missing", "glued_shut")
                if fished:
                    days += (day(on) - day(trap["since"])).days
                    since = min(since, trap["since"])
                was = trap["idle"]
                if check["did"] in ("topped_up", "replaced"):
                    trap["idle"] = None
                if check["did"] == "spilled":
                    trap["idle"] = None if "after" in check else "spilled"
                if check["did"] in ("missing", "glued_shut"):
                    trap["idle"] = check["did"]
                mended = was is not None and trap["idle"] is None
                if check["did"] in ("replaced", "spilled") or "count" in check or mended:
                    trap["since"] = on
            if "count" in check and entry.get("yard") == yard and days > 0:
                yield on, since, check["count"], days


def rows():
    entries = json.loads(FILE.read_text())["entries"]
    for yard in (e["id"] for e in entries if "yard" in e["what"]):
        for start, end in SPANS:
            yield {"yard": yard, "from": start, "to": end} | season(entries, yard, start, end)
