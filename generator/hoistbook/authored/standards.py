"""Power standards as an author names them: of the journal, and of a run as its log was printed."""

from __future__ import annotations

from hoistbook.authored.context import Context
from hoistbook.authored.fields import text
from hoistbook.authored.nodes import Node, Text
from hoistbook.engineering.power_standards import STANDARDS
from hoistbook.values.slip import Slip

AS_RUN = "none"
"""What stands where a power is left as it was run, in the air of its day."""
ALSO_AS_RUN = ("none", "as run", "as observed", "observed", "uncorrected")


def standard_named(words: str) -> str | None:
    """Return a power standard as it is printed, `none` for none, None for one not known.

    Examples
    --------
    >>> standard_named("sae j1349"), standard_named("J607"), standard_named("as run")
    ('SAE J1349', 'SAE J607', 'none')
    """
    said = " ".join(words.casefold().replace("-", " ").split())
    if said in ALSO_AS_RUN:
        return AS_RUN
    known = {each.casefold(): each for each in STANDARDS}
    known |= {each.casefold().rpartition(" ")[2]: each for each in STANDARDS}
    return known.get(said)


def _known() -> str:
    return f"known are {AS_RUN}, {', '.join(STANDARDS)}"


def journal_standard(words: str, context: Context) -> str | Slip:
    """Return the standard that the journal refers its power runs to."""
    found = standard_named(words)
    if found is not None:
        return found
    return Slip("unknown-standard", f"`{words}` is no power standard that is known here", _known())


def run_standard(node: Node, context: Context) -> str | None:
    """Return the standard that a log was referred to; one not known is kept in its words."""
    words = text(node, context)
    if words is None or not isinstance(node, Text):
        return None
    found = standard_named(words)
    if found is None:
        message = f"`{words}` is no power standard that is known here: it cannot be taken out"
        context.notice("unknown-standard", message, node.place, _known())
    return found or words
