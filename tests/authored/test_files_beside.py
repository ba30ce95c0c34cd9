"""Pictures, captions and the bytes of files: what stays in the journal and can be read."""

from __future__ import annotations

import io
from pathlib import Path

import pytest
from PIL import Image

from hoistbook.authored.folder import LARGEST, decode
from hoistbook.authored.pictures import inside, read_size
from hoistbook.authored.records import Cue
from hoistbook.problems import Place
from hoistbook.values.slip import Slip
from tests.authored.journals import FIRST, episode_of, journal_of, messages

SVG = '<svg xmlns="http://www.w3.org/2000/svg" {}><path d="M0 0h4"/></svg>'


def picture(width: int, height: int, form: str = "png") -> bytes:
    stream = io.BytesIO()
    Image.new("1" if form == "png" else "RGB", (width, height)).save(stream, form)
    return stream.getvalue()


@pytest.mark.parametrize("form", ["png", "jpeg", "webp", "gif"])
def test_a_pictures_size_is_read_from_the_file(tmp_path: Path, form: str) -> None:
    file = tmp_path / f"a.{form}"
    file.write_bytes(picture(40, 30, form))

    assert read_size(file) == (40, 30)


@pytest.mark.parametrize(
    ("attributes", "size"),
    [
        ('viewBox="0 0 40 30"', (40, 30)),
        ('viewBox="0,0,40.4,30"', (40, 30)),
        ('width="400" height="300px" viewBox="0 0 40 30"', (400, 300)),
        ('width="100%" height="100%" viewBox="0 0 40 30"', (40, 30)),
    ],
)
def test_a_drawings_size_is_its_own_or_that_of_its_view(
    tmp_path: Path, attributes: str, size: tuple[int, int]
) -> None:
    file = tmp_path / "a.svg"
    file.write_text(SVG.format(attributes))

    assert read_size(file) == size


def test_a_picture_that_would_fill_the_memory_is_refused(tmp_path: Path) -> None:
    file = tmp_path / "bomb.png"
    file.write_bytes(picture(20_000, 20_000))

    found = read_size(file)

    assert isinstance(found, Slip)
    assert found.message == "`bomb.png` has more than 60 million pixels"


def test_a_drawing_of_many_megabytes_is_refused(tmp_path: Path) -> None:
    file = tmp_path / "bomb.svg"
    file.write_bytes(b" " * 2_000_001)

    found = read_size(file)

    assert isinstance(found, Slip)
    assert found.message == "`bomb.svg` is larger than 2 MB"


@pytest.mark.parametrize(
    "target",
    [
        "../../../etc/passwd",
        "/etc/passwd",
        "..\\..\\secret.svg",
        "C:/secret.svg",
        "https://host.example/a.svg",
        "a\0.svg",
        "link.svg",
        "x" * 5000,
    ],
)
def test_no_path_leaves_the_journal(tmp_path: Path, target: str) -> None:
    root = tmp_path / "journal"
    folder = root / "episodes/01-one"
    folder.mkdir(parents=True)
    (tmp_path / "secret.svg").write_text(SVG.format('viewBox="0 0 4 3"'))
    (folder / "link.svg").symlink_to(tmp_path / "secret.svg")

    assert isinstance(inside(root, FIRST, target), Slip)


def test_an_episode_that_lies_outside_is_not_read(tmp_path: Path) -> None:
    (tmp_path / "secret.md").write_text("---\ntitle: Secret\n---\n")
    episodes = tmp_path / "journal/episodes"
    episodes.mkdir(parents=True)
    (episodes / "01-one.md").symlink_to(tmp_path / "secret.md")

    assert messages(tmp_path / "journal", {}) == [
        "episodes/01-one.md:1:1: this file lies outside the journal"
    ]


def test_the_pictures_that_an_episode_shows_travel_with_their_sizes(tmp_path: Path) -> None:
    journal = journal_of(
        tmp_path,
        {
            FIRST: "---\ntitle: One\nposter: poster.svg\n---\n![A flange](my%20flange.png)\n",
            "episodes/01-one/poster.svg": SVG.format('viewBox="0 0 16 9"'),
            "episodes/01-one/my flange.png": picture(40, 30),
            "episodes/01-one/unused.png": picture(4, 3),
        },
    )

    assert journal.pictures == {
        "episodes/01-one/my flange.png": (40, 30),
        "episodes/01-one/poster.svg": (16, 9),
    }
    assert journal.episodes[0].poster == "episodes/01-one/poster.svg"


