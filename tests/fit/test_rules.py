"""Verdicts on ends.

The pairs of the table carry their provenance row by row. What a rule says is common practice,
no source, where nothing else stands beside its test.
"""

from __future__ import annotations

import csv
from dataclasses import replace
from pathlib import Path

import pytest

from hoistbook.fit.notes import MATERIALS, ethanol_note
from hoistbook.fit.rules import fit, served
from hoistbook.fit.tables import table
from hoistbook.fit.verdict import Service, Verdict
from hoistbook.values.end import Medium
from hoistbook.values.end_reading import parse_end
from tests.fit.ends import NAMES, VERDICTS, decided, end, of


def pairs() -> list[dict[str, str]]:
    file = Path(__file__).with_name("mating_pairs.csv")
    return list(csv.DictReader(file.read_text(encoding="utf-8").splitlines()))


@pytest.mark.parametrize("pair", pairs(), ids=lambda pair: f"{pair['end_a']} + {pair['end_b']}")
def test_pairs_of_the_table(pair: dict[str, str]) -> None:
    one, other = end(pair["end_a"]), end(pair["end_b"])

    assert fit(one, other).verdict is VERDICTS[pair["verdict"]]
    assert fit(one, other) == fit(other, one)


def test_the_table_has_all_its_pairs() -> None:
    assert len(pairs()) == 40


@pytest.mark.parametrize(
    ("a", "b"),
    [
        ("metric:M10:M;seat=face_washer", "metric:M10x1:F;seat=flat_port"),
        ("metric:M12x1.5:M", "metric:M12x1.5:F;seat=flat_port"),
        ("metric:M12x1.5:M;seat=face_washer", "metric:M12x1.5:F"),
        ("g:1/4:M", "g:1/4:F;seat=flat_port"),
        ("bspt:1/4:M", "g:1/4:F"),
        ("un:7/16-20:M", "orb:-4:F"),
        ("npt:9:M", "npt:9:F"),
        ("spigot:51mm:M;bead=yes", "silhose:51mm:F"),
        ("spigot:51mm:M", "silhose:51mm:F;medium=air;p_bar=1"),
        ("spigot:51mm:M;bead=no", "silhose:51mm:F;medium=air"),
        ("barb:8mm:M", "hose:8mm:F;medium=petrol;p_bar=3"),
        ("barb:8mm:M;medium=oil", "hose:8mm:F;p_bar=3"),
        ("barb:8mm:M", "hose:8mm:F;medium=petrol;spec=30R7"),
    ],
)
def test_r0_what_a_rule_reads_and_nobody_said_is_unknown(a: str, b: str) -> None:
    found = of(a, b)

    assert (found.rule, found.verdict) == ("R0", Verdict.UNKNOWN)
    assert found.measure


def test_r0_a_dash_size_of_no_table_is_unknown() -> None:
    assert of("jic37:-7:M", "jic37:-7:F").why == (
        "the thread of -7 JIC 37 degree flare, male stands in no table here"
    )


@pytest.mark.parametrize(
    ("a", "b", "verdict"),
    [
        ("vband:76.2mm:N;profile=A", "vband:63.5mm:N;profile=A", "needs_adapter"),
        ("vband:76.2mm:N;profile=A", "vband:76.2mm:N", "unknown"),
        ("vband:76.2mm:N;profile=A", "vband:76mm:N;profile=A", "mates"),
        ("vband:76.2mm:N;profile=A", "vband:76.2mm:N;profile=B", "looks_alike_no"),
    ],
)
def test_r6_v_bands(a: str, b: str, verdict: str) -> None:
    assert decided(a, b) == ("R6", verdict)


def test_r7_a_divided_flange_on_an_undivided_one_works_and_says_so() -> None:
    found = of("turbflange:T4:M;div=yes", "turbflange:T4:F;div=no")

    assert found.verdict is Verdict.WITH_SEALANT
    assert found.notes == (
        "one side is divided: it works and loses the separation of the pulses",
        "trace before drilling: family names are trade use, not a standard",
    )


def test_r7_another_family_still_says_to_trace() -> None:
    found = of("turbflange:T25:M", "turbflange:T3:F")

    assert (found.rule, found.verdict) == ("R7", Verdict.NEEDS_ADAPTER)
    assert found.notes == ("trace before drilling: family names are trade use, not a standard",)


