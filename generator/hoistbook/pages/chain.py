"""The whole chain worked out in print, in order, at the engine speed at which power is highest.

One sheet has all that power, injectors and fuel pump rest on. For a page must stay light, the
pipes and what stands beside that way have sheets of their own. All start from the same inputs, and
the links from one sheet to the next carry a reader's own numbers along: so these run through
everything that rests on them.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from markupsafe import Markup

from hoistbook.engineering.glossary import GLOSSARY
from hoistbook.figures.base import Inputs, keyed
from hoistbook.figures.catalogue import CATALOGUE
from hoistbook.figures.chain import upstream
from hoistbook.figures.figure import Figure, Figures
from hoistbook.figures.stage import estimates
from hoistbook.figures.variants import at_one_speed
from hoistbook.pages import links
from hoistbook.pages.desk import Desk
from hoistbook.pages.formulas import capital
from hoistbook.pages.own_numbers import Chains, Json
from hoistbook.pages.page import Page
from hoistbook.pages.shown import Link, Number, Sheet
from hoistbook.pages.worked import numbers_in

STARTS: Mapping[str, str] = {
    "swept_volume": "cylinders",
    "saturation_pressure": "air",
    "manifold_absolute_pressure": "charge",
    "fuel_density": "work",
    "wheel_power": "car",
    "fuel_flow": "fuel",
    "pipe_velocity": "pipes",
    "choked_flow": "throats",
    "brake_efficiency": "heat",
    "tyre_diameter": "road",
    "displacement_of_cylinders": "cylinders",
    "stress_area": "bench",
}
"""The quantity of the table with which each section begins."""

WHOLE, PIPES, BESIDE = "chain", "chain_pipes", "beside"
ADDRESSES: Mapping[str, str] = {
    WHOLE: links.CHAIN,
    PIPES: links.CHAIN_PIPES,
    BESIDE: links.BESIDE,
}
"""The sheets in their order."""
ASKED = (
    "compressor_outlet_temperature",
    "cooler_effectiveness",
    "power",
    "torque",
    "wheel_power",
    "wheel_torque",
    "power_to_mass",
    "injector_duty",
    "pump_margin",
)
"""What the whole chain leads to; what none of these rests on stands beside it.

Compressor and cooler are among them, for power does not rest on them where a log has the charge
temperature.
"""
OF_PIPES = ("pipes", "throats")
"""Sections that come again for each pipe."""

MOST_NODES = 1255
"""Of a page's 1,400 elements, what the steps may take with the fields that the script adds."""


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
    sheets: tuple[Link, ...]
    """All sheets in order, this one among them, each by what of the car it has."""
    chains: tuple[Json, ...]
    """What the script works out anew: one chain."""


def chain_page(desk: Desk) -> Iterator[Page]:
    """Yield the sheets of the chain as at the last episode; none where nothing is worked out."""
    figures = desk.figures[desk.last]
    if figures.inputs is None:
        return
    speed = _speed(figures, figures.inputs)
    worked = [
        each for each in estimates(at_one_speed(figures.inputs, speed)) if isinstance(each, Figure)
    ]
    chains = Chains()
    chains.number(figures.inputs, speed)
    sheets = _sheets(figures.inputs, worked)
    for sheet, sections in sheets.items():
        yield _page(desk, sheet, tuple(sheets), sections, speed, tuple(chains.listed))


def chain_sheets(desk: Desk) -> tuple[Link, ...]:
    """Return links to the sheets of the chain that a journal has as at its last episode."""
    figures = desk.figures[desk.last]
    if figures.inputs is None:
        return ()
    worked = [each for each in figures.figures if isinstance(each, Figure)]
    return tuple(_link(desk, sheet) for sheet in _sheets(figures.inputs, worked))


