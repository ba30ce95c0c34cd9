"""The whole chain worked out in print, in order, at the engine speed at which power is highest.

Here a reader's own number runs through everything that rests on it.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import groupby

from markupsafe import Markup

from hoistbook.engineering.glossary import GLOSSARY
from hoistbook.figures.base import Inputs, keyed
from hoistbook.figures.catalogue import CATALOGUE
from hoistbook.figures.figure import Figure, Figures
from hoistbook.figures.stage import estimates
from hoistbook.pages import links
from hoistbook.pages.desk import Desk
from hoistbook.pages.formulas import capital
from hoistbook.pages.own_numbers import Chains, Json, at_one_speed
from hoistbook.pages.page import Page
from hoistbook.pages.shown import Link, Number, Sheet
from hoistbook.pages.worked import numbers_in

STARTS: Mapping[str, str] = {
    "saturation_pressure": "air",
    "manifold_absolute_pressure": "charge",
    "fuel_density": "work",
    "wheel_power": "car",
    "fuel_flow": "fuel",
    "pipe_velocity": "pipes",
}
"""The quantity of the table with which each section of the page begins."""

MOST_NODES = 1150
"""Of a page's 1,400 elements, what the steps may take; fields of the script come on top."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ChainStep:
    """One figure of the chain."""

    title: Link
    """Leads to the workings of its quantity."""
    subject: Link | None
    working: str
    """What the script calls it."""
    number: Number
    equations: tuple[Markup, ...]
    """The formula with the numbers put in."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ChainSection:
    """Steps that belong together."""

    id: str
    title: str
    steps: tuple[ChainStep, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ChainContext(Sheet):
    """`chain.html`: the whole chain in order."""

    sections: tuple[ChainSection, ...]
    left_out: tuple[Link, ...]
    """Figures that the page has no room for, by the workings of their own."""
    chains: tuple[Json, ...]
    """What the script works out anew: one chain."""


def chain_page(desk: Desk) -> Iterator[Page]:
    """Yield the page of the chain as at the last episode; none where nothing is worked out."""
    figures = desk.figures[desk.last]
    if figures.inputs is None:
        return
    speed = _speed(figures, figures.inputs)
    worked = [
        each for each in estimates(at_one_speed(figures.inputs, speed)) if isinstance(each, Figure)
    ]
    title = desk.words("chain.title")
    chains = Chains()
    chains.number(figures.inputs, speed)
    steps, left_out = _within_weight(desk, worked)
    shown = tuple(_sections(desk, steps))
    yield Page(
        address=links.CHAIN,
        template="chain.html",
        title=title,
        description=desk.words("chain.description", title=desk.material.journal.title),
        context=ChainContext(
            heading=title,
            margin=desk.margin(),
            lead=_lead(desk, speed),
            contents=tuple(Link(text=each.title, address=f"#{each.id}") for each in shown),
            sections=shown,
            left_out=left_out,
            chains=tuple(chains.listed),
        ),
        owed=desk.owed(links.CHAIN),
    )


def _speed(figures: Figures, inputs: Inputs) -> float | None:
    """Return the engine speed at which power is highest; without power the highest there is."""
    power = figures.get("power")
    if isinstance(power, Figure) and power.at_speed in inputs.speeds:
        return power.at_speed
    return inputs.speeds[-1] if inputs.speeds else None


def _lead(desk: Desk, speed: float | None) -> str:
    if speed is None:
        return desk.words("chain.lead_no_speed", number=desk.last)
    shown = desk.formats.quantity(speed, "engine_speed")
    return desk.words("chain.lead", number=desk.last, speed=shown)


def _within_weight(
    desk: Desk, worked: list[Figure]
) -> tuple[list[tuple[str, ChainStep]], tuple[Link, ...]]:
    """Return as many steps as the page can carry, with their quantities, and links to the rest."""
    steps: list[tuple[str, ChainStep]] = []
    left_out: dict[str, Link] = {}
    nodes = 0
    for figure in worked:
        step = _step(desk, figure)
        nodes += 8 + sum(each.count("</") for each in step.equations)
        if nodes > MOST_NODES:
            left_out[figure.key.quantity] = step.title
        else:
            steps.append((figure.key.quantity, step))
    return steps, tuple(left_out.values())


def _step(desk: Desk, figure: Figure) -> ChainStep:
    quantity = figure.key.quantity
    title = desk.titles.get(quantity) or capital(GLOSSARY[quantity].words)
    own = desk.figures[desk.last].get(quantity, figure.key.subject)
    address = desk.workings(own) if isinstance(own, Figure) else links.workings(quantity)
    return ChainStep(
        title=Link(text=title, address=address),
        subject=desk.subject(figure.key),
        working=keyed(quantity, figure.key.subject),
        number=desk.number(figure),
        equations=numbers_in(desk, figure, ""),
    )


def _sections(desk: Desk, steps: list[tuple[str, ChainStep]]) -> Iterator[ChainSection]:
    """Yield the sections that have steps, in the order of the table."""
    section = ""
    of: dict[str, str] = {}
    for row in CATALOGUE:
        section = STARTS.get(row.quantity, section)
        of.setdefault(row.quantity, section)
    for name, group in groupby(steps, key=lambda each: of[each[0]]):
        yield ChainSection(
            id=name,
            title=desk.words(f"chain.{name}"),
            steps=tuple(step for _, step in group),
        )
