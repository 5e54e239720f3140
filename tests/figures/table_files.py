"""What Python's csv module and pandas read from the tables of tests/figures/papers: one row a table and reader. From
csv {file, reader, rows} with every cell as text, header first. From pandas {file, reader, count, numbers, days}: the
columns it takes for numbers by itself, and those that are days, each with its values; none where a cell is empty.
"""

import csv
import pathlib

import pandas

FOLDER = pathlib.Path(__file__).parent / "papers"


def by_csv(path):
    # The reader refuses a quote that is not closed and text after one that is.
    with path.open(encoding="utf-8-sig", newline="") as file:
        return {"rows": list(csv.reader(file, dialect="excel", strict=True))}


def by_pandas(path):
    table = pandas.read_csv(path, encoding="utf-8-sig")
    numeric = [name for name in table.columns if pandas.api.types.is_numeric_dtype(table[name]) and table[name].notna().any()]
    numbers = {name: [None if pandas.isna(value) else float(value) for value in table[name]] for name in numeric}
    days = {}
    for name in table.columns:
        if name in ("day", "since", "placed", "serviced"):
            parsed = pandas.to_datetime(table[name], format="%Y-%m-%d")
            days[name] = [value.date().isoformat() for value in parsed]
    return {"count": len(table), "numbers": numbers, "days": days}


def rows():
    for path in sorted(FOLDER.glob("*.csv")):
        for reader in (by_csv, by_pandas):
            yield {"file": path.name, "reader": reader.__name__} | reader(path)