WEBVTT = """\
WEBVTT - invented

STYLE
::cue { color: red }

NOTE not shown

intro
00:01.000 --> 00:05.500 align:start
<v Me>Six <i>weld</i> bends,
a flange &amp; a collector.

01:00:06.000 --> 01:00:07.000
Done &lt;here>.
"""

SRT = """\
2
01:00:06,000 --> 01:00:07,000
Done <here>.

1
00:00:01,000 --> 00:00:05,500
{\\an8}<b>Six</b> weld bends,
a flange & a collector.
"""


@pytest.mark.parametrize(("name", "text"), [("c__vtt", WEBVTT), ("c__srt", SRT)])
def test_captions_become_times_and_plain_text(tmp_path: Path, name: str, text: str) -> None:
    episode = episode_of(tmp_path, f"captions: {name.replace('__', '.')}", **{name: text})

    last = "Done <here>." if name == "c__vtt" else "Done ."
    assert episode.cues == (
        Cue(start=1.0, end=5.5, text="Six weld bends, a flange & a collector."),
        Cue(start=3606.0, end=3607.0, text=last),
    )
    assert episode.captions == f"episodes/01-one/{name.replace('__', '.')}"


def test_bytes_that_are_not_utf_8_are_shown_with_their_place() -> None:
    text, problems = decode("title: One\r\nsummary: Öl".encode("latin-1"), "a.md")

    assert text is None
    assert [(each.message, each.place) for each in problems] == [
        ("this byte is not UTF-8", Place("a.md", 2, 10, "summary: \ufffdl"))
    ]


@pytest.mark.parametrize(
    ("character", "code"),
    [("\a", "0007"), ("\0", "0000"), ("\x7f", "007F"), ("\x85", "0085"), ("\u2028", "2028")],
)
def test_characters_that_cannot_be_seen_are_refused(character: str, code: str) -> None:
    _, problems = decode(f"title: One\nsummary: a{character}b\n".encode(), "a.md")

    assert [(each.message, each.place) for each in problems] == [
        (
            f"a character that cannot be seen stands here (U+{code})",
            Place("a.md", 2, 11, "summary: a\ufffdb"),
        )
    ]


def test_tabs_line_ends_and_the_mark_of_windows_are_welcome() -> None:
    assert decode(b"\xef\xbb\xbfa\tb\r\nc\rd\n", "a.md") == ("a\tb\nc\nd\n", ())


def test_a_file_of_many_megabytes_is_not_read(tmp_path: Path) -> None:
    assert messages(tmp_path, {FIRST: b"x" * (LARGEST + 1)}) == [
        f"{FIRST}:1:1: this file is larger than 2 MB"
    ]


def test_a_file_that_is_a_folder_is_a_problem_and_no_crash(tmp_path: Path) -> None:
    (tmp_path / "episodes/01-one.md").mkdir(parents=True)
    (tmp_path / "rates.csv").mkdir()

    assert messages(tmp_path, {}) == ["build.yaml:1:1: this journal has no episode"]


def test_a_file_of_another_kind_does_not_bury_the_reader(tmp_path: Path) -> None:
    said = messages(tmp_path, {FIRST: "---\ntitle: One\n" + "a: b\n" * 1000 + "---\n"})

    assert len(said) == 51
    assert said[-1].endswith("950 more problems stand in this file")


def test_prose_of_nothing_but_links_is_not_followed(tmp_path: Path) -> None:
    text = "---\ntitle: One\n---\n" + "![a](b.svg) [c](part:d)\n" * 1001

    assert messages(tmp_path, {FIRST: text}) == [
        f"{FIRST}:4:1: this prose has more than 2000 links and pictures"
    ]


def test_one_picture_shown_often_is_read_once(tmp_path: Path) -> None:
    journal = journal_of(
        tmp_path,
        {
            FIRST: "---\ntitle: One\nposter: a.svg\n---\n![a](a.svg) ![a](a.svg)\n",
            "episodes/01-one/a.svg": SVG.format('viewBox="0 0 4 3"'),
        },
    )

    assert journal.pictures == {"episodes/01-one/a.svg": (4, 3)}
