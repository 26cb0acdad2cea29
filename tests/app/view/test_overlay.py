import numpy as np
import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QImage, QPainter
from PySide6.QtWidgets import QApplication

from app.view.camera import Picture
from app.view.dimension_lines import Dimension3D
from app.view.line_choice import Drawn
from app.view.overlay import DimensionPainter

PICTURE = Picture(1000, 700)


def drawn(x0: float, y0: float, x1: float, y1: float, name: str = "bed_width") -> Drawn:
    line = np.array(((x0, y0), (x1, y1)), float)
    return Drawn(Dimension3D((0, 0, 0), (1, 0, 0), name, 695.0), line, line + (0, 30))


@pytest.fixture
def painted(qapp: QApplication) -> tuple[QImage, QPainter]:
    image = QImage(*PICTURE, QImage.Format.Format_RGB32)
    image.fill(Qt.GlobalColor.gray)
    return image, QPainter(image)


def plates_of(painted: tuple[QImage, QPainter], *lines: Drawn) -> dict[str, tuple[float, ...]]:
    _, painter = painted
    plates = DimensionPainter(painter, PICTURE).paint(lines, "{:.0f} mm".format)
    painter.end()
    return {name: plate.getRect() for plate, name in plates}


def test_the_number_lies_in_the_middle_of_its_line(painted: tuple[QImage, QPainter]) -> None:
    x, y, wide, high = plates_of(painted, drawn(200, 300, 700, 300))["bed_width"]

    # 1 px: plates lie on whole pixels
    assert (x + wide / 2, y + high / 2) == pytest.approx((450, 300), abs=1)


def test_a_short_line_has_its_number_beyond_its_end(painted: tuple[QImage, QPainter]) -> None:
    x, _, wide, _ = plates_of(painted, drawn(300, 300, 310, 300))["bed_width"]

    assert x > 310


def test_no_number_covers_another(painted: tuple[QImage, QPainter]) -> None:
    lines = [drawn(200, 300 + 3 * k, 700, 310 + 3 * k, f"line {k}") for k in range(5)]

    rects = list(plates_of(painted, *lines).values())

    assert len(rects) > 2
    for k, (x, y, wide, high) in enumerate(rects):
        for a, b, c, d in rects[:k]:
            assert x >= a + c or a >= x + wide or y >= b + d or b >= y + high


def test_a_number_that_would_leave_the_picture_is_left_out(
    painted: tuple[QImage, QPainter],
) -> None:
    assert plates_of(painted, drawn(-500, 300, -100, 300)) == {}


def test_the_picture_shows_the_line_and_its_plate(painted: tuple[QImage, QPainter]) -> None:
    image, _ = painted

    lines = drawn(200, 300.5, 700, 300.5)  # through the middle of pixels
    x, y, _, high = plates_of(painted, lines)["bed_width"]

    assert image.pixelColor(300, 300).lightness() < 100  # the line, in ink
    assert image.pixelColor(round(x + 3), round(y + high / 2)).lightness() > 220  # the plate
    assert image.pixelColor(450, 400) == Qt.GlobalColor.gray
