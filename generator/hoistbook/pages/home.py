"""The home page: one paragraph and one ruled table."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from hoistbook.compare.verdicts import Comparison
from hoistbook.figures.figure import Figure
from hoistbook.history.state import Change
from hoistbook.pages import links
from hoistbook.pages.broken import broken_rows
from hoistbook.pages.change_rows import change_rows, sentence_of
from hoistbook.pages.claims import score_of
from hoistbook.pages.desk import Desk
from hoistbook.pages.page import Page
from hoistbook.pages.pictures import poster_of
from hoistbook.pages.runs import highest_printed, standard_shown
from hoistbook.pages.shown import Entry, Link, Number, Sheet


@dataclass(frozen=True, slots=True, kw_only=True)
class HomeContext(Sheet):
    """`home.html`: what car and goal, how far along, what it cost and makes, what is new."""

    about: str
    rows: tuple[Entry, ...]


MOST_NAMED = 5
"""Of what broke, the latest so many."""


def home_page(desk: Desk) -> Page:
    """Return the home page."""
    journal = desk.material.journal
    latest = desk.episodes.get(desk.last)
    return Page(
        address=links.HOME,
        template="home.html",
        title=journal.title,
        description=journal.about or journal.goal or desk.words("home.description"),
        context=HomeContext(
            heading=journal.title,
            margin=desk.margin(),
            picture=poster_of(journal, latest) if latest else None,
            about=journal.about or "",
            rows=tuple(_rows(desk)),
        ),
        owed=desk.owed(links.HOME),
    )


def _rows(desk: Desk) -> Iterator[Entry]:
    words, journal = desk.words, desk.material.journal
    if journal.car_name:
        yield Entry(label=words("home.car"), text=journal.car_name, links=(desk.spec_sheet(),))
    if journal.goal:
        yield Entry(label=words("home.goal"), text=journal.goal)
    latest = desk.episodes.get(desk.last)
    if latest:
        yield Entry(
            label=words("home.so_far"),
            text=words("home.episodes", n=len(desk.episodes)),
            links=(Link(text=latest.title, address=links.episode(latest.number)),),
            note=desk.formats.date(latest.filmed) if latest.filmed else "",
        )
    yield _cost(desk)
    yield from _makes(desk)
    yield from _claims(desk)
    yield from _broke(desk)
    yield from _latest_change(desk)


def _cost(desk: Desk) -> Entry:
    tally = desk.tallies[desk.last]
    return Entry(
        label=desk.words("home.cost"),
        text=desk.home_money(tally.spent),
        links=(Link(text=desk.words("home.to_tally"), address=links.TALLY),),
        note=desk.of_budget(tally, "home"),
    )


def _makes(desk: Desk) -> Iterator[Entry]:
    """Say what it makes: as measured where a run says so, and as estimated for now."""
    runs = desk.material.comparisons
    if runs:
        yield _measured(desk, runs[-1])
    power = desk.figures[desk.last].get("power")
    if isinstance(power, Figure) and not (runs and runs[-1].episode == desk.last):
        yield Entry(
            label=desk.words("home.estimated"),
            number=replace(desk.number(power), standard=""),
            note=f"{desk.words('home.at_crank')}, {desk.number(power).standard}",
        )


def _measured(desk: Desk, run: Comparison) -> Entry:
    highest, speed = highest_printed(desk, run)
    return Entry(
        label=desk.words("home.makes"),
        number=Number(
            value=highest.value,
            band=highest.band,
            evidence=highest.evidence,
            headline=desk.words(
                "home.highest", speed=desk.formats.quantity(speed, "engine_speed")
            ),
            address=f"{links.episode(run.episode)}#power",
        ),
        note=", ".join(
            (
                desk.words(f"run.at_{run.run.at}"),
                standard_shown(desk, run, printed=True),
                desk.episode(run.episode).text,
            )
        ),
    )


def _claims(desk: Desk) -> Iterator[Entry]:
    score = score_of(desk)
    if score:
        yield Entry(
            label=desk.words("claims.title"),
            text=score,
            links=(Link(text=desk.words("claims.all"), address=links.CLAIMS),),
        )


def _broke(desk: Desk) -> Iterator[Entry]:
    rows = broken_rows(desk)
    if rows:
        yield Entry(
            label=desk.words("broke.title"),
            text="; ".join(row.part.text for row in rows[-MOST_NAMED:]),
            links=(Link(text=desk.words("broke.link"), address=links.BROKE),),
        )


def _latest_change(desk: Desk) -> Iterator[Entry]:
    for number in reversed(tuple(desk.changes)):
        changes = sorted(desk.changes[number], key=_weight)
        if changes:
            (row,) = change_rows(desk, changes[:1], desk.before(number))
            yield Entry(
                label=desk.words("home.latest"),
                text=sentence_of(desk, row),
                links=(desk.episode(number),),
            )
            return


_WEIGHTS = ("replaced", "set", "fitted", "broke", "taken off", "gone", "came", "ordered")
"""Of several changes in one episode, the one that says most about the car comes first."""


def _weight(change: Change) -> int:
    return _WEIGHTS.index(change.kind) if change.kind in _WEIGHTS else len(_WEIGHTS)
