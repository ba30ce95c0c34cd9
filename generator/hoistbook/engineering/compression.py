"""Compression from dimensions.

Nothing here says that an engine will not knock: no boost, timing or fuel is offered as safe.
"""

from __future__ import annotations

from hoistbook.engineering.formula import formula
from hoistbook.engineering.maths import Value, cos, pi, sin, sqrt


@formula(
    reference="heywood-1988",
    where="section 2.2, geometry of the engine",
)
def swept_volume(*, cylinder_bore: Value, stroke: Value) -> Value:
    """Return the volume that one piston sweeps.

    Parameters
    ----------
    cylinder_bore
        Bore of the cylinder [m].
    stroke
        Stroke [m].

    Returns
    -------
    Value
        Volume that one piston sweeps [m3].

    Notes
    -----
    V_h = π B² / 4 S

    Examples
    --------
    >>> swept_volume(cylinder_bore=0.086, stroke=0.086)
    4.9956e-04
    """
    return pi * cylinder_bore**2 / 4 * stroke


@formula(
    reference="heywood-1988",
    where="section 2.2, geometry of the engine",
    result="displacement",
)
def displacement_of_cylinders(*, cylinder_count: Value, swept_volume: Value) -> Value:
    """Return the displacement of the engine.

    Parameters
    ----------
    cylinder_count
        Number of cylinders [-].
    swept_volume
        Volume that one piston sweeps [m3].

    Returns
    -------
    Value
        Displacement [m3].

    Notes
    -----
    V_d = z V_h

    Examples
    --------
    >>> displacement_of_cylinders(cylinder_count=4, swept_volume=0.000499557)
    0.0019982
    """
    return cylinder_count * swept_volume


@formula(
    reference="common-practice",
    where="volume of a cylinder",
)
def gasket_volume(*, gasket_bore: Value, gasket_thickness: Value) -> Value:
    """Return the volume within the head gasket.

    Parameters
    ----------
    gasket_bore
        Bore of the head gasket [m].
    gasket_thickness
        Thickness of the head gasket as tightened [m].

    Returns
    -------
    Value
        Volume within the head gasket [m3].

    Notes
    -----
    V_g = π B_g² / 4 h_g

    Examples
    --------
    >>> gasket_volume(gasket_bore=0.0875, gasket_thickness=0.0012)
    7.2158e-06
    """
    return pi * gasket_bore**2 / 4 * gasket_thickness


@formula(
    reference="common-practice",
    where="volume of a cylinder",
    assumes=("A piston that stands above the deck has a negative clearance.",),
)
def deck_volume(*, cylinder_bore: Value, deck_clearance: Value) -> Value:
    """Return the volume between the piston's crown and the deck.

    Parameters
    ----------
    cylinder_bore
        Bore of the cylinder [m].
    deck_clearance
        Distance of the piston's crown below the deck at top dead centre [m].

    Returns
    -------
    Value
        Volume between the piston's crown and the deck [m3].

    Notes
    -----
    V_dk = π B² / 4 h_d

    Examples
    --------
    >>> deck_volume(cylinder_bore=0.086, deck_clearance=0.0003)
    1.7426e-06
    """
    return pi * cylinder_bore**2 / 4 * deck_clearance


@formula(
    reference="common-practice",
    where="sum of the volumes",
    assumes=(
        "1 cm³ moves the ratio of a cylinder of 500 cm³ and 10:1 by 0.16: measure the chamber.",
    ),
)
def clearance_volume(
    *, chamber_volume: Value, gasket_volume: Value, deck_volume: Value, dish_volume: Value
) -> Value:
    """Return the volume above the piston at top dead centre.

    Parameters
    ----------
    chamber_volume
        Volume of the combustion chamber in the head [m3].
    gasket_volume
        Volume within the head gasket [m3].
    deck_volume
        Volume between the piston's crown and the deck [m3].
    dish_volume
        Volume of the piston's dish, less that of its dome [m3].

    Returns
    -------
    Value
        Volume above the piston at top dead centre [m3].

    Notes
    -----
    V_c = V_ch + V_g + V_dk + V_di

    Examples
    --------
    >>> clearance_volume(
    ...     chamber_volume=4e-05, gasket_volume=7.2e-06, deck_volume=1.7e-06,
    ...     dish_volume=3.1e-06,
    ... )
    5.2000e-05
    """
    return chamber_volume + gasket_volume + deck_volume + dish_volume


