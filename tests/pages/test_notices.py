"""Notices of what is worked out: about the car, never about the record."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from hoistbook.authored.records import ProseLink
from hoistbook.figures.figure import Figure
from hoistbook.notices import notices_of
from hoistbook.pages.page import Material
from hoistbook.pipeline import work_out
from tests.authored.journals import BUILD, FIRST, lay_down
from tests.pages.sample import PLACE, SECOND, sample_material


def with_links(*targets: str) -> Material:
    links = tuple(
        ProseLink(kind="figure", target=each, text="it", place=PLACE) for each in targets
    )
    material = sample_material()
    first = material.episodes[0]
    return replace(material, episodes=(first, replace(SECOND, links=links)))


def test_a_link_to_a_figure_that_the_car_does_not_have_then_is_noticed() -> None:
    material = with_links("injector_duty", "injector_duty@1", "mach_number", "mach_number@1")
    no_number = [each for each in notices_of(material) if each.code == "no-number"]
    assert [(each.message, each.hint, each.episode) for each in no_number] == [
        (
            "`figure:mach_number` prints no number: there is none as at episode 2",
            "with `@` and a number it is as at an earlier episode: `figure:power@1`",
            2,
        ),
        (
            "`figure:mach_number@1` prints no number: there is none as at episode 1",
            "with `@` and a number it is as at an earlier episode: `figure:power@1`",
            2,
        ),
    ]


def told(folder: Path, build: str, episode: str, code: str, log: str = "") -> list[str]:
    """Return the notices of one sort of a small journal, as place, message and hint."""
    lay_down(
        folder, {"build.yaml": BUILD + build, FIRST: episode, f"{FOLDER}/run.csv": log or LOG}
    )
    return [
        f"{each.place}: {each.message}; {each.hint}"
        for each in work_out(folder).notices
        if each.code == code
    ]


FOLDER = FIRST.rpartition("/")[0]
LOG = "Engine speed [rpm],Torque [N m]\n3000,100\n4000,110\n"
RUN = """---
title: One
published: 2026-02-20
measured:
  - power run: {log: run.csv, at: wheels, power standard: none, pressure: 97 kPa, temperature: 28 degC}
---
"""  # noqa: E501 - a line of an episode


def test_a_stated_displacement_that_bore_and_stroke_contradict_is_noticed(tmp_path: Path) -> None:
    # Of 199 rows of a public catalogue 18 fail at 5 %.
    engine = "engine: {displacement: %s, cylinders: 4, bore: 78.4 mm, stroke: 82.8 mm}"
    wrong, right = (f"car:\n  {engine % size}\n" for size in ("1800 cc", "1599 cc"))
    episode = "---\ntitle: One\npublished: 2026-02-20\n---\n"
    assert told(tmp_path / "a", wrong, episode, "dimensions-disagree") == [
        "build.yaml:4:26: displacement: 1,800\N{NO-BREAK SPACE}cc is stated, "
        "1,600\N{NO-BREAK SPACE}cc follows from bore, stroke and number of cylinders; one of "
        "these numbers is a slip: measure or look up again"
    ]
    assert told(tmp_path / "b", right, episode, "dimensions-disagree") == []


def test_a_boosted_run_that_is_not_referred_to_the_standard_asked_for_is_noticed(
    tmp_path: Path,
) -> None:
    car = "car: {engine displacement: 1599 cc}\nsettings: {boost: 0.5 bar gauge, fuel: petrol}\n"
    asked = f"power standard: SAE J1349\n{car}"
    assert told(tmp_path / "a", asked, RUN, "power-standard") == [
        f"{FOLDER}/episode.md:5:22: power run: not referred to SAE J1349: no correction: the "
        "boost of this engine is held to a pressure of its own, so that thin air already costs it "
        "less than the formula believes, and the factor would count that twice; its power is "
        "shown as observed, with the air of its day"
    ]
    follows = asked.replace("fuel: petrol", "fuel: petrol, boost control: follows the air")
    assert told(tmp_path / "b", follows, RUN, "power-standard") == []
    assert told(tmp_path / "c", car, RUN, "power-standard") == []


def test_the_pressure_of_a_weather_report_is_not_taken_for_that_of_a_high_place(
    tmp_path: Path,
) -> None:
    # US Standard Atmosphere 1976: 89.9 kPa at 1,000 m. The weather moves it by some 3 %.
    hint = (
        "a weather report's pressure is reduced to sea level: of the settings it is the `sea "
        "level pressure`, and a run has that on the spot"
    )

    def said(pressure: str, height: str = "altitude: 1000 m") -> list[str]:
        settings = f"settings: {{air pressure: {pressure}, {height}}}\n"
        return told(tmp_path, settings, RUN, "air-of-another-height")

    of_run = (
        f"{FOLDER}/episode.md:5:22: air of 97\N{NO-BREAK SPACE}kPa at a height of 1000 m, where "
        f"it is some 89.9\N{NO-BREAK SPACE}kPa; {hint}"
    )
    assert said("101.3 kPa") == [
        "build.yaml:3:26: air of 101\N{NO-BREAK SPACE}kPa at a height of 1000 m, where it is "
        f"some 89.9\N{NO-BREAK SPACE}kPa; {hint}",
        of_run,
    ]
    assert said("91 kPa") == [of_run]
    assert said("101.3 kPa", "altitude: 320 m") == [
        "build.yaml:3:26: air of 101\N{NO-BREAK SPACE}kPa at a height of 320 m, where it is "
        f"some 97.5\N{NO-BREAK SPACE}kPa; {hint}",
    ]
    assert said("101.3 kPa", "air humidity: 40 %") == []


BLOWER = """---
title: One
published: 2026-02-20
bought:
  - from: Shop
    date: 2026-01-20
    parts: [{part: blower, kind: supercharger, paid: 9 EUR}, "Roots blower, 9 EUR"]
