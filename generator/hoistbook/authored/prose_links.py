"""Where the links of the prose lead, once every episode of the journal is known."""

from __future__ import annotations

from collections.abc import Collection, Container, Iterable
from dataclasses import dataclass

from hoistbook.authored.records import Episode, ProseLink
from hoistbook.engineering.glossary import GLOSSARY
from hoistbook.problems import Problem, closest

CHARTS = ("power", "torque", "boost", "lambda", "temperature")
"""What `chart:` may place."""

ENGINE = "engine"
"""The subject of a figure that names none."""


@dataclass(frozen=True, slots=True)
class FigureNamed:
    """The figure that a link names."""

    quantity: str
    subject: str
    episode: str | None
    """The number of the episode as at which it is told; None for the link's own."""


def figure_named(target: str) -> FigureNamed:
    """Return which figure a link names, by what stands after `figure:`.

    Examples
    --------
    >>> figure_named("power")
    FigureNamed(quantity='power', subject='engine', episode=None)
    >>> figure_named("pipe_velocity/hot-pipe@6")
    FigureNamed(quantity='pipe_velocity', subject='hot-pipe', episode='6')
    """
    name, at, episode = target.partition("@")
    quantity, _, subject = name.partition("/")
    return FigureNamed(quantity, subject or ENGINE, episode if at else None)


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
    found = (
        _astray(link, numbers, parts) or _too_late(link, each.number)
        for each in every
        for link in each.links
    )
    return tuple(problem for problem in found if problem is not None)


def _astray(link: ProseLink, numbers: Collection[str], parts: Container[str]) -> Problem | None:
    match link.kind:
        case "episode":
            return _astray_episode(link, link.target, numbers)
        case "chart" if link.target not in CHARTS:
            message = f"there is no chart `{link.target}`"
            return _problem(link, message, f"one of: {', '.join(CHARTS)}")
        case "figure":
            return _astray_figure(link, numbers, parts)
    return None


def _astray_episode(link: ProseLink, number: str, numbers: Collection[str]) -> Problem | None:
    if number in numbers:
        return None
    listed = ", ".join(sorted(numbers, key=int))
    wanted = number or "without a number"
    return _problem(link, f"there is no episode {wanted}", f"there are: {listed}")


def _astray_figure(
    link: ProseLink, numbers: Collection[str], parts: Container[str]
) -> Problem | None:
    named = figure_named(link.target)
    if named.quantity not in GLOSSARY:
        near = closest(named.quantity, GLOSSARY)
        hint = f"did you mean `{near}`?" if near else "as `figure:injector_duty`"
        return _problem(link, f"there is no figure `{named.quantity}`", hint)
    if named.subject != ENGINE and named.subject not in parts:
        hint = "as `figure:pipe_velocity/hot-pipe`"
        return _problem(link, f"there is no part `{named.subject}` that has figures", hint)
    if named.episode is not None:
        return _astray_episode(link, named.episode, numbers)
    return None


def _too_late(link: ProseLink, own: int) -> Problem | None:
    """Return a problem for a figure as at an episode that its own does not know yet."""
    named = figure_named(link.target) if link.kind == "figure" else None
    if named is None or named.episode is None or int(named.episode) <= own:
        return None
    message = f"episode {named.episode} comes after this one, which cannot know its figures"
    hint = f"as at episode {own} or an earlier one: `figure:{link.target.partition('@')[0]}@{own}`"
    return _problem(link, message, hint)


def _problem(link: ProseLink, message: str, hint: str) -> Problem:
    return Problem("link-astray", message, link.place, hint)
