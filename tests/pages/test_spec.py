"""The spec sheet: the car as at one episode, bounded by the car."""

from __future__ import annotations

from hoistbook.authored.records import Given
from hoistbook.pages.desk import desk_of
from hoistbook.pages.spec import SpecContext, spec_pages
from tests.pages.sample import PLACE, sample_material

PAGES = {each.address: each for each in spec_pages(desk_of(sample_material()))}


def context(address: str) -> SpecContext:
    made = PAGES[address].context
    assert isinstance(made, SpecContext)
    return made


def fitted(address: str) -> list[tuple[str, str, str]]:
    return [
        (system.title, row.part.text, row.since.text)
        for system in context(address).systems
        for row in system.rows
    ]


def test_there_is_one_now_and_one_as_at_every_episode_the_car_as_bought_included() -> None:
    assert {address: page.title for address, page in PAGES.items()} == {
        "/spec/": "Spec sheet",
        "/spec/0/": "Spec sheet of the car as bought",
        "/spec/1/": "Spec sheet as at episode 1",
        "/spec/2/": "Spec sheet as at episode 2",
    }


def test_it_lists_the_parts_fitted_then() -> None:
    assert fitted("/spec/0/") == [("Induction", "Airbox", "As bought")]
    assert fitted("/spec/1/") == [
        ("Induction", "Airbox", "As bought"),
        ("Fuel", "Fuel pump", "Episode 1"),
    ]
    assert (
        fitted("/spec/2/")
        == fitted("/spec/")
        == [
            ("Induction", "Airbox", "As bought"),
            ("Fuel", "Larger fuel pump", "Episode 2"),
        ]
    )


def test_a_setting_says_since_when_it_holds_and_how_it_is_known() -> None:
    rows = {row.name: row for row in context("/spec/2/").settings}
    boost = rows["Boost"]
    assert (boost.value, boost.evidence, boost.since.text) == (
        "0.5\N{NO-BREAK SPACE}bar",
        "as set",
        "Episode 2",
    )
    # Words are no measurement, so nothing is said of how they are known.
    fuel = rows["Fuel"]
    assert (fuel.value, fuel.evidence, fuel.since.text) == ("petrol", "", "As bought")
    assert {row.name: row.value for row in context("/spec/1/").settings}["Boost"] == "none"


def test_what_a_maker_says_of_the_car_is_stated() -> None:
    rows = {row.name: row for row in context("/spec/2/").car}
    assert rows["Engine displacement"].evidence == "stated"
    assert rows["Driven wheels"].evidence == ""


def test_words_that_hold_numbers_say_how_they_are_known() -> None:
    desk = desk_of(sample_material())

    def known(words: str) -> str:
        return desk.evidence(Given(value=words, place=PLACE))

    assert [known("185/60 R14"), known("3.55 / 1.95 / 1.31"), known("front")] == [
        "stated",
        "stated",
        "",
    ]


def test_a_reading_has_unit_evidence_and_episode() -> None:
    (reading,) = context("/spec/").readings
    assert (reading.what, reading.values, reading.evidence, reading.since.text) == (
        "Compression",
        "12.1 / 12.3 / 12.0 / 12.2\N{NO-BREAK SPACE}bar",
        "measured",
        "Episode 2",
    )
    assert context("/spec/1/").readings == ()


def test_it_leads_to_the_others_and_not_to_itself() -> None:
    links = [(each.text, each.address) for each in context("/spec/1/").others]
    assert links == [
        ("its spec sheet", "/spec/"),
        ("As bought", "/spec/0/"),
        ("Episode 2", "/spec/2/"),
    ]


def test_a_join_names_both_parts_and_what_seals_it() -> None:
    (join,) = context("/spec/").joins
    assert (join.a.part.text, join.a.name, join.b.part.text, join.b.name) == (
        "Larger fuel pump",
        "outlet",
        "Bracket",
        "in",
    )
    assert (join.sealed_with, join.verdict) == ("two clips", "unknown")
    assert context("/spec/1/").joins == ()
