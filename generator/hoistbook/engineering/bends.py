"""Bends and ends of pipes: the loss coefficients that friction along the wall leaves out."""

from __future__ import annotations

from hoistbook.engineering.formula import formula
from hoistbook.engineering.maths import Value, pi, sin, sqrt


@formula(
    reference="rennels-2012",
    where="chapter 15",
    valid={"bend_radius_ratio": (1, 20), "bend_angle": (0, 3.1416)},
    assumes=("Published methods lie from 20 % below to 30 % above, up to a radius of 6 bores.",),
)
def bend_loss_coefficient(
    *, friction_factor: Value, bend_angle: Value, bend_radius_ratio: Value
) -> Value:
    """Return the loss coefficient of a smooth bend.

    Parameters
    ----------
    friction_factor
        Friction factor (Darcy) [-].
    bend_angle
        Angle of the bend [rad].
    bend_radius_ratio
        Radius of the bend's centre line over the bore [-].

    Returns
    -------
    Value
        Loss coefficient of a bend [-].

    Notes
    -----
    K_b = f α R/D + (0.10 + 2.4 f) sin(α / 2) + 6.6 f (√sin(α / 2) + sin(α / 2)) / (R/D)^(4 α / π)

    Examples
    --------
    >>> bend_loss_coefficient(
    ...     friction_factor=0.0157, bend_angle=1.5707963, bend_radius_ratio=1.5,
    ... )
    0.20564
    """
    half = sin(bend_angle / 2)
    return (
        friction_factor * bend_angle * bend_radius_ratio
        + (0.10 + 2.4 * friction_factor) * half
        + 6.6 * friction_factor * (sqrt(half) + half) / bend_radius_ratio ** (4 * bend_angle / pi)
    )


@formula(
    reference="white-2011",
    where="section 6.9, minor losses add",
    result="loss_coefficients",
    assumes=("Bends far enough apart not to disturb one another.",),
)
def pipe_loss_coefficients(
    *,
    bend_count: Value,
    bend_loss_scale: Value,
    bend_loss_coefficient: Value,
    end_loss_coefficients: Value,
) -> Value:
    """Return the sum of the loss coefficients of a pipe's bends, steps and ends.

    Parameters
    ----------
    bend_count
        Number of bends in the pipe [-].
    bend_loss_scale
        Loss of this bend over that of the formula: published methods scatter [-].
    bend_loss_coefficient
        Loss coefficient of a bend [-].
    end_loss_coefficients
        Sum of the loss coefficients of the pipe's steps and ends [-].

    Returns
    -------
    Value
        Sum of the loss coefficients of bends, steps and ends [-].

    Notes
    -----
    ΣK = n_b s_b K_b + K_x

    Examples
    --------
    >>> pipe_loss_coefficients(
    ...     bend_count=2, bend_loss_scale=1.0, bend_loss_coefficient=0.21,
    ...     end_loss_coefficients=0.5,
    ... )
    0.92
    """
    return bend_count * bend_loss_scale * bend_loss_coefficient + end_loss_coefficients
