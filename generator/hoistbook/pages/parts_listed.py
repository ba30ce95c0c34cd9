"""What a parts list to take away holds: its rows, prices, conditions and cautions.

A row stands for itself, because who copies a list sorts it, cuts it and mails pieces of it: it
carries its price in the journal's currency, what became of the part, what the list is good for and
the cautions of the part.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from decimal import ROUND_HALF_UP, Decimal
from functools import lru_cache
from typing import TypeAlias

from hoistbook.authored.kinds import systems
from hoistbook.authored.records import Part
from hoistbook.cautions.caution import Owed
from hoistbook.cautions.rules import ESTIMATES
from hoistbook.figures.figure import Figure
from hoistbook.history.state import Outcome, PartState, Status, own_count
from hoistbook.pages import links
from hoistbook.pages.desk import Desk
from hoistbook.pages.receipts import came_of
from hoistbook.pages.spec import in_short

_OF_THE_ENGINE = {"injectors": "injector_duty", "fuel pump": "pump_margin"}
"""Kind of a part -> the engine's figure that says whether it is large enough."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One part of the list; every text is ready to print and may be empty.

    The fields are the columns of the CSV, in their order.
    """

    system: str
    name: str
    count: int
    unit_price: Decimal | None
    price: Decimal | None
    """What all of them cost in the journal's currency, before postage, tax and discount."""
    postage: Decimal | None
    """Their share of postage, tax and discount, in the journal's currency."""
    paid: str
    """The price in the currency that was paid: "468.00 GBP"."""
    date: str
    supplier: str
    came: str
    """"bought new", "bought used", "made here"."""
    maker: str
    part_number: str
    facts: str
    """"static flow 340 cc/min at 3 bar, stated"."""
    ends: str
    must: str
    """What it had to meet, in the author's words."""
    figures: str
    """Figures that it had to keep within a limit, each with the limit."""
    became: str
    link: str
    conditions: str
    cautions: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Listed:
    """A whole list before it takes a form."""

    title: str
    rows: tuple[tuple[Row, bool], ...] = field(default=())
    """Each with whether it is left out unless asked."""
    left_out: str
    whole: str
    """The same number for a list that has all parts."""
    conditions: str
    cautions: tuple[str, ...]


ListOf: TypeAlias = int | str | None
"""What a parts list is of: an episode by its number, a system by its name, or all for None."""


def listed(desk: Desk, of: ListOf) -> Listed:
    """Return the parts list of an episode, of a system, or of the whole journal."""
    words, journal = desk.words, desk.material.journal.title
    if isinstance(of, int):
        title = words("parts_copy.title_episode", title=journal, episode=of)
        owed = desk.owed(links.episode(of))
        return _listed(desk, title, _rows(desk, parts_of_episode(desk, of), of, owed), of, owed)
    rows, owed = _all_rows(desk), desk.owed(links.PARTS)
    title = words("parts_copy.title", title=journal, episode=desk.last)
    if of is not None:
        system = desk.system(of)
        title = words("parts_copy.title_system", title=journal, system=system, episode=desk.last)
        rows = tuple(each for each in rows if each[0].system == system)
        said = " ".join(row.cautions for row, _ in rows)
        owed = tuple(each for each in owed if _in_one_line(each) in said)
    return _listed(desk, title, rows, desk.last, owed)


MOST_ROWS = 130
"""A longer list is filed by system, each on a page of its own, so that none grows too large."""


def filed_systems(desk: Desk) -> tuple[str, ...]:
    """Return the systems whose parts stand on pages of their own; none for a short list."""
    parts = desk.states[desk.last].parts
    if len(parts) <= MOST_ROWS:
        return ()
    return tuple(dict.fromkeys(each.part.system or "other" for each in parts.values()))


Rows: TypeAlias = tuple[tuple[Row, bool], ...]


@lru_cache(maxsize=1)
def _all_rows(desk: Desk) -> Rows:
    """Return all parts as rows, once for the lists of all systems."""
    parts = desk.states[desk.last].parts.values()
    return _rows(desk, parts, desk.last, desk.owed(links.PARTS))


def _rows(desk: Desk, parts: Iterable[PartState], at: int, owed: Sequence[Owed]) -> Rows:
    order = {name: place for place, name in enumerate(systems())}
    ordered = sorted(parts, key=lambda each: order.get(each.part.system or "", len(order)))
    return tuple(
        (row_of(desk, each.part, at, owed), _left_out(desk, each.part)) for each in ordered
    )


def _listed(desk: Desk, title: str, rows: Rows, at: int, owed: Sequence[Owed]) -> Listed:
    words = desk.words
    count = sum(left for _, left in rows)
    return Listed(
        title=title,
        rows=rows,
        left_out=words("parts_copy.left_out", n=count) if count else "",
        whole=words("parts_copy.whole", n=count, parts=len(rows)) if count else "",
        conditions=conditions_of(desk, at),
        cautions=(
            words("parts_copy.caution"),
            *map(_in_one_line, owed),
        ),
    )


def _in_one_line(owed: Owed) -> str:
    """Return a caution as a line of a list has it."""
    return f"{owed.caution.title}: {owed.caution.line}"


