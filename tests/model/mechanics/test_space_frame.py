"""The frame solver by itself: what it must do whatever the frame."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from model.mechanics.line_loads import EVERY, LineLoads
from model.mechanics.space_frame import GROUND, Frame, Joints, Members, Solution, Unstable
from tests.model.mechanics.frames import (
    CLAMP,
    STIFF,
    Beam,
    line,
    members,
    no_loads,
    on_node,
    supports,
)

HELD = [STIFF, STIFF, STIFF, CLAMP, CLAMP, CLAMP]
SIMPLE = [STIFF, STIFF, STIFF, CLAMP, 0, 0]
PIN = [STIFF, STIFF, STIFF, 0, 0, 0]
SPAN = 720.0
EI = 10900 * 89 * 19**3 / 12
DOWN = line((0, 0, SPAN / 2, SPAN / 2, 400))


def solved(
    frame: Frame, loads: LineLoads, node_loads: np.ndarray, released: np.ndarray | None = None
) -> Solution:
    if released is None:
        released = np.zeros((len(frame.joints.one), node_loads.shape[2]), bool)
    return frame.solve(loads, node_loads, released)


def unloaded(frame: Frame, released: np.ndarray | None = None) -> Solution:
    return solved(frame, no_loads(), np.zeros((len(frame.nodes), 6, 1)), released)


def skew_members() -> Members:
    nodes = np.array([[0.0, 0, 0], [310, -120, 500], [800, 60, 410], [800, 60, 0]])
    return members(nodes, [(0, 1), (1, 2), (2, 3)])


# ------------------------------------------------------------ stiffness


def test_a_members_stiffness_is_symmetric() -> None:
    stiff = skew_members().stiffness()

    assert stiff == pytest.approx(np.swapaxes(stiff, 1, 2), rel=1e-12)


@pytest.mark.parametrize("way", range(6))
def test_a_member_moved_as_a_whole_bears_nothing(way: int) -> None:
    """Three movements, three small turns about a point off the member."""
    m = skew_members()
    start = np.array([[90.0, 40, -20], [70, 0, 10], [0, 300, 60]])
    turn = np.eye(3)[way - 3] if way >= 3 else np.zeros(3)
    shift = np.eye(3)[way] if way < 3 else np.zeros(3)
    far = start + m.length[:, None] * m.axes[:, 0]
    moves = [np.concatenate([shift + np.cross(turn, at), np.tile(turn, (3, 1))], axis=1)
             for at in (start, far)]  # fmt: skip
    own = np.einsum("mij,mj->mi", m.turned(), np.concatenate(moves, axis=1))

    force = np.einsum("mij,mj->mi", m.stiffness(), own)

    # Beside what the same movement of one end alone would make.
    scale = np.abs(m.stiffness()).max() * np.abs(own).max()
    assert np.abs(force).max() < 1e-12 * scale


def portal() -> Frame:
    """A table of four legs and rails with a load on one rail: nothing about it is symmetric."""
    nodes = np.array(
        [[x, y, z] for x, y in ((0, 0), (900, 0), (900, 1500), (0, 1600)) for z in (0.0, 380)]
    )
    pairs = [(i, i + 1) for i in (0, 2, 4, 6)] + [(1, 3), (3, 5), (5, 7), (7, 1)]
    return Frame(
        nodes=nodes, members=members(nodes, pairs, width=70, height=45),
        joints=supports(nodes, [0, 2, 4, 6], [PIN] * 4),
    )  # fmt: skip


def test_a_frame_turned_in_space_gives_turned_answers() -> None:
    frame, loads = portal(), line((0, 5, 200, 900, 700), (0, 4, 450, 450, 300))
    x, y, z = np.radians((31.0, -52.0, 77.0))
    turn = (
        np.array([[np.cos(z), -np.sin(z), 0], [np.sin(z), np.cos(z), 0], [0, 0, 1]])
        @ np.array([[np.cos(y), 0, np.sin(y)], [0, 1, 0], [-np.sin(y), 0, np.cos(y)]])
        @ np.array([[1, 0, 0], [0, np.cos(x), -np.sin(x)], [0, np.sin(x), np.cos(x)]])
    )
    nodes = frame.nodes @ turn.T
    turned = Frame(
        nodes=nodes,
        members=replace(frame.members, axes=frame.members.axes @ turn.T),
        joints=replace(frame.joints, at=nodes[[0, 2, 4, 6]]),  # pins are alike in all directions
    )
    none = np.zeros((8, 6, 1))

    before, after = solved(frame, loads, none), solved(turned, loads, none)

    both = np.kron(np.eye(2), turn)
    assert after.moved[:, :, 0] == pytest.approx(before.moved[:, :, 0] @ both.T, abs=1e-7)
    assert after.joint_force[:, :3, 0] == pytest.approx(
        before.joint_force[:, :3, 0] @ turn.T, abs=1e-4
    )
    assert after.end_forces == pytest.approx(before.end_forces, abs=1e-2)  # N mm, of 1e5


def test_a_load_of_every_case_is_in_each_of_them() -> None:
    frame, none = portal(), np.zeros((8, 6, 2))
    single = line((0, 5, 200, 900, 700), (1, 4, 450, 450, 300))
    each = line((0, 6, 100, 400, 50), (1, 6, 100, 400, 50))
    always = line((EVERY, 6, 100, 400, 50))

    found, wanted = (solved(frame, both(single, more), none) for more in (always, each))

    assert found.moved == pytest.approx(wanted.moved, rel=1e-12, abs=1e-15)


def both(one: LineLoads, other: LineLoads) -> LineLoads:
    names = ("case", "member", "start", "end", "force")
    return LineLoads(
        **{n: np.concatenate([getattr(one, n), getattr(other, n)]) for n in names}
    )  # fmt: skip


def test_nothing_moves_under_no_load() -> None:
    found = unloaded(portal())

    assert not found.moved.any()
    assert not found.joint_force.any()
    assert not found.end_forces.any()


# ------------------------------------------------------------ joints


def test_a_joint_off_the_beams_axis_pulls_at_an_arm() -> None:
    """A beam held by stiff joints 40 mm below its ends: they keep its lower edge from spreading.

    By hand: under an end moment M = H e the ends come together by H L / EA and turn by M L / 2 EI;
    the load turns them by P L^2 / 16 EI. What moves the joints apart must be nothing:
    H (L/EA + e^2 L / EI) = 2 e P L^2 / 16 EI.
    """
    nodes = np.array([[0.0, 0, 0], [SPAN, 0, 0]])
    joints = supports(nodes, [0, 1], [SIMPLE, SIMPLE])
    arm, area = 40.0, 89 * 19
    low = replace(joints, at=nodes - [0, 0, arm])
    frame = Frame(nodes=nodes, members=members(nodes, [(0, 1)]), joints=low)

    thrust = solved(frame, DOWN, np.zeros((2, 6, 1))).joint_force[:, 0, 0]

    by_hand = 2 * arm * 400 * SPAN**2 / 16 / EI / (SPAN / 10900 / area + arm**2 * SPAN / EI)
    # 1e7 N/mm beside EA/L of 26 000 N/mm give a little.
    assert thrust == pytest.approx([by_hand, -by_hand], rel=3e-3)


def test_a_joint_between_two_nodes_hands_on_force_and_moment() -> None:
    """A bracket: a beam stands out 300 mm from a post, its node 25 mm beside the post's axis."""
    nodes = np.array([[0.0, 0, 0], [0, 0, 200], [25, 0, 200], [325, 0, 200]])
    joints = Joints(
        one=np.array([0, 2]), other=np.array([GROUND, 1]), at=np.array([nodes[0], [10, 0, 200]]),
        stiffness=np.array([HELD, HELD]), pushes=np.zeros((2, 3)),
    )  # fmt: skip
    frame = Frame(nodes=nodes, members=members(nodes, [(0, 1), (2, 3)]), joints=joints)

    found = solved(frame, no_loads(), on_node(4, 3, 2, -100))

    # Up on what stands out, with a moment about the joint's point; and all of it at the floor.
    assert found.joint_force[1, :, 0] == pytest.approx([0, 0, 100, 0, -31500, 0], abs=0.01)
    assert found.joint_force[0, :, 0] == pytest.approx([0, 0, 100, 0, -32500, 0], abs=0.01)


