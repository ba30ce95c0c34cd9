"""Joins, circuits, open ends and suggestions of whole states; common practice, no source."""

from __future__ import annotations

from hoistbook.authored.records import JoinEnd
from hoistbook.fit.adapters import adapters, spare_ends
from hoistbook.fit.circuits import CircuitName, circuits_of, ends_in_order
from hoistbook.fit.flows import Flow
from hoistbook.fit.piping import piping_of
from hoistbook.fit.suggestions import open_ends
from hoistbook.fit.verdict import Service, Verdict
from hoistbook.values.end import Medium
from hoistbook.values.end_reading import parse_end
from tests.fit.conftest import States
from tests.fit.ends import join_verdicts

OIL = """
got:
  - part: block
    kind: engine
    came: already owned
    ends: {oil gallery: 1/8 BSPT female}
  - part: adapter
    came: given
    ends: {block end: 1/8 NPT male, hose end: -4 JIC male}
  - part: feed
    kind: oil feed
    came: given
    ends: {block end: -4 JIC female, turbo end: -4 JIC female}
done:
  - fitted: [block, adapter, feed]
joins:
  - block oil gallery to adapter block end
  - adapter hose end to feed block end
"""
RIGHT = """
got:
  - part: taper
    came: given
    ends: {block end: 1/8 BSPT male, hose end: -4 JIC male}
done:
  - took off: adapter
  - fitted: taper
    instead of: adapter
joins:
  - block oil gallery to taper block end
  - taper hose end to feed block end
"""


def test_a_look_alike_alarms_at_its_episode_and_is_gone_after_the_one_that_puts_it_right(
    states: States,
) -> None:
    _, wrong, right = states(OIL, RIGHT)

    assert [(each.fit.verdict, each.alarms) for each in join_verdicts(wrong)] == [
        (Verdict.LOOKS_RIGHT, True),
        (Verdict.MATES, False),
    ]
    assert [(each.fit.verdict, each.alarms) for each in join_verdicts(right)] == [
        (Verdict.WITH_SEALANT, False),
        (Verdict.MATES, False),
    ]


def test_what_its_author_knows_raises_no_alarm_and_keeps_its_verdict(states: States) -> None:
    knowing = OIL.replace(
        "  - block oil gallery to adapter block end\n",
        "  - join: block oil gallery to adapter block end\n    knowingly: for a dry fit only\n",
    )

    (found, _) = join_verdicts(states(knowing)[-1])

    assert (found.fit.verdict, found.alarms) == (Verdict.LOOKS_RIGHT, False)


def test_an_end_that_nobody_wrote_down_is_unknown(states: States) -> None:
    (found,) = join_verdicts(
        states(
            """
            got:
              - {part: block, came: given}
              - {part: pipe, came: given}
            done:
              - fitted: [block, pipe]
            joins:
              - block side port to pipe end
            """
        )[-1]
    )

    assert found.fit.verdict is Verdict.UNKNOWN
    assert found.fit.why == "nobody wrote down what this end is"


FLOWING = """
got:
  - part: turbo
    kind: turbocharger
    came: given
    ends:
      oil in: M12x1.5 female, flat port
      water in: M14x1.5 female, flat port
      inlet: 60 mm spigot, beaded
      outlet: 51 mm spigot, beaded
      turbine inlet: T25 flange
      boost nipple: 5 mm barb
  - part: fitting
    came: given
    ends: {one end: "M14x1.5 male, face washer", other end: "16 mm spigot, beaded"}
  - part: hose-16
    kind: hose
    came: given
    ends: {one end: 16 mm hose, other end: 16 mm hose}
  - part: filter-hose
    kind: hose
    came: given
    ends: {turbo end: 60 mm hose, filter end: 60 mm hose}
done:
  - fitted: [turbo, fitting, hose-16, filter-hose]
joins:
  - turbo water in to fitting one end
  - fitting other end to hose-16 one end
  - turbo inlet to filter-hose turbo end
"""


