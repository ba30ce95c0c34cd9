"""Up to which boost a claim holds: the end that is said is where the claim itself turns."""

import re
from dataclasses import replace

import pytest

from hoistbook.compare.search import FINE, end_above, end_below
from hoistbook.compare.verdicts import Result
from tests.compare.test_claims import claim, gauge, verdict
from tests.figures.test_map_inputs import MAP, mapped


def test_the_end_of_a_simple_margin_is_found():
    assert end_above(lambda _: lambda boost: 123e3 - boost, 80e3) == pytest.approx(123e3, abs=FINE)
    assert end_below(lambda _: lambda boost: boost - 42e3, 80e3) == pytest.approx(42e3, abs=FINE)
    assert end_above(lambda _: lambda boost: 1.0, 80e3) is None
    assert end_below(lambda _: lambda boost: 1.0, 80e3) is None


@pytest.mark.parametrize("moves", [-0.3, 0.3])
def test_the_end_is_found_with_the_map_read_at_the_end(moves):
    # A margin of 120 kPa that what is read moves: with all read at the end, b = 120 + m (b - 80).
    end = (120e3 - moves * 80e3) / (1 - moves)

    def margin_at(read_at):
        return lambda boost: 120e3 + moves * (read_at - 80e3) - boost

    assert end_above(margin_at, 80e3) == pytest.approx(end, abs=3 * FINE)


def test_at_the_boost_that_is_said_a_claim_turns_where_a_map_gives_the_efficiency():
    falls = tuple(0.75 - 0.25 * (ratio - 1) for ratio in MAP.pressure_ratio)
    car = mapped(replace(MAP, efficiency=falls))

    def at(boost):
        return verdict(
            claim("compressor outlet temperature", "below", (110, "degC"), boost=gauge(boost)), car
        )

    said = re.search(r"stops holding at ([0-9.]+) bar gauge", at(0.4).why)
    assert said
    end = float(said[1])
    assert at(end - 0.01).result is Result.HOLDS
    assert at(end + 0.01).result is Result.FAILS
