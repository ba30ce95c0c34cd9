"""What a journal cannot say about its parts: the whole message, its hint and its place."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from hoistbook.authored.records import Journal
from hoistbook.history.fold import fold

Written = Callable[..., Journal]

GOT = "got: ['Turbo, given', 'Stud, 4 off, given']"

CASES = {
    "a name that nothing has": (
        [GOT, "done: [{fitted: trubo}]"],
        "2:3 unknown-part: no part is called `trubo`",
        "did you mean `turbo`?",
    ),
    "a name that is like no other": (
        [GOT, "done: [{fitted: wastegate}]"],
        "2:3 unknown-part: no part is called `wastegate`",
        "write it down under `bought`, `got` or `made` first",
    ),
    "a part used before it is known": (
        ["done: [{fitted: turbo}]", GOT],
        "1:3 used-before-known: `turbo` is used in episode 1 and not known before episode 2",
        "move this line to episode 2, or write the part down in episode 1 or earlier",
    ),
    "a piece made further down in the same episode": (
        [
            """
            got: ['Tube, given']
            made:
              - {part: pipe, from: flange}
              - {part: flange, from: tube}
            """
        ],
        "1:5 used-before-known: `flange` is used before the line of this episode that writes it "
        "down",
        "within an episode the order is bought, got, made, done, joins, measured; and line after "
        "line within each of them",
    ),
    "two parts with one id": (
        [GOT, "bought: [{from: Shop, date: 2026-01-20, parts: ['Turbo, 9 EUR']}]"],
        "2:3 duplicate-part: two parts are called `turbo`: this one, and the one of episode 1 "
        "(episodes/01-test.md:3:7)",
        "give this one an id of its own, as `part: turbo-2`",
    ),
    "taken off before it was fitted": (
        [GOT, "done: [{took off: turbo}]"],
        "2:3 removed-before-fitted: `turbo` is taken off in episode 2 but is not on the car",
        "write `fitted: turbo` where it was fitted, or leave this line out",
    ),
    "fitted twice": (
        [GOT, "done: [{fitted: turbo}]", "done: [{fitted: turbo}]"],
        "3:3 fitted-twice: `turbo` is fitted since episode 2",
        "write `took off: turbo` where it came off, or leave this line out",
    ),
    "fitted after it was sold": (
        [GOT, "done: [{sold: turbo}]", "done: [{fitted: turbo}]"],
        "3:3 gone-before: `turbo` was sold in episode 2 and cannot be fitted in episode 3",
        "if it came back, or this is another one, write it down under `got` with an id of its own",
    ),
    "sold twice": (
        [GOT, "done: [{sold: turbo, for: 9 EUR}]", "done: [{sold: turbo, for: 9 EUR}]"],
        "3:3 gone-before: `turbo` was sold in episode 2 and cannot be sold in episode 3",
        "if it came back, or this is another one, write it down under `got` with an id of its own",
    ),
    "broken while only planned": (
        ["done: [{planned: 'Cooler, 80 EUR'}]", "done: [{broke: cooler}]"],
        "2:3 not-here-yet: `cooler` is only planned and cannot be broken",
        "write down how it came, under `bought` or `got`; a plan that is dropped is `scrapped`",
    ),
    "ordered although it is here": (
        [GOT, "done: [{ordered: turbo}]"],
        "2:3 already-here: `turbo` is on hand since episode 1 and cannot be ordered now",
        "if this is another one, give it an id of its own",
    ),
    "planned although it came in this very episode": (
        [GOT + "\ndone: [{planned: turbo}]"],
        "1:4 already-here: `turbo` is on hand since episode 1 and cannot be planned now",
        "if this is another one, give it an id of its own",
    ),
    "more sold than there are": (
        [GOT, "done: [{sold: stud, count: 5}]"],
        "2:3 more-than-there-are: 5 of `stud` cannot be sold: there are 4",
        "correct the count, or write down the others that were bought",
    ),
    "more taken off than are on": (
        [GOT, "done: [{fitted: stud, count: 1}]", "done: [{took off: stud, count: 2}]"],
        "3:3 more-than-there-are: 2 of `stud` cannot be taken off: there is 1",
        "correct the count, or write down the others that were bought",
    ),
    "more pieces used than there are": (
        [GOT, "made: [{part: rail, from: 3 off stud}]", "made: [{part: bar, from: 2 off stud}]"],
        "3:3 more-than-there-are: `bar` uses 2 of `stud`, and 1 of 4 is left",
        "correct the number, or write down the others that were bought",
    ),
    "made under an id that something has": (
        [GOT, "got: ['Stud 2, given']", "made: [{part: stud, from: turbo}]"],
        "3:3 duplicate-part: two parts are called `stud`: this one, and the one of episode 1 "
        "(episodes/01-test.md:3:23)",
        "give this one an id of its own, as `part: stud-3`",
    ),
    "planned under an id that something has": (
        [GOT, "done: [{planned: 'Turbo, 9 EUR'}]"],
        "2:3 duplicate-part: two parts are called `turbo`: this one, and the one of episode 1 "
        "(episodes/01-test.md:3:7)",
        "give this one an id of its own, as `part: turbo-2`",
    ),
    "made from what is only planned": (
        ["done: [{planned: 'Tube, 80 EUR'}]", "made: [{part: bar, from: tube}]"],
        "2:3 not-here-yet: `bar` is made from `tube`, which is only planned",
        "write it down under `bought`, `got` or `made` first",
    ),
    "made from itself": (
        ["made: [{part: bar, from: bar}]"],
        "1:3 made-from-itself: `bar` cannot be made from itself",
        "give what is made an id of its own, as `part: bar-changed`",
    ),
    "instead of itself": (
        [GOT, "done: [{fitted: turbo, instead of: turbo}]"],
        "2:3 replaces-itself: `turbo` cannot come instead of itself",
        "name the old part after `instead of:`; if it is a new one of the same sort, give it an "
        "id of its own",
    ),
    "instead of something, and nothing new": (
        [GOT, "done: [{sold: turbo, instead of: stud}]"],
        "2:3 misplaced-instead: `instead of` says what a new part replaces; nothing new comes "
        "when `turbo` is sold",
        "put `instead of` beside `planned`, `ordered`, `arrived` or `fitted` of the new part",
    ),
    "instead of a name that nothing has": (
        [GOT, "done: [{fitted: turbo, instead of: stut}]"],
        "2:3 unknown-part: no part is called `stut`",
        "did you mean `stud`?",
    ),
    "joined to what is not known yet": (
        [GOT, "joins: [turbo out to pipe in]", "got: ['Pipe, given']"],
        "2:3 used-before-known: `pipe` is used in episode 2 and not known before episode 3",
        "move this line to episode 3, or write the part down in episode 2 or earlier",
    ),
    "joined to what is gone": (
        [GOT, "done: [{sold: stud}]", "joins: [turbo out to stud a]"],
        "3:3 gone-before: `stud` was sold in episode 2 and cannot be joined in episode 3",
        "if it came back, or this is another one, write it down under `got` with an id of its own",
    ),
    "joined to what is only planned": (
        [GOT, "done: [{planned: 'Pipe, 9 EUR'}]", "joins: [turbo out to pipe in]"],
        "3:3 not-here-yet: `pipe` is only planned and cannot be joined",
        "write down how it came, under `bought` or `got`",
    ),
    "a receipt from after the next episode": (
        [
            """
            filmed: 2026-02-01
            bought: [{from: Shop, date: 2026-05-20, parts: ['Turbo, 9 EUR']}]
            """,
            "filmed: 2026-03-01",
        ],
        "1:4 receipt-after-episode: the receipt from Shop of 2026-05-20 is in episode 1, and "
        "episode 2 was filmed before it, on 2026-03-01",
        "correct the date, or move it to episode 2 or later",
    ),
    "a payment from after the next episode": (
        [
            "spent: [{what: Paint, amount: 9 EUR, date: 2026-05-20}]",
            "filmed: 2026-03-01",
        ],
        "1:3 receipt-after-episode: the payment for Paint of 2026-05-20 is in episode 1, and "
        "episode 2 was filmed before it, on 2026-03-01",
        "correct the date, or move it to episode 2 or later",
    ),
    "a kit that nothing is": (
        ["got: ['Bearing, with turbo-kit', 'Turbo kit 2, given']"],
        "1:3 unknown-part: no part is called `turbo-kit`",
        "did you mean `turbo-kit-2`?",
    ),
    "a link to a part that comes later": (
        ["summary: s\n---\nSee [it](part:turbo).\n", GOT],
        "1:5 used-before-known: `turbo` is used in episode 1 and not known before episode 2",
        "move this line to episode 2, or write the part down in episode 1 or earlier",
    ),
    "a link to a part that never comes": (
        [GOT + "\n---\nSee [it](part:tubro).\n"],
        "1:5 unknown-part: no part is called `tubro`",
        "did you mean `turbo`?",
    ),
}


@pytest.mark.parametrize(("episodes", "message", "hint"), CASES.values(), ids=CASES)
def test_a_contradiction_is_one_problem_with_place_and_hint(
    written: Written, episodes: list[str], message: str, hint: str
) -> None:
    (problem,) = fold(written(*episodes)).problems
    place = problem.place
    assert place is not None
    episode = int(place.file.removeprefix("episodes/").split("-")[0])
    assert f"{episode}:{place.line} {problem.code}: {problem.message}" == message
    assert problem.hint == hint


def test_all_contradictions_come_at_once(written: Written) -> None:
    problems = fold(
        written("done: [{fitted: a}, {fitted: b}]\n---\n[c](part:c)\n", "done: [{took off: d}]")
    ).problems
    assert [problem.message for problem in problems] == [
        f"no part is called `{name}`" for name in "abdc"
    ]


def test_what_is_merely_odd_is_no_problem(written: Written) -> None:
    folded = fold(
        written(
            """
            filmed: 2026-03-01
            bought: [{from: Shop, date: 2026-02-20, parts: ['Turbo, 9 EUR', 'Tube, used']}]
            done: [{broke: turbo}, {fitted: turbo}, {sold: turbo}, {tried: tube}]
            joins: [tube a to tube b]
            spent: ['Tea, 3 EUR', {what: Cake, amount: 4 EUR, date: 2026-02-21}]
            ---
            [The tube](part:tube), [torque](figure:torque).
            """,
            "filmed: 2026-02-25\ndone: [{arrived: tube}]",
        )
    )
    assert folded.problems == ()
