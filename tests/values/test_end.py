"""Ends as people say them.

The spoken forms are common practice, no source. The full forms follow the designations of
ISO 7-1 (R, Rc, Rp), ISO 228-1 (G), ASME B1.20.1 (NPT), ISO 261 (M) and SAE J514 (dash sizes),
from memory.
"""

from __future__ import annotations

import csv
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hoistbook.values.end import End, EndKind, Gender, Medium, Seat, full_form
from hoistbook.values.end_asks import Ask
from hoistbook.values.end_reading import parse_end
from hoistbook.values.spoken import inches, plain

HERE = Path(__file__).parent


def rows(name: str) -> list[dict[str, str]]:
    with (HERE / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


SPOKEN = rows("ends_as_spoken.csv")
UNCLEAR = rows("ends_unclear.csv")


@pytest.mark.parametrize("row", SPOKEN, ids=lambda row: row["text"])
def test_an_end_is_read_as_spoken_and_printed_in_full(row: dict[str, str]) -> None:
    end = parse_end(row["text"])

    assert (end.full, end.unclear) == (row["full form"], "")


@pytest.mark.parametrize("row", SPOKEN, ids=lambda row: row["full form"])
def test_the_full_form_reads_as_the_same_end(row: dict[str, str]) -> None:
    assert parse_end(row["full form"]) == parse_end(row["text"])


@pytest.mark.parametrize("row", UNCLEAR, ids=lambda row: row["text"])
def test_an_unclear_end_says_what_is_missing_and_what_to_measure(row: dict[str, str]) -> None:
    end = parse_end(row["text"])

    assert {"unclear": end.unclear, "measure": end.measure} == {
        "unclear": row["unclear"],
        "measure": row["measure"],
    }


def test_there_are_enough_forms_and_each_way_of_being_unclear_is_met() -> None:
    assert len({row["text"] for row in SPOKEN}) >= 150
    assert len({row["text"] for row in UNCLEAR}) >= 30
    assert {row["unclear"] for row in UNCLEAR} == {ask.missing for ask in Ask} - {
        Ask.UNIFIED.missing
    }


def test_an_inch_thread_of_a_series_that_has_no_such_size_asks_for_its_pitch() -> None:
    assert parse_end("15/16 UNF bolt").unclear == Ask.UNIFIED.missing


def test_all_that_is_said_of_a_hose_is_kept() -> None:
    found = parse_end("8 mm hose, 30R9, petrol at 4 bar, up to 7 bar, up to 100 degC")

    assert found == End(
        kind=EndKind.HOSE,
        diameter=8.0,
        spec="30R9",
        medium=Medium.PETROL,
        pressure=4.0,
        highest_pressure=7.0,
        highest_temperature=100.0,
    )


def test_pounds_per_square_inch_become_bar() -> None:
    # 1 psi = 6.894757 kPa: NIST SP 811, appendix B.8.
    assert parse_end("8 mm hose, 30R9, rated to 100 psi").highest_pressure == 6.895


def test_a_male_flat_face_seals_with_a_washer_and_a_female_washer_means_a_flat_port() -> None:
    assert parse_end("M12x1.5 male, flat face").seat is Seat.FACE_WASHER
    assert parse_end("M12x1.5 female, copper washer").seat is Seat.FLAT_PORT


def test_pipe_by_its_nominal_size_is_not_tube_by_its_diameter() -> None:
    # 2 in schedule pipe is 2.375 in outside: ASME B36.10.
    assert parse_end("2 in NPS pipe, beaded").diameter == 60.325
    assert parse_end("2 in pipe, beaded").diameter == 50.8


def test_a_thick_tube_goes_into_a_hose() -> None:
    assert parse_end("57 mm tube").kind is EndKind.SPIGOT
    assert parse_end("10 mm tube").kind is EndKind.TUBE


def test_a_flare_for_a_tube_is_sized_in_sixteenths() -> None:
    assert parse_end("3/8 in 45 degree flare, male").size == "-6"


def test_an_end_without_a_kind_is_an_unknown_end() -> None:
    assert full_form(End()) == "unknown end"


@given(st.text(max_size=40))
def test_no_text_breaks_the_reading(text: str) -> None:
    end = parse_end(text)

    assert (end.kind is None) <= bool(end.unclear)
    assert bool(end.unclear) == bool(end.measure)


@given(
    st.sampled_from(["1/8", "1/4", "3/8", "1/2", "3/4", "1"]),
    st.sampled_from(["NPT", "BSPT", "BSPP"]),
    st.sampled_from(list(Gender)),
)
def test_a_pipe_thread_keeps_its_size_and_gender(size: str, family: str, gender: Gender) -> None:
    found = parse_end(f"{size} {family} {gender}")

    assert (found.size, found.gender, found.unclear) == (size, gender, "")


@pytest.mark.parametrize(
    ("text", "millimetres"),
    [("2-1/2", 63.5), ("2 1/2", 63.5), ("2.5", 63.5), ("3/16", 4.7625), ("3", 76.2)],
)
def test_inches_are_25_4_millimetres(text: str, millimetres: float) -> None:
    assert inches(text) == millimetres


def test_what_is_no_number_of_inches_is_refused() -> None:
    with pytest.raises(ValueError, match="no inches in 'wide'"):
        inches("wide")


@pytest.mark.parametrize(
    ("text", "digits"),
    [
        ("two-and-a-half-inch", "2 1/2 in"),
        ("Two and three-quarter inch", "2 3/4 in"),
        ("dash ten", "-10"),
        ("seven-sixteenths", "7/16"),
        ("2½″", "2 1/2 in"),
        ("57,15 mm", "57.15 mm"),
        ("AN 6", "-6 an"),
        ("an 8 mm hose", "an 8 mm hose"),
    ],
)
def test_words_become_digits(text: str, digits: str) -> None:
    assert plain(text) == digits
