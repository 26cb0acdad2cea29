"""Forces of the frame at some of its joints, and what screws may bear of them."""

from __future__ import annotations

import numpy as np
import pytest

from model.checks.strength.joint_forces import (
    forces_between,
    lasting,
    made_by,
    uses,
)
from model.mechanics.fasteners.strengths import Design
from model.mechanics.fasteners.together import ScrewForce, use_of
from model.structure.record import Case
from tests.model.checks.strength.made import bed, carried


def test_slats_push_both_cleats_alike_under_two_alike_sleepers() -> None:
    of = bed(beam="none", mattress_width=1371.6)
    slats = made_by(of.pieces, "slat_pieces")
    case = next(i for i, c in enumerate(carried(of).cases) if c.key == "lying")

    left, right = (
        forces_between(carried(of), of.pieces, slats, made_by(of.pieces, f"{side}.top_rail"))
        for side in ("left", "right")
    )

    assert left.force[case, :, 2].sum() > 500
    assert left.force[case, :, 2].sum() == pytest.approx(right.force[case, :, 2].sum(), rel=0.02)


def test_a_short_load_may_be_larger_but_never_past_the_joints_own_limit() -> None:
    """NDS: 1.0, 1.6, and 1.6 for an impact too; a standard's test load asks no second margin."""
    cases = tuple(
        Case(key="k", title="", reason="", time=time, source=source)  # type: ignore[arg-type]
        for time, source in (
            ("ten years", ""),
            ("ten minutes", ""),
            ("impact", ""),
            ("ten minutes", "EN"),
        )
    )

    assert lasting(cases).tolist() == pytest.approx([1.0, 1.6, 1.6, 1.6 * 1.3])


def test_many_screws_at_once_are_judged_as_one_by_one() -> None:
    across, out = np.array([100.0, 0.0, 50.0, 0.0]), np.array([0.0, 80.0, 50.0, 0.0])
    lateral, withdrawal = Design(400.0), Design(300.0)

    found = uses(lateral, withdrawal, across, out)

    one_by_one = [
        use_of(lateral, withdrawal, ScrewForce(*f)) for f in zip(across, out, strict=True)
    ]
    assert found.tolist() == pytest.approx(one_by_one)


def test_the_least_pull_in_end_grain_is_too_much() -> None:
    found = uses(Design(400.0), Design(0.0), np.array([10.0, 10.0]), np.array([0.0, 1.0]))

    assert found[0] == pytest.approx(10 / 400)
    assert found[1] == np.inf
