"""The scale of the strength view: five steps of one hue from light to dark, and a hatch past it.

One hue, so that no eye has to tell red from green; each step darker than the last by as much as
can be told apart beside each other, on a screen and on a grey print; and past the limit stripes,
so that what fails is seen by its pattern and not by its tone alone.
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
import numpy.typing as npt

from app.view.palette import Rgb, rgb


class Step(NamedTuple):
    """One step of the scale: up to which share of the limit it goes, and its colour."""

    upto: float
    colour: Rgb


STEPS = (
    Step(0.25, rgb("FCEBE1")),
    Step(0.50, rgb("EFBC9D")),
    Step(0.75, rgb("D58958")),
    Step(1.00, rgb("A45A25")),
)
PAST = rgb("5D2F0F")  # past the limit, and between its stripes:
STRIPE = rgb("FCF1EB")
STRIPE_WIDTH = 3.5  # px, in a picture of the usual size
UNKNOWN = rgb("DCDFDF")  # what is no part of the frame, or not reckoned yet
AT_LIMIT = 1.0 + 1e-5  # single precision on the graphics card reads no finer


def step_of(use: npt.NDArray[np.float64]) -> npt.NDArray[np.intp]:
    """Which step each share of the limit falls in; len(STEPS) is past the limit."""
    ends = [step.upto for step in STEPS[:-1]] + [AT_LIMIT]
    return np.searchsorted(ends, use, side="left")
