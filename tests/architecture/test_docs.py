"""What README.md and DEVELOPERS.md say is still so."""

from __future__ import annotations

import importlib
import pkgutil
import re
import tomllib
from collections.abc import Iterator
from pathlib import Path

import pytest

import hoistbook
from hoistbook import authored
from hoistbook.authored.fields import Field
from hoistbook.authored.kinds import car_facts, setting_facts, systems
from hoistbook.authored.offered import known_themes
from hoistbook.authored.records import Verb
from hoistbook.cli import main
from hoistbook.pages import data

REPOSITORY = Path(__file__).resolve().parents[2]
README = (REPOSITORY / "README.md").read_text()
DEVELOPERS = (REPOSITORY / "DEVELOPERS.md").read_text()
PROJECT = tomllib.loads((REPOSITORY / "pyproject.toml").read_text())


def fenced(text: str) -> list[str]:
    return re.findall(r"^```\w*\n(.*?)^```$", text, re.MULTILINE | re.DOTALL)


def quoted(text: str) -> Iterator[str]:
    """Yield what stands in backticks outside fenced blocks."""
    prose = re.sub(r"^```\w*\n.*?^```$", "", text, flags=re.MULTILINE | re.DOTALL)
    yield from re.findall(r"`([^`\n]+)`", prose)


def keys() -> set[str]:
    """Return every key of every record that an author writes as keys and values."""
    modules = (
        importlib.import_module(f"hoistbook.authored.{each.name}")
        for each in pkgutil.iter_modules(authored.__path__)
    )
    tables = [each for module in modules for each in vars(module).values()]
    return {
        key
        for table in tables
        if isinstance(table, dict)
        for key, field in table.items()
        if isinstance(field, Field)
    }


def test_the_first_two_blocks_of_the_readme_are_the_two_commands() -> None:
    install, checks = fenced(README)[:2]

    assert install.count("\n") == checks.count("\n") == 1
    assert install.endswith(".venv/bin/hoistbook write\n")
    assert checks == "sh tests/all\n"


def test_continuous_integration_runs_the_command_of_the_readme() -> None:
    checks = fenced(README)[1].strip()

    assert f"exec {checks} " in (REPOSITORY / ".ci/run").read_text()


@pytest.mark.parametrize("text", [README, DEVELOPERS], ids=["README", "DEVELOPERS"])
def test_every_path_that_is_named_is_there(text: str) -> None:
    tops = ("generator/", "themes/", "tests/", "content/", ".ci/")
    paths = {each for each in quoted(text) if each.startswith(tops)}
    missing = [each for each in sorted(paths) if not (REPOSITORY / each).exists()]

    assert missing == []


@pytest.mark.parametrize("text", [README, DEVELOPERS], ids=["README", "DEVELOPERS"])
def test_every_command_and_option_that_is_named_exists(text: str) -> None:
    named = re.findall(r"`[^`\n]*?hoistbook ([a-z]+)([^`\n]*)`", text)
    for command, rest in named:
        options = {option for each in main.commands[command].params for option in each.opts}
        assert set(re.findall(r"--[a-z]+", rest)) <= options, command
    assert named


def test_the_readme_lists_every_command_in_words_of_its_own() -> None:
    listed = re.findall(r"^\| `hoistbook ([a-z]+)", README, re.MULTILINE)

    assert sorted(listed) == sorted(main.commands)


def test_the_guide_names_every_key_verb_system_and_theme() -> None:
    told = set(quoted(README))
    flat = {name.removeprefix("engine ").removeprefix("gearing ") for name in car_facts()}
    asked = flat | set(setting_facts()) | {str(each) for each in Verb} | keys()
    asked |= set(known_themes(REPOSITORY / "content"))

    assert sorted(asked - told) == []
    assert [each for each in systems() if each not in README] == []


def test_the_readme_names_every_table_of_data() -> None:
    assert sorted(set(data._TABLES) - set(quoted(README))) == []


def test_the_map_of_the_developers_is_the_contract_of_the_imports() -> None:
    (contract,) = (
        each for each in PROJECT["tool"]["importlinter"]["contracts"] if each["type"] == "layers"
    )
    (drawn,) = (each for each in fenced(DEVELOPERS) if "READ THIS FIRST" in each)
    layers = [re.split(r"\s{3,}", line)[0].strip() for line in drawn.splitlines()]

    assert layers == contract["layers"]


def test_the_version_is_the_same_everywhere() -> None:
    assert PROJECT["project"]["version"] == hoistbook.__version__
