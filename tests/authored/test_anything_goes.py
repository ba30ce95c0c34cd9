"""Whatever a guest writes, reading ends in records or problems, never in an exception."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from hoistbook.authored import read_journal
from hoistbook.authored.front_matter import parse_front_matter
from hoistbook.problems import picture
from hoistbook.values.dates import parse_date, parse_timecode
from hoistbook.values.fuel import parse_fuel
from hoistbook.values.money import parse_money
from hoistbook.values.name import to_id
from hoistbook.values.quantity import parse_quantity

MODEST = settings(
    max_examples=60,
    deadline=None,
    derandomize=True,
    suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow],
)
"""The same examples on every machine: a test that fails by chance teaches nobody anything."""

LINES = st.sampled_from(
    [
        "title: One",
        "episode: 1",
        "filmed: 2026-02-30",
        "bought:",
        "  - from: Shop",
        "    date: 2026-01-20",
        "    parts:",
        "      - Gasket, 2 off, 6.40 EUR each",
        "      - part: turbo",
        "        kind: turbocharger",
        "        facts: {inducer: 44 mm, bore: 3/0 in}",
        "        ends: {oil in: M12x1.5 female}",
        "done:",
        "  - fitted: turbo",
        "  - planned: Cooler, 85 EUR",
        "  - sold: [turbo, gasket]",
        "    for: $40",
        "joins:",
        "  - turbo oil in to gasket",
        "  - join: to",
        "measured:",
        "  - compression: 12.1 / 12,3 / bar",
        "  - power run: {log: run.csv, at: wheels, columns: {speed: RPM in 1/min}}",
        "claims:",
        "  - power between 1 kW and at boost",
        "settings:",
        "  boost: [3000 rpm: 0.4 bar gauge, 2 bar]",
        "  fuel: ethanol blend 1e9 %",
        "car: {engine: {bore: {x: y}}, mass: 905 kg +- 3 stone}",
        "private: [a, {b: c}]",
        "chapters: 0:00",
        "work: [',', '2 h']",
        "captions: run.csv",
        "poster: ../../..",
        "? {a: b}",
        "&a *a",
        "<<: {title: Two}",
        "\t- tab",
        "---",
        "[a](figure:x) ![b](\0) <b>",
    ]
)


@given(st.lists(LINES | st.text(max_size=30), max_size=25))
@MODEST
def test_any_lines_of_an_episode_can_be_read(tmp_path: Path, lines: list[str]) -> None:
    (tmp_path / "build.yaml").write_text("format: 1\ntitle: A car\n")
    folder = tmp_path / "episodes/01-one"
    folder.mkdir(parents=True, exist_ok=True)
    text = "\n".join(["---", *lines, "---", "Prose.", *lines])
    (folder / "episode.md").write_bytes(text.encode("utf-8", "surrogatepass"))
    (folder / "run.csv").write_bytes(text.encode("utf-8", "surrogatepass"))

    read = read_journal(tmp_path)

    assert (read.journal is None) == bool(read.problems)
    assert all(picture(problem) for problem in read.problems)


@given(st.binary(max_size=300))
@MODEST
def test_any_bytes_can_be_read(tmp_path: Path, raw: bytes) -> None:
    folder = tmp_path / "episodes/01-one"
    folder.mkdir(parents=True, exist_ok=True)
    for file in ("build.yaml", "rates.csv", "episodes/01-one/episode.md", "episodes/02.md"):
        (tmp_path / file).write_bytes(raw)

    assert read_journal(tmp_path).problems


@given(st.text(alphabet="ab:-[]{}#&*!|>'\"%@`?,. \t\n0", max_size=60))
@settings(MODEST, max_examples=400)
def test_any_yaml_becomes_nodes_or_problems(text: str) -> None:
    node, problems = parse_front_matter(text, "file")

    for problem in problems:
        assert problem.place is not None
        assert 1 <= problem.place.line <= text.count("\n") + 1
        assert problem.place.column >= 1
    assert node is not None or problems or not text.strip(" \n") or "#" in text or "-" in text


@pytest.mark.parametrize(
    "parse",
    [parse_quantity, parse_money, parse_date, parse_timecode, parse_fuel, to_id],
)
@given(text=st.text(alphabet="0123456789.,/+-%:±()[] abcdegiklmnoprstuxACEGR€$°'\"", max_size=25))
@settings(MODEST, max_examples=300)
def test_any_text_has_a_value_or_a_slip(parse: object, text: str) -> None:
    assert callable(parse)
    assert parse(text) is not None
