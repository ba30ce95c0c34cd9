"""Where the links of the prose lead, once every episode of the journal is known."""

from __future__ import annotations

from collections.abc import Container, Iterable

from hoistbook.authored.records import Episode, ProseLink
from hoistbook.engineering.glossary import GLOSSARY
from hoistbook.problems import Problem, closest

CHARTS = ("power", "torque", "boost")
"""What `chart:` may place."""

ENGINE = "engine"
"""The subject of a figure that names none."""


def astray(episodes: Iterable[Episode], parts: Container[str]) -> tuple[Problem, ...]:
    """Return a problem for each link to an episode, a chart or a figure that there is not.

    Parameters
    ----------
    episodes
        Every episode.
    parts
        The id of every part; whether a part is known by then is for the history to say.
    """
    every = list(episodes)
    numbers = {str(episode.number) for episode in every}
    found = (_astray(link, numbers, parts) for each in every for link in each.links)
    return tuple(problem for problem in found if problem is not None)


def _astray(link: ProseLink, numbers: Iterable[str], parts: Container[str]) -> Problem | None:
    match link.kind:
        case "episode" if link.target not in numbers:
            listed = ", ".join(sorted(numbers, key=int))
            return _problem(link, f"there is no episode {link.target}", f"there are: {listed}")
        case "chart" if link.target not in CHARTS:
            message = f"there is no chart `{link.target}`"
            return _problem(link, message, f"one of: {', '.join(CHARTS)}")
        case "figure":
            return _astray_figure(link, parts)
    return None


def _astray_figure(link: ProseLink, parts: Container[str]) -> Problem | None:
    quantity, _, subject = link.target.partition("/")
    if quantity not in GLOSSARY:
        near = closest(quantity, GLOSSARY)
        hint = f"did you mean `{near}`?" if near else "as `figure:injector_duty`"
        return _problem(link, f"there is no figure `{quantity}`", hint)
    if subject and subject != ENGINE and subject not in parts:
        hint = "as `figure:pipe_velocity/hot-pipe`"
        return _problem(link, f"there is no part `{subject}` that has figures", hint)
    return None


def _problem(link: ProseLink, message: str, hint: str) -> Problem:
    return Problem("link-astray", message, link.place, hint)
