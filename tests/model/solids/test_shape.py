"""Boxes, surfaces and exact solids of one part agree with each other and with outside readers."""

from __future__ import annotations

import numpy as np
import pytest
import trimesh
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from model.errors import CannotBuild
from model.part import Cut, Face, Hole, Part
from model.parts.wood import cells, wood_boxes
from model.solids.exact import solid, solid_mesh
from model.solids.mesh import shape, shapes
from model.solids.shape import volume
from tests.model.solids.small_bed import cut, part

Corner = tuple[float, float, float]

SIZE = (400.0, 90.0, 25.0)


def positions(side: float) -> st.SearchStrategy[float]:
    """Places on an axis, many of them shared, so that cuts meet; some off the part."""
    return st.sampled_from([-5.0, 0.0, side / 5, side / 3, side / 2, side * 0.7, side, side + 5.0])


@st.composite
def cuts(draw: st.DrawFn, most: int = 6) -> tuple[Cut, ...]:
    made = []
    for _ in range(draw(st.integers(0, most))):
        ends = [sorted((draw(positions(s)), draw(positions(s)))) for s in SIZE]
        low, high = ([end[k] for end in ends] for k in (0, 1))
        made.append(cut((low[0], low[1], low[2]), (high[0], high[1], high[2])))
    return tuple(made)


def sound(made: tuple[Cut, ...]) -> np.ndarray:
    """The boxes, for cuts that leave one sound piece of wood."""
    try:
        return wood_boxes(SIZE, made)
    except CannotBuild:
        assume(False)
        raise


def as_trimesh(one: Part) -> trimesh.Trimesh:
    made = shape(one)
    return trimesh.Trimesh(made.vertices, made.triangles, process=False)


@given(cuts(most=12))
def test_boxes_share_no_space_and_fill_what_the_cuts_leave(made: tuple[Cut, ...]) -> None:
    boxes = sound(made)

    lines, wood = cells(SIZE, tuple((c.low, c.high) for c in made))
    widths = [np.diff(line) for line in lines]
    left = np.einsum("i,j,k,ijk->", *widths, wood.astype(float))
    a, b = boxes[:, None], boxes[None]
    shared = np.minimum(a[..., 1, :], b[..., 1, :]) - np.maximum(a[..., 0, :], b[..., 0, :])
    shared[np.arange(len(boxes)), np.arange(len(boxes))] = 0.0
    assert not (shared > 0).all(axis=2).any()
    assert volume(boxes) == pytest.approx(left, rel=1e-12)


@given(cuts())
def test_the_surface_is_watertight_and_as_manifold3d_cuts_it(made: tuple[Cut, ...]) -> None:
    """Source: trimesh reads the surface, manifold3d makes the solid; volume AND area must agree."""
    boxes = sound(made)
    one = part("rail", SIZE, cuts=made)

    mesh, exact = as_trimesh(one), solid(one)

    assert mesh.is_watertight and mesh.is_winding_consistent
    assert mesh.volume == pytest.approx(exact.volume(), rel=1e-9)
    assert mesh.volume == pytest.approx(volume(boxes), rel=1e-9)
    assert mesh.area == pytest.approx(exact.surface_area(), rel=1e-9)
    assert np.allclose(shape(one).normals, mesh.face_normals)


