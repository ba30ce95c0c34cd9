"""What `watch` prints on the terminal from one change of the journal to the next."""

from __future__ import annotations

import io
from pathlib import Path

from rich.console import Console

from hoistbook.cli import Watching
from hoistbook.console import Screen
from hoistbook.preview.session import Session
from tests.helpers.journals import changed, copied


def test_a_notice_is_printed_when_it_comes_and_not_with_every_change(tmp_path: Path) -> None:
    journal, out = copied(tmp_path), io.StringIO()
    console = Console(file=out, width=60, highlight=False, color_system=None)
    target = tmp_path / "site"
    watching = Watching(Screen(console, console), Path("content"), target)
    session = Session(journal, target, watching)
    first = journal / "episodes/01-as-bought/episode.md"

    def after(old: str, new: str) -> str:
        out.seek(0)
        out.truncate()
        changed(first, old, new)
        session.renew()
        return out.getvalue()

    no_rate = (
        "content/episodes/03-not-yet-up/episode.md:2:1\n"
        "notice: rates.csv has no rate of GBP for 2025-12-01; the total of that day is not shown "
        "in GBP\n"
        "    title: Nobody has seen this yet\n"
        "    ^\n"
        "  run `hoistbook rates`, which looks it up and writes it there\n\n"
    )
    not_published = (
        "content/episodes/03-not-yet-up/episode.md:2:1\n"
        "notice: episode 3 is not published yet: the site is written without it\n"
        "    title: Nobody has seen this yet\n"
        "    ^\n"
        "  add `published:` with the day, as 2026-03-06, once its video is up; "
        "`hoistbook watch` shows it until then\n\n"
    )
    done = f"Wrote {target / 'index.html'}\n"
    assert after("What there is.", "What there was.") == (
        f"{no_rate}0 problems, 1 notice\n{not_published}{done}"
    )
    assert after("What there was.", "What there was.\nclaims: [power above 300 kW]") == (
        "content/episodes/01-as-bought/episode.md:6:10\n"
        'notice: claim "power above 300 kW": does not hold\n'
        "    claims: [power above 300 kW]\n"
        "             ^\n"
        "  Estimated: 73 kW, highest at 6,000 rpm; 95 % between 56 and 90 kW, not referred to any "
        "reference air. Missed by 76 %.\n\n"
        f"0 problems, 2 notices\n{done}"
    )
    assert after("What there was.\n", "What there was.\n# a comment\n") == (
        "0 problems, 2 notices\nNothing has changed\n"
    )
