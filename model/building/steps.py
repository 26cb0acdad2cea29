"""The steps of a bed, from the first board to the mattress."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from dataclasses import replace
from typing import cast

from model.bed import Bed
from model.building.bench import Stage
from model.building.coming import Comings
from model.building.fastening import Fastening, Fixing
from model.building.frames import Frames
from model.building.joined import Joined
from model.building.record import Clamping, Coming, Fitting, Marked, Square, Step
from model.building.sequence import FITTINGS, Building, Planned
from model.building.told import Told
from model.building.words import capital


def build_steps(bed: Bed) -> tuple[Step, ...]:
    """Every step in order; each piece of wood and each bought piece comes in once.

    Worked out once and kept with the bed.
    """
    design, found = vars(bed).get("_steps", (None, ()))
    if design is not bed.design:
        found = _Steps(bed).all()
        vars(bed)["_steps"] = (bed.design, found)
    return cast(tuple[Step, ...], found)


class _Steps:
    def __init__(self, bed: Bed) -> None:
        self._bed, self._joined = bed, Joined(bed)
        self._building = Building(self._joined)
        self._planned = self._building.planned()
        self._comings = Comings(self._joined, self._building.ways)
        self._frames = Frames(self._joined, self._building.ways)
        self._told = Told(self._joined, self._frames)
        self._first_at: dict[int, int] = {}
        for k, planned in enumerate(self._planned):
            for stage in planned.all:
                for piece in stage.pieces:
                    self._first_at.setdefault(piece, k)
        self._fastening = Fastening(self._joined)
        self._screws = self._screws_by_step()

    def all(self) -> tuple[Step, ...]:
        made = [self._step(k, planned) for k, planned in enumerate(self._planned)]
        first_late = next(
            (k for k, each in enumerate(self._planned) if each.chapter == FITTINGS
             or each.first.kind == "final"), len(made),
        )  # fmt: skip
        told = (
            *self._told.milling(),
            *self._told.coats_first(),
            *made[:first_late],
            self._told.finish(),
            *made[first_late:],
        )
        return tuple(_numbered(told))

    # ------------------------------------------------------------ one step

    def _step(self, k: int, planned: Planned) -> Step:
        stage = planned.first
        glue = self._is_glued(planned, k)
        screws = self._fastening.drivings(self._screws.get(k, ()))
        comes = self._comes(planned)
        step = Step(
            key="",
            chapter=planned.chapter,
            title="",
            sentences=(),
            copies=tuple(copy for each in planned.all if (copy := self._fresh(each, k))),
            mirrors=len(planned.turned),
            brought=tuple(p for p in stage.pieces if self._first_at[p] < k),
            comes=comes,
            there=stage.there,
            assemblies=self._told.assemblies(planned, lambda piece: self._first_at[piece] < k),
            marks=self._marks(planned, k),
            hardware=self._hardware(planned, k),
            screws=screws,
            glue=glue,
            clamps=self._clamps(planned) if glue or planned.role in ("", "front") else (),
            squares=self._squares(planned),
        )
        return self._told.step(step, planned, self._mirrored(step, planned, k))

    def _mirrored(self, step: Step, planned: Planned, k: int) -> Step | None:
        """The same step as seen from the first of its mirror images; None where there are none."""
        if not planned.turned:
            return None
        stage, count = planned.turned[0], len(planned.stages)
        return replace(
            step,
            copies=(*step.copies[count:], *step.copies[:count]),
            comes=self._comings.of(stage.pieces, stage.there),
            brought=tuple(p for p in stage.pieces if self._first_at[p] < k),
            there=stage.there,
        )

    def _comes(self, planned: Planned) -> tuple[Coming, ...]:
        stage = planned.first
        if not planned.brought:
            return self._comings.of(stage.pieces, stage.there)
        found: list[Coming] = []
        whole = self._building.units.whole
        for each in planned.brought:
            found += self._comings.together(whole(each.unit), each.way)
        known = {each.piece for each in found}
        loose = [piece for piece in stage.pieces if piece not in known]
        bought = self._comings.of(loose, (*stage.there, *known))
        return (*found, *(each._replace(turn=each.turn + 2) for each in bought))

    def _is_glued(self, planned: Planned, k: int) -> bool:
        """Whether a glued joint is closed in this step: its later piece is seen first here."""
        at = self._first_at
        return any(
            link.hold.glued and max(at[link.one], at[link.other]) == k
            for piece in self._fresh(planned.first, k)
            for link in self._joined.of(piece)
        )

    def _fresh(self, stage: Stage, k: int) -> tuple[int, ...]:
        """The pieces of a stage that no earlier step has."""
        return tuple(piece for piece in stage.pieces if self._first_at[piece] == k)

    def _marks(self, planned: Planned, k: int) -> tuple[Marked, ...]:
        new = Counter(
            self._joined.mark_of.get(piece)
            for stage in planned.all
            for piece in self._fresh(stage, k)
        )
        return tuple(
            Marked(mark.mark, mark.name, new[mark.mark])
            for mark in self._bed.marks
            if new[mark.mark]
        )

    def _hardware(self, planned: Planned, k: int) -> tuple[Fitting, ...]:
        new = Counter(
            self._joined.hardware[piece] for stage in planned.all for piece in self._fresh(stage, k)
        )
        return tuple(
            Fitting(each.code, each.name, new[each.code])
            for each in self._bed.hardware
            if new[each.code]
        )

    def _clamps(self, planned: Planned) -> tuple[Clamping, ...]:
        stage = planned.first
        if stage.kind == "frame":
            return self._frames.clamps(stage.pieces, stage.there)
        pressed = self._frames.pressing(stage.pieces, stage.there)
        held = self._frames.holding(stage.pieces, stage.there)
        return tuple(dict.fromkeys((*pressed, *held)))

    def _squares(self, planned: Planned) -> tuple[Square, ...]:
        stage = planned.first
        if stage.kind != "frame":
            return ()
        what = capital(self._told.what(planned))
        found = self._frames.square(what, (*stage.pieces, *stage.there))
        return () if found is None else (found,)

    # ------------------------------------------------------------ screws

    def _screws_by_step(self) -> dict[int, list[Fixing]]:
        """Screws are driven in the step in which the later of two pieces comes."""
        at = self._first_at
        found: dict[int, list[Fixing]] = {}
        for each in self._fastening.all:
            k = max(at[each.one], at[each.other], self._brought_together(each))
            found.setdefault(k, []).append(each)
        return found

    def _brought_together(self, each: Fixing) -> int:
        """The step in which the units of two pieces stand beside each other."""
        units = self._building.units
        one, other = (units.root(units.of(piece)).number for piece in (each.one, each.other))
        if one == other:
            return 0
        roots = {one, other}
        steps = [
            k
            for k, planned in enumerate(self._planned)
            if roots & {brought.unit.number for brought in planned.brought}
        ]
        return max(steps, default=0)


def _numbered(steps: Iterable[Step]) -> Iterable[Step]:
    count: Counter[str] = Counter()
    for step in steps:
        count[step.chapter] += 1
        yield replace(step, key=f"{step.chapter.lower().replace(' ', '_')}/{count[step.chapter]}")
