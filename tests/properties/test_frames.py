"""Whatever the frame and its loads: what holds by the laws of statics and of elastic bodies."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from model.mechanics.line_loads import LineLoads
from model.mechanics.space_frame import GROUND, Members
from tests.model.mechanics.random_frames import (
    RandomFrame,
    random_frame,
    random_loads,
    random_node_loads,
)

# Supports are up to 1e8 times as stiff as bars: eight of sixteen digits are left, and more.
NEAR = 1e-7


@pytest.fixture(params=range(40), scope="module")
def sample(request: pytest.FixtureRequest) -> RandomFrame:
    return random_frame(request.param, with_joints=True)


def same(found: np.ndarray, wanted: np.ndarray) -> bool:
    """Alike within NEAR of the greatest."""
    return bool(np.abs(found - wanted).max() <= NEAR * max(np.abs(wanted).max(), 1e-9))


def joined(*loads: LineLoads) -> LineLoads:
    names = ("case", "member", "start", "end", "force")
    return LineLoads(**{n: np.concatenate([getattr(each, n) for each in loads]) for n in names})


def about_origin(at: np.ndarray, force: np.ndarray, moment: np.ndarray) -> np.ndarray:
    """Sum of forces and of their moments about the origin: (6,)."""
    return np.concatenate([force.sum(axis=0), (np.cross(at, force) + moment).sum(axis=0)])


def test_reactions_sum_to_the_loads_and_so_do_their_moments(sample: RandomFrame) -> None:
    found, frame, loads = sample.solve(), sample.frame, sample.loads
    nodes, bars, joints = frame.nodes, frame.members, frame.joints
    grounded = joints.other == GROUND

    for case in range(sample.cases):
        here = loads.case == case
        on = loads.member[here]
        middle = (loads.start + loads.end)[here, None] / 2
        at = nodes[bars.start[on]] + middle * bars.axes[on, 0]
        force = np.einsum("pji,pj->pi", bars.axes[on], loads.force[here])
        on_nodes, pushed = sample.node_loads[:, :, case], found.joint_force[grounded, :, case]
        applied = about_origin(nodes, on_nodes[:, :3], on_nodes[:, 3:]) + about_origin(
            at, force, np.zeros_like(force)
        )
        reaction = about_origin(joints.at[grounded], pushed[:, :3], pushed[:, 3:])
        assert np.abs(applied).max() > 1
        assert same(reaction[:3], -applied[:3])
        # Moments: beside those of single loads, which may nearly cancel.
        arms = np.abs(np.cross(at, force)).max() + np.abs(on_nodes[:, 3:]).max()
        assert np.abs(reaction[3:] + applied[3:]).max() <= 1e-7 * arms


def test_every_bar_is_in_balance_from_end_to_end(sample: RandomFrame) -> None:
    """Walking from the start of a bar to its end one arrives at the forces and movements there."""
    found, bars = sample.solve(), sample.frame.members
    every = np.arange(len(bars.length))

    inner = sample.between(found, every, bars.length + 0.02)  # past a load that ends there

    push = found.end_forces[:, 6:]
    assert same(inner.axial, push[:, 0])
    assert same(np.stack([inner.shear_y, inner.shear_z]), -np.stack([push[:, 1], push[:, 2]]))
    inner = sample.between(found, every, bars.length)
    assert same(inner.twist, push[:, 3])
    assert same(np.stack([inner.moment_y, inner.moment_z]), np.stack([push[:, 4], push[:, 5]]))
    assert same(inner.moved, found.ends[:, 6:9])


def test_what_loads_do_together_is_the_sum_of_what_each_does(sample: RandomFrame) -> None:
    loads, on_nodes = sample.loads, sample.node_loads
    both = LineLoads(
        case=np.zeros_like(loads.case), member=loads.member, start=loads.start, end=loads.end,
        force=loads.force * np.where(loads.case == 0, 2.5, -1.0)[:, None],
    )  # fmt: skip
    together = sample.with_loads(both, (on_nodes * [2.5, -1.0]).sum(axis=2, keepdims=True))

    apart, sum_of = sample.solve(), together.solve()

    for name in ("moved", "joint_force", "end_forces"):
        each = getattr(apart, name)
        assert same(getattr(sum_of, name)[..., 0], 2.5 * each[..., 0] - each[..., 1]), name


def test_two_loads_do_the_same_work_on_each_others_movement(sample: RandomFrame) -> None:
    """Maxwell and Betti: nodes and points of bars, forces and moments alike."""
    rng = np.random.default_rng(3)
    bars, points = sample.frame.members, 6
    member = rng.integers(len(bars.length), size=points)
    at = rng.uniform(0.05, 0.95, points) * bars.length[member]
    force = rng.uniform(-400, 400, (points, 3))
    loads = LineLoads(case=np.arange(points) % 2, member=member, start=at, end=at, force=force)
    loaded = sample.with_loads(loads, random_node_loads(rng, len(sample.frame.nodes), 2))

    found = loaded.solve()

    moved = loaded.between(found, member, at).moved
    work = np.einsum("nkc,nkd->cd", loaded.node_loads, found.moved)
    for case in (0, 1):
        here = loads.case == case
        work[case] += np.einsum("pi,pid->d", force[here], moved[here])
    # A point load is spread over a fiftieth of a millimetre.
    assert work[0, 1] == pytest.approx(work[1, 0], rel=1e-6, abs=1e-7 * np.abs(work).max())


def cut(sample: RandomFrame, at: np.ndarray) -> RandomFrame:
    """Every bar cut in two at a place along it, with a node between."""
    bars, nodes, count = sample.frame.members, sample.frame.nodes, len(at)
    new = len(nodes) + np.arange(count)
    alike = {
        name: np.tile(getattr(bars, name), 2)
        for name in ("area", "about_y", "about_z", "torsion", "moe", "shear")
    }
    halves = Members(
        start=np.concatenate([bars.start, new]), end=np.concatenate([new, bars.end]),
        axes=np.tile(bars.axes, (2, 1, 1)), length=np.concatenate([at, bars.length - at]), **alike,
    )  # fmt: skip
    middle = nodes[bars.start] + at[:, None] * bars.axes[:, 0]
    frame = replace(sample.frame, nodes=np.concatenate([nodes, middle]), members=halves)
    loads = joined(_part(sample.loads, at, 0), _part(sample.loads, at, count))
    more = np.zeros((count, 6, sample.cases))
    return RandomFrame(
        frame=frame, loads=loads, node_loads=np.concatenate([sample.node_loads, more])
    )


def _part(loads: LineLoads, at: np.ndarray, half: int) -> LineLoads:
    """What of the loads lies on the first halves, or on those that come `half` members later."""
    place = at[loads.member]
    low, high = (place, np.inf) if half else (np.zeros_like(place), place)
    start, end = np.clip(loads.start, low, high), np.clip(loads.end, low, high)
    whole = loads.end - loads.start
    is_point = (whole == 0) & ((loads.start > place) == bool(half))
    share = np.where(whole > 0, (end - start) / np.where(whole > 0, whole, 1), is_point)
    shift = place if half else 0.0
    return LineLoads(
        case=loads.case, member=loads.member + half, start=start - shift, end=end - shift,
        force=loads.force * share[:, None],
    )  # fmt: skip


def test_a_node_put_into_a_bar_changes_nothing(sample: RandomFrame) -> None:
    rng, bars = np.random.default_rng(8), sample.frame.members
    at = rng.uniform(0.2, 0.8, len(bars.length)) * bars.length
    member = np.repeat(np.arange(len(at)), 9)
    place = np.tile(np.linspace(0.01, 0.99, 9), len(at)) * bars.length[member]
    later = place > at[member]
    halves = cut(sample, at)

    whole, parts = sample.solve(), halves.solve()

    assert same(parts.moved[: len(sample.frame.nodes)], whole.moved)
    assert same(parts.joint_force, whole.joint_force)
    one = sample.between(whole, member, place)
    two = halves.between(parts, member + later * len(at), place - later * at[member])
    for name in ("axial", "shear_y", "shear_z", "twist", "moment_y", "moment_z", "moved"):
        assert same(getattr(two, name), getattr(one, name)), name


def test_a_spread_load_is_the_limit_of_many_point_loads(sample: RandomFrame) -> None:
    """A hundred of them, each in the middle of its stretch."""
    rng, bars, many = np.random.default_rng(4), sample.frame.members, 100
    loads = random_loads(rng, bars, 2)
    share = (np.arange(many) + 0.5) / many
    at = (loads.start[:, None] + share * (loads.end - loads.start)[:, None]).ravel()
    points = LineLoads(
        case=np.repeat(loads.case, many), member=np.repeat(loads.member, many), start=at, end=at,
        force=np.repeat(loads.force / many, many, axis=0),
    )  # fmt: skip

    spread = sample.with_loads(loads, 0 * sample.node_loads).solve()
    single = sample.with_loads(points, 0 * sample.node_loads).solve()

    # The midpoint rule errs by 1 / 24 n^2 of a curvature, four thousandths of a thousandth.
    assert np.abs(spread.moved - single.moved).max() < 1e-4 * np.abs(spread.moved).max()
