"""The yard's table of counts in a headless spreadsheet: python3 sheet.py TABLE.json, with the system's own Python, which has
the bridge to the spreadsheet (Debian: python3-uno, libreoffice-calc-nogui).

TABLE.json comes from tests/bench/decisions.rs: the lines of an invented operation, and what the almanac makes of them. The
spreadsheet gets the lines and formulas of its own (SUMIFS, MAXIFS, CHISQ.INV, HYPGEOM.DIST); what it makes of them must be
the same. Prints {"seconds": median of five recalculations, "cells": formulas, "compared": figures, "worst": difference}.
"""

import json
import pathlib
import statistics
import subprocess
import sys
import tempfile
import time

import uno
from com.sun.star.beans import PropertyValue
from com.sun.star.connection import NoConnectException

RUNS = 5
# A percent of a percent of a beetle: far below what is shown.
NEAR = 1e-6


def office(profile):
    """A spreadsheet program without a window, with a profile of its own, and the way to it."""
    pipe = f"almanac{time.time_ns()}"
    process = subprocess.Popen(
        [
            "soffice",
            "--headless",
            "--norestore",
            "--nologo",
            f"-env:UserInstallation=file://{profile}",
            f"--accept=pipe,name={pipe};urp;",
        ],
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
    )
    here = uno.getComponentContext()
    resolver = here.ServiceManager.createInstanceWithContext("com.sun.star.bridge.UnoUrlResolver", here)
    for _ in range(300):
        try:
            there = resolver.resolve(f"uno:pipe,name={pipe};urp;StarOffice.ComponentContext")
            return process, there.ServiceManager.createInstanceWithContext("com.sun.star.frame.Desktop", there)
        except NoConnectException:
            time.sleep(0.1)
    process.kill()
    sys.exit("the spreadsheet program does not answer")


def column(at):
    return (chr(64 + at // 26) if at >= 26 else "") + chr(65 + at % 26)


def fill(sheet, row, rows, formulas=False):
    """Cells from `row` on; a formula is one whichever letters the machine writes numbers in."""
    if not rows:
        return
    cells = sheet.getCellRangeByPosition(0, row, len(rows[0]) - 1, row + len(rows) - 1)
    if formulas:
        cells.setFormulaArray(tuple(tuple(line) for line in rows))
    else:
        cells.setDataArray(tuple(tuple(line) for line in rows))


def build(document, table):
    sheets = document.Sheets
    lines = sheets.getByIndex(0)
    lines.Name = "Lines"
    # Hive, day, beetles, trap-days; nothing counted is an empty cell.
    fill(lines, 0, [[hive, day, "" if count is None else count, days] for hive, day, count, days in table["lines"]])
    last = len(table["lines"])
    of = {name: f"$Lines.${letter}$1:${letter}${last}" for name, letter in zip(("hive", "day", "count", "days"), "ABCD")}
    sheets.insertNewByName("Hives", 1)
    hives = sheets.getByName("Hives")
    rows, seasons = [], table["seasons"]
    for at, hive in enumerate(table["hives"], 1):
        row = [str(hive), f"=MAXIFS({of['day']};{of['hive']};$A{at})", f"={table['today']}-$B{at}"]
        for first, final in seasons:
            within = f"{of['hive']};$A{at};{of['day']};\">={first}\";{of['day']};\"<={final}\""
            here = len(row)
            row += [f"=SUMIFS({of['count']};{within})", f"=SUMIFS({of['days']};{within})"]
            count, days = f"{column(here)}{at}", f"{column(here + 1)}{at}"
            row += [
                f"=IF({days}=0;-1;IF({count}=0;0;CHISQ.INV(0.025;2*{count})/2/{days}*100))",
                f"=IF({days}=0;-1;CHISQ.INV(0.975;2*({count}+1))/2/{days}*100)",
            ]
        rows.append(row)
    fill(hives, 0, rows, formulas=True)
    sheets.insertNewByName("Yard", 2)
    yard = sheets.getByName("Yard")
    # For each share the smallest number of hives to open, all of those affected being noticed.
    whole, most = len(table["hives"]), len(table["hives"])
    tries = [
        [str(opened)]
        + [f"=1-HYPGEOM.DIST(0;$A{opened};{-(-whole * share // 100)};{whole};0)" for share in table["shares"]]
        for opened in range(1, most + 1)
    ]
    fill(yard, 0, tries, formulas=True)
    smallest = [
        f"=COUNTIF({column(at)}1:{column(at)}{most};\"<0.95\")+1" for at in range(1, len(table["shares"]) + 1)
    ]
    fill(yard, most, [smallest], formulas=True)
    cells = len(rows) * (len(rows[0]) - 1) + len(tries) * len(table["shares"]) + len(smallest)
    return hives, yard, cells


def worst(hives, yard, table):
    """The largest difference between the spreadsheet's figures and the almanac's, and how many were compared."""
    width = 3 + 4 * len(table["seasons"])
    shown = hives.getCellRangeByPosition(0, 0, width - 1, len(table["hives"]) - 1).getDataArray()
    pairs = []
    for row, known in zip(shown, table["known"]):
        pairs += zip(row[1:], known)
    opened = yard.getCellRangeByPosition(0, len(table["hives"]), len(table["shares"]) - 1, len(table["hives"]))
    pairs += zip(opened.getDataArray()[0], table["to_open"])
    differences = []
    for one, other in pairs:
        if not isinstance(one, float):
            sys.exit(f"the spreadsheet shows {one!r} where the almanac has {other}")
        differences.append(abs(one - other) / max(1.0, abs(other)))
    return max(differences), len(differences)


def main():
    table = json.loads(pathlib.Path(sys.argv[1]).read_text(encoding="utf-8"))
    with tempfile.TemporaryDirectory() as profile:
        process, desktop = office(profile)
        try:
            hidden = PropertyValue(Name="Hidden", Value=True)
            document = desktop.loadComponentFromURL("private:factory/scalc", "_blank", 0, (hidden,))
            document.enableAutomaticCalculation(False)
            hives, yard, cells = build(document, table)
            times = []
            for _ in range(RUNS):
                begun = time.perf_counter()
                document.calculateAll()
                times.append(time.perf_counter() - begun)
            far, compared = worst(hives, yard, table)
            document.close(False)
        finally:
            process.terminate()
            process.wait(30)
    print(json.dumps({"seconds": statistics.median(times), "cells": cells, "compared": compared, "worst": far}))
    if far > NEAR:
        sys.exit(f"the spreadsheet and the almanac are {far} apart")


main()
