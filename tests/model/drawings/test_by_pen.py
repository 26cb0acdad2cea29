"""Lines that one pen draws in a row come as one step, in their place among all else."""

from __future__ import annotations

from model.cutting.record import Box
from model.drawings.by_pen import Lines, by_pen
from model.drawings.hatching import hatch_strokes
from model.drawings.measures import measure_ink
from model.drawings.paper import Area, Fill, Hatch, Measure, Ring, Stroke, Text

SQUARE = ((0.0, 0.0), (20.0, 0.0), (20.0, 10.0), (0.0, 10.0))
ONE, OTHER = Stroke(SQUARE[:2]), Stroke(SQUARE[1:3])


def test_strokes_of_one_pen_are_one_step_until_something_lies_on_them() -> None:
    ground = Fill(SQUARE, 0.2)

    assert list(by_pen([ONE, OTHER, ground, ONE])) == [
        Lines("narrow", (ONE.points, OTHER.points)), ground, Lines("narrow", (ONE.points,)),
    ]  # fmt: skip


def test_another_pen_is_another_step_and_hatches_are_fine_lines() -> None:
    hatch, fine = Hatch(SQUARE, 3.0), Stroke(SQUARE, "fine")

    assert list(by_pen([ONE, hatch, fine])) == [
        Lines("narrow", (ONE.points,)),
        Lines("fine", (*hatch_strokes(hatch), SQUARE)),
    ]


def test_what_leaves_no_ink_is_left_out_and_dimensions_come_as_their_ink() -> None:
    size = Measure((0.0, 0.0), (20.0, 0.0), -5.0, False, "20", 20.0)
    words = [item for item in measure_ink(size) if isinstance(item, Text)]
    ring = Ring((1.0, 1.0), 2.0)

    steps = list(by_pen([Area(Box(0, 0, 20, 10), "B1"), size, ring]))

    assert [step for step in steps if isinstance(step, Text)] == words and words
    assert steps[-1] == ring and isinstance(steps[0], Lines)
    assert not any(isinstance(step, Area | Measure) for step in steps)
