"""Every formula on one list: its topic, its reference, its check values, what takes its result."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from hoistbook.engineering.check_counts import CHECK_COUNTS
from hoistbook.engineering.formula import FORMULAS, Formula
from hoistbook.references import Reference

TOPICS: Mapping[str, str] = MappingProxyType(
    {
        "air": "Air",
        "airflow": "Air flow of the engine",
        "compressor": "Compressor",
        "charge_cooler": "Charge cooler",
        "cooler_core": "Core of the charge cooler",
        "blends": "Fuel blends",
        "combustion": "Combustion",
        "octane": "Octane numbers",
        "mean_pressure": "Mean effective pressures",
        "power": "Power and torque",
        "power_standards": "Power standards",
        "installation": "The engine in this car",
        "injectors": "Injectors",
        "pump": "Fuel pump and wiring",
        "pipes": "Pipes",
        "bends": "Bends and ends",
        "throats": "Throats and volumes",
        "heat": "Coolant and oil",
        "gearing": "Gearing and road",
        "compression": "Compression",
        "fasteners": "Fasteners",
    }
)
"""Title of a topic by the module that holds its formulas, in the order of the list."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Listed:
    """One formula as the list has it."""

    name: str
    topic: str
    """Title of its topic."""
    summary: str
    """First line of its docstring."""
    reference: Reference
    where: str
    """Where it stands in the reference."""
    check_values: int
    """Reference values that it is held against whenever the tests run."""
    taken_by: tuple[str, ...]
    """Formulas that take its result, in the order of the alphabet."""


def formula_list() -> tuple[Listed, ...]:
    """Return every formula, topic by topic, and within a topic as its module has them.

    Examples
    --------
    >>> first = formula_list()[0]
    >>> first.topic, first.name, first.reference.key, first.taken_by
    ('Air', 'saturation_pressure', 'buck-1996', ('vapour_pressure',))
    """
    order = list(TOPICS)
    ranked = sorted(FORMULAS.values(), key=lambda one: order.index(_module(one)))
    return tuple(_listed(one) for one in ranked)


def _module(one: Formula) -> str:
    return one.function.__module__.rpartition(".")[2]


def _listed(one: Formula) -> Listed:
    takers = (other.name for other in FORMULAS.values() if one.result in other.parameters)
    return Listed(
        name=one.name,
        topic=TOPICS[_module(one)],
        summary=one.summary,
        reference=one.reference,
        where=one.where,
        check_values=CHECK_COUNTS[one.name],
        taken_by=tuple(sorted(takers)),
    )
