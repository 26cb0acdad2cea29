"""What could be planed down from offcuts of a thicker class is told where it is true, once each."""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

import pytest

from model.bed import Bed
from model.cutting.record import Box, Layout, Region, Stock
from model.exports import cutting_json
from model.shop.cut_list import CutPiece, cut_list
from model.shop.order.build import work_order
from model.shop.planed_down import planed_down
from model.shop.plans import CutPlan
from tests.model.shop.offcut_plans import (
    LONG,
    OTHER,
    THICK,
    THIN,
    WIDE,
    guest_room,
    leaving,
    plan_of,
)

SAID = "R1 and R2 could be planed down from what is left of 6/4: it leaves 323 mm x 159 mm."


def notes(
    bed: Bed, *plans: CutPlan, pieces: Sequence[CutPiece] | None = None, key: str = THIN
) -> tuple[str, ...]:
    """What is told of a class beside what its plan tells already."""
    found = planed_down(bed.design, cut_list(bed) if pieces is None else pieces, plans)
    before, after = (next(p for p in each if p.key == key).notes for each in (plans, found))
    assert after[: len(before)] == before
    return after[len(before) :]


def test_an_offcut_that_just_holds_all_pieces_is_told() -> None:
    bed = guest_room()
    assert bed.design.value("kerf") == pytest.approx(3.2)

    told = notes(bed, plan_of(bed, THIN), leaving(plan_of(bed, THICK), (LONG, WIDE)))

    assert told == (SAID,)


@pytest.mark.parametrize("size", [(LONG - 0.5, WIDE), (LONG, WIDE - 0.5)])
def test_an_offcut_a_little_too_small_is_not_told(size: tuple[float, float]) -> None:
    bed = guest_room()

    assert notes(bed, plan_of(bed, THIN), leaving(plan_of(bed, THICK), size)) == ()


def test_an_offcut_with_a_knot_in_the_way_is_not_told() -> None:
    bed = guest_room()
    knotty = leaving(plan_of(bed, THICK), (LONG, WIDE), bad=(Box(100, 100, 120, 120),))

    assert notes(bed, plan_of(bed, THIN), knotty) == ()


def test_an_offcut_too_short_for_the_planer_is_not_told() -> None:
    """The offcut is planed before it is cut, so it counts how long it is, not its strips."""
    bed = guest_room()
    thin, thick = plan_of(bed, THIN), leaving(plan_of(bed, THICK), (LONG, WIDE))
    design = bed.design.with_choices({"shortest_milled": 330.0})

    assert planed_down(design, cut_list(bed), (thin, thick)) == (thin, thick)


def test_boards_on_hand_need_no_offcut() -> None:
    bed = guest_room()
    thin = plan_of(bed, THIN)
    own = tuple(
        replace(each, stock=replace(each.stock, on_hand=True)) for each in thin.plan.layouts
    )
    thin = replace(thin, plan=replace(thin.plan, layouts=own))

    assert notes(bed, thin, leaving(plan_of(bed, THICK), (LONG, WIDE))) == ()


def test_much_thicker_boards_and_other_woods_are_not_planed_down() -> None:
    bed = guest_room()
    thin = plan_of(bed, THIN)
    posts = leaving(plan_of(bed, "european_oak-76.2"), (LONG, WIDE))
    beech = leaving(plan_of(bed, "european_beech-50.8"), (LONG, WIDE))
    thinner = leaving(plan_of(bed, OTHER), (LONG, WIDE))

    assert notes(bed, thin, posts, beech, thinner) == ()


def test_an_offcut_serves_one_class_only() -> None:
    """The same blocks once more, of thinner boards: one offcut for both, then two."""
    bed = guest_room()
    blocks = [piece for piece in cut_list(bed) if piece.task == THIN]
    again = [
        replace(piece, source=replace(piece.source, thickness=25.4))
        for piece in blocks
        if piece.source is not None
    ]
    thin = plan_of(bed, THIN)
    other = replace(thin, key=OTHER, thickness=25.4)
    pieces = [*cut_list(bed), *again]
    one, two = (leaving(plan_of(bed, THICK), *[(LONG, WIDE)] * count) for count in (1, 2))

    assert notes(bed, thin, other, one, pieces=pieces)
    assert notes(bed, thin, other, one, pieces=pieces, key=OTHER) == ()
    assert notes(bed, thin, other, two, pieces=pieces, key=OTHER)


def test_what_needs_no_boards_leaves_no_offcuts() -> None:
    """The blocks' own boards leave enough for others; but they are not bought."""
    bed = guest_room()
    thin = plan_of(bed, THIN)
    other = replace(thin, key=OTHER, thickness=25.4)
    with_offcut = replace(
        thin,
        plan=replace(
            thin.plan,
            layouts=(
                *thin.plan.layouts,
                Layout(
                    number=99,
                    stock=Stock(key="board 99", length=LONG, width=WIDE),
                    tree=Region(x=0, y=0, length=LONG, width=WIDE, use="offcut"),
                ),
            ),
        ),
    )
    thick = leaving(plan_of(bed, THICK), (LONG, WIDE))

    assert notes(bed, other, with_offcut, key=OTHER)
    assert notes(bed, with_offcut, other, thick, key=OTHER) == ()


def test_a_plan_that_the_maker_keeps_is_left_alone() -> None:
    bed = guest_room()
    kept = replace(plan_of(bed, THIN), is_stored=True)

    assert notes(bed, kept, leaving(plan_of(bed, THICK), (LONG, WIDE))) == ()


# ---------------------------------------------------------------- where it is read


def test_it_stands_on_the_work_order() -> None:
    bed = guest_room()
    plans = (plan_of(bed, THIN), leaving(plan_of(bed, THICK), (LONG, WIDE)))

    assert f"European oak, 31.75 mm: {SAID}" in work_order(bed, plans).notes


def test_it_stands_in_the_cutting_file(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    bed = guest_room()
    plans = (plan_of(bed, THIN), leaving(plan_of(bed, THICK), (LONG, WIDE)))
    monkeypatch.setattr(cutting_json, "plans", lambda bed: plans)
    monkeypatch.setattr(cutting_json, "lumber", lambda bed: ())

    cutting_json.write(bed, tmp_path / "cutting.json")

    thin, thick = json.loads((tmp_path / "cutting.json").read_bytes())["plans"]
    assert SAID in thin["notes"]
    assert SAID not in thick["notes"]