@pytest.mark.parametrize(
    ("tube", "fitting", "verdict"),
    [
        (6, 6, "mates"),
        (6.04, 6, "mates"),
        (6.05, 6, "looks_alike_no"),
        (6.35, 6, "looks_alike_no"),
        (9.525, 10, "looks_alike_no"),
        (12, 12.7, "looks_alike_no"),
        (12, 13, "needs_adapter"),
        (6, 8, "needs_adapter"),
    ],
)
def test_r8_a_tube_in_a_compression_fitting(tube: float, fitting: float, verdict: str) -> None:
    assert decided(f"tube:{tube}mm:M", f"compfit:{fitting}mm:F") == ("R8", verdict)


def test_r8_shows_both_facts_of_eight_millimetres_and_five_sixteenths() -> None:
    found = of("tube:8mm:M", "compfit:7.9375mm:F")

    assert (found.verdict, found.notes) == (
        Verdict.LOOKS_RIGHT,
        ("5/16 in and 8 mm are 0.06 mm apart; quick connectors of both share one tube end",),
    )


@pytest.mark.parametrize(
    ("a", "b", "verdict"),
    [
        ("38mm", "38mm", "mates_with_sealant"),
        ("38mm", "38.5mm", "mates_with_sealant"),
        ("38mm", "44mm", "needs_adapter"),
    ],
)
def test_r9_bolted_flanges_by_their_holes(a: str, b: str, verdict: str) -> None:
    one = replace(end(f"flange:{a}:N"), size="2 bolts")
    other = replace(end(f"flange:{b}:N"), size="2 bolts")

    found = fit(one, other)

    assert (found.rule, NAMES[found.verdict]) == ("R9", verdict)


def test_r9_flanges_without_a_spacing_or_of_a_family_and_none_stay_unknown() -> None:
    five = end("flange:5 bolts:N")

    found = fit(five, five)
    assert (found.verdict, found.measure) == (
        Verdict.UNKNOWN,
        "trace the gasket of one flange on the other, and measure from hole to hole with a "
        "caliper; where both take one gasket, give both ends its name, as pattern G12",
    )
    assert fit(five, end("turbflange:T3:F")).verdict is Verdict.UNKNOWN


@pytest.mark.parametrize(
    ("a", "b", "verdict"),
    [
        (
            "five-bolt flange, pattern G12",
            "5 bolt flange, gasket pattern g12",
            "mates_with_sealant",
        ),
        ("five-bolt flange, pattern G12", "five-bolt flange, pattern G13", "unknown"),
        ("five-bolt flange, pattern G12", "five-bolt flange", "unknown"),
        ("five-bolt flange", "four-bolt flange", "needs_adapter"),
        (
            "two-bolt flange, 38 mm, pattern A",
            "two-bolt flange, 38 mm, pattern B",
            "mates_with_sealant",
        ),
    ],
)
def test_r9_a_pattern_that_its_author_names_decides_and_so_does_a_count_of_bolts(
    a: str, b: str, verdict: str
) -> None:
    # Common practice, no source: one gasket on both is one pattern; five holes never meet four.
    one, other = parse_end(a), parse_end(b)

    assert NAMES[fit(one, other).verdict] == NAMES[fit(other, one).verdict] == verdict


@pytest.mark.parametrize(
    ("a", "b", "adapter"),
    [
        ("hose:8mm:F", "hose:8mm:F", "a joiner, beaded at both ends"),
        ("spigot:8mm:M", "barb:8mm:M", "a hose over both and two clamps"),
        ("npt:1/8:F", "hose:8mm:F", "a fitting from 1/8 NPT, female to 8 mm hose"),
    ],
)
def test_ends_of_two_sorts_need_something_between(a: str, b: str, adapter: str) -> None:
    found = of(a, b)

    assert found.verdict is Verdict.NEEDS_ADAPTER
    assert adapter == found.adapter or adapter.split(" to ")[1] in found.adapter


