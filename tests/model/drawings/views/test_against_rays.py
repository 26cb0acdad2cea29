"""Hidden lines against rays: points of edges, and whether anything stands between them and the eye.

The rays are those of a solid kernel (manifold3d), cast at the exact solids of all pieces, one ray a
point. It shares nothing with the clipping of edges but the pieces.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from pathlib import Path

import manifold3d
import numpy as np
import pytest

from model.bed import Bed, solve
from model.designs import read
from model.drawings.views.bodies import Bodies
from model.drawings.views.gaze import (
    DIMETRIC_RIGHT,
    FOOT_LEFT,
    FRONT,
    HEAD_RIGHT,
    LEFT,
    PLAN,
    Gaze,
)
from model.drawings.views.hiding import BEHIND, HAIR, hidden
from model.drawings.views.scene import Scene, bed_scene, part_scene
from model.drawings.views.section import Plane, cut_open, placed
from model.drawings.views.stretches import left_of
from model.drawings.views.view import seen
from model.errors import CannotBuild
from model.parts.pieces import Bools, Floats, Ints
from tests.properties.designs import random_design

DEMOS = {path.stem: path for path in sorted(Path("resources/demos").glob("*.bedwright"))}
POINTS = 300
NEAR_AN_END = 0.3  # mm: there a hair's breadth decides
AGREE = 0.995
FAR = 1e4  # mm: past any bed


@cache
def demo(name: str) -> Bed:
    return solve(read(DEMOS[name]))


def random_beds(count: int) -> Iterator[Bed]:
    seed = 0
    while count:
        seed += 1
        try:
            yield solve(random_design(seed))
            count -= 1
        except CannotBuild:
            continue


def without_holes(scene: Scene) -> Scene:
    """Whole beds are looked at as if no holes were bored through them."""
    return replace(scene, forms=tuple(replace(form, holes=()) for form in scene.forms))


def solids(scene: Scene) -> list[manifold3d.Manifold]:
    return [placed(form, at) for form, at in zip(scene.forms, scene.matrices, strict=True)]


def is_behind(body: manifold3d.Manifold, points: Floats, gaze: Gaze) -> Bools:
    """Which points have wood of a body between them and the eye."""
    x0, y0, z0, x1, y1, z1 = body.bounding_box()
    corners = gaze.flat(np.array([(x, y, z) for x in (x0, x1) for y in (y0, y1) for z in (z0, z1)]))
    flat = gaze.flat(points)
    near = ((flat >= corners.min(axis=0)) & (flat <= corners.max(axis=0))).all(axis=1)
    found = np.zeros(len(points), bool)
    for k in np.flatnonzero(near).tolist():
        found[k] = bool(body.ray_cast(points[k], points[k] + FAR * gaze.toward))
    return found


def sampled(edges: Floats, gaze: Gaze) -> tuple[Ints, Floats, Floats, Floats]:
    """Points by the length of edges: edge, share of it, and the points a hair to both sides."""
    rng = np.random.default_rng(len(edges))
    along = gaze.flat(edges[:, 1] - edges[:, 0])
    long = np.linalg.norm(along, axis=1)
    edge, share = rng.choice(len(edges), POINTS, p=long / long.sum()), rng.random(POINTS)
    points = edges[edge, 0] + share[:, None] * (edges[edge, 1] - edges[edge, 0])
    way = (along / long[:, None])[edge]
    aside = HAIR * (way[:, :1] * gaze.axes[1] - way[:, 1:] * gaze.axes[0])
    lifted = points + BEHIND * gaze.toward
    return edge, share, lifted + aside, lifted - aside


def agreement(bodies: Bodies, gaze: Gaze, wood: list[manifold3d.Manifold]) -> float:
    """The share of points, away from ends of hidden stretches, where clipping and rays agree."""
    long = np.linalg.norm(gaze.flat(bodies.edges[:, 1] - bodies.edges[:, 0]), axis=1)
    edges, long = bodies.edges[long > 1.0], long[long > 1.0]
    edge, share, one, other = sampled(edges, gaze)
    blocked = np.any([is_behind(each, one, gaze) for each in wood], axis=0)
    blocked &= np.any([is_behind(each, other, gaze) for each in wood], axis=0)
    told, near_an_end = np.zeros(POINTS, bool), np.zeros(POINTS, bool)
    dark = hidden(edges, gaze, bodies.lo, bodies.hi, bodies.facets)
    for line, begin, end in zip(*dark, strict=True):
        own = edge == line
        told[own] |= (share[own] > begin) & (share[own] < end)
        off = np.minimum(abs(share[own] - begin), abs(share[own] - end)) * long[line]
        near_an_end[own] |= off < NEAR_AN_END
    assert near_an_end.mean() < 0.1
    assert 0.01 < blocked.mean() < 0.98
    return float((told == blocked)[~near_an_end].mean())


@pytest.mark.parametrize("gaze", [FRONT, LEFT, PLAN, FOOT_LEFT, DIMETRIC_RIGHT])
@pytest.mark.parametrize("name", DEMOS)
def test_what_is_hidden_of_a_bed_is_what_rays_do_not_reach(name: str, gaze: Gaze) -> None:
    scene = bed_scene(demo(name), bought=True)

    assert agreement(scene.bodies, gaze, solids(without_holes(scene))) > AGREE


def test_a_bed_turned_askew_is_seen_as_by_an_eye_turned_the_other_way() -> None:
    """Turned by 30° its boxes lie along no axis, and are looked at as triangles."""
    scene = without_holes(bed_scene(demo("loft_single")))
    cos, sin = np.cos(np.pi / 6), np.sin(np.pi / 6)
    turn = np.eye(4)
    turn[:2, :2] = [[cos, -sin], [sin, cos]]
    askew = Gaze.down_from((-0.5, -float(cos), 0.0))

    turned, plain = seen(scene.turned(turn), FRONT), seen(scene, askew)

    assert len(scene.turned(turn).bodies.lo) == 0
    assert distance(points_on(turned.visible), plain.visible).max() < 0.1
    assert distance(points_on(plain.visible), turned.visible).max() < 0.1


@pytest.mark.parametrize("gaze", [FRONT, HEAD_RIGHT])
def test_any_bed_hides_what_rays_do_not_reach(gaze: Gaze) -> None:
    for bed in random_beds(5):
        scene = bed_scene(bed)

        assert agreement(scene.bodies, gaze, solids(without_holes(scene))) > AGREE, bed.design


@pytest.mark.parametrize("gaze", [FRONT, LEFT, FOOT_LEFT])
@pytest.mark.parametrize("hides", [False, True])
def test_strokes_are_drawn_where_edges_are_seen_and_nowhere_else(gaze: Gaze, hides: bool) -> None:
    """Joined, and drawn once, they cover the visible stretches of all edges; so do hidden ones."""
    scene = without_holes(bed_scene(demo("guest_room_double")))
    edges = scene.bodies.edges
    edges = edges[np.linalg.norm(gaze.flat(edges[:, 1] - edges[:, 0]), axis=1) > 1.0]
    dark = hidden(edges, gaze, scene.bodies.lo, scene.bodies.hi, scene.bodies.facets)
    some = dark if hides else left_of(len(edges), dark)
    view = seen(scene, gaze)
    drawn = np.concatenate([view.visible, view.hidden]) if hides else view.visible

    flat = gaze.flat(edges)[some.line]
    begin, end = (
        flat[:, 0] + s[:, None] * (flat[:, 1] - flat[:, 0]) for s in (some.begin, some.end)
    )
    stretches = np.stack([begin, end], axis=1)
    every = np.concatenate([stretches, gaze.flat(edges)]) if hides else stretches
    assert distance(points_on(stretches), drawn).max() < 0.1
    assert distance(points_on(drawn), every).max() < 0.1


def points_on(ends: Floats) -> Floats:
    """Points of lines that are not very short, about a thousand of them."""
    ends = ends[np.linalg.norm(ends[:, 1] - ends[:, 0], axis=1) > 0.2]
    share = np.array([0.03, 0.31, 0.5, 0.72, 0.97])[:, None, None]
    points = (ends[:, 0] + share * (ends[:, 1] - ends[:, 0])).reshape(-1, 2)
    return np.asarray(points[:: max(1, len(points) // 800)])


def distance(points: Floats, ends: Floats) -> Floats:
    """From each point to the nearest of some lines."""
    begin, step = ends[:, 0], ends[:, 1] - ends[:, 0]
    square = np.maximum((step**2).sum(axis=1), 1e-12)
    found = []
    for some in np.array_split(points, max(1, len(points) // 500)):
        off = some[:, None] - begin
        share = np.clip((off * step).sum(axis=2) / square, 0.0, 1.0)
        found.append(np.linalg.norm(off - share[..., None] * step, axis=2).min(axis=1))
    return np.concatenate(found)


@pytest.mark.parametrize("gaze", [FRONT, PLAN, FOOT_LEFT])
def test_exact_bodies_let_rays_through_their_holes(gaze: Gaze) -> None:
    """A post with its bolt holes and its taper."""
    posts = [each.part for each in demo("loft_single").marks if each.name == "post"]
    scene = part_scene(posts[0], exact=True)

    assert scene.forms[0].holes
    assert scene.forms[0].taper
    assert agreement(scene.bodies, gaze, solids(scene)) > AGREE


@pytest.mark.parametrize(
    ("gaze", "plane"),
    [
        (FRONT, Plane(point=(0.0, 600.0, 0.0), normal=(0.0, -1.0, 0.0))),
        (FOOT_LEFT, Plane(point=(0.0, 600.0, 0.0), normal=(-0.3, -1.0, 0.2))),
    ],
)
def test_a_bed_cut_open_hides_what_rays_do_not_reach(gaze: Gaze, plane: Plane) -> None:
    """Cut square to an axis, as boxes are clipped; and askew, as solids are sawn."""
    scene = without_holes(bed_scene(demo("painted_storage_queen")))
    left, _ = cut_open(scene.bodies, plane, scene.forms, scene.matrices)
    inward = -np.array(plane.normal) / np.linalg.norm(plane.normal)
    off = float(inward @ np.array(plane.point))

    sawn = [body.trim_by_plane(inward, off) for body in solids(scene)]

    assert agreement(left, gaze, [body for body in sawn if not body.is_empty()]) > AGREE
