"""Parts bounded by true faces: closed, flat, and of the volume that is reckoned by hand."""

from __future__ import annotations

import math
from collections import Counter

import numpy as np
import pytest

from model.part import Cut, Face, Hole, Part
from model.solids.brep import Brep, brep
from model.solids.exact import solid
from model.solids.planar import Planar, planar
from model.solids.shafts import near_another, shafts
from model.units import Mm

DOWN = (0.0, 0.0, -1.0)
ALONG = (1.0, 0.0, 0.0)


def part(
    *,
    cuts: tuple[Cut, ...] = (),
    holes: tuple[Hole, ...] = (),
    taper: Mm = 0.0,
    taper_length: Mm = 0.0,
) -> Part:
    """A board of 400 x 100 x 30 mm."""
    return Part(
        name="board", assembly="deck", length=400.0, width=100.0, thickness=30.0, lies="uvz",
        at=(0.0, 0.0, 0.0), material="", cuts=cuts, holes=holes, taper=taper,
        taper_length=taper_length,
    )  # fmt: skip


def volume(surface: Planar) -> float:
    """By the divergence theorem: a third of each face's area times its offset."""
    found = 0.0
    for rings, normal, offset in zip(surface.loops, surface.normals, surface.offsets, strict=True):
        for ring in rings:
            at = surface.corners[ring]
            turned = np.cross(at, np.roll(at, -1, axis=0)).sum(axis=0)
            found += float(turned @ normal) / 2 * float(offset) / 3
    return found


def sides(surface: Planar) -> Counter[tuple[int, int]]:
    return Counter(
        (int(one), int(other))
        for rings in surface.loops
        for ring in rings
        for one, other in zip(ring, np.roll(ring, -1), strict=True)
    )


def test_a_box_has_six_faces_of_four_corners() -> None:
    found = planar(solid(part()))

    assert sorted(len(ring) for own in found.loops for ring in own) == [4] * 6
    assert volume(found) == pytest.approx(400 * 100 * 30, rel=1e-12)


@pytest.mark.parametrize(
    ("made", "faces", "holed"),
    [
        pytest.param(
            part(cuts=(Cut("groove", Face.FACE, (0.0, 40.0, 20.0), (400.0, 50.0, 30.0)),)),
            10,  # bottom and two walls more, and the face in two
            0,
            id="groove",
        ),
        pytest.param(
            part(cuts=(Cut("pocket", Face.FACE, (100.0, 40.0, 20.0), (200.0, 50.0, 30.0)),)),
            11,  # four walls and a bottom more
            1,
            id="stopped pocket",
        ),
        pytest.param(
            part(cuts=(Cut("mortise", Face.FACE, (100.0, 40.0, 0.0), (200.0, 50.0, 30.0)),)),
            10,
            2,
            id="through mortise",
        ),
        pytest.param(part(taper=5.0, taper_length=150.0), 10, 0, id="taper on four sides"),
    ],
)
def test_coplanar_triangles_are_one_face(made: Part, faces: int, holed: int) -> None:
    found = planar(solid(made))

    assert len(found.loops) == faces
    assert sum(len(own) > 1 for own in found.loops) == holed
    both = sides(found)
    assert set(both.values()) == {1} and all((b, a) in both for a, b in both)
    assert volume(found) == pytest.approx(solid(made).volume(), rel=1e-12)


def test_a_groove_in_two_runs_has_the_edges_of_one() -> None:
    def corners(*ends: float) -> list[int]:
        runs = tuple(
            Cut("groove", Face.FACE, (a, 40.0, 20.0), (b, 50.0, 30.0))
            for a, b in zip(ends, ends[1:], strict=False)
        )
        found = planar(solid(part(cuts=runs)))
        return sorted(len(ring) for own in found.loops for ring in own)

    assert corners(0.0, 150.0, 400.0) == corners(0.0, 400.0)


def test_outer_loops_come_first_and_run_against_those_of_holes() -> None:
    made = part(cuts=(Cut("mortise", Face.FACE, (100.0, 40.0, 0.0), (200.0, 50.0, 30.0)),))
    found = planar(solid(made))

    for rings, normal in zip(found.loops, found.normals, strict=True):
        turned = [
            float(np.cross(at, np.roll(at, -1, axis=0)).sum(axis=0) @ normal)
            for at in (found.corners[ring] for ring in rings)
        ]
        assert turned[0] > 0 and all(each < 0 for each in turned[1:])


def bolt(at: float, depth: float = 30.0, diameter: float = 8.0) -> Hole:
    return Hole("bolt hole", Face.FACE, (at, 50.0, 30.0), DOWN, diameter, depth)