@pytest.mark.parametrize(
    ("material", "said"),
    [
        # Laboratory abstracts against an E85 materials list.
        ("nitrile", "ethanol and NBR (nitrile): sources conflict: "),
        ("neoprene", "ethanol and neoprene (CR): sources conflict: "),
        ("FKM", "ethanol and FKM (fluoroelastomer): good"),
        ("hard anodised aluminium", "ethanol and aluminium, hard anodised or nickel plated: good"),
        ("aluminium", "ethanol and aluminium, bare: risk: pitting"),
        ("cork", "ethanol and cork, natural rubber, leather, PVC: not suitable"),
        ("galvanised steel", "ethanol and zinc / galvanised, terne, lead: not suitable"),
        ("stainless steel", "ethanol and stainless steel: good"),
        ("brass", "ethanol and brass: avoid unplated in E85 storage"),
        ("polyurethane", "ethanol and polyurethane: not suitable"),
    ],
)
def test_what_fuel_with_ethanol_touches_says_what_the_sources_say(
    material: str, said: str
) -> None:
    pipe, hose = f"barb:8mm:M;mat={material}", "hose:8mm:F;spec=30R9;p_bar=3;medium="

    (note,) = of(pipe, f"{hose}ethanol").notes

    assert note.startswith(said)
    assert of(pipe, f"{hose}petrol").notes == ()


def test_every_material_of_the_table_for_ethanol_has_its_note() -> None:
    listed = {row["item"] for row in table("hoses_media") if row["table"] == "ethanol_material"}

    assert {item for item, _ in MATERIALS} == listed - {"paper/resin filter media"}
    for item, _ in MATERIALS:
        assert ethanol_note(item).startswith(f"ethanol and {item}: ")


@pytest.mark.parametrize(
    ("a", "b", "note"),
    [
        (
            "barb:8mm:M;mat=aluminium",
            "hose:8mm:F;spec=30R9;medium=ethanol;p_bar=3",
            "ethanol and aluminium, bare: risk: pitting found at 100 C in E10-E20 and growing "
            "with ethanol content (alkoxide attack); cold static tests show little; conflict is "
            "about temperature and dryness (published: corrosion paper abstract, Fuel 90 (2011) "
            "1208-1214 (Fuel 90 (2011) 1208-1214, abstract); cold test article (A magazine's "
            "cold-soak test of aluminium in E85))",
        ),
        (
            "barb:8mm:M",
            "hose:8mm:F;spec=30R7;medium=ethanol;p_bar=0.5",
            "ethanol and NBR (nitrile): sources conflict: limited by laboratory study (swells "
            "wet, shrinks and embrittles dried); listed as resistant by E85 guidance; treat as "
            "renew-and-watch; FKM for rails, injectors and pumps (published: Abstracts on "
            "bioenergykdf.net and ORNL/TM-2012/88, title page (blends up to 25 % ethanol) against "
            "banksolar.ru/?p=9855 (E85 article))",
        ),
        (
            "metric:M8x1.25:M;seat=none;mat=stainless steel",
            "metric:M8x1.25:F;seat=none;mat=stainless steel",
            "stainless steel on stainless steel galls: lubricate it",
        ),
        (
            "barb:8mm:M",
            "hose:8mm:F;spec=30R9;medium=petrol;p_bar=3;t_c=120",
            "fuel near the exhaust: move it away, or shield and sleeve it",
        ),
        (
            "npt:1/8:M;medium=oil",
            "npt:1/8:F;medium=coolant",
            "one end is for coolant and the other for oil",
        ),
    ],
)
def test_notes_are_added_and_change_no_verdict(a: str, b: str, note: str) -> None:
    found = of(a, b)

    assert found.notes == (note,)
    assert found.verdict in (Verdict.MATES, Verdict.WITH_SEALANT)


def test_what_the_ends_say_is_added_to_the_service() -> None:
    one, other = end("barb:8mm:M;medium=petrol;p_bar=3"), end("hose:8mm:F;medium=ethanol;t_c=90")

    assert served(one, other, Service(None, 4.0)) == Service(Medium.ETHANOL, 4.0, 90.0)


def test_of_two_numbers_the_higher_stands() -> None:
    one, other = end("barb:8mm:M;p_bar=3;t_c=80"), end("hose:8mm:F;p_bar=4;t_c=90")

    assert served(one, other, Service(None, 2.0, 85.0)) == Service(None, 4.0, 90.0)
