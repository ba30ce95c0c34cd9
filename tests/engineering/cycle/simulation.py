"""A two-zone simulation of a spark-ignition engine's closed cycle, on Cantera's gas properties.

Stands behind the mean-value model of power: what it finds for whole ranges of mixture, boost,
compression and ignition, the model must find in one line. Sources: Heywood, Internal Combustion
Engine Fundamentals (1988), from memory, by chapter; "judged" marks what has no source.

- Unburned zone: air, fuel vapour and residual as a frozen ideal-gas mixture (nasa_gas.yaml).
  Burned zone: equilibrium of 11 species, frozen below 1,700 K (ch. 4.9). One pressure, no blow-by.
- Burn after Wiebe, a = 5, m = 2 (ch. 9.2), 50 degrees at 3,000 rpm times (N / 3000)^0.25 (judged);
  98 % of the charge burns (ch. 11.4). It does not depend on lambda or residual.
- Wall heat after Woschni (eq. 12.19), walls at 450 K (judged).
- Inlet closes 130 degrees before top dead centre at 1.06 times the manifold pressure; the exhaust
  opens 130 degrees after it, and the pressure then falls evenly to that of the exhaust (judged).
- Ideal gas exchange; the residual fills the clearance volume (ch. 5.4). The fresh charge is warmed
  by 10 K and holds its fuel as vapour (judged).
- Efficiencies are on the lower heating value of the liquid fuel at 25 degrees.

It proves nothing about volumetric efficiency, friction or knock.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cache

import cantera
import numpy as np

AIR = {"O2": 0.20946, "N2": 0.78084, "Ar": 0.00970}
PRODUCTS = ("N2", "O2", "Ar", "CO2", "H2O", "CO", "H2", "OH", "H", "O", "NO")
ISOOCTANE, HEPTANE, TOLUENE, ETHANOL = "C8H18,isooctane", "C7H16,n-heptane", "C7H8", "C2H5OH"
# Density at 15 degrees [kg/m3] and heat of vaporisation at 25 degrees [J/kg], from memory.
LIQUID_DENSITY = {ISOOCTANE: 696.0, HEPTANE: 688.0, TOLUENE: 871.5, ETHANOL: 793.7}
LATENT_HEAT = {ISOOCTANE: 0.307e6, HEPTANE: 0.365e6, TOLUENE: 0.413e6, ETHANOL: 0.919e6}
# A petrol of three molecules, by volume (judged).
PETROL = {ISOOCTANE: 0.53, HEPTANE: 0.17, TOLUENE: 0.30}
ETHANOL_SHARE = {"petrol": 0.0, "E10": 0.10, "E85_70": 0.70}

FREEZING_TEMPERATURE = 1700.0
BURNED_SHARE = 0.98
WALL_TEMPERATURE = 450.0
CHARGE_WARMING = 10.0
RAM = 1.06
INLET_CLOSES, EXHAUST_OPENS = -130.0, 130.0
ROD_TO_CRANK = 3.5


@cache
def species() -> dict[str, cantera.Species]:
    return {each.name: each for each in cantera.Species.list_from_file("nasa_gas.yaml")}


def ideal_gas(names: tuple[str, ...]) -> cantera.Solution:
    return cantera.Solution(thermo="ideal-gas", species=[species()[name] for name in names])


@dataclass(frozen=True)
class Fuel:
    mass_fractions: dict[str, float]
    air_fuel_ratio: float
    heating_value: float


@cache
def fuel_named(name: str) -> Fuel:
    """Mix a fuel by liquid volume and work out its stoichiometry and heating value [J/kg]."""
    share = ETHANOL_SHARE[name]
    volumes = {each: part * (1 - share) for each, part in PETROL.items()} | {ETHANOL: share}
    density = sum(part * LIQUID_DENSITY[each] for each, part in volumes.items())
    masses = {each: part * LIQUID_DENSITY[each] / density for each, part in volumes.items()}
    moles = {each: part / species()[each].molecular_weight for each, part in masses.items()}

    def atoms(element: str) -> float:
        return sum(
            count * species()[each].composition.get(element, 0.0) for each, count in moles.items()
        )

    def enthalpy(each: str) -> float:
        return float(species()[each].thermo.h(298.15))

    air = ideal_gas(PRODUCTS)
    air.TPX = 298.15, cantera.one_atm, AIR
    oxygen = atoms("C") + atoms("H") / 4 - atoms("O") / 2
    of_vapour = (
        sum(count * enthalpy(each) for each, count in moles.items())
        - atoms("C") * enthalpy("CO2")
        - atoms("H") / 2 * enthalpy("H2O")
    )
    latent = sum(part * LATENT_HEAT[each] for each, part in masses.items())
    return Fuel(masses, oxygen / AIR["O2"] * air.mean_molecular_weight, of_vapour - latent)


def complete_combustion(gas: cantera.Solution) -> dict[str, float]:
    """Burn a mixture by its atoms alone: where the search for equilibrium starts."""
    atoms = {each: gas.elemental_mole_fraction(each) for each in ("C", "H", "O", "N", "Ar")}
    left = atoms["O"] - atoms["H"] / 2
    dioxide = max(min(atoms["C"], left - atoms["C"]), 0.0)
    return {
        "N2": atoms["N"] / 2,
        "Ar": atoms["Ar"],
        "H2O": atoms["H"] / 2,
        "CO2": dioxide,
        "CO": atoms["C"] - dioxide,
        "O2": max(left - 2 * atoms["C"], 0.0) / 2,
    }


@dataclass(frozen=True)
class Cylinder:
    """A cylinder with bore equal to stroke; angles in degrees from firing top dead centre."""

    displacement: float
    compression_ratio: float

    @property
    def bore(self) -> float:
        return float((4 * self.displacement / math.pi) ** (1 / 3))

    @property
    def clearance(self) -> float:
        return self.displacement / (self.compression_ratio - 1)

    def depth(self, angle: float) -> float:
        crank, turn = self.bore / 2, math.radians(angle)
        rod = ROD_TO_CRANK * crank
        across = crank * math.sin(turn)
        return crank + rod - crank * math.cos(turn) - math.sqrt(rod**2 - across**2)

    def volume(self, angle: float) -> float:
        return self.clearance + math.pi * self.bore**2 / 4 * self.depth(angle)

    def wall_area(self, angle: float) -> float:
        piston = math.pi * self.bore**2 / 4
        return 2 * piston + math.pi * self.bore * (self.depth(angle) + self.clearance / piston)

    def work(self, start: float, end: float, first: float, last: float) -> float:
        """Return the work while the pressure runs evenly in angle from first to last."""
        angles = np.linspace(start, end, 101)
        pressures = first + (last - first) * (angles - start) / (end - start)
        return float(np.trapezoid(pressures, [self.volume(angle) for angle in angles]))


@dataclass(frozen=True)
class Point:
    """One operating point, SI but speed [1/min]."""

    compression_ratio: float
    manifold_pressure: float
    charge_temperature: float
    lambda_ratio: float
    speed: float
    displacement: float
    exhaust_ratio: float
    fuel: str = "petrol"
    retard: float = 0.0
    """Degrees later than best torque."""

    @property
    def exhaust_pressure(self) -> float:
        return self.exhaust_ratio * max(self.manifold_pressure, 1e5)

    @property
    def burn_duration(self) -> float:
        return float(50 * (self.speed / 3000) ** 0.25)


class ClosedCycle:
    """Marches from inlet closing to exhaust opening.

    Each step moves mass from the unburned to the burned zone at the unburned enthalpy and solves
    for the pressure at which both fill the cylinder; the change of energy is work and wall heat.
    """

    def __init__(
        self,
        unburned: cantera.Solution,
        burned: cantera.Solution,
        cylinder: Cylinder,
        point: Point,
        burn_start: float,
    ) -> None:
        self.unburned, self.burned = unburned, burned
        self.cylinder, self.point, self.burn_start = cylinder, point, burn_start
        self.first_guess = complete_combustion(unburned)
        self.pressure = self.first_pressure = unburned.P
        self.volume = self.first_volume = cylinder.volume(INLET_CLOSES)
        self.first_temperature = unburned.T
        self.mass = self.unburned_mass = self.volume / unburned.v
        self.unburned_enthalpy, self.unburned_volume = unburned.enthalpy_mass, unburned.v
        self.burned_mass = self.burned_enthalpy = self.burned_volume = 0.0
        self.burned_temperature = self.burned_share = self.work = self.wall_heat = 0.0
        self.frozen = False
        self.first_energy = self.mass * unburned.int_energy_mass

    def run(self, step: float) -> None:
        angles = np.linspace(
            INLET_CLOSES, EXHAUST_OPENS, round((EXHAUST_OPENS - INLET_CLOSES) / step) + 1
        )
        for angle in angles[1:]:
            self._advance(float(angle), (angles[1] - angles[0]) / (6 * self.point.speed))

    @property
    def energy_fault(self) -> float:
        """Energy that has come from nowhere, as a share of the work."""
        end = self.unburned_mass * (self.unburned_enthalpy - self.pressure * self.unburned_volume)
        end += self.burned_mass * (self.burned_enthalpy - self.pressure * self.burned_volume)
        return float((end - self.first_energy + self.work + self.wall_heat) / self.work)

    def _burned_by(self, angle: float) -> float:
        progress = (angle - self.burn_start) / self.point.burn_duration
        progress = min(max(progress, 0.0), 1.0)
        return BURNED_SHARE * (1 - math.exp(-5 * progress**3)) / (1 - math.exp(-5))

    def _heat_to_walls(self, angle: float, time: float) -> tuple[float, float]:
        """Return the heat that each zone loses in a step, unburned first [J]."""
        bore, speed = self.cylinder.bore, self.point.speed
        molar = self.unburned.mean_molecular_weight
        mean_temperature = self.pressure * self.volume * molar / (self.mass * cantera.gas_constant)
        motored = self.first_pressure * (self.first_volume / self.volume) ** 1.32
        gas_speed = 2.28 * 2 * bore * speed / 60
        if self.burned_share > 0:
            gas_speed += (
                3.24e-3
                * self.point.displacement
                * self.first_temperature
                / (self.first_pressure * self.first_volume)
                * max(self.pressure - motored, 0.0)
            )
        coefficient = 3.26 * bore**-0.2 * (self.pressure / 1e3) ** 0.8
        coefficient *= mean_temperature**-0.55 * gas_speed**0.8
        conductance = coefficient * self.cylinder.wall_area(angle) * time
        touched = math.sqrt(self.burned_share / BURNED_SHARE)
        from_burned = touched * (self.burned_temperature - WALL_TEMPERATURE)
        from_unburned = (1 - touched) * (self.unburned.T - WALL_TEMPERATURE)
        return conductance * from_unburned, conductance * from_burned

    def _open_burned_zone(self) -> None:
        self.burned.HPX = self.unburned_enthalpy, self.pressure, self.first_guess
        self.burned.equilibrate("HP")
        self.burned_volume, self.burned_enthalpy = self.burned.v, self.unburned_enthalpy

    def _advance(self, angle: float, time: float) -> None:
        burned_share = self._burned_by(angle)
        moved = (burned_share - self.burned_share) * self.mass
        heat = self._heat_to_walls(angle, time)
        if self.burned_mass == 0 and moved > 0:
            self._open_burned_zone()
        volume = self.cylinder.volume(angle)
        before = self.pressure
        self._solve(volume, moved, heat)
        burn_is_over = angle >= self.burn_start + self.point.burn_duration
        self.frozen |= burn_is_over and self.burned_temperature < FREEZING_TEMPERATURE
        self.work += 0.5 * (before + self.pressure) * (volume - self.volume)
        self.wall_heat += sum(heat)
        self.volume, self.burned_share = volume, burned_share

    def _solve(self, volume: float, moved: float, heat: tuple[float, float]) -> None:
        """Find the pressure at which both zones fill the volume."""
        before, burned_before = self.pressure, self.burned_mass
        h_u, v_u, h_b, v_b = (
            self.unburned_enthalpy,
            self.unburned_volume,
            self.burned_enthalpy,
            self.burned_volume,
        )
        self.unburned_mass -= moved
        self.burned_mass += moved
        self.pressure *= (self.volume / volume) ** 1.3
        for _ in range(60):
            rise = self.pressure - before
            mean = 0.5 * (v_u + self.unburned_volume)
            self.unburned_enthalpy = h_u + mean * rise - heat[0] / self.unburned_mass
            self.unburned.HP = self.unburned_enthalpy, self.pressure
            self.unburned_volume = self.unburned.v
            filled = self.unburned_mass * self.unburned_volume
            if self.burned_mass > 0:
                pushed = 0.5 * (
                    burned_before * v_b + moved * v_u + self.burned_mass * self.burned_volume
                )
                total = burned_before * h_b + moved * h_u + pushed * rise - heat[1]
                self._set_burned(total / self.burned_mass)
                filled += self.burned_mass * self.burned_volume
            self.pressure *= (filled / volume) ** 1.25
            if abs(filled / volume - 1) < 1e-9:
                return
        raise RuntimeError("the pressure was not found")

    def _set_burned(self, enthalpy: float) -> None:
        self.burned_enthalpy = enthalpy
        self.burned.HP = enthalpy, self.pressure
        if not self.frozen:
            self.burned.equilibrate("HP", rtol=1e-9)
        self.burned_volume, self.burned_temperature = self.burned.v, self.burned.T


@dataclass(frozen=True)
class Outcome:
    """What one cylinder does at a point, SI."""

    trapped_air: float
    gross_mean_pressure: float
    pumping_mean_pressure: float
    energy_fault: float


class Engine:
    """One cylinder at one point: fills, burns, empties, and keeps its residual for the next."""

    def __init__(self, point: Point) -> None:
        self.point, self.fuel = point, fuel_named(point.fuel)
        self.cylinder = Cylinder(point.displacement, point.compression_ratio)
        names = (*self.fuel.mass_fractions, *PRODUCTS)
        self.mixed, self.fresh = ideal_gas(names), ideal_gas(names)
        self.burned, air = ideal_gas(PRODUCTS), ideal_gas(PRODUCTS)
        air.TPX = 298.15, 1e5, AIR
        self.fuel_to_air = 1 / (point.lambda_ratio * self.fuel.air_fuel_ratio)
        vapour = {each: self.fuel_to_air * part for each, part in self.fuel.mass_fractions.items()}
        self.fresh.TPY = (
            point.charge_temperature + CHARGE_WARMING,
            point.manifold_pressure,
            dict(zip(PRODUCTS, air.Y, strict=True)) | vapour,
        )
        self.burned.TPX = 1200.0, point.exhaust_pressure, complete_combustion(self.fresh)
        self.residual, self.residual_temperature = 0.05, 1200.0
        self.residual_composition = self.burned.Y.copy()

    def _fill(self) -> None:
        """Mix fresh charge and residual to the state at inlet closing."""
        point, share = self.point, self.residual
        lost = point.manifold_pressure - point.exhaust_pressure
        self.burned.TPY = (
            self.residual_temperature,
            point.exhaust_pressure,
            self.residual_composition,
        )
        enthalpy = (1 - share) * self.fresh.enthalpy_mass + share * (
            self.burned.enthalpy_mass + lost * self.burned.v
        )
        no_fuel = np.zeros(len(self.fuel.mass_fractions))
        composition = (1 - share) * self.fresh.Y + share * np.r_[no_fuel, self.burned.Y]
        self.mixed.TPY = 350.0, point.manifold_pressure, composition
        self.mixed.HP = enthalpy, point.manifold_pressure
        self.mixed.TP = self.mixed.T, RAM * point.manifold_pressure

    def cycle(self, burn_start: float, step: float) -> Outcome:
        """Run one cycle and keep what stays in the clearance volume."""
        point, cylinder = self.point, self.cylinder
        self._fill()
        share = self.residual
        closed = ClosedCycle(self.mixed, self.burned, cylinder, point, burn_start)
        closed.run(step)
        self.burned.SP = self.burned.s, point.exhaust_pressure
        left = cylinder.clearance / self.burned.v
        self.residual, self.residual_temperature = left / closed.mass, self.burned.T
        self.residual_composition = self.burned.Y.copy()
        work = (
            closed.work
            + cylinder.work(EXHAUST_OPENS, 180.0, closed.pressure, point.exhaust_pressure)
            + cylinder.work(-180.0, INLET_CLOSES, point.manifold_pressure, closed.first_pressure)
        )
        return Outcome(
            trapped_air=closed.mass * (1 - share) / (1 + self.fuel_to_air),
            gross_mean_pressure=work / point.displacement,
            pumping_mean_pressure=point.exhaust_pressure - point.manifold_pressure,
            energy_fault=closed.energy_fault,
        )

    def best_start(self) -> float:
        """Return the start of burn with the most work: three parabolas, each narrower."""
        start, width, cycles = -0.45 * self.point.burn_duration, 6.0, 2
        for _ in range(3):
            low, mid, high = (
                [self.cycle(angle, 2.0) for _ in range(cycles)][-1].gross_mean_pressure
                for angle in (start - width, start, start + width)
            )
            shift = width * 0.5 * (low - high) / (low - 2 * mid + high)
            start += min(max(shift, -10.0), 10.0)
            width, cycles = 0.6 * width, 1
        return start


def simulate(point: Point, step: float = 1.0) -> Outcome:
    """Find the best ignition, make it later by the point's retard, and run until it settles."""
    engine = Engine(point)
    start = engine.best_start() + point.retard
    return [engine.cycle(start, step) for _ in range(3)][-1]
