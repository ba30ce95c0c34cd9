"""The page of one episode: each of its contents, from the author's lines to what is printed."""

from __future__ import annotations

from dataclasses import replace

import pytest

from hoistbook.authored.records import Episode
from hoistbook.figures.figure import Figure
from hoistbook.pages.change_rows import change_table
from hoistbook.pages.desk import Desk, desk_of
from hoistbook.pages.episode import EpisodeContext, episode_page
from hoistbook.pages.video import clock
from hoistbook.values.evidence import Evidence
from tests.pages.sample import FIRST, JOURNAL, SECOND, sample_material

DESK = desk_of(sample_material())


def context(episode: Episode, desk: Desk = DESK) -> EpisodeContext:
    made = episode_page(desk, episode).context
    assert isinstance(made, EpisodeContext)
    return made


def plain(text: str) -> str:
    return text.replace("\N{NO-BREAK SPACE}", "_")


def test_its_sections_are_those_that_have_something_to_say() -> None:
    assert [each.address for each in context(FIRST).contents] == [
        "#bought",
        "#work",
        "#circuits",
        "#tally",
        "#changes",
        "#story",
        "#cautions",
    ]
    assert [each.text for each in context(SECOND).contents] == [
        "Video",
        "Bought",
        "Work",
        "Joins",
        "Circuits",
        "Tally",
        "What changed",
        "Figures that moved",
        "Decisions",
        "The story",
        "In charts",
        "Expected and got",
        "Claims",
        "Corrections",
        "Workings of what moved",
        "Cautions",
    ]


def test_the_margin_runs_with_the_episode() -> None:
    first, second = context(FIRST).margin, context(SECOND).margin
    assert [first.label, first.date, plain(first.total)] == [
        "Episode 1",
        "11 October 2025",
        "1,008.30_EUR",
    ]
    assert [second.label, second.date, plain(second.total)] == [
        "Episode 2",
        "8 November 2025",
        "1,253.30_EUR",
    ]


def test_chapters_and_captions_stand_beside_the_video_and_lead_into_it() -> None:
    video = context(SECOND).video
    assert video is not None
    assert (video.host, video.captions) == ("video.example", "/episodes/2/captions.vtt")
    assert [(each.time, each.text, each.address) for each in video.chapters] == [
        ("0:00", "On the bench", "https://video.example/watch?v=2&t=0"),
        ("4:10", "Fitting", "https://video.example/watch?v=2&t=250"),
    ]
    assert [(each.time, each.text) for each in video.transcript] == [
        ("0:00", "Two pumps."),
        ("1:04", "One hums."),
    ]
    assert context(FIRST).video is None


@pytest.mark.parametrize(
    ("seconds", "expected"), [(0, "0:00"), (59, "0:59"), (600, "10:00"), (7384, "2:03:04")]
)
def test_a_time_reads_as_on_the_clock_of_a_video(seconds: int, expected: str) -> None:
    assert clock(seconds) == expected


def test_a_receipt_prints_each_part_with_its_share_and_the_rate() -> None:
    first, second = context(FIRST).receipts[0], context(SECOND).receipts[0]
    rows = [
        (row.part.text, row.count, plain(row.price), plain(row.list_price), plain(row.total))
        for row in first.rows
    ]
    # 6.90 EUR of postage spread over 89.00 and 12.40 EUR by price: 6.06 and 0.84 EUR.
    assert rows == [
        ("Fuel pump", "", "89.00_EUR", "99.00_EUR", "95.06_EUR"),
        ("Fuel hose, 8 mm", "2 off", "12.40_EUR", "", "13.24_EUR"),
    ]
    assert [(row.label, plain(row.text)) for row in first.extras] == [("Postage", "6.90_EUR")]
    assert (plain(first.total), first.rate) == ("108.30_EUR", "")
    assert plain(second.total) == "150.00_EUR"
    assert "0.8 GBP" in second.rate


