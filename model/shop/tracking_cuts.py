"""The cuts of a plan as they are ticked: their keys, what each needs before it, what it frees."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache

from model.cutting import order
from model.cutting.record import Placed, Plan, Region


@dataclass(frozen=True, kw_only=True)
class CutDone:
    """A cut of a plan. `needs` are the keys of the cuts that must be made before it, outermost
    first; `frees` the pieces that it leaves ready.
    """

    key: str
    layout: int
    region: Region
    needs: tuple[str, ...]
    frees: tuple[Placed, ...]


def cut_key(task: str, layout: int, number: int) -> str:
    """What a cut is ticked under: task, number of the board or sheet, number of the cut."""
    return f"{task}/{layout}/{number}"


def task_of(key: str) -> str:
    """The name of the task that a cut's key belongs to."""
    return key.rsplit("/", 2)[0]


def ready(part: Region) -> Iterator[Placed]:
    """The pieces in a region that is cut no further before milling."""
    if part.cut is None or part.stays_whole:
        yield from (each.placed for each in part.all() if each.placed is not None)


@lru_cache(maxsize=64)
def cuts(plan: Plan) -> Mapping[str, CutDone]:
    """All cuts of a plan by key, in the order of sawing. Stock that is a piece as it is bought has
    one that is no cut, with the number 0.
    """
    name = plan.task.name
    found: dict[str, CutDone] = {}
    for layout in plan.layouts:
        if whole := tuple(ready(layout.tree)):
            key = cut_key(name, layout.number, 0)
            found[key] = CutDone(
                key=key, layout=layout.number, region=layout.tree, needs=(), frees=whole
            )
    steps = [step for batch in order.batches(plan) for step in batch.steps]
    keys = {_place(s.layout, s.region): cut_key(name, s.layout, s.number) for s in steps}
    above = {
        _place(layout.number, region): chain
        for layout in plan.layouts
        for region, chain in _chains(layout.tree, ())
    }
    for step in steps:
        place = _place(step.layout, step.region)
        found[keys[place]] = CutDone(
            key=keys[place],
            layout=step.layout,
            region=step.region,
            needs=tuple(keys[_place(step.layout, each)] for each in above[place]),
            frees=tuple(piece for part in step.region.parts for piece in ready(part)),
        )
    return found


def _place(layout: int, region: Region) -> tuple[float, ...]:
    """Which region: what a cut leaves is smaller than it, so no two of a layout are alike."""
    return (layout, region.x, region.y, region.length, region.width)


def _chains(
    region: Region, chain: tuple[Region, ...]
) -> Iterator[tuple[Region, tuple[Region, ...]]]:
    """Every region that is cut before milling, with those around it, outermost first."""
    if region.cut is not None and not region.stays_whole:
        yield region, chain
        for part in region.parts:
            yield from _chains(part, (*chain, region))


def with_needed(plan: Plan, key: str) -> tuple[str, ...]:
    """A cut and all that must have been made before it."""
    cut = cuts(plan)[key]
    return (*cut.needs, key)


def with_following(plan: Plan, key: str) -> tuple[str, ...]:
    """A cut and all that cannot be made without it."""
    return tuple(k for k, cut in cuts(plan).items() if k == key or key in cut.needs)
