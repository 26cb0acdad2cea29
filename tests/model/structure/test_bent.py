"""The frame's pieces, cut at their stations: nothing is added or lost, and they bend as told."""

from dataclasses import replace

import numpy as np
import numpy.typing as npt
import pytest

from model.bed import Bed, Design, solve
from model.solids.mesh import Mesh, bed_mesh
from model.structure.bent import Body, body
from model.structure.record import Carried, Case
from tests.app.sample_carried import sample_carried

Floats = npt.NDArray[np.float64]
CORNERS = np.array([(x, y, z) for x in (0, 1) for y in (0, 1) for z in (0, 1)], float)
QUADS = [(0, 1, 3, 2), (4, 6, 7, 5), (0, 4, 5, 1), (2, 3, 7, 6), (0, 2, 6, 4), (1, 5, 7, 3)]


def slat_mesh(size: tuple[float, float, float] = (1000.0, 90.0, 20.0)) -> Mesh:
    """A box from the origin, as piece 3 of its bed, with one long edge."""
    at = CORNERS * size
    faces = [part for a, b, c, d in QUADS for part in ((a, b, c), (a, c, d))]
    vertices = at[np.array(faces)].astype(np.float32)
    a, b, c = vertices.swapaxes(0, 1)
    normals = np.cross(b - a, c - a)
    normals /= np.linalg.norm(normals, axis=1)[:, None]
    edge = np.array([[(0, 0, 0), (size[0], 0, 0)]], np.float32)
    three = np.full(len(faces), 3)
    return Mesh(vertices, normals, three, edge, np.array([3]))


def carried(at: list[float], down: list[float], use: list[float], way: int = 1) -> Carried:
    """One piece along x; stations at `at` mm, from the far end if `way` is -1."""
    places = np.array(at)
    moved = np.zeros((1, len(at), 3))
    moved[0, :, 2] = -np.array(down)
    point = np.zeros((len(at), 3))
    point[:, 0] = places if way > 0 else 1000.0 - places
    return Carried(
        cases=(Case(key="one", title="One", reason="."),), pieces=np.array([3]),
        first=np.array([0, len(at)]), at=places, point=point, moved=moved,
        sag=np.array([down]), use=np.array([use]), sag_limit=np.array([np.inf]), effects={},
    )  # fmt: skip


def volume(triangles: npt.NDArray[np.floating]) -> float:
    """By the divergence theorem; right only for a closed surface."""
    a, b, c = triangles.astype(float).swapaxes(0, 1)
    return float(np.einsum("ij,ij->", a, np.cross(b, c)) / 6)


def area(triangles: npt.NDArray[np.floating]) -> float:
    a, b, c = triangles.astype(float).swapaxes(0, 1)
    return float(np.linalg.norm(np.cross(b - a, c - a), axis=1).sum() / 2)


@pytest.fixture(scope="module")
def bed() -> Bed:
    return solve(Design())


@pytest.fixture(scope="module")
def real(bed: Bed) -> tuple[Mesh, Carried, Body]:
    mesh, loads = bed_mesh(bed.pieces, bed.parts), sample_carried(bed)
    return mesh, loads, body(mesh, loads)


def test_no_triangle_reaches_over_a_station() -> None:
    made = body(slat_mesh(), carried([0, 250, 400, 1000], [0, 1, 1, 0], [0, 1, 1, 0]))

    x = made.triangles[..., 0]
    for at in (250, 400):
        assert not ((x.min(1) < at - 0.01) & (x.max(1) > at + 0.01)).any()
    assert sorted(sorted(ends) for ends in made.edges[..., 0].tolist()) == [
        [0, 250], [250, 400], [400, 1000],
    ]  # fmt: skip


def test_a_cut_body_is_the_same_body(real: tuple[Mesh, Carried, Body]) -> None:
    mesh, loads, made = real

    for piece in loads.pieces.tolist():
        before, after = mesh.vertices[mesh.piece == piece], made.triangles[made.piece == piece]
        # single precision: seven digits of coordinates of up to 2 m
        assert volume(after) == pytest.approx(volume(before), rel=1e-4)
        assert area(after) == pytest.approx(area(before), rel=1e-5)


def test_pieces_that_carry_nothing_are_left_out(real: tuple[Mesh, Carried, Body]) -> None:
    _, loads, made = real

    assert set(made.piece.tolist()) == set(loads.pieces.tolist())
    assert set(made.edge_piece.tolist()) == set(loads.pieces.tolist())


