"""Plans made by hand, as the pane gets them."""

from __future__ import annotations

from model.drawings.cut_names import CutNames
from model.drawings.cut_steps import SawnPlan, sawn_plan
from tests.model.drawings.sample_layout import cut_plan, sheet, small_sheet

PLY, THIN = "ply-18", "ply-6"
NAMES = CutNames()


def plans(unit: str = "mm") -> tuple[SawnPlan, ...]:
    """Three small sheets of one material, and a crowded one of another that is not proven."""
    first = cut_plan(*(small_sheet(n) for n in (1, 2, 3)))
    other = cut_plan(sheet(1), sheet(2), key=THIN, lower_bound=1.0)
    return sawn_plan(first, unit), sawn_plan(other, unit)
