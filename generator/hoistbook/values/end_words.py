"""The words of the trade for ends: what tells a kind, a seat, a gender, a medium."""

from __future__ import annotations

from hoistbook.values.end import EndKind, Gender, Medium, Seat
from hoistbook.values.end_asks import Ask

PIPE_SIZE = r"(?:1/16|1/8|1/4|3/8|1/2|5/8|3/4|7/8|1[ -]1/4|1[ -]1/2|1|2)"
LENGTH = (
    r"(?P<inches>\d+[ -]\d+/\d+|\d+/\d+|\d+(?:\.\d+)?) ?in\b(?! tank)"
    r"|(?P<mm>\d+(?:\.\d+)?) ?mm\b|(?<![\d/.-])(?P<fraction>(?:\d[ -])?\d+/\d+)(?![\d/-])"
)
INSIDE = r"\b(?:id|inside|inner|internal|bore)\b"
OUTSIDE = r"\b(?:od|outside|outer|external)\b"
TWO_SIZES = r"\b\d+(?:\.\d+)? ?(?:mm|in)? to \d+(?:\.\d+)? ?(?:mm\b|in\b|silicone|reducer|$)"
"""A reducer in one line: it has two ends."""
TWO_WORDS = r"\b(?:npt|bsp\w?|an|jic|orb|barb|spigot|hose|pipe|male|female|tail)\b"
"""On both sides of "to" such a word makes two ends of one line."""
SPACING = (
    r"(?: (?:hole )?(?:c/c|cent(?:re|er)s|spacing|between (?:the )?holes|apart|pitch|pattern))"
)

NUMBER = r"\d+(?:\.\d+)?"
TO_BAR = {"bar": 1.0, "psi": 0.0689476, "kpa": 0.01}
TURBINE = r"(?:\b4 bolt )?\bt[ -]?(25|2|3|4|6)\b(?! bolt)(?: 4 bolt\b)?"
PROFILE = (
    r"\b(?:profile|drawing) (?!unknown)([\w./-]+)"
    rf"|\bpattern (?!{NUMBER} ?(?:mm|in)\b)([a-z]?[\w./-]*\d[\w./-]*|[a-z]\b)"
)
"""A name that two flanges share: of a V-band its profile, of a bolted flange its gasket."""
ASIDE = (
    rf"\b{NUMBER} (?:mm|m|in) (?:deep|long|length|reach)\b",
    rf"(?<![\d.]){NUMBER} ?m\b(?! pitch)",
    r"\b\d+ degree (?:elbow|bend|sweep|hose end)\b",
    r"\b(?:elbow|bend),? \d+\b(?! ?(?:mm|in)\b)(?: degree)?",
    r"(?<![\d.])(?:8\.8|10\.9|12\.9)(?![\d.])",
    r"\bo2\b",
    r"\b\d (?:ply|layers?|off)\b",
    r"\biso (?:228|7)(?:-1)?\b",
)
"""Numbers that say nothing of how an end connects."""
FLARES: tuple[tuple[EndKind, str], ...] = (
    (EndKind.BUBBLE, r"\bbubble(?: flare)?\b|\b(?:iso|din) flare\b"),
    (EndKind.INVERTED, r"\b(?:inverted|double)(?: (?:double|inverted))?(?: flare)?\b"),
    (EndKind.ISO6149, r"\biso ?6149(?:-\d)?\b|\bmetric o ring(?: port| boss| stud)?\b"),
    (
        EndKind.ORB,
        r"\borb\b|\bo ring(?: boss| port| stud)?\b|\b(?:sae )?j ?1926\b"
        r"|(?:(?<=-\d )|(?<=-\d\d ))boss\b",
    ),
    (EndKind.AERO37, r"\baerospace\b|\baircraft\b|\bunjf?\b|\bas ?\d{4}\b"),
    (EndKind.JIC37, r"\bjic\b|\b37 degree\b|(?<=\d )an\b|\bj ?514\b|\b37 flare\b|\bflare,? 37\b"),
    (EndKind.SAE45, r"\b45 degree\b|\bsae (?:flare|45)\b|\bj ?512\b"),
)
PLAIN_KINDS: tuple[tuple[EndKind, str], ...] = (
    (EndKind.VBAND, r"\bv ?(?:band|clamp)\b|\bvee band\b"),
    (EndKind.COMPRESSION, r"\bcompression\b|\bolive\b|\bferrule\b|\bcutting ring\b"),
    (EndKind.BARB, r"\bbarb(?:ed)?\b|\b(?:hose )?tail\b|\bpush on\b"),
    (EndKind.SPIGOT, r"\bspigot\b|\bstub\b|\bneck\b|\bsnout\b|\b(?:hose )?joiner\b"),
    (EndKind.SILICONE, r"\bsilicone?\b"),
    (EndKind.HOSE, r"\bhose\b|\bduct\b"),
    (EndKind.TUBE, r"\btube\b|\bhard ?line\b|\b(?:brake|copper) (?:pipe|line)\b|\bfuel pipe\b"),
    (EndKind.SPIGOT, r"\bpipe\b"),
)
FACES: dict[tuple[Gender | None, Seat | None], Seat] = {
    (Gender.MALE, Seat.FLAT_PORT): Seat.FACE_WASHER,
    (Gender.FEMALE, Seat.FACE_WASHER): Seat.FLAT_PORT,
}
"""A male with a flat face seals by a washer, and a female with a washer has a flat port."""
NOMINAL = (
    r"(?<![\d./])(\d+[ -]\d/\d|\d/\d|\d(?:\.\d+)?) ?(?:in )?"
    r"(?:nps|schedule(?: \d+)?|nominal(?: bore)?|nb)\b(?: pipe\b)?|\bdn ?\d+\b"
)
DECIMAL_INCHES = {".5": " 1/2", ".25": " 1/4", ".0": ""}
THICKEST_TUBE = 30.0
"""A tube above this goes into a hose, not into a compression fitting [mm]."""


