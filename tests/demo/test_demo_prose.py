"""What is typed in the demo's prose stands in its own lines: amounts, months and counts."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from hoistbook.authored.records import Episode, Journal
from hoistbook.history.state import Outcome
from hoistbook.pages.page import Material

CONTENT = Path(__file__).parents[2] / "content"
TYPED = re.compile(r"(\d[\d.,]*\d|\d) (EUR|GBP|USD|kW|N m|kg|bar|kPa|mm|V|L/h|cc/min)\b")
LINK = re.compile(r"\]\([^)]*\)")
REMARKS = {
    (2, "1.40 EUR"): "coins under the seat, and he says that he has not entered them",
    (2, "28 kg"): "942 kg less 914 kg",
    (4, "48.3 mm"): "the bends, whose line says 48.3 x 2.6 mm",
    (4, "40 mm"): "the longest branch against the shortest, which no line holds",
    (7, "34 kg"): "the gearbox, which nobody weighed for the journal",
    (7, "0.3 bar"): "0.8 bar less 0.5 bar",
    (8, "40 mm"): "the split in the elbow",
}
"""Amounts of the author's own that stand in no line, and what they are."""


def typed_in(episode: Episode) -> list[tuple[str, str]]:
    """Return number and unit of each amount in the prose, without the links' targets."""
    plain = " ".join(LINK.sub("]", episode.prose).split())
    return [(number.replace(",", ""), unit) for number, unit in TYPED.findall(plain)]


def lines_up_to(journal: Journal, number: int) -> str:
    """Return the authored lines, not the prose, of the car and all episodes up to one."""
    files = [CONTENT / each.file for each in journal.episodes if each.number <= number]
    fronts = [file.read_text(encoding="utf-8").split("\n---\n")[0] for file in files]
    return "\n".join([(CONTENT / "build.yaml").read_text(encoding="utf-8"), *fronts])


def stands(number: str, unit: str, lines: str) -> bool:
    exact = rf"(?<![\d.]){re.escape(number)}(?:\.?0+)? {re.escape(unit)}\b"
    return re.search(exact, lines.replace(",", "")) is not None


def test_every_amount_typed_in_the_prose_stands_in_a_line_by_then(journal: Journal) -> None:
    loose = {
        (episode.number, f"{number} {unit}")
        for episode in journal.episodes
        for number, unit in typed_in(episode)
        if not stands(number, unit, lines_up_to(journal, episode.number))
    }
    assert loose == set(REMARKS)


def test_a_month_that_leads_to_an_episode_is_the_month_in_which_it_was_filmed(
    journal: Journal,
) -> None:
    filmed = {each.number: each.filmed for each in journal.episodes}
    months = [
        (link.text, filmed[int(link.target)])
        for episode in journal.episodes
        for link in episode.links
        if link.kind == "episode" and link.text.istitle()
    ]
    assert len(months) >= 4
    assert [(text, day) for text, day in months if f"{day:%B}" != text] == []


def test_the_joins_are_as_many_as_episode_5_says(journal: Journal, material: Material) -> None:
    said = (
        "two for the exhaust, seven for the oil, six for the water, eight for the air, and two "
        "for the [small hose]"
    )
    (episode,) = (each for each in journal.episodes if each.number == 5)
    assert said in " ".join(LINK.sub("]", episode.prose).split())
    (joins,) = (
        joins
        for state, joins in zip(material.states, material.joins, strict=True)
        if state.episode == 5
    )
    made = {(join.a, join.b) for join in episode.joins}
    carried = [str(each.flow) for each in joins if (each.join.a, each.join.b) in made]
    flows = ("exhaust gas", "oil", "coolant", "charge air", "boost signal")
    assert tuple(carried.count(each) for each in flows) == (2, 7, 6, 8, 2)
    assert len(carried) == 25


@pytest.mark.parametrize(
    ("part", "bought", "left", "fitted"),
    [
        ("exhaust-nuts", 12, 12, 8),
        ("worm-drive-clamps-50-to-70-mm", 10, 10, 0),
        ("spring-clamps-16-mm", 8, 8, 4),
        ("fuel-hose-clamps-14-to-16-mm", 6, 6, 6),
    ],
)
def test_what_was_bought_by_the_bag_adds_up(
    part: str, bought: int, left: int, fitted: int, material: Material
) -> None:
    state = material.states[-1].parts[part]
    assert (state.part.count, state.pieces_left, state.pieces_fitted) == (bought, left, fitted)


def test_the_two_changes_of_mind_are_a_cooler_sent_back_and_a_pump_given_up(
    journal: Journal, material: Material
) -> None:
    fates = {part: material.fates[part] for part in ("cooler-deep", "fuel-pump-big")}
    assert [fate.outcome for fate in fates.values()] == [Outcome.REPLACED, Outcome.GONE]
    numbered = {each.number: " ".join(each.prose.split()) for each in journal.episodes}
    assert "That is my first change of mind" in numbered[4]
    assert "Second change of mind" in numbered[8]
