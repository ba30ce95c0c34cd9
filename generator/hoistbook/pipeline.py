"""READ THIS FIRST: the stages in their order, from a folder of episodes to a written site.

Each stage is a pure function of frozen records; only reading (the first line) and writing (the
last function) touch the disk. A mistake in the record stops the line where it is met; what the
record says about the car never does.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from pathlib import Path

from hoistbook.authored.read import read_journal
from hoistbook.authored.records import Journal
from hoistbook.cautions.rules import CAUTIONS, owed_by_page
from hoistbook.compare.claims import claim_verdicts
from hoistbook.compare.runs import comparisons
from hoistbook.figures.catalogue import figures_of
from hoistbook.history.differences import differences, fates
from hoistbook.history.fold import fold
from hoistbook.history.money import ledger
from hoistbook.notices import notices_of
from hoistbook.pages.page import Material
from hoistbook.problems import Notice, Problem
from hoistbook.publish.tree import site_tree


@dataclass(frozen=True, slots=True, kw_only=True)
class Built:
    """All that comes of a folder; material and tree are None where a problem stopped the line."""

    problems: tuple[Problem, ...]
    notices: tuple[Notice, ...] = ()
    material: Material | None = None
    tree: dict[str, bytes] | None = None
    """The whole site, path by path."""


def build(folder: Path, *, unpublished: bool = False, tell: Callable[[str], None]) -> Built:
    """Return the whole site of a journal, in memory."""
    worked = work_out(folder, unpublished=unpublished, tell=tell)
    if worked.material is None:
        return worked
    tell("laying out the pages")
    tree, problems = site_tree(worked.material, folder)
    return replace(worked, problems=problems, tree=None if problems else tree)
