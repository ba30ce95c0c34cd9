"""Every formula there is, with its source, its check values and where it is used, as tables."""

from __future__ import annotations

from collections.abc import Iterator

from hoistbook.pages.desk import Desk
from hoistbook.pages.formula_list import FormulasContext, formula_pages
from hoistbook.printed.block import Block


def formula_blocks(desk: Desk, _: int) -> Iterator[Block]:
    """Yield the formulas as the page of the site lists them, topic by topic."""
    page = next(formula_pages(desk))
    if not isinstance(page.context, FormulasContext):
        return
    for topic in page.context.topics:
        rows = tuple(
            (
                row.formula.text,
                row.source,
                row.check_values,
                ", ".join(each.text for each in row.used) or row.unused,
            )
            for row in topic.rows
        )
        yield Block(
            title=topic.title.text,
            headings=("Gives", "Source", ">Reference values", "Used for"),
            rows=rows,
        )
