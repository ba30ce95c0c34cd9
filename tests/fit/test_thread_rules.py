"""Rules R1 to R4; common practice, no source, where nothing else stands beside a test."""

from __future__ import annotations

import pytest

from hoistbook.fit.verdict import Verdict
from tests.fit.ends import decided, of


@pytest.mark.parametrize("gender", ["M", "F"])
def test_r1_two_of_one_gender_want_a_union_of_the_other(gender: str) -> None:
    found = of(f"npt:1/8:{gender}", f"g:1/4:{gender};seat=flat_port")

    assert (found.rule, found.verdict) == ("R1", Verdict.NEEDS_ADAPTER)
    assert found.adapter == f"a union that is {'female' if gender == 'M' else 'male'} at both ends"


@pytest.mark.parametrize("size", ["1/16", "1/8", "1/4", "3/8", "1/2", "3/4", "1"])
@pytest.mark.parametrize("national", ["npt", "nptf"])
@pytest.mark.parametrize("british", ["bspt", "g", "rp"])
def test_r2_british_and_national_pipe_of_one_size_never(
    size: str, national: str, british: str
) -> None:
    assert decided(f"{national}:{size}:M", f"{british}:{size}:F") == ("R2", "looks_alike_no")
    if british != "rp":
        assert decided(f"{national}:{size}:F", f"{british}:{size}:M") == ("R2", "looks_alike_no")


@pytest.mark.parametrize(
    ("a", "b", "verdict"),
    [
        # Within 0.70 mm of diameter and 0.17 mm of pitch.
        ("metric:M10x1:M;seat=face_washer", "un:3/8-24:F;seat=flat_port", "looks_alike_no"),
        ("metric:M16x1.5:M;seat=face_washer", "g:3/8:F;seat=flat_port", "looks_alike_no"),
        ("jic37:-6:M", "npt:1/4:F", "looks_alike_no"),
        ("metric:M6x1:M;seat=none", "un:1/4-28:F;seat=none", "looks_alike_no"),
        # Within 0.31 mm of diameter and 0.55 mm of pitch.
        ("metric:M10x1.5:M;seat=none", "metric:M10x1:F;seat=none", "looks_alike_no"),
        ("metric:M22x1.5:M;seat=face_washer", "un:7/8-14:F;seat=flat_port", "looks_alike_no"),
        (
            "metric:M12x1.5:M;seat=face_washer",
            "metric:M12x1.25:F;seat=flat_port",
            "looks_alike_no",
        ),
        # Outside both.
        ("metric:M14x2:M;seat=none", "metric:M14x1.25:F;seat=none", "needs_adapter"),
        ("metric:M10x1:M;seat=face_washer", "metric:M12x1:F;seat=flat_port", "needs_adapter"),
        ("npt:1/8:M", "npt:1/4:F", "needs_adapter"),
        ("npt:1/8:M", "bspt:1/4:F", "needs_adapter"),
    ],
)
def test_r3_threads_that_differ(a: str, b: str, verdict: str) -> None:
    assert decided(a, b) == ("R3", verdict)


def test_r3_says_the_numbers_and_how_to_tell() -> None:
    found = of("metric:M12x1.75:M;seat=none", "metric:M12x1.5:F;seat=none")

    assert found.why == (
        "M12x1.75 (12.00 mm, pitch 1.75 mm, 60 degrees) in "
        "M12x1.5 (12.00 mm, pitch 1.5 mm, 60 degrees): it starts and then binds"
    )
    assert found.tell_apart == "a thread gauge over ten threads: 2.50 mm apart"


@pytest.mark.parametrize(
    ("a", "b", "verdict"),
    [
        ("npt:1/8:M", "nptf:1/8:F", "mates_with_sealant"),
        ("nptf:1/4:M", "nptf:1/4:F", "mates_with_sealant"),
        ("bspt:1/4:M", "bspt:1/4:F", "mates_with_sealant"),
        ("bspt:1/4:M", "rp:1/4:F", "mates_with_sealant"),
        ("bspt:1/4:M", "g:1/4:F;seat=flat_port", "mates_with_sealant"),
        ("bspt:1/4:M", "g:1/4:F;seat=cone60_swivel", "looks_alike_no"),
        ("g:1/4:M;seat=face_washer", "bspt:1/4:F", "looks_alike_no"),
        ("g:1/4:M", "bspt:1/4:F", "looks_alike_no"),
        ("g:1/4:M;seat=face_washer", "rp:1/4:F", "looks_alike_no"),
        ("metric:M14x1.5:M;seat=face_washer", "metric:M14x1.5:F;seat=cone60", "looks_alike_no"),
        ("metric:M14x1.5:M;seat=face_washer", "iso6149:M14x1.5:F", "looks_alike_no"),
        ("metric:M14x1.5:M;seat=cone60", "metric:M14x1.5:F;seat=cone60", "mates"),
        ("metric:M8x1.25:M;seat=none", "metric:M8x1.25:F;seat=none", "mates"),
        ("iso6149:M14x1.5:M", "metric:M14x1.5:F;seat=flat_port", "looks_alike_no"),
        ("sae45:-6:M", "sae45:-6:F", "mates"),
        ("aero37:-6:M", "aero37:-6:F", "mates"),
        ("aero37:-8:M", "sae45:-8:F", "looks_alike_no"),
        ("orb:-6:M", "jic37:-6:F", "looks_alike_no"),
        ("jic37:-6:M", "orb:-6:F", "looks_alike_no"),
        ("isobubble:M10x1:M", "isobubble:M10x1:F", "mates"),
        ("invflare:3/8-24:M", "invflare:3/8-24:F", "mates"),
        ("un:3/4-16:M;seat=face_washer", "orb:-8:F", "looks_alike_no"),
        ("un:9/16-18:M;seat=none", "jic37:-6:F", "looks_alike_no"),
    ],
)
def test_r4_one_thread_and_two_seals(a: str, b: str, verdict: str) -> None:
    assert decided(a, b) == ("R4", verdict)


def test_r4_names_the_sealant() -> None:
    assert of("npt:1/8:M", "npt:1/8:F").sealant == (
        "thread paste made for the fluid, not on the first thread"
    )
    assert of("g:1/4:M;seat=face_washer", "g:1/4:F;seat=flat_port").sealant == (
        "a bonded or crush washer, new"
    )


def test_r4_a_taper_in_a_parallel_port_is_for_low_pressure() -> None:
    assert of("bspt:1/4:M", "g:1/4:F;seat=flat_port").notes == (
        "for low pressure only: a G port is not made for a taper",
    )


def test_r4_industrial_and_aerospace_flares_mate_on_a_car_and_never_in_the_air() -> None:
    # UNJ class 3 against UNF class 2: fatigue strength differs (SAE AS8879, from memory).
    assert of("jic37:-6:M", "aero37:-6:F").notes == (
        "good for a car, never for an aircraft: thread class and root differ",
    )
