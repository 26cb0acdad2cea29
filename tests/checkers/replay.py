"""Builds a bed again from its steps, piece by piece, and tells what could not be done.

Shares nothing with the code that orders the steps: pieces are boxes, pushed in from far off, and
each is looked at against every other.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence

from model.bed import Bed
from model.building.record import Step
from model.part import Hold

FAR = 10_000.0  # mm: no bed reaches as far
HAND = 400.0  # mm: what is put in where the bed stands can be turned aside after that
TOUCH = 0.002  # mm: twice what the proof calls touching
GROOVES = ("groove", "floats in grooves", "groove, or screwed up into the back")

Box = tuple[list[float], list[float]]


class Replay:
    """The pieces of a bed as they are brought together."""

    def __init__(self, bed: Bed, steps: Sequence[Step]) -> None:
        self.bed, self.steps = bed, steps
        pieces, held = bed.pieces, bed.proof.holding
        self.names = pieces.labels
        self.is_wood = [not pieces.parts[k].hardware for k in pieces.part.tolist()]
        self.is_dowel = [pieces.parts[k].hardware.startswith("DOWEL") for k in pieces.part.tolist()]
        lo, hi = pieces.lo.tolist(), pieces.hi.tolist()
        first = pieces.first.tolist()
        self.boxes: list[list[Box]] = [
            [(lo[row], hi[row]) for row in range(first[k], first[k + 1])]
            for k in range(len(pieces))
        ]
        rows = zip(held.one.tolist(), held.other.tolist(), held.hold.tolist(), strict=True)
        self.links: list[tuple[int, int, Hold]] = [(a, b, held.holds[k]) for a, b, k in rows]

    def faults(self) -> Iterator[str]:
        """Everything that a maker could not do, in a sentence each."""
        yield from self._once()
        yield from self._glue()
        for step in self.steps:
            yield from self._holds_on(step)
            yield from self._comes_in(step)
            yield from self._has_stood(step)

    # ------------------------------------------------------------ each piece once

    def _once(self) -> Iterator[str]:
        seen = Counter(piece for step in self.steps for piece in step.pieces)
        for piece, name in enumerate(self.names):
            if seen[piece] != 1:
                yield f"{name} comes {seen[piece]} times"
        for step in self.steps:
            marked = sum(each.quantity for each in step.marks)
            wood = sum(self.is_wood[piece] for piece in step.pieces)
            if marked != wood:
                yield f"{step.key} has {wood} pieces of wood and lists {marked}"

    def _has_stood(self, step: Step) -> Iterator[str]:
        """What is shown as there has come in an earlier step."""
        before = {p for each in self.steps[: self.steps.index(step)] for p in each.pieces}
        for piece in (*step.there, *step.brought):
            if piece not in before:
                yield f"{step.key} shows {self.names[piece]}, which nobody has joined yet"

    # ------------------------------------------------------------ glue

    def _glue(self) -> Iterator[str]:
        """Each glued joint is closed in one step that says so, and no other joint is glued."""
        when = {piece: k for k, step in enumerate(self.steps) for piece in step.pieces}
        glued: set[int] = set()
        for one, other, hold in self.links:
            k = max(when.get(one, 0), when.get(other, 0))
            if hold.glued:
                glued.add(k)
                if not self.steps[k].glue:
                    yield f"{self.names[one]} is glued in {self.steps[k].key}, which takes no glue"
        for k, step in enumerate(self.steps):
            if step.glue and k not in glued:
                yield f"{step.key} takes glue and glues nothing"

    # ------------------------------------------------------------ holding on, coming in

    def _holds_on(self, step: Step) -> Iterator[str]:
        """Each new piece is joined to something that is there, or to another new one."""
        linked: dict[int, set[int]] = {}
        for one, other, _ in self.links:
            linked.setdefault(one, set()).add(other)
            linked.setdefault(other, set()).add(one)
        for copy in step.copies:
            known = {*copy, *self._beside(step, copy)}
            for piece in copy:
                is_alone = len(known) == 1
                if not is_alone and not linked.get(piece, set()) & (known - {piece}):
                    yield f"in {step.key} {self.names[piece]} is joined to nothing"

    def _beside(self, step: Step, copy: Sequence[int]) -> set[int]:
        """What stands when a copy is joined: for the first what is shown, else all of before."""
        if copy is step.copies[0]:
            return {*step.there, *step.brought}
        return {p for each in self.steps[: self.steps.index(step)] for p in each.pieces}

    def _comes_in(self, step: Step) -> Iterator[str]:
        """No wood is in the way of wood that is pushed in, and no panel is too late."""
        shown = [each.piece for each in step.comes]
        if sorted(shown) != sorted(step.shown):
            yield f"{step.key} does not tell how all of its pieces come"
        placed = list(step.there)
        for each in step.comes:
            if not self.is_wood[each.piece]:
                continue
            if any(each.along):
                # What is brought as one comes together: it is looked at against what stood before.
                others = step.there if step.brought else placed
                yield from self._barred(step, each.piece, each.along, others)
            elif self._is_late(each.piece, placed):
                yield f"in {step.key} {self.names[each.piece]} is let in after all that holds it"
            placed.append(each.piece)

    def _barred(
        self, step: Step, piece: int, along: Sequence[float], others: Iterable[int]
    ) -> Iterator[str]:
        far = HAND if step.chapter == "Final assembly" else FAR
        swept = [_swept(box, along, far) for box in self.boxes[piece]]
        for other in others:
            if self.is_wood[other] and _meet(swept, self.boxes[other]):
                yield f"in {step.key} {self.names[other]} bars {self.names[piece]}"

    def _is_late(self, piece: int, placed: Iterable[int]) -> bool:
        """Whether a panel that is not pushed in finds every member that holds it in its place."""
        by = {b for a, b, hold in self.links if a == piece and hold.joint in GROOVES}
        return bool(by) and by <= set(placed)


def _swept(box: Box, along: Sequence[float], far: float) -> Box:
    """What a box fills on the last stretch of its way to its place."""
    low, high = list(box[0]), list(box[1])
    for axis, way in enumerate(along):
        if way > 0:
            low[axis] -= far
        elif way < 0:
            high[axis] += far
    return low, high


def _meet(boxes: Iterable[Box], others: Sequence[Box]) -> bool:
    return any(
        all(low[k] + TOUCH < other_high[k] and other_low[k] + TOUCH < high[k] for k in range(3))
        for low, high in boxes
        for other_low, other_high in others
    )