def parts_of_episode(desk: Desk, number: int) -> tuple[PartState, ...]:
    """Return the parts that came in an episode: bought, got without a receipt, or made."""
    episode = desk.episodes[number]
    came = [part for receipt in episode.bought for part in receipt.parts]
    known = desk.states[desk.last].parts
    return tuple(known[part.id] for part in (*came, *episode.got, *episode.made))


def _left_out(desk: Desk, part: Part) -> bool:
    return desk.fate(part.id).outcome is not Outcome.IN_USE


def conditions_of(desk: Desk, number: int) -> str:
    """Return what the build as at an episode is good for: displacement, boost and fuel."""
    state = desk.states[number]
    given = {
        "displacement": state.car.get("engine displacement"),
        "boost": state.settings.get("boost"),
        "fuel": state.settings.get("fuel"),
    }
    said = [
        desk.words(f"parts_copy.{name}", value=in_short(desk, dated.value))
        for name, dated in given.items()
        if dated is not None
    ]
    return ", ".join(said) or desk.words("parts_copy.no_conditions")


def row_of(desk: Desk, part: Part, at: int, owed: Sequence[Owed] = ()) -> Row:
    """Return a part as a list has it whose figures and conditions are as at an episode.

    Parameters
    ----------
    desk
        Of the journal.
    part
        The part.
    at
        The episode.
    owed
        The cautions of the whole list.
    """
    entry, paid = desk.priced.get(part.id), desk.paid.get(part.id)
    count = own_count(part)
    price = entry.home - entry.postage if entry else None
    return Row(
        system=desk.system(part.system),
        name=part.name,
        count=count,
        unit_price=_each(price, count),
        price=price,
        postage=entry.postage if entry else None,
        paid=desk.formats.money(entry.amount) if entry else "",
        date=paid.day.isoformat() if paid and paid.day else "",
        supplier=(paid.supplier or "") if paid else "",
        came=came_of(desk, part),
        maker=part.maker or "",
        part_number=part.part_number or "",
        facts="; ".join(_facts(desk, part)),
        ends="; ".join(f"{each.name}: {each.text}" for each in part.ends.values()),
        must=part.must or "",
        figures="; ".join(_figures(desk, part, at)),
        became=desk.became(part.id),
        link=part.link or "",
        conditions=conditions_of(desk, at),
        cautions=" ".join(
            (desk.words("parts_copy.caution_short"), *_cautions(desk, part, at, owed))
        ),
    )


def _cautions(desk: Desk, part: Part, at: int, owed: Sequence[Owed]) -> Iterator[str]:
    """Yield those cautions of a list that are a part's own too.

    Whether it has estimates is as at the list's episode, not as on its page, which is of the last.
    """
    own = {each.caution.id for each in desk.owed(links.part(part.id))} - {ESTIMATES}
    if any(_figures(desk, part, at)):
        own.add(ESTIMATES)
    for each in owed:
        if each.caution.id in own:
            yield _in_one_line(each)


def _each(price: Decimal | None, count: int) -> Decimal | None:
    """Return the price of one, to the cent; None where there is no price or nothing of it."""
    if price is None or not count:
        return None
    return (price / count).quantize(price, ROUND_HALF_UP)


def _facts(desk: Desk, part: Part) -> Iterator[str]:
    for name, given in part.facts.items():
        evidence = desk.evidence(given)
        text = f"{name} {desk.fact(given.value)}"
        yield f"{text}, {evidence}" if evidence else text


def _figures(desk: Desk, part: Part, at: int) -> Iterator[str]:
    """Yield what a part had to keep within its limit, as at an episode."""
    state = desk.states[at].parts.get(part.id)
    fitted = state is not None and state.status is Status.FITTED
    wanted = _OF_THE_ENGINE.get(part.kind or "") if fitted else None
    for figure in desk.listed(at):
        own = figure.key.subject == part.id or figure.key.quantity == wanted
        if own and isinstance(figure, Figure) and figure.limit is not None:
            said = desk.formats.figure(figure)
            title = desk.titles[figure.key.quantity]
            yield f"{title} {said.sentence}, {said.limit} ({said.limit_at})"


def cost_of(desk: Desk, rows: list[Row]) -> str:
    """Return what rows cost together, in the journal's currency; empty where none has a price."""
    prices = [row.price for row in rows if row.price is not None]
    if not prices:
        return ""
    price = sum(prices, start=Decimal(0))
    postage = sum((row.postage for row in rows if row.postage), start=Decimal(0))
    return desk.words(
        "parts_copy.together_with_postage" if postage else "parts_copy.together",
        price=desk.home_money(price),
        postage=desk.home_money(postage),
        total=desk.home_money(price + postage),
    )


def price_in_words(desk: Desk, row: Row) -> str:
    """Return a price as a line has it: "468.00 GBP (534.73 EUR)", "12.40 EUR for both"."""
    if row.price is None:
        return ""
    home = desk.home_money(row.price)
    text = row.paid
    if row.paid != home:
        text = desk.words("parts_copy.price_home", price=text, home=home)
    if row.count == 1 or row.unit_price is None:
        return text
    key = "parts_copy.price_of_both" if row.count == 2 else "parts_copy.price_of_all"
    return desk.words(key, price=text, count=row.count, each=desk.home_money(row.unit_price))