def test_flow_is_known_from_names_and_kinds_and_passed_on_by_joins(states: States) -> None:
    found = piping_of(states(FLOWING)[-1]).flows

    assert {f"{key.part} {key.end}": flow.value for key, flow in found.items()} == {
        "turbo oil in": "oil",
        "turbo water in": "coolant",
        "turbo inlet": "intake air",
        "turbo outlet": "charge air",
        "turbo turbine inlet": "exhaust gas",
        "turbo boost nipple": "boost signal",
        "fitting one end": "coolant",
        "fitting other end": "coolant",
        "hose-16 one end": "coolant",
        "hose-16 other end": "coolant",
        "filter-hose turbo end": "intake air",
        "filter-hose filter end": "intake air",
    }


def test_without_a_turbocharger_air_is_intake_air(states: States) -> None:
    state = states(
        """
        got:
          - {part: body, kind: throttle body, came: given, ends: {inlet: "57 mm spigot, beaded"}}
        done:
          - fitted: body
        """
    )[-1]

    assert piping_of(state).flows == {JoinEnd(part="body", end="inlet"): Flow.INTAKE_AIR}


CHARGE = """
got:
  - {part: turbo, kind: turbocharger, came: given, ends: {outlet: 51 mm spigot}}
  - part: elbow
    kind: hose
    came: given
    facts: {highest pressure: 1.2 bar, highest temperature: 150 degC}
    ends: {turbo end: 51 mm silicone hose}
done:
  - fitted: [turbo, elbow]
joins:
  - turbo outlet to elbow turbo end
"""
KEY = (JoinEnd(part="turbo", end="outlet"), JoinEnd(part="elbow", end="turbo end"))


def test_the_service_of_a_join_decides_what_its_size_does_not(states: States) -> None:
    state = states(CHARGE.replace("51 mm spigot}", '"51 mm spigot, beaded"}'))[-1]

    def verdict(pressure: float, temperature: float) -> tuple[str, str]:
        service = {KEY: Service(Medium.AIR, pressure, temperature)}
        (found,) = join_verdicts(state, service)
        return found.fit.verdict, found.fit.why

    assert verdict(1.0, 120)[0] == "mates"
    assert verdict(1.3, 120) == (
        "looks right, do not join",
        "the hose holds 1.2 bar, and 1.3 bar flow through it",
    )
    assert verdict(1.0, 160) == (
        "looks right, do not join",
        "the hose lasts to 150 °C, and it gets 160 °C here",
    )


def test_a_bead_that_nobody_mentions_stays_unknown(states: States) -> None:
    (found,) = join_verdicts(states(CHARGE)[-1], {KEY: Service(None, 1.0)})

    assert (found.fit.verdict, found.service.medium) == (Verdict.UNKNOWN, Medium.AIR)


def test_open_ends_name_what_would_close_them_and_parts_on_hand_come_first(
    states: States,
) -> None:
    state = states(
        OIL
        + """
  - feed turbo end to turbo-adapter hose end
""",
        """
        got:
          - {part: spare, came: given, ends: {end: "M12x1.5 male, face washer", o: 8 mm barb}}
        """,
        build="""
        parts:
          - part: turbo
            kind: turbocharger
            ends: {oil in: "M12x1.5 female, flat port", oil drain: "two-bolt flange, 38 mm"}
          - part: turbo-adapter
            ends: {turbo end: "M12x1.5 male, copper washer", hose end: -4 JIC male}
        """,
    )[-1]

    found = {f"{each.end.part} {each.end.end}": each for each in open_ends(state)}

    assert list(found) == ["turbo oil in", "turbo oil drain", "turbo-adapter turbo end"]
    closers = [(each.end.part, each.on_hand) for each in found["turbo oil in"].closers]
    assert closers == [("spare", True), ("turbo-adapter", False)]
    assert found["turbo oil drain"].closers == ()


