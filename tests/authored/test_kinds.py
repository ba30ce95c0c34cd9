"""The table of kinds is whole: every system, every dimension and every range can be used."""

from __future__ import annotations

import pytest

from hoistbook.authored.facts import SHARE, WORDS
from hoistbook.authored.kinds import (
    Fact,
    car_facts,
    kinds,
    setting_facts,
    system_told_by,
    systems,
    word_lists,
)
from hoistbook.units import dimension, units_of
from hoistbook.values.name import to_id
from hoistbook.values.quantity import Quantity, parse_quantity

FACTS = [
    *(pytest.param(fact, id=f"{kind.name}: {fact.name}") for kind in kinds().values()
      for fact in kind.facts.values()),
    *(pytest.param(fact, id=fact.name) for fact in car_facts().values()),
    *(pytest.param(fact, id=fact.name) for fact in setting_facts().values()),
]  # fmt: skip


def test_there_are_kinds_of_every_system() -> None:
    assert {kind.system for kind in kinds().values()} == set(systems())
    assert len(systems()) == 17
    assert len(kinds()) >= 60


def test_names_are_plain_words() -> None:
    for name in kinds():
        assert to_id(name) == name.replace(" ", "-")


@pytest.mark.parametrize("fact", FACTS)
def test_a_fact_has_known_dimensions_and_a_range_of_them(fact: Fact) -> None:
    for name in fact.dimensions:
        assert name in (WORDS, SHARE, "number", "gauge or absolute", *word_lists()) or units_of(
            name
        )
    ends = [parse_quantity(end) for end in fact.usual.removesuffix(" or 0").split(" to ") if end]
    assert all(isinstance(end, Quantity) for end in ends)
    values = [end.value for end in ends if isinstance(end, Quantity)]
    assert values == sorted(values)
    dimensions = {dimension(end.unit) for end in ends if isinstance(end, Quantity)}
    allowed = {"ratio"} if {SHARE, "number"} & set(fact.dimensions) else set(fact.dimensions)
    assert dimensions <= allowed


@pytest.mark.parametrize(
    ("name", "system"),
    [
        ("Throttle elbow, 63 mm", "induction"),
        ("Standard exhaust manifold", "exhaust"),
        ("Spark plugs", "ignition"),
        ("Intercooler", "charge air"),
        # The longer word holds the shorter one.
        ("Brake cleaner", "workshop"),
        # Words of two systems, or of any, tell nothing.
        ("Fuel pump relay", None),
        ("Clutch and brake fluid", None),
        ("Turbo manifold", None),
        ("Boost gauge", None),
        # A word is whole: no spark in a sparkle, no fuse in a fuselage.
        ("Refuelling jug", None),
        ("Silicone hose, 51 mm", None),
    ],
)
def test_the_words_of_a_name_tell_a_system_only_where_they_agree(
    name: str, system: str | None
) -> None:
    assert system_told_by(name) == system


def test_no_kind_is_told_to_belong_elsewhere_by_its_own_name() -> None:
    for kind in kinds().values():
        for name in (kind.name, kind.title):
            assert system_told_by(name) in (None, kind.system)
