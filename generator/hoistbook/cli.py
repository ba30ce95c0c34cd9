"""The commands: each turns its options into calls and what comes of them into words.

Libraries that take long to load are imported by the commands that need them.
"""

from __future__ import annotations

import shlex
import shutil
import sys
import tempfile
import traceback
from collections.abc import Callable, Iterable
from contextlib import suppress
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from hoistbook.console import Screen

if TYPE_CHECKING:
    from hoistbook.pages.desk import Desk
    from hoistbook.pipeline import Built
    from hoistbook.printed.block import Block
    from hoistbook.problems import Notice
    from hoistbook.writing import Written

JOURNAL = click.option(
    "--journal",
    "folder",
    type=click.Path(path_type=Path, exists=True, file_okay=False),
    default="content",
    show_default=True,
    help="The folder of the journal.",
)


def _named(_: click.Context, __: click.Parameter, target: Path) -> Path:
    """Refuse a target without a name: the site is laid down beside it and then exchanged."""
    if target.name in ("", ".."):
        raise click.BadParameter("give the folder of the site a name, as output/site")
    return target


INTO = click.option(
    "--into",
    "target",
    type=click.Path(path_type=Path),
    callback=_named,
    default="output/site",
    show_default=True,
    help="The folder of the site; what hoistbook wrote there before is replaced.",
)
EPISODE = click.option(
    "--episode", "number", type=int, help="As at this episode; the last when left out."
)


class Commands(click.Group):
    """A group that shows what goes wrong as a sentence, never as a traceback."""

    def invoke(self, context: click.Context) -> Any:
        """Run a command."""
        try:
            return super().invoke(context)
        except (click.ClickException, click.Abort, click.exceptions.Exit):
            raise
        except KeyboardInterrupt:
            # A site is exchanged whole, so that there is nothing to put right.
            click.echo("Stopped; nothing is left half written.", err=True)
            raise click.exceptions.Exit(1) from None
        except Exception as error:
            raise click.ClickException(_sentence(error)) from error


def _sentence(error: Exception) -> str:
    """Return what has gone wrong; of a mistake of ours the traceback is kept in a file."""
    from hoistbook.publish.swap import WriteError

    if isinstance(error, OSError) and error.filename and error.strerror:
        return f"{error.filename} cannot be used: {error.strerror}"
    if isinstance(error, WriteError | OSError):
        return str(error)
    with tempfile.NamedTemporaryFile(
        "w", prefix="hoistbook-", suffix=".txt", delete=False, encoding="utf-8"
    ) as report:
        report.write("".join(traceback.format_exception(error)))
    return (
        f"hoistbook itself has gone wrong ({type(error).__name__}); your files are untouched. "
        f"What happened is written in {report.name}: please send it to the people who make it."
    )


@click.group(cls=Commands)
@click.version_option(package_name="hoistbook", message="%(prog)s %(version)s")
def main() -> None:
    """Write the build journal of a car: one Markdown file per episode in, a whole site out."""


@main.command()
@JOURNAL
def check(folder: Path) -> None:
    """Read and work everything out, report problems and notices; write nothing."""
    from hoistbook.pipeline import check as check_journal

    screen = Screen()
    with screen.progress() as tell:
        built = check_journal(folder, tell=tell)
    _report(screen, built, folder)
    screen.say(_outcome(built))


@main.command()
@JOURNAL
@INTO
def write(folder: Path, target: Path) -> None:
    """Check, then write the site; after a problem the old site stays as it was."""
    from hoistbook.writing import write as write_site

    screen = Screen()
    with screen.progress() as tell:
        written = write_site(folder, target, tell)
    _report(screen, written, folder, "; the site stays as it was")
    home = target / "index.html"
    screen.say(f"Wrote {home}" if written.changed else f"Nothing has changed: {home}")
    screen.say("Open that file in a browser. To see every change while you write:")
    screen.say(f"    {_called()} watch{_unusual(folder, target)}")


