"""The spec sheet: the build as at one episode, bounded by the car."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import groupby

from hoistbook.authored.kinds import systems
from hoistbook.authored.records import BoostBySpeed, Given
from hoistbook.figures.catalogue import OF_THE_CAR
from hoistbook.history.state import Dated, State, Status
from hoistbook.pages import links
from hoistbook.pages.cost_of_power import cost_of_power
from hoistbook.pages.day import ReadingRow, reading_row
from hoistbook.pages.desk import Desk, sections
from hoistbook.pages.joins import JoinRow, joins_held, never_joined
from hoistbook.pages.page import Page
from hoistbook.pages.receipts import fitted_count
from hoistbook.pages.shown import Entry, FigureRow, Link, PartRef, Sheet


@dataclass(frozen=True, slots=True, kw_only=True)
class SpecRow:
    """One property of the car, or one setting."""

    name: str
    value: str
    evidence: str
    since: Link
    """The episode that set it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FittedRow:
    """A part of the car."""

    part: PartRef
    count: str
    maker: str
    since: Link
    """The episode in which it was fitted."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FittedSystem:
    """The parts fitted in one system."""

    title: str
    rows: tuple[FittedRow, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SpecContext(Sheet):
    """`spec.html`: the spec sheet as at an episode."""

    warnings: tuple[JoinRow, ...]
    """Joins that must not be made: a theme prints them in full."""
    car: tuple[SpecRow, ...]
    settings: tuple[SpecRow, ...]
    systems: tuple[FittedSystem, ...]
    figures: tuple[FigureRow, ...]
    """On the way to power and fuel."""
    beside: tuple[FigureRow, ...]
    """Road speeds, quarter mile, cylinders."""
    per_power: Entry | None
    """What each kilowatt gained has cost; None without two power runs at the same place."""
    readings: tuple[ReadingRow, ...]
    """The last of each thing measured."""
    joins: tuple[JoinRow, ...]
    others: tuple[Link, ...]
    """The spec sheets as at the other episodes."""


def spec_pages(desk: Desk) -> Iterator[Page]:
    """Yield the spec sheet now and as at every episode, the car as bought first."""
    yield _page(desk, links.SPEC, desk.last, now=True)
    for number in desk.states:
        yield _page(desk, links.spec(number), number, now=False)


def _page(desk: Desk, address: str, number: int, *, now: bool) -> Page:
    words, state = desk.words, desk.states[number]
    key = "now" if now else "at" if number else "bought"
    title = words(f"spec.title_{key}", number=number)
    journal, joins = desk.material.journal, joins_held(desk, number)
    return Page(
        address=address,
        template="spec.html",
        title=title,
        description=words(f"spec.description_{key}", title=journal.title, number=number),
        context=SpecContext(
            heading=title,
            margin=desk.margin(None if now else number),
            lead=words("spec.lead"),
            contents=sections(
                words, "spec", ("car", "settings", "figures", "fitted", "joins", "others")
            ),
            car=_rows(desk, state.car, setting=False),
            settings=_rows(desk, state.settings, setting=True),
            systems=_fitted(desk, state),
            figures=tuple(desk.row(each) for each in desk.on_the_way(number)),
            beside=tuple(
                desk.row(each) for each in desk.beside(number) if each.key.quantity in OF_THE_CAR
            ),
            per_power=cost_of_power(desk, number),
            readings=_readings(desk, state),
            joins=joins,
            warnings=tuple(never_joined(joins)),
            others=_others(desk, None if now else number),
        ),
        owed=desk.owed(address),
    )


def _others(desk: Desk, shown: int | None) -> tuple[Link, ...]:
    now = (desk.spec_sheet(),) if shown is not None else ()
    return now + tuple(
        Link(text=desk.episode(each).text, address=links.spec(each))
        for each in desk.states
        if each != shown
    )


def _rows(
    desk: Desk,
    given: Mapping[str, Dated[Given]] | Mapping[str, Dated[Given | BoostBySpeed]],
    *,
    setting: bool,
) -> tuple[SpecRow, ...]:
    return tuple(
        SpecRow(
            name=name[:1].upper() + name[1:],
            value=stated(desk, dated.value),
            evidence=desk.evidence(dated.value, setting=setting),
            since=desk.episode(dated.episode),
        )
        for name, dated in given.items()
    )


def stated(desk: Desk, value: Given | BoostBySpeed) -> str:
    """Return what the author states of the car or its settings, as it is printed."""
    if isinstance(value, Given):
        return desk.fact(value.value)
    pairs = zip(value.speeds, value.pressures, strict=True)
    return ", ".join(
        desk.words(
            "spec.boost_at",
            pressure=desk.formats.given(pressure),
            speed=desk.formats.quantity(speed, "engine_speed"),
        )
        for speed, pressure in pairs
    )


def in_short(desk: Desk, value: Given | BoostBySpeed) -> str:
    """Return the same with a list by engine speed as its highest: "up to 0.8 bar gauge"."""
    if isinstance(value, Given):
        return stated(desk, value)
    top = max(value.pressures, key=lambda each: each.value)
    return desk.words("spec.boost_up_to", pressure=desk.formats.given(top))


def _fitted(desk: Desk, state: State) -> tuple[FittedSystem, ...]:
    order = {system: at for at, system in enumerate(systems())}
    name = desk.naming(state.episode)
    fitted = [each for each in state.parts.values() if each.status is Status.FITTED]
    fitted.sort(key=lambda each: order.get(each.part.system or "", len(order)))
    return tuple(
        FittedSystem(
            title=desk.system(system),
            rows=tuple(
                FittedRow(
                    part=name(each.part.id),
                    count=fitted_count(desk, each),
                    maker=" ".join(t for t in (each.part.maker, each.part.part_number) if t),
                    since=desk.episode(each.since if each.fitted_in is None else each.fitted_in),
                )
                for each in members
            ),
        )
        for system, members in groupby(fitted, key=lambda each: each.part.system)
    )


def _readings(desk: Desk, state: State) -> tuple[ReadingRow, ...]:
    last = {dated.value.what: dated for dated in state.readings}
    return tuple(reading_row(desk, each.value, each.episode) for each in last.values())
