"""The first steps: what the work order does at the machines, stage by stage."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from model.bed import Bed
from model.building.record import Step
from model.building.words import plural
from model.shop.order.build import work_order
from model.shop.order.record import STAGES, Batch, Stage

_WHY: dict[Stage, str] = {
    "mill": "Let the boards lie in the shop for a week, with air on all sides. Cut them rough as "
    "the board plans show, then mill all in one go: what is set once comes out alike.",
    "glue": "Glue up what is wider or thicker than the boards; trim it when the glue is hard.",
    "trim": "Cut everything to its finished size, each setting once.",
    "sheets": "Cut the sheets as the sheet plans show; measure their thickness before any groove "
    "is cut for them.",
    "joinery": "Cut all joints and holes, each setting once, after a test cut in waste of the same "
    "thickness.",
    "finish": "Ease edges and sand while parts are still single: inside corners are out of reach "
    "later.",
}


def milling_steps(bed: Bed, chapter: str) -> Iterator[Step]:
    """A step for each stage of the work order that the bed has. The work order's own lines say
    which settings there are and which marks they are for.
    """
    order = work_order(bed, ())
    aids = order.aids
    for stage, title in STAGES.items():
        batches = [batch for batch in order.batches if batch.stage == stage]
        if batches:
            yield Step(
                key="",
                chapter=chapter,
                title=title,
                sentences=(
                    *aids,
                    _WHY[stage],
                    "Each setting, its marks, its test cut and its cautions stand in the work "
                    f'order, under "{title}".',
                ),
                tools=tuple(dict.fromkeys(batch.machine for batch in batches)),
                settings=tuple(_settings(batches)),
            )
            aids = ()


def _settings(batches: list[Batch]) -> Iterator[str]:
    """Glue-ups as they are; of all else how often a machine is set, for the figures stand in the
    work order.
    """
    for operation, count in Counter(batch.operation for batch in batches).items():
        own = [batch for batch in batches if batch.operation == operation]
        if own[0].way == "glue":
            yield from (f"{operation}: {batch.setting}." for batch in own)
        else:
            yield f"{operation}: {count} {plural('setting', count)}."
