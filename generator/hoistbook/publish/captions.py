"""Writes the captions of an episode as WebVTT (W3C), whatever form they were read from."""

from __future__ import annotations

from collections.abc import Iterable

from hoistbook.authored.records import Cue


def render_vtt(cues: Iterable[Cue]) -> str:
    """Return a WebVTT file of these cues."""
    blocks = [f"{_time(cue.start)} --> {_time(cue.end)}\n{_text(cue.text)}\n" for cue in cues]
    return "\n".join(["WEBVTT\n", *blocks])


def _time(seconds: float) -> str:
    whole = round(seconds * 1000)
    minutes, millis = divmod(whole, 60_000)
    hours, minutes = divmod(minutes, 60)
    return f"{hours:02}:{minutes:02}:{millis // 1000:02}.{millis % 1000:03}"


def _text(text: str) -> str:
    """Return the text without what WebVTT would read as markup, a cue's end or an arrow."""
    lines = [line for line in text.splitlines() if line.strip()]
    escaped = "\n".join(lines).replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")
    return escaped
