"""Charts: the same bytes twice, whole data beside them, wheels and crank never mixed."""

import re
from dataclasses import replace

from lxml import etree

from hoistbook.authored.records import BoostBySpeed, Log
from hoistbook.history.state import Dated
from hoistbook.pages.charts import chart_of, charts_on, cost_charts
from hoistbook.pages.desk import Desk, desk_of
from tests.pages.charted import chart_files
from tests.pages.sample import JOURNAL, PLACE, RUN, quantity, sample_material


def plain(text: str) -> str:
    return text.replace("\N{NO-BREAK SPACE}", "_")


def desk_with_boost(setting: BoostBySpeed | None, log: Log | None) -> Desk:
    """Return the sample with a boost by engine speed, as set and as logged in episode 2."""
    journal = replace(JOURNAL, logs={RUN.log: log} if log else {})
    material = sample_material(journal)
    *before, last = material.states
    settings = {name: each for name, each in last.settings.items() if name != "boost"}
    if setting:
        settings["boost"] = Dated(value=setting, episode=2)
    return desk_of(replace(material, states=(*before, replace(last, settings=settings))))


def test_every_chart_has_its_data_and_the_same_bytes_each_time() -> None:
    files = chart_files(desk_of(sample_material()))
    assert sorted(files) == [
        f"charts/{name}{ending}"
        for name in (
            "cost-by-episode",
            "cost-by-system",
            "power-episode-0",
            "power-episode-2",
            "torque-episode-2",
        )
        for ending in ("-narrow.svg", ".csv", ".svg")
    ]
    assert files == chart_files(desk_of(sample_material()))


def test_a_chart_is_svg_with_both_colour_schemes_and_nothing_from_outside() -> None:
    for path, content in chart_files(desk_of(sample_material())).items():
        if path.endswith(".svg"):
            text = content.decode()
            assert etree.fromstring(content).tag == "{http://www.w3.org/2000/svg}svg"
            assert "@media (prefers-color-scheme:dark)" in text
            assert "#0" not in re.sub(r"<style>.*?</style>", "", text, flags=re.DOTALL)
            assert re.findall(r'(?:href|src)="(?!#)', text) == []
            assert set(re.findall(r"https?://[^\"]+", text)) <= {
                "http://www.w3.org/2000/svg",
                "http://www.w3.org/1999/xlink",
            }


def test_the_data_of_a_power_chart_says_of_each_line_where_it_holds() -> None:
    files = chart_files(desk_of(sample_material()))
    assert files["charts/power-episode-2.csv"].decode().splitlines() == [
        'line,"engine speed, rpm","Power, kW",low,high',
        '"at the crank, estimated",2000,25,22.5,27.5',
        '"at the crank, estimated",4000,60,54,66',
        '"at the crank, estimated",6000,80,72,88',
        '"at the wheels, estimated before",2000,21,18.9,23.1',
        '"at the wheels, estimated before",4000,50,45,55',
        '"at the wheels, estimated before",6000,68,61.2,74.8',
        '"at the wheels, measured, episode 2",2000,20,18,22',
        '"at the wheels, measured, episode 2",4000,48,43.2,52.8',
        '"at the wheels, measured, episode 2",6000,66,59.4,72.6',
    ]


def test_a_chart_in_words_gives_each_lines_highest_with_its_band() -> None:
    chart = chart_of(desk_of(sample_material()), "power", 2)
    assert chart is not None
    assert plain(chart.text) == (
        "Chart: Power over engine speed. "
        "Line at the crank, estimated: highest 80_kW at 6,000_rpm, 95 % band there 72 to 88_kW. "
        "Line at the wheels, estimated before: highest 68_kW at 6,000_rpm, "
        "95 % band there 61 to 75_kW. "
        "Line at the wheels, measured, episode 2: highest 66_kW at 6,000_rpm, "
        "95 % band there 59 to 73_kW."
    )
    assert chart.caption == (
        "Power over engine speed, as at episode 2, "
        "not referred to any reference air. Shaded: 95 % bands."
    )
    assert chart.data.address == "/charts/power-episode-2.csv"


def test_an_episode_shows_the_charts_that_it_changed() -> None:
    desk = desk_of(sample_material())
    shown = {number: list(charts_on(desk, number)) for number in desk.states}
    assert shown == {0: ["power"], 1: [], 2: ["power", "torque"]}


def test_no_boost_is_drawn_where_nobody_gives_one() -> None:
    # The sample states one boost and no speeds for it: that is no line.
    assert chart_of(desk_of(sample_material()), "boost", 2) is None


def test_boost_is_drawn_as_set_and_as_logged_each_over_its_own_speeds() -> None:
    setting = BoostBySpeed(
        speeds=(3000.0, 5000.0),
        pressures=(quantity(0.3, "bar"), quantity(0.6, "bar")),
        place=PLACE,
    )
    nan = float("nan")
    log = Log(columns={"speed": (4000.0, 2500.0, nan), "boost": (48e3, 12e3, 1e3)})
    desk = desk_with_boost(setting, log)
    assert chart_files(desk)["charts/boost-episode-2.csv"].decode().splitlines() == [
        'line,"engine speed, rpm","Boost, gauge, bar",low,high',
        "as set,3000,0.3,,",
        "as set,5000,0.6,,",
        '"as logged, measured, episode 2",2500,0.12,,',
        '"as logged, measured, episode 2",4000,0.48,,',
    ]


def test_the_running_cost_is_told_in_words_too() -> None:
    by_episode, by_system = cost_charts(desk_of(sample_material()))
    assert plain(by_episode.text) == (
        "Chart: the running cost, from 900.00_EUR for the car as bought to 1,253.30_EUR "
        "as at episode 2."
    )
    assert plain(by_system.text) == (
        "Chart: 1,253.30_EUR spent, by system: Other 995.00_EUR, Fuel 258.30_EUR."
    )


def test_no_name_of_a_line_reaches_beyond_the_paper_of_a_phone() -> None:
    # Letters of 15 px are 7.8 px wide in the mean, in a wide sans-serif face: common practice.
    files = chart_files(desk_of(sample_material()))
    drawing = etree.fromstring(files["charts/power-episode-2-narrow.svg"])
    width = float(drawing.get("viewBox").split()[2])
    texts = {text.text: text for text in drawing.iter("{http://www.w3.org/2000/svg}text")}
    longest = "at the wheels, measured, episode 2"
    assert "text-anchor: start" in texts[longest].get("style")
    assert float(texts[longest].get("x")) + 7.8 * 0.75 * len(longest) <= width


def test_a_chart_that_still_shows_the_car_as_bought_says_so() -> None:
    captions = [each.caption for each in charts_on(desk_of(sample_material()), 0).values()]
    assert captions[0].startswith("Power over engine speed, the car as bought, ")