FLARE = r"\bflare\b"
PIPED = r"\b(?:exhaust|downpipe|pipe|collector|silencer|turbine)\b"
"""Of a flange by such words a bare number may be its pipe and not the spacing of its holes."""
ROUGHLY = r"\b(?:about|approx\w*|roughly|circa|around|nearly)\b|~|\bish\b"
UNSAID: tuple[tuple[str, Ask], ...] = (
    (r"\bquick[ -](?:connect\w*|release|fit)\b|\bpush (?:in )?fit\b|\bj ?2044\b", Ask.QUICK),
    (r"\b(?:fuel|oil|coolant|vacuum) line\b", Ask.LINE),
    (r"\bbanjo\b", Ask.THREAD),
    (r"\b(?:hard ?line|tube in)\b.*\bcompression\b|\bcompression,? hard ?line\b", Ask.BOTH),
)
"""Words that name a thing and leave open how it connects."""

GENDERS = (
    (Gender.MALE, r"\bmale\b|\bm\b|\bexternal\b|\boutside thread\b"),
    (Gender.FEMALE, r"\bfemale\b|\bf\b|\binternal\b|\binside thread\b"),
)
GENDER_OF_THINGS = (
    (
        Gender.FEMALE,
        r"\b(?:sensor|sender|switch|plug) (?:bung|port|boss|hole|nut)\b"
        r"|\b(?:sensor|sender|switch)\b.*\b(?:bung|boss)\b",
    ),
    (Gender.MALE, r"\b(?:bolt|stud|plug|nipple|sender|sensor|switch|screw|banjo|nose)\b"),
    (Gender.FEMALE, r"\b(?:port|nut|bung|hole|tapped|tapping|swivel|gallery|boss|socket)\b"),
)
SEATS = (
    (
        Seat.FACE_WASHER,
        r"\b(?:(?:face|bonded|crush|copper|sealing|aluminium) washers?|face seal)\b",
    ),
    (Seat.FLAT_PORT, r"\b(?:flat|spot ?faced|counter ?bored|machined) (?:port|face|seat)\b"),
    (
        Seat.CONE,
        r"\b60 degree (?:cone|seat)(?: (?:seat|swivel))?\b|\b(?:cone|coned) (?:seat|60 degree)\b"
        r"|\b60 degree\b|\b30 degree (?:chamfer|cone)\b",
    ),
    (Seat.NONE, r"\bno seal\b|\bfastener\b"),
)
SEAT_OF_THINGS = (
    (Seat.FLAT_PORT, r"\bbung\b|\b(?:lambda|oxygen|wideband|sensor|sender) boss\b"),
    (Seat.FACE_WASHER, r"\b(?:banjo|drain plug|sump plug|sensor|switch)\b"),
    (Seat.NONE, r"\b(?:bolt|stud|screw|nut|tapped hole)\b"),
)
"""Where the seal of a thread is known from the thing that has it; common practice, no source."""

