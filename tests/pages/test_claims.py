"""The page of all claims: what did not hold first, each with its figure and its margin."""

from __future__ import annotations

from dataclasses import replace

from hoistbook.authored.records import Claim
from hoistbook.compare.verdicts import ClaimVerdict, Result
from hoistbook.figures.figure import Key
from hoistbook.pages.claims import ClaimedRow, ClaimsContext, claims_page, score_of
from hoistbook.pages.day import claim_in_words
from hoistbook.pages.desk import desk_of
from hoistbook.pages.page import Material
from tests.pages.sample import PLACE, quantity, sample_material


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
            "Injector duty, below 85_%",
            "95_% estimated, 83 to 107_%",
            "missed by 10 points",
            "across",
        ),
        ("Episode 2", "Injector duty, below 85_%", "Not known yet.", "", ""),
        (
            "Episode 1",
            "Injector duty, below 85_%",
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


def test_a_claim_is_printed_with_its_part_and_its_units_in_words() -> None:
    claim = Claim(
        text="velocity in hot-pipe between 20 and 100 m/s at charge temperature 60 degC +- 5 K",
        place=PLACE,
        quantity="velocity in hot-pipe",
        relation="between",
        bounds=(quantity(20, "m/s"), quantity(100, "m/s")),
        conditions={"charge temperature": quantity(60, "degC", half_width=5.0)},
    )
    verdict = ClaimVerdict(
        claim=claim,
        episode=2,
        result=Result.HOLDS,
        figure=Key("pipe_velocity", "hose"),
        margin=0.1,
        why="",
    )
    assert claim_in_words(desk_of(sample_material()), verdict).replace(
        "\N{NO-BREAK SPACE}", "_"
    ) == (
        "Velocity in the pipe of Fuel hose, 8 mm, between 20_m/s and 100_m/s, "
        "at charge temperature 60_°C ±_5_°C"
    )
    unknown = replace(verdict, figure=None)
    assert claim_in_words(desk_of(sample_material()), unknown) == claim.text


def test_a_figure_that_only_the_claim_has_leads_to_its_formula() -> None:
    material = sample_material()
    (claim,) = material.claims
    only = replace(claim, figure=Key(quantity="compressor_outlet_temperature", subject="engine"))
    (group,) = context(replace(material, claims=(only,))).groups
    assert [each.address for each in group.rows] == [
        "/workings/formulas/compressor/#formula-compressor_outlet_temperature"
    ]
