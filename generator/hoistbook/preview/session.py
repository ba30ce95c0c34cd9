"""Keeps a journal's site written and shown while its author works on it."""

from __future__ import annotations

import threading
from collections.abc import Callable, Iterator
from itertools import chain
from pathlib import Path

from hoistbook.authored.offered import OURS
from hoistbook.pipeline import Built, build, silent
from hoistbook.preview.problem_page import problem_page
from hoistbook.preview.serve import Shown, listen, serve
from hoistbook.preview.watch import watching
from hoistbook.writing import Written, cache_beside, write

_WAITING = {
    "index.html": b'<!doctype html><html lang="en"><head><meta charset="utf-8">'
    b"<title>Waiting</title></head><body><p>The site is being worked out. This page shows it as "
    b"soon as it is there.</p></body></html>"
}
"""Shown while there is no site yet."""


class Session:
    """One journal that is written and shown again after every change.

    Parameters
    ----------
    folder, target : Path
        The journal and the place of its written site.
    report : callable
        Is told what came of every build for the screen and of every write to the disk.
    """

    def __init__(
        self, folder: Path, target: Path, report: Callable[[Built | Written | Exception], None]
    ) -> None:
        self._folder = folder
        self._target = target
        self._report = report
        self.shown = Shown(_WAITING)

    def renew(self) -> None:
        """Build anew: first for the screen, unpublished episodes too, then for the disk."""
        built = build(self._folder, unpublished=True, cache=cache_beside(self._target))
        if built.tree is None:
            self.shown.stop_at(problem_page(built.problems, self._folder))
        else:
            self.shown.show(built.tree)
        self._report(built)
        if built.tree is not None:
            self._report(write(self._folder, self._target, silent))

    def keep_renewing(self, changes: Iterator[None]) -> None:
        """Build anew now and after every change; a full disk or a fault of ours ends nothing."""
        for _ in chain([None], changes):
            try:
                self.renew()
            except Exception as error:
                self._report(error)

    def run(self, port: int) -> None:
        """Show the site on this machine until it is stopped from the keyboard."""
        with listen(port) as listening, watching((self._folder, OURS)) as changes:
            # A daemon does not hold up the end when it waits for the next change.
            threading.Thread(target=self.keep_renewing, args=(changes,), daemon=True).start()
            serve(self.shown, listening)
