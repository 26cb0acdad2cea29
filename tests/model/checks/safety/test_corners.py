"""Sharp edges, posts that catch, caps that stand out."""

from __future__ import annotations

from dataclasses import replace

import pytest

from model.bed import Design, solve
from model.checks.record import Finding, Verdict
from model.checks.safety.corners import edges_eased
from model.checks.safety.posts import cap_catches_nothing, posts_catch_nothing
from model.parts.pieces import Pieces


def verdict(finding: Finding | None) -> Verdict:
    assert finding is not None
    return finding.verdict


def test_sharp_edges_are_a_note_for_adults_and_fail_for_others() -> None:
    assert edges_eased(1.5875, "a child").verdict is Verdict.HOLDS
    assert edges_eased(0.0, "adults").verdict is Verdict.NOTE
    assert edges_eased(0.0, "a frail adult").verdict is Verdict.FAILS


def test_a_cap_is_judged_by_how_far_it_stands_out() -> None:
    assert verdict(cap_catches_nothing(True, 12.7, "adults")) is Verdict.NOTE
    assert verdict(cap_catches_nothing(True, 12.7, "a child")) is Verdict.FAILS
    assert verdict(cap_catches_nothing(True, 8.0, "a child")) is Verdict.HOLDS
    assert cap_catches_nothing(False, 12.7, "a child") is None


def posts(rise: float, sleepers_are: str = "a child") -> Finding | None:
    """The headboard of a bed whose rail was lowered by some mm between its posts."""
    bed = solve(Design())
    (rail,) = bed.parts["head.upper_rail"]
    lower = replace(rail, at=(rail.at[0], rail.at[1], rail.at[2] - rise))
    pieces = Pieces.of({**bed.parts, "head.upper_rail": (lower,)})
    return posts_catch_nothing(pieces, True, bed["head.post_top"], bed["rail_top"], sleepers_are)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("rise", "expected"),
    [(0.0, Verdict.HOLDS), (1.0, Verdict.HOLDS), (2.0, Verdict.FAILS), (40.0, Verdict.FAILS)],
)
def test_posts_are_measured_over_the_wood_between_them(rise: float, expected: Verdict) -> None:
    found = posts(rise)

    assert verdict(found) is expected
    assert found is not None and found.value == pytest.approx(rise)


def test_for_adults_a_post_that_stands_up_is_a_note() -> None:
    assert verdict(posts(40.0, "adults")) is Verdict.NOTE


def test_posts_no_higher_than_the_side_rails_catch_nothing() -> None:
    bed = solve(Design().with_choices({"foot.style": "none"}))

    assert not [f for f in bed.findings if f.id == "foot.posts_catch_nothing"]


def test_a_cap_over_the_posts_leaves_nothing_standing() -> None:
    bed = solve(Design().with_choices({"head.cap_thickness": 19.05}))
    found = next(f for f in bed.findings if f.id == "head.posts_catch_nothing")

    assert (found.value, found.verdict) == (0.0, Verdict.HOLDS)