MEDIA = (
    (Medium.BRAKE_FLUID, r"\bbrake(?: fluid)?\b|\bhydraulic clutch\b"),
    (Medium.EXHAUST, r"\bexhaust(?: gas)?\b"),
    (Medium.ETHANOL, r"\bethanol\b|\be85\b|\balcohol\b|\bmethanol\b"),
    (Medium.PETROL, r"\bpetrol\b|\bgasoline\b|\bfuel\b"),
    (Medium.COOLANT, r"\bcoolant\b|\bwater\b|\bheater\b|\bradiator\b|\bglycol\b"),
    (Medium.OIL, r"\boil\b"),
    (Medium.AIR, r"\b(?:charge )?air\b|\bboost\b|\bintake\b|\bvacuum\b|\bintercooler\b"),
)
MATERIALS = (
    ("stainless steel", r"\bstainless(?: steel)?\b"),
    ("cast iron", r"\bcast iron\b"),
    ("hard anodised aluminium", r"\b(?:hard )?anodi[sz]ed(?: alumini?um)?\b"),
    ("aluminium", r"\balumini?um\b|\balloy\b"),
    ("brass", r"\bbrass\b"),
    ("copper", r"\bcopper\b"),
    ("steel", r"\b(?:mild |carbon )?steel\b"),
    ("titanium", r"\btitanium\b"),
    ("nylon", r"\bnylon\b"),
    ("nitrile", r"\bnbr\b|\bnitrile\b"),
    ("FKM", r"\bfkm\b|\bfluoroelastomer\b"),
    ("neoprene", r"\bneoprene\b"),
    ("EPDM", r"\bepdm\b"),
)

NPT_TURNS = {
    "1/16": "27",
    "1/8": "27",
    "1/4": "18",
    "3/8": "18",
    "1/2": "14",
    "3/4": "14",
    "1": "11.5",
}
"""Threads per inch of ASME B1.20.1, from memory."""
BSP_TURNS = {
    "1/16": "28",
    "1/8": "28",
    "1/4": "19",
    "3/8": "19",
    "1/2": "14",
    "5/8": "14",
    "3/4": "14",
    "7/8": "14",
    "1": "11",
}
"""Threads per inch of ISO 7-1 and ISO 228-1, from memory."""
COARSE = {
    "7": "1",
    "5": "0.8",
    "6": "1",
    "8": "1.25",
    "10": "1.5",
    "12": "1.75",
    "14": "2",
    "16": "2",
    "18": "2.5",
    "20": "2.5",
    "22": "2.5",
}
"""Coarse pitches of ISO 261, from memory."""
UNIFIED = {
    ("1/4", "unf"): "28", ("1/4", "unc"): "20", ("5/16", "unf"): "24", ("5/16", "unc"): "18",
    ("3/8", "unf"): "24", ("3/8", "unc"): "16", ("7/16", "unf"): "20", ("7/16", "unc"): "14",
    ("1/2", "unf"): "20", ("1/2", "unc"): "13", ("9/16", "unf"): "18", ("9/16", "unc"): "12",
    ("5/8", "unf"): "18", ("5/8", "unc"): "11", ("3/4", "unf"): "16", ("3/4", "unc"): "10",
    ("7/8", "unf"): "14", ("7/8", "unc"): "9",
}  # fmt: skip
"""Threads per inch of the fine and coarse series of ASME B1.1, from memory."""
DASHES = {
    "5/16-24": "-2", "3/8-24": "-3", "7/16-20": "-4", "1/2-20": "-5", "9/16-18": "-6",
    "3/4-16": "-8", "7/8-14": "-10", "1-1/16-12": "-12", "1-3/16-12": "-14", "1-5/16-12": "-16",
    "1-5/8-12": "-20",
}  # fmt: skip
"""Dash size of each thread of 37 degree flares and O-ring bosses (SAE J514, J1926)."""
PIPE_OUTSIDES = {
    "1/8": 10.287, "1/4": 13.716, "3/8": 17.145, "1/2": 21.336, "3/4": 26.67, "1": 33.401,
    "1 1/4": 42.164, "1 1/2": 48.26, "2": 60.325, "2 1/2": 73.025, "3": 88.9, "4": 114.3,
}  # fmt: skip
"""Outside diameter of schedule pipe by its nominal size [mm]; ASME B36.10."""
