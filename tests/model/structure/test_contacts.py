"""Joints of the frame are where the pieces of the bed meet, and hold what such a joint holds."""

from __future__ import annotations

import numpy as np
import pytest

from model.mechanics.line_loads import LineLoads
from model.mechanics.space_frame import Unstable
from model.structure.joints import (
    FLOOR,
    FRICTION,
    HINGE,
    KINDS,
    KNOCK_DOWN,
    LEVEL,
    REST,
    RIGID,
    SLIDES,
    STANDS,
    STILE,
    TIGHT,
)
from model.structure.lattice import lattice
from tests.model.structure.frames_of_beds import DEMOS, Worked, demo, usual

CLEARANCE = 1.6  # mm: what deck and plates leave to the pieces beside them


def joints_of(here: Worked, role: str, other: str, piece: int | None = None) -> list[int]:
    """Joints by which pieces of a role bear on those of another."""
    found = here.joints
    ones, others = here.roles(found.one), here.roles(found.other)
    rows = [i for i, pair in enumerate(zip(ones, others, strict=True)) if pair == (role, other)]
    return [i for i in rows if piece is None or found.one[i] == piece]


def away(point: np.ndarray, low: np.ndarray, high: np.ndarray) -> float:
    """How far a point lies outside the nearest of some boxes (k, 3), mm."""
    return float(np.maximum(np.maximum(low - point, point - high), 0.0).max(axis=1).min())


@pytest.mark.parametrize("name", DEMOS)
def test_every_joint_lies_at_both_its_pieces_or_what_is_fastened_to_them(name: str) -> None:
    here = demo(name)
    low, high = here.bed.pieces.bounds

    for i, (one, other) in enumerate(zip(here.joints.one, here.joints.other, strict=True)):
        for piece in (one, other):
            mine = here.host == piece
            if piece != FLOOR:
                far = away(here.joints.at[i], low[mine], high[mine])
                assert far <= CLEARANCE, f"{here.label(one)}: {here.joints.at[i]}"


@pytest.mark.parametrize("name", ["guest_room_double", "loft_single", "painted_storage_queen"])
def test_every_slat_lies_on_two_cleats_and_hands_on_to_the_rails_they_are_glued_to(
    name: str,
) -> None:
    here = demo(name)
    names = [rule.rpartition(".")[2] for rule in here.bed.pieces.rules]
    is_cleat = np.array([each == "cleat" for each in names])[here.bed.pieces.rule]
    low, high = here.bed.pieces.bounds

    for slat in here.bones.of_role("slat").tolist():
        rows = joints_of(here, "slat", "side rail", slat)
        sides = {}
        for i in rows:
            rail, point = int(here.joints.other[i]), here.joints.at[i]
            cleats = is_cleat & (here.host == rail)
            assert away(point, low[cleats], high[cleats]) == 0
            assert point[2] == pytest.approx(high[cleats, 2].max())  # on top of it
            sides[np.sign(point[0])] = np.sign(here.bones.start[rail, 0])
        assert sides == {-1: -1, 1: 1}
        assert len(rows) == 2


def test_where_there_is_a_beam_every_slat_lies_on_it() -> None:
    here = demo("painted_storage_queen")

    rows = joints_of(here, "slat", "centre beam")

    assert sorted(here.joints.one[rows]) == here.bones.of_role("slat").tolist()
    assert np.abs(here.joints.at[rows, 0]).max() < 1
    assert set(here.joints.kind[rows]) == {REST}


def test_panels_lie_on_cleats_beam_and_battens() -> None:
    here = demo("split_king_foot_drawers")

    for panel in here.bones.of_role("deck panel").tolist():
        assert len(joints_of(here, "deck panel", "side rail", panel)) == 2
        assert len(joints_of(here, "deck panel", "centre beam", panel)) == 1
        assert len(joints_of(here, "deck panel", "deck batten", panel)) >= 2


def test_without_a_beam_slats_lie_on_nothing_between_the_sides() -> None:
    here = demo("loft_single")

    assert "centre beam" not in here.bones.role
    assert np.abs(here.joints.at[joints_of(here, "slat", "side rail"), 0]).min() > 300


