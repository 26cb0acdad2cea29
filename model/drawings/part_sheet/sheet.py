"""The drawing of one mark for a given room: at the largest scale that fits."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from model.drawings.dimensioning.told import Told
from model.drawings.paper import Drawing, Measure, Text
from model.drawings.part_sheet.arrange import arrangements
from model.drawings.part_sheet.block import Block
from model.drawings.part_sheet.blocks import LIMITS, Blocks
from model.drawings.part_sheet.remarks import remarks
from model.drawings.scales import scales
from model.parts.marks import Mark
from model.units import Mm, Share

SHORTEST: Mm = 40.0  # on paper, of the longer side of the main view: a smaller one is a blot
_HAIR: Mm = 1e-6


@dataclass(frozen=True, kw_only=True)
class PartSheet:
    """The drawing of a mark, its lower left corner at (0, 0), as large as what is on it.

    `told` are all the words on it; its scale is that of its long views. It is no larger than the
    room that was given, unless `fits` is False: then it is as low as can be.
    """

    drawing: Drawing
    told: tuple[str, ...]
    fits: bool


def part_sheet(
    mark: Mark, told: Told, width: Mm, height: Mm, is_third_angle: bool | None = None
) -> PartSheet:
    """The drawing of a mark for a room on paper, at the largest scale that fits in it.

    Views are rolled in third-angle projection where None is said and the unit is the inch, else in
    first-angle.
    """
    third = told.unit == "inch" if is_third_angle is None else is_third_angle
    tried: list[tuple[Block, Share]] = []
    for block, scale in _tries(mark, told, width, third):
        if block.width <= width + _HAIR and block.height <= height + _HAIR:
            return _sheet(block, scale, mark, fits=True)
        tried.append((block, scale))
    if not tried:
        raise ValueError(f"{mark.mark} is too long for a room of {width:.0f} mm at any scale")
    lowest = min(tried, key=lambda each: (max(each[0].width - width, 0.0), each[0].height))
    return _sheet(*lowest, mark, fits=False)


def _tries(mark: Mark, told: Told, width: Mm, third: bool) -> Iterator[tuple[Block, Share]]:
    """The drawing at ever smaller scales, its sections first large and then small."""
    blocks = Blocks(mark.part, told, third)
    said = remarks(mark.part, told)
    length, longest = mark.part.size[0], max(mark.part.size)
    for k, scale in enumerate(each for each in scales(told.unit) if length * each <= width):
        if k and longest * scale < SHORTEST:
            return
        views = blocks.views(scale, width)
        for limit in LIMITS:
            for block in arrangements(views, blocks.sections(scale, limit), said, width):
                yield block, scale


def _sheet(block: Block, scale: Share, mark: Mark, *, fits: bool) -> PartSheet:
    placed = block.with_corner(0.0, 0.0)
    items = placed.items
    drawing = Drawing(
        width=placed.width, height=placed.height, scale=scale, items=items,
        title=f"{mark.mark} {mark.name}",
    )  # fmt: skip
    told = tuple(item.words for item in items if isinstance(item, (Text, Measure)))
    return PartSheet(drawing=drawing, told=told, fits=fits)
