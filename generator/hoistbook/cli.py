"""The commands: each turns its options into calls of the pipeline and its result into words."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import click

JOURNAL = click.option(
    "--journal",
    "folder",
    type=click.Path(path_type=Path, exists=True, file_okay=False),
    default=Path("content"),
    show_default=True,
    help="The folder of the journal.",
)
INTO = click.option(
    "--into",
    "target",
    type=click.Path(path_type=Path),
    default=Path("output/site"),
    show_default=True,
    help="The folder that the site takes the place of.",
)
EPISODE = click.option("--episode", type=int, help="As at this episode; the last when left out.")


class Commands(click.Group):
    """A group whose commands never show a traceback."""

    def invoke(self, context: click.Context) -> Any:
        """Run a command and turn what goes wrong on the machine into a sentence."""
        from hoistbook.publish.swap import WriteError

        try:
            return super().invoke(context)
        except (WriteError, OSError) as error:
            raise click.ClickException(str(error)) from error


@click.group(cls=Commands)
@click.version_option(package_name="hoistbook")
def main() -> None:
    """Write the build journal of a car: one Markdown file per episode in, a whole site out."""
