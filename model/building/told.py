"""The words of every step, by what is done in it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator
from dataclasses import replace

from model.building.bench import Stage
from model.building.finishing import Schedule, finishing_schedule
from model.building.frames import Frames
from model.building.gluing import Gluing
from model.building.joined import Joined
from model.building.laying import Laying
from model.building.milling import milling_steps
from model.building.record import Step
from model.building.said import Said, Shop, Texts, with_mirror
from model.building.sequence import BOTH_SIDES, FINISH, MILL, Planned
from model.building.standing import Standing
from model.building.tools import step_tools
from model.building.words import plural
from model.part import Part

# Passes that come before anything is glued, and the titles of their steps.
_EARLY = {"coat/sealer": "Seal fibreboard parts while they are single", "panels": ""}
_HOLD = (
    'What is said under "Dust" among the cautions of this set holds here.',
    'So does what is said under "Finish": air, flames, and rags that heat by themselves.',
)
_MIRROR = "Made of the same parts as before, but as a mirror image: faces are changed about."


class Told:
    """Tells steps."""

    def __init__(self, joined: Joined, frames: Frames) -> None:
        self._shop = Shop(joined, frames)
        self._gluing, self._laying = Gluing(self._shop), Laying(self._shop)
        self._standing = Standing(self._shop)

    def milling(self) -> Iterator[Step]:
        """The steps at the machines."""
        return milling_steps(self._shop.bed, MILL)

    def finish(self) -> Step:
        """The step in which all that is put together so far is finished."""
        schedule = finishing_schedule(self._shop.bed)
        sanded = {each.key for each in schedule.passes if each.key.startswith("sand/")}
        done = sanded - {"sand/between"} | set(_EARLY)
        return Step(
            key="",
            chapter=FINISH,
            title="Finish parts and assemblies before the bed stands",
            sentences=(
                schedule.what,
                *(
                    f"{each.title}{f' ({each.amount})' if each.amount else ''}."
                    for each in schedule.passes
                    if each.key not in done
                ),
                *(f"Stays bare: {place[:1].lower()}{place[1:]}" for place in schedule.bare),
                "How each is done stands in the finishing schedule.",
            ),
            cautions=_HOLD if schedule.marks else _HOLD[:1],
        )

    def coats_first(self) -> Iterator[Step]:
        """The steps of what is coated before frames are glued round it: sealed edges of
        fibreboard, then the first coats of panels.
        """
        schedule = finishing_schedule(self._shop.bed)
        for each in schedule.passes:
            if each.key in _EARLY:
                yield Step(
                    key="",
                    chapter=FINISH,
                    title=_EARLY[each.key] or each.title,
                    sentences=(
                        each.text,
                        *((f"It takes {each.amount}.",) if each.amount else ()),
                        *(self._first_coats(schedule) if each.key == "panels" else ()),
                    ),
                    cautions=_HOLD,
                )

    def _first_coats(self, schedule: Schedule) -> Texts:
        return (
            f"What goes on: {schedule.on_solid} The last coat goes on with all others.",
            "Keep tongues thin and glue faces bare, and let it dry before you go on.",
        )

    def step(self, step: Step, planned: Planned, mirror: Step | None = None) -> Step:
        """A step with its words; `mirror` is the step as its mirror images see it."""
        said = self._said(step, planned)
        if mirror is not None:
            said = with_mirror(said, self._said(mirror, planned))
        begun = (_MIRROR,) if planned.mirrors else ()
        told = replace(
            step,
            title=f"{said.title}, mirrored" if begun else said.title,
            sentences=(*begun, *said.sentences),
            settings=said.settings,
            checks=said.checks,
            keep_dry=said.keep_dry,
            cautions=said.cautions,
        )
        return replace(told, tools=tuple(step_tools(told, self._shop.words.unit)))

    def _said(self, step: Step, planned: Planned) -> Said:
        kind, what = planned.first.kind, self.what(planned)
        if kind == "final":
            return self._standing.tell(step, planned)
        if kind == "frame":
            return self._gluing.frame(step, what)
        if kind == "float":
            return self._gluing.floating(step, what)
        if kind == "face":
            return self._laying.faced(step, what)
        if kind == "fix":
            return self._laying.fixed(step, what)
        return self._laying.fitted(step, what)

    def assemblies(self, planned: Planned, is_made: Callable[[int], bool]) -> tuple[str, ...]:
        """What is brought of what was made before, alike ones counted."""
        joined = self._shop.joined
        mains = [each.unit.main for each in planned.brought if is_made(each.unit.main)]
        count = Counter(self._named(joined.part(main)) for main in mains)
        return tuple(name if n == 1 else f"{n} {plural(name, n)}" for name, n in count.items())

    def _named(self, part: Part) -> str:
        if part.assembly in ("under the bed", "deck"):
            return part.name
        return {"drawers": "drawer box", "fronts": "front"}.get(part.assembly, part.assembly)

    def what(self, planned: Planned) -> str:
        """What is worked on, as the titles of its steps begin."""
        joined = self._shop.joined
        own = {joined.part(self._main(stage)).assembly for stage in planned.stages}
        if planned.chapter == BOTH_SIDES or own == {"left side", "right side"}:
            return "each side"
        return self._named(joined.part(self._main(planned.first)))

    def _main(self, stage: Stage) -> int:
        """The piece that tells what is worked on: the heaviest of a frame, or what lies there."""
        if stage.kind in ("frame", "float"):
            return self._shop.joined.heaviest((*stage.there, *stage.pieces))
        return self._shop.joined.heaviest(stage.there) if stage.there else stage.pieces[0]
