"""Plates that side and posts hang by."""

from __future__ import annotations

import numpy as np
import pytest

from model.checks.record import Verdict
from model.checks.strength.rail_ends import RailEnds, rail_ends
from tests.model.checks.strength.made import bed, carried, said, silent

NONE = np.zeros(1, np.intp)


def ends(pull: float, opens: float) -> RailEnds:
    """One joint at 300 mm of a side's end that reaches from 20 to 400 mm."""
    return RailEnds(
        rail=NONE, post=NONE, z=np.array([300.0]), lower=20.0, upper=400.0,
        pull=np.array([[pull]]), down=np.array([[0.0]]), opens=np.array([[opens]]),
    )  # fmt: skip


HEIGHTS = np.array([[270.0, 300.0, 330.0]])


@pytest.mark.parametrize(("opens", "edge"), [(100_000.0, 20.0), (-100_000.0, 400.0)])
def test_screws_balance_the_moment_about_the_edge_that_presses(opens: float, edge: float) -> None:
    drawn = ends(0.0, opens).drawn(HEIGHTS)[0, 0]

    assert (drawn * np.abs(HEIGHTS[0] - edge)).sum() == pytest.approx(abs(opens))
    assert (drawn > 0).all()


def test_a_pull_adds_to_what_opens_the_joint() -> None:
    drawn = ends(500.0, 100_000.0).drawn(HEIGHTS)[0, 0]

    assert (drawn * (HEIGHTS[0] - 20)).sum() == pytest.approx(100_000 + 500 * 280)


def test_a_side_pressed_on_its_post_draws_nothing() -> None:
    assert ends(-1000.0, 100_000.0).drawn(HEIGHTS).max() == 0


def test_both_ends_of_a_side_are_pulled_the_same_way() -> None:
    """Pushed lengthwise, one end is pulled off its post and the other pressed on."""
    of = bed()
    case = next(i for i, c in enumerate(carried(of).cases) if c.key == "push along")

    found = rail_ends(carried(of), of.pieces, "left")

    assert len(found.rail) == 2
    foot, head = found.pull[case]
    assert foot * head < 0 or abs(foot) + abs(head) < 50


def test_screws_in_end_grain_ask_for_dowels() -> None:
    """Screws in a rail's end grain loosen: a magazine on bed building, 2007."""
    plain = said(bed(left__side="plain", right__side="plain"), "left.plate_screws_hold")
    framed = said(bed(), "left.plate_screws_hold")

    assert "dowel" in plain.reason and plain.verdict in (Verdict.FAILS, Verdict.NOTE)
    assert "dowel" not in framed.reason


def test_bolted_sides_have_no_plates() -> None:
    assert silent(bed(connector="cross_bolt_m6", frame_stock=38.1), "left.plate_screws_hold")


def test_who_leans_back_on_the_headboard_opens_its_joints_above() -> None:
    """And those of the footboard below: the posts turn with the side between them."""
    of = bed()
    case = next(i for i, c in enumerate(carried(of).cases) if c.key == "lean")
    found = rail_ends(carried(of), of.pieces, "left")
    at_head = np.array([of.pieces.made_by(int(k))[0].startswith("head.") for k in found.post])

    assert (found.opens[case, at_head] > 0).all()
    assert (found.opens[case, ~at_head] < 0).all()
