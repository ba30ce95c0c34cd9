"""The small records that the contexts of all pages are made of; part of what a theme may use.

Everything here is ready to print: texts are in the journal's language, numbers carry their unit.
An *address* is one of the site ("/parts/turbo/", with an anchor or without) or a full URL; a
template turns it into a link by `href(address)`.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Link:
    """A text that leads somewhere."""

    text: str
    address: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PartRef:
    """A part as it is named on a page, with what became of it."""

    text: str
    address: str
    fate: str = ""
    """"replaced in episode 6 by fuel-pump-2: ran out at 0.9 bar"; empty while it is in use.

    A theme prints it wherever it prints the part.
    """
    mark: str = ""
    """The same in so few words that a sentence bears them, and that gives no story away: "until
    episode 6"; running text has it in the place of `fate`."""
    dropped: bool = False
    """True when the part is no longer part of the build; `fate` says how."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Number:
    """A figure with all that must stand beside it."""

    value: str
    """"110 kW"; empty when the figure is missing."""
    evidence: str
    """"measured", "estimated", "stated" or "assumed": printed wherever the value is."""
    band: str = ""
    """"88 to 139 kW"."""
    headline: str = ""
    """"highest, at 6,000 rpm"."""
    standard: str = ""
    """"not referred to any reference air", "by SAE J1349": every power names its standard."""
    limit: str = ""
    """"near its limit"; words, for a theme must not say it by colour alone."""
    kept: bool = True
    """False where the limit is near or passed, so that a theme may say why it is one."""
    passed: bool = False
    """True where the limit is passed."""
    limit_at: str = ""
    """"at most 85 %": stands beside the words."""
    limit_detail: str = ""
    """The same with its reason: "at most 85 %: above it the flow is no longer linear"."""
    address: str = ""
    """Of its workings."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FigureRow:
    """A figure as a row of a table."""

    title: str
    """"Injector duty"."""
    subject: Link | None
    """The part it is of; None for the engine."""
    now: Number | None
    """None when it cannot be worked out."""
    before: Number | None = None
    """What it was as at the episode before, where a page shows what moved."""
    inside: bool = False
    """True where it lies inside the band that it had before: a theme says so beside it."""
    missing: tuple[str, ...] = ()
    """What to give so that it can be worked out."""
    term: str = ""
    """Where the word of its title is explained; empty where it needs no explaining."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """A label and what stands beside it: one line of a form."""

    label: str
    text: str = ""
    number: Number | None = None
    links: tuple[Link, ...] = ()
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Margin:
    """What runs along the margin of every page: the episode, its date, the running total."""

    label: str
    """"Episode 3", or "As at episode 9" on pages about the whole journal."""
    address: str
    number: int
    date: str
    """When it was filmed; empty where the author does not say."""
    total: str
    """What the build has cost by then: "4,310.20 EUR"."""
    budget: str
    """"189.80 EUR left of the budget"; empty without a budget."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Picture:
    """A picture file of the site."""

    address: str
    width: int
    height: int
    text: str
    """What it shows, for a reader who cannot see it."""
    caption: str = ""
    narrow: Picture | None = None
    """The same drawn for a phone, where that makes a difference."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Chart:
    """A chart with its text alternative and its data."""

    address: str
    width: int
    height: int
    text: str
    caption: str
    data: Link
    narrow: Picture
    """The same chart drawn for a phone: a theme offers it where a sheet is narrow."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PlainTable:
    """A table of texts, with what has to be said beside it."""

    id: str
    heading: str
    lead: str
    caption: str
    header: tuple[str, ...]
    """The first column names the row."""
    rows: tuple[tuple[str, ...], ...]
    notes: tuple[str, ...] = ()
    chart: Chart | None = None
    """What stands ahead of the table."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """What every context has; the base template prints it."""

    heading: str
    """The page's one first-level heading."""
    margin: Margin
    contents: tuple[Link, ...] = ()
    """The sections of a long page, in order."""
    picture: Picture | None = None
    """What stands for the page where it is mentioned elsewhere."""
    before: Link | None = None
    """The page before this one in its sequence."""
    after: Link | None = None
    lead: str = ""
    """A sentence or two below the heading."""
