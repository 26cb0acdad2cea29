"""Pieces cut at their joints: no length is lost, joints stay where they are, loads stay whole."""

from __future__ import annotations

import numpy as np
import pytest

from model.mechanics.line_loads import LineLoads
from model.parts.pieces import Floats, Ints
from model.structure.joints import FLOOR
from model.structure.lattice import Lattice, lattice
from tests.model.structure.frames_of_beds import DEMOS, Worked, demo

SAME = 3.0  # mm: joints nearer to each other than this share a node
FREE = 60.0  # mm: a longer end beyond the outer joint has a node of its own


@pytest.mark.parametrize("name", DEMOS)
def test_nodes_rise_piece_by_piece_and_along_each(name: str) -> None:
    frame = demo(name).frame

    assert (np.diff(frame.node_piece) >= 0).all()
    for i in range(len(frame.bones.piece)):
        rows = slice(frame.first_node[i], frame.first_node[i + 1])
        assert set(frame.node_piece[rows]) <= {i}
        assert (np.diff(frame.node_at[rows]) > 0).all()


@pytest.mark.parametrize("name", DEMOS)
def test_members_add_up_to_the_way_between_the_outer_nodes(name: str) -> None:
    frame = demo(name).frame
    members = frame.frame.members

    for i in range(len(frame.bones.piece)):
        at = frame.node_at[frame.first_node[i] : frame.first_node[i + 1]]
        mine = slice(frame.first_member[i], frame.first_member[i + 1])
        assert set(frame.member_piece[mine]) <= {i}
        assert members.length[mine].sum() == pytest.approx(at[-1] - at[0])
        assert len(members.length[mine]) == len(at) - 1
        assert frame.member_from[mine] == pytest.approx(at[:-1])
    way = frame.frame.nodes[members.end] - frame.frame.nodes[members.start]
    assert way == pytest.approx(members.axes[:, 0] * members.length[:, None])


@pytest.mark.parametrize("name", DEMOS)
def test_joints_act_at_their_own_point_from_a_node_beside_it(name: str) -> None:
    frame = demo(name).frame
    bones, joints = frame.bones, frame.joints

    assert (frame.frame.joints.at == joints.at).all()
    for side, piece in enumerate((joints.one, joints.other)):
        met = piece != FLOOR
        node = frame.joint_node[side]
        assert (node[~met] == FLOOR).all()
        assert (frame.node_piece[node[met]] == piece[met]).all()
        along = np.einsum(
            "ji,ji->j", joints.at[met] - bones.start[piece[met]], bones.axes[piece[met], 0]
        )
        along = np.clip(along, 0, bones.size[piece[met], 0])  # beside its end: at its end
        assert np.abs(frame.node_at[node[met]] - along).max() <= SAME


@pytest.mark.parametrize("name", DEMOS)
def test_a_long_end_beyond_the_outer_joint_has_a_node_and_a_short_one_has_none(name: str) -> None:
    frame = demo(name).frame

    for i, long in enumerate(frame.bones.size[:, 0].tolist()):
        at = frame.node_at[frame.first_node[i] : frame.first_node[i + 1]]
        jointed = frame.joint_node[frame.joint_node >= 0]
        held = frame.node_at[np.unique(jointed[frame.node_piece[jointed] == i])]
        assert at[0] == pytest.approx(0 if held[0] > FREE else held[0])
        assert at[-1] == pytest.approx(long if long - held[-1] > FREE else held[-1])


def test_a_piece_that_meets_nothing_has_no_node_and_shifts_no_other() -> None:
    here = demo("loft_single")
    slat = int(here.bones.of_role("slat")[3])
    joints = here.joints

    frame = lattice(here.bones, joints.only((joints.one != slat) & (joints.other != slat)))

    assert frame.first_node[slat] == frame.first_node[slat + 1]
    assert frame.first_member[slat] == frame.first_member[slat + 1]
    assert slat not in frame.node_piece
    assert set(frame.node_piece) == set(range(len(here.bones.piece))) - {slat}


# ------------------------------------------------------------ loads


@pytest.fixture(scope="module")
def here() -> Worked:
    return demo("loft_single")


@pytest.fixture(scope="module")
def rail(here: Worked) -> int:
    """A side rail: it has a node under each of its slats."""
    return int(here.bones.of_role("side rail")[0])


def nodes_of(frame: Lattice, piece: int) -> Floats:
    return frame.node_at[frame.first_node[piece] : frame.first_node[piece + 1]]


def spread(frame: Lattice, piece: int, start: float, end: float) -> LineLoads:
    """10 N across, 20 N along, 30 N down on a stretch of a piece."""
    return frame.spread(
        np.array([0]), np.array([piece]), np.array([start]), np.array([end]),
        np.array([[10.0, 20.0, -30.0]]),
    )  # fmt: skip


def whole(frame: Lattice, loads: LineLoads) -> tuple[Floats, float]:
    """All of some loads on the bed's axes, and the place along the piece where it acts."""
    axes = frame.frame.members.axes[loads.member]
    force = np.einsum("lij,li->lj", axes, loads.force)
    at = frame.member_from[loads.member] + (loads.start + loads.end) / 2
    return force.sum(axis=0), float((at * force[:, 2]).sum() / force[:, 2].sum())


