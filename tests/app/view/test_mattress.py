import numpy as np
import pytest

from app.view.mattress import cushion

LOW, HIGH = np.array((-762.0, 76.0, 330.0)), np.array((762.0, 2108.0, 584.0))


def test_the_mattress_is_as_large_as_its_box() -> None:
    points = cushion(LOW, HIGH).triangles.reshape(-1, 3)

    # 0.1 mm: single precision at 2 m
    assert points.min(0) == pytest.approx(LOW, abs=0.1)
    assert points.max(0) == pytest.approx(HIGH, abs=0.1)


def test_its_surface_is_closed_and_faces_outwards() -> None:
    """The volume of a closed surface: all tetrahedra to the origin, summed."""
    a, b, c = np.moveaxis(cushion(LOW, HIGH).triangles.astype(float), 1, 0)

    volume = np.einsum("ij,ij->", a, np.cross(b, c)) / 6

    box = np.prod(HIGH - LOW)
    assert 0.95 * box < volume < box  # corners and edges are rounded off


def test_its_normals_are_of_unit_length() -> None:
    normals = cushion(LOW, HIGH).normals.reshape(-1, 3)

    assert np.linalg.norm(normals, axis=1) == pytest.approx(1, abs=1e-5)
