"""The mesh of a bed shows every piece where it stands, and reuses what has not changed."""

from __future__ import annotations

import numpy as np
import pytest
import trimesh

from model.parts.pieces import Pieces, as_cut
from model.solids.exact import placed, solid
from model.solids.mesh import bed_mesh
from tests.model.solids.small_bed import Parts, changed, small_bed


def without_holes(bed: Parts) -> Parts:
    for rule, made in bed.items():
        for index in range(len(made)):
            bed = changed(bed, rule, index, holes=())
    return bed


def test_every_piece_is_drawn_watertight_where_it_stands() -> None:
    """Source: trimesh reads each piece, manifold3d makes the exact one."""
    bed = without_holes(small_bed(2))
    pieces = Pieces.of(bed)

    mesh = bed_mesh(pieces, bed)

    assert mesh.vertices.dtype == mesh.normals.dtype == mesh.edges.dtype == np.float32
    lo, hi = pieces.bounds
    for piece in range(len(pieces)):
        own = mesh.vertices[mesh.piece == piece].astype(float)
        assert own.min(axis=(0, 1)) == pytest.approx(lo[piece], abs=2e-4)  # float32 at 2 m
        assert own.max(axis=(0, 1)) == pytest.approx(hi[piece], abs=2e-4)
        read = trimesh.Trimesh(own.reshape(-1, 3), np.arange(3 * len(own)).reshape(-1, 3))
        read.merge_vertices(digits_vertex=3)
        share = 0.05 if pieces.form(piece).is_round else 1e-5
        assert read.is_watertight, pieces.labels[piece]
        assert read.volume == pytest.approx(placed(pieces, piece).volume(), rel=share)


def test_normals_point_out_of_the_wood() -> None:
    pieces = Pieces.of(small_bed(2))

    mesh = bed_mesh(pieces)

    a, b, c = (mesh.vertices[:, k].astype(float) for k in range(3))
    across = np.cross(b - a, c - a)
    across /= np.linalg.norm(across, axis=1, keepdims=True)
    assert np.abs(across - mesh.normals).max() < 1e-3  # float32 corners of thin bars


def test_edges_stay_within_their_piece() -> None:
    pieces = Pieces.of(small_bed(2))

    mesh = bed_mesh(pieces)

    lo, hi = pieces.bounds
    assert (mesh.edges >= lo[mesh.edge_piece][:, None] - 2e-4).all()
    assert (mesh.edges <= hi[mesh.edge_piece][:, None] + 2e-4).all()
    assert set(mesh.edge_piece.tolist()) == set(range(len(pieces)))


def test_a_change_draws_the_changed_part_anew_and_keeps_the_rest() -> None:
    bed = small_bed(2)
    before = bed_mesh(Pieces.of(bed))
    slat = bed["slats"][0]

    moved = changed(bed, "slats", at=(slat.at[0], slat.at[1] + 10.0, slat.at[2]))
    pieces = Pieces.of(moved)
    after = bed_mesh(pieces)

    is_slat = pieces.rule[after.piece] == pieces.rules.index("slats")
    assert np.array_equal(before.vertices[~is_slat], after.vertices[~is_slat])
    shift = after.vertices[is_slat] - before.vertices[is_slat]
    assert shift[..., 1] == pytest.approx(10.0, abs=1e-3)
    assert "_drawn" in bed["panel"][0].__dict__ and moved["panel"][0] is bed["panel"][0]


def test_a_bed_without_pieces_has_an_empty_mesh() -> None:
    mesh = bed_mesh(Pieces.of({}))

    assert mesh.vertices.shape == (0, 3, 3) and mesh.edges.shape == (0, 2, 3)


def test_a_mirrored_part_is_drawn_from_the_part_as_it_is_cut() -> None:
    bed = without_holes(small_bed(1))
    pieces = Pieces.of(bed)
    post = next(k for k in range(len(pieces)) if pieces.labels[k].startswith("head post 2"))

    own = bed_mesh(pieces).vertices[bed_mesh(pieces).piece == post].astype(float)

    exact = solid(as_cut(pieces.parts[pieces.part[post]])).transform(pieces.matrices[post, :3])
    read = trimesh.Trimesh(own.reshape(-1, 3), np.arange(3 * len(own)).reshape(-1, 3))
    low_high = np.array(exact.bounding_box()).reshape(2, 3)
    assert read.bounds == pytest.approx(low_high, abs=2e-4)
    assert read.center_mass == pytest.approx(centre(exact), abs=1e-3)


def centre(exact: object) -> np.ndarray:
    """The centre of mass of a manifold3d solid, read by trimesh."""
    mesh = exact.to_mesh64()  # type: ignore[attr-defined]
    return trimesh.Trimesh(mesh.vert_properties[:, :3], mesh.tri_verts, process=False).center_mass
