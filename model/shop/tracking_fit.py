"""What of the pieces that are already cut still serves when the design has changed.

A piece serves where material, finished size and all that is cut into it are as now drawn; one that
is larger, and that no joint was cut into, can be cut down to another part of the same material and
thickness. Which becomes which is chosen for the most parts, then the least waste.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from typing import NamedTuple

import numpy as np
from scipy.optimize import linear_sum_assignment

from model.bed import Bed
from model.parts.marks import Mark
from model.shop.cut_list import CutPiece, cut_list
from model.shop.order.finish import finishing
from model.shop.order.joinery import joinery
from model.shop.order.record import Batch, Line
from model.shop.order.who import identities
from model.shop.tracking_parts import SAME, Done, work_of
from model.stock.progress import CutPart
from model.units import Mm, show_length

_SIDES = ("length", "width", "thickness")


class Need(NamedTuple):
    """One piece that the bed takes: `mark` and `piece` as it is chalked, a glued part as a whole
    included. `layers` and `strips` of a whole are what it is made of.
    """

    mark: str
    piece: int
    name: str
    material: str
    size: tuple[Mm, Mm, Mm]
    rough: tuple[Mm, Mm, Mm]
    grain: str
    of: str  # the mark in the parts list
    whole: bool


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


class Recut(NamedTuple):
    """A piece that no longer fits, and the part that it can be cut down to."""

    part: CutPart
    need: Need
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
    needs = list(_needs(bed, pieces))
    judge = _Judge(bed)
    serves = _served(parts, needs, judge)
    held = {id(each.part) for each in serves}
    taken = {(each.mark, each.piece) for each in serves}
    over = [part for part in parts if id(part) not in held]
    open_needs = _open(needs, taken, pieces)
    unit = bed.design.value("shown_unit")
    unfit = tuple(Unfit(part, _why(part, needs, judge, unit)) for part in over)
    recuts = tuple(_recuts(over, open_needs, unit))
    return Fit(serves=tuple(serves), unfit=unfit, recuts=recuts, anew=_anew(open_needs))


def _needs(bed: Bed, pieces: Iterable[CutPiece]) -> Iterator[Need]:
    marks = {mark.mark: mark for mark in bed.marks}
    for piece in pieces:
        mark = marks[piece.mark]
        size, rough = _sides(piece.finished), _sides(piece.rough)
        for number in range(1, piece.quantity + 1):
            yield Need(
                piece.name, number, piece.part, piece.material.key, size, rough, piece.grain,
                mark.mark, False,
            )  # fmt: skip
        if piece.is_glued:
            whole = (float(mark.length), float(mark.width), float(mark.thickness))
            for number in range(1, mark.quantity + 1):
                yield Need(
                    mark.mark, number, piece.part, piece.material.key, whole, whole, piece.grain,
                    mark.mark, True,
                )  # fmt: skip


def _sides(size: object) -> tuple[Mm, Mm, Mm]:
    length, width, thickness = (float(getattr(size, side)) for side in _SIDES)
    return (length, width, thickness)


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
        and all(abs(a - b) <= SAME for a, b in zip(_finished(part), need.size, strict=True))
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


def _finished(part: CutPart) -> tuple[Mm, Mm, Mm]:
    return (part.length, part.width, part.thickness)


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


# ---------------------------------------------------------------- what can be recut


def _recuts(parts: Sequence[CutPart], needs: Sequence[Need], unit: str) -> Iterator[Recut]:
    """The most parts, then the least waste: an assignment, each piece to one part at most."""
    if not parts or not needs:
        return
    waste = np.array([[_waste(part, need) for need in needs] for part in parts])
    fits = np.isfinite(waste)
    if not fits.any():
        return
    none = 1.0 + waste[fits].max() * min(waste.shape)  # dearer than any waste: most parts first
    rows, columns = linear_sum_assignment(np.where(fits, waste, none))
    for row, column in zip(rows.tolist(), columns.tolist(), strict=True):
        if fits[row, column]:
            yield Recut(parts[row], needs[column], _recut_sentence(parts[row], needs[column], unit))


def _waste(part: CutPart, need: Need) -> float:
    """The face of wood that is lost, mm2; infinite where the piece cannot become the part."""
    if part.material != need.material or part.work or need.whole:
        return np.inf
    have, wanted = present(part), _wanted(part, need)
    if abs(have[2] - wanted[2]) > SAME or min(have[0] - wanted[0], have[1] - wanted[1]) < -SAME:
        return np.inf
    return have[0] * have[1] - wanted[0] * wanted[1]


def present(part: CutPart) -> tuple[Mm, Mm, Mm]:
    """What a piece measures now."""
    rough = (part.rough_length, part.rough_width, part.rough_thickness)
    return tuple(r or f for r, f in zip(rough, _finished(part), strict=True))  # type: ignore[return-value]


def _wanted(part: CutPart, need: Need) -> tuple[Mm, Mm, Mm]:
    """What it must measure at this stage: with its allowance where it is still rough."""
    rough = (part.rough_length, part.rough_width, part.rough_thickness)
    sides = zip(rough, need.size, need.rough, strict=True)
    return tuple(more if is_rough else size for is_rough, size, more in sides)  # type: ignore[return-value]


def recut(part: CutPart, need: Need) -> CutPart:
    """The record of a piece that is to become another part: what is over is still to be cut off."""
    have = present(part)
    over = [h if h > size + SAME else 0.0 for h, size in zip(have, need.size, strict=True)]
    return replace(
        part,
        mark=need.mark,
        piece=need.piece,
        name=need.name,
        length=need.size[0],
        width=need.size[1],
        thickness=need.size[2],
        rough_length=over[0],
        rough_width=over[1],
        rough_thickness=over[2],
    )


# ---------------------------------------------------------------- sentences


def called(part: CutPart) -> str:
    """`H3-1 (end rail)`."""
    return f"{part.mark}-{part.piece} ({part.name})"


def _why(part: CutPart, needs: Sequence[Need], judge: _Judge, unit: str) -> str:
    own = [n for n in needs if n.name == part.name and n.material == part.material]
    if not own:
        named = [need for need in needs if need.name == part.name]
        if named:
            return f"{called(part)} was cut from another material than the bed now takes."
        return f"{called(part)} is no part of the bed any more."
    near = min(own, key=lambda need: (need.mark != part.mark, _distance(part, need), need.piece))
    if _distance(part, near) <= SAME:
        if judge.has_its_work(part, near):
            return f"{called(part)} is one more than the bed now takes."
        return f"The joints or holes of {called(part)} are now elsewhere."
    return (
        f"{called(part)} was cut as {_shown(_finished(part), unit)}; {near.name} {near.mark} "
        + (f"is now {_shown(near.size, unit)}: {_difference(part, near, unit)}.")
    )


def _distance(part: CutPart, need: Need) -> Mm:
    return max(abs(a - b) for a, b in zip(_finished(part), need.size, strict=True))


def _shown(size: Sequence[Mm], unit: str) -> str:
    return " x ".join(show_length(side, unit) for side in size)


def _difference(part: CutPart, need: Need, unit: str) -> str:
    words = (("longer", "shorter"), ("wider", "narrower"), ("thicker", "thinner"))
    told = []
    for (more, less), new, old in zip(words, need.size, _finished(part), strict=True):
        if abs(new - old) > SAME:
            told.append(f"{show_length(abs(new - old), unit)} {more if new > old else less}")
    return " and ".join(told)


def _recut_sentence(part: CutPart, need: Need, unit: str) -> str:
    have = _shown(present(part)[:2], unit)
    return (
        f"{called(part)}, {have} as it is, can be cut down to {need.mark}-{need.piece} "
        f"({need.name}), {_shown(_wanted(part, need)[:2], unit)}."
    )
