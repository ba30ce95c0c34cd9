"""What the printing commands say about the sample journal, and how misuse ends."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from hoistbook.cli import main
from hoistbook.figures.catalogue import CATALOGUE
from hoistbook.printed.lacking import SUBJECTS, lacks
from tests.helpers.journals import SAMPLE, changed, copied


def run(*arguments: str, journal: Path = SAMPLE) -> Result:
    return CliRunner().invoke(main, [*arguments, "--journal", str(journal)])


def test_tally_prints_the_running_cost_to_the_cent() -> None:
    ran = run("tally", "--episode", "2")

    # 600 for the car; 413.50 GBP with postage at 0.8720; 120 charged; 45 for welding.
    assert (ran.exit_code, ran.output) == (
        0,
        "Tally, episode 2\n"
        "                                         Amount\n"
        "Spent in this episode                165.00 EUR\n"
        "Spent so far                       1,239.20 EUR\n"
        "So far, in GBP at that day's rate  1,090.50 GBP\n"
        "The same at list price             1,239.20 EUR\n"
        "Budget                             3,000.00 EUR\n"
        "Left of the budget                 1,760.80 EUR\n"
        "\n"
        "Spent by system\n"
        "System                    Spent\n"
        "The car as bought    600.00 EUR\n"
        "Charge air           464.33 EUR\n"
        "Lubrication            9.87 EUR\n"
        "Fuel                 120.00 EUR\n"
        "Other                 45.00 EUR\n"
        "Total              1,239.20 EUR\n",
    )


def test_changes_prints_what_changed_between_any_two_episodes() -> None:
    ran = run("changes", "0", "2")

    assert (ran.exit_code, ran.output) == (
        0,
        "Changes from the car as bought to episode 2\n"
        "What                         Change    Before          After\n"
        "Mass                         set       900 kg, stated  910 kg, stated\n"
        "Boost                        set       none            0.5 bar gauge, as set\n"
        "Injectors as bought          replaced  fitted          replaced by Injectors, larger\n"
        "Oil filter                   fitted                    fitted\n"
        "Turbocharger, 44 mm inducer  fitted                    fitted\n"
        "Injectors, larger            fitted                    fitted\n",
    )


def test_spec_prints_parts_with_what_became_of_them() -> None:
    ran = run("spec", "--episode", "1")

    assert ran.exit_code == 0
    assert "The car, episode 1\n" in ran.output
    assert "Injectors as bought (replaced in episode 2 by Injectors, larger" in ran.output


def test_workings_prints_the_way_from_the_authors_line_to_the_page() -> None:
    ran = run("workings", "injector duty", "--episode", "2")

    assert ran.exit_code == 0
    for step in (
        "episodes/02-half-a-bar/episode.md:10:9",
        "injector_duty = fuel_flow / (injector_count * injector_static_flow * fuel_density)",
        "common practice, no source",
        "estimated",
        "workings/injector_duty/index.html",
    ):
        assert step in ran.output


def test_description_carries_chapters_cost_address_and_cautions() -> None:
    ran = run("description", "1")

    assert ran.exit_code == 0
    assert ran.output.startswith(
        "As bought\n"
        "\n"
        "What there is.\n"
        "\n"
        "Parts list, cost, workings and cautions: https://journal.example/small/episodes/1/\n"
        "\n"
        "0:00 Round the car\n"
        "1:30 Under it\n"
        "\n"
        "Spent in this episode 474.20 EUR, on the whole build so far 1,074.20 EUR\n"
        "\n"
        "Parts that came\n"
        "Oil filter, 8.50 GBP (9.75 EUR), Parts counter\n"
        "Turbocharger, 44 mm inducer, 400.00 GBP (458.71 EUR), Parts counter\n"
    )
    assert "\nCautions\n" in ran.output
    assert "under the mat" not in ran.output


def test_check_counts_and_writes_nothing(tmp_path: Path) -> None:
    journal = copied(tmp_path)

    ran = run("check", journal=journal)

    assert ran.exit_code == 0
    assert ran.output.endswith("0 problems, 2 notices\n")
    assert [each.name for each in tmp_path.iterdir()] == ["content"]


def test_check_tells_what_the_record_says_about_the_car(tmp_path: Path) -> None:
    journal = copied(tmp_path)
    changed(journal / "episodes/01-as-bought/episode.md", "        paid: 400 GBP\n", "")
    changed(journal / "episodes/02-half-a-bar/episode.md", "440 cc/min", "150 cc/min")

    ran = run("check", journal=journal)

    assert ran.exit_code == 0
    said = [line for line in ran.output.splitlines() if line.startswith("notice: ")]
    assert [re.sub("[0-9]+", "N", line) for line in said] == [
        "notice: `turbo` was bought and has no price; the tally leaves it out",
        "notice: Injector duty: N %, N % band N to N %, estimated, over its limit",
        'notice: claim "injector duty below N %": does not hold',
        "notice: rates.csv has no rate of GBP for N-N-N; "
        "the total of that day is not shown in GBP",
        "notice: episode N is not published yet: the site is written without it",
    ]
    assert f"{journal}/episodes/02-half-a-bar/episode.md:2:1\nnotice: Injector" in ran.output


def test_check_finds_what_is_wrong_without_the_unpublished_episodes(tmp_path: Path) -> None:
    journal = copied(tmp_path)
    changed(journal / "episodes/02-half-a-bar/episode.md", "published: 2025-11-15\n", "")
    changed(
        journal / "episodes/03-not-yet-up/episode.md",
        "filmed: 2025-12-01\n",
        "filmed: 2025-12-01\npublished: 2025-12-02\ndone:\n  - broke: injectors-new\n",
    )

    ran = run("check", journal=journal)

    assert ran.exit_code == 1
    assert "injectors-new" in ran.output
    assert ran.output.endswith("1 problem, 1 notice\n")


def test_rates_fills_in_what_the_receipts_need_and_no_more(tmp_path: Path) -> None:
    journal = copied(tmp_path)
    (journal / "rates.csv").write_text("date,currency,rate,source\n2025-10-01,GBP,0.5,mine\n")

    assert run("rates", journal=journal).exit_code == 0
    filled = (journal / "rates.csv").read_text()
    assert (
        run("rates", journal=journal).output
        == "no receipt needs another rate; nothing is written\n"
    )
    (journal / "rates.csv").write_text(filled[: filled.rstrip().rfind("\n")] + "\n")
    assert run("rates", journal=journal).output.endswith(
        f"\n1 rate added to {journal}/rates.csv\n"
    )

    assert filled.startswith("date,currency,rate,source\n2025-10-01,GBP,0.5,mine\n")
    assert (journal / "rates.csv").read_text() == filled


@pytest.mark.parametrize(
    ("command", "heading"),
    [
        (["tally"], "Tally, episode 3, with episode 3, which is not published yet"),
        (["tally", "--episode", "2"], "Tally, episode 2"),
        (["spec"], "The car, episode 3, with episode 3, which is not published yet"),
        (["changes", "1", "2"], "Changes from episode 1 to episode 2"),
        (
            ["changes", "3", "1"],
            "Changes from episode 3 to episode 1, with episode 3, which is not published yet",
        ),
    ],
)
def test_a_heading_says_which_episodes_are_counted_that_the_site_leaves_out(
    command: list[str], heading: str
) -> None:
    assert run(*command).output.splitlines()[0] == heading


def test_several_unpublished_episodes_are_named_one_by_one(tmp_path: Path) -> None:
    journal = copied(tmp_path)
    changed(journal / "episodes/02-half-a-bar/episode.md", "published: 2025-11-15\n", "")

    assert run("tally", journal=journal).output.splitlines()[0] == (
        "Tally, episode 3, with episodes 2 and 3, which are not published yet"
    )


@pytest.mark.parametrize(
    ("figure", "said"),
    [
        (
            "pipe velocity",
            "there is no pipe_velocity as at episode 1; it is worked out of each fitted part of "
            "the kind `pipe`, `hose` or `intake pipe` that says what it carries, as in "
            "`facts: {bore: 54 mm, length: 0.9 m, carries: charge air, after the cooler}`",
        ),
        (
            "pressure_ratio",
            "there is no pressure_ratio as at episode 1; it is worked out of an engine with boost",
        ),
    ],
)
def test_workings_of_a_figure_that_the_car_has_not_say_what_is_lacking(
    figure: str, said: str
) -> None:
    ran = run("workings", figure, "--episode", "1")

    assert ran.exit_code == 2
    assert ran.output.endswith(f"Error: Invalid value for FIGURE: {said}\n")


def test_whatever_a_figure_is_worked_out_for_has_its_words() -> None:
    assert {row.per for row in CATALOGUE} == {*SUBJECTS, ""}
    assert all(lacks(row.quantity) for row in CATALOGUE)
    assert lacks("nothing") == ""


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["tally", "--episode", "9"], "there is no episode 9; there are 0, 1, 2, 3"),
        (["changes", "1", "7"], "there is no episode 7; there are 0, 1, 2, 3"),
        (["workings", "injector dutty"], "injector dutty; did you mean injector_duty?"),
        (["description", "0"], "the car as bought has no video"),
        (["wirte"], "No such command 'wirte'"),
        (["check", "--fast"], "No such option"),
        (["watch", "--port", "99999"], "99999 is not in the range 1<=x<=65535"),
        (["write", "--into", "/"], "give the folder of the site a name, as output/site"),
        (["write", "--into", ""], "give the folder of the site a name, as output/site"),
        (["watch", "--into", ".."], "give the folder of the site a name, as output/site"),
    ],
)  # fmt: skip
def test_misuse_ends_with_status_2_and_says_what_there_is(arguments: list[str], said: str) -> None:
    ran = run(*arguments)

    assert ran.exit_code == 2
    assert said in ran.output


def test_a_mistake_of_ours_is_one_sentence_and_a_file(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def broken(*_: object, **__: object) -> None:
        raise ZeroDivisionError

    monkeypatch.setattr("hoistbook.pipeline.check", broken)
    monkeypatch.setattr("tempfile.tempdir", str(tmp_path))

    ran = run("check")

    (report,) = tmp_path.iterdir()
    assert ran.exit_code == 1
    assert ran.output == (
        "Error: hoistbook itself has gone wrong (ZeroDivisionError); your files are untouched. "
        f"What happened is written in {report}: please send it to the people who make it.\n"
    )
    assert "ZeroDivisionError" in report.read_text()


def test_a_command_that_is_stopped_from_the_keyboard_says_so(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    def stopped(*_: object, **__: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr("hoistbook.pipeline.check", stopped)

    ran = run("check")

    assert (ran.exit_code, ran.output) == (1, "Stopped; nothing is left half written.\n")


def test_watching_ends_from_the_keyboard_without_a_word(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def stopped(*_: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr("hoistbook.preview.session.Session.run", stopped)

    ran = run("watch", "--into", str(tmp_path / "site"))

    said = "Showing http://127.0.0.1:8000/ until you press Ctrl+C\n"
    assert (ran.exit_code, ran.output) == (0, said)
