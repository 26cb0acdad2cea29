"""An axis of lengths has its marks where a tape has them, and room for every number."""

import pytest
from PySide6.QtGui import QFontMetrics
from PySide6.QtWidgets import QApplication

from app.panes.length_axis import LengthAxis
from model.units import INCH


def marks(axis: LengthAxis, low: float, high: float, size: float) -> list[float]:
    ((step, _),) = axis.tickSpacing(low, high, size)
    return [k * step for k in range(int(high / step) + 1)]


@pytest.mark.parametrize("size", [120, 200, 300, 640])
@pytest.mark.parametrize("unit", ["mm", "inch"])
@pytest.mark.parametrize("high", [0.4, 3.0, 1546.0, 2100.0])
def test_numbers_never_touch(qapp: QApplication, unit: str, high: float, size: float) -> None:
    axis = LengthAxis("bottom")
    axis.show_unit(unit)

    places = marks(axis, 0.0, high, size)

    said = axis.tickStrings(places, 1.0, 1.0)
    apart = (places[1] - places[0]) / high * size if len(places) > 1 else size
    assert max(QFontMetrics(axis.font()).horizontalAdvance(each) for each in said) < apart


def test_inches_are_marked_by_fractions_that_a_tape_has(qapp: QApplication) -> None:
    axis = LengthAxis("left")
    axis.show_unit("inch")

    said = axis.tickStrings(marks(axis, 0.0, 8.0, 150.0), 1.0, 1.0)

    assert said == ['0"', '1/16"', '1/8"', '3/16"', '1/4"', '5/16"']


def test_millimetres_are_marked_by_tens(qapp: QApplication) -> None:
    axis = LengthAxis("bottom")
    axis.show_unit("mm")

    said = axis.tickStrings(marks(axis, 0.0, 1600.0, 300.0), 1.0, 1.0)

    assert said == ["0 mm", "500 mm", "1000 mm", "1500 mm"]


def test_a_long_bed_is_marked_by_feet(qapp: QApplication) -> None:
    axis = LengthAxis("bottom")
    axis.show_unit("inch")

    ((step, _),) = axis.tickSpacing(0.0, 84 * INCH, 480.0)

    assert step == 12 * INCH
