"""Heat, oil, road and octane: ranges that are published as ranges, and libraries."""

from __future__ import annotations

import re

import fluids
import numpy as np
import pytest
from CoolProp.CoolProp import PropsSI

from hoistbook.engineering import FORMULAS, GLOSSARY
from hoistbook.figures.defaults import DEFAULTS
from hoistbook.units import from_unit, to_unit

COMPRESSION = [
    one for one in FORMULAS.values() if one.function.__module__.endswith(("compression", "octane"))
]


def ends(name: str) -> tuple[float, float]:
    """Return between what an input lies where nobody gives it."""
    default = DEFAULTS[name]
    return default.value - default.half_width, default.value + default.half_width


def test_coolant_takes_the_published_share_of_the_fuel() -> None:
    # Heywood (1988), Table 12.1, from memory: 17 to 26 % of the fuel's energy at full power.
    low, high = ends("coolant_share")

    assert (low, high) == pytest.approx((0.17, 0.26))
    assert FORMULAS["coolant_heat"].valid["coolant_share"] == (0.17, 0.26)


def test_a_share_beyond_the_published_range_is_named() -> None:
    assert FORMULAS["coolant_heat"].outside({"coolant_share": 0.30}) == ("coolant_share",)
    assert FORMULAS["coolant_heat"].outside({"coolant_share": 0.22}) == ()


@pytest.mark.parametrize("coolant", ["INCOMP::MEG-50%", "Water"])
def test_the_flow_of_coolant_warms_a_real_coolant_by_as_much(coolant: str) -> None:
    # CoolProp: enthalpy of the coolant before and after, at 2 bar.
    random = np.random.default_rng(90)
    for _ in range(20):
        cold, rise = random.uniform(340, 360), random.uniform(4, 12)
        middle = ("T", cold + rise / 2, "P", 2e5, coolant)

        flow = FORMULAS["coolant_flow"](
            coolant_heat=80e3,
            coolant_density=PropsSI("D", *middle),
            coolant_heat_capacity=PropsSI("C", *middle),
            coolant_temperature_rise=rise,
        )

        warmed = PropsSI("H", "T", cold + rise, "P", 2e5, coolant)
        warmed -= PropsSI("H", "T", cold, "P", 2e5, coolant)
        assert flow * PropsSI("D", *middle) * warmed == pytest.approx(80e3, rel=2e-3)


def test_a_drain_carries_what_a_library_loses_over_its_fall() -> None:
    # fluids: friction factor of hot oil, laminar or turbulent, and the loss along the pipe.
    random = np.random.default_rng(15)
    for _ in range(40):
        velocity, bore = random.uniform(0.2, 2.0), random.uniform(0.010, 0.022)
        length, density = random.uniform(0.1, 0.6), 830.0
        reynolds = fluids.Reynolds(velocity, bore, rho=density, mu=0.01)
        friction = fluids.friction_factor(reynolds, eD=1e-4)
        lost = fluids.dP_from_K(fluids.K_from_f(friction, length, bore) + 1.5, density, velocity)

        flow = FORMULAS["drain_flow_limit"](
            drain_bore=bore,
            drain_drop=lost / (density * 9.80665),
            friction_factor=friction,
            drain_length=length,
            loss_coefficients=1.5,
        )

        assert flow == pytest.approx(velocity * np.pi * bore**2 / 4, rel=1e-9)


def test_a_loaded_tyre_rolls_three_percent_less_than_its_circle() -> None:
    # ETRTO convention, from memory: 3.05 diameters, 2.9 % below π.
    rolls = FORMULAS["rolling_circumference"](tyre_diameter=0.63)

    circle = FORMULAS["nominal_circumference"](tyre_diameter=0.63)

    assert 1 - rolls / circle == pytest.approx(0.029, abs=5e-4)


def test_a_quarter_mile_is_a_range_over_the_published_rules() -> None:
    # P. Hale (1986) 5.825 and 234, R. Huntington (1958) 6.290 and 224, G. T. Fox (1973) 6.269 and
    # 230, as quoted on public pages: 8 % apart in time, 4 % in speed.
    weight, power = from_unit(3200.0, "lb"), from_unit(500.0, "hp")
    cube_root = (3200 / 500) ** (1 / 3)

    car = {"vehicle_mass": weight, "power": power}
    times = [
        FORMULAS["quarter_mile_time"](quarter_mile_time_constant=each, **car)
        for each in ends("quarter_mile_time_constant")
    ]
    speeds = [
        to_unit(FORMULAS["trap_speed"](trap_speed_constant=each, **car), "mph")
        for each in ends("trap_speed_constant")
    ]

    assert times == pytest.approx([5.825 * cube_root, 6.290 * cube_root], abs=0.002)
    assert speeds == pytest.approx([224 / cube_root, 234 / cube_root], abs=0.02)
    assert times[1] / times[0] == pytest.approx(1.08, abs=0.002)


def test_the_valve_that_closes_at_the_bottom_traps_the_whole_stroke() -> None:
    # The definition: no stroke is lost, whatever the rod.
    trapped = FORMULAS["trapped_compression_ratio"](
        compression_ratio=9.5, stroke=0.086, connecting_rod_length=0.143, inlet_closing_angle=0.0
    )

    assert trapped == pytest.approx(9.5)


def test_ten_percent_of_ethanol_adds_two_to_four_octane_numbers() -> None:
    # J. E. Anderson, T. J. Wallington (2020), abstract seen: a base of 91 gains 2 to 4.
    fraction = FORMULAS["mole_fraction_second"](
        volume_fraction_second=0.1,
        fuel_density_second=789.0,
        molar_mass_second=0.046068,
        fuel_density_first=745.0,
        molar_mass_first=0.1,
    )
    gained = [
        FORMULAS["blend_octane_number"](
            mole_fraction_second=fraction,
            octane_number_first=91.0,
            octane_number_second=108.0,
            octane_interaction=interaction,
        )
        - 91.0
        for interaction in (-8.0, 0.0, 3.0)
    ]

    assert 2.0 <= gained[0] < gained[1] < gained[2] <= 4.0


def test_the_ratio_and_its_indices_say_that_they_say_nothing_of_knock() -> None:
    named = {
        one.name
        for one in COMPRESSION
        if "Says nothing of knock: that is found with knock detection, by someone competent."
        in " ".join(one.assumes)
    }

    assert named == {
        "compression_ratio_of_volumes",
        "trapped_compression_ratio",
        "compression_end_index",
        "blend_octane_number",
    }


def test_no_quantity_is_a_safe_boost_or_timing() -> None:
    # It depends on chamber, charge temperature, phasing, mixture and hot spots: never offered.
    words = [f"{term.key} {term.words}" for term in GLOSSARY.values()]
    asserted = [one for one in words if re.search(r"knock(?!_index| index)|safe|detonat", one)]

    assert asserted == []
