"""How joins are tightened, and what is usually forgotten."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from hoistbook.authored.journal import read_journal
from hoistbook.authored.kinds import kinds
from hoistbook.fit.forgotten import dismissed, forgotten, known_sundry, near_sundry
from hoistbook.fit.make_up import make_up
from hoistbook.fit.rules import fit
from hoistbook.fit.tables import table
from hoistbook.fit.verdict import Service
from hoistbook.values.end import Medium
from hoistbook.values.end_reading import parse_end
from tests.fit.conftest import States
from tests.fit.ends import join_verdicts

TURNS = (
    "turns past finger tight, not torque: the sealant lets the thread slip and the taper wedges "
    "it, so one torque may be one turn or four; in aluminium the fewer, and never turned back"
)
BOOSTED = (
    "T-bolt (constant-tension) clamp 60-63 mm, by the hose measured on the pipe, to its maker's "
    "figure (4 to 10 N m by the size of its bolt, from memory; a thin aluminium pipe is crushed "
    "first, and pages differ on how soon); second to it a worm drive 50-70 mm with a lined 12 mm "
    "band, new hose: 4.5 ± 0.7 N m"
)


def how(a: str, b: str, service: Service, bolts: str = "", kinds: tuple[str, ...] = ()) -> str:
    one, other = parse_end(a), parse_end(b)
    found = fit(one, other, service)
    made = make_up(one, other, found, service, bolts, kinds)
    assert made == make_up(other, one, found, service, bolts, kinds)
    return made.how


@pytest.mark.parametrize(
    ("a", "b", "said"),
    [
        ("1/8 NPT male", "1/8 NPT female", f"1.5 to 3 {TURNS}"),
        ("R 1/4", "Rc 1/4", f"1.5 to 3 {TURNS}"),
        ("1/16 NPT male", "1/16 NPT female", TURNS),
        ("T3 flange", "T3 flange", "its bolts crosswise and in steps, to the maker's torque"),
        (
            "three-inch V-band, profile A",
            "three-inch V-band, profile A",
            "the maker's figure, on the clamp or in its sheet; tightened again after the first "
            "heat (common practice)",
        ),
        (
            "6 mm tube",
            "6 mm compression",
            "the maker's figure in turns past finger tight: a torque does not say how far the "
            "olive has bitten",
        ),
        ("1/8 NPT male", "1/8 BSPT female", ""),
    ],
)
def test_how_a_join_is_tightened(a: str, b: str, said: str) -> None:
    assert how(a, b, Service()) == said


@pytest.mark.parametrize(
    ("a", "b", "service", "said"),
    [
        # An engine maker's service page: 12 mm band, new hose, 4.5 N m; 7.5 mm band 1.4 N m.
        ("51 mm spigot, beaded", "51 mm silicone hose", Service(Medium.AIR, 1.0), BOOSTED),
        ("51 mm spigot, beaded", "51 mm silicone hose", Service(Medium.AIR, 0.31), BOOSTED),
        (
            "51 mm spigot, beaded",
            "51 mm silicone hose",
            Service(Medium.AIR, 0.3),
            "lined worm-drive clamp 50-70 mm, or T-bolt 60-63 mm, by the hose measured on the "
            "pipe; worm drive with 12 mm band, new hose: 4.5 ± 0.7 N m",
        ),
        (
            "38 mm spigot, beaded",
            "38 mm hose, 20R4",
            Service(Medium.COOLANT, 1.0),
            "worm-drive clamp 40-60 mm, or T-bolt 47-51 mm, by the hose measured on the pipe; "
            "worm drive with 12 mm band, new hose: 4.5 ± 0.7 N m",
        ),
        (
            "16 mm spigot, beaded",
            "16 mm hose, 20R3",
            Service(Medium.COOLANT, 1.0),
            "spring band, or worm-drive clamp 16-25 mm with a narrow band, by the hose measured "
            "on the pipe; worm drive on new hose: 1.4 ± 0.3 N m with 7.5 mm band, 4.5 ± 0.7 N m "
            "with 12 mm",
        ),
        (
            "4 mm barb",
            "4 mm silicone hose",
            Service(Medium.AIR, 1.0),
            "spring clip or small full-band clamp, by the hose measured on the pipe (about 10 "
            "mm); for air a tie serves too; a worm drive cuts a hose so small",
        ),
        (
            "8 mm barb",
            "8 mm hose, 30R9",
            Service(Medium.PETROL, 1.0),
            "fuel-injection clamp with a full band, by the hose measured on the pipe; a worm "
            "drive cuts fuel hose",
        ),
    ],
)
def test_a_hose_has_the_clamp_of_its_size_and_of_what_it_carries(
    a: str, b: str, service: Service, said: str
) -> None:
    assert how(a, b, service) == said


@pytest.mark.parametrize("bore", [4, 5, 6, 8, 9])
@pytest.mark.parametrize("medium", [Medium.AIR, Medium.COOLANT])
def test_no_small_hose_is_told_a_worm_drive(bore: int, medium: Medium) -> None:
    said = how(f"{bore} mm barb", f"{bore} mm silicone hose", Service(medium, 1.0))

    assert "worm-drive clamp" not in said
    assert "a worm drive cuts a hose so small" in said


STUDS = """
got:
  - {{part: manifold, came: given, ends: {{out: T25 flange}}}}
  - {{part: turbo, kind: turbocharger, came: given, ends: {{in: T25 flange}}}}
  - part: studs
    name: Turbine stud M8
    kind: bolts
    came: given
    facts: {{property class: "{cls}"}}