# ------------------------------------------------------------ joints that only push


def two_spans(pushes: bool, nodes: tuple[int, ...] = (0, 1, 2)) -> Beam:
    return Beam((0, SPAN, 2 * SPAN), dict.fromkeys(nodes, STIFF), pushes=pushes)


def test_a_slat_loaded_on_one_side_lifts_off_its_far_support() -> None:
    """Three supports that only push: it becomes a beam on two, P L^3 / 48 EI, and goes on straight
    beyond them, up at the slope of its end, P L^2 / 16 EI.
    """
    lifted = two_spans(pushes=True).under((0, 0, SPAN / 2, SPAN / 2, 400))

    assert lifted.solution.open[:, 0].tolist() == [False, False, True]
    # Supports of 1e7 N/mm move by 2e-5 mm.
    assert lifted.reactions() == pytest.approx([200, 200, 0], abs=1e-3)
    assert lifted.sag().max() == pytest.approx(400 * SPAN**3 / 48 / EI, rel=1e-4)
    assert lifted.sag()[-1] == pytest.approx(-400 * SPAN**3 / 16 / EI, rel=1e-4)


def test_a_slat_screwed_down_pulls_at_its_far_support() -> None:
    """Two equal spans, load in the middle of one: -3/32 P."""
    held = two_spans(pushes=False).under((0, 0, SPAN / 2, SPAN / 2, 400))

    assert not held.solution.open.any()
    assert held.reactions()[2] == pytest.approx(-3 / 32 * 400, rel=1e-4)