def _sheets(inputs: Inputs, worked: list[Figure]) -> dict[str, dict[str, list[Figure]]]:
    """Return the sheets that have anything, in order: each a section's figures by its name.

    Within a section figures stand in the order of the table.
    """
    section_of: dict[str, str] = {}
    section = ""
    for row in CATALOGUE:
        section = STARTS.get(row.quantity, section)
        section_of.setdefault(row.quantity, section)
    leads_on = upstream(inputs, ASKED)
    sheets: dict[str, dict[str, list[Figure]]] = {sheet: {} for sheet in ADDRESSES}
    for each in worked:
        if name := section_of.get(each.key.quantity):
            whole = keyed(each.key.quantity, each.key.subject) in leads_on
            sheet = WHOLE if whole else PIPES if name in OF_PIPES else BESIDE
            sheets[sheet].setdefault(name, []).append(each)
    return {sheet: sections for sheet, sections in sheets.items() if sections}


def _link(desk: Desk, sheet: str) -> Link:
    return Link(text=_title(desk, sheet), address=ADDRESSES[sheet])


def _title(desk: Desk, sheet: str) -> str:
    return desk.words("chain.title", part=desk.words(f"{sheet}.part"))


def _page(
    desk: Desk,
    sheet: str,
    sheets: Sequence[str],
    sections: Mapping[str, list[Figure]],
    speed: float | None,
    chains: tuple[Json, ...],
) -> Page:
    address, title = ADDRESSES[sheet], _title(desk, sheet)
    shown, left_out = _within_weight(desk, sections)
    here = sheets.index(sheet)
    before, after = sheets[:here], sheets[here + 1 :]
    return Page(
        address=address,
        template="chain.html",
        title=title,
        description=desk.words(f"{sheet}.description", title=desk.material.journal.title),
        context=ChainContext(
            heading=title,
            margin=desk.margin(),
            lead=_lead(desk, sheet, speed),
            contents=tuple(Link(text=each.title, address=f"#{each.id}") for each in shown),
            sections=shown,
            left_out=left_out,
            sheets=tuple(
                Link(text=capital(desk.words(f"{each}.part")), address=ADDRESSES[each])
                for each in sheets
            ),
            before=_link(desk, before[-1]) if before else None,
            after=_link(desk, after[0]) if after else None,
            chains=chains,
        ),
        owed=desk.owed(address),
    )


def _speed(figures: Figures, inputs: Inputs) -> float | None:
    """Return the engine speed at which power is highest; without power the highest there is."""
    power = figures.get("power")
    if isinstance(power, Figure) and power.at_speed in inputs.speeds:
        return power.at_speed
    return inputs.speeds[-1] if inputs.speeds else None


def _lead(desk: Desk, sheet: str, speed: float | None) -> str:
    if speed is None:
        return desk.words("chain.lead_no_speed", number=desk.last)
    shown = desk.formats.quantity(speed, "engine_speed")
    return desk.words(f"{sheet}.lead", number=desk.last, speed=shown)


def _within_weight(
    desk: Desk, sections: Mapping[str, list[Figure]]
) -> tuple[tuple[ChainSection, ...], tuple[Link, ...]]:
    """Return as many steps as the page can carry, by section, and links to the rest."""
    shown: list[ChainSection] = []
    left_out: dict[str, Link] = {}
    nodes = 0
    for name, figures in sections.items():
        steps: list[ChainStep] = []
        for figure in figures:
            step = _step(desk, figure)
            nodes += 4 + sum(map(_elements, step.equations))
            if nodes > MOST_NODES:
                left_out[figure.key.quantity] = step.title
            else:
                steps.append(step)
        if steps:
            title = desk.words(f"chain.{name}")
            shown.append(ChainSection(id=name, title=title, steps=tuple(steps)))
    return tuple(shown), tuple(left_out.values())


def _elements(equation: Markup) -> int:
    """Return the elements of an equation in its box, with a field over each number."""
    return 1 + equation.count("</") + equation.count("class=")


def _step(desk: Desk, figure: Figure) -> ChainStep:
    quantity = figure.key.quantity
    title = desk.titles.get(quantity) or capital(GLOSSARY[quantity].words)
    own = desk.figures[desk.last].get(quantity, figure.key.subject)
    address = desk.workings(own) if isinstance(own, Figure) else links.workings(quantity)
    return ChainStep(
        title=Link(text=title, address=address),
        subject=desk.subject(figure.key),
        working=keyed(quantity, figure.key.subject),
        number=desk.number(figure, address),
        equations=numbers_in(desk, figure, ""),
    )
