"""What every caution says: none is thin, and each defers to local codes and licensed practice."""

from __future__ import annotations

import pytest

from hoistbook.authored.kinds import kinds, systems
from hoistbook.authored.records import Verb
from hoistbook.cautions.caution import Caution
from hoistbook.cautions.subjects import WORKED_ON
from hoistbook.cautions.texts import CAUTIONS, RULES, Rule

HAZARDS = [
    "fuel",
    "ethanol",
    "hot-coolant",
    "hot-oil",
    "look-alikes",
    "lifting",
    "springs",
    "welding",
    "electrics",
    "brakes",
    "rotating-parts",
    "exhaust-gas",
    "power-runs",
    "compressed-air",
    "road-law",
    "competition-rules",
    "estimates",
]


def test_every_hazard_of_the_work_has_its_caution() -> None:
    assert [caution.id for caution in CAUTIONS] == HAZARDS


@pytest.mark.parametrize("caution", CAUTIONS, ids=HAZARDS)
def test_the_last_paragraph_defers_to_local_codes_and_licensed_practice(caution: Caution) -> None:
    last = caution.text[-1]
    assert "local codes" in last
    assert "licen" in last


@pytest.mark.parametrize("caution", CAUTIONS, ids=HAZARDS)
def test_a_caution_is_a_line_and_some_paragraphs_of_whole_sentences(caution: Caution) -> None:
    assert len(caution.line) <= 130
    assert len(caution.text) >= 3
    assert all(text.endswith(".") for text in (caution.line, *caution.text))
    assert not caution.title.endswith(".")


@pytest.mark.parametrize("rule", RULES, ids=HAZARDS)
def test_what_calls_for_a_caution_is_known_to_the_program(rule: Rule) -> None:
    assert {*rule.systems, *rule.fitted_systems} <= set(systems())
    assert set(rule.kinds) <= set(kinds())
    assert set(rule.measured) <= {"power run"}


def test_every_system_but_the_harmless_ones_calls_for_a_caution() -> None:
    called = {system for rule in RULES for system in (*rule.systems, *rule.fitted_systems)}
    assert set(systems()) - called == {"workshop"}


def test_no_caution_offers_a_setting() -> None:
    for caution in CAUTIONS:
        words = " ".join((caution.title, caution.line, *caution.text)).casefold()
        assert "safe boost" not in words
        assert not any(unit in words.split() for unit in ("bar", "psi", "kpa", "degrees"))


def test_each_word_for_something_done_is_known_to_be_work_or_not() -> None:
    assert set(Verb) - set(WORKED_ON) == {
        Verb.PLANNED,
        Verb.ORDERED,
        Verb.ARRIVED,
        Verb.SOLD,
        Verb.GAVE_AWAY,
        Verb.SENT_BACK,
        Verb.SCRAPPED,
    }
