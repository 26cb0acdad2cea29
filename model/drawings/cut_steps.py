"""The cuts of a plan one after the other: where each is made, how it is set, what it frees."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import TYPE_CHECKING

from model.cutting import order
from model.cutting.record import Layout, Region
from model.drawings.cut_told import sawn
from model.units import Count

if TYPE_CHECKING:  # they know beds, which a window that opens has no time for
    from model.shop.order.record import Batch
    from model.shop.plans import CutPlan


@dataclass(frozen=True, kw_only=True)
class CutStep:
    """One cut in the order of sawing; `number` is 0 where stock is used as it is.

    `batch` is the place of its setting among those of the plan, `key` what it is ticked under,
    `frees` names the pieces that it leaves ready.
    """

    number: int
    layout: int
    region: Region
    batch: int
    key: str
    setting: str
    detail: str
    frees: tuple[str, ...]


@dataclass(frozen=True, kw_only=True)
class SawnPlan:
    """A plan with its order of sawing in the maker's unit; `stock_word` is what is cut up, `sheet`
    or `board`, `floor` how few settings any order of its cuts has; `is_begun` boards were cut as
    far as they are before the design changed.
    """

    cut: CutPlan
    stock_word: str
    batches: tuple[Batch, ...]
    steps: tuple[CutStep, ...]
    floor: Count
    unit: str
    is_begun: bool
    _numbers: Mapping[tuple[int, int], int] = field(repr=False, compare=False)

    @property
    def key(self) -> str:
        """The name of its task."""
        return self.cut.key

    @property
    def layouts(self) -> tuple[Layout, ...]:
        return self.cut.plan.layouts

    @cached_property
    def keys(self) -> frozenset[str]:
        """What all its cuts are ticked under."""
        return frozenset(step.key for step in self.steps)

    def cuts_the_same(self, other: SawnPlan) -> bool:
        """Whether another plan is one for the same pieces."""
        return self.cut.plan.task.pieces == other.cut.plan.task.pieces

    def numbers(self, layout: Layout) -> tuple[int, ...]:
        """The numbers of a layout's cuts, in the order of `sawn`."""
        return tuple(self._numbers[layout.number, id(region)] for region in sawn(layout))

    def holding(self, name: str) -> Layout | None:
        """The layout on which a piece lies, or None."""
        found = (
            each for each in self.layouts if any(placed.name == name for placed in each.placed)
        )
        return next(found, None)


def sawn_plan(cut: CutPlan, unit: str) -> SawnPlan:
    """A plan with its order of sawing."""
    from model.shop.order.sawing import sawing, stock_word
    from model.shop.tracking_rest import was_begun

    told = sawing(cut, unit)
    grouped = order.batches(cut.plan)
    regions = {(step.layout, step.number): step.region for batch in grouped for step in batch.steps}
    trees = {(layout.number, 0): layout.tree for layout in cut.plan.layouts}
    return SawnPlan(
        cut=cut,
        stock_word=stock_word(cut),
        unit=unit,
        is_begun=was_begun(cut.plan),
        batches=told,
        steps=tuple(_steps(told, {**trees, **regions})),
        floor=order.distinct_settings(cut.plan),
        # Layouts that are cut alike may be one and the same tree.
        _numbers={(where[0], id(region)): where[1] for where, region in regions.items()},
    )


def _steps(
    batches: Iterable[Batch], regions: Mapping[tuple[int, int], Region]
) -> Iterable[CutStep]:
    for place, batch in enumerate(batches):
        for line in batch.lines:
            _, layout, number = line.key.rsplit("/", 2)
            where = (int(layout), int(number))
            yield CutStep(
                number=where[1],
                layout=where[0],
                region=regions[where],
                batch=place,
                key=line.key,
                setting=batch.setting,
                detail=line.detail,
                frees=line.frees,
            )


def freed_by(steps: Iterable[CutStep]) -> dict[str, int]:
    """For every piece, the place of the step that leaves it ready."""
    return {name: place for place, step in enumerate(steps) for name in step.frees}
