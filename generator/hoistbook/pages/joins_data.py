"""Joins as data: each once, for as long as it held with one verdict under one service."""

from __future__ import annotations

from hoistbook.fit.joins import JoinVerdict
from hoistbook.fit.verdict import MakeUp
from hoistbook.pages.csv_table import Cell, Table
from hoistbook.pages.desk import Desk

COLUMNS = (
    "part",
    "end",
    "end in full",
    "other part",
    "other end",
    "other end in full",
    "carries",
    "gauge pressure in bar",
    "temperature in degC",
    "verdict",
    "why",
    "to add",
    "sealed with",
    "how tight",
    "torque here",
    "source of how tight",
    "joined knowingly because",
    "from episode",
    "until episode",
)


def joins_table(desk: Desk) -> Table:
    """Return the joins with the episodes from and until which each held as its row says.

    A row ends with the episode that parts the join, or that changes its verdict or what it must
    carry; then another row begins.
    """
    rows: dict[tuple[tuple[Cell, ...], int], int | None] = {}
    since: dict[tuple[Cell, ...], int] = {}
    for number in desk.states:
        now = dict.fromkeys(_row(desk, each) for each in desk.verdicts(number))
        for row in [row for row in since if row not in now]:
            rows[row, since.pop(row)] = number
        for row in now:
            if row not in since:
                since[row] = number
                rows[row, number] = None
    return Table(
        columns=COLUMNS,
        rows=tuple((*row, begun, until) for (row, begun), until in rows.items()),
    )


def _row(desk: Desk, judged: JoinVerdict) -> tuple[Cell, ...]:
    join, found, service = judged.join, judged.fit, judged.service
    a, b = judged.ends
    return (
        *(join.a.part, join.a.end, a.full),
        *(join.b.part, join.b.end, b.full),
        judged.flow,
        service.pressure,
        service.temperature,
        found.verdict,
        found.why,
        found.sealant or None,
        join.sealed_with,
        _tight(desk, judged.make_up),
        join.torque.text if join.torque else None,
        judged.make_up.source or None,
        join.knowingly,
    )


def _tight(desk: Desk, made: MakeUp) -> Cell:
    """Return how tight a join is made, with what beats a figure of the table."""
    return f"{made.how}. {desk.words('joins.beaten')}" if made.source else made.how or None
