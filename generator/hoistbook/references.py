"""The published sources that formulas, limits and defaults rest on, in alphabetical order."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType


@dataclass(frozen=True, slots=True, kw_only=True)
class Reference:
    """One source, and whether its text was before the writer's eyes."""

    key: str
    authors: str
    """Authors as printed, or the body that issued it."""
    year: int | None
    title: str
    publisher: str
    """Publisher, or journal with volume and pages, or number of the standard."""
    doi: str = ""
    seen: str = "from memory"
    """`seen`, `from memory`, `computed here` or `common practice, no source`."""


_REFERENCES = (
    Reference(
        key="afdc",
        authors="US Department of Energy, Alternative Fuels Data Center",
        year=None,
        title="Fuel Properties Comparison",
        publisher="afdc.energy.gov",
        seen="seen",
    ),
    Reference(
        key="astm-d5798",
        authors="ASTM International",
        year=2021,
        title="Standard Specification for Ethanol Fuel Blends for Flexible-Fuel Automotive "
        "Spark-Ignition Engines",
        publisher="ASTM D5798",
        seen="seen",
    ),
    Reference(
        key="buck-1996",
        authors="A. L. Buck",
        year=1996,
        title="Model CR-1A Hygrometer with Autofill: Operating Manual",
        publisher="Buck Research",
    ),
    Reference(
        key="codata-1989",
        authors="J. D. Cox, D. D. Wagman, V. A. Medvedev",
        year=1989,
        title="CODATA Key Values for Thermodynamics",
        publisher="Hemisphere Publishing",
    ),
    Reference(
        key="common-practice",
        authors="the trade",
        year=None,
        title="Common practice",
        publisher="",
        seen="common practice, no source",
    ),
    Reference(
        key="cycle-simulation",
        authors="hoistbook",
        year=2026,
        title="Two-zone cycle simulation of boosted spark-ignition engines with Cantera 3.2, "
        "100 cases",
        publisher="tests/engineering/cycle/ of this program",
        seen="computed here",
    ),
    Reference(
        key="en-228",
        authors="European Committee for Standardization",
        year=2012,
        title="Automotive fuels: Unleaded petrol: Requirements and test methods",
        publisher="EN 228",
    ),
    Reference(
        key="haaland-1983",
        authors="S. E. Haaland",
        year=1983,
        title="Simple and Explicit Formulas for the Friction Factor in Turbulent Pipe Flow",
        publisher="Journal of Fluids Engineering 105, 89-90",
        doi="10.1115/1.3240948",
    ),
    Reference(
        key="heywood-1988",
        authors="J. B. Heywood",
        year=1988,
        title="Internal Combustion Engine Fundamentals",
        publisher="McGraw-Hill",
    ),
    Reference(
        key="incropera-2007",
        authors="F. P. Incropera, D. P. DeWitt, T. L. Bergman, A. S. Lavine",
        year=2007,
        title="Fundamentals of Heat and Mass Transfer, 6th edition",
        publisher="Wiley",
    ),
    Reference(
        key="iupac-2021",
        authors="T. Prohaska and others",
        year=2022,
        title="Standard atomic weights of the elements 2021",
        publisher="Pure and Applied Chemistry 94, 573-600",
        doi="10.1515/pac-2019-0603",
    ),
    Reference(
        key="rennels-2012",
        authors="D. C. Rennels, H. M. Hudson",
        year=2012,
        title="Pipe Flow: A Practical and Comprehensive Guide",
        publisher="Wiley",
        doi="10.1002/9781118275276",
    ),
    Reference(
        key="sae-j1826",
        authors="SAE International",
        year=1995,
        title="Turbocharger Gas Stand Test Code",
        publisher="SAE J1826",
    ),
    Reference(
        key="us-standard-atmosphere-1976",
        authors="NOAA, NASA, United States Air Force",
        year=1976,
        title="U.S. Standard Atmosphere, 1976",
        publisher="NOAA-S/T 76-1562",
        seen="seen",
    ),
    Reference(
        key="white-2011",
        authors="F. M. White",
        year=2011,
        title="Fluid Mechanics, 7th edition",
        publisher="McGraw-Hill",
    ),
)

REFERENCES: Mapping[str, Reference] = MappingProxyType({each.key: each for each in _REFERENCES})
"""Every source by its key, alphabetical."""
