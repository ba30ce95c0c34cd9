"""A number with its unit, its qualifier and its evidence, as an author writes it."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from functools import lru_cache

from hoistbook.problems import NEARLY, closest
from hoistbook.units import canonical, dimension, from_unit, scale, spellings, units_of
from hoistbook.values.evidence import Evidence
from hoistbook.values.number import NUMBER, parse_number
from hoistbook.values.slip import Slip


@dataclass(frozen=True, slots=True)
class Quantity:
    """One quantity in SI base units, with the words it was written in."""

    value: float
    """In the SI base unit of its dimension (Pa, K, kg/s, m3/s, m, J, W, N m); rpm is 1/min."""
    unit: str
    """The unit as written, in the canonical spelling that pages print ("bar", "cc/min")."""
    text: str
    """What the author wrote, without the word of evidence; a space before the unit."""
    reference: str | None = None
    """`gauge` or `absolute` for pressures; None elsewhere."""
    half_width: float | None = None
    """Half the 95 % band in SI, where the author gave one ("+- 5 kPa", "+- 3 %")."""
    evidence: Evidence | None = None
    at: Quantity | None = None
    """The condition it holds at: 3 bar in "550 cc/min at 3 bar"."""


LONGEST = 120
"""Characters of a quantity; a longer text is prose in the wrong place."""

_EVIDENCE = [word.value for word in Evidence]
_BAND = r"(?:\+\s?/?\s?-|\u00b1)"
_FRACTION = re.compile(r"(?:(\d{1,3})[ -])?(\d{1,3})/(\d{1,3})(?=\s*[^\d\s])", re.ASCII)
_REFERENCES = {"gauge": "gauge", "g": "gauge", "absolute": "absolute", "abs": "absolute"}
_NAMED_RATIO = {"lambda": "lambda", "\N{GREEK SMALL LETTER LAMDA}": "lambda"}


@lru_cache(maxsize=4096)
def parse_quantity(
    text: str,
    dimensions: tuple[str, ...] = (),
    *,
    reference_needed: bool = False,
    numbers: str = "point",
) -> Quantity | Slip:
    """Return the quantity in a text, or what is wrong with it.

    Parameters
    ----------
    text
        "12 psi gauge", "550 cc/min at 3 bar", "9.5:1", "3/8 in +- 2 %, measured".
    dimensions
        Names of the dimensions that fit here; any when empty. With "ratio" or "number" among
        them a bare number will do.
    reference_needed
        Whether a pressure must say gauge or absolute.
    numbers
        What stands before the decimals in this journal, "point" or "comma".

    Examples
    --------
    >>> pressure = parse_quantity("12 psi gauge +- 3 %, measured", ("pressure",))
    >>> pressure.value, pressure.unit, pressure.reference, pressure.half_width
    (82737.0875, 'psi', 'gauge', 2482.1126)
    >>> parse_quantity("12", ("pressure",)).message
    '`12` has no unit'
    """
    if len(text) > LONGEST:
        return Slip("bad-quantity", "this text is too long for a number with its unit")
    body, evidence = _without_evidence(text)
    if isinstance(evidence, Slip):
        return evidence
    main, *conditions = re.split(r"\s+at\s+", body)
    if len(conditions) > 1:
        return Slip("bad-quantity", f"`{body}` names more than one condition", "keep one `at`")
    found = _one(main, dimensions, reference_needed, numbers)
    if isinstance(found, Slip):
        return found
    if dimension(found.unit) == "temperature" and found.value < 0:
        message = f"`{main}` is below absolute zero"
        return Slip("bad-quantity", message, "look at its sign and unit")
    at = parse_quantity(conditions[0], numbers=numbers) if conditions else None
    if isinstance(at, Slip):
        return replace(at, offset=at.offset + text.index(conditions[0]))
    return replace(found, text=spaced(body), evidence=evidence, at=at)


def spaced(text: str) -> str:
    """Return a quantity as it is printed: with a space between number and unit.

    Examples
    --------
    >>> spaced("550cc/min at 3bar +-3%"), spaced("9.5:1"), spaced('2.5"')
    ('550 cc/min at 3 bar +-3 %', '9.5:1', '2.5"')
    """
    # The number begins a word, so that the 3 of m3/s keeps its place.
    return re.sub(rf"(?<![^\s/+\u00b1-])({NUMBER})(?=[^\W\d_]|[%\u00b0])", r"\1 ", text)


def _without_evidence(text: str) -> tuple[str, Evidence | Slip | None]:
    body, comma, last = text.rpartition(",")
    word = last.strip()
    if not comma or not word or word[0].isdigit():
        return text.strip(), None
    if word in _EVIDENCE:
        return body.strip(), Evidence(word)
    near = closest(word, _EVIDENCE)
    return body, Slip(
        "unknown-evidence",
        f"`{word}` does not say how the number is known",
        f"write {near}" if near else f"one of: {', '.join(_EVIDENCE)}",
        offset=len(text) - len(last.lstrip()),
    )


def _one(
    text: str, dimensions: tuple[str, ...], reference_needed: bool, numbers: str
) -> Quantity | Slip:
    """Read a quantity without evidence or condition."""
    core, band = _without_band(text)
    read = _number_and_unit(core, numbers)
    if isinstance(read, Slip):
        no_number = read.code == "bad-quantity" and dimensions
        return replace(read, hint=likely("", dimensions)) if no_number else read
    number, spelling = read
    if not spelling and band and dimensions != ("number",):
        # "0.8 +- 0.05 bar": the unit stands after the band and holds for both.
        match = re.match(rf"{NUMBER}\s*", band)
        spelling = band[match.end() :] if match else ""
    unit, reference = parse_unit(spelling)
    slip = _unit_slip(core, spelling, unit, reference, dimensions, reference_needed)
    if slip is not None:
        return slip
    unit = unit or "-"
    found = Quantity(float(from_unit(float(number), unit)), unit, text, reference)
    if band is None:
        return found
    half_width = _half_width(band, found, number, numbers)
    return half_width if isinstance(half_width, Slip) else replace(found, half_width=half_width)


def _without_band(text: str) -> tuple[str, str | None]:
    match = re.search(rf"\s*{_BAND}\s*", text)
    if match is None:
        return text.strip(), None
    after = text[match.end() :]
    # "550 cc/min +- 3 % gauge" never occurs, but "0.8 bar +- 0.05 bar gauge" does: the word then
    # belongs to the quantity and stands at the end of both.
    core = text[: match.start()].strip()
    tail = re.search(r"\s+(gauge|absolute)$", after)
    if tail and not core.endswith(tail[1]) and not core[-1:].isdigit():
        return core + tail[0], after[: tail.start()]
    return core, after.strip()


def _number_and_unit(core: str, numbers: str) -> tuple[Decimal, str] | Slip:
    first, _, rest = core.partition(" ")
    if first.casefold() in _NAMED_RATIO and rest:
        number = parse_number(rest.strip(), numbers)
        return number if isinstance(number, Slip) else (number, "lambda")
    fraction = _FRACTION.match(core)
    if fraction:
        whole, above, below = (int(piece or 0) for piece in fraction.groups())
        if below == 0:
            return Slip("bad-number", f"`{core}` divides by nothing", "as 3/8 in")
        return whole + Decimal(above) / Decimal(below), core[fraction.end() :].strip()
    match = re.match(NUMBER, core)
    if match is None:
        return Slip("bad-quantity", f"`{core}` has no number", "a number and its unit, as 63.5 mm")
    number = parse_number(match[0].rstrip(",.'") or match[0], numbers)
    if isinstance(number, Slip):
        return number
    return number, core[match.end() :].strip()


@lru_cache(maxsize=512)
def parse_unit(spelling: str) -> tuple[str | None, str | None]:
    """Return the canonical unit and the reference in "bar gauge", "psig", "kPa abs"."""
    unit = canonical(spelling) if spelling else None
    if unit is not None or not spelling:
        return unit, None
    match = re.fullmatch(r"(.*?)\s*\(?\b(gauge|absolute|abs)\)?|(psi|bar)\s?([ga])", spelling)
    if match is None:
        return None, None
    word = match[2] or match[4]
    unit = canonical(match[1] or match[3] or "")
    return unit, _REFERENCES["absolute" if word == "a" else word]


def _unit_slip(
    core: str,
    spelling: str,
    unit: str | None,
    reference: str | None,
    dimensions: tuple[str, ...],
    reference_needed: bool,
) -> Slip | None:
    """Return what is wrong with the unit, if anything."""
    if not spelling:
        bare = not dimensions or "ratio" in dimensions or "number" in dimensions
        return None if bare else Slip("no-unit", f"`{core}` has no unit", likely(core, dimensions))
    offset = max(core.find(spelling), 0)
    if unit is None:
        known = [name for name in spellings() if not dimensions or dimension(name) in dimensions]
        near = closest(spelling, known, cutoff=NEARLY)
        # The number was of another unit, so it is not put before ours.
        hint = f"did you mean {near}?" if near else likely("", dimensions)
        return Slip("unknown-unit", f"`{spelling}` is not a unit", hint, offset)
    if dimensions and dimension(unit) not in dimensions:
        wanted = _or(dimensions)
        return Slip(
            "wrong-unit",
            f"`{core}` is {_article(dimension(unit))}, and here {_article(wanted)} is wanted",
            likely(core[:offset].strip(), dimensions),
            offset,
        )
    if reference_needed and reference is None and dimension(unit) == "pressure":
        return Slip(
            "gauge-or-absolute",
            f"`{core}` does not say from where the pressure counts",
            f"write {core} gauge (above the air outside) or {core} absolute (above vacuum)",
        )
    if reference is not None and dimension(unit) != "pressure":
        hint = f"take out {reference}"
        return Slip("wrong-unit", f"`{core}` is no pressure, and only one is {reference}", hint)
    return None


def likely(number: str, dimensions: Sequence[str], unit: str = "") -> str:
    """Return a hint that names the units that fit, with the number put before the likeliest.

    That is the first one where no unit is given.
    """
    units = [unit for name in dimensions for unit in units_of(name)[:4] if unit != "-"]
    if not units:
        return "as 4" if dimensions else "a number and its unit, as 63.5 mm"
    shown = f"as {number} {unit or units[0]}; " if number else ""
    return f"{shown}units that fit here: {', '.join(units)}"


def _half_width(band: str, of: Quantity, number: Decimal, numbers: str) -> float | Slip:
    """Return half a band in SI: in per cent, in a unit, or bare in the value's own unit."""
    read = _number_and_unit(band, numbers)
    if isinstance(read, Slip):
        return read
    amount, spelling = read
    unit, _ = parse_unit(spelling)
    if spelling and unit is None:
        return Slip("unknown-unit", f"`{spelling}` is not a unit", f"as +- {amount} {of.unit}")
    if unit == "%" and of.unit != "%":
        return abs(float(amount) / 100 * float(number) * scale(of.unit))
    if unit is not None and dimension(unit) != dimension(of.unit):
        return Slip(
            "wrong-unit",
            f"the band `{band}` is {_article(dimension(unit))}, the number "
            f"{_article(dimension(of.unit))}",
            f"as +- {amount} {of.unit} or +- 3 %",
        )
    return abs(float(amount) * scale(unit or of.unit))


def _or(words: Sequence[str]) -> str:
    return " or ".join([", ".join(words[:-1]), words[-1]]) if len(words) > 1 else words[0]


def _article(word: str) -> str:
    return f"{'an' if word[0] in 'aeiou' else 'a'} {word}"
