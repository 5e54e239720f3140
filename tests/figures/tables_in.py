"""Tables as Python's csv module and pandas write them, in every dialect the page may meet: {writer, text, rows}, with the
rows as Python's csv module reads them back. The cells hold every mark that means something in one of them.
"""

import csv
import io

import pandas

ROWS = [
    ["yard", "hive", "day", "did", "level_found", "beetles", "note"],
    ["Mill", "1", "2026-05-04", "topped up", "40", "5", "plain"],
    ["Mill, lower", "2 \"blue\"", "2026-05-04", "replaced", "37.5", "0", "one; two\tthree"],
    ["Mühle", "小蜂箱", "2026-05-05", "as found", "", "", "first line\nsecond, \"quoted\" line"],
    ["", "4", "2026-05-06", "", "0", "12", "\"\""],
    ["Mill", "5", "2026-05-07", "spilled", "", "", " spaces "],
]


class Semicolons(csv.excel):
    delimiter = ";"


def written(**options):
    out = io.StringIO(newline="")
    csv.writer(out, **options).writerows(ROWS)
    return out.getvalue()


def by_pandas(**options):
    table = pandas.DataFrame(ROWS[1:], columns=ROWS[0])
    return table.to_csv(index=False, **options)


def read(text, delimiter):
    lines = io.StringIO(text.removeprefix("\ufeff"), newline="")
    return list(csv.reader(lines, delimiter=delimiter, strict=True))


def rows():
    texts = {}
    for name in ("excel", "excel-tab", "unix", Semicolons):
        label = name if isinstance(name, str) else "semicolons"
        delimiter = csv.get_dialect(name).delimiter if isinstance(name, str) else name.delimiter
        for quoting in ("QUOTE_MINIMAL", "QUOTE_ALL", "QUOTE_NONNUMERIC"):
            texts[f"csv {label} {quoting}"] = (delimiter, written(dialect=name, quoting=getattr(csv, quoting)))
    for end in ("\r\n", "\n", "\r"):
        texts[f"csv excel lines end in {end!r}"] = (",", written(dialect="excel", lineterminator=end))
    for delimiter in ",;\t":
        texts[f"pandas {delimiter!r}"] = (delimiter, by_pandas(sep=delimiter))
    texts["pandas quoted"] = (",", by_pandas(quoting=csv.QUOTE_ALL))
    texts["excel with a byte-order mark"] = (",", "\ufeff" + written(dialect="excel"))
    for writer, (delimiter, text) in texts.items():
        yield {"writer": writer, "delimiter": delimiter, "text": text, "rows": read(text, delimiter)}