done:
  - fitted: [manifold, turbo, studs]
joins:
  - join: manifold out to turbo in
    bolts: {bolts}
"""


@pytest.mark.parametrize(
    ("cls", "bolts", "said"),
    [
        # 75 % of 830 MPa (EN ISO 898-1:2013) on 36.6 mm2 and 8 mm, K 0.12 (0.09 to 0.16).
        (
            "10.9",
            "studs, anti-seize",
            "its bolts M8x1.25, 10.9, anti-seize / moly paste: 22 N m; that gives 75% to 133% "
            "of the preload aimed at; crosswise and in steps",
        ),
        # The same with 580 MPa and K 0.20 (0.18 to 0.27).
        (
            "10.9",
            "M8x1.25 8.8, dry",
            "its bolts M8x1.25, 8.8, plain steel, dry and clean: 25 N m; that gives 74% to 111% "
            "of the preload aimed at; crosswise and in steps",
        ),
        (
            "heat-resisting",
            "studs",
            "its M8x1.25 bolts crosswise and in steps, to the maker's torque; the table has one "
            "by property class (8.8, 10.9) only, and none is said",
        ),
    ],
)
def test_the_bolts_of_a_flange_have_their_torque_with_its_spread(
    states: States, cls: str, bolts: str, said: str
) -> None:
    (found,) = join_verdicts(states(STUDS.format(cls=cls, bolts=bolts))[-1])

    assert found.make_up.how == said


def test_bolts_that_are_nobody_s_are_noticed_with_the_nearest(tmp_path: Path) -> None:
    (tmp_path / "episodes").mkdir()
    (tmp_path / "build.yaml").write_text("format: 1\ntitle: A journal\n")
    text = STUDS.format(cls="8.8", bolts="stud, dry")
    (tmp_path / "episodes/01-one.md").write_text(f"---\ntitle: One\n{text}---\n")

    (notice,) = read_journal(tmp_path).notices

    assert (notice.code, notice.message, notice.hint) == (
        "unknown-bolts",
        "`stud` is neither a part nor a metric thread",
        "did you mean `studs`?",
    )


TURBO = """
got:
  - {part: turbo, kind: turbocharger, came: given}
  - {part: pump, kind: fuel pump, came: given}
"""


def test_a_turbocharger_calls_for_what_is_usually_forgotten(states: States) -> None:
    found = {each.id: each for each in forgotten(states(TURBO)[-1])}

    gasket = found["turbine-inlet-gasket"]
    assert (gasket.why, gasket.because_of) == ("kit has studs only; buy two", ("turbo",))
    assert found["in-tank-hose"].because_of == ("pump",)
    assert "brake-hoses" not in found


def test_what_is_listed_is_not_forgotten_nor_what_seals_a_join(states: States) -> None:
    listed = TURBO + "  - Turbine inlet gasket, given\n"

    assert "turbine-inlet-gasket" not in {each.id for each in forgotten(states(listed)[-1])}


@pytest.mark.parametrize(
    ("part", "forgotten_still"),
    [("Oil filter", True), ("Ignition coil", True), ("Engine oil 10W-40", False)],
)
def test_a_part_with_oil_in_its_name_is_no_oil_to_prime_with(
    states: States, part: str, forgotten_still: bool
) -> None:
    found = {each.id for each in forgotten(states(f"{TURBO}  - {part}, given\n")[-1])}

    assert ("priming-oil" in found) is forgotten_still


def test_what_is_dismissed_is_not_said_again(states: States) -> None:
    state = states(TURBO)[-1]
    every = {each.id for each in forgotten(state)}

    assert {each.id for each in forgotten(state, {"labels"})} == every - {"labels"}


def test_the_car_as_bought_forgets_nothing(states: States) -> None:
    build = "parts:\n  - {part: turbo, kind: turbocharger}\n"

    assert forgotten(states("summary: nothing yet", build=build)[0]) == ()


def test_every_sundry_is_asked_for_by_kinds_that_exist_and_found_by_its_own_words() -> None:
    rows = table("sundries")

    assert len(rows) == len({row["id"] for row in rows}) == 55
    for row in rows:
        assert set(row["asked_by"].split(";")) <= set(kinds()), row["id"]
        assert re.compile(row["had_by"])


@pytest.mark.parametrize(
    ("word", "known"),
    [("labels", "labels"), ("Fire sleeve / heat sleeve", "heat-sleeve"), ("a boat", None)],
)
def test_a_sundry_is_known_by_its_id_or_its_item(word: str, known: str | None) -> None:
    assert known_sundry(word) == known


def test_episodes_dismiss_by_a_word_and_may_say_why(tmp_path: Path) -> None:
    (tmp_path / "episodes").mkdir()
    (tmp_path / "build.yaml").write_text("format: 1\ntitle: A journal\n")
    (tmp_path / "episodes/01-one.md").write_text(
        "---\ntitle: One\nnot needed: ['labels, I know my hoses', heat-sleeve]\n---\n"
    )
    (tmp_path / "episodes/02-two.md").write_text("---\ntitle: Two\nnot needed: a boat\n---\n")
    read = read_journal(tmp_path)

    assert read.problems == ()
    assert read.journal is not None
    assert dismissed(read.journal.episodes) == {"labels", "heat-sleeve"}


def test_a_misspelt_sundry_has_a_near_one() -> None:
    assert near_sundry("heat-sleve") == "heat-sleeve"