@main.command()
@JOURNAL
@INTO
@click.option(
    "--port",
    type=click.IntRange(1, 65535),
    default=8000,
    show_default=True,
    help="On this machine alone.",
)
def watch(folder: Path, target: Path, port: int) -> None:
    """Keep writing while files change and show the site, unpublished episodes too."""
    from hoistbook.preview.session import Session

    screen = Screen()
    screen.say(f"Showing http://127.0.0.1:{port}/ until you press Ctrl+C")
    with suppress(KeyboardInterrupt):
        Session(folder, target, Watching(screen, folder, target)).run(port)


class Watching:
    """Says what came of every build, and of the notices those that the one before did not have."""

    def __init__(self, screen: Screen, folder: Path, target: Path) -> None:
        self._screen, self._folder, self._target = screen, folder, target
        self._before: frozenset[tuple[str, str]] = frozenset()
        self._now: frozenset[tuple[str, str]] = frozenset()

    def __call__(self, done: Built | Written | Exception) -> None:
        """Print what came of a build for the screen, or of the write to the disk behind it."""
        from hoistbook.writing import Written

        if isinstance(done, Exception):
            self._screen.complain(_sentence(done))
        elif done.problems:
            self._screen.problems(done.problems, self._folder)
            self._screen.say(_outcome(done))
        elif isinstance(done, Written):
            self._tell(done.notices)
            wrote = f"Wrote {self._target / 'index.html'}"
            self._screen.say(wrote if done.changed else "Nothing has changed")
        else:
            self._before, self._now = self._now, frozenset()
            self._tell(done.notices)
            self._screen.say(_outcome(done))

    def _tell(self, notices: Iterable[Notice]) -> None:
        # A line that has moved makes no new notice: so its place does not count.
        told = self._before | self._now
        fresh = {each: (each.code, each.message) for each in notices}
        self._screen.notices((each for each in fresh if fresh[each] not in told), self._folder)
        self._now |= frozenset(fresh.values())


@main.command()
@JOURNAL
@EPISODE
def tally(folder: Path, number: int | None) -> None:
    """Print the running cost."""
    from hoistbook.printed.facts import tally_blocks

    _print(folder, number, tally_blocks)


@main.command()
@JOURNAL
@EPISODE
def spec(folder: Path, number: int | None) -> None:
    """Print the spec sheet: car, settings, figures, parts fitted, joins."""
    from hoistbook.printed.facts import spec_blocks

    _print(folder, number, spec_blocks)


@main.command()
@click.argument("before", type=int)
@click.argument("after", type=int)
@JOURNAL
def changes(folder: Path, before: int, after: int) -> None:
    """Print what changed from episode BEFORE to episode AFTER; 0 is the car as bought."""
    from hoistbook.printed.facts import change_blocks

    def blocks(desk: Desk, _: int) -> Iterable[Block]:
        return change_blocks(desk, _known(desk, before), _known(desk, after))

    _print(folder, max(before, after), blocks)


@main.command()
@click.argument("figure")
@JOURNAL
@EPISODE
def workings(folder: Path, figure: str, number: int | None) -> None:
    """Print how FIGURE came about, from the author's line to the page."""
    from hoistbook.printed.workings import workings_blocks

    def blocks(desk: Desk, as_at: int) -> Iterable[Block]:
        return workings_blocks(desk, _quantity(desk, figure, as_at), as_at)

    _print(folder, number, blocks)


@main.command()
@JOURNAL
def formulas(folder: Path) -> None:
    """Print every formula with its source, its reference values and what it is used for."""
    from hoistbook.printed.formulas import formula_blocks

    _print(folder, None, formula_blocks)


@main.command()
@click.argument("number", metavar="N", type=int)
@JOURNAL
def description(folder: Path, number: int) -> None:
    """Print the text for the description box of the video of episode N."""
    from hoistbook.printed.description import description as text_of

    screen = Screen()
    desk = _desk(screen, folder)
    episode = desk.episodes.get(_known(desk, number))
    if episode is None:
        raise click.BadParameter("the car as bought has no video", param_hint="N")
    screen.say(text_of(desk, episode).rstrip())


