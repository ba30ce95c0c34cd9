"""Base inputs of the charge cooler: what it takes out of the charge, and what pressure it costs.

It is known in one of three ways, the best first: a measured or stated effectiveness at a flow,
from which its conductance follows; the size of its core; an effectiveness that is the same at
every flow.
"""

from __future__ import annotations

import math
from dataclasses import replace

from hoistbook.engineering import GLOSSARY
from hoistbook.engineering.relations import transfer_units_of
from hoistbook.figures.base import Base
from hoistbook.figures.defaults import DEFAULTS
from hoistbook.figures.finding import Finder, condition_of
from hoistbook.history.state import PartState
from hoistbook.units import dimension
from hoistbook.values.evidence import Evidence

CORE = ("core width", "core height", "core depth")
LOADING = 20.0
"""Charge through each cubic metre of core at which its conductance by volume holds, kg/s: 20 g/s
for each litre (common practice, no source)."""
MOST_EFFECTIVE = 0.97
"""Effectiveness beyond which no size of core can be told from it."""


def put_down_cooler(finder: Finder) -> None:
    """Put down what is known of the fitted charge cooler, and of the pressure lost on the way."""
    cooler = finder.one("charge cooler")
    if cooler is None:
        finder.conditions.add("effectiveness given")
        finder.assume("cooler_effectiveness", "uncooled")
    elif _stated_at_a_flow(cooler):
        _from_point(finder, cooler)
    elif "effectiveness" not in cooler.part.facts and {*CORE} <= cooler.part.facts.keys():
        _from_size(finder, cooler)
    else:
        finder.conditions.add("effectiveness given")
        if not finder.from_part("cooler_effectiveness", cooler, "effectiveness"):
            finder.assume("cooler_effectiveness")
    _loss(finder, cooler)


def _stated_at_a_flow(cooler: PartState) -> bool:
    given = cooler.part.facts.get("effectiveness")
    condition = condition_of(given) if given else None
    return condition is not None and dimension(condition.unit) == "mass flow"


def _from_point(finder: Finder, cooler: PartState) -> None:
    """Put down the conductance that an effectiveness at a flow amounts to."""
    finder.conditions.add("conductance known")
    finder.from_part("rated_cooler_effectiveness", cooler, "effectiveness")
    finder.from_condition("rated_conductance_flow", cooler, "effectiveness")
    finder.assume("cooling_ratio")
    stated, flow = (
        finder.bases.get(name) for name in ("rated_cooler_effectiveness", "rated_conductance_flow")
    )
    if stated is not None and flow is not None:
        finder.keep(_conductance(stated, flow, cooler))
    else:
        slips = [text for _, text in finder.missing.items() if "effectiveness" in text]
        finder.lacks("rated_conductance", slips[0] if slips else "effectiveness at a flow")


def _conductance(stated: Base, flow: Base, cooler: PartState) -> Base:
    """Return the conductance behind an effectiveness, with the band of the latter."""
    centre, mass = (
        each.value if isinstance(each.value, float) else each.value[0] for each in (stated, flow)
    )
    capacity = mass * (GLOSSARY["air_heat_capacity"].default or 0.0)
    ratio = 1 / DEFAULTS["cooling_ratio"].value
    low, middle, high = (
        capacity * (transfer_units_of(min(max(each, 0.01), MOST_EFFECTIVE), ratio) or 0.0)
        for each in (centre - stated.half_width, centre, centre + stated.half_width)
    )
    return replace(
        stated,
        name="rated_conductance",
        value=middle,
        half_width=(high - low) / 2,
        ceiling=math.inf,
        origin=f"effectiveness of {cooler.part.name} at its flow, turned round",
        evidence=Evidence.ESTIMATED if stated.evidence is Evidence.MEASURED else stated.evidence,
    )


def _from_size(finder: Finder, cooler: PartState) -> None:
    """Put down the size of the core, and the flow for which a conductance by volume holds."""
    finder.conditions |= {"conductance known", "core size known"}
    volume = 1.0
    for fact in CORE:
        name = fact.replace(" ", "_")
        finder.from_part(name, cooler, fact)
        base = finder.bases.get(name)
        volume *= base.value if base is not None and isinstance(base.value, float) else 0.0
    finder.assume("core_conductance")
    finder.assume("cooling_ratio")
    if volume > 0:
        origin = "20 g/s of charge for each litre of core: there its conductance by volume holds"
        finder.exact("rated_conductance_flow", LOADING * volume, origin)


COOLER_ALONE = (
    "Between compressor and manifold it holds what the cooler loses, as it was stated; what the "
    "pipes lose stands on their own sheets and would raise it by a few hundredths."
)


def _loss(finder: Finder, cooler: PartState | None) -> None:
    if cooler is not None and finder.from_condition("rated_cooler_flow", cooler, "pressure loss"):
        finder.conditions.add("loss stated at a flow")
        finder.from_part("rated_cooler_pressure_loss", cooler, "pressure loss")
        finder.assume("rated_charge_density")
        finder.notes.append(("pressure_ratio", COOLER_ALONE))
        return
    finder.conditions.add("loss stated at no flow")
    if not finder.from_part("charge_path_loss", cooler, "pressure loss"):
        finder.assume("charge_path_loss")