done: [{fitted: %s}]
settings: {boost: %s}
---
"""


def test_boost_without_a_part_that_makes_it_is_noticed(tmp_path: Path) -> None:
    def said(fitted: str, boost: str) -> list[str]:
        return told(tmp_path, "", BLOWER % (fitted, boost), "no-charger")

    assert said("roots-blower", "0.4 bar gauge") == [
        f"{FIRST}:9:19: boost is set, and no fitted part is a turbocharger or a supercharger; "
        "write its part as keys and values with `kind: supercharger` or `kind: turbocharger`; "
        "until then the engine is reckoned as a turbocharged one"
    ]
    assert len(said("roots-blower", "[3000 rpm: 0.1 bar gauge, 4000 rpm: 0.2 bar gauge]")) == 1
    assert said("blower", "0.4 bar gauge") == []
    assert said("roots-blower", "none") == []


ORDERED = """---
title: One
published: 2026-02-20
done: [{ordered: {part: pump, paid: 100 EUR, count: 2}}]
---
"""
CAME = """---
title: Two
published: 2026-03-20
bought:
  - from: Shop
    date: 2026-02-25
    parts: [{part: pump, paid: 50 EUR%s}]
---
"""


def test_a_part_that_comes_in_another_number_than_was_ordered_is_noticed(tmp_path: Path) -> None:
    second = "episodes/02-two/episode.md"

    def said(count: str) -> list[str]:
        lay_down(tmp_path, {second: CAME % count})
        return told(tmp_path, "", ORDERED, "other-count")

    assert said("") == [
        f"{second}:7:13: `pump` was ordered as 2 and comes as 1; if all came, write `count: 2` "
        "here, and the price of all"
    ]
    assert said(", count: 2") == []


def test_a_boost_of_a_log_that_counts_from_vacuum_is_noticed_and_left_out(tmp_path: Path) -> None:
    def said(boost: float, heading: str = "Boost [bar gauge]") -> list[str]:
        rows = "\n".join(f"{speed},150,{boost}" for speed in range(3000, 6000, 250))
        log = f"RPM,Torque [N m],{heading}\n{rows}\n"
        return told(tmp_path, CAR, BLOWN, "absolute-boost", log)

    def highest() -> float:
        material = work_out(tmp_path).material
        assert material is not None
        found = material.figures[-1].get("manifold_absolute_pressure")
        assert isinstance(found, Figure)
        return found.value / 1e5

    start = f"{FIRST}:11:22: the log of the run of episode 1 has a boost of up to"
    assert said(0.5) == []
    assert said(0.9) == []
    assert said(1.52) == [
        f"{start} 1.52 bar gauge, and 0.50 bar was set: the pressure of the air apart; it is left "
        "out; if the column counts from vacuum, say so: `columns: {manifold pressure: HEADING in "
        "bar absolute}`"
    ]
    # What was set stands: no number comes of what was logged.
    assert 1.45 < highest() < 1.55
    assert said(0.5, "MAP [bar absolute]") == [
        f"{start} -0.50 bar gauge, and 0.50 bar was set: the pressure of the air apart; it is "
        "left out; if the column counts from the air, say so: `columns: {boost: HEADING in bar "
        "gauge}`"
    ]
    assert said(0.5, "Boost [psi gauge]") == [
        f"{start} 0.03 bar gauge, and 0.50 bar was set: as far apart as bar and psi; it is left "
        "out; look at the unit of the column, or set the boost that it had"
    ]
    assert 1.45 < highest() < 1.55


BLOWN = """---
title: One
published: 2026-02-20
bought:
  - from: Shop
    date: 2026-01-20
    parts: [{part: blower, kind: supercharger, paid: 9 EUR}]
done: [{fitted: blower}]
settings: {boost: 0.5 bar gauge, rev limit: 6500 rpm}
measured:
  - power run: {log: run.csv, at: wheels}
---
"""


def test_a_run_that_lies_outside_of_all_that_was_expected_is_noticed(tmp_path: Path) -> None:
    def said(torque: float, code: str = "far-off") -> list[str]:
        rows = "\n".join(f"{speed},{torque}" for speed in range(3000, 6001, 250))
        return told(tmp_path, CAR, PULL, code, f"RPM,Torque [N m]\n{rows}\n")

    # A torque of 65 to 75 N m for each litre at the wheels is common practice, no source.
    assert said(112) == []
    assert said(250) == [
        f"{FIRST}:5:22: power run: at none of 7 engine speeds is what was measured within the "
        "95 % band of what was expected; look for a slip in the car's data, in the log's units or "
        "in `at` (wheels or crank); where there is none, the engine is not what the episodes say"
    ]
    assert said(112, "runs-disagree") == []
    (disagree,) = said(250, "runs-disagree")
    assert disagree.startswith(
        f"{FIRST}:2:1: power runs: the runs disagree, with one another or with what was assumed "
        "before them, so far that the runs were given only "
    )


CAR = """car:
  engine: {displacement: 1600 cc, compression ratio: "9.4:1"}
settings: {fuel: petrol, rev limit: 6500 rpm}
"""
PULL = """---
title: One
published: 2026-02-20
measured:
  - power run: {log: run.csv, at: wheels}
---
"""
