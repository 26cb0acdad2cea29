"""What a step of the work order does to the pieces on record, and how it is undone."""

from __future__ import annotations

from dataclasses import replace

from model.bed import Bed
from model.parts.marks import Mark
from model.shop.cut_list import CutPiece, cut_list
from model.shop.order.record import Batch, Line, WorkOrder
from model.shop.tracking_cuts import cuts
from model.shop.tracking_parts import (
    glued,
    is_of,
    is_whole_of,
    numbers,
    sawn,
    with_step,
    without_step,
)
from model.stock.progress import CutPart, Progress

Parts = tuple[CutPart, ...]


class Bench:
    """The records of the pieces, while a step is done to those of one line or undone."""

    def __init__(self, bed: Bed, order: WorkOrder, progress: Progress) -> None:
        self._pieces = cut_list(bed)
        self._marks = {mark.mark: mark for mark in bed.marks}
        self._order = order
        self._progress = progress

    def parts_after(self, batch: Batch, line: Line, is_done: bool) -> Parts:
        """All records, those of the line's mark as they are after it."""
        piece = next(each for each in self._pieces if line.mark in (each.name, each.mark))
        mark = self._marks[piece.mark]
        is_whole = piece.is_glued and line.mark == piece.mark
        if batch.way == "glue" and self._is_last_glue(batch, line):
            return self._together(piece, mark, line) if is_done else self._apart(piece, mark, line)
        kept, own = self._sorted_out(piece, mark, is_whole)
        if is_done:
            own = self._all(piece, mark, is_whole, own)
        done = self._order.of(piece.mark)
        if is_done:
            after = [with_step(part, batch, line, mark, done) for part in own]
        else:
            fresh = glued(piece, mark, 1) if is_whole else sawn(piece, 1, "")
            after = [without_step(part, batch, line, mark, done, fresh) for part in own]
            after = [part for part in after if part.cut or part.steps]
        return (*kept, *after)

    def _sorted_out(
        self, piece: CutPiece, mark: Mark, is_whole: bool
    ) -> tuple[list[CutPart], list[CutPart]]:
        """Records of other pieces, and those of these."""
        kept: list[CutPart] = []
        own: list[CutPart] = []
        for part in self._progress.parts:
            is_own = is_whole_of(part, piece, mark) if is_whole else is_of(part, piece)
            (own if is_own else kept).append(part)
        return kept, own

    def _all(
        self, piece: CutPiece, mark: Mark, is_whole: bool, own: list[CutPart]
    ) -> list[CutPart]:
        """One record for each piece: whoever planes a part has sawn it."""
        known = {part.piece for part in own}
        new = [n for n in numbers(piece, is_whole) if n not in known]
        made = [glued(piece, mark, n) if is_whole else sawn(piece, n, "") for n in new]
        return [*own, *made]

    def _is_last_glue(self, batch: Batch, line: Line) -> bool:
        """Strips are glued before layers; only the last makes the part."""
        all_glue = [each for each, own in self._order.of(line.mark) if each.way == "glue"]
        return not all_glue or all_glue[-1] is batch

    def _together(self, piece: CutPiece, mark: Mark, line: Line) -> Parts:
        """The layers or strips of each part become one piece."""
        kept, loose = self._sorted_out(piece, mark, False)
        kept = [part for part in kept if not is_whole_of(part, piece, mark)]
        by_number = {part.piece: part for part in loose}
        made = []
        for number in numbers(piece, True):
            first = (number - 1) * piece.for_each + 1
            own = [by_number.get(n) for n in range(first, first + piece.for_each)]
            before = [part for part in own if part is not None]
            steps = dict.fromkeys(key for part in before for key in part.steps)
            cut = next((part.cut for part in before if part.cut), "")
            whole = glued(piece, mark, number)
            made.append(replace(whole, steps=(*steps, line.key), cut=cut))
        return (*kept, *made)

    def _apart(self, piece: CutPiece, mark: Mark, line: Line) -> Parts:
        """The glue-up was ticked by mistake: layers and strips lie there again."""
        kept, wholes = self._sorted_out(piece, mark, True)
        lines = [each for each in self._order.of(piece.name) if each[1].mark == piece.name]
        made = []
        for whole in wholes:
            first = (whole.piece - 1) * piece.for_each + 1
            for number in range(first, first + piece.for_each):
                part = sawn(piece, number, self._freed_by(piece.name, number))
                for batch, own in lines:
                    if own.key in whole.steps:
                        part = with_step(part, batch, own, mark, ())
                made.append(part)
        return (*kept, *(part for part in made if part.cut or part.steps))

    def _freed_by(self, name: str, number: int) -> str:
        """The ticked cut that freed a piece, or nothing."""
        for plan in self._progress.plans:
            for key, cut in cuts(plan).items():
                if key in self._progress.cuts_done and any(
                    (placed.mark, placed.piece) == (name, number) for placed in cut.frees
                ):
                    return key
        return ""