def test_holes_on_one_axis_are_one_shaft() -> None:
    found = shafts([bolt(100.0), bolt(200.0), bolt(100.0, 10.0, 20.0)])

    assert [each.holes for each in found] == [(0, 2), (1,)]
    assert [bore.radius for bore in found[0].bores] == [10.0, 4.0]
    assert found[0].bores[0].end == 10.0


def test_holes_from_two_ends_are_two_shafts_until_they_meet() -> None:
    def from_ends(depth: float) -> list[Hole]:
        near = Hole("dowel hole", Face.NEAR, (0.0, 50.0, 15.0), ALONG, 10.0, depth)
        far = Hole("dowel hole", Face.FAR, (400.0, 50.0, 15.0), (-1.0, 0.0, 0.0), 10.0, depth)
        return [near, far]

    assert len(shafts(from_ends(50.0))) == 2
    assert len(shafts(from_ends(250.0))) == 1


def test_only_holes_whose_walls_come_near_each_other_spoil_each_other() -> None:
    every = shafts([bolt(100.0), bolt(107.9), bolt(200.0), bolt(208.1)])

    assert near_another(every).tolist() == [True, True, False, False]


def test_crossing_holes_are_near_though_all_their_ends_are_far() -> None:
    along = Hole("bolt hole", Face.NEAR, (0.0, 54.0, 15.0), ALONG, 8.0, 390.0)

    assert near_another(shafts([bolt(200.0), along])).tolist() == [True, True]


def rims_used(found: Brep) -> Counter[tuple[int, bool]]:
    """How often each rim is run through each way: a closed surface does both once."""
    used = [rim for own in found.openings for rim in own]
    used += [rim for cap in found.caps for rim in cap.rims]
    for wall in found.walls:
        used += [(wall.start, wall.is_bar), (wall.end, not wall.is_bar)]
    return Counter(used)


@pytest.mark.parametrize(
    ("holes", "openings", "walls", "caps"),
    [
        pytest.param((bolt(100.0),), 2, 1, 0, id="through"),
        pytest.param((bolt(100.0, 20.0),), 1, 1, 1, id="blind"),
        pytest.param((bolt(100.0), bolt(100.0, 10.0, 20.0)), 2, 2, 1, id="counterbore"),
        pytest.param((bolt(100.0, 20.0), bolt(100.0, 10.0, 20.0)), 1, 2, 2, id="stepped, blind"),
    ],
)
def test_each_rim_is_run_through_once_each_way(
    holes: tuple[Hole, ...], openings: int, walls: int, caps: int
) -> None:
    found = brep(part(holes=holes))

    assert sum(len(own) for own in found.openings) == openings
    assert (len(found.walls), len(found.caps)) == (walls, caps)
    expected = {(rim, way) for rim in range(len(found.rims)) for way in (True, False)}
    assert rims_used(found) == Counter(expected)


def test_a_hole_through_a_groove_breaks_through_four_faces() -> None:
    groove = Cut("groove", Face.LOWER, (0.0, 0.0, 10.0), (400.0, 80.0, 20.0))
    found = brep(part(cuts=(groove,), holes=(bolt(100.0),)))

    assert sum(len(own) for own in found.openings) == 4
    assert len(found.walls) == 2 and rims_used(found).total() == 8


def test_rims_lie_on_their_cylinder_and_their_plane() -> None:
    slant = (-math.cos(math.radians(15)), 0.0, -math.sin(math.radians(15)))
    hole = Hole("pocket hole", Face.FACE, (200.0, 50.0, 30.0), slant, 9.5, 60.0)
    found = brep(part(holes=(hole,)))

    (wall,) = found.walls
    for rim in found.rims:
        minor = np.cross(rim.normal, rim.major)
        for turn in np.linspace(0, 2 * math.pi, 12):
            at = rim.centre + rim.halves[0] * math.cos(turn) * rim.major
            at = at + rim.halves[1] * math.sin(turn) * minor
            off = at - wall.at
            assert np.linalg.norm(off - (off @ wall.way) * wall.way) == pytest.approx(4.75)
        assert (rim.seam - rim.centre) @ rim.normal == pytest.approx(0, abs=1e-9)
    # The mouth is an ellipse: its half axes are r / sin 15 deg and r.
    assert found.rims[0].halves == pytest.approx((4.75 / math.sin(math.radians(15)), 4.75))


def test_a_hole_that_just_touches_an_edge_is_left_to_flats() -> None:
    at_edge = Hole("hole", Face.FACE, (100.0, 4.0, 30.0), DOWN, 8.0, 30.0)
    beside = at_edge._replace(at=(100.0, 4.1, 30.0))

    assert brep(part(holes=(at_edge,))).walls == ()
    assert len(brep(part(holes=(beside,))).walls) == 1