def test_a_slat_that_is_held_down_by_a_load_does_not_lift() -> None:
    both = two_spans(pushes=True).under((0, 0, 360, 360, 400), (0, 1, 360, 360, 400))

    assert not both.solution.open.any()
    assert both.reactions() == pytest.approx([125, 550, 125], rel=1e-4)


def test_each_case_lifts_off_by_itself() -> None:
    """A load on the left, on the right, on both: each as if it were alone."""
    beam = two_spans(pushes=True)
    rows = [(0, 360.0, 360.0, 400.0), (1, 200.0, 500.0, 300.0)]

    together = beam.under((0, *rows[0]), (1, *rows[1]), (2, *rows[0]), (2, *rows[1]))

    assert together.solution.open.tolist() == [
        [False, True, False], [False, False, False], [True, False, False],
    ]  # fmt: skip
    for case, alone in enumerate(([rows[0]], [rows[1]], rows)):
        single = beam.under(*((0, *row) for row in alone))
        assert together.sag(case) == pytest.approx(single.sag(), abs=1e-9)


def test_a_joint_that_lets_go_keeps_its_hold_sideways() -> None:
    """What lifts is the push alone: friction and screws across it are other springs."""
    frame = two_spans(pushes=True).frame
    aside = on_node(3, 2, 1, 50.0)

    found = solved(frame, line((0, 0, 360, 360, 400)), aside)

    assert found.open[:, 0].tolist() == [False, False, True]
    assert found.joint_force[2, :3, 0] == pytest.approx([0, -50, 0], abs=0.01)


