"""Makes what takes long in a process of its own, while this one goes on.

What is to be made and what came of it pass through files without a name, so neither process ever
waits for the other to read, and one that is killed leaves nothing behind. Where there is no second
process, or it fails, this one makes the same bytes itself, and meets the fault itself.
"""

from __future__ import annotations

import os
import pickle
import subprocess
import sys
from collections.abc import Callable, Iterator, Sequence
from contextlib import ExitStack, contextmanager
from functools import partial
from tempfile import TemporaryFile
from typing import IO, TypeVar

Made = TypeVar("Made")

WORTHWHILE = 12
"""Below so many calls, starting a process takes longer than making them here."""


@contextmanager
def made_apart(makes: Sequence[Callable[[], Made]]) -> Iterator[Callable[[], list[Made]]]:
    """Begin to make, and yield what waits for the results, in the order of the calls.

    Each call can be pickled, and gives the same whenever and wherever it is called.
    """
    if len(makes) < WORTHWHILE or os.cpu_count() == 1:
        yield partial(_made_here, makes)
        return
    with ExitStack() as files:
        try:
            asked, answered = (files.enter_context(TemporaryFile()) for _ in range(2))
        except OSError:  # Nothing but the site's own folder may be written to.
            yield partial(_made_here, makes)
            return
        worker = _started(makes, asked, answered)
        try:
            yield partial(_results, worker, makes, answered)
        finally:
            if worker is not None:
                worker.kill()
                worker.wait()


def _made_here(makes: Sequence[Callable[[], Made]]) -> list[Made]:
    return [make() for make in makes]


def _started(
    makes: Sequence[Callable[[], Made]], asked: IO[bytes], answered: IO[bytes]
) -> subprocess.Popen[bytes] | None:
    pickle.dump(makes, asked)
    asked.seek(0)
    try:
        return subprocess.Popen(
            # -P: a journal's folder is no place to import from.
            [sys.executable, "-P", "-m", __name__],
            stdin=asked,
            stdout=answered,
            stderr=subprocess.DEVNULL,
            # Ctrl-C is for the process that was started by hand; it ends this one.
            start_new_session=True,
        )
    except OSError:
        return None


def _results(
    worker: subprocess.Popen[bytes] | None,
    makes: Sequence[Callable[[], Made]],
    answered: IO[bytes],
) -> list[Made]:
    if worker is None or worker.wait() != 0:
        return _made_here(makes)
    answered.seek(0)
    results: list[Made] = pickle.load(answered)
    return results


if __name__ == "__main__":
    pickle.dump(_made_here(pickle.load(sys.stdin.buffer)), sys.stdout.buffer)
