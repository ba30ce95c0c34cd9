"""The journal as data: whole small tables, the same in CSV and JSON."""

import csv
import io
import json
from dataclasses import replace

import pytest

from hoistbook.figures.referred import Referred
from hoistbook.pages.data import data_files
from hoistbook.pages.desk import desk_of
from tests.pages.sample import sample_material

FIGURES = """\
quantity,subject,from episode,value,low,high,unit,evidence,power standard,which,formula,limit
power,engine,0,80,71,89,kW,estimated,none,highest,,
injector_duty,engine,0,70,64,76,%,estimated,,,,within
injector_duty,engine,2,95,89,101,%,estimated,,,,over its limit
"""

TALLY = """\
episode,until episode,date,what,part,kind,stage,supplier,system,amount,currency,amount in EUR,\
"of which postage, tax and discount",list price in EUR,rate
0,,2025-08-30,The car,,money that is not a part,spent,,,900,EUR,900.00,0,,
1,,2025-09-13,Fuel pump,pump,part,spent,Fuel counter,fuel,89.00,EUR,95.06,6.06,99.00,
1,,2025-09-13,"Fuel hose, 8 mm",hose,part,spent,Fuel counter,fuel,12.40,EUR,13.24,0.84,,
1,,2025-10-11,Charge cooler,cooler,part,planned,,charge air,140.00,EUR,140.00,0,,
2,,2025-11-01,Larger fuel pump,pump-2,part,spent,Pump bench,fuel,120.00,GBP,150.00,0.00,,\
"0.8 GBP for 1 EUR, invented"
2,,2025-11-08,Day on the rollers,,money that is not a part,spent,Rollers,,95,EUR,95.00,0,,
"""

EPISODES = """\
episode,title,filmed,published,video,spent in EUR
1,The first pump,2025-10-11,2025-10-17,,1008.30
2,The second pump,2025-11-08,2025-11-14,https://video.example/watch?v=2,1253.30
"""


@pytest.fixture
def files() -> dict[str, bytes]:
    return data_files(desk_of(sample_material()))


@pytest.mark.parametrize(
    ("name", "expected"), [("figures", FIGURES), ("tally", TALLY), ("episodes", EPISODES)]
)
def test_a_table_is_whole(files: dict[str, bytes], name: str, expected: str) -> None:
    assert files[f"data/{name}.csv"].decode() == expected.replace("\n", "\r\n")


def test_json_holds_the_rows_of_the_csv(files: dict[str, bytes]) -> None:
    names = [path[5:-4] for path in files if path.endswith(".csv") and "parts-list" not in path]
    assert names == ["episodes", "tally", "parts", "figures", "changes", "joins", "power-runs"]
    for name in names:
        rows = list(csv.DictReader(io.StringIO(files[f"data/{name}.csv"].decode(), newline="")))
        data = json.loads(files[f"data/{name}.json"])
        assert data["as at episode"] == 2
        texts = [
            {key: "" if cell is None else str(cell) for key, cell in row.items()}
            for row in data[name]
        ]
        assert texts == rows


def test_what_was_said_before_a_run_stays_beside_what_came(files: dict[str, bytes]) -> None:
    rows = json.loads(files["data/power-runs.json"])["power-runs"]
    assert [row for row in rows if row["engine speed in rpm"] == 6000] == [
        {
            "episode": 2,
            "at": "wheels",
            "power standard": "none",
            "line": line,
            "engine speed in rpm": 6000,
            "power in kW": value,
            "low": low,
            "high": high,
        }
        for line, value, low, high in [
            ("measured", 66, 59, 73),
            ("estimated before the run", 68, 61, 75),
            ("estimated for the run's own boost, air and mixture", 65, 59, 72),
        ]
    ]


@pytest.mark.parametrize(
    ("of_log", "measured"),
    [
        (Referred(stated="SAE J1349", taken_out=1.05), "none"),
        (Referred(stated="SAE J1349", standard="SAE J1349"), "SAE J1349"),
    ],
    ids=["taken out", "left in"],
)
def test_a_measured_power_names_the_standard_that_it_stands_by(
    of_log: Referred, measured: str
) -> None:
    material = sample_material()
    run = replace(material.comparisons[0].run, power_standard="SAE J1349")
    compared = replace(material.comparisons[0], run=run, referred=of_log)
    files = data_files(desk_of(replace(material, comparisons=(compared,))))
    rows = json.loads(files["data/power-runs.json"])["power-runs"]
    assert {row["line"]: row["power standard"] for row in rows} == {
        "measured": measured,
        "estimated before the run": "none",
        "estimated for the run's own boost, air and mixture": "none",
    }
