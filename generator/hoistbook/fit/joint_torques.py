"""How tight threaded joints are made: by a table where one is known, else why it is not."""

from __future__ import annotations

import re
from collections.abc import Collection, Sequence

from hoistbook.fit.fasteners import bolting_in, held_to
from hoistbook.fit.tables import Row, keyed, sourced, table
from hoistbook.fit.thread_rules import PASTE, seal_of
from hoistbook.fit.verdict import Fit, MakeUp
from hoistbook.units import from_unit
from hoistbook.values.end import End, EndKind, Gender, Seat

METALS = (
    ("aluminium", r"\balumini?um\b|\balloy\b"),
    ("cast iron", r"\bcast iron\b"),
    ("steel", r"\b(?:stainless|steel)\b"),
)
"""Metals of the table of torques and the words that name them, the softest first."""
TURNS_NOT_TORQUE = (
    "turns past finger tight, not torque: the sealant lets the thread slip and the taper wedges "
    "it, so one torque may be one turn or four; in aluminium the fewer, and never turned back"
)
WHY_NOT = {
    EndKind.ORB: (
        "the maker's figure: a light and a heavy series share one thread, and an aluminium port "
        "takes less than steel; O-ring and thread oiled"
    ),
    EndKind.ISO6149: (
        "the maker's figure: a light and a heavy series share one thread, and an aluminium port "
        "takes less than steel; O-ring and thread oiled"
    ),
    EndKind.JIC37: "the maker's figure: no table here for a flare of that size and metal",
    EndKind.AERO37: "the maker's figure: no table here for a flare of that size and metal",
    EndKind.SAE45: (
        "the maker's figure: brass nuts and copper tube yield below any torque for steel"
    ),
    EndKind.BUBBLE: (
        "the maker's figure: nut, tube and port of a brake are one set, and no general table "
        "holds for it"
    ),
    EndKind.INVERTED: (
        "the maker's figure: nut, tube and port of a brake are one set, and no general table "
        "holds for it"
    ),
}
"""Why there is no torque, by the kind of the end."""
WASHER = (
    "the maker's figure: the washer and the softer thread decide, an aluminium port first, and a "
    "hollow bolt bears less than a table of solid bolts says; thread clean and dry unless its "
    "maker oils it"
)
CONE = "the maker's figure: no table here for 60 degree cones"
FLARES = {EndKind.JIC37, EndKind.AERO37}


def thread_make_up(
    one: End, other: End, found: Fit, bolts: str = "", kinds: Collection[str] = ()
) -> MakeUp:
    """Return how two threaded ends that mate are tightened.

    Parameters
    ----------
    one, other : End
        The ends, in any order.
    found : Fit
        The verdict on them.
    bolts : str
        What is said of the bolt of the join, a hollow one included.
    kinds : collection of str
        The kinds of the two parts: a spark plug has a table of its own.
    """
    male, female = (one, other) if one.gender is Gender.MALE else (other, one)
    if found.sealant == PASTE:
        return _turns(male)
    own = next((kind for kind in kinds if torque_rows(kind, male.size)), None)
    if own:
        made = by_table(own, male.size, (female,))
        return made or MakeUp(f"the maker's figure: no table here for {female.material}")
    joint = EndKind.JIC37 if male.kind in FLARES else male.kind
    made = by_table(str(joint), male.size, (male, female))
    if made:
        return made
    if male.kind in WHY_NOT:
        return MakeUp(WHY_NOT[male.kind])
    return _parallel(male, bolts)


def _parallel(male: End, bolts: str) -> MakeUp:
    """Return how a parallel thread is tightened: on a washer, on a cone, or as a bolt."""
    if male.seat is Seat.CONE:
        return MakeUp(CONE)
    bolting = bolting_in(f"{male.size}, {bolts}")
    made = bolting.tightening if bolting else None
    if seal_of(male) == "nothing":
        if made is None:
            return MakeUp("the maker's figure: no property class (8.8, 10.9) is said")
        return MakeUp(held_to(made), sourced(made.source))
    if made is None or not made.bore:
        return MakeUp(WASHER)
    return MakeUp(
        f"no more than {newton_metres(made.lowest)} N m: above that a hollow {made.state} may "
        "pass 75 % of its proof load where its thread is most slippery; the washer and the port, "
        "an aluminium one first, ask for less, by the maker's figure",
        sourced(made.source),
    )