def fits(frame: Lattice, loads: LineLoads) -> bool:
    """Every load lies on its member."""
    long = frame.frame.members.length[loads.member]
    return bool(((loads.start >= 0) & (loads.end >= loads.start) & (loads.end <= long)).all())


@pytest.mark.parametrize("seed", range(12))
def test_a_stretch_keeps_its_force_and_its_place(here: Worked, rail: int, seed: int) -> None:
    at = nodes_of(here.frame, rail)
    start, end = np.sort(np.random.default_rng(seed).uniform(at[0], at[-1], 2))

    loads = spread(here.frame, rail, start, end)

    force, place = whole(here.frame, loads)
    assert fits(here.frame, loads)
    assert force == pytest.approx((10, 20, -30))
    assert place == pytest.approx((start + end) / 2)
    # evenly: the same force on each millimetre
    each = np.linalg.norm(loads.force, axis=1) / (loads.end - loads.start)
    assert each == pytest.approx(np.full(len(each), np.sqrt(1400) / (end - start)))


def test_a_stretch_from_node_to_node_lies_on_the_members_between_them(
    here: Worked, rail: int
) -> None:
    at = nodes_of(here.frame, rail)

    loads = spread(here.frame, rail, at[2], at[5])

    first = here.frame.first_member[rail]
    assert loads.member.tolist() == [first + 2, first + 3, first + 4]


def test_a_point_load_at_any_node_counts_once(here: Worked, rail: int) -> None:
    """Between two members it belongs to one of them; at the far end to the last."""
    for at in nodes_of(here.frame, rail).tolist():
        loads = spread(here.frame, rail, at, at)

        force, place = whole(here.frame, loads)
        assert len(loads.member) == 1
        assert force == pytest.approx((10, 20, -30))
        assert place == pytest.approx(at)


@pytest.mark.parametrize("off", [-1e-9, 1e-9])
def test_a_point_load_a_hair_beside_a_node_counts_once(here: Worked, rail: int, off: float) -> None:
    for at in nodes_of(here.frame, rail)[1:-1].tolist():
        loads = spread(here.frame, rail, at + off, at + off)

        assert whole(here.frame, loads)[0] == pytest.approx((10, 20, -30))


@pytest.mark.parametrize(("start", "end"), [(-500.0, -400.0), (-5.0, -5.0)])
def test_what_lies_before_the_first_joint_goes_to_it(
    here: Worked, rail: int, start: float, end: float
) -> None:
    """And what lies past the last one to the last."""
    at, long = nodes_of(here.frame, rail), here.bones.size[rail, 0]

    for low, high, node in ((start, end, at[0]), (long - end, long - start, at[-1])):
        loads = spread(here.frame, rail, low, high)
        assert len(loads.member) == 1
        assert whole(here.frame, loads) == (pytest.approx((10, 20, -30)), pytest.approx(node))
        assert fits(here.frame, loads)


def test_what_reaches_past_the_last_joint_is_pushed_back_before_it(here: Worked) -> None:
    """A slat goes on 15 mm past its joint; the mattress on it weighs as much as before."""
    slat = int(here.bones.of_role("slat")[0])
    at, long = nodes_of(here.frame, slat), here.bones.size[slat, 0]
    assert long > at[-1]

    force, place = whole(here.frame, spread(here.frame, slat, 0.0, long))

    assert force == pytest.approx((10, 20, -30))
    assert place == pytest.approx((at[0] + at[-1]) / 2)


def test_many_loads_are_spread_as_each_alone(here: Worked) -> None:
    frame, pieces = here.frame, np.arange(len(here.bones.piece))
    rng = np.random.default_rng(3)
    ends = np.sort(rng.uniform(-50, 2100, (2, len(pieces))), axis=0)
    force = rng.uniform(-100, 100, (len(pieces), 3))
    case = pieces % 3

    together = frame.spread(case, pieces, ends[0], ends[1], force)

    for i in pieces.tolist():
        one = np.array([i])
        alone = frame.spread(case[one], one, ends[0][one], ends[1][one], force[one])
        mine = here.frame.member_piece[together.member] == i
        assert set(together.case[mine]) == {i % 3}
        assert together.force[mine] == pytest.approx(alone.force)
        assert together.start[mine] == pytest.approx(alone.start)


def test_what_is_loaded_but_meets_nothing_has_no_members_to_load(here: Worked) -> None:
    slat, joints = int(here.bones.of_role("slat")[3]), here.joints
    frame = lattice(here.bones, joints.only((joints.one != slat) & (joints.other != slat)))

    assert len(spread(frame, slat, 0.0, 500.0).member) == 0


def members_of(frame: Lattice, piece: int) -> Ints:
    return np.flatnonzero(frame.member_piece == piece)


def test_members_have_the_section_and_the_wood_of_their_piece(here: Worked, rail: int) -> None:
    members, bones = here.frame.frame.members, here.bones

    for member in members_of(here.frame, rail).tolist():
        width, thick = bones.size[rail, 1:]
        assert members.area[member] == pytest.approx(width * thick)
        assert members.about_y[member] == pytest.approx(width * thick**3 / 12)
        assert members.about_z[member] == pytest.approx(thick * width**3 / 12)
        assert members.moe[member] == bones.moe[rail]
        assert members.shear[member] == bones.shear_modulus[rail]
