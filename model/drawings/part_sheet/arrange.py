"""Where the blocks of a part's drawing go: views under views, sections beside or below them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from model.cutting.record import Box
from model.drawings.paper import Text
from model.drawings.part_sheet.block import Block
from model.units import Mm

BETWEEN: Mm = 7.0  # blocks
REMARK: Mm = 1.9  # height of the capitals of a remark
REMARK_ROW: Mm = 3.6


def arrangements(
    views: Sequence[Block], sections: Sequence[Block], remarks: Sequence[str], width: Mm
) -> Iterator[Block]:
    """Views in a column; sections at its right where all of them fit there, or in rows below."""
    column = _stacked(views)
    widest = max(block.width for block in sections)
    if column.width + 2 * BETWEEN + widest <= width:
        beside = _stacked(sections)
        x, y = column.box.x1 + 2 * BETWEEN, column.box.y1 - beside.height
        yield _with_remarks(Block.joined([column, beside.with_corner(x, y)]), remarks)
    yield _with_remarks(Block.joined([column, *_in_rows(sections, column, width)]), remarks)


def _stacked(blocks: Sequence[Block]) -> Block:
    """One below the other, their zeros in line."""
    placed: list[Block] = []
    y = 0.0
    for block in blocks:
        placed.append(block.at(0.0, y - block.box.y1))
        y = placed[-1].box.y0 - BETWEEN
    return Block.joined(placed)


def _in_rows(blocks: Sequence[Block], column: Block, width: Mm) -> Iterator[Block]:
    x, top = column.box.x0, column.box.y0 - BETWEEN
    lowest = top
    for block in blocks:
        if x > column.box.x0 and x + block.width > column.box.x0 + width:
            x, top = column.box.x0, lowest - BETWEEN
        here = block.with_corner(x, top - block.height)
        lowest = min(lowest, here.box.y0)
        x = here.box.x1 + 2 * BETWEEN
        yield here


def _with_remarks(block: Block, remarks: Sequence[str]) -> Block:
    """Lines below the drawing."""
    if not remarks:
        return block
    x, y = block.box.x0, block.box.y0 - BETWEEN + REMARK
    texts = [Text((x, y - k * REMARK_ROW), line, REMARK, "left") for k, line in enumerate(remarks)]
    lowest = texts[-1].at[1] - REMARK
    return Block.joined([block, Block.of(texts, Box(x, lowest, x, y))])
