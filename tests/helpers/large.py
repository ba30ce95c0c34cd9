"""A journal of any size, invented, for what must stay small however long it grows."""

from __future__ import annotations

from pathlib import Path

SYSTEMS = (
    "induction",
    "charge air",
    "exhaust",
    "lubrication",
    "cooling",
    "fuel",
    "ignition",
    "electrical",
    "engine",
    "drivetrain",
    "chassis",
    "brakes",
    "body",
    "safety",
)

BUILD = """\
format: 1
title: A long build
currency: EUR
car:
  mass: 900 kg
  engine displacement: 1600 cc
settings:
  boost: none
"""


def large_journal(folder: Path, episodes: int, parts: int) -> Path:
    """Write a journal with so many parts spread over so many episodes, and return its folder.

    Every part is fitted in the episode that buys it, and half of them replace one of before.
    """
    journal = folder / f"long-{episodes}"
    (journal / "episodes").mkdir(parents=True)
    (journal / "build.yaml").write_text(BUILD, encoding="utf-8")
    each = parts // episodes
    for number in range(1, episodes + 1):
        numbers = range((number - 1) * each, number * each)
        file = journal / "episodes" / f"{number:02}-more-work.md"
        file.write_text(_episode(number, numbers, each), encoding="utf-8")
    return journal


def _episode(number: int, numbers: range, each: int) -> str:
    bought = "\n".join(
        f"      - {{part: part-{n}, name: 'Part number {n}', system: {SYSTEMS[n % len(SYSTEMS)]}, "
        f"paid: {n % 90 + 5} EUR, ends: {{outlet: {n % 40 + 6} mm barb}}}}"
        for n in numbers
    )
    done = "\n".join(
        f"  - {{fitted: part-{n}, instead of: part-{n - each}, because: the other one leaked}}"
        if n % 2 and n >= each
        else f"  - fitted: part-{n}"
        for n in numbers
    )
    return f"""\
---
episode: {number}
title: More work {number}
filmed: {2020 + number // 12}-{number % 12 + 1:02}-11
published: {2020 + number // 12}-{number % 12 + 1:02}-17
summary: Some parts came and were fitted.
settings:
  boost: {number / 100 + 0.1:.2f} bar gauge
bought:
  - from: Parts counter
    date: {2020 + number // 12}-{number % 12 + 1:02}-10
    postage: 5 EUR
    parts:
{bought}
done:
{done}
---
Some parts came. They were fitted.
"""
