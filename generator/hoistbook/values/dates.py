"""Days and times of a video as authors write them."""

from __future__ import annotations

import re
from datetime import date

from hoistbook.values.slip import Slip


def parse_date(text: str) -> date | Slip:
    """Return the day written as 2026-02-14, or what is wrong with it.

    Examples
    --------
    >>> parse_date("2026-02-14")
    datetime.date(2026, 2, 14)
    >>> parse_date("14.2.2026").hint
    'write 2026-02-14'
    """
    match = re.fullmatch(r"(\d{4})-(\d{2})-(\d{2})", text, re.ASCII)
    if match is None:
        return Slip("bad-date", f"`{text}` is not a date", _date_hint(text))
    day = _day(*(int(piece) for piece in match.groups()))
    if day is None:
        return Slip(
            "bad-date",
            f"there is no day {text} in the calendar",
            "year, month, day: as 2026-02-14",
        )
    return day


MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")


def _day(year: int, month: int, day: int) -> date | None:
    try:
        return date(year, month, day)
    except ValueError:
        return None


def _date_hint(text: str) -> str:
    general = "year, month, day: as 2026-02-14"
    if text in ("no", "not yet", "soon", "tbd", "TBD"):
        return "leave the key out until the day is known"
    named = re.fullmatch(r"(?i)(\d{1,2})(?:st|nd|rd|th)?\.? ([a-z]{3})[a-z]*\.?,? (\d{4})", text)
    if named and named[2].lower() in MONTHS:
        text = f"{named[3]}-{MONTHS.index(named[2].lower()) + 1}-{named[1]}"
    match = re.fullmatch(r"(\d{1,4})[-./ ](\d{1,2})[-./ ](\d{1,4})", text, re.ASCII)
    if match is None:
        return general
    first, second, third = (int(piece) for piece in match.groups())
    readings = (
        [_day(first, second, third)]
        if first > 31
        else [_day(third, second, first), _day(third, first, second)]
    )
    days = sorted({str(day) for day in readings if day is not None and day.year >= 1900})
    return f"write {' or '.join(days)}" if days else general


def parse_timecode(text: str) -> int | Slip:
    """Return the seconds of a time in a video written m:ss or h:mm:ss.

    Examples
    --------
    >>> parse_timecode("4:10"), parse_timecode("1:02:03")
    (250, 3723)
    """
    match = re.fullmatch(r"(?:(\d{1,3}):)?(\d{1,3}):(\d{2})", text, re.ASCII)
    if match is None:
        return Slip("bad-time", f"`{text}` is not a time in a video", "minutes:seconds, as 4:10")
    hours, minutes, seconds = (int(piece or 0) for piece in match.groups())
    if seconds > 59 or (match.group(1) and minutes > 59):
        return Slip(
            "bad-time", f"`{text}` has more than 59 in its last places", "as 4:10 or 1:02:03"
        )
    return hours * 3600 + minutes * 60 + seconds
