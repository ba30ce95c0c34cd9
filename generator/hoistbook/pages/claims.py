"""The page of all claims: what did not hold first, each with its figure and margin."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from hoistbook.compare.verdicts import ClaimVerdict, Result
from hoistbook.pages import links
from hoistbook.pages.day import claim_in_words, claim_workings
from hoistbook.pages.desk import Desk
from hoistbook.pages.page import Page
from hoistbook.pages.shown import Link, Number, Sheet

FIRST_TO_LAST = (Result.FAILS, Result.UNKNOWN, Result.HOLDS)
"""What a reader looks for comes first."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ClaimedRow:
    """A claim as a row of the list; its figure is that of its own episode."""

    episode: Link
    text: str
    address: str
    """Of the workings of its figure; empty without."""
    figure: Number | None
    """The figure at the claim's conditions; None where there is none."""
    margin: str
    """"11 points to spare", "missed by 9 %"; empty without a figure."""
    across: bool
    """Whether the band reaches across the bound: a theme says so."""
    why: str
    """Why nobody can tell; empty where the figure says it all."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ResultGroup:
    """The claims of one result."""

    id: str
    title: str
    """"Does not hold: 1 claim"."""
    fails: bool
    rows: tuple[ClaimedRow, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ClaimsContext(Sheet):
    """`claims.html`: the claims of all episodes by their result."""

    groups: tuple[ResultGroup, ...]
    """Those with claims, what does not hold first."""


def claims_page(desk: Desk) -> Page:
    """Return the page of all claims."""
    words, groups = desk.words, tuple(_groups(desk))
    title = words("claims.title")
    return Page(
        address=links.CLAIMS,
        template="claims.html",
        title=title,
        description=words("claims.description", title=desk.material.journal.title),
        context=ClaimsContext(
            heading=title,
            margin=desk.margin(),
            lead=words("claims.lead") if groups else words("claims.none"),
            contents=tuple(Link(text=each.title, address=f"#{each.id}") for each in groups),
            groups=groups,
        ),
        owed=desk.owed(links.CLAIMS),
    )


def score_of(desk: Desk) -> str:
    """Return how the claims stand: "13 hold, 1 does not hold"; empty where there are none."""
    counts = ((result, len(_of(desk, result))) for result in reversed(FIRST_TO_LAST))
    return ", ".join(
        desk.words(f"claims.score.{_id(result)}", n=count) for result, count in counts if count
    )


def _of(desk: Desk, result: Result) -> tuple[ClaimVerdict, ...]:
    """Return the claims of one result in the episodes that are shown."""
    return tuple(
        each
        for each in desk.material.claims
        if each.result is result and each.episode in desk.episodes
    )


def _groups(desk: Desk) -> Iterator[ResultGroup]:
    for result in FIRST_TO_LAST:
        verdicts = _of(desk, result)
        if verdicts:
            yield ResultGroup(
                id=_id(result).replace("_", "-"),
                title=desk.words(f"claims.group.{_id(result)}", n=len(verdicts)),
                fails=result is Result.FAILS,
                rows=_rows(desk, verdicts),
            )


def _id(result: Result) -> str:
    return result.value.replace(" ", "_")


def _rows(desk: Desk, verdicts: Iterable[ClaimVerdict]) -> tuple[ClaimedRow, ...]:
    return tuple(_row(desk, each) for each in verdicts)


def _row(desk: Desk, verdict: ClaimVerdict) -> ClaimedRow:
    address = claim_workings(desk, verdict)
    key = "claims.missed" if verdict.result is Result.FAILS else "claims.to_spare"
    return ClaimedRow(
        episode=desk.episode(verdict.episode),
        text=claim_in_words(desk, verdict),
        address=address,
        figure=_figure(desk, verdict, address),
        margin=desk.words(key, spare=verdict.spare) if verdict.spare else "",
        across=verdict.across,
        why="" if verdict.found else verdict.why,
    )


def _figure(desk: Desk, verdict: ClaimVerdict, address: str) -> Number | None:
    """Return the figure of a claim without its own limit: here the claim's bound is the limit."""
    if verdict.found is None:
        return None
    return desk.number(replace(verdict.found, limit=None), address)
