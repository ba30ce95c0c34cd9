"""Writing a site to the disk, when what it would be written from has changed.

This stands apart from the stages because loading them and their libraries takes longer than to see
that nothing has changed; so they are loaded only where something has.
"""

from __future__ import annotations

import gc
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from hoistbook.problems import Notice, Problem
from hoistbook.publish.cache import Cache
from hoistbook.publish.standing import inputs_fingerprint, recall_site, remember_site
from hoistbook.publish.swap import only_writer, write_tree


@dataclass(frozen=True, slots=True, kw_only=True)
class Written:
    """What came of writing a site; where there are problems the old one still stands."""

    problems: tuple[Problem, ...]
    notices: tuple[Notice, ...]
    changed: bool = False
    """Whether another site stands now than before."""


def cache_beside(target: Path) -> Cache:
    """Return the cache that belongs to the site at a target."""
    return Cache(target.parent / ".cache")


@contextmanager
def _uncollected() -> Iterator[None]:
    """Let no cycles be looked for meanwhile: nearly all that a build makes is kept until its end.

    Looking through it again and again takes a tenth of a whole writing.
    """
    gc.disable()
    try:
        yield
    finally:
        gc.enable()


def write(folder: Path, target: Path, tell: Callable[[str], None]) -> Written:
    """Write the site of a journal in the place of the one that stands.

    Raises
    ------
    WriteError
        When another writer is at work, or the target holds something that is not ours.
    OSError
        When the disk refuses; the old site still stands.
    """
    with only_writer(target):
        cache = cache_beside(target)
        inputs = inputs_fingerprint(folder)
        standing = recall_site(cache, inputs, target)
        if standing is not None:
            return Written(problems=(), notices=standing)
        with _uncollected():
            from hoistbook.pipeline import build

            built = build(folder, cache=cache, tell=tell)
        if built.tree is None:
            return Written(problems=built.problems, notices=built.notices)
        tell("putting the site in place")
        changed = write_tree(built.tree, target)
        remember_site(cache, inputs, built.tree, built.notices)
        cache.trim()
        return Written(problems=(), notices=built.notices, changed=changed)
