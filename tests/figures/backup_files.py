"""What the general library jsonschema says to backup files by the schema of their format, tests/fixtures/v1 to v4,
backup.schema.json (JSON Schema, draft 2020-12: json-schema.org/draft/2020-12). The library knows nothing of the almanac.

First one row a file: {file, version, entries, errors}. The last of them is too large to be kept: `make figures` has it
written before it asks. Then for each format {version, places}: every field of every kind of entry in its fixture, each
once, by a JSON pointer (RFC 6901). Then one row a change, {version, change, accepted}: at which of these places the file
may be changed so. At all others the library refuses what comes of it.
"""

import copy
import json
import pathlib
import sys

import jsonschema

TESTS = pathlib.Path(__file__).parent.parent
FIXTURES = {version: TESTS / "fixtures" / f"v{version}" for version in (1, 2, 3, 4)}
SCHEMAS = {
    version: json.loads((folder / "backup.schema.json").read_text(encoding="utf-8"))
    for version, folder in FIXTURES.items()
}
FIXTURE = "yard-backup-2026-07-14.json"
FILES = [
    FIXTURES[1] / FIXTURE,
    FIXTURES[2] / FIXTURE,
    FIXTURES[3] / FIXTURE,
    FIXTURES[4] / FIXTURE,
    TESTS / "figures" / "papers" / "backup.json",
    TESTS.parent / "target" / "figures" / "operation.json",
]
# What a place is changed to. None of it is the word, number or date that stands there.
VALUES = [None, True, -1, 2.5, 1e10, "", "furlong", "x" * 501, "2026-02-30", "14.07.2026", "1999-12-31", "demo-1", [], {}]
MISSING, UNKNOWN = "missing", "unknown field"


def validator(version):
    kind = jsonschema.Draft202012Validator
    kind.check_schema(SCHEMAS[version])
    # Without these two a date that is none passes unseen.
    assert {"date", "date-time"} <= kind.FORMAT_CHECKER.checkers.keys()
    return kind(SCHEMAS[version], format_checker=kind.FORMAT_CHECKER)


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
        # Of a record the shape is that of its blank.
        if "/record/" in shape:
            entry = file["entries"][int(pointer.split("/")[2])]
            shape = f"{entry['what']['record']['blank']}:{shape}"
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
    schemas = {version: validator(version) for version in FIXTURES}
    for path in FILES:
        if not path.exists():
            sys.exit(f"{path} is not there: `make figures` has it written")
        file = json.loads(path.read_text(encoding="utf-8"))
        version = file["version"]
        errors = sum(1 for _ in schemas[version].iter_errors(file))
        yield {"file": path.name, "version": version, "entries": len(file["entries"]), "errors": errors}
    for version, folder in FIXTURES.items():
        file = json.loads((folder / FIXTURE).read_text(encoding="utf-8"))
        pointers = list(each_once(file))
        yield {"version": version, "places": pointers}
        for change in [{MISSING: True}, {UNKNOWN: True}, *VALUES]:
            accepted = [at for at in pointers if schemas[version].is_valid(changed(file, at, change))]
            yield {"version": version, "change": change, "accepted": accepted}
