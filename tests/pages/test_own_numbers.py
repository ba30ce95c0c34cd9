"""What a page carries for a reader's own numbers, and the pages made for them."""

import gzip
from dataclasses import replace

import pytest

from hoistbook.engineering.formula_list import formula_list
from hoistbook.figures.base import keyed
from hoistbook.figures.defaults import DEFAULTS
from hoistbook.figures.figure import Figure, Figures
from hoistbook.figures.inputs import inputs_of
from hoistbook.figures.lessons import LESSONS
from hoistbook.figures.limits import THRESHOLDS
from hoistbook.figures.spread_reasons import SPREAD_REASONS
from hoistbook.figures.spreads import SPREADS
from hoistbook.figures.stage import estimates
from hoistbook.figures.variants import at_one_speed
from hoistbook.pages.accuracy import AccuracyContext, accuracy_page
from hoistbook.pages.chain import ChainContext, chain_page
from hoistbook.pages.desk import Desk, desk_of
from hoistbook.pages.formula_list import FormulasContext, TopicContext, formula_pages
from hoistbook.pages.own_numbers import Chains, script_files
from tests.figures.states import state
from tests.pages.sample import sample_material


@pytest.fixture(scope="module")
def desk() -> Desk:
    """Return the sample with the figures of an invented car that says everything."""
    inputs = inputs_of(state())
    material = sample_material()
    return desk_of(
        replace(
            material,
            figures=tuple(
                Figures(episode=each.episode, figures=estimates(inputs), inputs=inputs)
                for each in material.figures
            ),
        )
    )


def test_a_chain_holds_what_a_figure_rests_on_and_nothing_else() -> None:
    inputs, chains = inputs_of(state()), Chains()
    assert chains.number(inputs, 5000.0, ["torque"]) == 0
    assert chains.number(inputs, 5000.0, ["torque"]) == 0
    assert chains.number(inputs, None, ["air_density"]) == 1
    bases = chains.listed[1]["bases"]
    assert isinstance(bases, list)
    assert [each["name"] for each in bases] == [
        "air_pressure",
        "air_temperature",
        "relative_humidity",
    ]
    assert bases[2] == {"name": "relative_humidity", "value": 0.5, "half": 0.3, "ceiling": 1.0}


def test_what_changes_with_engine_speed_is_taken_at_one() -> None:
    inputs = inputs_of(state())
    at = at_one_speed(inputs, 5000.0)
    assert at.speeds == (5000.0,)
    filling = next(base for base in inputs.bases if base.name == "volumetric_efficiency")
    own = next(base for base in at.bases if base.name == "volumetric_efficiency")
    assert isinstance(filling.value, tuple)
    assert own.value == filling.value[inputs.speeds.index(5000.0)]


def test_the_chain_has_each_step_once_in_the_order_of_the_table(desk: Desk) -> None:
    sheets = [page.context for page in chain_page(desk)]
    first, last = shown = [each for each in sheets if isinstance(each, ChainContext)]
    steps = [step.working for each in shown for part in each.sections for step in part.steps]
    assert len(steps) == len(set(steps)) > 20
    order = ["engine_air_flow", "brake_mean_effective_pressure", "torque", "air_density"]
    assert [each for each in steps if each in order] == order
    assert [each.id for each in first.sections] == ["air", "charge", "work", "car", "fuel"]
    beside = ["cylinders", "air", "fuel", "heat", "road", "bench"]
    assert [each.id for each in last.sections] == beside
    assert first.left_out == last.left_out == ()
    # An engine without pipes has two sheets; each leads to the one before and the one behind it.
    addresses = ["/workings/chain/", "/workings/chain/beside/"]
    assert [[link.address for link in each.sheets] for each in shown] == [addresses] * 2
    assert [each.before and each.before.address for each in shown] == [None, *addresses[:-1]]
    assert [each.after and each.after.address for each in shown] == [*addresses[1:], None]
    # All sheets work the same chain out, so that a number from one holds on all.
    assert first.chains == last.chains
    figures = desk.figures[desk.last].figures
    assert set(steps) == {
        keyed(each.key.quantity, each.key.subject) for each in figures if isinstance(each, Figure)
    }


def test_without_inputs_there_is_no_chain() -> None:
    assert list(chain_page(desk_of(sample_material()))) == []


def test_the_list_has_every_formula_with_its_count_and_each_stands_on_one_topic(
    desk: Desk,
) -> None:
    first, *topics = formula_pages(desk)
    assert isinstance(first.context, FormulasContext)
    rows = [row for topic in first.context.topics for row in topic.rows]
    listed = formula_list()
    assert [row.check_values for row in rows] == [str(each.check_values) for each in listed]
    landings = {
        f"{page.address}#{each.shown.id}"
        for page in topics
        if isinstance(page.context, TopicContext)
        for each in page.context.formulas
    }
    assert {row.formula.address for row in rows} == landings
    assert len(landings) == len(listed)
    power = next(row for row in rows if row.formula.text == "The power at the crank")
    assert [each.address for each in power.used] == ["/workings/power/"]


def test_accuracy_shows_every_line_of_the_tables(desk: Desk) -> None:
    context = accuracy_page(desk).context
    assert isinstance(context, AccuracyContext)
    assert len(context.defaults) == len(DEFAULTS)
    assert len(context.spreads) == len(SPREADS) + 1
    assert all(row.reason for row in context.spreads)
    assert set(SPREAD_REASONS) == set(SPREADS)
    assert len(context.lessons) == len(LESSONS)
    assert len(context.limits) == len(THRESHOLDS)
    humidity = next(each for each in context.defaults if each.what == "Relative humidity")
    assert humidity.value == "50\N{NO-BREAK SPACE}% (20 to 80\N{NO-BREAK SPACE}%)"
    duty = next(each for each in context.limits if each.quantity.text == "Injector duty")
    assert (duty.limit, duty.near) == (
        "at most 85\N{NO-BREAK SPACE}%",
        "80\N{NO-BREAK SPACE}%",
    )
    assert any(
        "was therefore never held against an engine" in each for each in context.not_checked
    )


def test_the_script_is_small_and_the_same_every_time(desk: Desk) -> None:
    (script,) = script_files(desk).values()
    assert script == next(iter(script_files(desk).values()))
    # What a site's scripts may weigh: 30 kB, compressed, all told.
    assert len(gzip.compress(script, mtime=0)) < 22_000
