"""What the demo's prose says of its numbers stands in its tables.

The prose has few typed numbers; each test names the sentence that it holds.
"""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

import pytest

from hoistbook.authored.records import BoostBySpeed, Journal
from hoistbook.figures.figure import Figure
from hoistbook.history.ledger import Stage
from hoistbook.pages.day import done_of
from hoistbook.pages.desk import desk_of
from hoistbook.pages.page import Material
from hoistbook.pipeline import work_out

CONTENT = Path(__file__).parents[2] / "content"


def figure(material: Material, quantity: str, episode: int) -> Figure:
    (at,) = (each for each in material.figures if each.episode == episode)
    found = at.get(quantity, "engine")
    assert isinstance(found, Figure)
    return found


def share_of_the_estimate(material: Material, episode: int) -> Sequence[float]:
    """Return measured over what was estimated before the run, at the speeds compared."""
    (run,) = (each for each in material.comparisons if each.episode == episode)
    assert run.said_then is not None
    assert run.inside == run.out_of > 0
    measured = dict(zip(run.measured.speeds, run.measured.values, strict=True))
    said = dict(zip(run.said_then.speeds, run.said_then.values, strict=True))
    return [measured[speed] / said[speed] for speed in run.compared]


def test_the_first_run_lies_something_like_a_tenth_under_the_middle_and_more_at_the_top(
    material: Material,
) -> None:
    shares = share_of_the_estimate(material, 2)
    assert all(0.82 < each < 0.95 for each in shares)
    assert shares[-1] == min(shares)


def test_at_half_a_bar_it_is_a_little_below_the_middle_at_most_speeds(material: Material) -> None:
    shares = share_of_the_estimate(material, 7)
    assert all(0.93 < each < 1.03 for each in shares)
    assert sum(each < 1 for each in shares) > len(shares) / 2


def test_at_the_last_run_it_is_near_the_middle(material: Material) -> None:
    assert all(0.90 < each < 1.06 for each in share_of_the_estimate(material, 8))


@pytest.mark.parametrize(("episode", "speed"), [(2, 5600), (7, 5700), (8, 5800)])
def test_power_is_highest_near_the_speed_that_is_told(
    material: Material, episode: int, speed: float
) -> None:
    assert figure(material, "wheel_power", episode).at_speed == pytest.approx(speed, abs=50)


def test_the_hump_of_torque_is_around_3200(material: Material) -> None:
    assert figure(material, "wheel_torque", 2).at_speed == pytest.approx(3200, abs=100)


@pytest.mark.parametrize(
    ("quantity", "before", "after", "ratio", "within"),
    [
        ("engine_air_flow", 3, 8, 1.75, 0.1),  # "roughly three quarters more"
        ("fuel_flow", 7, 8, 1.2, 0.05),  # "a fifth more fuel"
        ("wheel_torque", 2, 7, 1.5, 0.05),  # "half as much torque again"
    ],
)
def test_how_much_more_is_told_is_so(
    material: Material, quantity: str, before: int, after: int, ratio: float, within: float
) -> None:
    more = figure(material, quantity, after).value / figure(material, quantity, before).value
    assert more == pytest.approx(ratio, abs=within)


def test_ten_studs_were_bought_eight_are_on_one_broke_and_one_is_left(material: Material) -> None:
    studs = material.states[-1].parts["exhaust-studs"]
    assert (studs.part.count, studs.pieces_left, studs.pieces_fitted) == (10, 9, 8)


def test_both_spare_bends_are_still_on_the_shelf(material: Material) -> None:
    assert material.states[-1].parts["bend-48"].pieces_left == 2


def test_the_budget_went_between_the_tow_eyes_and_the_tyres(material: Material) -> None:
    spent = [each for each in material.ledger.entries if each.stage is Stage.SPENT]
    before = sum(each.home for each in spent if each.episode < 9)
    of_the_day = [each for each in spent if each.episode == 9 and each.day is not None]
    of_the_day.sort(key=lambda each: str(each.day))
    parts = [each.part for each in of_the_day]
    upto = {
        name: before + sum(each.home for each in of_the_day[: parts.index(name) + 1])
        for name in ("tow-eyes", "tyres")
    }
    assert upto["tow-eyes"] < 6000 < upto["tyres"]


def test_the_big_pump_was_given_up_for_it_was_never_there_to_be_scrapped(
    journal: Journal, material: Material
) -> None:
    (episode,) = (each for each in journal.episodes if each.number == 8)
    desk = desk_of(material)
    verbs = {
        part.text: row.verb for row in done_of(desk, episode, desk.part) for part in row.parts
    }
    assert verbs["In-tank fuel pump, 255 L/h class"] == "Gave up"
    assert verbs["Fuel pump, original"] == "Scrapped"


def test_every_figure_that_the_prose_names_prints_a_number() -> None:
    built = work_out(CONTENT, unpublished=True)
    assert [each.message for each in built.notices if each.code == "no-number"] == []


def test_the_boost_is_a_third_by_2500_three_quarters_by_3000_and_less_at_the_limiter(
    journal: Journal,
) -> None:
    (episode,) = (each for each in journal.episodes if each.number == 6)
    boost = episode.settings["boost"]
    assert isinstance(boost, BoostBySpeed)
    shares = dict(zip(boost.speeds, [each.value / 50e3 for each in boost.pressures], strict=True))
    assert shares[2500] == pytest.approx(1 / 3, abs=0.05)
    assert shares[3000] == pytest.approx(3 / 4, abs=0.05)
    assert (shares[3500], shares[5500]) == (1, 1)
    assert 0.9 < shares[6300] < 1
