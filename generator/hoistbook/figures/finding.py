"""Finding a base input in a state: car, settings, a fitted part, or else the defaults."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np

from hoistbook.authored.records import Given
from hoistbook.engineering import GLOSSARY
from hoistbook.figures.base import Base, keyed
from hoistbook.figures.defaults import DEFAULTS
from hoistbook.figures.spreads import spread
from hoistbook.history.state import Dated, PartState, State, Status, own_count
from hoistbook.units import dimension
from hoistbook.values.evidence import Evidence
from hoistbook.values.possible import POSSIBLE
from hoistbook.values.quantity import Quantity

FLOORS = {"boost": -math.inf, "deck_clearance": -math.inf, "dish_volume": -math.inf}
CEILINGS = {
    "relative_humidity": 1.0,
    "cooler_effectiveness": 1.0,
    "rated_cooler_effectiveness": 1.0,
    "compressor_efficiency": 1.0,
    "volume_fraction_second": 1.0,
}
"""Physical bounds, by glossary key; what has no line here lies anywhere above zero."""
MAY_BE_NOTHING = (
    "bend_count",
    "boost",
    "charge_path_loss",
    "cooler_effectiveness",
    "dead_time",
    "deck_clearance",
    "dish_volume",
    "end_loss_coefficients",
    "ignition_retard",
    "inlet_loss",
    "rated_cooler_pressure_loss",
    "relative_humidity",
    "volume_fraction_second",
)
"""Inputs that an author may give as zero; of all others zero is no number but a slip."""

NEXT_TO_NOTHING = 3e3
"""How far from the air's an absolute pressure is still the air's [Pa]: days differ by as much."""
GAUGE = ("boost", "base_fuel_pressure", "rated_pump_pressure")
"""Inputs that the chain takes as gauge pressures, whichever way the author gives them."""

GIVE = {
    "engine_speed": "rev limit, as in `settings: {rev limit: 6500 rpm}`",
    "possible speed": "a possible {}, between 1,000 and 25,000 rpm",
    "altitude": "height of the place, as in `settings: {sea level pressure: 1013 hPa, altitude: "
    "320 m}`, or the pressure on the spot, `air pressure: 975 hPa`",
    "boost": "boost, as in `settings: {boost: 0.8 bar gauge}`; without a charger at work "
    "`settings: {boost: none}`",
    "full load": "boost with the throttle open: all that is given lies more than 0.1 bar below "
    "the pressure of the air",
    "displacement": "displacement, as in `car: {engine displacement: 1598 cc}`",
    "compression_ratio": "compression ratio, as in `car: {engine compression ratio: 9.5:1}`",
    "vehicle_mass": "mass of the car, as in `car: {mass: 905 kg}`",
    "fuel": "fuel, as in `settings: {fuel: petrol}` or `settings: {fuel: ethanol blend 74 %}`",
    "share": "share of the {blend}, as in `settings: {{fuel: {blend} 20 %}}`",
    "rated_static_flow": "static flow of the fitted injectors: their part with `kind: injectors` "
    "and `facts: {static flow: 550 cc/min at 3 bar}`",
    "carries": "what {part} carries, as in `facts: {{carries: charge air, after the cooler}}`",
    "charge_pipe_volume": "bore and length of every pipe that carries charge air, as in `facts: "
    "{bore: 54 mm, length: 1.1 m, carries: charge air, after the cooler}`",
    "cooler_volume": "volume inside {part}, as in `facts: {{volume: 5 L}}`",
    "plenum_volume": "volume of the fitted intake manifold: its part with `kind: intake manifold` "
    "and `facts: {volume: 3 L}`",
    "tyres": "size of the tyres, as in `car: {tyres: 185/60 R14}`",
    "final_drive_ratio": "final drive, as in `car: {gearing: {final drive: 3.94}}`",
    "gear_ratio": "ratios of the gears, as in `car: {gearing: {gears: [3.5, 1.95, 1.3]}}`",
    "cylinder_count": "number of cylinders, as in `car: {engine cylinders: 4}`",
    "cylinder_bore": "bore, as in `car: {engine bore: 78.4 mm}`",
    "stroke": "stroke, as in `car: {engine stroke: 82.8 mm}`",
    "connecting_rod_length": "length of the rods, as in `car: {engine rod length: 137 mm}`",
    "chamber_volume": "chamber in the head, as in `car: {engine chamber volume: 35 cc}`",
    "gasket_thickness": "head gasket, as in `car: {engine gasket thickness: 1.3 mm}`",
    "gasket_bore": "its bore, as in `car: {engine gasket bore: 79.5 mm}`",
    "deck_clearance": "piston below the deck, as in `car: {engine deck clearance: 0.4 mm}`",
    "dish_volume": "dish of the piston, a dome as less than nothing, as in `car: {engine dish "
    "volume: 4 cc}`",
    "inlet_closing_angle": "when the inlet closes after bottom dead centre, as in `car: {engine "
    "inlet closes: 48 deg}`",
    "rated_pump_flow": "flow of the fitted fuel pump: its part with `kind: fuel pump` and "
    "`facts: {flow: 165 L/h at 4 bar}`",
}
"""What to write where an input is missing that has no default."""


def number(given: Given) -> float | None:
    """Return the number of a stated property in SI, None where it is words."""
    if isinstance(given.value, Quantity):
        return given.value.value
    return None if isinstance(given.value, str) else float(given.value)


def condition_of(given: Given) -> Quantity | None:
    """Return the condition a quantity holds at: 3 bar in "550 cc/min at 3 bar"."""
    return given.value.at if isinstance(given.value, Quantity) else None


def evidence_of(given: Given) -> Evidence:
    """Return the evidence of a stated property; a word beside the quantity itself wins."""
    own = given.value.evidence if isinstance(given.value, Quantity) else None
    return own or given.evidence


def impossible(name: str, value: float) -> str:
    """Return what a number must be that it is not, empty where it can be."""
    if value <= 0 and name not in MAY_BE_NOTHING:
        return "a number above zero"
    if value < FLOORS.get(name, 0.0):
        return "a number of nothing or more"
    low, high, words = POSSIBLE.get(name, (-math.inf, math.inf, ""))
    if not low <= value <= high:
        return words
    ceiling = CEILINGS.get(name, math.inf)
    return f"a number up to {100 * ceiling:g} %" if value > ceiling else ""


def impossible_boost(highest: float) -> str:
    """Return what the highest boost of a setting must be that it is not; nothing is none.

    Parameters
    ----------
    highest
        Above the pressure of the air [Pa].
    """
    low, high, words = POSSIBLE["highest_boost"]
    return "" if highest == 0 or low <= highest <= high else words


def pieces(part: PartState) -> int:
    """Return how many pieces of a part are on the car."""
    return part.pieces_fitted or own_count(part.part)


class Finder:
    """Collects the base inputs of one state, and what is missing."""

    def __init__(self, state: State) -> None:
        self.state = state
        self.bases: dict[str, Base] = {}
        self.conditions: set[str] = set()
        self.missing: dict[str, str] = {}
        self.notes: list[tuple[str, str]] = []

    def setting(self, key: str) -> Dated[Given] | None:
        """Return a setting that holds one value."""
        dated = self.state.settings.get(key)
        if dated is None or not isinstance(dated.value, Given):
            return None
        return Dated(value=dated.value, episode=dated.episode)

    def words(self, key: str) -> str:
        """Return the words of a setting, empty where there is none."""
        dated = self.setting(key)
        value = dated.value.value if dated else ""
        return value.text if isinstance(value, Quantity) else str(value)

    def fitted(self, kind: str) -> list[PartState]:
        """Return the parts of a kind that are on the car and whole."""
        return [
            each
            for each in self.state.parts.values()
            if each.part.kind == kind and each.status is Status.FITTED and not each.broken
        ]

    def one(self, kind: str) -> PartState | None:
        """Return the part of a kind that was fitted last, None where there is none."""
        parts = self.fitted(kind)
        return max(parts, key=lambda each: each.fitted_in or 0, default=None)

    @property
    def charging(self) -> str:
        """Return `boosted` or `unboosted`."""
        return "boosted" if "boosted" in self.conditions else "unboosted"

    def keep(self, base: Base) -> None:
        """Put an input down; the last word stands."""
        self.bases[base.key] = base

    def take(
        self, name: str, dated: Dated[Given] | None, origin: str, subject: str = "engine"
    ) -> bool:
        """Put down a number that the author gives; return whether there is one.

        A number that cannot be is put down as missing: no default takes its place.
        """
        value = number(dated.value) if dated else None
        if dated is None or value is None or not math.isfinite(value):
            return False
        evidence = evidence_of(dated.value)
        quantity = dated.value.value
        own = quantity.half_width if isinstance(quantity, Quantity) else None
        if name in GAUGE and isinstance(quantity, Quantity) and quantity.reference == "absolute":
            value = self.above_air(quantity)
            origin = f"{origin}, absolute, less the pressure of the air"
        wanted = impossible(name, value)
        if wanted:
            self.lacks(keyed(name, subject), f"{wanted} for {origin}")
            return True
        self.keep(
            Base(
                name=name,
                value=value,
                half_width=spread(name, evidence, value) if own is None else own,
                evidence=evidence,
                origin=origin,
                episode=dated.episode,
                place=dated.value.place,
                floor=FLOORS.get(name, 0.0),
                ceiling=CEILINGS.get(name, math.inf),
                subject=subject,
            )
        )
        return True

    def above_air(self, pressure: Quantity) -> float:
        """Return a pressure as a gauge would read it [Pa]; next to the air's it is nothing."""
        if pressure.reference != "absolute":
            return pressure.value
        above = pressure.value - self._air_pressure()
        return 0.0 if abs(above) < NEXT_TO_NOTHING else above

    def _air_pressure(self) -> float:
        """Return the central pressure of the air; zero where even that is no number."""
        air = self.bases.get("air_pressure")
        return float(np.max(air.value)) if air else 0.0

    def assume(self, name: str, condition: str = "", subject: str = "engine") -> None:
        """Put down the default of an input, of the engine's condition where that decides."""
        default = DEFAULTS[f"{name}, {condition}" if condition else name]
        self.keep(
            Base(
                name=name,
                value=default.value,
                half_width=default.half_width,
                evidence=Evidence.ASSUMED,
                origin=f"default: {default.reason}",
                shape=default.shape,
                floor=FLOORS.get(name, 0.0),
                ceiling=CEILINGS.get(name, math.inf),
                subject=subject,
            )
        )

    def exact(self, name: str, value: float, origin: str, subject: str = "engine") -> None:
        """Put down a number that has no band: a count, a size by standard."""
        base = Base(
            name=name,
            value=value,
            half_width=0.0,
            evidence=Evidence.STATED,
            origin=origin,
            subject=subject,
            floor=FLOORS.get(name, 0.0),
        )
        self.keep(base)

    def from_car(self, name: str, key: str) -> bool:
        """Put down a number of the car; return whether there is one."""
        return self.take(name, self.state.car.get(key), f"car: {key}")

    def from_settings(self, name: str, key: str) -> bool:
        """Put down a number of the settings; return whether there is one."""
        return self.take(name, self.setting(key), f"settings: {key}")

    def from_part(
        self, name: str, holder: PartState | None, fact: str, subject: str = "engine"
    ) -> bool:
        """Put down a fact of a part; return whether there is one."""
        if holder is None or fact not in holder.part.facts:
            return False
        dated = Dated(value=holder.part.facts[fact], episode=holder.fitted_in or holder.known_in)
        return self.take(name, dated, f"{fact} of {holder.part.name}", subject)

    def from_condition(self, name: str, holder: PartState, fact: str) -> bool:
        """Put down the condition that a part's fact was stated at; return whether there is one."""
        given = holder.part.facts.get(fact)
        condition = condition_of(given) if given else None
        if given is None or condition is None:
            return False
        wanted = dimension(GLOSSARY[name].unit)
        if dimension(condition.unit) != wanted:
            text = f"{fact} of {holder.part.name} at a {wanted}, not at {condition.text}"
            self.lacks(name, text)
            return True
        stated = replace(given, value=condition)
        dated = Dated(value=stated, episode=holder.fitted_in or holder.known_in)
        return self.take(name, dated, f"at which the {fact} of {holder.part.name} is stated")

    def lacks(self, name: str, give: str) -> None:
        """Put down what is missing and what to write."""
        self.missing[name] = give
