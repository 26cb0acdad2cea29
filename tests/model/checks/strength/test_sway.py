"""Wobble as a finding: a number, a limit, and what the joints give."""

from model.bed import Bed, Design, solve
from model.checks.record import Finding, Verdict
from model.checks.strength.sway import SWAY_MOST


def found(bed: Bed, check: str) -> Finding:
    return next(finding for finding in bed.findings if finding.id == check)


def test_a_usual_bed_hardly_sways() -> None:
    bed = solve(Design())

    for check in ("sways_lengthwise", "sways_sideways"):
        assert found(bed, check).verdict is Verdict.HOLDS
        assert found(bed, check).limit == SWAY_MOST


def test_loose_joints_are_felt_and_noted() -> None:
    """Short plates turn farther by their play, and stiles on pocket screws give."""
    worn = {"joint_play": 3, "push_force": 600, "connector": "hook_plate_100"}
    soft = {"frame_joint": "pocket screw", "frame_wood": "yellow_poplar"}
    loose = found(solve(Design().with_choices({**worn, **soft})), "sways_lengthwise")

    assert loose.verdict is Verdict.NOTE
    assert "of it play" in loose.reason


def test_the_finding_says_what_the_joint_bears_and_gives() -> None:
    reason = found(solve(Design()), "sways_lengthwise").reason

    assert "300 N at a rail" in reason
    assert "N m and gives" in reason


def test_a_bed_that_nobody_pushes_is_not_asked() -> None:
    bed = solve(Design().with_choices({"push_force": 0}))

    assert not any("sways" in finding.id for finding in bed.findings)
