"""The frozen records that reading produces: what the author wrote, typed, each with its place.

Nothing here is worked out. A record says what one line of the journal says; what it means for the
build is the business of `hoistbook.history`.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from enum import StrEnum

from hoistbook.authored.map_points import CompressorMap
from hoistbook.problems import Place
from hoistbook.values.evidence import Evidence
from hoistbook.values.money import Money
from hoistbook.values.quantity import Quantity


class Came(StrEnum):
    """How a part came to the build."""

    BOUGHT = "bought"
    USED = "used"
    MADE = "made"
    WITH = "with another part"
    OWNED = "already owned"
    GIVEN = "given"
    FREE = "supplied free"


class Verb(StrEnum):
    """What can be done to a part; the keys that stand under `done`."""

    PLANNED = "planned"
    ORDERED = "ordered"
    ARRIVED = "arrived"
    FITTED = "fitted"
    TOOK_OFF = "took off"
    TRIED = "tried"
    BROKE = "broke"
    SOLD = "sold"
    GAVE_AWAY = "gave away"
    SENT_BACK = "sent back"
    SCRAPPED = "scrapped"


Fact = Quantity | float | str
"""A typed property of a part or of the car: a quantity, a bare number, or words."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Given:
    """One stated property with its evidence and the place that states it."""

    value: Fact
    place: Place
    evidence: Evidence = Evidence.STATED


@dataclass(frozen=True, slots=True, kw_only=True)
class End:
    """One end of a part: where it connects to another."""

    name: str
    text: str
    """The end as spoken: "M12x1.5 female, 60 degree cone"."""
    place: Place


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """One part (or a count of like parts) as it is first written down."""

    id: str
    name: str
    place: Place
    kind: str | None = None
    system: str | None = None
    """One of the systems of `kinds.yaml`; read from the kind when the author leaves it out."""
    count: int = 1
    kept: int | None = None
    """How many of the count are the build's own; the rest were bought for somebody else."""
    maker: str | None = None
    part_number: str | None = None
    paid: Money | None = None
    """The price of all of them together, before postage and discount of the receipt."""
    list_price: Money | None = None
    """The list price of all of them together."""
    came: Came = Came.BOUGHT
    came_with: str | None = None
    """Id of the part it came with, when `came` is `with another part`; None for the car itself."""
    made_from: tuple[PieceUsed, ...] = ()
    hours: float | None = None
    facts: Mapping[str, Given] = field(default_factory=dict)
    ends: Mapping[str, End] = field(default_factory=dict)
    compressor_map: CompressorMap | None = None
    link: str | None = None
    must: str | None = None
    """What it had to meet, in the author's words; may name a figure."""
    good_until: date | None = None
    note: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceUsed:
    """So many of a known part, used up in one that was made."""

    part: str
    count: int
    place: Place


@dataclass(frozen=True, slots=True, kw_only=True)
class Receipt:
    """One purchase: a supplier, a date, its parts, one postage."""

    supplier: str
    date: date
    place: Place
    parts: tuple[Part, ...]
    postage: Money | None = None
    tax: Money | None = None
    """Tax or duty added on top of the prices."""
    discount: Money | None = None
    charged: Money | None = None
    """What left the account; beats any exchange rate."""
    number: str | None = None
    link: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Spent:
    """Money that is not a part; a negative amount came back."""

    what: str
    amount: Money
    place: Place
    to: str | None = None
    date: date | None = None
    system: str | None = None
    charged: Money | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Done:
    """One thing done to one part."""

    verb: Verb
    part: str
    place: Place
    count: int | None = None
    """How many of them; all when left out."""
    instead_of: str | None = None
    because: str | None = None
    amount: Money | None = None
    """What was got for it (sold) or back for it (sent back); `for` in the file."""
    to: str | None = None
    date: date | None = None
    charged: Money | None = None
    new_part: Part | None = None
    """The part, where `planned` or `ordered` writes it down for the first time."""