def test_a_discount_is_printed_as_what_it_takes_off() -> None:
    receipt = replace(FIRST.bought[0], discount=FIRST.bought[0].postage)
    journal = replace(JOURNAL, episodes=(replace(FIRST, bought=(receipt,)), SECOND))
    desk = desk_of(sample_material(journal))
    extras = context(journal.episodes[0], desk).receipts[0].extras
    assert [plain(each.text) for each in extras] == ["6.90_EUR", "\N{MINUS SIGN}6.90_EUR"]


def test_what_was_done_and_made_reads_as_on_a_job_sheet() -> None:
    made = context(SECOND)
    assert [(row.verb, row.parts[0].text, row.details, row.because) for row in made.done] == [
        ("Fitted", "Larger fuel pump", "instead of Fuel pump", "ran out at 0.5 bar")
    ]
    (cradle,) = made.made
    assert [each.text for each in cradle.pieces] == ["1 off Fuel hose, 8 mm"]
    assert (plain(cradle.hours), plain(made.work_total)) == ("1.5_h", "3.5_h")
    (reading,) = made.readings
    assert (reading.what, reading.when) == ("Compression", "before the work")


def test_changes_are_those_of_which_work_and_joins_do_not_tell() -> None:
    made = context(SECOND)
    assert [(row.what, row.parts, row.before, plain(row.after)) for row in made.changes] == [
        ("Boost", (), "none", "0.5_bar, as set")
    ]
    assert made.all_changes is not None
    assert made.all_changes.address == "/changes/#episode-2"


def test_all_changes_name_parts_and_say_what_an_end_was_joined_to() -> None:
    changes = change_table(DESK, DESK.changes[2], 1, DESK.part)
    rows = {(row.parts[0].text if row.parts else row.what): row for row in changes}
    assert rows["Fuel pump"].after == "replaced by Larger fuel pump"
    (joined,) = [row for row in changes if row.joined]
    assert joined.joined is not None
    assert (joined.parts[0].text, joined.what) == ("Larger fuel pump", "outlet")
    assert (joined.kind, joined.joined.part.text, joined.joined.end) == (
        "joined to",
        "Bracket",
        "in",
    )


def test_only_figures_that_read_otherwise_have_moved() -> None:
    (row,) = context(SECOND).figures
    assert row.now is not None
    assert row.before is not None
    assert (row.title, plain(row.before.value), plain(row.now.value)) == (
        "Injector duty",
        "70_%",
        "95_%",
    )
    assert (row.before.limit, row.now.limit) == ("within", "over its limit")
    assert context(FIRST).figures == ()


def test_the_prose_tells_a_figure_as_it_stood_at_an_earlier_episode() -> None:
    told = replace(SECOND, prose="[now](figure:injector_duty), [then](figure:injector_duty@1)")
    assert plain(context(told).prose) == (
        '<p><a href="../../workings/injector_duty/index.html#engine-episode-2">now 95_%</a>'
        ' (estimated), <a href="../../workings/injector_duty/index.html#engine-episode-0">then'
        " 70_%</a> (estimated, as at episode 1)</p>\n"
    )


def test_a_figure_as_at_an_episode_that_is_not_published_is_left_out() -> None:
    told = replace(SECOND, prose="[then](figure:injector_duty@7)")
    assert context(told).prose == "<p>then</p>\n"


def test_a_chart_that_the_prose_places_is_not_shown_again() -> None:
    made = context(SECOND)
    assert 'src="../../charts/power-episode-2.svg"' in made.prose
    assert [each.address for each in made.charts] == ["/charts/torque-episode-2.svg"]


def test_expected_and_got_stand_side_by_side_in_the_same_place() -> None:
    (run,) = context(SECOND).runs
    assert (run.place, run.standard) == ("at the wheels", "not referred to any reference air")
    assert plain(run.highest.value) == "66_kW"
    row = run.rows[-1]
    assert row.said_then is not None
    assert row.same_conditions is not None
    numbers = (row.said_then.value, row.same_conditions.value, row.measured.value)
    assert tuple(map(plain, numbers)) == ("68_kW", "65_kW", "66_kW")
    assert run.score == (
        "At 3 of these 3 speeds the measured power lies inside the band of what was estimated"
        " before the run."
    )


