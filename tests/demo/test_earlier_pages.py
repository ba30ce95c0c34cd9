"""What is changed in the demo's last episode reaches no earlier page, file or chart."""

from __future__ import annotations

import re
import shutil
from pathlib import Path

import pytest

from hoistbook.pipeline import build
from tests.journeys.test_write import CAR, SETTINGS

CONTENT = Path(__file__).resolve().parents[2] / "content"
LAST = "episodes/09-a-day-on-the-hill/episode.md"
OF_AN_EARLIER_EPISODE = re.compile(
    r"(episodes|spec)/[0-8]/|data/parts-list-episode-[0-8]|charts/\w+-episode-[0-8]"
)
"""Pages, copied lists and charts of the episodes before the last."""


# A weather report without a height leaves every estimate of the last episode without a number.
NO_NUMBER = "\n  sea level pressure: 1010 hPa\n"


@pytest.mark.parametrize("settings", [SETTINGS, NO_NUMBER], ids=["every key", "no number left"])
def test_every_key_of_car_and_settings_holds_from_its_episode_on(
    tmp_path: Path, settings: str
) -> None:
    journal = Path(shutil.copytree(CONTENT, tmp_path / "content"))
    before = build(journal).tree
    file = journal / LAST
    text = file.read_text("utf-8")
    text = re.sub(r"^car:\n(  .*\n)+", f"car:{CAR}", text, flags=re.MULTILINE)
    text = re.sub(r"^settings:\n(  .*\n)+", f"settings:{settings}", text, flags=re.MULTILINE)
    file.write_text(text, "utf-8")

    built = build(journal)

    assert built.problems == ()
    assert before is not None
    assert built.tree is not None
    earlier = [path for path in before if OF_AN_EARLIER_EPISODE.match(path)]
    assert len(earlier) > 50
    assert [path for path in earlier if built.tree.get(path) != before[path]] == []
