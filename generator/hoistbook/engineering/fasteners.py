"""Fasteners: stress area, preload and torque, each as good as the friction is known."""

from __future__ import annotations

from hoistbook.engineering.formula import formula
from hoistbook.engineering.maths import Value, pi, sqrt


@formula(
    reference="iso-898-1",
    where="basic profile after ISO 724",
)
def pitch_diameter(*, thread_diameter: Value, thread_pitch: Value) -> Value:
    """Return the pitch diameter of a metric thread.

    Parameters
    ----------
    thread_diameter
        Nominal diameter of the thread [m].
    thread_pitch
        Pitch of the thread [m].

    Returns
    -------
    Value
        Pitch diameter of the thread [m].

    Notes
    -----
    d_2 = d - 0.6495 P_g

    Examples
    --------
    >>> pitch_diameter(thread_diameter=0.008, thread_pitch=0.00125)
    0.0071881
    """
    return thread_diameter - 0.6495 * thread_pitch


@formula(
    reference="iso-898-1",
    where="section 9.1.6.1",
)
def stress_area(*, thread_diameter: Value, thread_pitch: Value) -> Value:
    """Return the stress area of a metric thread.

    Parameters
    ----------
    thread_diameter
        Nominal diameter of the thread [m].
    thread_pitch
        Pitch of the thread [m].

    Returns
    -------
    Value
        Stress area of the thread [m2].

    Notes
    -----
    A_s = π / 4 (d - 0.9382 P_g)²

    Examples
    --------
    >>> stress_area(thread_diameter=0.008, thread_pitch=0.00125)
    3.6608e-05
    """
    return pi / 4 * (thread_diameter - 0.9382 * thread_pitch) ** 2


@formula(
    reference="vdi-2230",
    where="effective diameter of friction under the head",
)
def bearing_diameter(*, head_diameter: Value, hole_diameter: Value) -> Value:
    """Return the mean diameter of the face that a head or nut turns on.

    Parameters
    ----------
    head_diameter
        Outside diameter of the face that the head or nut turns on [m].
    hole_diameter
        Diameter of the bolt hole [m].

    Returns
    -------
    Value
        Mean diameter of the face that the head or nut turns on [m].

    Notes
    -----
    D_km = (d_w + d_h) / 2

    Examples
    --------
    >>> bearing_diameter(head_diameter=0.01163, hole_diameter=0.009)
    0.010315
    """
    return (head_diameter + hole_diameter) / 2


@formula(
    reference="vdi-2230",
    where="permissible assembly preload; a share of 90 % is in use",
    assumes=("A shank bolt of the thread's own stress area, tightened once by torque.",),
)
def assembly_preload(
    *,
    yield_share: Value,
    yield_stress: Value,
    stress_area: Value,
    pitch_diameter: Value,
    thread_pitch: Value,
    friction_thread: Value,
) -> Value:
    """Return the preload at which tension and twist reach a share of the yield stress.

    Parameters
    ----------
    yield_share
        Share of the yield stress that tension and twist use together [-].
    yield_stress
        Yield stress of the fastener [Pa].
    stress_area
        Stress area of the thread [m2].
    pitch_diameter
        Pitch diameter of the thread [m].
    thread_pitch
        Pitch of the thread [m].
    friction_thread
        Friction in the thread [-].

    Returns
    -------
    Value
        Force that clamps the joint as tightened [N].

    Notes
    -----
    F_M = ν R_p A_s / √(1 + 3 t²)
    with t = 3 / 2 d_2 / √(4 A_s / π) (P_g / (π d_2) + 1.155 μ_g)

    Examples
    --------
    >>> assembly_preload(
    ...     yield_share=0.9, yield_stress=640000000.0, stress_area=3.66e-05,
    ...     pitch_diameter=0.007188, thread_pitch=0.00125, friction_thread=0.12,
    ... )
    1.8623e+04
    """
    stress_diameter = sqrt(4 * stress_area / pi)
    twist = (
        3
        / 2
        * pitch_diameter
        / stress_diameter
        * (thread_pitch / (pi * pitch_diameter) + 1.155 * friction_thread)
    )
    return yield_share * yield_stress * stress_area / sqrt(1 + 3 * twist**2)


@formula(
    reference="vdi-2230",
    where="tightening torque, short form for metric threads",
    assumes=(
        "The torque in the maker's manual goes before any that is worked out.",
        "Both frictions are those of the lubricant in question, on clean threads.",
    ),
)
def tightening_torque(
    *,
    assembly_preload: Value,
    thread_pitch: Value,
    pitch_diameter: Value,
    friction_thread: Value,
    bearing_diameter: Value,
    friction_head: Value,
) -> Value:
    """Return the torque that gives a preload, from the friction in thread and under the head.

    Parameters
    ----------
    assembly_preload
        Force that clamps the joint as tightened [N].
    thread_pitch
        Pitch of the thread [m].
    pitch_diameter
        Pitch diameter of the thread [m].
    friction_thread
        Friction in the thread [-].
    bearing_diameter
        Mean diameter of the face that the head or nut turns on [m].
    friction_head
        Friction under the head or nut [-].

    Returns
    -------
    Value
        Tightening torque [N m].

    Notes
    -----
    M_A = F_M (0.16 P_g + 0.58 d_2 μ_g + D_km / 2 μ_k)

    Examples
    --------
    >>> tightening_torque(
    ...     assembly_preload=18600.0, thread_pitch=0.00125, pitch_diameter=0.007188,
    ...     friction_thread=0.12, bearing_diameter=0.0103, friction_head=0.12,
    ... )
    24.52
    """
    return assembly_preload * (
        0.16 * thread_pitch
        + 0.58 * pitch_diameter * friction_thread
        + bearing_diameter / 2 * friction_head
    )


@formula(
    reference="shigley-2011",
    where="eq. 8-31: 75 % for joints that are taken apart",
    result="assembly_preload",
)
def preload_of_proof_stress(
    *, proof_share: Value, proof_stress: Value, stress_area: Value
) -> Value:
    """Return the preload that uses a share of the proof stress.

    Parameters
    ----------
    proof_share
        Share of the proof stress that the preload uses [-].
    proof_stress
        Proof stress of the fastener [Pa].
    stress_area
        Stress area of the thread [m2].

    Returns
    -------
    Value
        Force that clamps the joint as tightened [N].

    Notes
    -----
    F_M = ν_p S_p A_s

    Examples
    --------
    >>> preload_of_proof_stress(proof_share=0.75, proof_stress=580000000.0, stress_area=3.66e-05)
    1.5921e+04
    """
    return proof_share * proof_stress * stress_area


@formula(
    reference="shigley-2011",
    where="eq. 8-27",
    result="tightening_torque",
    assumes=(
        "The torque in the maker's manual goes before any that is worked out.",
        "The factor of one lubricant scatters by a third: a torque for a dry thread breaks an "
        "oiled bolt.",
    ),
)
def torque_of_nut_factor(
    *, nut_factor: Value, assembly_preload: Value, thread_diameter: Value
) -> Value:
    """Return the torque that gives a preload, from one factor for all friction.

    Parameters
    ----------
    nut_factor
        Nut factor: what the torque is of preload times diameter [-].
    assembly_preload
        Force that clamps the joint as tightened [N].
    thread_diameter
        Nominal diameter of the thread [m].

    Returns
    -------
    Value
        Tightening torque [N m].

    Notes
    -----
    M_A = K F_M d

    Examples
    --------
    >>> torque_of_nut_factor(nut_factor=0.2, assembly_preload=15920.0, thread_diameter=0.008)
    25.472
    """
    return nut_factor * assembly_preload * thread_diameter