def test_the_rows_of_a_run_are_the_speeds_that_are_counted() -> None:
    (comparison,) = DESK.material.comparisons
    speeds = comparison.measured.speeds
    counted = replace(comparison, compared=speeds[1:], inside=1, out_of=2, said_then=None)
    (run,) = context(SECOND, desk_of(replace(DESK.material, comparisons=(counted,)))).runs
    assert [each.speed for each in run.rows] == [
        DESK.formats.quantity(each, "engine_speed") for each in speeds[1:]
    ]
    assert run.score == (
        "At 1 of these 2 speeds the measured power lies inside the band of what is estimated"
        " for the run's own boost, air and mixture."
    )


def test_a_claim_leads_to_the_workings_that_decide_it() -> None:
    (claim,) = context(SECOND).claims
    assert (plain(claim.text), claim.result) == ("Injector duty, below 85_%", "does not hold")
    assert claim.address == "/workings/injector_duty/#engine-episode-2"


def test_choices_corrections_and_neighbours_are_there() -> None:
    made = context(SECOND)
    (choice,) = made.decisions
    assert (choice.chose, choice.over, choice.because) == (
        "the larger",
        "two small ones",
        "one wire less",
    )
    assert [(each.label, each.text) for each in made.corrections] == [
        ("5 January 2026", "the pump gives 255 L/h, not 225")
    ]
    assert made.before is not None
    assert (made.before.text, made.before.address) == ("Episode 1: The first pump", "/episodes/1/")
    assert made.after is None


def test_an_unpublished_episode_says_so() -> None:
    assert not context(FIRST).unpublished
    assert context(replace(FIRST, published=None)).unpublished


def test_a_figure_whose_value_prints_alike_has_not_moved() -> None:
    material = sample_material()
    first, before, now = material.figures
    power, *rest = now.figures
    assert isinstance(power, Figure)

    def moved(power: Figure) -> list[str]:
        figures = (first, before, replace(now, figures=(power, *rest)))
        shown = episode_page(desk_of(replace(material, figures=figures)), SECOND).context
        assert isinstance(shown, EpisodeContext)
        return [row.title for row in shown.figures]

    # Another band, another speed and 0.2 kW are no news where 80 kW is printed still.
    alike = replace(power, value=80.2e3, low=72e3, high=88.5e3, at_speed=5900.0)
    assert moved(alike) == ["Injector duty"]
    assert moved(replace(power, value=85e3, low=76e3, high=94e3)) == [
        "Power at the crank",
        "Injector duty",
    ]


def test_a_figure_that_moved_inside_its_earlier_band_says_so() -> None:
    material = sample_material()
    first, before, now = material.figures
    was, *rest = before.figures
    power, *others = now.figures
    assert isinstance(power, Figure)
    assert isinstance(was, Figure)

    def inside(power: Figure, was: Figure = was) -> dict[str, bool]:
        figures = (
            first,
            replace(before, figures=(was, *rest)),
            replace(now, figures=(power, *others)),
        )
        shown = episode_page(desk_of(replace(material, figures=figures)), SECOND).context
        assert isinstance(shown, EpisodeContext)
        return {row.title: row.inside for row in shown.figures}

    # The injectors go from 70 % (64 to 76) to 95 %: that is news whatever the power does.
    at_the_end = replace(power, value=was.high)
    assert inside(at_the_end) == {"Power at the crank": True, "Injector duty": False}
    beyond = replace(power, value=was.high + 1e3)
    assert inside(beyond) == {"Power at the crank": False, "Injector duty": False}
    # What had no band cannot have moved inside it.
    exact = replace(was, value=85e3, low=85e3, high=85e3)
    assert inside(replace(power, value=84e3), exact)["Power at the crank"] is False
    # A measurement that comes after an estimate is held against it as well.
    measured = replace(power, value=was.high, evidence=Evidence.MEASURED)
    assert inside(measured)["Power at the crank"] is True