@formula(
    reference="heywood-1988",
    where="eq. 2.1",
    result="compression_ratio",
    assumes=("Says nothing of knock: that is found with knock detection, by someone competent.",),
)
def compression_ratio_of_volumes(*, swept_volume: Value, clearance_volume: Value) -> Value:
    """Return the compression ratio from the two volumes.

    Parameters
    ----------
    swept_volume
        Volume that one piston sweeps [m3].
    clearance_volume
        Volume above the piston at top dead centre [m3].

    Returns
    -------
    Value
        Compression ratio [-].

    Notes
    -----
    CR = (V_h + V_c) / V_c

    Examples
    --------
    >>> compression_ratio_of_volumes(swept_volume=0.000499557, clearance_volume=5.2e-05)
    10.607
    """
    return (swept_volume + clearance_volume) / clearance_volume


@formula(
    reference="heywood-1988",
    where="eq. 2.4 to 2.6, slider and crank",
    assumes=(
        "Geometry alone: no offset of the pin, no filling by ram.",
        "Compare only angles taken at one valve lift, 0.05 or 1 mm.",
        "Says nothing of knock: that is found with knock detection, by someone competent.",
    ),
)
def trapped_compression_ratio(
    *,
    compression_ratio: Value,
    stroke: Value,
    connecting_rod_length: Value,
    inlet_closing_angle: Value,
) -> Value:
    """Return the compression ratio from the closing of the inlet valve.

    Parameters
    ----------
    compression_ratio
        Compression ratio [-].
    stroke
        Stroke [m].
    connecting_rod_length
        Length of the connecting rod, centre to centre [m].
    inlet_closing_angle
        Crank angle after bottom dead centre at which the inlet valve closes [rad].

    Returns
    -------
    Value
        Compression ratio from the closing of the inlet valve, by geometry [-].

    Notes
    -----
    CR_t = 1 + (CR - 1) s / S
    with s = S / 2 (1 + cos θ_c) + l - √(l² - (S / 2 sin θ_c)²)

    Examples
    --------
    >>> trapped_compression_ratio(
    ...     compression_ratio=9.5, stroke=0.086, connecting_rod_length=0.143,
    ...     inlet_closing_angle=0.8726646,
    ... )
    8.3619
    """
    throw = stroke / 2
    travel = (
        throw * (1 + cos(inlet_closing_angle))
        + connecting_rod_length
        - sqrt(connecting_rod_length**2 - (throw * sin(inlet_closing_angle)) ** 2)
    )
    return 1 + (compression_ratio - 1) * travel / stroke


@formula(
    reference="heywood-1988",
    where="section 9.2, polytropic compression",
    valid={"polytropic_exponent": (1.3, 1.37)},
    assumes=(
        "An index, to compare two states of one engine, and no temperature to trust.",
        "Says nothing of knock: that is found with knock detection, by someone competent.",
    ),
)
def compression_end_index(
    *, inlet_closing_temperature: Value, compression_ratio: Value, polytropic_exponent: Value
) -> Value:
    """Return an index of the temperature at the end of compression.

    Parameters
    ----------
    inlet_closing_temperature
        Temperature in the cylinder as the inlet valve closes [K].
    compression_ratio
        Compression ratio [-].
    polytropic_exponent
        Exponent of the compression stroke [-].

    Returns
    -------
    Value
        Index of the temperature at the end of compression [K].

    Notes
    -----
    T_e = T_c CR^(n - 1)

    Examples
    --------
    >>> compression_end_index(
    ...     inlet_closing_temperature=340.0, compression_ratio=9.0,
    ...     polytropic_exponent=1.35,
    ... )
    733.61
    """
    return inlet_closing_temperature * compression_ratio ** (polytropic_exponent - 1)
