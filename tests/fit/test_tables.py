"""The tables against independent data: standards' formulas and tables of other libraries."""

from __future__ import annotations

import csv
import math
import re
from pathlib import Path

import fluids
import pytest

from hoistbook.fit import tables
from hoistbook.fit.tables import keyed, sourced, sources, table
from hoistbook.fit.threads import DASH_COLUMNS, thread_of
from hoistbook.values import end_words as say
from hoistbook.values.end import End, EndKind, Gender
from hoistbook.values.end_reading import parse_end

HERE = Path(__file__).parent
DATA = Path(tables.__file__).parent / "data"
TABLES = sorted(file.stem for file in DATA.glob("*.csv") if file.stem != "sources")
THREADS = table("threads")
INCH = 25.4


def rows(name: str) -> list[dict[str, str]]:
    return list(csv.DictReader((HERE / name).read_text(encoding="utf-8").splitlines()))


def of_family(*families: str) -> list[tables.Row]:
    return [row for row in THREADS if row["family"] in families]


@pytest.mark.parametrize("name", TABLES)
def test_every_row_says_where_it_comes_from_and_every_source_is_listed(name: str) -> None:
    for row in table(name):
        provenance = [text for column, text in row.items() if column.startswith("provenance")]
        assert provenance, name
        assert all(provenance), row
        for text in row.values():
            assert all(key in sources() for key in tables.CITED.findall(text)), text


def test_a_provenance_leads_to_its_sources() -> None:
    row = keyed("lookalikes", "pair")["37-degree vs 45-degree flare"]

    assert "instrumentationforum.com, thread 9449 on SAE threads" in sourced(row["provenance"])


@pytest.mark.parametrize("family", ["R", "Rc", "Rp", "G"])
def test_british_pipe_threads_are_those_of_iso_228_1(family: str) -> None:
    # ISO 228-1 rows as carried by the PyPI package bd_warehouse 0.4.0 (Apache-2.0),
    # data/iso_228_1.csv; its minor diameters are rounded the other way in three rows.
    listed = {row["size"]: row for row in rows("iso_228_1.csv")}
    for row in of_family(family):
        other = listed[row["size"]]
        assert float(row["tpi"]) == float(other["tpi"])
        for column, name in (
            ("major_mm", "major_diameter"),
            ("pitch_dia_mm", "pitch_diameter"),
            ("minor_mm", "minor_diameter"),
        ):
            assert float(row[column]) == pytest.approx(float(other[name]), abs=0.0011), row["id"]


@pytest.mark.parametrize("row", of_family("R", "Rc", "Rp", "G"), ids=lambda row: row["id"])
def test_whitworth_form_has_its_depth(row: tables.Row) -> None:
    # Depth of thread 0.640327 P, pitch diameter one depth below the major: ISO 228-1, 55 degrees.
    pitch = INCH / float(row["tpi"])
    depth = 0.640327 * pitch

    assert float(row["pitch_mm"]) == pytest.approx(pitch, abs=6e-5)
    assert float(row["pitch_dia_mm"]) == pytest.approx(float(row["major_mm"]) - depth, abs=1e-3)


@pytest.mark.parametrize(
    ("size", "effective"),
    # Effective lengths L2 in inches as printed in a component supplier's NPT chart.
    [
        ("1/16", 0.2611),
        ("1/8", 0.2639),
        ("1/4", 0.4018),
        ("3/8", 0.4078),
        ("1/2", 0.5337),
        ("3/4", 0.5457),
        ("1", 0.6828),
    ],
)
def test_national_pipe_threads_give_the_effective_length_of_asme_b1_20_1(
    size: str, effective: float
) -> None:
    # L2 = (0.80 D + 6.8) p, E0 = D - (0.050 D + 1.1) p: ASME B1.20.1, in inches.
    row = keyed("threads", "id")[f"NPT-{size}"]
    outside, pitch = float(row["major_mm"]) / INCH, 1 / float(row["tpi"])

    assert (0.8 * outside + 6.8) * pitch == pytest.approx(effective, abs=1e-4)
    small_end = outside - (0.05 * outside + 1.1) * pitch
    assert float(row["pitch_dia_mm"]) / INCH == pytest.approx(small_end, abs=5e-5)


@pytest.mark.parametrize("row", of_family("NPT", "NPTF"), ids=lambda row: row["id"])
def test_national_pipe_threads_have_the_outside_of_their_pipe(row: tables.Row) -> None:
    # Outside diameters of schedule pipe by PyPI fluids (MIT), after ASME B36.10.
    nominal = {"1/16": 0.0625, "1/8": 0.125, "1/4": 0.25, "3/8": 0.375, "1/2": 0.5, "3/4": 0.75}
    size = nominal.get(row["size"], 1.0)
    if size < 0.125:
        assert float(row["major_mm"]) == 7.938  # 5/16 in; not in that library.
        return
    outside = fluids.nearest_pipe(NPS=size, schedule="40")[2] * 1000

    assert float(row["major_mm"]) == pytest.approx(outside, abs=0.06)


@pytest.mark.parametrize("row", of_family("M", "UN"), ids=lambda row: row["id"])
def test_sixty_degree_threads_have_the_profile_of_iso_68_1(row: tables.Row) -> None:
    # d2 = d - 0.6495 P, d3 = d - 1.2269 P, D1 = d - 1.0825 P: ISO 68-1, to three decimals.
    major, pitch = float(row["major_mm"]), float(row["pitch_mm"])

    assert float(row["pitch_dia_mm"]) == pytest.approx(major - 0.649519 * pitch, abs=1.1e-3)
    assert float(row["minor_mm"]) == pytest.approx(major - 1.226869 * pitch, abs=1.1e-3)
    inside = float(row["internal_minor_nominal_mm"])
    assert inside == pytest.approx(major - 1.082532 * pitch, abs=1.1e-3)


