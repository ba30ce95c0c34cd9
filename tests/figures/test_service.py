"""What joins must carry, from settings, readings and figures."""

from __future__ import annotations

from dataclasses import replace

import pytest

from hoistbook.authored.records import End, Join, JoinEnd, Reading
from hoistbook.figures.figure import Figure, Figures, Key
from hoistbook.figures.service import flow_services, judged_joins, services_of
from hoistbook.fit.flows import Flow
from hoistbook.fit.piping import piping_of
from hoistbook.fit.verdict import Service, Verdict
from hoistbook.history.state import Dated, State
from hoistbook.units import from_unit
from hoistbook.values.end import Medium
from hoistbook.values.evidence import Evidence
from tests.figures.states import PLACE, fitted, given, quantity


def with_ends(state_of_part, **ends):
    typed = {
        name: End(name=name, text=text, place=PLACE)
        for name, text in ((key.replace("_", " "), text) for key, text in ends.items())
    }
    return replace(state_of_part, part=replace(state_of_part.part, ends=typed))


def join(a, end_a, b, end_b):
    made = Join(a=JoinEnd(part=a, end=end_a), b=JoinEnd(part=b, end=end_b), place=PLACE)
    return Dated(value=made, episode=3)


PARTS = {
    "turbo": with_ends(fitted("turbo", "turbocharger"), outlet="51 mm spigot, beaded"),
    "hot": with_ends(
        fitted("hot", "hose"), turbo_end="51 mm silicone hose", cooler_end="51 mm silicone hose"
    ),
    "cooler": with_ends(
        fitted("cooler", "charge cooler"),
        inlet="51 mm spigot, beaded",
        outlet="57 mm spigot, beaded",
    ),
    "cold": with_ends(fitted("cold", "hose"), cooler_end="57 mm silicone hose"),
    "cap": fitted("cap", "radiator cap", {"opens at": given(1.1, "bar")}),
}
JOINS = (
    join("turbo", "outlet", "hot", "turbo end"),
    join("hot", "cooler end", "cooler", "inlet"),
    join("cooler", "outlet", "cold", "cooler end"),
)
SETTINGS = {
    "boost": given(0.8, "bar", reference="gauge"),
    "fuel": given("ethanol blend 74 %"),
    "fuel pressure": given(3, "bar", reference="gauge"),
}


def state(**settings):
    chosen = {key.replace("_", " "): value for key, value in settings.items()}
    readings = (
        Reading(what="oil pressure", values=(quantity(4.1, "bar"),), place=PLACE),
        Reading(what="oil pressure", values=(quantity(3.9, "bar"),), place=PLACE),
    )
    return State(
        episode=3,
        car={},
        settings={
            key: Dated(value=value, episode=3) for key, value in (SETTINGS | chosen).items()
        },
        parts=PARTS,
        joins=JOINS,
        readings=tuple(Dated(value=each, episode=3) for each in readings),
        runs=(),
    )


def figures(**celsius):
    found = tuple(
        Figure(
            key=Key(name),
            value=from_unit(value, "degC"),
            low=0.0,
            high=0.0,
            evidence=Evidence.ESTIMATED,
            inputs=(),
            formula="",
            episode=3,
        )
        for name, value in celsius.items()
    )
    return Figures(episode=3, figures=found)


HEATS = figures(compressor_outlet_temperature=130, charge_temperature=50)


def test_each_flow_has_its_pressure_and_temperature() -> None:
    assert flow_services(state(), HEATS) == {
        Flow.INTAKE_AIR: Service(Medium.AIR, 0.0),
        Flow.CHARGE_AIR: Service(Medium.AIR, 0.8, 50),
        Flow.BOOST_SIGNAL: Service(Medium.AIR, 0.8),
        Flow.OIL: Service(Medium.OIL, 4.1),
        Flow.COOLANT: Service(Medium.COOLANT, 1.1),
        Flow.FUEL: Service(Medium.ETHANOL, 3.8),
    }


def test_a_fixed_regulator_and_no_boost_leave_the_fuel_pressure_as_it_is() -> None:
    fixed = flow_services(state(regulator=given("fixed")), HEATS)
    calm = flow_services(state(boost=given("none"), fuel=given("petrol")), HEATS)

    assert fixed[Flow.FUEL].pressure == 3.0
    assert calm[Flow.FUEL] == Service(Medium.PETROL, 3.0)
    assert calm[Flow.CHARGE_AIR].pressure == 0.0


def test_absolute_boost_counts_from_the_air_pressure() -> None:
    absolute = given(180, "kPa", reference="absolute")
    air = given(100, "kPa", reference="absolute")

    assert (
        flow_services(state(boost=absolute, air_pressure=air), HEATS)[Flow.CHARGE_AIR].pressure
        == 0.8
    )
    assert flow_services(state(boost=absolute), HEATS)[Flow.CHARGE_AIR].pressure is None


def test_air_is_hot_up_to_the_cooler_and_cooled_behind_it() -> None:
    found = services_of(piping_of(state()), HEATS)

    heats = {f"{a.part} {a.end}": service.temperature for (a, _), service in found.items()}
    assert heats == {"turbo outlet": 130, "hot cooler end": 130, "cooler outlet": 50}


def test_an_oil_drain_carries_no_pressure() -> None:
    drained = replace(
        state(),
        parts={
            "turbo": with_ends(fitted("turbo", "turbocharger"), oil_drain="-10 JIC male"),
            "drain": with_ends(fitted("drain", "oil drain"), turbo_end="-10 JIC female"),
        },
        joins=(join("turbo", "oil drain", "drain", "turbo end"),),
    )

    assert [*services_of(piping_of(drained), HEATS).values()] == [Service(Medium.OIL, 0.0)]


def test_a_hose_that_the_compressor_makes_too_hot_is_seen() -> None:
    found = judged_joins(
        state(), figures(compressor_outlet_temperature=190, charge_temperature=60)
    )

    assert [each.fit.verdict for each in found] == [
        Verdict.LOOKS_RIGHT,
        Verdict.LOOKS_RIGHT,
        Verdict.MATES,
    ]


def test_without_a_cooler_all_charge_air_is_hot() -> None:
    parts = {id_: part for id_, part in PARTS.items() if id_ != "cooler"}
    parts["throttle"] = with_ends(
        fitted("throttle", "throttle body"), inlet="51 mm spigot, beaded"
    )
    bare = replace(
        state(), parts=parts, joins=(JOINS[0], join("hot", "cooler end", "throttle", "inlet"))
    )

    found = services_of(piping_of(bare), HEATS)

    assert [service.temperature for service in found.values()] == [130, 130]


@pytest.mark.parametrize(
    "boost",
    [
        given(80, "psi", reference="gauge"),
        given(0.5, "psi", reference="gauge"),
        given(-0.5, "bar", reference="gauge"),
        given(0.5, "bar", reference="absolute"),
    ],
)
def test_no_join_is_judged_by_a_boost_that_cannot_be(boost):
    air = given(99, "kPa")
    services = flow_services(state(boost=boost, air_pressure=air), Figures(episode=3, figures=()))
    assert services[Flow.CHARGE_AIR].pressure is None
    assert services[Flow.FUEL].pressure == 3.0
