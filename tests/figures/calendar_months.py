"""Every month of 2000-2199 from Python's calendar: [year, month, days after 2000-01-01, weekday (Monday 0), length]."""

import calendar
import datetime


def rows():
    start = datetime.date(2000, 1, 1).toordinal()
    for year in range(2000, 2200):
        for month in range(1, 13):
            weekday, length = calendar.monthrange(year, month)
            yield [year, month, datetime.date(year, month, 1).toordinal() - start, weekday, length]
