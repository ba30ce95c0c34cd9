"""Relations that are no closed expression: tables and equations solved by repetition.

NumPy only. A relation's result enters formulas as an input like any other number.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike, NDArray

from hoistbook.engineering.bends import bend_loss_coefficient
from hoistbook.engineering.charge_cooler import cooler_effectiveness

Floats = NDArray[np.float64]

_BEND_RADII = (1.0, 1.5, 2.0, 3.0, 4.0, 6.0, 8.0, 10.0, 12.0, 14.0, 16.0, 20.0)
_BEND_FACTORS = (20.0, 14.0, 12.0, 12.0, 14.0, 17.0, 24.0, 30.0, 34.0, 38.0, 42.0, 50.0)
_STEEL_ROUGHNESS = 45.72e-6

# Each turn gains about one digit; twelve leave nothing for a double to tell apart.
_COLEBROOK_TURNS = 12

_MOST_TRANSFER_UNITS = 12.0
_HALVINGS = 50


def colebrook_friction_factor(
    reynolds_number: ArrayLike, roughness: ArrayLike, pipe_bore: ArrayLike
) -> Floats:
    """Return the friction factor (Darcy) of turbulent flow from the implicit equation.

    Parameters
    ----------
    reynolds_number
        Reynolds number, above 4,000 [-].
    roughness
        Roughness of the wall [m].
    pipe_bore
        Inside diameter [m].

    Returns
    -------
    array
        Friction factor [-].

    Notes
    -----
    1 / √f = -2 lg(k_s / (3.7 D_i) + 2.51 / (Re √f)). C. F. Colebrook, Journal of the Institution
    of Civil Engineers 11 (1939), 133-156, from memory.

    Examples
    --------
    >>> float(colebrook_friction_factor(1e5, 1.5e-6, 0.06))
    0.018124
    """
    relative = np.asarray(roughness, float) / np.asarray(pipe_bore, float) / 3.7
    reynolds = np.asarray(reynolds_number, float)
    inverse_root = np.full(np.broadcast(relative, reynolds).shape, 8.0)
    for _ in range(_COLEBROOK_TURNS):
        inverse_root = -2.0 * np.log10(relative + 2.51 / reynolds * inverse_root)
    return np.asarray(inverse_root**-2, float)


def crane_bend_loss_coefficient(bend_radius_ratio: ArrayLike, pipe_bore: ArrayLike) -> Floats:
    """Return the loss coefficient of a 90 degree bend from the table for steel pipe.

    Parameters
    ----------
    bend_radius_ratio
        Radius of the bend's centre line over the bore, 1 to 20 [-].
    pipe_bore
        Inside diameter [m].

    Returns
    -------
    array
        Loss coefficient [-].

    Notes
    -----
    The table gives multiples of the friction factor of fully turbulent flow, 0.25 lg(k_s / (3.7
    D_i))⁻², at the roughness of commercial steel; linear between its rows. Crane Co., Technical
    Paper No. 410, page A-29, from memory. Other methods lie up to 20 % below it.

    Examples
    --------
    >>> float(crane_bend_loss_coefficient(1.5, 0.06))
    0.2576
    """
    turbulent = 0.25 * np.log10(_STEEL_ROUGHNESS / 3.7 / np.asarray(pipe_bore, float)) ** -2.0
    multiple = np.interp(np.asarray(bend_radius_ratio, float), _BEND_RADII, _BEND_FACTORS)
    return np.asarray(multiple * turbulent, float)


def bend_loss_range(
    bend_radius_ratio: float, pipe_bore: float, friction_factor: float
) -> tuple[float, float]:
    """Return between what the loss coefficient of a 90 degree bend lies.

    Parameters
    ----------
    bend_radius_ratio
        Radius of the bend's centre line over the bore, 1 to 20 [-].
    pipe_bore
        Inside diameter [m].
    friction_factor
        Friction factor (Darcy) of the pipe [-].

    Returns
    -------
    tuple of float
        Least and greatest loss coefficient [-].

    Notes
    -----
    20 % to either side of `bend_loss_coefficient`, and up to the table for steel pipe where that
    lies higher: published methods do not agree better than this.

    Examples
    --------
    >>> bend_loss_range(1.5, 0.06, 0.0157)
    (0.1645, 0.2576)
    """
    central = float(
        bend_loss_coefficient(
            friction_factor=friction_factor,
            bend_angle=np.pi / 2,
            bend_radius_ratio=bend_radius_ratio,
        )
    )
    table = float(crane_bend_loss_coefficient(bend_radius_ratio, pipe_bore))
    return 0.8 * central, max(1.2 * central, table)


def transfer_units_of(effectiveness: float, ratio: float) -> float | None:
    """Return the transfer units of a cross-flow cooler of known effectiveness.

    Parameters
    ----------
    effectiveness
        Effectiveness of the charge cooler [-].
    ratio
        Lesser heat capacity rate over the greater [-].

    Returns
    -------
    float or None
        Number of transfer units [-]; None where no cooler of sane size is so effective.

    Notes
    -----
    The formula `cooler_effectiveness`, solved by halving.

    Examples
    --------
    >>> transfer_units_of(0.6622518, 0.5)
    1.5
    """
    low, high = 0.0, _MOST_TRANSFER_UNITS
    if (
        not 0
        < effectiveness
        < cooler_effectiveness(transfer_units=high, capacity_rate_ratio=ratio)
    ):
        return None
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        found = cooler_effectiveness(transfer_units=middle, capacity_rate_ratio=ratio)
        low, high = (middle, high) if found < effectiveness else (low, middle)
    return low
