"""How pages print numbers, bands, units, dates and money: in the journal's language and units.

No number is printed with more digits than its 95 % band carries. Number and unit never part at
the end of a line: what stands between them is a non-breaking space.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from functools import partial

from babel import Locale
from babel.dates import format_date
from babel.numbers import format_currency

from hoistbook.engineering.glossary import Term
from hoistbook.figures.digits import exact, place_of_band, rounded
from hoistbook.figures.figure import AS_RUN, Figure, Input, Limit
from hoistbook.pages.numerals import all_digits, as_written
from hoistbook.pages.words import Words
from hoistbook.units import from_unit, printed_unit, scale, to_unit
from hoistbook.values.money import Money
from hoistbook.values.quantity import Quantity

NO_BREAK = "\N{NO-BREAK SPACE}"

_IN_FORMULAS = {"degC": "K", "degF": "K", "lambda": "-", ":1": "-"}
"""Units that give way in formulas: temperatures are absolute there, ratios plain numbers."""


@dataclass(frozen=True, slots=True)
class FigureText:
    """A figure in the words of a page, piece by piece, so that a template places them."""

    value: str
    """"110 kW"."""
    headline: str
    """"highest, at 6,000 rpm"; empty for a figure that is not a curve."""
    band: str
    """"88 to 139 kW"; empty where there is none."""
    evidence: str
    standard: str
    """"not referred to any reference air", "by SAE J1349"; empty for what is no power."""
    limit: str
    """"near its limit"; empty without one."""
    limit_at: str
    """"at most 85 %"."""
    limit_detail: str
    """"at most 85 %: flow is no longer linear above it"."""
    sentence: str
    """All but headline and limit in one line: "110 kW, 95 % band 88 to 139 kW, estimated"."""


class Formats:
    """The formats of one journal."""

    def __init__(self, words: Words, glossary: Mapping[str, Term], units: str = "metric") -> None:
        self.words = words
        self._glossary = glossary
        self._imperial = units == "imperial"
        # Plain "en" would put the month first, as only one country does.
        language = "en-001" if words.language == "en" else words.language
        self._locale = Locale.parse(language, sep="-")
        self.plain: Callable[[float], str] = partial(as_written, self._locale)
        """Prints a number as an author would write it: no digits that say nothing."""

    def money(self, money: Money) -> str:
        """Return an amount with its currency's own decimals: "690.80 EUR"."""
        text = format_currency(
            money.amount,
            money.currency,
            format="#,##0.00\N{NO-BREAK SPACE}¤¤",
            locale=self._locale,
        )
        return text.replace("-", "\N{MINUS SIGN}")

    def date(self, day: date) -> str:
        """Return a date in words: "14 February 2026"."""
        return format_date(day, format="long", locale=self._locale)

    def count(self, number: int) -> str:
        """Return a whole number with its thousands set apart: "6,000"."""
        return self._decimal(Decimal(number))

    def number(self, value: float, digits: int) -> str:
        """Return a number without a band, to no more than so many significant digits."""
        return self._decimal(exact(value, digits))

    def share(self, value: float) -> str:
        """Return a share from 0 to 1 in whole per cent: "62 %"."""
        return self.in_percent(self._decimal(rounded(value * 100, 0)))

    def change(self, value: float) -> str:
        """Return a change as a share, with its sign and in tenths of a per cent: "+1.2 %"."""
        number = self.in_percent(self._decimal(rounded(value * 100, -1)))
        return f"+{number}" if value > 0 else number

    def in_percent(self, number: str) -> str:
        """Return a number as printed with the sign for per cent."""
        return self._with_unit(number, "%")

    def unit(self, quantity: str) -> str:
        """Return the canonical spelling of the unit in which this journal prints a quantity."""
        term = self._glossary[quantity]
        return term.imperial if self._imperial else term.metric

    def unit_words(self, quantity: str) -> str:
        """Return that unit as it is set on a page: "m³/s", "°C"; empty for a plain number."""
        return _set_unit(self.unit(quantity))

    def si_unit(self, quantity: str) -> str:
        """Return the unit of a quantity in formulas, as it is set on a page."""
        return _set_unit(self._glossary[quantity].unit)

    def quantity(self, value: float, quantity: str) -> str:
        """Return an SI value without a band, to the digits that the glossary gives it."""
        number = self.number(self.in_unit(value, quantity), self._glossary[quantity].digits)
        return self._with_unit(number, self.unit(quantity))

    def span(self, low: float, high: float, quantity: str) -> str:
        """Return the range between two SI values: "0.65 to 1.5", "8 to 11:1"."""
        unit, digits = self.unit(quantity), self._glossary[quantity].digits
        first, last = (self.number(float(to_unit(each, unit)), digits) for each in (low, high))
        # "lambda" is the name of its quantity, which stands before a range anyway.
        end = last if unit == "lambda" else self._with_unit(last, unit)
        return self.words("figure.band", low=first, high=end)

    def banded(self, value: float, low: float, high: float, quantity: str) -> tuple[str, str]:
        """Return an SI value and its band as printed; the band is empty where it has no width."""
        return self._banded(value, low, high, self.unit(quantity), self._glossary[quantity].digits)

    def put_in(self, given: Input) -> str:
        """Return an input's value as it is put into a formula."""
        unit = self.unit(given.name)
        unit = _IN_FORMULAS.get(unit, unit)
        digits = self._glossary[given.name].digits
        return self._banded(given.value, given.low, given.high, unit, digits)[0]

    def _banded(
        self, value: float, low: float, high: float, unit: str, digits: int
    ) -> tuple[str, str]:
        middle, bottom, top = (float(to_unit(each, unit)) for each in (value, low, high))
        if not top > bottom:
            return self._with_unit(self.number(middle, digits), unit), ""
        at = place_of_band(bottom, top)
        number, bottom_text, top_text = (
            self._decimal(rounded(each, at)) for each in (middle, bottom, top)
        )
        # "lambda" stands before its number and is said once.
        end = top_text if unit == "lambda" else self._with_unit(top_text, unit)
        band = self.words("figure.band", low=bottom_text, high=end)
        return self._with_unit(number, unit), band

    def input(self, given: Input) -> tuple[str, str]:
        """Return an input's value and band as printed."""
        return self.banded(given.value, given.low, given.high, given.name)

    def figure(self, figure: Figure) -> FigureText:
        """Return a figure in words."""
        value, band = self.banded(figure.value, figure.low, figure.high, figure.key.quantity)
        headline = figure.headline
        if headline and figure.at_speed is not None:
            speed = self.quantity(figure.at_speed, "engine_speed")
            headline = self.words("figure.headline", headline=headline, speed=speed)
        evidence = self.words(f"evidence.{figure.evidence}")
        standard = self.standard(figure.power_standard)
        said = [value, self.words("figure.in_band", band=band) if band else "", evidence, standard]
        return FigureText(
            value=value,
            headline=headline,
            band=band,
            evidence=evidence,
            standard=standard,
            limit=self._state(figure.limit) if figure.limit else "",
            limit_at=self._limit(figure.limit, figure.key.quantity) if figure.limit else "",
            limit_detail=self._detail(figure.limit, figure.key.quantity) if figure.limit else "",
            sentence=", ".join(each for each in said if each),
        )

    def standard(self, standard: str) -> str:
        """Return by which standard a power stands there, `none` for as run; empty for empty."""
        if standard == AS_RUN:
            return self.words("run.no_standard")
        return self.words("run.standard", standard=standard) if standard else ""

    def given(self, quantity: Quantity) -> str:
        """Return what an author stated, in the unit that was written: "550 cc/min at 3 bar"."""
        return self._given(quantity, self.plain(to_unit(quantity.value, quantity.unit)))

    def _given(self, quantity: Quantity, number: str) -> str:
        text = self._with_unit(number, quantity.unit)
        if quantity.reference:
            text += f"{NO_BREAK}{self.words(f'pressure.{quantity.reference}')}"
        if quantity.half_width is not None:
            # A difference has no zero point of its own, so it is the difference of two values.
            half = to_unit(quantity.value + quantity.half_width, quantity.unit)
            half -= to_unit(quantity.value, quantity.unit)
            text += f" ±{NO_BREAK}{self._difference(self.plain(half), quantity.unit)}"
        if quantity.at is not None:
            text = self.words("figure.at", value=text, condition=self.given(quantity.at))
        return text

    def given_together(self, quantities: Sequence[Quantity]) -> str:
        """Return quantities measured together: "12.1 / 12.3 / 12.0 / 12.2 bar"."""
        alike = {(each.unit, each.reference, each.half_width, each.at) for each in quantities}
        if len(quantities) < 2 or len(alike) > 1 or quantities[0].half_width is not None:
            return " / ".join(self.given(each) for each in quantities)
        unit = quantities[0].unit
        values = [Decimal(f"{to_unit(each.value, unit):.6g}") for each in quantities]
        finest = min(int(each.as_tuple().exponent) for each in values)
        # All to the same decimals, so that 12.0 stays 12.0 beside 12.1.
        texts = [
            self._decimal(each.quantize(Decimal(1).scaleb(min(finest, 0)))) for each in values
        ]
        return " / ".join([*texts[:-1], self._given(quantities[-1], texts[-1])])

    def unit_pieces(self, quantity: str, *, in_formula: bool = False) -> dict[str, str | float]:
        """Return how a script prints a quantity: what stands about the number, and its unit."""
        unit = self.unit(quantity)
        unit = _IN_FORMULAS.get(unit, unit) if in_formula else unit
        zero = float(from_unit(0.0, unit))
        before, _, after = self._with_unit("0", unit).partition("0")
        return {
            "before": before.rstrip(NO_BREAK),
            "after": after,
            "scale": scale(unit),
            "zero": zero,
        }

    @property
    def separators(self) -> dict[str, str]:
        """Return what this language puts between thousands and before decimals."""
        text = self._decimal(Decimal("1234567.5"))
        return {"group": text[1], "decimal": text[-2]}

    def _state(self, limit: Limit) -> str:
        return self.words("limit." + limit.state.replace(" ", "_"))

    def _limit(self, limit: Limit, quantity: str) -> str:
        side = self.words("figure." + limit.side.replace(" ", "_"))
        return f"{side} {self.quantity(limit.threshold, quantity)}"

    def _detail(self, limit: Limit, quantity: str) -> str:
        return f"{self._limit(limit, quantity)}: {limit.reason}"

    def in_unit(self, value: float, quantity: str) -> float:
        """Return an SI value in the unit in which this journal prints the quantity."""
        return float(to_unit(value, self.unit(quantity)))

    def _decimal(self, number: Decimal) -> str:
        """Return a number with exactly the decimals it carries."""
        return all_digits(self._locale, number)

    def _difference(self, number: str, unit: str) -> str:
        """Return half a band with its unit, without the name of its quantity: "0.02"."""
        return number if unit in ("lambda", ":1") else self._with_unit(number, unit)

    def _with_unit(self, number: str, unit: str) -> str:
        if unit == "lambda":
            return f"{unit}{NO_BREAK}{number}"
        glue = "" if unit == ":1" else NO_BREAK
        return f"{number}{glue}{_set_unit(unit)}".rstrip(NO_BREAK)


def _set_unit(unit: str) -> str:
    """Return a unit as it is set on a page, where its words do not part at the end of a line.

    Engine speed has one name on all pages: rpm, as the trade says it.
    """
    return "rpm" if unit == "1/min" else printed_unit(unit).replace(" ", NO_BREAK)
