"""All files of the charts of a journal, drawn here."""

from __future__ import annotations

from hoistbook.pages.charts import chart_calls, chart_data
from hoistbook.pages.desk import Desk


def chart_files(desk: Desk) -> dict[str, bytes]:
    """Return every chart and its data: path in the site -> content."""
    drawn = {path: draw() for path, (draw, _) in chart_calls(desk).items()}
    return drawn | chart_data(desk)
