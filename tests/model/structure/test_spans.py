"""Sag is told from the line between what carries a piece, and held to its span."""

from __future__ import annotations

import numpy as np
import pytest

from model.structure.record import Case
from model.structure.spans import SAG_LIMITS, Supports, judged, sag_limits, sags, supports
from tests.model.structure.frames_of_beds import DEMOS, Worked, demo, usual


def held_at(here: Worked, piece: int) -> list[float]:
    """Where a piece of the frame is carried, mm from its near end."""
    held: Supports = supports(here.frame)
    return held.at[held.piece == piece].tolist()


def limit(here: Worked, role: str) -> float:
    """How far the first piece of a role may sag, mm."""
    piece = int(here.bones.of_role(role)[0])
    return float(sag_limits(here.frame, supports(here.frame))[piece])


def test_a_slat_is_carried_by_its_cleats_and_the_beam() -> None:
    here = demo("painted_storage_queen")

    for slat in here.bones.of_role("slat").tolist():
        near, middle, far = held_at(here, slat)
        assert here.bones.start[slat, 0] + middle == pytest.approx(0, abs=1)  # the beam's place
        assert near == pytest.approx(here.bones.size[slat, 0] - far)


def test_a_rail_is_carried_at_its_ends_whatever_hangs_between() -> None:
    """Slats and stiles hang on it, bearers stand beside it: none of them holds it up."""
    for name in DEMOS:
        here = demo(name)
        for rail in here.bones.of_role("side rail", "bottom rail").tolist():
            near, far = held_at(here, rail)
            assert near < 60 and far > here.bones.size[rail, 0] - 60


def test_a_bearer_is_carried_by_its_ends_and_by_legs() -> None:
    here = demo("painted_storage_queen")
    legs = here.bones.of_role("leg")

    for bearer in here.bones.of_role("bearer").tolist():
        under = sum(1 for leg in legs if bearer in here.joints.other[here.joints.one == leg])
        assert len(held_at(here, bearer)) == 2 + under


def sag_of(here: Worked, piece: int, at: np.ndarray, down: np.ndarray) -> np.ndarray:
    """The sag of a piece's stations that lie `at` mm, where it goes `down`, mm."""
    frame = here.frame
    nodes = np.zeros((len(frame.node_at), 1))
    mine = frame.node_piece == piece
    nodes[mine, 0] = np.interp(frame.node_at[mine], at, down)
    found = sags(frame, supports(frame), np.full(len(at), piece), at, down[:, None], nodes)
    return found[:, 0]


@pytest.fixture(scope="module")
def here() -> Worked:
    return demo("painted_storage_queen")


def test_what_only_sinks_and_tilts_does_not_sag(here: Worked) -> None:
    slat = int(here.bones.of_role("slat")[4])
    at = np.linspace(*np.array(held_at(here, slat))[[0, -1]], 13)

    assert sag_of(here, slat, at, 3 + 0.002 * at) == pytest.approx(np.zeros(13), abs=1e-9)


def test_sag_is_told_span_by_span(here: Worked) -> None:
    """A slat that sinks 2 mm at the beam, and 5 and 1 mm in the middle of its two spans, sags
    4 mm in one (5 - (0 + 2) / 2) and none (1 - (2 + 0) / 2) in the other.
    """
    slat = int(here.bones.of_role("slat")[4])
    near, middle, far = held_at(here, slat)
    at = np.array([near, (near + middle) / 2, middle, (middle + far) / 2, far])

    found = sag_of(here, slat, at, np.array([0, 5.0, 2.0, 1.0, 0]))

    assert found == pytest.approx([0, 4, 0, 0, 0], abs=1e-9)


def test_beyond_the_last_support_the_line_goes_on_level(here: Worked) -> None:
    slat = int(here.bones.of_role("slat")[4])
    far = held_at(here, slat)[-1]

    found = sag_of(here, slat, np.array([0, far, far + 5]), np.array([0, 1.0, 1.25]))

    assert found[2] == pytest.approx(0.25)


# ------------------------------------------------------------ limits


def test_a_slat_may_sag_a_180th_of_its_span() -> None:
    """Loft: 893.75 mm between the middles of both cleats."""
    here = demo("loft_single")
    near, far = held_at(here, int(here.bones.of_role("slat")[0]))

    assert far - near == pytest.approx(893.75, abs=1)
    assert limit(here, "slat") == pytest.approx((far - near) / 180)


def test_a_slat_over_a_beam_has_half_the_span(here: Worked) -> None:
    near, middle, far = held_at(here, int(here.bones.of_role("slat")[0]))

    assert limit(here, "slat") == pytest.approx((middle - near) / 180)
    assert middle - near == pytest.approx((far - near) / 2)


def test_a_long_rail_may_sag_6_mm_and_a_bearer_a_16th_of_an_inch(here: Worked) -> None:
    """span/300 of 2 m is 6.7 mm."""
    assert limit(here, "side rail") == 6.0
    assert limit(here, "bearer") == 1.6
    assert limit(here, "post") == np.inf


def test_a_beam_that_runs_on_past_its_leg_is_held_as_a_span_twice_as_long() -> None:
    """On one leg both its halves are free: each sags as one of two halves of a span would."""
    here = usual(beam="legs", beam_legs=1)
    beam = int(here.bones.of_role("centre beam")[0])
    (leg,) = held_at(here, beam)

    free = max(leg, here.bones.size[beam, 0] - leg)

    assert limit(here, "centre beam") == pytest.approx(min(2 * free / 300, 6.0))


CASES = tuple(
    Case(key=key, title=key, reason=".") for key in ("rest", "lying", "kneel", "lift", "drop")
)


@pytest.mark.parametrize(
    ("role", "asked"),
    [("slat", [1, 1, 0, 0, 0]), ("side rail", [1, 1, 0, 0, 0]), ("bearer", [1, 0, 0, 0, 0]),
     ("post", [0, 0, 0, 0, 0])],
)  # fmt: skip
def test_sag_is_asked_under_what_lies_there_for_long(role: str, asked: list[int]) -> None:
    assert judged((role,), CASES).tolist() == [[bool(each) for each in asked]]


def test_every_limit_says_where_it_comes_from() -> None:
    assert all("no source" in each.source for each in SAG_LIMITS.values())  # none is published
    assert all(0 < each.tight < 1 for each in SAG_LIMITS.values())