def _turns(male: End) -> MakeUp:
    row = keyed("npt_makeup", "size").get(male.size)
    if row is None:
        return MakeUp(TURNS_NOT_TORQUE)
    return MakeUp(
        f"{row['tfft_low']} to {row['tfft_high']} {TURNS_NOT_TORQUE}", sourced(row["provenance"])
    )


def torque_rows(joint: str, size: str) -> list[Row]:
    """Return what the table of torques has for a sort of joint and its size."""
    return [row for row in table("joint_torques") if (row["joint"], row["size"]) == (joint, size)]


def by_table(joint: str, size: str, ends: Sequence[End]) -> MakeUp | None:
    """Return the torque that tables print, or None where they have none for these metals.

    Parameters
    ----------
    joint : str
        Of the table of torques: a kind of end, or a kind of part.
    size : str
        `-6`, `M14x1.25`.
    ends : sequence of End
        Those whose metal decides; the softest does.
    """
    rows = torque_rows(joint, size)
    metals = _deciding(list(dict.fromkeys(row["metal"] for row in rows)), ends)
    used = [row for row in rows if row["metal"] in metals]
    if not used:
        return None
    said = [f"{metal} {_range([r for r in used if r['metal'] == metal])}" for metal in metals]
    pieces = [", ".join(said)]
    if len(metals) > 1:
        pieces.append("which metal is not said: begin with the lower")
    pieces += [used[0][column] for column in ("note", "lubrication") if used[0][column]]
    sources = dict.fromkeys(sourced(row["provenance"]) for row in used)
    return MakeUp("; ".join(pieces), "; ".join(sources))


def _deciding(metals: Sequence[str], ends: Sequence[End]) -> tuple[str, ...]:
    """Return the metals of a table that come into question, the softest first."""
    said = [metal_of(end) for end in ends]
    if any(metal not in (*metals, None) for metal in said):
        return ()
    softest = next((metal for metal in metals if metal in said), None)
    if softest is None or (None in said and softest != metals[0]):
        return tuple(metals)
    return (softest,)


def metal_of(end: End) -> str | None:
    """Return the metal of an end by its name in the table, its own words where it has none.

    Examples
    --------
    >>> metal_of(End(material="hard anodised aluminium")), metal_of(End(material="brass"))
    ('aluminium', 'brass')
    """
    said = (end.material or "").casefold()
    return next((metal for metal, words in METALS if re.search(words, said)), end.material)


def _range(rows: Sequence[Row]) -> str:
    """Return the torque of one metal; where sources conflict, what each of them says."""
    each = list(
        dict.fromkeys(tuple(_si(row, column) for column in ("low", "high")) for row in rows)
    )
    low, high = min(low for low, _ in each), max(high for _, high in each)
    text = f"{newton_metres(low)} to {newton_metres(high)} N m"
    if len(each) == 1:
        return text
    apart = " and ".join(f"{newton_metres(a)} to {newton_metres(b)}" for a, b in each)
    return f"{text} (sources conflict, {apart}: begin with the lower)"


def _si(row: Row, column: str) -> float:
    return float(from_unit(float(row[column]), row["unit"]))


def newton_metres(torque: float) -> str:
    """Return a torque in no more digits than a wrench has: 5.6, 31, 158.

    Examples
    --------
    >>> newton_metres(5.649), newton_metres(30.51)
    ('5.6', '31')
    """
    return f"{torque:.1f}" if torque < FINE else f"{torque:.0f}"


FINE = 9.95
"""Below this a torque has a digit after its point [N m]."""
