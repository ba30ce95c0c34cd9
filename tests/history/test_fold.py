"""What happened, folded into the state of the build as at every episode."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from hoistbook.authored.records import Given, Journal
from hoistbook.history.fold import fold
from hoistbook.history.state import PartState, State
from hoistbook.history.words import join_words, value_words

Written = Callable[..., Journal]


def states_of(journal: Journal) -> tuple[State, ...]:
    folded = fold(journal)
    assert folded.problems == ()
    return folded.states


def statuses(journal: Journal, part: str) -> list[str | None]:
    """Return how a part stands in each state; None before it is known."""
    return [
        str(state.parts[part].status) if part in state.parts else None
        for state in states_of(journal)
    ]


def last_of(journal: Journal, part: str) -> PartState:
    return states_of(journal)[-1].parts[part]


def test_the_first_state_is_the_car_as_bought(written: Written) -> None:
    journal = written(
        "settings: {boost: 0.4 bar gauge}",
        build="""
            car: {mass: 948 kg}
            settings: {boost: none}
            parts:
              - part: airbox
        """,
    )
    bought, first = states_of(journal)
    assert (bought.episode, first.episode) == (0, 1)
    assert value_words(bought.settings["boost"].value) == "none"
    assert value_words(first.settings["boost"].value) == "0.4 bar gauge"
    assert (bought.settings["boost"].episode, first.settings["boost"].episode) == (0, 1)
    assert bought.car == first.car
    assert str(bought.parts["airbox"].status) == "fitted"


def test_a_part_goes_through_its_statuses(written: Written) -> None:
    journal = written(
        "done: [{planned: 'Oil cooler, 85 EUR'}]",
        "done: [{ordered: oil-cooler}]",
        "bought: [{from: Shop, date: 2026-01-20, parts: ['Oil cooler, 80 EUR']}]",
        "done: [{fitted: oil-cooler}]",
        "done: [{took off: oil-cooler, because: it leaked}]",
        "done: [{sold: oil-cooler, for: 30 EUR}]",
    )
    assert statuses(journal, "oil-cooler") == [
        None,
        "planned",
        "ordered",
        "on hand",
        "fitted",
        "on hand",
        "gone",
    ]
    last = last_of(journal, "oil-cooler")
    assert (last.known_in, last.came_in, last.fitted_in, last.since) == (1, 3, 4, 6)
    assert last.how_gone == "sold"
    assert str(last.part.paid.amount if last.part.paid else None) == "80"


def test_what_was_paid_and_is_not_there_yet_is_ordered_until_it_arrives(written: Written) -> None:
    journal = written(
        """
        bought: [{from: Shop, date: 2026-01-20, parts: ['Hose, 9 EUR']}]
        done: [{ordered: hose}]
        """,
        "done: [{arrived: hose}]",
    )
    assert statuses(journal, "hose") == [None, "ordered", "on hand"]


def test_what_is_fitted_without_having_arrived_has_arrived(written: Written) -> None:
    journal = written(
        "done: [{ordered: 'Hose, 9 EUR'}]",
        "done: [{fitted: hose}]",
    )
    assert statuses(journal, "hose") == [None, "ordered", "fitted"]
    assert last_of(journal, "hose").came_in == 2


def test_the_plan_s_facts_stay_with_what_is_bought(written: Written) -> None:
    journal = written(
        """
        done:
          - planned:
              part: pump
              name: Fuel pump, 190 L/h class
              kind: fuel pump
              must: carry 90 kW
              facts: {flow: 190 L/h at 3 bar}
        """,
        """
        bought:
          - {from: Shop, date: 2026-01-20, parts: [{part: pump, paid: 40 EUR}]}
        """,
    )
    part = last_of(journal, "pump").part
    assert (part.name, part.kind, part.system) == ("Fuel pump, 190 L/h class", "fuel pump", "fuel")
    assert part.must == "carry 90 kW"
    assert list(part.facts) == ["flow"]


def test_a_new_part_takes_the_place_of_the_old(written: Written) -> None:
    journal = written(
        """
        got: ['Better pump, given']
        done:
          - fitted: better-pump
            instead of: pump
            because: ran out at 0.9 bar
        """,
        build="parts: [{part: pump}]",
    )
    old = last_of(journal, "pump")
    assert str(old.status) == "on hand"
    assert (old.replaced_by, old.replaced_in) == ("better-pump", 1)
    assert old.because == "ran out at 0.9 bar"


def test_taking_the_old_part_off_may_be_written_or_left_out(written: Written) -> None:
    before = "done: [{took off: pump}, {fitted: new, instead of: pump}]"
    after = "done: [{fitted: new, instead of: pump}, {took off: pump}]"
    for text in (before, after):
        journal = written(f"got: [{{part: new, came: given}}]\n{text}", build="parts: [pump]")
        assert last_of(journal, "pump").replaced_by == "new"


def test_an_intention_to_replace_comes_true_when_the_part_is_fitted(written: Written) -> None:
    journal = written(
        "done: [{ordered: 'New pump, 60 EUR', instead of: pump, because: too small}]",
        "done: [{fitted: new-pump}]",
        build="parts: [pump]",
    )
    assert statuses(journal, "pump") == ["fitted", "fitted", "on hand"]
    assert last_of(journal, "pump").because == "too small"


def test_a_plan_is_given_up_for_another_or_by_scrapping_it(written: Written) -> None:
    journal = written(
        "done: [{planned: 'Big pump, 90 EUR'}, {planned: 'Third pump, 90 EUR'}]",
        """
        done:
          - {planned: 'Small pump, 60 EUR', instead of: big-pump, because: the big one heats fuel}
          - {scrapped: third-pump}
        """,
    )
    big = last_of(journal, "big-pump")
    assert (big.how_gone, big.replaced_by) == ("given up", "small-pump")
    assert last_of(journal, "third-pump").how_gone == "given up"


def test_a_part_put_back_is_no_longer_replaced(written: Written) -> None:
    journal = written(
        "got: ['New, given']\ndone: [{fitted: new, instead of: old}]",
        "done: [{took off: new}, {fitted: old}]",
        build="parts: [old]",
    )
    old = last_of(journal, "old")
    assert (str(old.status), old.replaced_by, old.fitted_in) == ("fitted", None, 2)


def test_a_part_replaces_another_once_and_not_again(written: Written) -> None:
    journal = written(
        "got: ['New, given']\ndone: [{fitted: new, instead of: old}]",
        "done: [{took off: new}, {fitted: old}]",
        "done: [{fitted: new}]",
        build="parts: [old]",
    )
    assert str(last_of(journal, "old").status) == "fitted"


def test_pieces_are_used_up_in_what_is_made(written: Written) -> None:
    journal = written(
        "got: ['Bend, 6 off, given', 'Flange, given']",
        "made: [{part: manifold, from: '4 off bend, flange', hours: 11}]",
        "made: [{part: downpipe, from: 2 off bend}]",
    )
    assert [state.parts["bend"].pieces_left for state in states_of(journal)[1:]] == [6, 2, 0]
    assert statuses(journal, "bend")[1:] == ["on hand", "on hand", "gone"]
    bend, flange = last_of(journal, "bend"), last_of(journal, "flange")
    assert (bend.how_gone, bend.built_into) == ("built into Downpipe", "downpipe")
    assert (flange.how_gone, flange.since) == ("built into Manifold", 2)
    assert last_of(journal, "manifold").part.hours == 11


def test_of_several_some_can_be_fitted_broken_and_sold(written: Written) -> None:
    journal = written(
        "got: ['Stud, 8 off, given']",
        "done: [{fitted: stud, count: 6}]",
        "done: [{broke: stud, count: 1}]",
        "done: [{sold: stud, count: 3, for: 3 EUR}]",
        "done: [{took off: stud}]",
    )
    counts = [
        (state.parts["stud"].pieces_left, state.parts["stud"].pieces_fitted)
        for state in states_of(journal)[1:]
    ]
    assert counts == [(8, 0), (8, 6), (7, 5), (4, 4), (4, 0)]
    assert statuses(journal, "stud")[1:] == ["on hand", "fitted", "fitted", "fitted", "on hand"]


def test_only_the_kept_share_of_a_shared_purchase_is_the_build_s(written: Written) -> None:
    receipt = "bought: [{from: Shop, date: 2026-01-20, parts: [%s]}]"
    journal = written(
        receipt % "{part: strap, count: 2, kept: 1, paid: 8 EUR each}, "
        "{part: gift, count: 1, kept: 0, paid: 8 EUR}"
    )
    assert last_of(journal, "strap").pieces_left == 1
    assert (str(last_of(journal, "gift").status), last_of(journal, "gift").how_gone) == (
        "gone",
        "bought for somebody else",
    )


def test_a_part_breaks_where_it_is(written: Written) -> None:
    journal = written(
        "done: [{broke: stud, because: a dry torque on a greased stud}]",
        "done: [{scrapped: stud}]",
        build="parts: [stud]",
    )
    broken = states_of(journal)[1].parts["stud"]
    assert (str(broken.status), broken.broken, broken.broke_in) == ("fitted", True, 1)
    gone = last_of(journal, "stud")
    assert (gone.how_gone, gone.because) == ("scrapped", "a dry torque on a greased stud")


def test_all_of_several_break_where_they_are_too(written: Written) -> None:
    journal = written("done: [{broke: stud, count: 2}]", build="parts: ['Stud, 2 off']")
    stud = last_of(journal, "stud")
    assert (str(stud.status), stud.broken, stud.pieces_left) == ("fitted", True, 2)


def test_money_for_a_sale_may_come_in_a_later_episode(written: Written) -> None:
    journal = written(
        "done: [{sold: box}]", "done: [{sold: box, for: 20 EUR}]", build="parts: [box]"
    )
    assert last_of(journal, "box").since == 1


def test_the_car_itself_can_be_sold(written: Written) -> None:
    journal = written("done: [{sold: car, for: 3000 EUR}]", build="parts: [box]")
    assert str(last_of(journal, "box").status) == "fitted"


def joins_of(state: State) -> list[str]:
    return [join_words(each.value) for each in state.joins]


def test_a_join_lasts_until_one_of_its_ends_is_joined_again(written: Written) -> None:
    journal = written(
        "joins: [turbo oil in to hose a, hose b to block gallery]",
        "joins: [hose b to filter out]",
        build="parts: [turbo, hose, block, filter]",
    )
    _, first, second = states_of(journal)
    assert joins_of(first) == ["turbo oil in to hose a", "hose b to block gallery"]
    assert joins_of(second) == ["turbo oil in to hose a", "hose b to filter out"]
    assert [each.episode for each in second.joins] == [1, 2]


def test_joins_are_made_after_what_is_done_in_the_same_episode(written: Written) -> None:
    journal = written(
        "done: [{took off: hose}, {fitted: hose}]\njoins: [turbo oil in to hose a]",
        build="parts: [turbo, hose]",
    )
    assert joins_of(states_of(journal)[-1]) == ["turbo oil in to hose a"]


@pytest.mark.parametrize(
    "leaving",
    ["took off: hose", "sold: hose", "scrapped: hose", "fitted: turbo-2, instead of: hose"],
)
def test_a_join_lasts_until_its_part_leaves_the_car(written: Written, leaving: str) -> None:
    journal = written(
        "joins: [turbo oil in to hose a, turbo water in to pipe a]",
        f"got: [{{part: turbo-2, came: given}}]\ndone: [{{{leaving}}}]",
        build="parts: [turbo, hose, pipe]",
    )
    assert joins_of(states_of(journal)[-1]) == ["turbo water in to pipe a"]


def test_two_of_one_part_have_two_of_each_end(written: Written) -> None:
    journal = written(
        "joins: [elbow a to turbo out, elbow a to cooler in]",
        "joins: [elbow a to throttle in]",
        build="parts: [{part: elbow, count: 2}, turbo, cooler, throttle]",
    )
    _, first, second = states_of(journal)
    assert joins_of(first) == ["elbow a to turbo out", "elbow a to cooler in"]
    assert joins_of(second) == ["elbow a to cooler in", "elbow a to throttle in"]


def test_what_was_measured_before_the_work_comes_first(written: Written) -> None:
    journal = written(
        "measured: [{mass: 940 kg}, {compression: 12 / 12 bar, when: before}]",
    )
    readings = states_of(journal)[1].readings
    assert [(each.value.what, each.episode) for each in readings] == [
        ("compression", 1),
        ("mass", 1),
    ]


def test_a_power_run_is_kept_with_its_episode(written: Written) -> None:
    run = "power run: {log: run.csv, at: wheels, power standard: none}"
    log = "speed [rpm],torque [N m]\n2000,90\n3000,100\n4000,95\n"
    journal = written("summary: s", f"measured: [{run}]", log=log)
    (kept,) = states_of(journal)[-1].runs
    assert (kept.value.at, kept.episode) == ("wheels", 2)


CAR = {
    "mass": "1200 kg",
    "engine displacement": "1998 cc",
    "engine cylinders": "6",
    "engine bore": "90 mm",
    "engine compression ratio": "8.0:1",
    "gearing final drive": "4.3",
    "tyres": "205/50 R15",
    "driven wheels": "rear",
    "frontal area": "2.2 m2",
    "drag coefficient": "0.40",
}
SETTINGS = {
    "boost": "1.1 bar gauge",
    "fuel": "ethanol blend 74 %",
    "rev limit": "7200 rpm",
    "mixture": "lambda 0.80",
    "fuel pressure": "4 bar gauge",
    "regulator": "fixed",
    "oil": "5W-40",
    "plug gap": "0.6 mm",
    "air pressure": "95 kPa",
    "air temperature": "30 degC",
}


@pytest.mark.parametrize(
    ("table", "key", "value"),
    [
        *(("car", key, value) for key, value in CAR.items()),
        *(("settings", key, value) for key, value in SETTINGS.items()),
    ],
)
def test_changing_the_last_episode_leaves_every_earlier_state_as_it_was(
    written: Written, table: str, key: str, value: str
) -> None:
    build = """
        car: {mass: 948 kg, engine displacement: 1599 cc, tyres: 185/60 R14}
        settings: {boost: none, fuel: petrol, rev limit: 6300 rpm}
        parts: [pump, {part: hose, count: 2}]
    """
    middle = """
        car: {mass: 942 kg}
        settings: {boost: 0.5 bar gauge}
        joins: [pump out to hose a]
        done: [{broke: pump}]
    """
    before = states_of(written(middle, "summary: nothing", build=build))
    after = states_of(written(middle, f"{table}: {{{key}: '{value}'}}", build=build))
    assert after[:-1] == before[:-1]
    assert after[-1] != before[-1]
    given = (after[-1].car if table == "car" else after[-1].settings)[key]
    assert isinstance(given.value, Given)
    assert given.episode == 2
