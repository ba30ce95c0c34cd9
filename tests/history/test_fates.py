"""What became of each part, as it stands beside the part on every page."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from hoistbook.authored.records import Journal
from hoistbook.history.fates import fates
from hoistbook.history.fold import fold
from hoistbook.pages.became import became
from hoistbook.pages.words import load_words

Written = Callable[..., Journal]

# What is done in episodes 2 and 3 with a box that was on the car and a pump that was given in
# episode 1; outcome, episode and words for the part named.
CASES = {
    "in use": ("pump", ["done: [{fitted: pump}]"], "in use", None, ""),
    "a tool": ("jack", [], "in use", None, ""),
    "what is worn": (
        "suit",
        ["got: [{part: suit, kind: clothing, name: Overalls, came: already owned}]"],
        "in use",
        None,
        "",
    ),
    "a planned tool": (
        "lift",
        ["done: [{planned: {part: lift, name: Lift, kind: tool}}]"],
        "not yet",
        2,
        "planned, not bought",
    ),
    "not yet": ("pump", [], "not yet", 1, "on hand, not fitted"),
    "planned": ("plan", ["done: [{planned: 'Plan, 9 EUR'}]"], "not yet", 2, "planned, not bought"),
    "ordered": (
        "plan",
        ["done: [{ordered: 'Plan, 9 EUR'}]"],
        "not yet",
        2,
        "ordered, not here yet",
    ),
    "replaced": (
        "box",
        ["done: [{fitted: pump, instead of: box, because: ran out at 0.9 bar}]"],
        "replaced",
        2,
        "replaced in episode 2 by Good pump: ran out at 0.9 bar",
    ),
    "replaced, then sold": (
        "box",
        [
            "done: [{fitted: pump, instead of: box, because: leaks}]",
            "done: [{sold: box, for: 5 EUR}]",
        ],
        "replaced",
        2,
        "replaced in episode 2 by Good pump; sold in episode 3 for 5 EUR: leaks",
    ),
    "sold, then replaced": (
        "box",
        ["done: [{sold: box}]", "done: [{fitted: pump, instead of: box}]"],
        "replaced",
        3,
        "sold in episode 2; replaced in episode 3 by Good pump",
    ),
    "sold": (
        "box",
        ["done: [{sold: box, for: 40 EUR, because: too big}]"],
        "gone",
        2,
        "sold in episode 2 for 40 EUR: too big",
    ),
    "given away": ("box", ["done: [{gave away: box}]"], "gone", 2, "given away in episode 2"),
    "sent back": (
        "pump",
        ["done: [{sent back: pump, for: 9.50 GBP, charged: 11 EUR}]"],
        "gone",
        2,
        "sent back in episode 2 for 9.50 GBP",
    ),
    "broken": (
        "box",
        ["done: [{broke: box, because: a stone}]"],
        "broken",
        2,
        "broke in episode 2: a stone",
    ),
    "one of several broken": (
        "studs",
        [
            "got: [{part: studs, name: Studs, count: 10, came: already owned}]\n"
            "done: [{fitted: studs}]",
            "done: [{broke: studs, count: 1, because: a dry torque}]",
        ],
        "in use",
        None,
        "broke in episode 3, 9 of 10 left",
    ),
    "broken, then scrapped": (
        "box",
        ["done: [{broke: box, because: a stone}]", "done: [{scrapped: box}]"],
        "gone",
        3,
        "broke in episode 2; scrapped in episode 3: a stone",
    ),
    "broken, then replaced and scrapped": (
        "box",
        [
            """
            done:
              - {broke: box, because: a stone}
              - {fitted: pump, instead of: box}
              - {scrapped: box}
            """
        ],
        "replaced",
        2,
        "broke in episode 2; replaced in episode 2 by Good pump; scrapped in episode 2: a stone",
    ),
    "taken off": (
        "box",
        ["done: [{took off: box, because: it rattled}]"],
        "taken off",
        2,
        "taken off in episode 2: it rattled",
    ),
    "tried": (
        "pump",
        ["done: [{tried: pump, because: too long}]"],
        "did not fit",
        2,
        "did not fit in episode 2: too long",
    ),
    "given up": (
        "plan",
        [
            "done: [{planned: 'Plan, 9 EUR'}]",
            "done: [{fitted: pump, instead of: plan, because: new wiring}]",
        ],
        "gone",
        3,
        "given up in episode 3 for Good pump: new wiring",
    ),
    "built in": (
        "pump",
        ["made: [{part: rig, name: Pump rig, from: pump}]", "done: [{fitted: rig}]"],
        "in use",
        2,
        "built into Pump rig in episode 2",
    ),
    "built in, not fitted": (
        "pump",
        ["made: [{part: rig, name: Pump rig, from: pump}]"],
        "not yet",
        2,
        "built into Pump rig in episode 2; Pump rig: on hand, not fitted",
    ),
    "built in, and that broke": (
        "pump",
        ["made: [{part: rig, from: pump}]", "done: [{fitted: rig}, {broke: rig}]"],
        "broken",
        2,
        "built into Rig in episode 2; Rig: broke in episode 3",
    ),
    "built in by pieces": (
        "stud",
        ["made: [{part: rig, from: 3 off stud}]\ndone: [{fitted: rig}]"],
        "in use",
        2,
        "built into Rig in episode 2, 1 of 4 left",
    ),
}


@pytest.mark.parametrize(
    ("part", "episodes", "outcome", "episode", "text"), CASES.values(), ids=CASES
)
def test_what_became_of_a_part(
    written: Written, part: str, episodes: list[str], outcome: str, episode: int | None, text: str
) -> None:
    journal = written(
        """
        got:
          - {part: pump, name: Good pump, came: given}
          - {part: jack, system: workshop, came: already owned}
          - Stud, 4 off, given
        """,
        *episodes,
        build="parts: [box]",
    )
    folded = fold(journal)
    assert folded.problems == ()
    fate = fates(folded.states)[part]
    said = became(load_words("en"), lambda money: f"{money.amount} {money.currency}", fate)
    assert (str(fate.outcome), fate.episode, said) == (outcome, episode, text)
    assert fate.dropped == (outcome not in ("in use", "not yet"))
