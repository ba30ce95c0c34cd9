"""The page that stands in the place of every other while a journal has problems."""

from __future__ import annotations

import html
from collections.abc import Sequence
from pathlib import Path

from hoistbook.problems import Problem, picture

_PAGE = """\
<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>{count}</title>
<style>
body {{ font-family: system-ui, sans-serif; line-height: 1.5; margin: 2rem auto; max-width: 60rem; padding: 0 1rem }}
pre {{ border-inline-start: 0.6rem solid; overflow-x: auto; padding: 0.5rem 1rem }}
</style>
</head>
<body>
<main>
<h1>{count}</h1>
<p>The written site stays as it was. The page that you asked for is shown here as soon as this is put right.</p>
{pictures}
</main>
</body>
</html>
"""  # noqa: E501 - a line of a page


def problem_page(problems: Sequence[Problem], folder: Path) -> bytes:
    """Return a page that shows problems as a terminal does: where, what, the line, what to do."""
    count = "1 problem" if len(problems) == 1 else f"{len(problems)} problems"
    told = (html.escape(picture(each, folder.as_posix())) for each in problems)
    pictures = "\n".join(f'<pre tabindex="0">{each}</pre>' for each in told)
    return _PAGE.format(count=count, pictures=pictures).encode()
