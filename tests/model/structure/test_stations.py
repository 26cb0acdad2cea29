"""Stations lie where pieces bend most, and stresses there are those of the handbook's formulas."""

from __future__ import annotations

from types import SimpleNamespace
from typing import cast

import numpy as np
import pytest

from model.mechanics.line_loads import Between
from model.structure.record import Case
from model.structure.skeleton import DECK, Skeleton
from model.structure.stations import crowding, lasting, stations, stresses
from tests.model.structure.frames_of_beds import DEMOS, demo


@pytest.mark.parametrize("name", DEMOS)
def test_stations_run_along_every_member_from_end_to_end(name: str) -> None:
    frame = demo(name).frame
    here = stations(frame)
    length = frame.frame.members.length

    for member, long in enumerate(length.tolist()):
        at = here.on_member[here.member == member]
        assert (at[0], at[-1]) == pytest.approx((0, long))
        assert (np.diff(at) > 0).all()
    assert here.at == pytest.approx(here.on_member + frame.member_from[here.member])
    assert (
        here.piece.tolist()
        == np.repeat(np.arange(len(here.first) - 1), np.diff(here.first)).tolist()
    )


@pytest.mark.parametrize("name", DEMOS)
def test_the_middle_of_every_span_of_the_deck_is_a_station(name: str) -> None:
    """There it is knelt on: beside it the bending is up to a twentieth less."""
    frame = demo(name).frame
    here = stations(frame)

    for member in np.flatnonzero(np.isin(frame.member_piece, frame.bones.of_role(*DECK))).tolist():
        middle = frame.frame.members.length[member] / 2
        assert np.abs(here.on_member[here.member == member] - middle).min() < 1e-6


SLAT = cast(Skeleton, SimpleNamespace(size=np.array([[1000.0, 90.0, 20.0]])))


def inner(**figures: float) -> Between:
    """Inner forces at one station in one case; what is not named is nothing."""
    names = ("axial", "shear_y", "shear_z", "twist", "moment_y", "moment_z")
    each = {name: np.array([[figures.get(name, 0.0)]]) for name in names}
    return Between(**each, moved=np.zeros((1, 3, 1)))


@pytest.mark.parametrize(
    ("figures", "bending", "shear"),
    [
        ({"moment_y": 100e3}, 100e3 / (90 * 20**2 / 6), 0),  # flat: 6000 mm3
        ({"moment_z": -100e3}, 100e3 / (20 * 90**2 / 6), 0),  # on edge: 27000 mm3
        ({"axial": -900.0}, 0.5, 0),
        ({"moment_y": -60e3, "moment_z": 54e3, "axial": 900.0}, 10 + 2 + 0.5, 0),
        ({"shear_z": 600.0}, 0, 1.5 * 600 / 1800),
        ({"shear_z": 300.0, "shear_y": -400.0}, 0, 1.5 * 500 / 1800),
    ],
)
def test_stresses_of_a_slat_of_90_by_20(
    figures: dict[str, float], bending: float, shear: float
) -> None:
    """Wood Handbook 2021 (FPL-GTR-282), equations 9-13 (6 M / b h^2) and 9-14 (3 V / 2 A)."""
    found = stresses(SLAT, np.array([0]), inner(**figures))

    assert (found[0].item(), found[1].item()) == pytest.approx((bending, shear))


def test_twist_adds_to_shear() -> None:
    """20 N m on 90 x 20: T / (c a b^2), c = 0.2852 between 0.282 (4 : 1) and 0.291 (5 : 1).

    Source: table of torsion of rectangles in textbooks on strength of materials
    """
    _, shear = stresses(SLAT, np.array([0]), inner(twist=-20e3, shear_z=600.0))

    assert shear.item() == pytest.approx(0.5 + 20e3 / (0.2865 * 90 * 20**2), rel=0.01)


def test_short_loads_and_test_loads_may_be_larger() -> None:
    """NDS 2018, table 2.3.2: 1.25 for seven days, 1.6 for ten minutes; a test has its margin, 1.3,
    in the load.
    """
    bones = cast(Skeleton, SimpleNamespace(product=("solid", "solid")))
    cases = (
        Case(key="a", title="A", reason=".", time="ten years"),
        Case(key="b", title="B", reason=".", time="seven days"),
        Case(key="c", title="C", reason=".", time="ten minutes", source="A standard"),
    )

    assert lasting(bones, cases) == pytest.approx(np.array([[1, 1.25, 1.6 * 1.3]] * 2))


def test_a_knee_bends_a_strip_of_a_panel_as_wide_as_the_pad_and_three_tenths_of_the_span() -> None:
    here = demo("split_king_foot_drawers")
    cases = tuple(Case(key=key, title=key, reason=".") for key in ("lying", "kneel", "drop"))
    panel = int(here.bones.of_role("deck panel")[0])
    nodes = here.frame.node_at[here.frame.first_node[panel] : here.frame.first_node[panel + 1]]

    times = crowding(here.frame, cases, 200.0)

    strip = 200 + 0.3 * np.diff(nodes).max()
    wide = here.bones.size[panel, 1]
    assert wide > strip
    assert times[panel] == pytest.approx([1, wide / strip, wide / strip])
    assert (np.delete(times, here.bones.of_role("deck panel"), axis=0) == 1).all()
