"""Records that no careful author writes: whatever they say, a figure is a number or is missing."""

import math
from dataclasses import replace

from hypothesis import given as every
from hypothesis import settings as effort
from hypothesis import strategies as some

from hoistbook.authored.records import Given, Reading
from hoistbook.figures.figure import Figure
from hoistbook.figures.inputs import inputs_of
from hoistbook.figures.stage import estimates
from hoistbook.history.state import Dated
from hoistbook.values.quantity import Quantity
from tests.figures.states import CAR, PLACE, SETTINGS, TURBO_PARTS, given, quantity, state

SLIPS = (0.0, -1.0, 1e-6, 1e-3, 0.1, 1.0, 1.0, 1.0, 10.0, 1e3, 1e6)
"""Factors by which a number goes wrong: a lost sign, a wrong prefix, an unfinished one."""


def slipped(fact, factor):
    if not isinstance(fact.value, Quantity):
        return fact
    return Given(value=replace(fact.value, value=fact.value.value * factor), place=fact.place)


@some.composite
def odd_states(pick):
    def drawn(facts):
        kept = {key: pick(some.sampled_from(SLIPS)) for key in facts if pick(some.integers(0, 9))}
        return {key: slipped(facts[key], factor) for key, factor in kept.items()}

    boost = given(
        pick(some.sampled_from((0.1, 0.8, 3.0, 9.0))),
        "bar",
        reference=pick(some.sampled_from(("gauge", "absolute"))),
    )
    words = {
        "fuel": given(pick(some.sampled_from(("petrol", "ethanol blend 0 %", "tea")))),
        "regulator": given(pick(some.sampled_from(("fixed", "follows the manifold")))),
    }
    parts = {
        key: replace(part, part=replace(part.part, facts=drawn(part.part.facts)))
        for key, part in TURBO_PARTS.items()
    }
    return state(
        car=drawn(CAR) or CAR,
        settings=drawn(SETTINGS | {"boost": boost}) | words,
        parts=parts,
    )


@effort(max_examples=40, deadline=None, derandomize=True)
@every(odd_states())
def test_a_figure_is_a_number_with_its_band_or_says_what_to_give(odd):
    for each in estimates(inputs_of(odd)):
        if isinstance(each, Figure):
            assert all(map(math.isfinite, (each.value, each.low, each.high))), each.key
            assert each.low <= each.high
        else:
            assert each.give, each.key


def test_a_mass_that_was_read_in_words_leaves_the_number_that_stood_before():
    weighed = Reading(what="mass", values=(quantity(905, "kg"),), place=PLACE)
    words = Reading(what="mass", values=(), text="about as before", place=PLACE)
    readings = [Dated(value=weighed, episode=2), Dated(value=words, episode=3)]
    bases = inputs_of(state(readings=readings)).bases
    (found,) = [each for each in bases if each.key == "vehicle_mass"]
    assert (found.value, found.episode) == (905, 2)
