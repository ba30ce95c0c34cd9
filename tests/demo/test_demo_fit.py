"""The demo's joins: one look-alike, noticed at its episode and gone after it is put right."""

from __future__ import annotations

from pathlib import Path

import pytest

from hoistbook.fit.verdict import Verdict
from hoistbook.pipeline import Built, work_out
from hoistbook.values.end_reading import parse_end

CONTENT = Path(__file__).resolve().parents[2] / "content"


@pytest.fixture(scope="module")
def demo() -> Built:
    return work_out(CONTENT, unpublished=True)


def test_the_oil_feed_is_noticed_in_the_episode_that_joins_it_wrongly(demo: Built) -> None:
    (notice,) = [each for each in demo.notices if each.code == "look-alike"]

    assert notice.episode == 5
    assert notice.message.startswith(
        "engine-block oil gallery to oil-adapter block end: looks right, do not join: 1/8 NPT"
    )


def test_it_is_gone_after_the_episode_that_puts_it_right(demo: Built) -> None:
    assert demo.material is not None
    alarms = [
        state.episode
        for state, joins in zip(demo.material.states, demo.material.joins, strict=True)
        if any(each.alarms for each in joins)
    ]
    assert alarms == [5]


def test_every_other_join_holds_or_says_what_is_missing(demo: Built) -> None:
    assert demo.material is not None
    last = {each.fit.verdict for each in demo.material.joins[-1]}

    assert last <= {Verdict.MATES, Verdict.WITH_SEALANT, Verdict.UNKNOWN}


def test_every_end_of_the_demo_is_clear(demo: Built) -> None:
    assert demo.material is not None
    unclear = {
        f"{part} {end.name}": parse_end(end.text).unclear
        for part, each in demo.material.states[-1].parts.items()
        for end in each.part.ends.values()
        if parse_end(end.text).unclear
    }
    assert unclear == {}
