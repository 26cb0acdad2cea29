"""What of the pieces that are already cut still serves when the design has changed.

A piece serves where material, finished size and all that is cut into it are as now drawn.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import NamedTuple

from model.bed import Bed
from model.parts.marks import Mark
from model.shop.cut_list import CutPiece, cut_list
from model.shop.order.finish import finishing
from model.shop.order.joinery import joinery
from model.shop.order.record import Batch, Line
from model.shop.order.who import identities
from model.shop.tracking_need import Need, finished
from model.shop.tracking_need import needs as needs_of
from model.shop.tracking_parts import SAME, Done, work_of
from model.shop.tracking_recut import Recut, recuts
from model.shop.tracking_words import why
from model.stock.progress import CutPart


class Serves(NamedTuple):
    """A piece that is cut, and what it is now."""

    part: CutPart
    mark: str
    piece: int

    @property
    def is_moved(self) -> bool:
        """Whether it is now called something else."""
        return (self.part.mark, self.part.piece) != (self.mark, self.piece)


class Unfit(NamedTuple):
    """A piece that is cut and serves nowhere as it is, and why."""

    part: CutPart
    sentence: str


class Anew(NamedTuple):
    """Pieces that must be cut from stock."""

    mark: str
    quantity: int


@dataclass(frozen=True, kw_only=True)
class Fit:
    """All pieces that are cut, held against the bed as it is now drawn."""

    serves: tuple[Serves, ...] = ()
    unfit: tuple[Unfit, ...] = ()
    recuts: tuple[Recut, ...] = ()
    anew: tuple[Anew, ...] = ()

    @property
    def is_clean(self) -> bool:
        """Whether every piece that is cut serves as it was meant."""
        return not self.unfit and not any(each.is_moved for each in self.serves)

    @cached_property
    def taken(self) -> frozenset[tuple[str, int]]:
        """Marks and numbers of the pieces that need not be cut any more."""
        return frozenset((each.mark, each.piece) for each in self.serves)


def fit(bed: Bed, parts: Sequence[CutPart]) -> Fit:
    """What serves, what does not and why, what can be recut from what, what is cut anew."""
    pieces = cut_list(bed)
    needs = list(needs_of(bed, pieces))
    judge = _Judge(bed)
    serves = _served(parts, needs, judge)
    held = {id(each.part) for each in serves}
    taken = {(each.mark, each.piece) for each in serves}
    over = [part for part in parts if id(part) not in held]
    open_needs = _open(needs, taken, pieces)
    wholes = [need for need in needs if need.whole and (need.mark, need.piece) not in taken]
    unit = bed.design.value("shown_unit")
    unfit = tuple(Unfit(part, why(part, needs, judge.has_its_work, unit)) for part in over)
    return Fit(
        serves=tuple(serves),
        unfit=unfit,
        recuts=tuple(recuts(over, [*open_needs, *wholes], unit)),
        anew=_anew(open_needs),
    )


# ---------------------------------------------------------------- what serves


class _Judge:
    """Whether a piece, with all that is cut into it, is a part as now drawn."""

    def __init__(self, bed: Bed) -> None:
        self._bed = bed
        self._marks = {mark.mark: mark for mark in bed.marks}

    @cached_property
    def _lines(self) -> Mapping[str, Done]:
        who = identities(self._bed.marks)
        found: dict[str, list[tuple[Batch, Line]]] = {}
        for batch in (*joinery(self._bed, who), *finishing(self._bed, who)):
            for line in batch.lines:
                found.setdefault(line.mark, []).append((batch, line))
        return {mark: tuple(pairs) for mark, pairs in found.items()}

    def has_its_work(self, part: CutPart, need: Need) -> bool:
        """Whether what is cut into it is what this part takes."""
        if not part.work:
            return True
        mark: Mark = self._marks[need.of]
        return work_of(part.steps, mark, self._lines.get(need.of, ())) == part.work


def _served(parts: Sequence[CutPart], needs: Sequence[Need], judge: _Judge) -> list[Serves]:
    """Each piece under its own mark where it can be, else under another of the same name."""
    free = dict.fromkeys(needs)
    found: dict[int, Serves] = {}
    for is_near in (_same_place, _same_mark, _same_name, _anywhere):
        for k, part in enumerate(parts):
            if k in found:
                continue
            need = next((n for n in free if is_near(part, n) and _is(part, n, judge)), None)
            if need is not None:
                del free[need]
                found[k] = Serves(part, need.mark, need.piece)
    return [found[k] for k in sorted(found)]


def _is(part: CutPart, need: Need, judge: _Judge) -> bool:
    return (
        part.material == need.material
        and all(abs(a - b) <= SAME for a, b in zip(finished(part), need.size, strict=True))
        and judge.has_its_work(part, need)
    )


def _same_place(part: CutPart, need: Need) -> bool:
    return part.name == need.name and (part.mark, part.piece) == (need.mark, need.piece)


def _same_mark(part: CutPart, need: Need) -> bool:
    return part.name == need.name and part.mark == need.mark


def _same_name(part: CutPart, need: Need) -> bool:
    return part.name == need.name


def _anywhere(part: CutPart, need: Need) -> bool:
    return True


# ---------------------------------------------------------------- what is open


def _open(
    needs: Sequence[Need], taken: set[tuple[str, int]], pieces: Iterable[CutPiece]
) -> list[Need]:
    """What no piece serves for: single pieces, but for those of parts that are glued already."""
    glued = {piece.name: piece for piece in pieces if piece.is_glued}
    wholes = {(need.of, need.piece) for need in needs if need.whole}
    found = []
    for need in needs:
        if need.whole or (need.mark, need.piece) in taken:
            continue
        piece = glued.get(need.mark)
        if piece is not None:
            whole = (need.of, (need.piece - 1) // piece.for_each + 1)
            if whole in wholes and whole in taken:
                continue
        found.append(need)
    return found


def _anew(needs: Iterable[Need]) -> tuple[Anew, ...]:
    counted: dict[str, int] = {}
    for need in needs:
        counted[need.mark] = counted.get(need.mark, 0) + 1
    return tuple(Anew(mark, quantity) for mark, quantity in counted.items())
