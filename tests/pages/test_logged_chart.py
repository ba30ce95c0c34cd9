"""What a log has beside the power is drawn over engine speed, with the band of a measurement."""

from __future__ import annotations

from pathlib import Path

from hoistbook.pages.charts import chart_of
from hoistbook.pages.desk import Desk, desk_of
from hoistbook.pipeline import work_out
from tests.authored.journals import FIRST, lay_down
from tests.pages.charted import chart_files

RUN = """---
title: One
published: 2026-02-20
measured:
  - power run: {log: run.csv, at: wheels, power standard: none}
---
"""
LOG = "Engine speed [rpm],Power [kW],Lambda [-],Charge temperature [degC]\n"
SAMPLES = ("4040,50,0.88,40", "3010,30,0.95,31", "4020,52,0.90,42", "2990,31,0.93,33")


def desk(folder: Path, log: str) -> Desk:
    lay_down(folder, {FIRST: RUN, f"{FIRST.rpartition('/')[0]}/run.csv": log})
    material = work_out(folder).material
    assert material is not None
    return desk_of(material)


def test_lambda_and_temperature_are_drawn_by_the_median_of_each_speed(tmp_path: Path) -> None:
    # A broadband gauge within 3 % and a sensor within 2 K (common practice, no source).
    files = chart_files(desk(tmp_path, LOG + "\n".join(SAMPLES)))
    assert files["charts/lambda-episode-1.csv"].decode().splitlines() == [
        'line,"engine speed, rpm",Lambda,low,high',
        '"measured, episode 1",3000,0.94,0.9118,0.9682',
        '"measured, episode 1",4000,0.89,0.8633,0.9167',
    ]
    assert files["charts/temperature-episode-1.csv"].decode().splitlines() == [
        'line,"engine speed, rpm","Charge temperature, °C",low,high',
        '"measured, episode 1",3000,32,30,34',
        '"measured, episode 1",4000,41,39,43',
    ]


def test_the_caption_says_how_it_is_smoothed(tmp_path: Path) -> None:
    drawn = chart_of(desk(tmp_path, LOG + "\n".join(SAMPLES)), "temperature", 1)
    assert drawn is not None
    assert drawn.caption == (
        "Charge temperature as logged, over engine speed, as at episode 1. Shaded: 95 % bands. "
        "Each point is the median of all samples within 50 rpm of it."
    )


def test_a_log_without_them_draws_none(tmp_path: Path) -> None:
    bare = desk(tmp_path, "Engine speed [rpm],Power [kW]\n3000,30\n4000,50\n")
    assert chart_of(bare, "lambda", 1) is None
    assert chart_of(bare, "temperature", 1) is None
