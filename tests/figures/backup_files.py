"""What the general library jsonschema says to backup files by the schema of format 1, tests/fixtures/v1/backup.schema.json
(JSON Schema, draft 2020-12: json-schema.org/draft/2020-12). The library knows nothing of the almanac.

First one row a file: {file, entries, errors}. The last of them is too large to be kept: `make figures` has it written
before it asks. Then {places}: every field of every kind of entry in the fixture of format 1, each once, by a JSON pointer
(RFC 6901). Then one row a change, {change, accepted}: at which of these places the file may be changed so. At all others
the library refuses what comes of it.
"""

import copy
import json
import pathlib
import sys

import jsonschema

TESTS = pathlib.Path(__file__).parent.parent
FIXTURE = TESTS / "fixtures" / "v1" / "yard-backup-2026-07-14.json"
SCHEMA = json.loads((TESTS / "fixtures" / "v1" / "backup.schema.json").read_text(encoding="utf-8"))
FILES = [
    FIXTURE,
    TESTS / "figures" / "papers" / "backup.json",
    TESTS.parent / "target" / "figures" / "operation.json",
]
# What a place is changed to. None of it is the word, number or date that stands there.
VALUES = [None, True, -1, 2.5, 1e10, "", "furlong", "x" * 501, "2026-02-30", "14.07.2026", "1999-12-31", "demo-1", [], {}]
MISSING, UNKNOWN = "missing", "unknown field"


def validator():
    kind = jsonschema.Draft202012Validator
    kind.check_schema(SCHEMA)
    # Without these two a date that is none passes unseen.
    assert {"date", "date-time"} <= kind.FORMAT_CHECKER.checkers.keys()
    return kind(SCHEMA, format_checker=kind.FORMAT_CHECKER)


def places(value, pointer="", shape=""):
    """Every value inside, with its pointer and with its place in the format: the same for every entry and item."""
    if pointer:
        yield pointer, shape
    if isinstance(value, dict):
        for name, inside in value.items():
            yield from places(inside, f"{pointer}/{name}", f"{shape}/{name}")
    elif isinstance(value, list):
        for at, inside in enumerate(value):
            yield from places(inside, f"{pointer}/{at}", f"{shape}/*")


def each_once(file):
    seen = set()
    for pointer, shape in places(file):
        if shape not in seen:
            seen.add(shape)
            yield pointer


def changed(file, pointer, change):
    *way, last = pointer.split("/")[1:]
    file = copy.deepcopy(file)
    holder = file
    for name in way:
        holder = holder[int(name) if isinstance(holder, list) else name]
    last = int(last) if isinstance(holder, list) else last
    if change == {MISSING: True}:
        del holder[last]
    elif change == {UNKNOWN: True} and isinstance(holder[last], dict):
        holder[last]["colour"] = 1
    else:
        holder[last] = change
    return file


def rows():
    schema = validator()
    for path in FILES:
        if not path.exists():
            sys.exit(f"{path} is not there: `make figures` has it written")
        file = json.loads(path.read_text(encoding="utf-8"))
        errors = sum(1 for _ in schema.iter_errors(file))
        yield {"file": path.name, "entries": len(file["entries"]), "errors": errors}
    file = json.loads(FIXTURE.read_text(encoding="utf-8"))
    pointers = list(each_once(file))
    yield {"places": pointers}
    for change in [{MISSING: True}, {UNKNOWN: True}, *VALUES]:
        yield {"change": change, "accepted": [at for at in pointers if schema.is_valid(changed(file, at, change))]}