def lattice(pushes: bool) -> Frame:
    """Six slats that lie on three rails, which stand on legs at their ends."""
    ys = np.linspace(150, 1850, 6)
    rails = [[[x, y, 0] for y in (0, *ys, 2000)] for x in (-760.0, 0.0, 760.0)]
    slats = [[[x, y, 30] for x in (-760.0, 0.0, 760.0)] for y in ys]
    nodes = np.array([*sum(rails, []), *sum(slats, [])])
    pairs = [(8 * r + i, 8 * r + i + 1) for r in range(3) for i in range(7)]
    pairs += [(24 + 3 * s + i, 24 + 3 * s + i + 1) for s in range(6) for i in range(2)]
    one = np.array([24 + 3 * s + r for s in range(6) for r in range(3)])
    other = np.array([8 * r + s + 1 for s in range(6) for r in range(3)])
    feet = supports(nodes, [0, 7, 8, 15, 16, 23], [[1e4, 1e4, 1e5, 0, CLAMP, CLAMP]] * 6)
    up = np.tile([0.0, 0.0, 1.0 if pushes else 0.0], (18, 1))
    return Frame(
        nodes=nodes,
        members=members(nodes, pairs, width=60, height=35),
        joints=Joints(
            one=np.concatenate([one, feet.one]),
            other=np.concatenate([other, feet.other]),
            at=np.concatenate([(nodes[one] + nodes[other]) / 2, feet.at]),
            stiffness=np.concatenate(
                [np.tile([1e5, 1e5, 1e5, 1e9, 0, 0], (18, 1)), feet.stiffness]
            ),
            pushes=np.concatenate([up, feet.pushes]),
        ),
    )


def crowd(frame: Frame, cases: int) -> np.ndarray:
    """The weight of the wood, and 600 N or so on other nodes in every case."""
    rng = np.random.default_rng(5)
    loads = np.zeros((len(frame.nodes), 6, cases))
    loads[:, 2] = -2.0
    for case in range(cases):
        loads[24 + rng.integers(18, size=2), 2, case] -= rng.uniform(300, 700, 2)
    return loads


def alone(frame: Frame, loads: np.ndarray, case: int, **changed: np.ndarray) -> Solution:
    """One case of a frame whose joints are replaced."""
    other = replace(frame, joints=replace(frame.joints, **changed))
    return solved(other, no_loads(), loads[:, :, [case]])


def test_joints_push_or_are_open_and_loads_settle_all_of_them() -> None:
    frame = lattice(pushes=True)

    found = solved(frame, no_loads(), crowd(frame, 40))

    push = found.joint_force[:18, 2]
    gap = frame.joints.stiffness[:18, 2, None]
    assert found.open[:18].any(axis=0).all()  # every case lifts something
    assert push.min() > -0.01  # N: a joint may pull a gram's weight before it lets go
    assert not push[found.open[:18]].any()
    assert gap.min() > 0
    top, below = frame.joints.one[:18], frame.joints.other[:18]
    apart = found.moved[top, 2] - found.moved[below, 2]  # upright arms: turns do not matter
    assert apart[found.open[:18]].min() > 0


def test_what_lifts_off_is_as_if_it_had_never_pushed() -> None:
    """Every case again, in a frame built without the pushes that let go, and with no joint that
    could let go.
    """
    frame = lattice(pushes=True)
    loads = crowd(frame, 10)

    found = solved(frame, no_loads(), loads)

    for case in range(10):
        stiffness = frame.joints.stiffness.copy()
        stiffness[found.open[:, case], 2] = 0.0
        built = alone(frame, loads, case, stiffness=stiffness, pushes=0 * frame.joints.pushes)
        # Movements up to 36 mm, forces of hundreds of newtons.
        assert found.moved[:, :, case] == pytest.approx(built.moved[:, :, 0], abs=1e-5)
        assert found.joint_force[:, :, case] == pytest.approx(built.joint_force[:, :, 0], abs=0.01)


