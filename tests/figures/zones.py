"""Instants and the civil day that zoneinfo gives them: {zone, utc_ms, civil}, and on one row of each day that is not 24
hours long also {before, after, days, hours}: the day before and the day after it, the calendar days between the two,
and the hours from the midnight of one to the midnight of the other.

Every change of the clocks of two zones from 2007 to 2027, and the turn of days on both sides of the date line. The
pinned tzdata package is read, never the computer's own copy.
"""

import datetime
import zoneinfo

zoneinfo.reset_tzpath(to=[])
UTC = datetime.timezone.utc
DAY = datetime.timedelta(days=1)
CHANGING = ["America/New_York", "Australia/Sydney"]
# 26 hours apart at the widest; a quarter-hour zone between.
STEADY = ["Pacific/Kiritimati", "Pacific/Pago_Pago", "Asia/Kathmandu"]


def midnight(day, zone):
    """The first instant of a civil day, in milliseconds."""
    local = datetime.datetime.combine(day, datetime.time(), zoneinfo.ZoneInfo(zone))
    return round(local.astimezone(UTC).timestamp()) * 1000


def row(zone, utc_ms):
    instant = datetime.datetime.fromtimestamp(utc_ms // 1000, UTC)
    return {"zone": zone, "utc_ms": utc_ms, "civil": instant.astimezone(zoneinfo.ZoneInfo(zone)).date().isoformat()}


def around(zone, day):
    """Both sides of the midnights of a day, and its middle."""
    start, end = midnight(day, zone), midnight(day + DAY, zone)
    return [row(zone, instant) for instant in (start - 1, start, (start + end) // 2, end - 1, end)]


def rows():
    for zone in CHANGING:
        day = datetime.date(2007, 1, 1)
        while day.year < 2028:
            start, end = midnight(day, zone), midnight(day + DAY, zone)
            if end - start != 86_400_000:
                found = around(zone, day)
                before, after = day - DAY, day + DAY
                found[2] |= {
                    "before": before.isoformat(),
                    "after": after.isoformat(),
                    "days": (after - before).days,
                    "hours": (midnight(after, zone) - midnight(before, zone)) // 3_600_000,
                }
                yield from found
            day += DAY
    for zone in STEADY:
        for text in ["2007-12-31", "2012-02-29", "2023-03-01", "2024-02-28", "2026-07-14", "2027-12-31"]:
            yield from around(zone, datetime.date.fromisoformat(text))
