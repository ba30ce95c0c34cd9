"""Captions are published as WebVTT: W3C, WebVTT: The Web Video Text Tracks Format, section 4."""

from __future__ import annotations

from hoistbook.authored.records import Cue
from hoistbook.publish.captions import render_vtt


def test_captions_are_written_with_times_and_without_markup() -> None:
    cues = [
        Cue(start=0.0, end=2.5, text="What we have here"),
        Cue(start=3599.9996, end=3725.042, text="A & B --> <i>C</i>\n\nsecond line"),
    ]

    assert render_vtt(cues) == (
        "WEBVTT\n"
        "\n"
        "00:00:00.000 --> 00:00:02.500\n"
        "What we have here\n"
        "\n"
        "01:00:00.000 --> 01:02:05.042\n"
        "A &amp; B --&gt; &lt;i&gt;C&lt;/i&gt;\n"
        "second line\n"
    )
