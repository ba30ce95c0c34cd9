"""Which parts are known when, and what to say of a name that is not known."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from hoistbook.authored.records import Done, Episode, Journal, Part
from hoistbook.history.events import PartCame, PartMade, events
from hoistbook.problems import Place, Problem, closest
from hoistbook.values.name import to_id


def all_episodes(journal: Journal) -> tuple[Episode, ...]:
    """Return the car as bought, as episode 0, and the episodes after it."""
    start = journal.start or Episode(
        number=0, title="", file=journal.place.file, place=journal.place, prose="", prose_line=1
    )
    return (start, *journal.episodes)


def parts_written(episode: Episode) -> Iterator[Part]:
    """Yield the parts that an episode writes down, in order."""
    for event in events(episode):
        match event:
            case PartCame(part) | PartMade(part):
                yield part
            case Done(new_part=Part() as part):
                yield part


def first_written(journal: Journal) -> dict[str, int]:
    """Return the number of the episode that first writes down each part."""
    found: dict[str, int] = {}
    for episode in all_episodes(journal):
        for part in parts_written(episode):
            found.setdefault(part.id, episode.number)
    return found


def not_known(id_: str, place: Place, episode: int, written: Mapping[str, int]) -> Problem:
    """Return the problem of a part that is named before, or without, being written down."""
    if id_ not in written:
        return Problem(
            "unknown-part", f"no part is called `{id_}`", place, _meant(id_, place, written)
        )
    if written[id_] > episode:
        return Problem(
            "used-before-known",
            f"`{id_}` is used in episode {episode} and not known before episode {written[id_]}",
            place,
            f"move this line to episode {written[id_]}, or write the part down in episode "
            f"{episode} or earlier",
        )
    return Problem(
        "used-before-known",
        f"`{id_}` is used before the line of this episode that writes it down",
        place,
        "within an episode the order is bought, got, made, done, joins, measured; and line "
        "after line within each of them",
    )


def _meant(id_: str, place: Place, written: Mapping[str, int]) -> str:
    """Return what may have been meant by a part that is not known."""
    said = place.text[place.column - 1 :].split(", ")
    ids = [to_id(each) for each in said]
    if len(ids) > 1 and all(each in written for each in ids):
        return f"several parts are a list: [{', '.join(ids)}]"
    near = closest(id_, written)
    return f"did you mean `{near}`?" if near else WRITE_IT_DOWN


WRITE_IT_DOWN = "write it down under `bought`, `got` or `made` first"
