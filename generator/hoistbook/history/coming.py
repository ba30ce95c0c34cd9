"""A part is written down: for the first time, or again after it was only planned or ordered."""

from __future__ import annotations

from dataclasses import replace

from hoistbook.authored.records import Part, PieceUsed
from hoistbook.history.bench import UNBOUGHT, Bench
from hoistbook.history.known import WRITE_IT_DOWN
from hoistbook.history.state import PartState, Status
from hoistbook.problems import Problem
from hoistbook.values.name import to_id


def come_in(bench: Bench, part: Part, status: Status) -> bool:
    """Let a part be known with a status; tell whether it could be."""
    known = bench.parts.get(part.id)
    if known is not None and known.status not in UNBOUGHT:
        bench.problem(
            "duplicate-part",
            f"two parts are called `{part.id}`: this one, and the one of episode "
            f"{known.known_in} ({known.part.place})",
            part.place,
            f"give this one an id of its own, as `part: {free_id(bench, part.id)}`",
        )
        return False
    if known is None:
        bench.write_down(part, status)
    else:
        write_again(bench, known, part, status)
    return True


def write_again(bench: Bench, known: PartState, part: Part, status: Status) -> None:
    """Let what was planned or ordered become what was bought, keeping what was said of it."""
    whole = merged(known.part, part)
    bench.write_down(whole, status)
    again = bench.parts[part.id]
    bench.parts[part.id] = replace(again, known_in=known.known_in, replaced_by=known.replaced_by)


def merged(before: Part, after: Part) -> Part:
    """Return the later record of a part, filled up with what only the earlier one says."""
    name_was_left_out = (
        to_id(after.name) == after.id and after.name.casefold() != before.name.casefold()
    )
    return replace(
        after,
        name=before.name if name_was_left_out else after.name,
        kind=after.kind or before.kind,
        system=after.system or before.system,
        maker=after.maker or before.maker,
        part_number=after.part_number or before.part_number,
        paid=after.paid,
        list_price=after.list_price or before.list_price,
        facts={**before.facts, **after.facts},
        ends={**before.ends, **after.ends},
        link=after.link or before.link,
        must=after.must or before.must,
        good_until=after.good_until or before.good_until,
        note=after.note or before.note,
    )


def make(bench: Bench, part: Part) -> None:
    """Let a part be made, using up the pieces it is made from."""
    if not come_in(bench, part, Status.ON_HAND):
        return
    for piece in part.made_from:
        found = bench.find(piece.part, piece.place)
        if found is None:
            continue
        problem = unusable(part, piece, found)
        if problem is not None:
            bench.problems.append(problem)
            continue
        used = bench.use_up(found, piece.count, f"built into {part.name}")
        bench.parts[piece.part] = replace(
            used, built_into=part.id, built_in=bench.episode, last=None, because=None
        )


def unusable(part: Part, piece: PieceUsed, found: PartState) -> Problem | None:
    """Return why a part cannot have been made from a piece, None when it can."""
    left = found.pieces_left or 0
    if piece.part == part.id:
        return Problem(
            "made-from-itself",
            f"`{part.id}` cannot be made from itself",
            piece.place,
            f"give what is made an id of its own, as `part: {part.id}-changed`",
        )
    if found.status in UNBOUGHT:
        return Problem(
            "not-here-yet",
            f"`{part.id}` is made from `{piece.part}`, which is only {found.status}",
            piece.place,
            WRITE_IT_DOWN,
        )
    if piece.count > left:
        return Problem(
            "more-than-there-are",
            f"`{part.id}` uses {piece.count} of `{piece.part}`, and "
            f"{left or 'none'} of {found.part.count} {'is' if left == 1 else 'are'} left",
            piece.place,
            "correct the number, or write down the others that were bought",
        )
    return None


def free_id(bench: Bench, id_: str) -> str:
    """Return the first of `turbo-2`, `turbo-3`, ... that no part of the journal has."""
    number = 2
    while f"{id_}-{number}" in bench.written:
        number += 1
    return f"{id_}-{number}"
