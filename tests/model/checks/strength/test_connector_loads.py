"""What plates and bolts are sold to carry, straight down."""

from __future__ import annotations

import re
from dataclasses import replace

import numpy as np
import pytest

from model.bed import Bed
from model.checks.record import Verdict
from model.checks.strength.connector_loads import connectors_carry
from model.checks.strength.rail_ends import HANDLED
from model.materials import connector
from model.structure.record import Unjudged
from tests.model.checks.strength.made import bed, carried, said

CHECK = "left.connectors_carry"
PLATED = {"connector": "hook_plate_100"}
BOLTED = {"connector": "cross_bolt_m6", "left__side": "plain", "right__side": "plain"}


def down_on(of: Bed, post: str) -> np.ndarray:
    """What the left side presses down on one of its posts in each case that is no handling, N."""
    joints, cases = carried(of).joints, carried(of).cases
    rows = [
        j for j, (a, b) in enumerate(joints.pieces.tolist())
        if b >= 0 and of.pieces.made_by(b)[0] == post
        and of.pieces.made_by(a)[0].startswith("left.")
    ]  # fmt: skip
    assert rows
    kept = [i for i, case in enumerate(cases) if case.key not in HANDLED]
    return np.asarray(joints.force[kept][:, rows, 2].sum(axis=1))


@pytest.mark.parametrize("choices", [PLATED, BOLTED])
def test_the_joints_of_one_corner_share_what_hangs_on_it(choices: dict[str, str]) -> None:
    of = bed(**choices)
    found = said(of, CHECK)
    count = 2 if choices is BOLTED else 1

    most = max(float(down_on(of, f"{end}.post_left").max()) for end in ("head", "foot"))

    assert found.value == pytest.approx(most / count)
    assert found.limit == connector(of["connector"].key).load_n
    assert f"{most:.0f} N straight down" in found.reason


def test_small_plates_are_too_weak_for_who_sits_at_the_end_of_a_rail() -> None:
    found = said(bed(**PLATED), CHECK)

    assert found.verdict is Verdict.FAILS
    assert "its maker's data sheet decides" in found.reason
    assert "from memory" in found.source
    assert re.match(r"The pair of plates at post \d of the (head|foot)board bears", found.reason)


def test_larger_ones_carry_it() -> None:
    assert said(bed(connector="hook_plate_150"), CHECK).verdict is not Verdict.FAILS
    assert said(bed(**BOLTED), CHECK).verdict is Verdict.HOLDS


def test_a_bed_that_is_lifted_or_dragged_is_not_asked() -> None:
    """Even were each joint torn with a hundred times the force."""
    of, row = bed(**PLATED), connector("hook_plate_100")
    joints = carried(of).joints
    handled = np.array([case.key in HANDLED for case in carried(of).cases])
    torn = joints._replace(force=joints.force * np.where(handled, 100.0, 1.0)[:, None, None])

    found = connectors_carry(replace(carried(of), joints=torn), of.pieces, row, "left")

    assert found is not None and handled.any()
    assert found.value == pytest.approx(said(of, CHECK).value)


def test_a_heavier_sitter_asks_more_of_the_joints() -> None:
    light, heavy = (bed(**PLATED, first_sleeper=kg, second_sleeper=kg) for kg in (110.0, 150.0))

    assert said(heavy, CHECK).value > said(light, CHECK).value


def test_a_frame_that_cannot_be_judged_is_silent() -> None:
    unjudged = Unjudged(sentence="It falls over.")

    assert connectors_carry(unjudged, bed().pieces, connector("hook_plate_100"), "left") is None