def test_every_part_of_a_face_keeps_its_normal(real: tuple[Mesh, Carried, Body]) -> None:
    made = real[2]
    a, b, c = made.triangles.astype(float).swapaxes(0, 1)
    across = np.cross(b - a, c - a)
    twice = np.linalg.norm(across, axis=1)
    wide = twice > 1.0  # mm2: slivers are too thin to say which way they look

    along = np.einsum("ij,ij->i", across, made.normals)[wide] / twice[wide]

    assert along.min() > 0.999


def test_corners_move_as_the_stations_do_times_the_factor() -> None:
    made = body(slat_mesh(), carried([0, 250, 1000], [0, 2, 0], [0, 1, 0]))

    triangles, edges = made.bent(np.array([(0, 0, 0), (0, 0, -2.0), (0, 0, 0)]), 10.0)

    assert {tuple(point) for point in edges.reshape(-1, 3).tolist()} == {
        (0, 0, 0), (250, 0, -20), (1000, 0, 0),
    }  # fmt: skip
    sunk = made.triangles[..., 2] - triangles[..., 2]
    x = made.triangles[..., 0]
    expected = np.interp(x, [0, 250, 1000], [0, 20, 0])  # straight between stations
    assert sunk == pytest.approx(expected, abs=1e-3)


def test_stations_may_run_from_the_far_end() -> None:
    made = body(slat_mesh(), carried([0, 400, 1000], [0, 3, 0], [0, 1, 0], way=-1))

    share = made.corner.along(np.array([0.0, 0.4, 1.0]))

    x = made.triangles[..., 0]
    assert share == pytest.approx(np.interp(1000 - x, [0, 400, 1000], [0, 0.4, 1]), abs=1e-5)


def test_an_end_beyond_the_last_station_goes_on_straight_but_works_no_harder() -> None:
    """A slat that sticks out past its cleat tips up; it is not loaded there."""
    made = body(slat_mesh(), carried([100, 500, 900], [0, 4, 0], [0.1, 0.9, 0.2]))
    x = made.edges[..., 0]

    sunk, use = (made.end.straight_on(np.array([0.0, 4.0, 0.0])),
                 made.end.along(np.array([0.1, 0.9, 0.2])))  # fmt: skip

    assert sunk[x == 0] == pytest.approx(-1.0)  # 100 mm on, at 4 in 400
    assert use[x == 0] == pytest.approx(0.1)
    assert use[x == 1000] == pytest.approx(0.2)


def test_two_stations_in_one_place_leave_no_hole() -> None:
    """Where something bears on a piece, shear jumps: its station is told twice."""
    made = body(slat_mesh(), carried([0, 500, 500, 1000], [0, 1, 1, 0], [0, 0.5, 0.8, 0]))

    assert volume(made.triangles) == pytest.approx(1000 * 90 * 20, rel=1e-6)
    assert np.isfinite(made.corner.along(np.array([0, 0.5, 0.8, 0]))).all()


def test_a_piece_without_stations_is_left_out() -> None:
    known = carried([0, 400, 1000], [0, 3, 0], [0, 1, 0])
    more = replace(known, pieces=np.array([3, 4]), first=np.array([0, 3, 3]),
                   sag_limit=np.full(2, np.inf))  # fmt: skip
    mesh = slat_mesh()
    twice = Mesh(np.concatenate((mesh.vertices, mesh.vertices)),
                 np.concatenate((mesh.normals, mesh.normals)),
                 np.repeat((3, 4), len(mesh.piece)), mesh.edges, mesh.edge_piece)  # fmt: skip

    made = body(twice, more)

    assert set(made.piece.tolist()) == {3}
    assert volume(made.triangles) == pytest.approx(1000 * 90 * 20, rel=1e-6)


def test_a_bed_without_a_frame_has_no_body(bed: Bed) -> None:
    loads = sample_carried(bed)
    bare = replace(
        loads, pieces=loads.pieces[:0], first=np.array([0]), at=loads.at[:0],
        point=loads.point[:0], moved=loads.moved[:, :0], sag=loads.sag[:, :0],
        use=loads.use[:, :0], sag_limit=loads.sag_limit[:0], effects={},
    )  # fmt: skip

    made = body(bed_mesh(bed.pieces, bed.parts), bare)

    assert (len(made.triangles), len(made.edges)) == (0, 0)
    assert made.bent(bare.moved[0], 10.0)[0].shape == (0, 3, 3)
