"""Whatever bed is built, all of it is sawn: once, large enough, and from the right stock."""

from __future__ import annotations

from collections import Counter

import pytest

from model.bed import Bed
from model.shop.cut_list import cut_list
from model.shop.plans import first_plans
from model.shop.tasks import tasks
from model.shop.together import together, too_short
from tests.checkers.plans import faults
from tests.properties.conftest import Drawn

CLOSER = 16  # beds whose plans are looked at cut by cut


def test_every_part_is_on_the_cut_list_once(drawn: Drawn) -> None:
    for bed in drawn.beds:
        assert [piece.mark for piece in cut_list(bed)] == [mark.mark for mark in bed.marks]
        names = [piece.name for piece in cut_list(bed)]
        assert len(names) == len(set(names))


def test_what_is_sawn_holds_what_is_milled(drawn: Drawn) -> None:
    for bed in drawn.beds:
        marks = {mark.mark: mark for mark in bed.marks}
        for piece in cut_list(bed):
            mark, rough, milled = marks[piece.mark], piece.rough, piece.finished
            assert rough.length >= milled.length == pytest.approx(mark.length, abs=1e-6)
            assert rough.width >= milled.width
            assert rough.thickness >= milled.thickness - 1e-6
            assert milled.width * piece.strips >= mark.width - 1e-6
            over = milled.thickness - mark.thickness / piece.layers
            if piece.strips == 1 or piece.source is None or piece.source.is_planed:
                assert over == pytest.approx(0.0, abs=1e-6)
            else:  # a panel is planed flat: 1.5 mm, and up to a step of the tape, 1/16 in
                assert 1.5 - 1e-6 <= over <= 1.5 + 25.4 / 16
            assert piece.quantity == mark.quantity * piece.layers * piece.strips


def test_strips_are_no_wider_than_board_and_maker_allow(drawn: Drawn) -> None:
    for bed in drawn.beds:
        grid = bed["grid"].step
        for piece in cut_list(bed):
            if piece.source is not None:
                assert piece.rough.width <= piece.source.widest + grid
            if piece.strips > 1:
                assert piece.finished.width <= bed["widest_strip"] + grid


def test_every_piece_is_asked_for_once(drawn: Drawn) -> None:
    for bed in drawn.beds[:CLOSER]:
        asked = Counter(
            (piece.mark, piece.first + n)
            for task in tasks(bed)
            for piece in task.task.pieces
            for n in range(piece.quantity)
        )
        assert asked == Counter(
            (piece.name, n) for piece in cut_list(bed) for n in range(1, piece.quantity + 1)
        )


def test_short_parts_that_stay_together_are_long_enough(drawn: Drawn) -> None:
    for bed in drawn.beds:
        shortest = bed["shortest_milled"]
        for strip in together(bed, cut_list(bed)):
            if any(too_short(member.piece, shortest) for member in strip.members):
                assert strip.stays_whole


def test_the_first_plans_of_a_bed_can_be_sawn(drawn: Drawn) -> None:
    """Checked cut by cut by a reader that knows no planner."""
    for bed in drawn.beds[:CLOSER]:
        for cut in first_plans(bed):
            assert faults(cut.plan) == [], (bed.design.name, cut.key)
            for left in cut.plan.left_out:
                assert left.sentence.endswith(".")


def test_most_beds_are_sawn_whole(drawn: Drawn) -> None:
    """Leaving everything out would pass the test above."""
    left = sum(_left_out(bed) for bed in drawn.beds[:CLOSER])
    wanted = sum(piece.quantity for bed in drawn.beds[:CLOSER] for piece in cut_list(bed))

    assert left <= 0.02 * wanted


def _left_out(bed: Bed) -> int:
    return sum(each.quantity for cut in first_plans(bed) for each in cut.plan.left_out)
