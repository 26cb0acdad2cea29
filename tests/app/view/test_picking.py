import numpy as np

from app.view.picking import first_hit

SQUARE = np.array([[(0, 0, 0), (1, 0, 0), (0, 1, 0)], [(1, 0, 0), (1, 1, 0), (0, 1, 0)]], float)
DOWN = np.array((0.0, 0.0, -1.0))


def test_the_nearest_of_several_triangles_is_hit() -> None:
    triangles = np.concatenate((SQUARE, SQUARE + (0, 0, 2)))

    assert first_hit(np.array((0.2, 0.2, 5.0)), DOWN, triangles) == 2


def test_what_lies_behind_the_eye_is_not_hit() -> None:
    assert first_hit(np.array((0.2, 0.2, -1.0)), DOWN, SQUARE) == -1


def test_a_line_beside_everything_hits_nothing() -> None:
    assert first_hit(np.array((3.0, 0.2, 5.0)), DOWN, SQUARE) == -1


def test_a_triangle_seen_edge_on_is_not_hit() -> None:
    assert first_hit(np.array((-1.0, 0.2, 0.0)), np.array((1.0, 0.0, 0.0)), SQUARE) == -1


def test_an_empty_picture_has_nothing_to_hit() -> None:
    assert first_hit(np.zeros(3), DOWN, np.zeros((0, 3, 3))) == -1
