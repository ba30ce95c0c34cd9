"""A small journal of ends and joins, one of them a look-alike, and its pages."""

from __future__ import annotations

from pathlib import Path

from hoistbook.authored.journal import read_journal
from hoistbook.figures.figure import Figures
from hoistbook.figures.service import judged_joins
from hoistbook.history.fates import fates
from hoistbook.history.fold import fold
from hoistbook.history.money import ledger
from hoistbook.pages.bench import BenchContext, bench_page
from hoistbook.pages.desk import Desk
from hoistbook.pages.page import Material

BUILD = """\
format: 1
title: A test journal
parts:
  - part: block
    kind: engine
    ends: {oil gallery: 1/8 BSPT female}
"""
WRONG = """\
---
title: Wrong
got:
  - part: adapter
    came: given
    ends: {block end: 1/8 NPT male, hose end: -4 JIC male}
  - part: feed
    kind: oil feed
    came: given
    ends: {block end: -4 JIC female, turbo end: -4 JIC female}
  - part: studs
    kind: bolts
    name: Studs M8x1.25, class 10.9, with anti-seize
    came: given
    facts: {torque: 20 N m}
  - {part: pump, kind: fuel pump, came: given, facts: {current: 10 A}}
done:
  - fitted: [adapter, feed]
joins:
  - join: block oil gallery to adapter block end
    sealed with: taper-thread paste
  - adapter hose end to feed block end
---
"""
RIGHT = """\
---
title: Right
got:
  - part: taper
    came: given
    ends: {block end: 1/8 BSPT male, hose end: -4 JIC male}
  - {part: turbo-adapter, came: given, ends: {hose end: -4 JIC male}}
done:
  - took off: adapter
  - fitted: taper
joins:
  - block oil gallery to taper block end
  - taper hose end to feed block end
---
"""


def material(folder: Path, *episodes: str) -> Material:
    (folder / "episodes").mkdir()
    (folder / "build.yaml").write_text(BUILD)
    for number, text in enumerate(episodes, 1):
        (folder / f"episodes/{number:02}-test.md").write_text(text)
    read = read_journal(folder)
    assert read.journal is not None, read.problems
    states = fold(read.journal).states
    figures = tuple(Figures(episode=state.episode, figures=()) for state in states)
    return Material(
        journal=read.journal,
        episodes=read.journal.episodes,
        states=states,
        changes=((),) * len(states),
        fates=fates(states),
        ledger=ledger(read.journal, states).ledger,
        figures=figures,
        claims=(),
        comparisons=(),
        cautions=(),
        owed={},
        joins=tuple(map(judged_joins, states, figures)),
    )


def bench(desk: Desk) -> BenchContext:
    context = bench_page(desk).context
    assert isinstance(context, BenchContext)
    return context
