"""The page of all cautions: each in full, with the episodes that call for it."""

from __future__ import annotations

from hoistbook.pages.cautions import CautionsContext, cautions_page
from hoistbook.pages.desk import desk_of
from tests.pages.sample import sample_material


def test_each_caution_stands_in_full_with_the_episodes_that_call_for_it() -> None:
    made = cautions_page(desk_of(sample_material())).context
    assert isinstance(made, CautionsContext)
    (fuel,) = made.cautions
    assert (fuel.id, fuel.title) == ("fuel", "Fuel")
    assert fuel.text == ("Take the pressure out first.", "Follow local codes.")
    assert [each.text for each in fuel.episodes] == ["Episode 1", "Episode 2"]
