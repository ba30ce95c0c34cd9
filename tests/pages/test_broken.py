"""What broke: the table, and what a part's own page says of it."""

from __future__ import annotations

from dataclasses import replace

import pytest

from hoistbook.authored.records import Done, Verb
from hoistbook.history.state import PartState, Status
from hoistbook.pages.became import standing
from hoistbook.pages.broken import BrokenRow, broken_rows
from hoistbook.pages.changes import ChangesContext, changes_pages
from hoistbook.pages.desk import Desk, desk_of
from hoistbook.pages.home import HomeContext, home_page
from hoistbook.pages.part import PartContext, part_pages
from hoistbook.pages.words import load_words
from tests.pages.sample import FIRST, JOURNAL, PLACE, SECOND, part, sample_material


def done(verb: Verb, part_id: str, **more: object) -> Done:
    return Done(verb=verb, part=part_id, place=PLACE, **more)  # type: ignore[arg-type]


def desk(*second: Done, first: tuple[Done, ...] = ()) -> Desk:
    """Return the sample's desk with eight studs of ten fitted, and what else was done."""
    studs = part("stud", "Stud", system="engine", count=10)
    one = replace(
        FIRST, got=(studs,), done=(*FIRST.done, done(Verb.FITTED, "stud", count=8), *first)
    )
    two = replace(SECOND, done=(*second, *SECOND.done))
    return desk_of(sample_material(replace(JOURNAL, episodes=(one, two))))


def told(row: BrokenRow) -> tuple[str, ...]:
    by = row.by.text if row.by else row.otherwise
    cost = f"{row.cost.text} {row.cost.address}" if row.cost else ""
    said = (row.part.text, row.count, row.episode.text, row.date, row.because, by, cost)
    since = (row.since.text,) if row.since else ()
    return tuple(each.replace("\N{NO-BREAK SPACE}", "_") for each in (*said, *since))


BROKE_PUMP = done(Verb.BROKE, "pump", because="its winding burnt")


def test_a_part_that_broke_stands_with_the_reason_what_replaced_it_and_what_that_cost() -> None:
    assert [told(each) for each in broken_rows(desk(BROKE_PUMP))] == [
        (
            "Fuel pump",
            "",
            "Episode 2",
            "8 November 2025",
            "its winding burnt",
            "Larger fuel pump",
            "150.00_EUR /tally/#amount-pump-2",
        )
    ]


def test_a_part_that_is_replaced_later_says_in_which_episode() -> None:
    (row,) = broken_rows(desk(first=(BROKE_PUMP,)))
    assert told(row)[2:] == (
        "Episode 1",
        "11 October 2025",
        "its winding burnt",
        "Larger fuel pump",
        "150.00_EUR /tally/#amount-pump-2",
        "Episode 2",
    )


@pytest.mark.parametrize(
    ("lines", "by"),
    [
        ([], "nothing so far"),
        ([done(Verb.FITTED, "stud", count=1)], "a spare one of the same"),
    ],
)
def test_of_several_one_that_broke_is_counted_and_a_spare_takes_its_place(
    lines: list[Done], by: str
) -> None:
    broke = done(Verb.BROKE, "stud", count=1, because="a hot nut")
    (row,) = broken_rows(desk(broke, *lines))
    assert told(row) == ("Stud", "1 of 10", "Episode 2", "8 November 2025", "a hot nut", by, "")


def test_it_stands_at_the_top_of_the_changes_and_on_the_home_page() -> None:
    made = desk(BROKE_PUMP)
    (page,) = changes_pages(made)
    assert isinstance(page.context, ChangesContext)
    assert page.context.broken == broken_rows(made)
    assert (page.context.contents[0].text, page.context.contents[0].address) == (
        "What broke",
        "#broke",
    )
    home = home_page(made).context
    assert isinstance(home, HomeContext)
    (row,) = [each for each in home.rows if each.label == "What broke"]
    assert (row.text, row.links[0].address) == ("Fuel pump", "/changes/#broke")


def test_where_nothing_broke_nothing_is_said_of_it() -> None:
    (page,) = changes_pages(desk())
    assert isinstance(page.context, ChangesContext)
    assert page.context.broken == ()
    assert page.context.contents[0].text == "Episode 1"


def history(made: Desk, part_id: str) -> list[tuple[str, str]]:
    page = next(each for each in part_pages(made) if each.address == f"/parts/{part_id}/")
    assert isinstance(page.context, PartContext)
    return [(each.episode.text, each.what) for each in page.context.history]


def test_a_part_s_own_history_says_that_it_broke_though_it_was_replaced_and_scrapped() -> None:
    plain = tuple(replace(each, because=None) for each in SECOND.done)
    second = replace(SECOND, done=(BROKE_PUMP, *plain, done(Verb.SCRAPPED, "pump")))
    made = desk_of(sample_material(replace(JOURNAL, episodes=(FIRST, second))))
    assert history(made, "pump") == [
        ("Episode 1", "fitted"),
        ("Episode 2", "broke: its winding burnt; replaced by Larger fuel pump; scrapped"),
    ]


def test_pieces_that_are_fitted_spare_and_gone_add_up() -> None:
    broke = done(Verb.BROKE, "stud", count=1, because="a hot nut")
    made = desk(broke, done(Verb.FITTED, "stud", count=1))
    assert history(made, "stud") == [
        ("Episode 1", "8 fitted, 2 spare"),
        ("Episode 2", "broke: a hot nut; 8 fitted, 1 spare, 1 gone"),
    ]


@pytest.mark.parametrize(
    ("status", "fitted", "left", "text"),
    [
        (Status.FITTED, 10, 10, "fitted"),
        (Status.FITTED, 8, 10, "8 fitted, 2 spare"),
        (Status.FITTED, 9, 9, "9 fitted, 1 gone"),
        (Status.ON_HAND, 0, 10, "on hand"),
        (Status.ON_HAND, 0, 3, "3 on hand, 7 gone"),
    ],
)
def test_how_several_stand(status: Status, fitted: int, left: int, text: str) -> None:
    state = PartState(
        part=part("stud", "Stud", count=10),
        status=status,
        known_in=1,
        since=1,
        changed_in=1,
        pieces_left=left,
        pieces_fitted=fitted,
    )
    assert standing(load_words("en"), str, state) == text