@dataclass(frozen=True, slots=True, kw_only=True)
class JoinEnd:
    """One side of a join; the end is None where the part has none of that name written."""

    part: str
    end: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Join:
    """Two ends put together."""

    a: JoinEnd
    b: JoinEnd
    place: Place
    sealed_with: str | None = None
    bolts: str | None = None
    """Id of the bolts or studs that hold it, or their thread; after a comma what is on them."""
    torque: Quantity | None = None
    knowingly: str | None = None
    note: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class PowerRun:
    """A power run with its log and the air of the day."""

    log: str
    """Path of the CSV file relative to the journal's folder."""
    at: str
    """`wheels` or `crank`."""
    power_standard: str
    place: Place
    before_work: bool = False
    pressure: Quantity | None = None
    temperature: Quantity | None = None
    humidity: Quantity | None = None
    columns: Mapping[str, str] = field(default_factory=dict)
    """Our name of a column -> its heading in the log."""
    device: str | None = None
    note: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Log:
    """A log as read: samples of each column in SI (speed in 1/min), in file order; gaps NaN."""

    columns: Mapping[str, tuple[float, ...]]
    """`speed`, `torque`, `power`, `boost` (gauge), `lambda`, `charge temperature`, `time`, ..."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """One measured thing: a compression test's four pressures, a mass, an oil pressure."""

    what: str
    values: tuple[Quantity, ...]
    place: Place
    before_work: bool = False
    text: str = ""
    note: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Claim:
    """A sentence with a number that the program verifies."""

    text: str
    place: Place
    quantity: str
    """The words that name the figure ("injector duty", "velocity in hot-pipe")."""
    relation: str
    """`below`, `above` or `between`."""
    bounds: tuple[Quantity, ...]
    conditions: Mapping[str, Quantity] = field(default_factory=dict)
    """Setting -> value it is to be judged at ("boost" -> 0.8 bar gauge)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Decision:
    """A choice and its reason."""

    question: str
    chose: str
    place: Place
    over: tuple[str, ...] = ()
    because: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Work:
    """A piece of work and the hours it took."""

    what: str
    place: Place
    hours: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Correction:
    """A slip put right after publication, as a dated line in its episode."""

    date: date
    text: str
    place: Place


@dataclass(frozen=True, slots=True, kw_only=True)
class Chapter:
    """A point in the video."""

    seconds: int
    title: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Cue:
    """One caption of the video."""

    start: float
    end: float
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ProseLink:
    """A link of ours in the prose: `part:turbo`, `figure:injector_duty`, `chart:power`."""

    kind: str
    target: str
    text: str
    place: Place


@dataclass(frozen=True, slots=True, kw_only=True)
class Episode:
    """One instalment, beside one video."""

    number: int
    title: str
    file: str
    """Path of its Markdown file relative to the journal's folder."""
    place: Place
    prose: str
    prose_line: int
    """The line of the file on which the prose begins."""
    links: tuple[ProseLink, ...] = ()
    filmed: date | None = None
    published: date | None = None
    summary: str | None = None
    video: str | None = None
    poster: str | None = None
    """Path of the picture that stands for the video, relative to the journal's folder; a key of
    `Journal.pictures`."""
    poster_text: str | None = None
    """What the poster shows, for a reader who cannot see it."""
    captions: str | None = None
    """Path of the WebVTT or SRT file relative to the journal's folder."""
    cues: tuple[Cue, ...] = ()
    chapters: tuple[Chapter, ...] = ()
    car: Mapping[str, Given] = field(default_factory=dict)
    """What is true of the car from this episode on; keys as `engine displacement`, `mass`."""
    settings: Mapping[str, Given | BoostBySpeed] = field(default_factory=dict)
    bought: tuple[Receipt, ...] = ()
    got: tuple[Part, ...] = ()
    """Parts that came without a receipt."""
    spent: tuple[Spent, ...] = ()
    made: tuple[Part, ...] = ()
    done: tuple[Done, ...] = ()
    joins: tuple[Join, ...] = ()
    measured: tuple[PowerRun | Reading, ...] = ()
    claims: tuple[Claim, ...] = ()
    decisions: tuple[Decision, ...] = ()
    work: tuple[Work, ...] = ()
    not_needed: tuple[tuple[str, Place], ...] = ()
    """Of what is usually forgotten, what the author dismisses: "heat-sleeve, it runs cold"."""
    corrections: tuple[Correction, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class BoostBySpeed:
    """Boost as a list by engine speed; speeds in 1/min ascending, pressures gauge."""

    speeds: tuple[float, ...]
    pressures: tuple[Quantity, ...]
    place: Place
    evidence: Evidence = Evidence.STATED


@dataclass(frozen=True, slots=True, kw_only=True)
class Rate:
    """One line of content/rates.csv: what one unit of the journal's currency bought that day."""

    day: date
    """The day asked for (the receipt's)."""
    currency: str
    rate: str
    """Decimal text: units of `currency` for one unit of the journal's currency."""
    source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Journal:
    """build.yaml and the episodes: all that the author wrote."""

    title: str
    place: Place
    episodes: tuple[Episode, ...]
    """In order of their numbers."""
    author: str | None = None
    about: str | None = None
    goal: str | None = None
    address: str | None = None
    language: str = "en"
    currency: str = "EUR"
    also_show: tuple[str, ...] = ()
    numbers: str = "point"
    """What stands before the decimals in what the author writes: `point` or `comma`."""
    units: str = "metric"
    budget: Money | None = None
    theme: str = "jobsheet"
    power_standard: str = "none"
    """The standard that measured powers are referred to, `none` for as run."""
    car_name: str | None = None
    start: Episode | None = None
    """The car as bought, as episode 0: its properties, settings, parts, money spent for it."""
    rates: tuple[Rate, ...] = ()
    pictures: Mapping[str, tuple[int, int]] = field(default_factory=dict)
    """Path of each picture that an episode shows -> its width and height in pixels."""
    logs: Mapping[str, Log] = field(default_factory=dict)
    """Path of each power run's CSV file -> what it holds."""