@pytest.mark.parametrize("row", of_family("M", "UN"), ids=lambda row: row["id"])
def test_a_metric_or_inch_thread_follows_from_its_name(row: tables.Row) -> None:
    kind = EndKind.METRIC if row["family"] == "M" else EndKind.UN
    found = thread_of(End(kind=kind, size=row["size"], gender=Gender.MALE))

    assert found is not None
    assert found.major == pytest.approx(float(row["major_mm"]), abs=6e-4)
    assert found.pitch == pytest.approx(float(row["pitch_mm"]), abs=1e-4)


@pytest.mark.parametrize("row", table("dash_sizes"), ids=lambda row: row["dash"])
def test_a_dash_is_a_sixteenth_of_an_inch_of_tube(row: tables.Row) -> None:
    # Tube outside diameter = dash / 16 in: SAE J514, from memory.
    assert float(row["tube_od_in"]) == -int(row["dash"]) / 16
    assert float(row["tube_od_mm"]) == pytest.approx(float(row["tube_od_in"]) * INCH, abs=1e-3)


def test_37_and_45_degree_flares_share_the_threads_that_they_are_said_to_share() -> None:
    # -2 -3 -4 -5 -8 -10 share threads: a page on SAE threads, instrumentationforum.com.
    shared = {
        row["dash"]
        for row in table("dash_sizes")
        if row["thread_37_industrial"] == row["thread_45_sae"]
    }

    assert shared == {"-2", "-3", "-4", "-5", "-8", "-10"}


def test_flares_and_bosses_share_every_thread() -> None:
    for row in table("dash_sizes"):
        assert (
            row["thread_37_industrial"]
            == row["thread_oring_boss"]
            == row[DASH_COLUMNS[EndKind.ORB]]
        )


@pytest.mark.parametrize(
    "row", [row for row in table("wires") if row["kind"] == "awg"], ids=lambda row: row["label"]
)
def test_american_wire_gauges_follow_astm_b258(row: tables.Row) -> None:
    # d = 0.127 x 92^((36 - n)/39) mm: ASTM B258.
    diameter = 0.127 * 92 ** ((36 - int(row["n"])) / 39)

    assert float(row["dia_mm"]) == pytest.approx(diameter, abs=6e-5)
    assert float(row["area_mm2"]) == pytest.approx(math.pi / 4 * diameter**2, abs=6e-5)


@pytest.mark.parametrize("row", table("wires"), ids=lambda row: row["label"])
def test_copper_has_the_resistance_of_annealed_copper_and_no_wire_beats_it(
    row: tables.Row,
) -> None:
    # 17.241 ohm mm2/km at 20 degC: IEC 60028, from memory; maxima of class 5: IEC 60228.
    ideal = 17.241 / float(row["area_mm2"])

    assert float(row["R20_mohm_per_m_ideal"]) == pytest.approx(ideal, rel=4e-3)
    if row["R20_mohm_per_m_published_max"]:
        assert ideal < float(row["R20_mohm_per_m_published_max"]) < 1.16 * ideal


@pytest.mark.parametrize(
    "row",
    [row for row in table("pipes") if row["kind"] == "nps_pipe_od"],
    ids=lambda row: row["label"],
)
def test_schedule_pipe_has_the_outsides_of_asme_b36_10(row: tables.Row) -> None:
    # PyPI fluids (MIT), after ASME B36.10; it rounds to 0.1 mm.
    whole, _, part = row["label"].split(" in NPS")[0].rpartition(" ")
    size = float(whole or 0) + (
        int(part.split("/")[0]) / int(part.split("/")[1]) if "/" in part else float(part)
    )
    outside = fluids.nearest_pipe(NPS=size, schedule="40")[2] * 1000

    assert float(row["od_mm"]) == pytest.approx(outside, abs=0.1)
    assert float(row["od_in"]) * INCH == pytest.approx(float(row["od_mm"]), abs=1e-3)


def test_what_is_read_from_words_is_what_stands_in_the_tables() -> None:
    dashes = {row["thread_37_industrial"]: row["dash"] for row in table("dash_sizes")}
    turns = {row["size"]: f"{float(row['tpi']):g}" for row in of_family("NPT")}
    british = {row["size"]: f"{float(row['tpi']):g}" for row in of_family("G")}
    coarse = {
        row["size"].split("x")[0][1:]: row["size"].split("x")[1]
        for row in of_family("M")
        if row["provenance"] and row["note"] == "coarse"
    }
    outsides = {
        re.sub(" in NPS.*", "", row["label"]): float(row["od_mm"])
        for row in table("pipes")
        if row["kind"] == "nps_pipe_od"
    }

    assert (dashes, turns, british) == (say.DASHES, say.NPT_TURNS, say.BSP_TURNS)
    assert outsides == say.PIPE_OUTSIDES
    assert coarse.items() <= say.COARSE.items()


def test_names_of_threads_are_those_of_the_trade() -> None:
    labels = [
        found.label
        for text in (
            "1/8 NPT male",
            "1/8 NPTF male",
            "R 1/8",
            "Rc 1/8",
            "-6 JIC male",
            "M8x1 bolt",
        )
        if (found := thread_of(parse_end(text)))
    ]

    assert labels == ["1/8 NPT", "1/8 NPTF", "R 1/8", "Rc 1/8", "9/16-18", "M8x1"]
