"""build.yaml: what is true of the journal, and the car as bought."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import Any

from hoistbook.authored import fields
from hoistbook.authored.context import Context
from hoistbook.authored.facts import read_known_facts
from hoistbook.authored.fields import Field, read_table
from hoistbook.authored.kinds import THE_CAR, car_facts, setting_facts
from hoistbook.authored.nodes import Entry, Node, Table, Text, is_blank, kind_of
from hoistbook.authored.offered import LANGUAGES, known_themes, one_of
from hoistbook.authored.parts import read_part_of_car
from hoistbook.authored.receipts import read_spent
from hoistbook.authored.records import BoostBySpeed, Episode, Given, Spent
from hoistbook.authored.standards import journal_standard
from hoistbook.problems import Place
from hoistbook.values.slip import Slip

FORMAT = "1"


@dataclass(frozen=True, slots=True)
class BuildFile:
    """What build.yaml says: the journal's own keywords, and the car as bought."""

    journal: dict[str, Any]
    start: Episode


@dataclass(frozen=True, slots=True)
class _Car:
    """The car as bought."""

    facts: dict[str, Given]
    place: Place
    own: dict[str, Any] = field(default_factory=dict)


def _format(words: str, context: Context) -> str | Slip:
    if words == FORMAT:
        return words
    return Slip("unknown-format", f"format {words} is not known to this program", "write 1")


def _language(words: str, context: Context) -> str | Slip:
    if words.isascii() and words.replace("-", "").isalpha() and len(words.split("-")[0]) in (2, 3):
        return one_of("language", words.partition("-")[0], LANGUAGES) or words
    return Slip("bad-language", f"`{words}` is not a language tag", f"as {LANGUAGES[0]}")


def _theme(words: str, context: Context) -> str | Slip:
    if words.isascii() and words.replace("-", "").replace("_", "").isalnum():
        return one_of("theme", words, known_themes(context.root)) or words
    return Slip("bad-theme", f"`{words}` is not the name of a theme", "as jobsheet")


def read_car(node: Node, context: Context) -> dict[str, Given]:
    """Read what is true of the car from an episode on."""
    return read_known_facts(node, context, car_facts(), "the car")


def read_settings(node: Node, context: Context) -> dict[str, Given | BoostBySpeed]:
    """Read what is adjusted, not fitted."""
    return read_known_facts(node, context, setting_facts(), "the settings")


CAR_AS_BOUGHT: fields.Fields = {
    "name": Field(fields.text),
    "paid": Field(fields.money),
    "date": Field(fields.day),
}


def _car_as_bought(node: Node, context: Context) -> _Car | None:
    if not isinstance(node, Table):
        message = f"{kind_of(node)}; keys and values tell of the car"
        context.problem("wrong-shape", message, node.place, "as `mass: 905 kg`")
        return None
    own = tuple(entry for entry in node.entries if entry.key.value in CAR_AS_BOUGHT)
    rest = tuple(entry for entry in node.entries if entry not in own)
    values = read_table(Table(own, node.place), CAR_AS_BOUGHT, context, "the car") or {}
    paid = next((entry.value.place for entry in own if entry.key.value == "paid"), node.place)
    return _Car(read_car(Table(rest, node.place), context), paid, values)


JOURNAL: fields.Fields = {
    "format": Field(fields.typed(_format), example="1"),
    "title": Field(fields.text, example="From the barn to the hill"),
    "author": Field(fields.text),
    "about": Field(fields.text),
    "goal": Field(fields.text),
    "address": Field(fields.link),
    "language": Field(fields.typed(_language)),
    "currency": Field(fields.currency),
    "also show": Field(fields.many(fields.currency)),
    "numbers": Field(fields.one_of("point", "comma")),
    "units": Field(fields.one_of("metric", "imperial")),
    "power standard": Field(fields.typed(journal_standard)),
    "budget": Field(fields.money),
    "theme": Field(fields.typed(_theme)),
    "car": Field(_car_as_bought),
    "settings": Field(read_settings),
    "parts": Field(fields.many(read_part_of_car)),
    "spent": Field(fields.many(read_spent)),
}


def read_habits(node: Node | None, context: Context) -> None:
    """Take from build.yaml what the reading of every other text depends on."""
    if not isinstance(node, Table):
        return
    aside = Context(context.root, context.file)
    for key, read in (("numbers", JOURNAL["numbers"].read), ("currency", fields.currency)):
        given = node.get(key)
        if given is None or is_blank(given):
            continue
        value = read(given, aside)
        if value is not None:
            setattr(context, key, value)
        elif key == "numbers":
            context.numbers_known = False


_HABIT = re.compile(r"^(numbers|currency):[ \t]+[\"']?(\w+)", re.MULTILINE)


def habits_by_look(text: str, context: Context) -> None:
    """Take the same from a build.yaml that breaks off, where its lines are known by their look.

    Otherwise one slip there would have every decimal comma of the journal called a mistake.
    """
    place = Place(context.file)
    entries = (Entry(Text(key, place), Text(value, place)) for key, value in _HABIT.findall(text))
    read_habits(Table(tuple(entries), place), context)


def read_build(node: Node, context: Context) -> BuildFile | None:
    """Read build.yaml."""
    context.episode = 0
    values = read_table(node, JOURNAL, context, "build.yaml")
    if values is None:
        return None
    values.pop("format")
    car: _Car = values.pop("car", None) or _Car({}, node.place)
    if "name" in car.own:
        values["car_name"] = car.own["name"]
    spent = values.pop("spent", ())
    if "paid" in car.own:
        what = car.own.get("name", "The car")
        bought = Spent(
            what=what,
            amount=car.own["paid"],
            place=car.place,
            date=car.own.get("date"),
            system=THE_CAR,
        )
        spent = (bought, *spent)
    start = Episode(
        number=0,
        title=values["title"],
        file=context.file,
        place=node.place,
        prose="",
        prose_line=1,
        car=car.facts,
        settings=values.pop("settings", {}),
        got=values.pop("parts", ()),
        spent=spent,
    )
    return BuildFile(values | {"place": node.place}, start)
