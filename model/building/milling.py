"""The first steps: what the work order does at the machines, stage by stage."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence

from model.bed import Bed
from model.building.record import Step
from model.building.words import plural
from model.shop.cut_list import CutPiece, cut_list
from model.shop.order import say
from model.shop.order.build import work_order
from model.shop.order.record import STAGES, Batch, Stage

_WHY: dict[Stage, str] = {
    "mill": "Let the boards lie in the shop for a week, with air on all sides. Cut them rough as "
    "the board plans show, then mill all in one go: what is set once comes out alike.",
    "glue": "Glue up what is wider or thicker than the boards; trim it when the glue is hard.",
    "trim": "Cut everything to its finished size, each setting once.",
    "sheets": "Cut the sheets as the sheet plans show; measure their thickness before any groove "
    "is cut for them.",
    "joinery": "Cut all joints and holes, each setting once, after a test cut in waste of the same "
    "thickness.",
    "finish": "Ease edges and sand while parts are still single: inside corners are out of reach "
    "later.",
}


# What boards and sheets are sawn apart with; which of them a cut takes stands in the work order.
_SAWN: dict[Stage, str] = {
    "mill": "Saw the boards apart, as the board plans show: a setting for each size",
    "sheets": "Saw the sheets apart, as the sheet plans show: a setting for each size",
}
_SHEET_SAWS = (
    "guided saw, for whole sheets and what no fence guides",
    "table saw, rip fence",
    "table saw, crosscut sled with a stop",
)


def milling_steps(bed: Bed, chapter: str) -> Iterator[Step]:
    """A step for each stage of the work order that the bed has, in its order. The work order's own
    lines say which settings there are and which marks they are for; how boards and sheets are sawn
    apart is known when their plans are.
    """
    order, pieces = work_order(bed, ()), cut_list(bed)
    saws = {"mill": tuple(_board_saws(pieces)), "sheets": tuple(_sheet_saws(pieces))}
    aids = order.aids
    for stage, title in STAGES.items():
        batches = [batch for batch in order.batches if batch.stage == stage]
        sawn = saws.get(stage, ())
        if batches or sawn:
            yield Step(
                key="",
                chapter=chapter,
                title=title,
                sentences=(
                    *aids,
                    _WHY[stage],
                    *_kept_long(stage, order.batches),
                    f'This step is all that the work order lists under "{title}": each setting, '
                    "its marks, its test cut and its cautions stand there.",
                ),
                tools=tuple(dict.fromkeys((*sawn, *_machines(batches)))),
                settings=(*((f"{_SAWN[stage]}.",) if sawn else ()), *_settings(batches)),
            )
            aids = ()


def _kept_long(stage: Stage, batches: Sequence[Batch]) -> Iterator[str]:
    """Which parts are not cut to length with all others."""
    late = [b for b in batches if b.way == "length" and b.stage == "joinery"]
    if late and stage == "trim":
        marks = say.listed([line.mark for batch in late for line in batch.lines])
        yield f"But leave {marks} too long: they are cut to length when they are mortised."


def _machines(batches: Sequence[Batch]) -> Iterator[str]:
    yield from (batch.machine for batch in batches)
    if any("chisel" in said for batch in batches for said in batch.before):
        yield "chisel"


def _board_saws(pieces: Sequence[CutPiece]) -> Iterator[str]:
    """What boards are crosscut with, and ripped where they are not bought as wide as the part."""
    boards = [piece for piece in pieces if piece.source is not None]
    if boards:
        yield "crosscut or hand-held saw"
    if any(not piece.is_as_bought for piece in boards):
        yield "bandsaw, or table saw"


def _sheet_saws(pieces: Sequence[CutPiece]) -> Iterator[str]:
    if any(piece.source is None for piece in pieces):
        yield from _SHEET_SAWS


def _settings(batches: list[Batch]) -> Iterator[str]:
    """Glue-ups as they are; of all else how often a machine is set, for the figures stand in the
    work order.
    """
    for operation, count in Counter(batch.operation for batch in batches).items():
        own = [batch for batch in batches if batch.operation == operation]
        if own[0].way == "glue":
            yield from (f"{operation}: {batch.setting}." for batch in own)
        else:
            yield f"{operation}: {count} {plural('setting', count)}."
