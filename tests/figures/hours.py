"""Hours by the clock of a yard and their moments, by zoneinfo: {zone, shown, utc, back}. `shown` is what was written down,
`utc` its moment in UTC, the earlier one where two are possible, and `back` what the clock shows at that moment.

The hours around every change of the clocks of four zones from 2024 to 2028, those that are left out and those that come
twice among them, and hours of two zones that never change. The pinned tzdata package is read, never the computer's own
copy.
"""

import datetime
import zoneinfo

zoneinfo.reset_tzpath(to=[])
UTC = datetime.timezone.utc
CHANGING = ["America/New_York", "Europe/Berlin", "Australia/Sydney", "Australia/Lord_Howe"]
STEADY = ["Asia/Kathmandu", "Pacific/Kiritimati"]


def row(zone, shown):
    info = zoneinfo.ZoneInfo(zone)
    utc = min(shown.replace(tzinfo=info, fold=fold).astimezone(UTC) for fold in (0, 1))
    text = lambda at: at.replace(tzinfo=None).isoformat(timespec="minutes")
    return {"zone": zone, "shown": text(shown), "utc": text(utc), "back": text(utc.astimezone(info))}


def rows():
    for zone in CHANGING:
        info = zoneinfo.ZoneInfo(zone)
        day = datetime.datetime(2024, 1, 1)
        while day.year < 2029:
            offsets = {(day + datetime.timedelta(days=n)).replace(tzinfo=info).utcoffset() for n in (0, 1)}
            if len(offsets) > 1:
                for minute in (0, 59, 60, 89, 90, 105, 119, 120, 149, 150, 165, 179, 180, 181, 960, 1439):
                    yield row(zone, day + datetime.timedelta(minutes=minute))
            day += datetime.timedelta(days=1)
    for zone in STEADY:
        for text in ["2026-01-01T00:00", "2026-07-14T16:30", "2027-12-31T23:59"]:
            yield row(zone, datetime.datetime.fromisoformat(text))
