"""How far plates and bolts of knock-down joints give, reckoned by hand from their screws."""

from __future__ import annotations

import numpy as np
import pytest

from model.bed import solve
from model.structure.joints import KNOCK_DOWN
from model.structure.knock_down import BOLT_ALONG, slip_modulus
from tests.model.structure.frames_of_beds import DEMOS, Worked, demo, design, usual, worked


def plated(wood: str) -> Worked:
    """The storage queen with three screws in each half of its plates, in some wood."""
    choices = {"connector": "hook_plate_100", "frame_wood": wood}
    return worked(solve(design("painted_storage_queen", **choices)))


def joint_rows(here: Worked) -> list[int]:
    return np.flatnonzero(here.joints.kind == KNOCK_DOWN).tolist()


def test_table_7_1_slip_of_a_screw_of_4_83_mm_in_poplar() -> None:
    """EN 1995-1-1:2004, table 7.1: rho_m^1.5 d / 23. Of 470 kg/m3: 470 x 21.6795 = 10 189.4; times
    4.83 = 49 214.6; by 23 = 2139.8 N/mm.
    """
    assert slip_modulus(470.0, 4.83) == pytest.approx(2139.8, abs=0.05)


def test_a_plate_gives_by_the_screws_in_both_its_halves_one_after_the_other() -> None:
    """Three screws of 4.83 mm in poplar on both sides: a pair gives 2139.8 / 2 = 1069.9 N/mm, the
    plate 3 x 1069.9 = 3209.6 N/mm.
    """
    here = plated("yellow_poplar")

    stiff = here.joints.stiffness[joint_rows(here)]

    assert len(stiff) == 4
    assert stiff[:, :3] == pytest.approx(np.full((4, 3), 3209.6), abs=0.2)


def test_a_plate_is_turned_against_its_screws_about_their_middle() -> None:
    """A pair of screws gives 1069.9 N/mm; a turn moves each by its distance from their middle, so
    that the moment is 1069.9 x the sum of the distances' squares. Nothing holds the plate against
    turning about the upright line of its screws.
    """
    here = plated("yellow_poplar")
    plate = here.bed.parts["left.rail_plates"][0]
    up = [screw.at[0] for screw in plate.screws]
    squares = sum((each - sum(up) / 3) ** 2 for each in up)

    turning = here.joints.stiffness[joint_rows(here), 3:]

    assert len(up) == 3 and squares > 1000
    assert turning[:, :2] == pytest.approx(np.full((4, 2), 1069.9 * squares), rel=1e-4)
    assert (turning[:, 2] == 0).all()


def test_a_plate_in_maple_gives_less() -> None:
    """706 kg/m3: 706 x 26.5707 x 4.83 / 23 = 3939.4 N/mm; 3 x 3939.4 / 2 = 5909.0."""
    here = plated("sugar_maple")

    stiff = here.joints.stiffness[joint_rows(here), 0]

    assert stiff == pytest.approx(np.full(4, 5909.0), abs=0.2)


def test_a_bolt_gives_sideways_by_its_diameter_and_hardly_along() -> None:
    """Bolts of 9.525 mm in beech of 706 kg/m3: 706 x 26.5707 x 9.525 / 23 = 7768.6 N/mm."""
    here = demo("loft_single")

    stiff = here.joints.stiffness[joint_rows(here)]

    assert len(stiff) == 8  # two in each end of both rails
    assert stiff[:, [0, 2]] == pytest.approx(np.full((8, 2), 7768.6), abs=0.5)
    assert (stiff[:, 1] == BOLT_ALONG).all()
    assert (stiff[:, 3:] == 0).all()


def test_a_bolt_holds_where_the_rails_end_stands_against_the_post() -> None:
    here = demo("loft_single")

    for i in joint_rows(here):
        rail, post = here.bounds(here.joints.one[i]), here.bounds(here.joints.other[i])
        meets = rail[0][1] if rail[0][1] == post[1][1] else rail[1][1]
        assert here.joints.at[i, 1] == pytest.approx(meets)


@pytest.mark.parametrize("name", DEMOS)
def test_every_corner_of_the_bed_has_its_knock_down_joints_between_side_and_post(
    name: str,
) -> None:
    here = demo(name)
    rows = joint_rows(here)

    assert {tuple(np.sign(here.joints.at[i, :2] - [0, 1000])) for i in rows} == {
        (-1, -1), (-1, 1), (1, -1), (1, 1),
    }  # fmt: skip
    assert set(here.roles(here.joints.other[rows])) == {"post"}
    assert set(here.roles(here.joints.one[rows])) <= {"side rail", "bottom rail", "stile"}
    assert (here.joints.pushes[rows] == 0).all()


@pytest.mark.parametrize("connector", ["keyhole_plate_125", "hook_plate_100", "cross_bolt_m6"])
def test_every_kind_of_connector_is_found(connector: str) -> None:
    here = usual(connector=connector)

    assert len(joint_rows(here)) >= 4
    assert (here.joints.stiffness[joint_rows(here), :3] > 1000).all()
