import numpy as np
import pytest

from app.view.shadow import CELL, MARGIN, Shadow, floor_shadow


def shadow_of_box(bottom: float) -> Shadow:
    low, high = np.array([(0.0, 0.0, bottom)]), np.array([(1000.0, 2000.0, bottom + 50)])
    return floor_shadow(low, high)


def darkness_at(shadow: Shadow, x: float, y: float) -> float:
    column, row = int((x - shadow.low[0]) / CELL), int((y - shadow.low[1]) / CELL)
    return float(shadow.dark[row, column])


def test_the_floor_is_dark_under_the_bed_and_bright_at_the_edge() -> None:
    shadow = shadow_of_box(bottom=50)

    assert darkness_at(shadow, 500, 1000) > 0.2
    edges = (shadow.dark[0], shadow.dark[-1], shadow.dark[:, 0], shadow.dark[:, -1])
    assert max(edge.max() for edge in edges) == pytest.approx(0, abs=1 / 255)


def test_the_shadow_lies_straight_under_its_piece() -> None:
    shadow = shadow_of_box(bottom=50)

    assert darkness_at(shadow, 200, 300) == pytest.approx(darkness_at(shadow, 800, 1700))
    assert shadow.low == pytest.approx((-MARGIN, -MARGIN))


def test_what_hangs_higher_leaves_a_wider_and_fainter_shadow() -> None:
    low, high = shadow_of_box(bottom=20), shadow_of_box(bottom=600)

    assert darkness_at(high, 500, 1000) < darkness_at(low, 500, 1000)
    assert darkness_at(high, -200, 1000) > darkness_at(low, -200, 1000)