@pytest.mark.parametrize(
    "name", ["guest_room_double", "painted_storage_queen", "split_king_foot_drawers"]
)
def test_a_bearer_turns_on_one_joint_at_each_end(name: str) -> None:
    """It meets the stile and the rail below it: two joints there would clamp it."""
    here = demo(name)
    bones, joints = here.bones, here.joints

    for bearer in bones.of_role("bearer").tolist():
        rows = np.flatnonzero(joints.one == bearer)
        along = (joints.at[rows] - bones.start[bearer]) @ bones.axes[bearer, 0]
        near, far = np.sort(along)
        assert near < 40 and far > bones.size[bearer, 0] - 40
        assert set(joints.kind[rows]) == {HINGE}


@pytest.mark.parametrize(("fixing", "lifts"), [("screws", False), ("strap", True)])
def test_only_slats_that_no_screw_holds_lift_off_their_cleats(fixing: str, lifts: bool) -> None:
    here = usual(slat_fixing=fixing)

    on_cleat = joints_of(here, "slat", "side rail")
    on_beam = joints_of(here, "slat", "centre beam")

    up = [0, 0, 1.0 if lifts else 0]
    assert len(on_cleat) == 2 * len(on_beam) > 0
    assert (here.joints.pushes[on_cleat] == up).all()
    assert (here.joints.pushes[on_beam] == 0).all()


@pytest.mark.parametrize("name", DEMOS)
def test_every_foot_is_pushed_once_and_rubs_once(name: str) -> None:
    here = demo(name)
    joints = here.joints
    feet = [i for i in here.bones.of_role("post", "leg") if here.bounds(i)[0][2] < 30]

    for kind in (STANDS, FRICTION):
        rows = np.flatnonzero(joints.kind == kind)
        assert sorted(joints.one[rows]) == feet
        assert (joints.other[rows] == FLOOR).all()
        assert joints.at[rows, 2] == pytest.approx([here.bounds(i)[0][2] for i in joints.one[rows]])
    pushing = joints.kind == STANDS
    assert (joints.stiffness[pushing] == [0, 0, TIGHT, 0, 0, 0]).all()
    assert (joints.pushes[pushing] == [0, 0, 1]).all()


def test_posts_grip_the_floor_and_legs_all_but_slide() -> None:
    here = demo("painted_storage_queen")
    rubs = here.joints.kind == FRICTION

    for role, grip in (("post", TIGHT), ("leg", SLIDES)):
        mine = rubs & np.isin(here.joints.one, here.bones.of_role(role))
        assert mine.sum() == 4
        assert (here.joints.stiffness[mine] == [grip, grip, 0, 0, 0, 0]).all()


EXPECTED = {
    ("slat", "side rail"): HINGE,
    ("slat", "centre beam"): REST,
    ("deck panel", "side rail"): REST,
    ("deck panel", "deck batten"): REST,
    ("deck batten", "side rail"): HINGE,
    ("bearer", "stile"): HINGE,
    ("bearer", "divider"): HINGE,
    ("stile", "side rail"): STILE,
    ("stile", "bottom rail"): STILE,
    ("leg", "bearer"): RIGID,
    ("centre beam", "packer"): RIGID,
    ("end rail", "post"): RIGID,
    ("stile", "post"): KNOCK_DOWN,
    ("side rail", "post"): KNOCK_DOWN,
}


@pytest.mark.parametrize("pair", EXPECTED, ids=" on ".join)
def test_what_a_joint_holds_goes_by_what_meets(pair: tuple[str, str]) -> None:
    found: set[str] = set()

    for name in DEMOS:
        rows = joints_of(demo(name), *pair)
        found |= {KINDS[kind] for kind in demo(name).joints.kind[rows]}

    assert found == {KINDS[EXPECTED[pair]]}


