"""Reading an end as people say it; what is unclear is kept, with what to measure."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import lru_cache
from typing import Any

from hoistbook.values import end_words as say
from hoistbook.values.end import (
    DASH_SIZED,
    HOSES,
    ROUND,
    SEATED,
    THREADED,
    End,
    EndKind,
    Gender,
)
from hoistbook.values.end_asks import Ask
from hoistbook.values.spoken import inches, plain


@dataclass
class Words:
    """A text from which what has been understood is taken away."""

    text: str

    def take(self, pattern: str) -> re.Match[str] | None:
        """Take the first match of a pattern out of the text."""
        found = re.search(pattern, self.text)
        if found:
            self.text = f"{self.text[: found.start()]} ; {self.text[found.end() :]}"
        return found

    def pick(self, table: tuple[tuple[Any, str], ...]) -> Any:
        """Return the meaning of the first pattern of a table that is met, or None."""
        for meaning, pattern in table:
            if self.take(pattern):
                while self.take(pattern):
                    pass
                return meaning
        return None

    def meets(self, table: tuple[tuple[Any, str], ...]) -> Any:
        """Return the meaning of the first pattern of a table that is met, and take nothing."""
        return next((meaning for meaning, each in table if re.search(each, self.text)), None)


@lru_cache(maxsize=8192)
def parse_end(text: str) -> End:
    """Return the end that a text means; an unclear one says what is missing and what to measure.

    Examples
    --------
    >>> parse_end("-10 AN male").full
    '-10 JIC 37 degree flare, male'
    >>> parse_end("three-inch V-band").full
    '3 in (76.2 mm) V-band flange'
    >>> parse_end("10 mm thread").unclear
    'a diameter alone names no thread'
    """
    words = Words(plain(text))
    sides = words.text.split(" to ")
    if len(sides) == 2 and all(re.search(say.TWO_WORDS, each) for each in sides):
        return _unclear(Ask.BOTH)
    if re.search(say.TWO_SIZES, words.text):
        return _unclear(Ask.BOTH)
    if words.take(say.ROUGHLY):
        return _unclear(Ask.ROUGH)
    said = _said(words)
    end = replace(_pipe_thread(words) or _thread(words) or _other(words, said), **_of_kind(said))
    end = _finished(end, words, text)
    if not end.unclear and re.search(r"\d", words.text):
        return _unclear(Ask.LEFT_OVER, end)
    return end


def _said(words: Words) -> dict[str, Any]:
    """Take what may be said of any end: class, pressure, temperature, medium, material."""
    said: dict[str, Any] = {"spec": _spec(words)}
    for pattern in say.ASIDE:
        words.take(pattern)
    said |= _limits(words)
    if found := words.take(say.PROFILE):
        said["profile"] = (found[1] or found[2]).upper()
    said["submerged"] = (
        words.take(r"\bin (?:the )?tank\b|\bsubmerge[d]?\b|\bimmersed\b") is not None
    )
    if words.take(r"\b(?:unbeaded|no bead|not beaded|without (?:a )?bead|plain(?: end)?)\b"):
        said["bead"] = False
    elif words.take(r"\bbead(?:ed)?\b|\brolled\b"):
        said["bead"] = True
    if words.take(r"\b(?:undivided|open|single (?:scroll|entry))\b"):
        said["divided"] = False
    elif words.take(r"\b(?:divided|(?:twin|double) (?:scroll|entry)|split)\b"):
        said["divided"] = True
    said["seat"] = words.pick(say.SEATS)
    said["medium"] = words.meets(say.MEDIA)
    words.take(r"\be85\b")
    said["material"] = words.meets(say.MATERIALS)
    return said


def _spec(words: Words) -> str | None:
    if found := words.take(r"\b(?:sae )?(?:j ?[23]0 ?)?([23]0) ?r ?(\d+)\b"):
        return f"{found[1]}R{found[2]}"
    if words.take(r"\b(?:sae )?j ?1401\b|\bfmvss ?106\b"):
        return "J1401"
    if found := words.take(r"\b(?:sae )?j ?30 r(\d+)\b|\br(6|7|8|9|1[0-4])\b(?!/)"):
        return f"30R{found[1] or found[2]}"
    return "PTFE" if words.take(r"\bptfe\b") else None


def _limits(words: Words) -> dict[str, float]:
    """Take pressures and temperatures: `at 4 bar` is seen, `up to 7 bar` is allowed."""
    found: dict[str, float] = {}
    allowed = r"(?P<allowed>(?:rated|good|up|max(?:imum)?)(?: (?:to|for|at))? |to )?"
    pattern = rf"\b(?:at )?{allowed}(?P<n>{say.NUMBER}) ?(?P<unit>bar|psi|kpa|degree c|degc|c)\b"
    while each := words.take(pattern + r"(?: gauge)?"):
        pressure = each["unit"] in say.TO_BAR
        name = "pressure" if pressure else "temperature"
        value = float(each["n"]) * say.TO_BAR.get(each["unit"], 1.0)
        found[f"highest_{name}" if each["allowed"] else name] = round(value, 3)
    return found


def _of_kind(said: dict[str, Any]) -> dict[str, Any]:
    return {name: value for name, value in said.items() if value is not None}


def _pipe_thread(words: Words) -> End | None:
    """Take NPT, BSP and the letters of ISO 7-1 and ISO 228-1."""
    size = rf"(?P<size>{say.PIPE_SIZE})(?: in\b|th\b)?(?: ?- ?(?P<turns>\d+(?:\.\d)?)\b)?"
    family = (
        r"(?P<family>nptf?|national pipe|bspt|bspp|bsp|british standard pipe|rc|rp|r|g)\b"
        r"(?: (?P<form>taper|parallel)(?:ed)?)?"
    )
    letters = family.replace(r"\b", r" ?(?:thread )?", 1)
    found = words.take(rf"(?<![\d/.-]){size} ?{family}") or words.take(
        rf"\b{letters} ?{size}(?![\d./x])"
    )
    if found is None:
        if words.take(
            rf"(?<![\d/-]){say.PIPE_SIZE}(?: in)? (?:pipe|gas) (?:thread|plug|nipple)\b"
        ):
            return _unclear(Ask.PIPE_FAMILY)
        return None
    form = words.take(r"\b(taper|parallel)(?:ed)?(?: thread)?\b")
    kind, gender = _family(found["family"], found["form"] or (form[1] if form else None))
    if kind is None:
        return _unclear(Ask.TAPER)
    table = say.NPT_TURNS if kind in (EndKind.NPT, EndKind.NPTF) else say.BSP_TURNS
    of_size = found["size"].replace(" ", "-")
    if found["turns"] and found["turns"] != table.get(of_size):
        return _unclear(Ask.TURNS)
    return End(kind=kind, size=of_size, gender=gender)


def _family(family: str, form: str | None) -> tuple[EndKind | None, Gender | None]:
    families: dict[str, tuple[EndKind | None, Gender | None]] = {
        "npt": (EndKind.NPT, None),
        "national pipe": (EndKind.NPT, None),
        "nptf": (EndKind.NPTF, None),
        "bspt": (EndKind.BSPT, None),
        "bspp": (EndKind.G, None),
        "g": (EndKind.G, None),
        "r": (EndKind.BSPT, Gender.MALE),
        "rc": (EndKind.BSPT, Gender.FEMALE),
        "rp": (EndKind.RP, Gender.FEMALE),
    }
    forms = {"taper": EndKind.BSPT, "parallel": EndKind.G}
    return families.get(family) or (forms.get(form or ""), None)


def _thread(words: Words) -> End | None:
    """Take a metric or inch thread, or a dash size, with the flare or O-ring that seals it."""
    flare = words.pick(say.FLARES)
    if flare is EndKind.AERO37:
        words.take(r"\b37 degree\b")
    size, thread = _size(words)
    if isinstance(size, Ask):
        return _unclear(size)
    if flare in DASH_SIZED or (flare and thread is None):
        return _dash_sized(words, flare, size, thread)
    if flare:
        return End(kind=flare, size=size)
    if thread is EndKind.METRIC or thread is EndKind.UN:
        return _unclear(Ask.SEAT_ANGLE) if words.take(say.FLARE) else End(kind=thread, size=size)
    if size and words.take(r"\bhose\b(?! end)"):
        return _unclear(Ask.HOSE_BORE)
    if size:
        return _unclear(Ask.SEAT_ANGLE if words.take(r"\bflare\b") else Ask.FLARE)
    return None


def _size(words: Words) -> tuple[str | Ask, EndKind | None]:
    """Take the size of a thread: its text and METRIC, UN, or None for a dash size."""
    if metric := _metric(words):
        tapered = words.take(r"\btaper(?:ed)?\b")
        return Ask.METRIC_TAPER if tapered else metric, EndKind.METRIC
    found = words.take(
        r"(?<![\d/.-])(?P<size>(?:\d-)?\d+/\d+) ?[-x] ?(?P<turns>\d\d)\b"
        r"(?: ?(?:unj?[fcs]?|tpi)\b)?"
    )
    if found:
        size, turns = found["size"], found["turns"]
        unified = turns in (say.UNIFIED.get((size, "unf")), say.UNIFIED.get((size, "unc")))
        pipe = turns in (say.NPT_TURNS.get(size), say.BSP_TURNS.get(size))
        return (Ask.PIPE_FAMILY if pipe and not unified else f"{size}-{turns}"), EndKind.UN
    if found := words.take(r"(?<![\d/.-])((?:\d-)?\d+/\d+)(?: in)? (un[fc]?)\b"):
        known = say.UNIFIED.get((found[1], found[2]))
        return (f"{found[1]}-{known}" if known else Ask.UNIFIED), EndKind.UN
    found = words.take(r"(?<![\d/.\w])-(\d{1,2})\b(?! ?(?:mm|in)\b)")
    return (f"-{found[1]}" if found else ""), None


def _metric(words: Words) -> str | Ask | None:
    found = words.take(
        r"\bm ?(?P<d>\d+)(?: ?(?:x|by|-) ?(?P<p>[0-3](?:\.\d+)?)|(?: pitch)? (?P<q>[0-3]\.\d+)|"
        r" (?P<series>coarse|fine))?(?: ?mm)?(?: pitch)?(?: ?x ?\d+)?\b(?![/.])"
    ) or words.take(
        r"(?<![\d.])(?P<d>\d+) ?mm ?(?:x|by) ?(?P<p>[0-3](?:\.\d+)?)(?: mm)?(?: pitch)?\b"
        r"(?P<q>)(?P<series>)"
    )
    if found is None:
        return None
    pitch = found["p"] or found["q"]
    if found["series"] == "coarse":
        pitch = say.COARSE.get(found["d"])
    return f"M{found['d']}x{float(pitch):g}" if pitch else Ask.PITCH


def _dash_sized(words: Words, flare: EndKind, size: str, thread: EndKind | None) -> End:
    """Return a flare or O-ring end by its dash size, its thread or the tube it is for."""
    if thread is EndKind.METRIC:
        if flare is EndKind.ORB:
            return End(kind=EndKind.ISO6149, size=size)
        return _unclear(Ask.DASH)
    if thread is EndKind.UN:
        # The 45 degree series has its own threads in these two sizes (SAE J512, from memory).
        own = {"5/8-18": "-6", "1-1/16-14": "-12"} if flare is EndKind.SAE45 else {}
        dash = {**say.DASHES, **own}.get(size)
        return End(kind=flare, size=dash) if dash else _unclear(Ask.DASH)
    if size:
        return End(kind=flare, size=size) if flare in DASH_SIZED else _unclear(Ask.DASH)
    if flare in DASH_SIZED and (tube := words.take(r"(?<![\d/-])(\d/\d+)(?: ?in\b)?(?![\d/-])")):
        dash = f"-{Fraction(tube[1]) * 16}"
        # Of the 37 degree series a fraction may be the tube or the thread: 1/2 is -8 or -5.
        thread_too = any(size.startswith(f"{tube[1]}-") for size in say.DASHES)
        certain = flare is EndKind.SAE45 or not thread_too or re.search(r"\btube\b", words.text)
        if dash in say.DASHES.values() and certain:
            return End(kind=flare, size=dash)
    return _unclear(Ask.DASH)


def _other(words: Words, said: dict[str, Any]) -> End:
    """Take what has no thread: flanges, hoses and what hoses go on."""
    if found := words.take(say.TURBINE):
        words.take(r"\bturbine\b|\bflange\b")
        return End(kind=EndKind.TURBINE, size=f"T{found[1]}")
    if nominal := words.take(say.NOMINAL):
        return _schedule_pipe(nominal, words)
    for pattern, ask in say.UNSAID:
        if words.take(pattern):
            return _unclear(ask)
    kind = words.pick(say.PLAIN_KINDS) or (EndKind.SPIGOT if "bead" in said else None)
    if kind is None or (kind is EndKind.VBAND and words.take(r"\bturbine (?:outlet|inlet)\b")):
        if words.take(r"\bflange\b") or re.search(r"\b\d bolt\b", words.text):
            return _flange(words)
        if words.take(r"\bthread(?:ed)?\b"):
            return _unclear(Ask.THREAD)
    return _unclear(Ask.KIND) if kind is None else _round(kind, words)


def _flange(words: Words) -> End:
    bolts = words.take(r"\b(\d+) (?:bolt|hole|stud)s?\b")
    if bolts is None:
        return _unclear(Ask.FAMILY if words.take(r"\bturb(?:ine|o)\b") else Ask.BOLTS)
    spacing = words.take(rf"(?:{say.LENGTH}){say.SPACING}") or words.take(
        rf"{say.SPACING} (?:of )?(?:{say.LENGTH})"
    )
    bare = None if spacing else words.take(rf"(?:{say.LENGTH})")
    if bare and (bolts[1] != "2" or words.take(say.PIPED)):
        return _unclear(Ask.SPACING)
    diameter = _length(found)[0] if (found := spacing or bare) else None
    return End(kind=EndKind.FLANGE, size=f"{bolts[1]} bolts", diameter=diameter)


def _round(kind: EndKind, words: Words) -> End:
    if kind is EndKind.SILICONE:
        words.take(r"\bhose\b")
    hose = kind in HOSES
    own, foreign = (say.INSIDE, say.OUTSIDE) if hose else (say.OUTSIDE, say.INSIDE)
    found = words.take(rf"(?:{say.LENGTH}) ?{own}")
    if found:
        words.take(rf"(?:{say.LENGTH}) ?{foreign}")
    else:
        found = words.take(rf"(?:{say.LENGTH})(?: \({say.NUMBER} mm\))?")
    if found is None:
        return _unclear(Ask.UNIT if re.search(r"\d", words.text) else Ask.DIAMETER)
    if words.take(foreign):
        return _unclear(Ask.INSIDE if hose else Ask.OUTSIDE)
    if kind is EndKind.TUBE and words.take(say.FLARE):
        return _unclear(Ask.SEAT_ANGLE)
    diameter, spoken = _length(found)
    if kind is EndKind.TUBE and diameter > say.THICKEST_TUBE:
        kind = EndKind.SPIGOT
    return End(kind=kind, diameter=diameter, spoken=spoken)


def _schedule_pipe(nominal: re.Match[str], words: Words) -> End:
    """Return a pipe whose nominal size is not its diameter."""
    size = (nominal[1] or "").replace("-", " ")
    for decimals, fraction in say.DECIMAL_INCHES.items():
        size = size.replace(decimals, fraction)
    words.take(rf"\({say.NUMBER} mm\)")
    outside = say.PIPE_OUTSIDES.get(size)
    if outside is None:
        return _unclear(Ask.DIAMETER)
    return End(kind=EndKind.SPIGOT, diameter=outside, spoken=f"{size} in NPS")


def _length(found: re.Match[str]) -> tuple[float, str]:
    """Return the millimetres of a length and how its owner says it if in inches."""
    if found["mm"]:
        return float(found["mm"]), ""
    said = (found["inches"] or found["fraction"]).replace("-", " ")
    return inches(said), f"{said} in"


def _finished(end: End, words: Words, text: str) -> End:
    """Add the gender and the seat, and drop what does not belong to the kind."""
    if end.kind is None:
        return end
    genders = [each for each, pattern in say.GENDERS if words.take(pattern)]
    if len(genders) > 1:
        return _unclear(Ask.BOTH)
    if end.kind in THREADED:
        end = _sealed(end, genders[0] if genders else None, Words(plain(text)))
    end = replace(
        end,
        seat=end.seat if end.kind in SEATED else None,
        bead=end.bead if end.kind is EndKind.SPIGOT else None,
        divided=end.divided if end.kind is EndKind.TURBINE else None,
        spec=end.spec if end.kind in ROUND else None,
    )
    missing = end.kind in THREADED and end.gender is None
    return _unclear(Ask.GENDER, end) if missing else end


def _sealed(end: End, said: Gender | None, things: Words) -> End:
    """Add what is said, or known from the thing that has the thread."""
    gender = said or end.gender or things.meets(say.GENDER_OF_THINGS)
    seat = say.FACES.get((gender, end.seat), end.seat) or things.meets(say.SEAT_OF_THINGS)
    return replace(end, gender=gender, seat=seat)


def _unclear(ask: Ask, end: End | None = None) -> End:
    return replace(end or End(), unclear=ask.missing, measure=ask.measure)
