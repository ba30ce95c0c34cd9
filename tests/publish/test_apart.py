"""What takes long is made by a second process, and by this one where there is none."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from functools import partial
from typing import Any

import pytest

from hoistbook.publish import apart
from hoistbook.publish.apart import WORTHWHILE, made_apart


def test_many_calls_are_made_by_another_process_in_their_order() -> None:
    calls = [partial(int, number) for number in range(WORTHWHILE)]

    with made_apart([*calls, os.getpid]) as made:
        *results, maker = made()

    assert results == list(range(WORTHWHILE))
    assert maker != os.getpid()


def test_few_calls_are_made_here() -> None:
    with made_apart([os.getpid] * (WORTHWHILE - 1)) as made:
        assert made() == [os.getpid()] * (WORTHWHILE - 1)


def test_calls_are_made_here_where_no_process_can_be_had(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "executable", "/nowhere/python")

    with made_apart([os.getpid] * WORTHWHILE) as made:
        assert made() == [os.getpid()] * WORTHWHILE


def test_calls_are_made_here_where_no_temporary_file_can_be_had(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    def refused() -> None:
        raise FileNotFoundError("No usable temporary directory")

    monkeypatch.setattr(apart, "TemporaryFile", refused)

    with made_apart([os.getpid] * WORTHWHILE) as made:
        assert made() == [os.getpid()] * WORTHWHILE


def test_a_call_that_fails_there_fails_here_as_it_would_have() -> None:
    with (
        made_apart([partial(divmod, 1, 0)] * WORTHWHILE) as made,
        pytest.raises(ZeroDivisionError),
    ):
        made()


def test_an_interrupted_run_leaves_no_process_behind(monkeypatch: pytest.MonkeyPatch) -> None:
    started: list[subprocess.Popen[bytes]] = []
    popen = subprocess.Popen

    def seen(*args: Any, **options: Any) -> subprocess.Popen[bytes]:
        started.append(popen(*args, **options))
        return started[-1]

    monkeypatch.setattr(subprocess, "Popen", seen)

    with pytest.raises(KeyboardInterrupt), made_apart([partial(time.sleep, 60)] * WORTHWHILE):
        raise KeyboardInterrupt

    assert [each.returncode for each in started] == [-signal.SIGKILL]
