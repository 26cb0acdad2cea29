"""All stages of a bed in the order in which they are done, alike units made together."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import groupby

from model.building.alike import Alike
from model.building.bench import Bench, Stage
from model.building.final import Brought, Final
from model.building.joined import Joined
from model.building.units import Unit, Units
from model.building.ways import Ways

MILL, FINISH, FITTINGS, FINAL = "Mill", "Finish", "Fittings", "Final assembly"
_CHAPTERS = {
    "headboard": "Headboard", "footboard": "Footboard", "left side": "Left side",
    "right side": "Right side", "under the bed": "Under the bed", "deck": "Deck",
    "drawers": "Drawers", "fronts": "Fronts",
}  # fmt: skip
BOTH_SIDES = "Sides"
# Those that are worked on one after the other in the final assembly, each by itself.
_ALONE = ("headboard", "footboard", "first side", "second side")


@dataclass(frozen=True, kw_only=True)
class Planned:
    """A stage, once for each of the alike things that are made in it. `turned` are the stages of
    their mirror images, made in the same step; `mirrors`: things of the same pieces were made
    before, as mirror images. In the final assembly `role` names what comes, and `brought` the units
    and their ways.
    """

    chapter: str
    stages: tuple[Stage, ...]
    turned: tuple[Stage, ...] = ()
    mirrors: bool = False
    role: str = ""
    brought: tuple[Brought, ...] = ()

    @property
    def first(self) -> Stage:
        """The stage of the first copy."""
        return self.stages[0]

    @property
    def all(self) -> tuple[Stage, ...]:
        """The stages of all copies, mirror images last."""
        return (*self.stages, *self.turned)


class Building:
    """The order of building."""

    def __init__(self, joined: Joined) -> None:
        self.joined = joined
        self.units = Units(joined)
        self.ways = Ways(joined)
        self._bench = Bench(joined, self.units, self.ways)
        self._alike = Alike(joined, self.units)

    def planned(self) -> tuple[Planned, ...]:
        """Bench work chapter by chapter, then fittings, then where the bed stands."""
        groups = self._alike.groups(unit for unit in self.units.roots if self._is_wood(unit))
        groups.sort(key=lambda own: self._order(own))
        bench: list[Planned] = []
        fitted: list[Planned] = []
        for alike in self._with_mirrors(groups):
            bench += self._together([list(self._built(own)) for own in alike])
            fitted += self._together([list(self._fitted(own)) for own in alike])
        return (*bench, *fitted, *self._final())

    def _with_mirrors(self, groups: Sequence[Sequence[Unit]]) -> list[list[Sequence[Unit]]]:
        """Each group with those after it that are made of the same pieces: its mirror images."""
        found: dict[tuple[str, ...], list[Sequence[Unit]]] = {}
        for own in groups:
            whole = self.units.whole(own[0])
            names = (self.joined.mark_of.get(p) or self.joined.hardware[p] for p in whole)
            found.setdefault(tuple(sorted(names)), []).append(own)
        return list(found.values())

    def _together(self, runs: Sequence[Sequence[Planned]]) -> list[Planned]:
        """Stages of things and of their mirror images in the same steps, where they agree and are
        of one chapter; those of other chapters one after the other.
        """
        first, *others = runs
        merged, apart = list(first), []
        for run in others:
            if [self._kind(each) for each in run] == [self._kind(each) for each in first]:
                merged = [
                    replace(one, turned=(*one.turned, *each.stages))
                    for one, each in zip(merged, run, strict=True)
                ]
            else:
                apart += [replace(each, mirrors=True) for each in run]
        return [*merged, *apart]

    def _kind(self, planned: Planned) -> tuple[object, ...]:
        return planned.chapter, self.chapter_of(planned), self._shape(planned.first)

    def chapter_of(self, planned: Planned) -> str:
        """The assembly of what a stage is about, whatever chapter it is told in."""
        stage = planned.first
        return self.joined.part((*stage.there, *stage.pieces)[0]).assembly

    # ------------------------------------------------------------ on the bench

    def _is_wood(self, unit: Unit) -> bool:
        return self.joined.is_wood(unit.main)

    def chapter(self, own: Sequence[Unit]) -> str:
        """The chapter in which alike units are made."""
        names = {self.joined.part(unit.main).assembly for unit in own}
        if names == {"left side", "right side"}:
            return BOTH_SIDES
        return _CHAPTERS[self.joined.part(own[0].main).assembly]

    def _order(self, own: Sequence[Unit]) -> tuple[int, int]:
        assembly = self.joined.part(own[0].main).assembly
        return list(_CHAPTERS).index(assembly), own[0].pieces[0]

    def _built(self, own: Sequence[Unit]) -> Iterator[Planned]:
        """The stages of alike roots, and before them those of what is fixed to them."""
        for k, fixed in enumerate(self.units.fixed[own[0].number]):
            if len(fixed.pieces) > 1 and self._is_wood(fixed):
                alike = [self.units.fixed[root.number][k] for root in own]
                yield from self._stages(alike, [self._bench.own(unit) for unit in alike])
        yield from self._stages(own, [self._bench.own(root) for root in own])
        yield from (each for each in self._added(own) if each.first.kind == "fix")

    def _fitted(self, own: Sequence[Unit]) -> Iterator[Planned]:
        for planned in self._added(own):
            if planned.first.kind == "fit":
                yield replace(planned, chapter=FITTINGS)

    def _added(self, own: Sequence[Unit]) -> Iterator[Planned]:
        return self._stages(own, [self._bench.fixed(root) for root in own])

    def _stages(
        self, own: Sequence[Unit], stages: Sequence[tuple[Stage, ...]]
    ) -> Iterator[Planned]:
        """Stage by stage over all copies; one copy after the other where they do not agree."""
        chapter = self.chapter(own)
        if len({tuple(map(self._shape, each)) for each in stages}) == 1:
            for alike in zip(*stages, strict=True):
                yield Planned(chapter=chapter, stages=alike)
        else:
            for each in stages:
                yield from (Planned(chapter=chapter, stages=(stage,)) for stage in each)

    def _shape(self, stage: Stage) -> tuple[str, ...]:
        names = (self.joined.mark_of.get(p) or self.joined.hardware[p] for p in stage.pieces)
        return (stage.kind, *sorted(names))

    # ------------------------------------------------------------ where the bed stands

    def _final(self) -> Iterator[Planned]:
        there: list[int] = []
        order = Final(self.joined, self.units, self.ways).order()
        runs = [list(run) for _, run in groupby(order, key=self._run)]
        own = [[p for each in run for p in self.units.whole(each.unit)] for run in runs]
        late = self._loose(own)
        for run, pieces, bought in zip(runs, own, late, strict=True):
            new = (*pieces, *bought)
            stage = Stage(kind="final", pieces=new, there=tuple(there))
            yield Planned(chapter=FINAL, stages=(stage,), role=run[0].role, brought=tuple(run))
            there += new

    def _run(self, each: Brought) -> tuple[str, int]:
        """What is brought in one step: all of a role; but ends and sides each by itself."""
        return each.role, each.unit.number if each.role in _ALONE else -1

    def _loose(self, own: Sequence[Sequence[int]]) -> list[list[int]]:
        """Bought things that join units: each comes with the last of what it joins."""
        at = {piece: k for k, pieces in enumerate(own) for piece in pieces}
        loose = [
            unit.pieces[0]
            for unit in self.units.roots
            if not self._is_wood(unit) and unit.pieces[0] not in at
        ]
        when = {piece: self._last(at, [piece]) for piece in loose}
        found: list[list[int]] = [[] for _ in own]
        for piece in loose:
            beside = [each for each in self.joined.partners(piece) if each in when]
            found[max(when[each] for each in (piece, *beside))].append(piece)
        return found

    def _last(self, at: dict[int, int], pieces: Iterable[int]) -> int:
        met = [at[p] for piece in pieces for p in self.joined.partners(piece) if p in at]
        return max(met, default=len(set(at.values())) - 1)