def test_a_slat_that_balances_on_its_middle_tips_to_one_side() -> None:
    """Both outer rails are pressed down under slats that lie loose: each keeps to the middle one,
    and its ends, evenly heavy, both hang in the air; it is not refused as if nothing held it.
    """
    frame = lattice(pushes=True)
    loads = np.zeros((len(frame.nodes), 6, 1))
    loads[24:, 2] = -2.0
    loads[[3, 4, 19, 20], 2] = -300.0

    found = solved(frame, no_loads(), loads)

    slats = found.open[:18, 0].reshape(6, 3)
    assert not slats[:, 1].any()
    assert (slats.sum(axis=1) == 1).any()
    assert found.joint_force[:18, 2].sum() == pytest.approx(36, abs=1e-3)


def test_a_foot_released_in_one_case_is_missing_in_that_case_only() -> None:
    """Each case is the frame that is really built so, without the joints released in it."""
    frame = lattice(pushes=False)
    loads = crowd(frame, 4)
    released = np.zeros((24, 4), bool)
    released[18, 1] = True  # one foot
    released[[18, 23, 2], 2] = True  # two feet and a slat's end

    found = solved(frame, no_loads(), loads, released)

    assert np.array_equal(found.open, released)
    for case in range(4):
        kept = ~released[:, case]
        names = ("one", "other", "at", "stiffness", "pushes")
        joints = {name: getattr(frame.joints, name)[kept] for name in names}
        built = alone(frame, loads, case, **joints)
        # Movements up to 36 mm, forces of hundreds of newtons.
        assert found.moved[:, :, case] == pytest.approx(built.moved[:, :, 0], abs=1e-5)
        assert found.joint_force[kept, :, case] == pytest.approx(
            built.joint_force[:, :, 0], abs=0.01
        )
        assert not found.joint_force[~kept, :, case].any()


def test_a_beam_that_rests_on_many_props_finds_its_place() -> None:
    """Twenty stiff props and a load beside the middle: the ends lift off."""
    beam = Beam(np.arange(20) * 100.0, dict.fromkeys(range(20), STIFF), pushes=True)

    bent = beam.under((0, 9, 70, 70, 500), (0, 9, 0, 100, 10), (0, 18, 0, 100, 0.5))

    assert bent.reactions().min() > -0.01
    assert bent.reactions().sum() == pytest.approx(510.5, abs=1e-3)
    assert bent.solution.open[:, 0].any()
    assert bent.solution.moved[bent.solution.open[:, 0], 2, 0].min() > 0  # open ones stand clear


def test_props_that_would_let_go_and_close_without_end_come_to_rest() -> None:
    """Five props, stiff and soft, under a stiff slat that is pushed up beside the first: all at
    once they open and close in a circle, one by one they settle.
    """
    beam = Beam(
        (50, 380, 490, 740, 840), {0: STIFF, 1: 1e6, 2: 1e4, 3: 1e4, 4: 1e4}, pushes=True
    )  # fmt: skip
    weights = [(0, i, 0, 20, 2) for i in range(4)]

    bent = beam.under((0, 0, 10, 10, -180), (0, 1, 10, 10, 360), (0, 3, 10, 10, 330), *weights)

    assert bent.reactions().min() > -0.01
    assert bent.reactions().sum() == pytest.approx(518, abs=1e-3)
    assert bent.solution.moved[bent.solution.open[:, 0], 2, 0].min() > 0


# ------------------------------------------------------------ ground that is raised


def raised_under(joints: int, joint: int, high: float) -> np.ndarray:
    """(j, 3, 1): the ground under one joint, so many mm higher."""
    found = np.zeros((joints, 3, 1))
    found[joint, 2] = high
    return found


def test_a_middle_support_that_is_raised_bends_the_beam_by_itself() -> None:
    """It pushes with 6 E I d / L^3, half of which each end holds down."""
    frame, none = two_spans(pushes=False).frame, np.zeros((3, 6, 1))
    high = 2.5

    found = frame.solve(no_loads(), none, np.zeros((3, 1), bool), raised_under(3, 1, high))

    push = 6 * EI * high / SPAN**3
    assert found.joint_force[:, 2, 0] == pytest.approx([-push / 2, push, -push / 2], rel=1e-4)
    assert found.moved[:, 2, 0] == pytest.approx([0, high, 0], abs=1e-4)


