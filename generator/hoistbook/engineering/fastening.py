"""Tables of fasteners, and the torque of a joint as the range that its lubricant leaves open."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from hoistbook.engineering.fasteners import torque_of_nut_factor


@dataclass(frozen=True, slots=True, kw_only=True)
class PropertyClass:
    """Least stresses of a property class [Pa], for threads of up to 16 mm."""

    proof: float
    yielding: float
    tensile: float


PROPERTY_CLASSES: Mapping[str, PropertyClass] = MappingProxyType(
    {
        "8.8": PropertyClass(proof=580e6, yielding=640e6, tensile=800e6),
        "10.9": PropertyClass(proof=830e6, yielding=940e6, tensile=1040e6),
        "12.9": PropertyClass(proof=970e6, yielding=1100e6, tensile=1220e6),
    }
)
"""By the marking on the head; EN ISO 898-1:2013, as a fastener distributor's page prints it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class NutFactor:
    """Torque over preload times diameter, for one state of the threads."""

    low: float
    typical: float
    high: float
    source: str
    note: str = ""


_SUPPLIER = "a fastener supplier's engineering data page"
_MIDDLE = f"{_SUPPLIER}; typical: the middle of its range"

NUT_FACTORS: Mapping[str, NutFactor] = MappingProxyType(
    {
        "plain steel, dry and clean": NutFactor(
            low=0.18,
            typical=0.20,
            high=0.27,
            source=f"{_SUPPLIER}; typical: a newsletter on the nut factor",
        ),
        "zinc plated": NutFactor(
            low=0.17,
            typical=0.20,
            high=0.35,
            source=f"{_SUPPLIER}; a newsletter on the nut factor has 0.17",
            note="the scatter is the point",
        ),
        "engine oil": NutFactor(
            low=0.10,
            typical=0.15,
            high=0.26,
            source=f"{_SUPPLIER}; typical: a newsletter on the nut factor",
        ),
        "phosphate and oil": NutFactor(low=0.15, typical=0.18, high=0.22, source=_MIDDLE),
        "stainless on stainless, dry": NutFactor(
            low=0.30, typical=0.40, high=0.50, source=_MIDDLE, note="it galls: always lubricate"
        ),
        "zinc-flake coating": NutFactor(
            low=0.16, typical=0.22, high=0.32, source=f"{_SUPPLIER}; typical: judgement"
        ),
        "anti-seize paste": NutFactor(
            low=0.09,
            typical=0.12,
            high=0.16,
            source="from memory",
            note="the torque of a dry exhaust stud has to be cut",
        ),
        "thread-locking compound": NutFactor(
            low=0.11,
            typical=0.14,
            high=0.18,
            source="a sheet of torque and tension equations (0.14); the range from memory",
            note="it acts as a lubricant",
        ),
    }
)
"""By the state of the threads."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TorqueRange:
    """What torque a preload asks for, as far as the state of the threads is known [N m]."""

    low: float
    typical: float
    high: float


def torque_range(condition: str, assembly_preload: float, thread_diameter: float) -> TorqueRange:
    """Return the torques between which a preload is reached in one state of the threads.

    Parameters
    ----------
    condition
        One of `NUT_FACTORS`.
    assembly_preload
        Force that clamps the joint as tightened [N].
    thread_diameter
        Nominal diameter of the thread [m].

    Returns
    -------
    TorqueRange
        Least, typical and greatest torque [N m]. The torque in the maker's manual goes before it.

    Raises
    ------
    KeyError
        For a condition that is not in `NUT_FACTORS`.

    Examples
    --------
    >>> torque_range("engine oil", 15.92e3, 8e-3)
    TorqueRange(low=12.736, typical=19.104, high=33.114)
    """
    factor = NUT_FACTORS[condition]
    low, typical, high = (
        float(
            torque_of_nut_factor(
                nut_factor=each,
                assembly_preload=assembly_preload,
                thread_diameter=thread_diameter,
            )
        )
        for each in (factor.low, factor.typical, factor.high)
    )
    return TorqueRange(low=low, typical=typical, high=high)
