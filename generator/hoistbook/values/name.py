# ruff: noqa: RUF001, SIM905 - letters that look like Latin ones are the point of this table

"""Ids out of names: lower-case letters, digits and hyphens, from a name in any script."""

from __future__ import annotations

import re
import unicodedata

# Latin letters that have no accent to take off; Cyrillic and Greek romanised letter by letter in
# the manner of ISO 9 and ISO 843.
_LETTERS = str.maketrans(
    dict(
        pair.split("=")
        for pair in (
            "ß=ss æ=ae œ=oe ø=o đ=d ð=d þ=th ł=l "
            "а=a б=b в=v г=g д=d е=e ж=zh з=z и=i к=k л=l м=m н=n о=o п=p р=r с=s т=t у=u ф=f "
            "х=h ц=ts ч=ch ш=sh щ=shch ъ= ы=y ь= э=e ю=yu я=ya і=i є=ye ґ=g "
            "α=a β=v γ=g δ=d ε=e ζ=z η=i θ=th ι=i κ=k λ=l μ=m ν=n ξ=x ο=o π=p ρ=r σ=s ς=s τ=t "
            "υ=y φ=f χ=ch ψ=ps ω=o"
        ).split()
    )
)


def to_id(name: str) -> str:
    """Return the id that a name is turned into; empty when the name has no letter or digit.

    Letters of scripts that have no table here are spelt by the last word of their Unicode name,
    which reads well for syllables (kana, Hangul) and stays unique for ideographs.

    Examples
    --------
    >>> to_id("Turbine inlet gasket"), to_id("Ölkühler Ø 51 mm"), to_id("Турбина")
    ('turbine-inlet-gasket', 'olkuhler-o-51-mm', 'turbina')
    >>> to_id("ターボ"), to_id("涡轮")
    ('tabo', '6da18f6e')
    """
    letters = unicodedata.normalize("NFKC", name).casefold()
    return re.sub(r"[^a-z0-9]+", "-", "".join(map(_spell, letters))).strip("-")


def is_latin(name: str) -> bool:
    """Tell whether every letter of a name is Latin, so that its id can be guessed from it."""
    return all(
        not letter.isalpha() or unicodedata.name(letter, "").startswith("LATIN") for letter in name
    )


def _spell(letter: str) -> str:
    if letter.isascii():
        return letter
    plain = unicodedata.normalize("NFKD", letter)[0].translate(_LETTERS)
    if plain.isascii():
        return plain
    if unicodedata.category(letter) not in ("Lo", "Ll", "Nd", "Nl"):
        return "" if unicodedata.category(letter)[0] in "LM" else "-"
    last = unicodedata.name(letter, f"U{ord(letter):x}").casefold().split()[-1]
    return re.sub(r"[^a-z0-9]", "", last.removeprefix("ideograph-"))