@pytest.mark.parametrize("name", DEMOS)
def test_no_two_pieces_meet_twice_but_at_plates_bolts_and_the_floor(name: str) -> None:
    here = demo(name)
    wood = ~np.isin(here.joints.kind, (KNOCK_DOWN, STANDS, FRICTION))

    pairs = np.sort(np.stack([here.joints.one, here.joints.other], 1)[wood], axis=1)

    assert len(np.unique(pairs, axis=0)) == len(pairs)


def test_what_lies_or_is_screwed_holds_upright_but_hardly_sideways() -> None:
    """Held tight at its underside a slat would be an arch."""
    here = demo("painted_storage_queen")

    for pair, kind in ((("slat", "side rail"), HINGE), (("slat", "centre beam"), REST)):
        stiff = here.joints.stiffness[joints_of(here, *pair)]
        assert (stiff[:, :3] == [LEVEL[kind], LEVEL[kind], TIGHT]).all()
        assert LEVEL[kind] <= TIGHT / 50


def test_screwed_wood_turns_on_its_support_but_does_not_roll() -> None:
    here = demo("loft_single")

    stiff = here.joints.stiffness[joints_of(here, "slat", "side rail")]

    assert (stiff[:, 3] > 0).all()  # about the slat's own length, across the bed
    assert (stiff[:, 4:] == 0).all()


def test_a_bearer_of_the_foot_row_rolls_about_its_own_length_along_the_bed() -> None:
    here = demo("split_king_foot_drawers")
    along = [b for b in here.bones.of_role("bearer") if here.bones.axes[b, 0, 1] == 1]

    for bearer in along:
        rows = np.flatnonzero(here.joints.one == bearer)
        assert (here.joints.stiffness[rows, 4] > 0).all()
        assert (here.joints.stiffness[rows][:, [3, 5]] == 0).all()
    assert len(along) == 4


def test_bearing_wood_meets_over_the_slats_width_and_what_the_cleat_reaches_under() -> None:
    """Loft: slats 88.9 wide end 1.5875 from the rail, on a cleat 30.1625 thick: 2540.3 mm2."""
    here = demo("loft_single")

    area = here.joints.area[joints_of(here, "slat", "side rail")]

    assert area == pytest.approx(np.full(len(area), 88.9 * (30.1625 - 1.5875)), abs=90)  # shop grid


def test_a_side_without_its_connectors_is_loose() -> None:
    here = demo("loft_single")
    kept = here.joints.only(here.joints.kind != KNOCK_DOWN)
    frame = lattice(here.bones, kept)
    none = LineLoads(
        case=np.zeros(0, np.intp), member=np.zeros(0, np.intp), start=np.zeros(0),
        end=np.zeros(0), force=np.zeros((0, 3)),
    )  # fmt: skip

    with pytest.raises(Unstable) as loose:
        frame.frame.solve(
            none, np.zeros((len(frame.frame.nodes), 6, 1)), np.zeros((len(kept.one), 1), bool)
        )

    assert here.bones.role[frame.node_piece[loose.value.node]] in ("side rail", "slat")


def turn_of(here: Worked, name: str) -> float:
    """How little the ends of a stile turn in the plane of their frame, N mm."""
    stiles = [p for p in here.bones.of_role("stile").tolist() if name in here.label(p)]
    rows = [i for i in joints_of(here, "stile", "bottom rail") if here.joints.one[i] in stiles]
    (turn,) = {round(float(here.joints.stiffness[i, 3]), 3) for i in rows}
    return turn


def test_the_ends_of_a_stile_turn_by_what_holds_them() -> None:
    """Glued dowels give a tenth of what pocket screws do."""
    screwed, dowelled = (usual(frame_joint=joint) for joint in ("pocket screw", "dowel"))

    assert turn_of(dowelled, "mid stile") == pytest.approx(10 * turn_of(screwed, "mid stile"))


def test_a_stile_twice_as_wide_turns_a_quarter_as_far() -> None:
    narrow, wide = usual(mid_stile=50.8), usual(mid_stile=101.6)

    assert turn_of(wide, "mid stile") == pytest.approx(4 * turn_of(narrow, "mid stile"))
