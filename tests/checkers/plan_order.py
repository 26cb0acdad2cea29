"""The order of sawing held against the plan: every cut once, no wood cut before it is there."""

from __future__ import annotations

from collections.abc import Iterator

from model.cutting.order import Batch
from model.cutting.record import Plan, Region
from tests.checkers.sawn import NEAR

Named = tuple[int, str, float, float, float, float, float]


def order_faults(plan: Plan, batches: tuple[Batch, ...]) -> list[str]:
    """All that is wrong with an order of sawing, in sentences."""
    steps = [step for batch in batches for step in batch.steps]
    return [
        *_number_faults([step.number for step in steps]),
        *_once_faults(plan, [_named(step.layout, step.region) for step in steps]),
        *_setting_faults(batches),
    ]


def _named(layout: int, region: Region) -> Named:
    assert region.cut is not None
    return layout, region.cut, region.x, region.y, region.length, region.width, region.at


def _number_faults(numbers: list[int]) -> Iterator[str]:
    if numbers != list(range(1, len(numbers) + 1)):
        yield f"the steps are numbered {numbers}"


def _once_faults(plan: Plan, made: list[Named]) -> Iterator[str]:
    """Every cut of the plan once, and each after the one that freed its wood."""
    parents = {
        _named(layout.number, region): parent and _named(layout.number, parent)
        for layout in plan.layouts
        for region, parent in _cuts(layout.tree, None)
    }
    for cut in parents.keys() - set(made):
        yield f"nobody makes the cut {cut}"
    place = {cut: at for at, cut in enumerate(made)}
    if len(place) != len(made):
        yield "a cut is made twice"
    for cut in made:
        if cut not in parents:
            yield f"{cut} is no cut of the plan"
        elif (parent := parents[cut]) and place.get(parent, len(made)) > place[cut]:
            yield f"{cut} is made before the wood is there"


def _cuts(region: Region, parent: Region | None) -> Iterator[tuple[Region, Region | None]]:
    """The cuts at the saw, each with the one before it; strips that stay whole are not cut yet."""
    if region.cut is None or region.stays_whole:
        return
    yield region, parent
    for part in region.parts:
        yield from _cuts(part, region)


def _setting_faults(batches: tuple[Batch, ...]) -> Iterator[str]:
    """All cuts of a batch leave the same distance between the blade and fence or stop; all trims of
    one take the same off.
    """
    for batch in batches:
        way, distance, is_trim = batch.setting
        for step in batch.steps:
            sides = [part.width if way == "rip" else part.length for part in step.region.parts]
            if is_trim:
                whole = step.region.width if way == "rip" else step.region.length
                sides = [whole - side for side in sides]
            if step.region.cut != way or not any(abs(each - distance) <= NEAR for each in sides):
                yield f"step {step.number} is no {way} at {distance}: {step.region.cut} of {sides}"
            if is_trim and not step.region.is_trim:
                yield f"step {step.number} trims what is no edge"