def test_an_adapter_among_the_parts_on_hand_is_found(states: States) -> None:
    state = states(
        """
        got:
          - {part: reducer, came: given, ends: {a: -6 JIC female, b: -8 JIC male}}
          - {part: other, came: given, ends: {a: -6 JIC female, b: -10 JIC male}}
        """
    )[-1]

    one, other = parse_end("-6 JIC male"), parse_end("-8 JIC female")

    assert adapters(one, other, spare_ends(state), Service()) == ("reducer",)
    assert adapters(one, one, spare_ends(state), Service()) == ()


def test_circuits_run_from_their_beginning_with_their_open_ends(states: States) -> None:
    state = states(OIL)[-1]

    (circuit,) = circuits_of(state, join_verdicts(state))

    assert circuit.name is CircuitName.OIL
    assert circuit.parts == ("block", "adapter", "feed")
    assert [each.fit.verdict for each in circuit.joins] == [Verdict.LOOKS_RIGHT, Verdict.MATES]
    assert circuit.open == (JoinEnd(part="feed", end="turbo end"),)


DRAIN = """
got:
  - part: turbo
    kind: turbocharger
    came: given
    ends: {{oil drain: {size} JIC male}}
  - part: drain
    kind: oil drain
    came: given
    ends: {{turbo end: {size} JIC female}}
done:
  - fitted: [turbo, drain]
joins:
  - turbo oil drain to drain turbo end
"""


def test_the_drain_of_a_turbocharger_says_its_slope_and_its_least_bore(states: States) -> None:
    # Two turbocharger makers' pages on oil drains: -10, within 15 degrees, above the oil level.
    (wide,) = join_verdicts(states(DRAIN.format(size="-10"))[-1])
    (narrow,) = join_verdicts(states(DRAIN.format(size="-8"))[-1])

    assert [note.split(":")[0] for note in wide.fit.notes] == ["oil falls out of a turbocharger"]
    assert narrow.fit.notes[1:] == (
        "narrow for the drain of a turbocharger: dash ten, or 12.7 mm of bore, is the least",
    )
    assert wide.fit.verdict == narrow.fit.verdict == Verdict.MATES


def test_a_drain_that_falls_too_little_says_so(states: States) -> None:
    # At least 10 to 15 degrees from level where it does not fall straight: from memory.
    def notes(drop: str) -> tuple[str, ...]:
        kind = f"kind: oil drain\n    facts: {{length: 300 mm, drop: {drop}}}"
        text = DRAIN.format(size="-10").replace("kind: oil drain", kind)
        (found,) = join_verdicts(states(text)[-1])
        return found.fit.notes[1:]

    assert notes("280 mm") == notes("78 mm") == ()
    # 300 mm x sin 8 degrees = 42 mm.
    assert notes("42 mm") == (
        "too flat for the drain of a turbocharger: 8 degrees from level, and 10 to 15 are the "
        "least (from memory): oil stands in the housing and passes its seals",
    )


def test_a_wide_hose_is_found_for_a_wide_pipe(states: States) -> None:
    state = states(
        """
        got:
          - {part: pipe, kind: pipe, came: given, ends: {end: "101.6 mm spigot, beaded"}}
          - {part: tight, came: given, ends: {end: 99 mm silicone hose}}
          - {part: narrow, came: given, ends: {end: 98 mm silicone hose}}
        done:
          - fitted: pipe
        """
    )[-1]

    (found,) = open_ends(state)

    assert [each.end.part for each in found.closers] == ["tight"]


def test_a_join_told_backwards_runs_with_the_flow(states: States) -> None:
    state = states(
        """
        got:
          - {part: rail, kind: fuel rail, came: given, ends: {inlet: "8 mm hose, 30R9"}}
          - {part: filter, kind: fuel filter, came: given, ends: {outlet: 8 mm barb}}
        done:
          - fitted: [rail, filter]
        joins:
          - rail inlet to filter outlet
        """
    )[-1]

    (judged,) = join_verdicts(state)

    assert [end.part for end in ends_in_order(judged)] == ["filter", "rail"]
