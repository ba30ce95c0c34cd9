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
    """`seen`, in the original or as quoted; `constants seen`, of the rest nothing; `from memory`,
    `computed here` or `common practice, no source`."""


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
        key="anderson-2020",
        authors="J. E. Anderson, T. J. Wallington",
        year=2020,
        title="Novel Method to Estimate the Octane Ratings of Ethanol-Gasoline Mixtures "
        "Using Base Fuel Properties",
        publisher="Energy & Fuels 34, 4632-4642",
    ),
    Reference(
        key="astm-d4814",
        authors="ASTM International",
        year=2021,
        title="Standard Specification for Automotive Spark-Ignition Engine Fuel",
        publisher="ASTM D4814",
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
        key="bipm-si-2019",
        authors="Bureau International des Poids et Mesures",
        year=2019,
        title="The International System of Units (SI), 9th edition",
        publisher="BIPM",
    ),
    Reference(
        key="buck-1996",
        authors="A. L. Buck",
        year=1996,
        title="Model CR-1A Hygrometer with Autofill: Operating Manual",
        publisher="Buck Research",
    ),
    Reference(
        key="cipm-2007",
        authors="A. Picard, R. S. Davis, M. Gläser, K. Fujii",
        year=2008,
        title="Revised formula for the density of moist air (CIPM-2007)",
        publisher="Metrologia 45, 149-155",
        doi="10.1088/0026-1394/45/2/004",
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
        key="coolprop",
        authors="I. H. Bell, J. Wronski, S. Quoilin, V. Lemort",
        year=2014,
        title="Pure and Pseudo-pure Fluid Thermophysical Property Evaluation and the Open-Source "
        "Thermophysical Property Library CoolProp",
        publisher="Industrial & Engineering Chemistry Research 53, 2498-2508",
        doi="10.1021/ie4033999",
        seen="computed here",
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
        key="din-70020",
        authors="Deutsches Institut für Normung",
        year=1986,
        title="Kraftfahrzeugbau: Leistungen",
        publisher="DIN 70020, part 6",
    ),
    Reference(
        key="en-228",
        authors="European Committee for Standardization",
        year=2012,
        title="Automotive fuels: Unleaded petrol: Requirements and test methods",
        publisher="EN 228",
    ),
    Reference(
        key="etrto",
        authors="European Tyre and Rim Technical Organisation",
        year=None,
        title="Standards Manual",
        publisher="ETRTO",
    ),
    Reference(
        key="fox-1973",
        authors="G. T. Fox",
        year=1973,
        title="On the Physics of Drag Racing",
        publisher="American Journal of Physics 41, 311-313",
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
        key="iso-1585",
        authors="International Organization for Standardization",
        year=2020,
        title="Road vehicles: Engine test code: Net power",
        publisher="ISO 1585",
    ),
    Reference(
        key="iso-4000-1",
        authors="International Organization for Standardization",
        year=2021,
        title="Passenger car tyres and rims: Part 1: Tyres (metric series)",
        publisher="ISO 4000-1",
    ),
    Reference(
        key="iso-898-1",
        authors="International Organization for Standardization",
        year=2013,
        title="Mechanical properties of fasteners made of carbon steel and alloy steel: Part 1",
        publisher="ISO 898-1",
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
        key="machta-1970",
        authors="L. Machta, E. Hughes",
        year=1970,
        title="Atmospheric Oxygen in 1967 to 1970",
        publisher="Science 168, 1582-1584",
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
        key="sae-j1349",
        authors="SAE International",
        year=1990,
        title="Engine Power Test Code: Spark Ignition and Compression Ignition: Net Power Rating",
        publisher="SAE J1349, June 1990",
    ),
    Reference(
        key="sae-j1826",
        authors="SAE International",
        year=1995,
        title="Turbocharger Gas Stand Test Code",
        publisher="SAE J1826",
    ),
    Reference(
        key="sae-j607",
        authors="SAE International",
        year=None,
        title="Small Spark Ignition Engine Test Code",
        publisher="SAE J607",
    ),
    Reference(
        key="shigley-2011",
        authors="R. G. Budynas, J. K. Nisbett",
        year=2011,
        title="Shigley's Mechanical Engineering Design, 9th edition",
        publisher="McGraw-Hill",
    ),
    Reference(
        key="us-standard-atmosphere-1976",
        authors="NOAA, NASA, United States Air Force",
        year=1976,
        title="U.S. Standard Atmosphere, 1976",
        publisher="NOAA-S/T 76-1562",
        seen="constants seen",
    ),
    Reference(
        key="vdi-2230",
        authors="Verein Deutscher Ingenieure",
        year=2015,
        title="Systematic calculation of highly stressed bolted joints: Joints with one "
        "cylindrical bolt",
        publisher="VDI 2230, part 1",
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
