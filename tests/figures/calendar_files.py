"""What two calendar libraries, icalendar and vobject, read from the files of tests/figures/papers: one row an event,
{file, reader, and the value of each property}. Neither library knows of the other or of the almanac.
"""

import pathlib

import icalendar
import vobject

FILES = [pathlib.Path(__file__).parent / "papers" / f"calendar-{number}.ics" for number in (1, 2)]


def rings(trigger, start):
    """Seconds from the beginning of the event, which the trigger counts or leaves to be counted from its moment."""
    return int((trigger - start if hasattr(trigger, "isoformat") else trigger).total_seconds())


def by_icalendar(data):
    calendar = icalendar.Calendar.from_ical(data)
    assert not calendar.errors and calendar["VERSION"] == "2.0", calendar.errors
    for event in calendar.walk("VEVENT"):
        assert not event.errors, event.errors
        alarms = event.walk("VALARM")
        yield {
            "uid": str(event["UID"]),
            "stamp": event.decoded("DTSTAMP").isoformat(),
            "sequence": int(event["SEQUENCE"]),
            "start": event.decoded("DTSTART").isoformat(),
            "end": event.decoded("DTEND").isoformat(),
            "summary": str(event["SUMMARY"]),
            "description": str(event.get("DESCRIPTION", "")),
            "status": str(event["STATUS"]),
            "transparency": str(event["TRANSP"]),
            "place": "LOCATION" in event or "GEO" in event,
            "alarms": [rings(alarm.decoded("TRIGGER"), event.decoded("DTSTART")) for alarm in alarms],
        }


def by_vobject(data):
    calendar = vobject.readOne(data.decode())
    for event in calendar.contents["vevent"]:
        event.validate(raiseException=True)
        alarms = event.contents.get("valarm", [])
        yield {
            "uid": event.uid.value,
            "stamp": event.dtstamp.value.isoformat(),
            "sequence": int(event.sequence.value),
            "start": event.dtstart.value.isoformat(),
            "end": event.dtend.value.isoformat(),
            "summary": event.summary.value,
            "description": event.description.value if hasattr(event, "description") else "",
            "status": event.status.value,
            "transparency": event.transp.value,
            "place": hasattr(event, "location") or hasattr(event, "geo"),
            "alarms": [rings(alarm.trigger.value, event.dtstart.value) for alarm in alarms],
        }


def rows():
    for path in FILES:
        for reader in (by_icalendar, by_vobject):
            for event in reader(path.read_bytes()):
                yield {"file": path.name, "reader": reader.__name__} | event
