"""Formulas, relations and the glossary of their quantities; pure, and ignorant of files and pages.

`FORMULAS` maps a formula's name to its record, `GLOSSARY` a quantity's key to its term, `FUELS` a
fuel's name to its properties. Importing this package registers every formula.
"""

from hoistbook.engineering import (
    air,
    airflow,
    bends,
    blends,
    charge_cooler,
    combustion,
    compression,
    compressor,
    cooler_core,
    fasteners,
    gearing,
    heat,
    injectors,
    installation,
    mean_pressure,
    octane,
    pipes,
    power,
    power_standards,
    pump,
    throats,
)
from hoistbook.engineering.formula import FORMULAS, Formula
from hoistbook.engineering.fuels import FUELS, Fuel, Property
from hoistbook.engineering.glossary import GLOSSARY, Term

__all__ = [
    "FORMULAS",
    "FUELS",
    "GLOSSARY",
    "Formula",
    "Fuel",
    "Property",
    "Term",
    "air",
    "airflow",
    "bends",
    "blends",
    "charge_cooler",
    "combustion",
    "compression",
    "compressor",
    "cooler_core",
    "fasteners",
    "gearing",
    "heat",
    "injectors",
    "installation",
    "mean_pressure",
    "octane",
    "pipes",
    "power",
    "power_standards",
    "pump",
    "throats",
]