def test_a_block_under_one_end_lifts_the_beam_off_its_middle() -> None:
    """What lies on it then is borne by the two ends; over the middle it sags 5 w (2 L)^4 / 384 EI
    from the line between them.
    """
    frame, even = two_spans(pushes=True).frame, 0.1
    loads = line((0, 0, 0, SPAN, even * SPAN), (0, 1, 0, SPAN, even * SPAN))
    sag = 5 * even * (2 * SPAN) ** 4 / 384 / EI
    high = 2 * (sag + 3)

    found = frame.solve(
        loads, np.zeros((3, 6, 1)), np.zeros((3, 1), bool), raised_under(3, 0, high)
    )

    assert found.open[:, 0].tolist() == [False, True, False]
    assert found.joint_force[:, 2, 0] == pytest.approx([even * SPAN, 0, even * SPAN], rel=1e-6)
    assert found.moved[:, 2, 0] == pytest.approx([high, 3, 0], abs=1e-3)


# ------------------------------------------------------------ what nothing holds


def refused(frame: Frame, released: np.ndarray | None = None) -> int:
    """The node that is named; no load is on the frame."""
    with pytest.raises(Unstable) as found:
        unloaded(frame, released)
    assert str(found.value.node) in str(found.value)
    return found.value.node


def beam_on(at: list[int], rows: list[list[float]] | np.ndarray, span: float) -> Frame:
    nodes = np.array([[0.0, 0, 0], [span, 0, 0], [2 * span, 0, 0]])
    return Frame(
        nodes=nodes, members=members(nodes, [(0, 1), (1, 2)]), joints=supports(nodes, at, rows)
    )


SPANS = [50.0, SPAN, 2500.0]


@pytest.mark.parametrize("span", SPANS)
@pytest.mark.parametrize("at", [0, 1, 2])
@pytest.mark.parametrize("row", [PIN, SIMPLE, [*SIMPLE[:4], CLAMP, 0], [*PIN[:2], 0, *HELD[3:]]])
def test_a_beam_with_one_support_is_refused(span: float, at: int, row: list[float]) -> None:
    """Free to swing, to tip, to turn level, and to rise."""
    assert refused(beam_on([at], [row], span)) in (0, 1, 2)


@pytest.mark.parametrize("span", SPANS)
@pytest.mark.parametrize(
    "row", [PIN, [0, *SIMPLE[1:]], [STIFF, 0, STIFF, CLAMP, 0, 0], [STIFF, STIFF, 0, CLAMP, 0, 0]]
)
def test_a_beam_that_can_roll_slide_or_fall_is_refused(span: float, row: list[float]) -> None:
    refused(beam_on([0, 2], [row, row], span))


def test_a_frame_without_any_joint_is_refused() -> None:
    refused(beam_on([], np.zeros((0, 6)), SPAN))


def test_a_node_that_belongs_to_nothing_is_named() -> None:
    frame = beam_on([0, 2], [SIMPLE, SIMPLE], SPAN)

    assert refused(replace(frame, nodes=np.vstack([frame.nodes, [0, 0, 90]]))) == 3


@pytest.mark.parametrize("span", SPANS)
def test_a_loose_member_is_named_and_not_the_one_that_is_held(span: float) -> None:
    nodes = np.array([[0.0, 0, 0], [span, 0, 0], [0, 300, 0], [span, 300, 0]])
    frame = Frame(
        nodes=nodes, members=members(nodes, [(0, 1), (2, 3)]), joints=supports(nodes, [0], [HELD])
    )

    assert refused(frame) in (2, 3)


