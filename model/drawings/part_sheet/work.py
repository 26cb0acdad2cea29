"""All that is cut and drilled into one part, gathered as a maker does it and told in his words."""

from __future__ import annotations

from model.drawings.dimensioning.told import Told
from model.drawings.part_sheet.bores import hole_groups
from model.drawings.part_sheet.pairs import paired
from model.drawings.part_sheet.record import PartWork
from model.drawings.part_sheet.slots import cut_groups
from model.drawings.part_sheet.stubs import KINDS, stubs
from model.part import Cut, Part, Point


def part_work(part: Part, told: Told) -> PartWork:
    """The cuts and holes of a part as it is cut."""
    cuts = [_clipped(cut, part.size) for cut in part.cuts]
    plain = [cut for cut in cuts if cut.kind not in KINDS]
    groups = [*cut_groups(plain, part.size, told), *hole_groups(part, told)]
    left = stubs([cut for cut in cuts if cut.kind in KINDS], part.size)
    return PartWork(tuple(paired(groups, part.size)), tuple(left))


def _clipped(cut: Cut, size: Point) -> Cut:
    low = tuple(max(0.0, float(x)) for x in cut.low)
    high = tuple(min(float(side), float(x)) for side, x in zip(size, cut.high, strict=True))
    return cut._replace(low=low, high=high)  # type: ignore[arg-type]
