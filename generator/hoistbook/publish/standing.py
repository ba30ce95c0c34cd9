"""Remembers from which inputs the site that stands was written, so that it is not written twice.

This is the outermost cache: an entry holds for one set of inputs and one whole site, and is not
believed when either has changed.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from dataclasses import asdict
from pathlib import Path

from hoistbook.authored.offered import OURS
from hoistbook.problems import Notice, Place
from hoistbook.publish.cache import Cache, fingerprint, folder_fingerprint, program_fingerprint
from hoistbook.publish.swap import read_tree


def inputs_fingerprint(folder: Path) -> str:
    """Return one name for everything that the site of a journal depends on."""
    inputs = (program_fingerprint(), folder_fingerprint(OURS), folder_fingerprint(folder))
    return fingerprint("site", *inputs)


def remember_site(
    cache: Cache, inputs: str, tree: Mapping[str, bytes], notices: Iterable[Notice]
) -> None:
    """Remember what these inputs led to."""
    kept = {"site": _tree_fingerprint(tree), "notices": [asdict(each) for each in notices]}
    cache.keep(inputs, json.dumps(kept).encode())


def recall_site(cache: Cache, inputs: str, target: Path) -> tuple[Notice, ...] | None:
    """Return the notices of the site that stands, None when it is not what the inputs lead to."""
    kept = cache.read(inputs)
    if kept is None or not target.is_dir():
        return None
    entry = json.loads(kept)
    if entry["site"] != _tree_fingerprint(read_tree(target)):
        return None
    return tuple(_notice(each) for each in entry["notices"])


def _tree_fingerprint(tree: Mapping[str, bytes]) -> str:
    return fingerprint(*(part for path in sorted(tree) for part in (path, tree[path])))


def _notice(kept: dict[str, object]) -> Notice:
    place = kept.pop("place")
    return Notice(place=Place(**place) if isinstance(place, dict) else None, **kept)  # type: ignore[arg-type]  # as `asdict` wrote them
