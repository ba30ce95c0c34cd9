"""The page of all cautions: each in full, with the episodes that call for it."""

from __future__ import annotations

from dataclasses import replace

import pytest

from hoistbook.cautions.caution import Owed
from hoistbook.pages.cautions import CautionsContext, cautions_page
from hoistbook.pages.desk import desk_of
from tests.pages.sample import FUEL, sample_material


def test_each_caution_stands_in_full_with_the_episodes_that_call_for_it() -> None:
    made = cautions_page(desk_of(sample_material())).context
    assert isinstance(made, CautionsContext)
    (fuel,) = made.cautions
    assert (fuel.id, fuel.title) == ("fuel", "Fuel")
    assert fuel.text == ("Take the pressure out first.", "Follow local codes.")
    assert [each.text for each in fuel.episodes] == ["Episode 1", "Episode 2"]
    assert fuel.otherwise == ""


@pytest.mark.parametrize(
    ("callers", "said"),
    [
        (
            ["/parts/"],
            "Called for by parts or figures of this journal, by the work of no episode so far.",
        ),
        (["/cautions/"], "Called for by nothing so far."),
    ],
)
def test_a_caution_that_no_episode_calls_for_says_so(callers: list[str], said: str) -> None:
    material = sample_material()
    owed = {address: (Owed(caution=FUEL, full=False, because=()),) for address in callers}
    made = cautions_page(desk_of(replace(material, owed=owed))).context
    assert isinstance(made, CautionsContext)
    assert [(each.episodes, each.otherwise) for each in made.cautions] == [((), said)]
