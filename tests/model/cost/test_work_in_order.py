"""What the work order lists takes hours: no batch of it is in no kind of work."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from typing import get_args

import pytest

from model import designs
from model.bed import Bed, solve
from model.cost.costing import Taken, taken
from model.cost.tables import operations
from model.cost.work_on_parts import KINDS
from model.cutting.order import setting_changes
from model.cutting.record import Region
from model.shop.order.build import work_order
from model.shop.order.operations import KNOWN
from model.shop.order.record import Way
from model.shop.plans import CutPlan, first_plans
from model.stock.rows import NO_STOCK, SoldSize
from tests.model.cost.beds import DEMOS, FOLDER, bed_of
from tests.model.cost.plain_plans import plain_plans

LOFT, QUEEN = "loft_single", "painted_storage_queen"

# In which kinds of work the lines of a batch can be, by how it is made; slots by what they are.
KINDS_OF_WAY: dict[Way, set[str]] = {
    "saw": {"cut_boards", "cut_sheets"}, "joint": {"mill", "joint_edges"}, "plane": {"mill"},
    "width": {"to_size"}, "length": {"to_size"}, "glue": {"glue_up"}, "taper": {"tapers"},
    "slot": {"grooves", "tenons", "mortises", "corners", "vents"}, "hole": {"holes"},
    "pocket": {"holes"}, "ease": {"eased_edges"}, "sand": {"sanding"},
}  # fmt: skip
HOLES = {
    "pocket hole", "dowel hole", "counterbore", "nut hole", "bolt hole", "shank hole", "pull hole",
    "pilot hole",
}  # fmt: skip


@cache
def as_shipped(name: str) -> tuple[Bed, tuple[CutPlan, ...], Taken]:
    """A demo with its own boards, and plans as they are found."""
    bed = solve(designs.read(FOLDER / f"{name}.bedwright"))
    plans = first_plans(bed)
    return bed, plans, taken(bed, plans)


def counted(taken: Taken) -> dict[str, float]:
    """Quantities by key; `sanding` for all grits, whatever they are."""
    found = {each.key: each.quantity for each in taken.work}
    return found | {each.partition("/")[0]: 1.0 for each in found if "/" in each}


def test_every_way_to_make_a_batch_is_a_kind_of_work() -> None:
    assert set(KINDS_OF_WAY) == set(get_args(Way))
    assert set().union(*KINDS_OF_WAY.values()) <= set(operations())


def test_every_cut_and_hole_that_the_order_knows_is_a_kind_of_work() -> None:
    assert set(KNOWN) == KINDS | HOLES


@pytest.mark.parametrize("name", DEMOS)
def test_no_batch_of_the_order_is_left_out_of_the_hours(name: str) -> None:
    bed, plans, takes = as_shipped(name)
    hours = counted(takes)

    for batch in work_order(bed, plans).batches:
        assert KINDS_OF_WAY[batch.way] & set(hours), batch.operation


def test_the_loft_by_hand() -> None:
    """Planed boards 90 and 40 mm wide: an upper rail, 9 open slats, 2 cleats and 15 slats are
    ripped to 89 and 38 mm. 4 posts, 3 rails at the ends, 2 side rails and these are 35 parts, each
    squared and cut at a stop. The posts taper.
    """
    takes = counted(as_shipped(LOFT)[2])

    assert takes["to_size"] == (1 + 9 + 2 + 15) + 2 * (4 + 2 + 2 + 1 + 9 + 2 + 15)
    assert takes["tapers"] == 4
    assert takes["spacers"] == 2  # two slats, two spacers between them
    assert not {"mill", "joint_edges", "cut_sheets", "glue_up"} & set(takes)


def test_settings_of_the_loft_by_hand() -> None:
    """The saw for rough lengths, widths of 89 and 38 mm, six lengths, a taper, a round-over; the
    cheeks of a tenon and its mortise, and a setting for each size and place of hole.
    """
    bed, plans, takes = as_shipped(LOFT)
    marks = {mark.mark: mark for mark in bed.marks}
    lengths = {float(mark.length) for mark in marks.values()}
    joints = [b for b in work_order(bed, plans).batches if b.way in ("slot", "hole", "pocket")]

    saw = sum(setting_changes(each.plan) for each in plans)

    assert len(lengths) == 6
    assert counted(takes)["settings"] == saw + 2 + len(lengths) + 2 + len(joints)


def test_planed_boards_that_are_ripped_are_jointed_along_an_edge() -> None:
    """Boards of 30 x 300 mm for all rails, slats and cleats of the loft: nothing is as wide."""
    bed = bed_of(LOFT, boards_from="sold sizes")
    boards = tuple(
        SoldSize(
            material="european_beech", thickness=thick, length=2400.0, width=300.0, planed=True
        )
        for thick in (20.0, 30.0, 65.0)
    )
    bed = solve(replace(bed.design, stock=replace(NO_STOCK, sold=boards)))
    metres = sum(float(mark.length + 25.0) * mark.quantity for mark in bed.marks) / 1000

    takes = counted(taken(bed, plain_plans(bed)))

    assert takes["joint_edges"] == pytest.approx(metres, abs=0.005)
    assert "mill" not in takes
    assert takes["to_size"] == 3 * 35


def test_what_is_cut_apart_after_milling_is_not_counted_at_the_rough_saw_too() -> None:
    _, plans, takes = as_shipped(QUEEN)

    made = sum(cuts(layout.tree) for each in plans for layout in each.plan.layouts)
    later = sum(
        region.cut is not None
        for each in plans for layout in each.plan.layouts for region in layout.tree.all()
    ) - made  # fmt: skip

    assert later > 0
    assert counted(takes)["cut_boards"] + counted(takes)["cut_sheets"] == made


def cuts(region: Region) -> int:
    """Cuts before anything is milled."""
    if region.cut is None or region.stays_whole:
        return 0
    return 1 + sum(cuts(side) for side in (region.low, region.high) if side is not None)
