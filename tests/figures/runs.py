"""Hand-made power runs for the tests of what the figures learn from them."""

from dataclasses import replace

import numpy as np

from hoistbook.authored.records import Journal, Log, PowerRun
from hoistbook.figures.inputs import inputs_of
from hoistbook.figures.stage import estimates
from hoistbook.history.state import Dated
from tests.figures.states import PLACE, quantity

SPEEDS = tuple(range(3500, 6001, 100))
RUN = PowerRun(
    log="run.csv",
    at="wheels",
    power_standard="none",
    place=PLACE,
    pressure=quantity(99, "kPa", half_width=300),
    temperature=quantity(15, "degC", half_width=2),
)


def estimate(inputs, name):
    return next(each for each in estimates(inputs) if each.key.quantity == name)


def expected(of_state, name, share=1.0, speeds=SPEEDS):
    """Return a share of what the state alone lets expect, over engine speed."""
    curve = estimate(inputs_of(of_state), name).curve
    return tuple(share * np.interp(speeds, curve.speeds, curve.values))


def log(**columns):
    return Log(
        columns={
            name.replace("_", " "): tuple(map(float, cells)) for name, cells in columns.items()
        }
    )


def torque_log(of_state, share=1.0, name="wheel_torque", **more):
    return log(speed=SPEEDS, torque=expected(of_state, name, share), **more)


def run_of(episode=3, **more):
    return Dated(value=replace(RUN, **more), episode=episode)


def journal(*logs):
    """Return a journal whose logs are run.csv, run-2.csv ..."""
    names = ("run.csv", *(f"run-{number}.csv" for number in range(2, len(logs) + 1)))
    return Journal(
        title="A build", place=PLACE, episodes=(), logs=dict(zip(names, logs, strict=True))
    )