def test_a_linkage_that_carries_no_load_is_refused() -> None:
    """Three bars of a doorway, pinned to each other and to the floor, free to lean sideways; the
    doorway beside it, with stiff corners, is sound.
    """
    nodes = np.array(
        [[0.0, 0, 0], [0, 0, 400], [0, 0, 400], [900, 0, 400], [900, 0, 400], [900, 0, 0]]
    )
    hinge = [STIFF, STIFF, STIFF, CLAMP, 0, CLAMP]
    corners = Joints(
        one=np.array([0, 1, 3, 5]), other=np.array([GROUND, 2, 4, GROUND]),
        at=nodes[[0, 1, 3, 5]], stiffness=np.array([hinge] * 4), pushes=np.zeros((4, 3)),
    )  # fmt: skip
    frame = Frame(nodes=nodes, members=members(nodes, [(0, 1), (2, 3), (4, 5)]), joints=corners)
    stiff = replace(corners, stiffness=np.array([hinge, HELD, HELD, hinge]))

    unloaded(replace(frame, joints=stiff))

    assert refused(frame) in (1, 2, 3, 4)


def test_a_slat_that_can_only_spin_is_refused() -> None:
    """Pinned at both ends on its own axis: no corner of the frame moves, yet it turns."""
    refused(beam_on([0, 2], [PIN, PIN], SPAN))


@pytest.mark.parametrize("seed", range(12))
def test_a_skew_mechanism_is_refused_wherever_it_points(seed: int) -> None:
    """A chain of members in any direction that hangs on one hinge."""
    rng = np.random.default_rng(seed)
    nodes = np.cumsum(rng.uniform(-600, 600, (6, 3)), axis=0)
    hinge = np.array([*[STIFF] * 3, *[CLAMP] * 3])
    hinge[3 + rng.integers(3)] = 0.0
    frame = Frame(
        nodes=nodes, members=members(nodes, [(i, i + 1) for i in range(5)]),
        joints=supports(nodes, [0], [hinge.tolist()]),
    )  # fmt: skip

    refused(frame)


@pytest.mark.parametrize("off", [[0], [2], [0, 2]])
def test_a_beam_whose_supports_are_released_is_refused(off: list[int]) -> None:
    """Even in one case of three, and without a load that would show it."""
    frame = beam_on([0, 1, 2], [SIMPLE, [0, STIFF, 0, 0, 0, 0], SIMPLE], SPAN)
    released = np.zeros((3, 3), bool)
    released[off, 1] = True

    with pytest.raises(Unstable) as found:
        solved(frame, DOWN, np.zeros((3, 6, 3)), released)

    assert found.value.node in (0, 1, 2)


def test_a_slat_that_is_lifted_off_all_its_supports_is_refused() -> None:
    frame = two_spans(pushes=True).frame

    with pytest.raises(Unstable):
        solved(frame, no_loads(), on_node(3, 1, 2, 10.0))


def test_a_slat_that_tips_over_its_support_is_refused() -> None:
    """A load beyond the outer support, and nothing that holds the other end down."""
    overhung = Beam((0, SPAN, SPAN + 150), {0: STIFF, 1: STIFF}, pushes=True)

    with pytest.raises(Unstable):
        overhung.under((0, 1, 150, 150, 400))


def test_a_soft_frame_is_not_taken_for_a_loose_one() -> None:
    """A lath 6 mm thick, 2 m out of its clamp, under a sleeper: absurd, but held. P L^3 / 3 EI."""
    nodes = np.array([[0.0, 0, 0], [2000, 0, 0]])
    lath = members(nodes, [(0, 1)], width=30, height=6)
    frame = Frame(nodes=nodes, members=lath, joints=supports(nodes, [0], [HELD]))

    found = solved(frame, no_loads(), on_node(2, 1, 2, -1000))

    assert found.moved[1, 2, 0] == pytest.approx(
        -1000 * 2000**3 / 3 / (10900 * 30 * 6**3 / 12), rel=1e-4
    )
