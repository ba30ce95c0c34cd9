"""The page of all claims: what did not hold first, each with its figure and its margin."""

from __future__ import annotations

from dataclasses import replace

from hoistbook.compare.verdicts import Result
from hoistbook.pages.claims import ClaimedRow, ClaimsContext, claims_page, score_of
from hoistbook.pages.desk import desk_of
from hoistbook.pages.page import Material
from tests.pages.sample import sample_material


def context(material: Material) -> ClaimsContext:
    made = claims_page(desk_of(material)).context
    assert isinstance(made, ClaimsContext)
    return made


def several() -> Material:
    """Return material with a claim of each result; the one that fails is the last written."""
    material = sample_material()
    (failed,) = material.claims
    holds = replace(
        failed, episode=1, result=Result.HOLDS, spare="15 points", across=False, margin=0.1
    )
    unknown = replace(
        failed, result=Result.UNKNOWN, found=None, spare="", across=False, why="Not known yet."
    )
    return replace(material, claims=(holds, unknown, failed))


def told(row: ClaimedRow) -> tuple[str, ...]:
    number = row.figure
    shown = f"{number.value} {number.evidence}, {number.band}" if number else row.why
    said = (row.episode.text, row.text, shown, row.margin, "across" if row.across else "")
    return tuple(each.replace("\N{NO-BREAK SPACE}", "_") for each in said)


def test_what_did_not_hold_comes_first_with_figure_band_and_margin() -> None:
    groups = context(several()).groups
    assert [(each.id, each.title, each.fails) for each in groups] == [
        ("does-not-hold", "Does not hold: 1 claim", True),
        ("cannot-tell", "Cannot tell: 1 claim", False),
        ("holds", "Holds: 1 claim", False),
    ]
    assert [told(row) for each in groups for row in each.rows] == [
        (
            "Episode 2",
            "injector duty below 85 %",
            "95_% estimated, 83 to 107_%",
            "missed by 10 points",
            "across",
        ),
        ("Episode 2", "injector duty below 85 %", "Not known yet.", "", ""),
        (
            "Episode 1",
            "injector duty below 85 %",
            "95_% estimated, 83 to 107_%",
            "15 points to spare",
            "",
        ),
    ]


def test_its_figure_leads_to_the_workings_as_at_its_own_episode() -> None:
    first, _, last = (each.rows[0] for each in context(several()).groups)
    assert first.figure is not None
    assert first.figure.address == "/workings/injector_duty/#engine-episode-2"
    assert last.address == "/workings/injector_duty/#engine-episode-0"


def test_the_score_counts_them_and_a_claim_of_an_episode_that_is_not_shown_is_none() -> None:
    assert score_of(desk_of(several())) == "1 holds, of 1 nobody can tell, 1 does not hold"
    hidden = replace(
        several(), claims=tuple(replace(each, episode=3) for each in several().claims)
    )
    assert score_of(desk_of(hidden)) == ""
    assert context(hidden).lead == "No episode claims anything yet."
