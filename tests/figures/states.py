"""Hand-made states of an invented car for the tests of figures and comparisons."""

from hoistbook.authored.records import Given, Part
from hoistbook.history.state import Dated, PartState, State, Status
from hoistbook.problems import Place
from hoistbook.units import from_unit
from hoistbook.values.evidence import Evidence
from hoistbook.values.quantity import Quantity

PLACE = Place("build.yaml", 7, 3, "car:")


def quantity(value, unit, **more):
    return Quantity(value=from_unit(value, unit), unit=unit, text=f"{value} {unit}", **more)


def given(value, unit=None, evidence=Evidence.STATED, **more):
    stated = value if unit is None else quantity(value, unit, **more)
    return Given(value=stated, place=PLACE, evidence=evidence)


def fitted(part, kind, facts=None, count=1, episode=3, **more):
    return PartState(
        part=Part(
            id=part,
            name=part.replace("-", " ").capitalize(),
            place=PLACE,
            kind=kind,
            count=count,
            facts=facts or {},
        ),
        status=Status.FITTED,
        known_in=episode,
        since=episode,
        fitted_in=episode,
        changed_in=episode,
        **more,
    )


CAR = {
    "engine displacement": given(1600, "cc"),
    "engine compression ratio": given(9.4),
    "mass": given(920, "kg"),
    "engine cylinders": given(4),
    "engine bore": given(78.4, "mm"),
    "engine stroke": given(82.8, "mm"),
    "engine rod length": given(137, "mm"),
    "engine chamber volume": given(35, "cc"),
    "engine gasket thickness": given(1.3, "mm"),
    "engine gasket bore": given(79.5, "mm"),
    "engine deck clearance": given(0.4, "mm"),
    "engine dish volume": given(4, "cc"),
    "engine inlet closes": given(48, "deg"),
    "gearing gears": given("3.55 / 1.95 / 1.31 / 1.03 / 0.85"),
    "gearing final drive": given(3.94),
    "tyres": given("185/60 R14"),
}
SETTINGS = {
    "boost": given("none"),
    "fuel": given("petrol"),
    "rev limit": given(6300, "rpm"),
    "mixture": given(0.90),
    "air pressure": given(99, "kPa", half_width=1500),
    "air temperature": given(15, "degC", half_width=8),
}
PARTS = {
    "plenum": fitted("plenum", "intake manifold", {"volume": given(3, "L")}),
    "injectors": fitted(
        "injectors",
        "injectors",
        {
            "static flow": given(340, "cc/min", at=quantity(3, "bar")),
            "dead time": given(1.0, "ms"),
        },
        count=4,
    ),
    "pump": fitted(
        "pump",
        "fuel pump",
        {"flow": given(165, "L/h", at=quantity(4, "bar")), "current": given(9, "A")},
    ),
}
TURBO_PARTS = PARTS | {
    "turbo": fitted("turbo", "turbocharger", {"compressor efficiency": given(0.70)}),
    "cooler": fitted(
        "cooler",
        "charge cooler",
        {
            "effectiveness": given(68, "%", half_width=0.08),
            "pressure loss": given(6, "kPa", half_width=3000, at=quantity(100, "g/s")),
            "volume": given(4.5, "L"),
        },
    ),
    "hot-pipe": fitted(
        "hot-pipe",
        "pipe",
        {
            "bore": given(47.8, "mm"),
            "length": given(0.9, "m"),
            "carries": given("charge air, before the cooler"),
        },
    ),
}


def state(episode=3, car=None, settings=None, parts=None, runs=(), readings=()):
    return State(
        episode=episode,
        car={key: Dated(value=value, episode=0) for key, value in (car or CAR).items()},
        settings={
            key: Dated(value=value, episode=1)
            for key, value in (SETTINGS | (settings or {})).items()
        },
        parts=PARTS if parts is None else parts,
        joins=(),
        readings=tuple(readings),
        runs=tuple(runs),
    )


def boosted(bar=0.8, **more):
    settings = {
        "boost": given(bar, "bar", reference="gauge"),
        "mixture": given(0.83),
    } | more.pop("settings", {})
    return state(settings=settings, parts=more.pop("parts", TURBO_PARTS), **more)