@main.command()
@JOURNAL
def rates(folder: Path) -> None:
    """Write the exchange rates that the receipts need to rates.csv in the journal."""
    from hoistbook.pipeline import fill_rates

    screen = Screen()
    filled = fill_rates(folder)
    for each in filled.rates:
        screen.say(f"{each.day}  {each.currency}  {each.rate}  {each.source}")
    screen.problems(filled.problems, folder)
    if filled.problems:
        raise click.exceptions.Exit(1)
    if filled.rates:
        screen.say(f"{_counted(len(filled.rates), 'rate')} added to {folder / 'rates.csv'}")
    else:
        screen.say("no receipt needs another rate; nothing is written")


def _print(
    folder: Path, number: int | None, blocks_of: Callable[[Desk, int], Iterable[Block]]
) -> None:
    """Print tables as at an episode, the last when none is named."""
    screen = Screen()
    desk = _desk(screen, folder)
    as_at = _known(desk, number)
    for at, block in enumerate(blocks_of(desk, as_at)):
        if at:
            screen.say()
        screen.say(block.title if at else block.title + _unpublished(desk, as_at))
        screen.table(block.headings, block.rows)


def _unpublished(desk: Desk, number: int) -> str:
    """Return what a heading adds where episodes are counted that the written site leaves out."""
    of_them = [
        str(each.number)
        for each in desk.material.episodes
        if each.published is None and each.number <= number
    ]
    if not of_them:
        return ""
    if len(of_them) == 1:
        return f", with episode {of_them[0]}, which is not published yet"
    named = f"{', '.join(of_them[:-1])} and {of_them[-1]}"
    return f", with episodes {named}, which are not published yet"


def _desk(screen: Screen, folder: Path) -> Desk:
    """Return the desk of a whole journal, unpublished episodes included: the author is reading."""
    from hoistbook.pages.desk import desk_of
    from hoistbook.pipeline import work_out

    with screen.progress() as tell:
        built = work_out(folder, unpublished=True, tell=tell)
    if built.material is None:
        _report(screen, built, folder)
        raise click.exceptions.Exit(1)
    return desk_of(built.material)


def _known(desk: Desk, number: int | None) -> int:
    if number is None:
        return desk.last
    if number not in desk.states:
        known = ", ".join(map(str, desk.states))
        raise click.BadParameter(f"there is no episode {number}; there are {known}")
    return number


def _quantity(desk: Desk, figure: str, number: int) -> str:
    from hoistbook.printed.lacking import lacks
    from hoistbook.problems import closest

    name = figure.strip().replace(" ", "_")
    known = dict.fromkeys(each.key.quantity for each in desk.figures[number].figures)
    if name in known:
        return name
    why = lacks(name)
    if why:
        message = f"there is no {name} as at episode {number}; it is worked out of {why}"
        raise click.BadParameter(message, param_hint="FIGURE")
    near = closest(name, known)
    hint = f"did you mean {near}?" if near else f"there are {', '.join(known)}"
    raise click.BadParameter(f"there is no figure {figure}; {hint}", param_hint="FIGURE")


def _report(screen: Screen, done: Built | Written, folder: Path, so: str = "") -> None:
    """Print problems and notices; after a problem the command has failed."""
    screen.notices(done.notices, folder)
    screen.problems(done.problems, folder)
    if done.problems:
        screen.complain(_outcome(done) + so)
        raise click.exceptions.Exit(1)


def _outcome(done: Built | Written) -> str:
    """Return in a line what came of a command."""
    return f"{_counted(len(done.problems), 'problem')}, {_counted(len(done.notices), 'notice')}"


def _counted(count: int, word: str) -> str:
    return f"{count} {word}" if count == 1 else f"{count} {word}s"


def _called() -> str:
    """Return how this program was called: by its name alone only where the shell finds it."""
    called = Path(sys.argv[0])
    found = shutil.which("hoistbook")
    if called.name != "hoistbook" or (found and Path(found).samefile(called)):
        return "hoistbook"
    return shlex.quote(str(called))


def _unusual(folder: Path, target: Path) -> str:
    """Return the options that were needed to write this site."""
    options = ""
    if folder != Path("content"):
        options += f" --journal {shlex.quote(str(folder))}"
    if target != Path("output/site"):
        options += f" --into {shlex.quote(str(target))}"
    return options
