"""THE glossary: every quantity of every formula and figure, each with one key for the whole house.

A formula's parameters, its result, a figure's id and a claim's subject are all keys of this table.
Values are in the SI unit of the third column, except speed of rotation, which is 1/min everywhere.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType


@dataclass(frozen=True, slots=True, kw_only=True)
class Term:
    """One quantity."""

    key: str
    symbol: str
    """Plain text; what follows `_` is a subscript: "V_d", "η_is", "ṁ_a"."""
    unit: str
    """SI unit in the spelling of `hoistbook.units`; "-" for a pure number."""
    words: str
    metric: str
    """Unit that metric pages print."""
    imperial: str
    digits: int = 3
    """Significant digits at most; a wide band allows fewer."""
    default: float | None = None
    """Value of a physical constant, in `unit`; None for everything else."""
    source: str = ""
    """Key of the reference behind `default`."""


# key | symbol | SI unit | words | metric | imperial (the unit before it, where left out)
_TABLE = """
# air
air_density | ρ_a | kg/m3 | density of the surrounding air | | lb/ft3
air_pressure | p_a | Pa | pressure of the surrounding air, as a barometer on the spot reads it | kPa | inHg
air_temperature | T_a | K | temperature of the surrounding air | degC | degF
altitude | H | m | height above sea level in the standard atmosphere | | ft
dry_air_pressure | p_d | Pa | pressure of the air without its water vapour | kPa | inHg
humidity_ratio | W | - | mass of water vapour per mass of dry air
reported_pressure | p_q | Pa | pressure of a weather report, reduced to sea level | hPa | inHg
relative_humidity | φ | - | relative humidity | %
saturation_pressure | p_s | Pa | pressure of water vapour in saturated air | kPa | inHg
standard_pressure | p_H | Pa | pressure of the standard atmosphere at a height | kPa | inHg
standard_temperature | T_H | K | temperature of the standard atmosphere at a height | degC | degF
vapour_pressure | p_v | Pa | pressure of the water vapour in the air | kPa | inHg
# engine and air flow
air_volume_flow | V̇ | m3/s | volume flow of air, at a stated density | m3/h | ft3/min
boost | p_b | Pa | boost, gauge | bar | psi
charge_density | ρ_m | kg/m3 | density of the charge in the manifold | | lb/ft3
displacement | V_d | m3 | displacement | cc | in3
dry_air_flow | ṁ_d | kg/s | mass flow of dry air into the engine | g/s | lb/min
engine_air_flow | ṁ_a | kg/s | mass flow of air into the engine | g/s | lb/min
engine_speed | N | 1/min | engine speed | rpm
intake_heating | ΔT_i | K | warming of the air on its way to the engine, under the bonnet
intake_temperature | T_i | K | temperature of the air that reaches the engine or its compressor | degC | degF
manifold_absolute_pressure | p_m | Pa | manifold absolute pressure | kPa | psi
revolutions_per_cycle | n_R | - | revolutions for each working cycle: 2 for a four-stroke, 1 for a two-stroke
volumetric_efficiency | η_v | - | volumetric efficiency, referred to the density in the manifold | %
# compressor
charge_path_loss | Δp_c | Pa | pressure lost between compressor and manifold | kPa | psi
compressor_efficiency | η_is | - | isentropic efficiency of the compressor | %
compressor_inlet_pressure | p_1 | Pa | absolute pressure at the compressor inlet | kPa | psi
compressor_inlet_temperature | T_1 | K | temperature at the compressor inlet | degC | degF
compressor_outlet_pressure | p_2 | Pa | absolute pressure at the compressor outlet | kPa | psi
compressor_outlet_temperature | T_2 | K | temperature at the compressor outlet | degC | degF
compressor_power | P_c | W | power that the compressor takes | kW | hp
compressor_speed | N_c | 1/min | speed of the compressor shaft | rpm
corrected_flow | ṁ_c | kg/s | corrected mass flow, as on the compressor map | g/s | lb/min
corrected_speed | N_cor | 1/min | corrected speed, as on the compressor map | rpm
inlet_loss | Δp_i | Pa | pressure lost in filter and inlet pipe | kPa | psi
map_reference_pressure | p_ref | Pa | pressure that the compressor map refers to | kPa | inHg
map_reference_temperature | T_ref | K | temperature that the compressor map refers to | degC | degF
pressure_ratio | Π | - | pressure ratio of the compressor
# charge cooler
capacity_rate_ratio | C_r | - | lesser heat capacity rate over the greater
charge_capacity_rate | C_h | W/K | heat capacity rate of the charge
charge_temperature | T_3 | K | temperature of the charge | degC | degF
cooler_effectiveness | ε | - | effectiveness of the charge cooler | %
cooler_pressure_loss | Δp_k | Pa | pressure lost in the charge cooler | kPa | psi
core_conductance | u_V | W/(m3 K) | heat conductance of a core for each volume of it, at its usual flow
core_depth | d_c | m | depth of the charge cooler's core | mm | in
core_height | h_c | m | height of the charge cooler's core | mm | in
core_width | w_c | m | width of the charge cooler's core | mm | in
cooling_air_temperature | T_k | K | temperature of the air that cools the charge cooler | degC | degF
cooling_ratio | r_k | - | heat capacity rate of the cooling air over that of the charge, at the flow for which the conductance holds
cooling_capacity_rate | C_k | W/K | heat capacity rate of the cooling air
density_ratio | ρ_3/ρ_1 | - | density in the manifold over density at the compressor inlet
heat_conductance | UA | W/K | overall heat conductance of the charge cooler
lesser_capacity_rate | C_min | W/K | lesser of the two heat capacity rates
rated_conductance | UA_r | W/K | heat conductance of the charge cooler at the flow for which it holds
rated_conductance_flow | ṁ_UA | kg/s | mass flow at which the conductance of the charge cooler holds | g/s | lb/min
rated_cooler_effectiveness | ε_r | - | effectiveness of the charge cooler as stated or measured | %
rated_cooler_flow | ṁ_r | kg/s | mass flow at which the cooler's pressure loss was stated | g/s | lb/min
rated_cooler_pressure_loss | Δp_r | Pa | pressure loss that was stated for the cooler | kPa | psi
rated_charge_density | ρ_r | kg/m3 | density at which the cooler's pressure loss was stated | | lb/ft3
transfer_units | NTU | - | number of transfer units
# fuel and combustion
air_fuel_ratio | AFR | - | air-fuel ratio by mass
air_fuel_ratio_first | AFR_1 | - | stoichiometric air-fuel ratio of the first fuel of a blend
air_fuel_ratio_second | AFR_2 | - | stoichiometric air-fuel ratio of the second fuel of a blend
carbon_atoms | c | - | carbon atoms in a molecule of the fuel
combustion_efficiency | η_c | - | share of the fuel's heating value that a rich mixture sets free | %
evaporative_cooling | ΔT_v | K | cooling of the charge if all the fuel evaporates by heat of the air alone
formation_enthalpy | h_f | J/mol | enthalpy of formation of the liquid fuel at 25 °C | kJ/mol
fuel_density | ρ_f | kg/m3 | density of the fuel | | lb/ft3
fuel_density_first | ρ_1 | kg/m3 | density of the first fuel of a blend | | lb/ft3
fuel_density_second | ρ_2 | kg/m3 | density of the second fuel of a blend | | lb/ft3
fuel_flow | ṁ_f | kg/s | mass flow of fuel | g/s | lb/h
fuel_molar_mass | M_f | kg/mol | molar mass of the fuel | g/mol
fuel_volume_flow | V̇_f | m3/s | volume flow of fuel | L/h | US gal/h
heating_value | H_u | J/kg | lower heating value of the fuel | MJ/kg
heating_value_first | H_1 | J/kg | lower heating value of the first fuel of a blend | MJ/kg
heating_value_second | H_2 | J/kg | lower heating value of the second fuel of a blend | MJ/kg
hydrogen_atoms | h | - | hydrogen atoms in a molecule of the fuel
lambda_ratio | λ | - | lambda: air-fuel ratio over the stoichiometric one | lambda
latent_heat | h_v | J/kg | latent heat of vaporisation of the fuel | kJ/kg
mass_fraction_second | w_2 | - | share of the second fuel of a blend, by mass | %
mixture_factor | k_λ | - | work per mass of air, against that at lambda 1
oxygen_atoms | o | - | oxygen atoms in a molecule of the fuel
stoichiometric_air_fuel_ratio | AFR_st | - | stoichiometric air-fuel ratio by mass
volume_fraction_second | v_2 | - | share of the second fuel of a blend, by volume | %
volumetric_heating_value | H_V | J/m3 | lower heating value of the fuel by volume | MJ/L
# power
brake_efficiency | η_b | - | brake thermal efficiency, on all the fuel supplied | %
brake_mean_effective_pressure | p_me | Pa | brake mean effective pressure | bar | psi
brake_specific_fuel_consumption | b_e | kg/J | brake specific fuel consumption | g/kWh | lb/(hp h)
compression_ratio | CR | - | compression ratio | :1
corrected_power | P_K | W | power referred to a power standard | kW | hp
corrected_torque | M_K | N m | torque referred to a power standard | | lb ft
crank_power | P_cr | W | power measured at the crank | kW | hp
crank_torque | M_cr | N m | torque measured at the crank | | lb ft
drive_efficiency | η_dr | - | power that reaches the compressor over what its drive takes from the crank | %
driven_friction_mean_effective_pressure | p_mfc | Pa | friction mean effective pressure, the driven compressor included | bar | psi
drivetrain_loss | f_d | - | share of the crank's power that gearbox, final drive and tyres take | %
exhaust_manifold_pressure | p_exh | Pa | absolute pressure ahead of the turbine | kPa | psi
exhaust_pressure_ratio | r_exh | - | pressure ahead of the turbine over that in the inlet manifold
friction_mean_effective_pressure | p_mf | Pa | friction mean effective pressure | bar | psi
friction_scale | s_mf | - | friction of this engine over that of the reference engines
fuel_energy_per_volume | e | Pa | energy of the fuel that the air can burn, per displaced volume | bar | psi
gross_indicated_efficiency | η_i | - | gross indicated efficiency | %
ignition_factor | g_r | - | work against that at the ignition of best torque
ignition_retard | r | rad | crank angle by which ignition is later than that of best torque | deg
mean_piston_speed | c_m | m/s | mean piston speed | | ft/min
observed_power | P_o | W | power as observed, referred to no standard | kW | hp
observed_torque | M_o | N m | torque as observed, referred to no standard | | lb ft
power | P | W | power at the crank | kW | hp
power_correction_factor | K_p | - | factor that a power standard applies to the observed power
power_to_mass | P/m | W/kg | power to mass | kW/t | hp/t
stated_correction_factor | K_s | - | factor of the power standard that a log was referred to
stated_power | P_s | W | power as a log states it, referred to a power standard | kW | hp
pumping_mean_effective_pressure | p_mp | Pa | pumping mean effective pressure | bar | psi
reference_indicated_efficiency | η_i0 | - | gross indicated efficiency brought to lambda 1 and to the reference compression ratio, 9.5 | %
reference_friction | p_mf0 | Pa | friction mean effective pressure of the reference engines | bar | psi
stroke | S | m | stroke | mm | in
torque | M | N m | torque at the crank | | lb ft
vehicle_mass | m | kg | mass of the car as driven | | lb
wheel_power | P_w | W | power at the wheels | kW | hp
wheel_torque | M_w | N m | torque at the wheels, over the gearing: as if at the crank | | lb ft
# injectors
dead_time | t_0 | s | dead time of the injector at the voltage and pressure in question | ms
duty_limit | D_max | - | highest injector duty allowed | %
fuel_per_pulse | m_p | kg | fuel delivered by one pulse of one injector | mg
fuel_pressure | p_f | Pa | pressure in the fuel rail, gauge | bar | psi
base_fuel_pressure | p_f0 | Pa | fuel pressure set at the regulator with no boost, gauge | bar | psi
injector_count | n_i | - | number of injectors
injector_cycle_time | t_c | s | time of one working cycle | ms
injector_duty | D | - | injector duty | %
injector_mass_flow | ṁ_i | kg/s | static flow of one injector, by mass | g/s | lb/h
injector_pressure_difference | Δp_f | Pa | pressure difference across the injector | bar | psi
injector_static_flow | Q_i | m3/s | static flow of one injector | cc/min
pulse_width | t_p | s | commanded pulse width | ms
rated_fluid_density | ρ_t | kg/m3 | density of the fluid that the injector was rated with | | lb/ft3
rated_pressure_difference | Δp_0 | Pa | pressure difference at which the injector was rated | bar | psi
rated_static_flow | Q_0 | m3/s | static flow of the injector as rated | cc/min
static_flow_needed | Q_n | m3/s | static flow that each injector needs | cc/min
# pump and wiring
cable_area | A_w | m2 | cross-section of the conductor | mm2
cable_length | L_w | m | length of cable, one way | | ft
fuel_line_loss | Δp_l | Pa | pressure lost in fuel line and filter | bar | psi
pump_current | I_p | A | current that the pump draws
pump_efficiency | η_p | - | efficiency of pump and motor together | %
pump_flow | Q_p | m3/s | flow of the pump at the rail pressure and voltage in question | L/h | US gal/h
pump_flow_needed | Q_pn | m3/s | flow that the pump must give | L/h | US gal/h
pump_fade_pressure | Δp_z | Pa | pressure beyond the stated one at which the pump would give nothing | bar | psi
pump_margin | s_p | - | what the pump gives beyond what the engine burns, as a share of the latter | %
pump_power | P_h | W | hydraulic power of the pump
pump_pressure | p_p | Pa | pressure at the pump outlet, gauge | bar | psi
pump_reserve | s_r | - | reserve that the pump shall keep | %
pump_voltage | U_p | V | voltage at the pump
pump_voltage_exponent | n_U | - | power of the voltage that the pump's flow goes with
rated_pump_flow | Q_p0 | m3/s | flow of the pump as stated | L/h | US gal/h
rated_pump_pressure | p_p0 | Pa | pressure at which the pump flow was stated, gauge | bar | psi
rated_pump_voltage | U_p0 | V | voltage at which the pump flow was stated
supply_voltage | U_0 | V | voltage where the cable begins
voltage_drop | ΔU | V | voltage lost in the cable, out and back
voltage_drop_share | q_U | - | share of the voltage that is lost in the cable | %
wire_current | I | A | current in the cable
# pipes
bend_angle | α | rad | angle of the bend | deg
bend_count | n_b | - | number of bends in the pipe
bend_loss_coefficient | K_b | - | loss coefficient of a bend
bend_loss_scale | s_b | - | loss of this bend over that of the formula
bend_radius_ratio | R/D | - | radius of the bend's centre line over the bore
charge_pipe_volume | V_r | m3 | volume inside all pipes between compressor and manifold | L
charge_volume | V_L | m3 | volume between compressor and inlet valves | L
choked_flow | ṁ* | kg/s | mass flow at which the throat chokes | g/s | lb/min
cooler_volume | V_k | m3 | volume inside the charge cooler | L
critical_pressure_ratio | p*/p_0 | - | pressure in the choked throat over that at rest
discharge_coefficient | C_d | - | discharge coefficient
dynamic_viscosity | μ | Pa s | dynamic viscosity of air | mPa s
end_loss_coefficients | K_x | - | sum of the loss coefficients of the pipe's steps and ends
fill_time | t_f | s | time to raise the pressure in a volume
friction_factor | f | - | friction factor (Darcy)
loss_coefficients | ΣK | - | sum of the loss coefficients of bends, steps and ends
mach_number | M | - | Mach number in the pipe
mass_flow | ṁ | kg/s | mass flow in the pipe | g/s | lb/min
net_mass_flow | Δṁ | kg/s | mass flow in less mass flow out | g/s | lb/min
pipe_bore | D_i | m | bore of the pipe: inside diameter | mm | in
pipe_density | ρ | kg/m3 | density of the gas in the pipe | | lb/ft3
pipe_length | L | m | length of the pipe | | ft
pipe_pressure | p | Pa | absolute pressure in the pipe | kPa | psi
pipe_pressure_loss | Δp | Pa | pressure lost in the pipe | kPa | psi
pipe_temperature | T | K | temperature in the pipe | degC | degF
pipe_velocity | v | m/s | mean velocity in the pipe | | ft/s
pipe_volume | V_p | m3 | volume inside the pipe | L
plenum_volume | V_pl | m3 | volume inside the manifold | L
pressure_rise | Δp_V | Pa | rise of pressure in the volume | kPa | psi
reynolds_number | Re | - | Reynolds number
roughness | k_s | m | roughness of the pipe wall | mm | in
speed_of_sound | a | m/s | speed of sound | | ft/s
stagnation_pressure | p_0 | Pa | absolute pressure at rest ahead of the throat | kPa | psi
stagnation_temperature | T_0 | K | temperature at rest ahead of the throat | degC | degF
throat_diameter | D_t | m | diameter of the throat | mm | in
throat_pressure | p_t | Pa | absolute pressure behind the throat | kPa | psi
throat_share | q_t | - | mass flow through a throat over that at which it chokes | %
volume | V | m3 | volume that is filled | L
# heat and oil
coolant_density | ρ_k | kg/m3 | density of the coolant | | lb/ft3
coolant_flow | V̇_k | m3/s | volume flow of the coolant | L/min | US gal/h
coolant_heat | Q̇_k | W | heat that the coolant carries away | kW | hp
coolant_heat_capacity | c_k | J/(kg K) | specific heat of the coolant | kJ/(kg K)
coolant_share | q_k | - | share of the fuel's energy that goes to the coolant | %
coolant_temperature_rise | ΔT_k | K | rise of the coolant's temperature through the engine
drain_bore | D_d | m | bore of the oil drain: inside diameter | mm | in
drain_drop | z_d | m | height by which the oil drain falls | mm | in
drain_flow_limit | V̇_d | m3/s | flow of clear oil that a full drain carries | L/min | US gal/h
drain_length | L_d | m | length of the oil drain | mm | in
oil_density | ρ_o | kg/m3 | density of the oil | | lb/ft3
oil_feed_flow | V̇_o | m3/s | flow of oil through the feed orifice | L/min | US gal/h
oil_and_surface_heat | Q̇_os | W | heat that goes to the oil and from the engine's surfaces | kW | hp
oil_and_surface_share | q_os | - | share of the fuel's energy that goes to oil and surfaces | %
oil_heat | Q̇_o | W | heat that the oil carries away | kW | hp
oil_heat_capacity | c_o | J/(kg K) | specific heat of the oil | kJ/(kg K)
oil_orifice_diameter | d_o | m | diameter of the oil feed orifice | mm | in
oil_pressure_difference | Δp_o | Pa | pressure difference across the oil feed orifice | bar | psi
oil_temperature_rise | ΔT_o | K | rise of the oil's temperature on its way
# gearing and performance
final_drive_ratio | i_f | - | ratio of the final drive | :1
driven_mass | m_d | kg | mass of the car with its driver | | lb
driver_mass | m_f | kg | mass of the driver, dressed to drive | | lb
gear_ratio | i_g | - | ratio of the gear | :1
quarter_mile_time | t_q | s | time over a quarter mile from rest
quarter_mile_time_constant | c_t | s | quarter-mile time of a car of one pound for each horsepower
rev_limit | N_max | 1/min | rev limit of the engine | rpm
rim_diameter | D_r | m | diameter of the wheel rim | in
road_speed | v_x | m/s | road speed | km/h | mph
rolling_circumference | U | m | rolling circumference of the tyre | mm | in
section_height_ratio | h/b | - | height of the tyre's section over its width | %
section_width | b | m | width of the tyre's section | mm | in
trap_speed | v_q | m/s | speed at the end of a quarter mile | km/h | mph
trap_speed_constant | c_v | m/s | quarter-mile end speed of a car of one horsepower for each pound | km/h | mph
tyre_diameter | D_y | m | outside diameter of the tyre | mm | in
# compression and octane
anti_knock_index | AKI | - | anti-knock index of the fuel, as on pumps in the United States
chamber_volume | V_ch | m3 | volume of the combustion chamber in the head | cm3
clearance_volume | V_c | m3 | volume above the piston at top dead centre | cm3
compression_end_index | T_e | K | index of the temperature at the end of compression
compression_ratio_of_volumes | CR_V | - | compression ratio worked out from the dimensions | :1
connecting_rod_length | l | m | length of the connecting rod, centre to centre | mm | in
cylinder_bore | B | m | bore of the cylinder | mm | in
cylinder_count | z | - | number of cylinders
deck_clearance | h_d | m | distance of the piston's crown below the deck at top dead centre | mm | in
deck_volume | V_dk | m3 | volume between the piston's crown and the deck | cm3
dish_volume | V_di | m3 | volume of the piston's dish, less that of its dome | cm3
displacement_of_cylinders | V_dz | m3 | displacement worked out from bore and stroke | cc | in3
gasket_bore | B_g | m | bore of the head gasket | mm | in
gasket_thickness | h_g | m | thickness of the head gasket as tightened | mm | in
gasket_volume | V_g | m3 | volume within the head gasket | cm3
inlet_closing_angle | θ_c | rad | crank angle after bottom dead centre at which the inlet valve closes | deg
inlet_closing_temperature | T_c | K | temperature in the cylinder as the inlet valve closes | degC | degF
molar_mass_first | M_1 | kg/mol | molar mass of the first fuel of a blend | g/mol
molar_mass_second | M_2 | kg/mol | molar mass of the second fuel of a blend | g/mol
mole_fraction_second | x_2 | - | share of the second fuel of a blend, by mole | %
motor_octane_number | MON | - | motor octane number
octane_interaction | Z | - | interaction of the octane numbers of a blend, of either sign
octane_number | ON | - | octane number of the blend, research or motor
octane_number_first | ON_1 | - | octane number of the first fuel of a blend
octane_number_second | ON_2 | - | octane number of the second fuel of a blend
polytropic_exponent | n | - | exponent of the compression stroke
research_octane_number | RON | - | research octane number
swept_volume | V_h | m3 | volume that one piston sweeps | cm3
trapped_compression_ratio | CR_t | - | compression ratio from the closing of the inlet valve, by geometry | :1
# fasteners
assembly_preload | F_M | N | force that clamps the joint as tightened | kN | lbf
bearing_diameter | D_km | m | mean diameter of the face that the head or nut turns on | mm | in
friction_head | μ_k | - | friction under the head or nut
friction_thread | μ_g | - | friction in the thread
head_diameter | d_w | m | outside diameter of the face that the head or nut turns on | mm | in
hole_diameter | d_h | m | diameter of the bolt hole | mm | in
nut_factor | K | - | nut factor: what the torque is of preload times diameter
pitch_diameter | d_2 | m | pitch diameter of the thread | mm | in
proof_share | ν_p | - | share of the proof stress that the preload uses | %
proof_stress | S_p | Pa | proof stress of the fastener | MPa | psi
stress_area | A_s | m2 | stress area of the thread | mm2
thread_diameter | d | m | nominal diameter of the thread | mm | in
thread_pitch | P_g | m | pitch of the thread | mm | in
tightening_torque | M_A | N m | tightening torque | | lb ft
yield_share | ν | - | share of the yield stress that tension and twist use together | %
yield_stress | R_p | Pa | yield stress of the fastener | MPa | psi
"""  # noqa: E501 - a row of the table stays on one line

# key | symbol | unit | words | value | reference
_CONSTANTS = """
air_gas_constant | R | J/(kg K) | specific gas constant of dry air | 287.05 | us-standard-atmosphere-1976
vapour_gas_constant | R_v | J/(kg K) | specific gas constant of water vapour | 461.5 | iupac-2021
air_heat_capacity | c_p | J/(kg K) | specific heat of air at constant pressure | 1005 | white-2011
heat_capacity_ratio | γ | - | ratio of the specific heats of air | 1.4 | us-standard-atmosphere-1976
sea_level_pressure | p_00 | Pa | pressure of the standard atmosphere at sea level | 101325 | us-standard-atmosphere-1976
sea_level_temperature | T_00 | K | temperature of the standard atmosphere at sea level | 288.15 | us-standard-atmosphere-1976
lapse_rate | L_T | K/m | fall of temperature with height in the standard atmosphere | 0.0065 | us-standard-atmosphere-1976
oxygen_fraction | x_O2 | - | oxygen in dry air, by volume | 0.20946 | machta-1970
air_molar_mass | M_a | kg/mol | molar mass of dry air | 0.0289655 | cipm-2007
carbon_molar_mass | M_C | kg/mol | molar mass of carbon | 0.012011 | iupac-2021
hydrogen_molar_mass | M_H | kg/mol | molar mass of hydrogen | 0.001008 | iupac-2021
oxygen_molar_mass | M_O | kg/mol | molar mass of oxygen | 0.015999 | iupac-2021
carbon_dioxide_enthalpy | h_CO2 | J/mol | enthalpy of formation of carbon dioxide at 25 °C | -393510 | codata-1989
carbon_monoxide_enthalpy | h_CO | J/mol | enthalpy of formation of carbon monoxide at 25 °C | -110530 | codata-1989
water_vapour_enthalpy | h_H2O | J/mol | enthalpy of formation of water vapour at 25 °C | -241830 | codata-1989
water_gas_constant | K_w | - | equilibrium of water gas at 1740 K, where the products freeze | 3.5 | heywood-1988
copper_resistivity | ρ_Cu | ohm m | resistivity of copper at 20 °C | 1.72e-8 | common-practice
exit_loss_coefficient | K_e | - | loss coefficient of a pipe's end in a plenum | 1.0 | white-2011
gravity | g | m/s2 | standard acceleration of free fall | 9.80665 | bipm-si-2019
"""  # noqa: E501 - a row of the table stays on one line


def _cells(table: str, width: int) -> list[list[str]]:
    lines = (line for line in table.strip().splitlines() if not line.startswith("#"))
    cells = [[cell.strip() for cell in line.split("|")] for line in lines]
    return [row + [""] * (width - len(row)) for row in cells]


def _terms() -> list[Term]:
    terms = []
    for key, symbol, unit, words, metric, imperial in _cells(_TABLE, 6):
        shown = metric or unit
        terms.append(
            Term(
                key=key,
                symbol=symbol,
                unit=unit,
                words=words,
                metric=shown,
                imperial=imperial or shown,
            )
        )
    for key, symbol, unit, words, value, source in _cells(_CONSTANTS, 6):
        terms.append(
            Term(
                key=key,
                symbol=symbol,
                unit=unit,
                words=words,
                metric=unit,
                imperial=unit,
                digits=6,
                default=float(value),
                source=source,
            )
        )
    return terms


GLOSSARY: Mapping[str, Term] = MappingProxyType({term.key: term for term in _terms()})
"""Every term by its key, by topic."""
