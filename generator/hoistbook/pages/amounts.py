"""Where each amount of the running cost stands, so that what a part cost can lead to it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping

from hoistbook.history.ledger import Entry
from hoistbook.pages import links
from hoistbook.pages.desk import Desk
from hoistbook.pages.sheets import filed_at, sheets_of


def amount_sheets(desk: Desk) -> tuple[tuple[int, ...], ...]:
    """Return the episodes with amounts by sheet; the last sheet stands on the tally's page."""
    amounts = Counter(each.episode for each in desk.material.ledger.entries)
    return sheets_of({number: amounts[number] for number in desk.states if amounts[number]})


def amount_ids(desk: Desk) -> tuple[str, ...]:
    """Return the anchor of every amount, in the order of the ledger; empty for one of no part.

    A part's first amount is named after it, a later one also after its place among them, behind
    an underscore, which no id of a part has.
    """
    seen: Counter[str] = Counter()
    ids = []
    for entry in desk.material.ledger.entries:
        part = entry.part or ""
        seen[part] += 1
        again = f"_{seen[part]}" if seen[part] > 1 else ""
        ids.append(f"amount-{part}{again}" if part else "")
    return tuple(ids)


def amounts_by_part(desk: Desk) -> Mapping[str, tuple[tuple[Entry, str], ...]]:
    """Return the amounts of every part, each with its address."""
    page_of = dict.fromkeys(desk.states, links.TALLY)
    for sheet in amount_sheets(desk)[:-1]:
        page_of |= dict.fromkeys(sheet, filed_at(links.TALLY, sheet))
    found: dict[str, tuple[tuple[Entry, str], ...]] = {}
    for entry, id_ in zip(desk.material.ledger.entries, amount_ids(desk), strict=True):
        if entry.part:
            placed = (entry, f"{page_of[entry.episode]}#{id_}")
            found[entry.part] = (*found.get(entry.part, ()), placed)
    return found