@settings(max_examples=settings().max_examples * 3 // 10)  # each makes a solid
@given(cuts())
def test_edges_lie_where_faces_meet_at_an_angle(made: tuple[Cut, ...]) -> None:
    """Source: trimesh's angles between neighbouring triangles."""
    sound(made)
    one = part("rail", SIZE, cuts=made)

    mesh, edges = as_trimesh(one), shape(one).edges

    sharp = mesh.face_adjacency_edges[mesh.face_adjacency_angles > 0.1]
    wanted = np.linalg.norm(np.diff(mesh.vertices[sharp], axis=1)[:, 0], axis=1).sum()
    assert np.linalg.norm(edges[:, 1] - edges[:, 0], axis=1).sum() == pytest.approx(wanted)


def test_shapes_worked_out_together_are_those_worked_out_alone() -> None:
    made = [
        part("plain", (300.0, 50.0, 20.0)),
        part("grooved", (301.0, 50.0, 20.0), cuts=(cut((0, 20, 10), (301, 26, 20)),)),
        part("post", (302.0, 60.0, 60.0), taper=10.0, taper_length=100.0),
        part("bar", (40.0, 8.0, 8.0), is_round=True),
        part("notched", (303.0, 50.0, 20.0), cuts=(cut((50, 20, 0), (90, 60, 20)),)),
    ]

    together = shapes(made)

    for one, each in zip(made, together, strict=True):
        mesh = trimesh.Trimesh(each.vertices, each.triangles, process=False)
        assert mesh.is_watertight, one.name
        assert mesh.bounds[1] == pytest.approx(one.size), one.name


def test_a_notched_panel_with_many_cuts_needs_few_boxes() -> None:
    notches = tuple(cut((20.0 * k + 5, 60, 0), (20.0 * k + 15, 90, 25)) for k in range(20))

    boxes = wood_boxes(SIZE, notches)

    assert volume(boxes) == pytest.approx(400 * 90 * 25 - 20 * 10 * 30 * 25)
    assert len(boxes) <= 22


@pytest.mark.parametrize(
    ("made", "says"),
    [
        ([((0, 0, 0), (400, 90, 25))], "leave nothing"),
        ([((100, -1, -1), (120, 91, 26))], "in two pieces"),
        ([((0, 0, 0), (200, 45, 25)), ((200, 45, 0), (400, 90, 25))], "in two pieces"),
        (
            [((0, 0, 0), (200, 45, 20)), ((200, 45, 0), (400, 90, 20))],
            "a mere edge",
        ),
    ],
)
def test_a_part_that_would_fall_apart_is_refused(
    made: list[tuple[Corner, Corner]], says: str
) -> None:
    """Two quarters that meet in a line are no joint: the saw went one cut too deep."""
    with pytest.raises(CannotBuild, match=says) as refused:
        wood_boxes(SIZE, tuple(cut(*each) for each in made), "left rail")

    assert "left rail" in refused.value.sentence


def test_a_part_without_size_is_refused() -> None:
    with pytest.raises(CannotBuild, match="panel has no size"):
        wood_boxes((100.0, 0.0, 12.0), (), "panel")


def test_a_tapered_post_is_watertight_and_as_thick_as_told() -> None:
    """Source: trimesh; manifold3d's hull of the same corners."""
    one = part(
        "post",
        (600.0, 70.0, 70.0),
        taper=15.0,
        taper_length=150.0,
        cuts=(cut((300, 55, 20), (400, 70, 45)),),
    )

    mesh = as_trimesh(one)

    foot = mesh.vertices[mesh.vertices[:, 0] == 0.0]
    assert mesh.is_watertight
    assert (foot[:, 1:].min(), foot[:, 1:].max()) == (15.0, 55.0)
    assert mesh.volume == pytest.approx(solid(one).volume(), rel=1e-9)
    sharp = mesh.face_adjacency_edges[mesh.face_adjacency_angles > 0.05]
    wanted = np.linalg.norm(np.diff(mesh.vertices[sharp], axis=1)[:, 0], axis=1).sum()
    edges = shape(one).edges
    assert np.linalg.norm(edges[:, 1] - edges[:, 0], axis=1).sum() == pytest.approx(wanted)


@pytest.mark.parametrize(("diameter", "sides"), [(8.0, 12), (20.0, 24)])
def test_a_bar_is_drawn_as_a_prism(diameter: float, sides: int) -> None:
    """The area of a regular polygon: n/2 r² sin(2π/n)."""
    one = part("dowel", (50.0, diameter, diameter), is_round=True)

    mesh = as_trimesh(one)

    section = sides / 2 * (diameter / 2) ** 2 * np.sin(2 * np.pi / sides)
    assert mesh.is_watertight
    assert mesh.volume == pytest.approx(50.0 * section)
    assert len(shape(one).edges) == 2 * sides


def test_a_drilled_part_loses_what_the_drill_takes() -> None:
    """A 48-sided round is 0.3 % short of the circle."""
    drill = Hole("pilot", Face.FACE, (100.0, 45.0, 25.0), (0.0, 0.0, -1.0), 10.0, 15.0)
    one = part("rail", SIZE, holes=(drill,))

    taken = 400 * 90 * 25 - solid(one).volume()

    assert taken == pytest.approx(np.pi * 25 * 15, rel=0.004)


def test_a_pocket_hole_leaves_no_lip_and_a_watertight_part() -> None:
    """Source: trimesh. A slanted drill's mouth is an ellipse; its upper half must be open too."""
    way = (float(-np.cos(np.radians(15))), 0.0, float(-np.sin(np.radians(15))))
    drill = Hole("pocket", Face.FACE, (60.0, 45.0, 25.0), way, 9.5, 30.0)
    one = part("rail", SIZE, holes=(drill,))

    vertices, faces = solid_mesh(one)

    mesh = trimesh.Trimesh(vertices, faces, process=False)
    on_face = vertices[np.abs(vertices[:, 2] - 25.0) < 1e-9]
    mouth = on_face[(on_face[:, 0] > 1) & (on_face[:, 0] < 399)]
    assert mesh.is_watertight
    assert np.ptp(mouth[:, 0]) == pytest.approx(9.5 / np.sin(np.radians(15)), rel=0.01)
