"""What stands beside workings: a compressor map with the line of the car, and small tables."""

import csv
import io
import math
from dataclasses import replace

import pytest
from lxml import etree

from hoistbook.authored.records import Log
from hoistbook.figures.figure import Curve, Figures
from hoistbook.figures.inputs import inputs_of
from hoistbook.figures.map_inputs import with_map
from hoistbook.figures.stage import estimates
from hoistbook.pages.beside_workings import tables_beside
from hoistbook.pages.charts import map_chart
from hoistbook.pages.desk import Desk, desk_of
from tests.figures.test_cooler_inputs import CORE, cooled
from tests.figures.test_map_inputs import MAP, mapped
from tests.pages.charted import chart_files
from tests.pages.sample import JOURNAL, RUN, sample_material


@pytest.fixture(scope="module")
def desk() -> Desk:
    """Return the sample, with an invented turbocharger and its map in the last episode."""
    car = mapped()
    inputs = with_map(inputs_of(car), car)
    material = sample_material()
    states = (*material.states[:-1], replace(material.states[-1], parts=car.parts))
    figures = [
        *material.figures[:-1],
        Figures(episode=states[-1].episode, figures=estimates(inputs), inputs=inputs),
    ]
    return desk_of(replace(material, states=states, figures=tuple(figures)))


def test_the_chart_has_both_colour_schemes_a_drawing_for_phones_and_its_data(desk: Desk) -> None:
    files = chart_files(desk)
    for name in ("compressor-map-episode-2", "compressor-map-episode-2-narrow"):
        content = files[f"charts/{name}.svg"]
        assert etree.fromstring(content).tag == "{http://www.w3.org/2000/svg}svg"
        assert b"@media (prefers-color-scheme:dark)" in content
    rows = list(csv.reader(io.StringIO(files["charts/compressor-map-episode-2.csv"].decode())))
    assert rows[:3] == [
        ["line", "corrected flow, g/s", "pressure ratio", "low", "high", "written beside it"],
        ["points given, efficiency in %", "50", "1.5", "", "", "62"],
        ["points given, efficiency in %", "50", "2.5", "", "", "66"],
    ]
    of_car = [row for row in rows if row[0] == "this car, estimated, by engine speed"]
    assert [row[5] for row in of_car if row[5]] == ["4,000", "6,000"]
    assert len(of_car) == 33


def test_what_it_shows_is_said_for_who_cannot_see_it(desk: Desk) -> None:
    chart = map_chart(desk)
    assert chart is not None
    assert chart.text.replace("\N{NO-BREAK SPACE}", "_") == (
        "The compressor map of Turbo, as its points were given. Chart: 4 points with efficiencies "
        "of 62 to 76 %. The line of this car runs from 87.6_g/s at pressure ratio 1.9, "
        "3,150_rpm, to 159_g/s at pressure ratio 1.98, 6,300_rpm."
    )
    assert chart.caption.replace("\N{NO-BREAK SPACE}", "_") == (
        "The compressor map of Turbo, as its points were given. The map holds for air of 100_kPa "
        "and 25_°C; the car's flow is referred to that."
    )


def test_the_table_says_where_the_line_lies_and_reads_nothing_outside(desk: Desk) -> None:
    (table,) = tables_beside(desk, "corrected_flow")
    assert table.header[0] == "Engine speed"
    places = {row[0].replace("\N{NO-BREAK SPACE}", "_"): row[3:] for row in table.rows}
    assert places["4,500_rpm"][0] == "within the points given"
    assert places["4,500_rpm"][1].endswith("%")
    assert places["6,000_rpm"] == (
        "right of the outermost points given",
        "outside the map's points",
    )
    assert len(MAP.flow) == 4


def test_without_a_map_there_is_neither_chart_nor_table() -> None:
    plain = desk_of(sample_material())
    assert map_chart(plain) is None
    assert tables_beside(plain, "corrected_flow") == ()


@pytest.fixture(scope="module")
def cooled_desk() -> Desk:
    """Return the sample with an invented core of known size in the last episode."""
    car = cooled(CORE)
    inputs = inputs_of(car)
    material = sample_material()
    last = Figures(episode=material.states[-1].episode, figures=estimates(inputs), inputs=inputs)
    return desk_of(replace(material, figures=(*material.figures[:-1], last)))


def test_cores_stand_beside_the_effectiveness_with_what_they_gain(cooled_desk: Desk) -> None:
    (table,) = tables_beside(cooled_desk, "cooler_effectiveness")
    assert [row[0] for row in table.rows] == [
        "0.75 times as large",
        "as fitted",
        "1.5 times as large",
    ]
    assert all("95 %" in cell for row in table.rows for cell in row[1:4])
    assert table.rows[0][4].startswith("\N{MINUS SIGN}")
    assert table.rows[1][4] == ""
    assert table.rows[2][4].startswith("+")
    assert "No boost is changed, and none is proposed." in table.lead


def test_regulator_and_pump_have_their_tables(cooled_desk: Desk) -> None:
    (regulator,) = tables_beside(cooled_desk, "injector_duty")
    assert [row[0] for row in regulator.rows] == ["follows the manifold", "fixed"]
    (pump,) = tables_beside(cooled_desk, "pump_margin")
    assert [each.replace("\N{NO-BREAK SPACE}", "_") for each in pump.header] == [
        "Pressure at the pump",
        "at 12_V",
        "at 13.5_V",
    ]
    assert len(pump.rows) == 4


def test_what_a_log_says_beside_the_power_stands_by_engine_speed_with_its_smoothing() -> None:
    log = Log(
        columns={
            "speed": (2010.0, 1990.0, 2500.0, 2500.0, 3000.0, math.nan),
            "power": (30e3, 31e3, 40e3, 41e3, 50e3, 50e3),
            "boost": (20e3, 30e3, 40e3, math.nan, 50e3, 0.0),
            "lambda": (0.9, 0.9, 0.88, 0.86, math.nan, 0.8),
        }
    )
    desk = desk_of(sample_material(replace(JOURNAL, logs={RUN.log: log})))
    run = replace(
        desk.material.comparisons[-1],
        run=RUN,
        measured=Curve(
            speeds=(2000.0, 2500.0, 3000.0), values=(3e4,) * 3, low=(3e4,) * 3, high=(3e4,) * 3
        ),
    )
    desk = desk_of(replace(desk.material, comparisons=(run,)))
    quantity = "wheel_power" if RUN.at == "wheels" else "crank_power"
    (table,) = tables_beside(desk, quantity)
    assert table.header == ("Engine speed", "Boost, gauge", "Lambda")
    assert [
        tuple(cell.replace("\N{NO-BREAK SPACE}", "_") for cell in row) for row in table.rows
    ] == [
        ("2,000_rpm", "0.25_bar", "lambda_0.9"),
        ("2,500_rpm", "0.4_bar", "lambda_0.87"),
        ("3,000_rpm", "0.5_bar", ""),
    ]
    assert table.notes == ("Each point is the median of all samples within 50 rpm of it.",)
