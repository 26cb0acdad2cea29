"""What is lit on the drawings of a plan: the next cut, what is done, and the piece picked."""

from __future__ import annotations

from collections.abc import Collection
from typing import NamedTuple

from app.style import FAINT, INK, SHEET, SPRUCE, SPRUCE_PALE
from app.view.drawing_player import Light
from model.drawings.cut_steps import SawnPlan, freed_by

PICKED, PICKED_PALE = "#1f7f8c", "#cfe7ea"  # as on the bed
FREE = "#efede7"  # off the saw
NEXT = Light(SPRUCE, SPRUCE, 3.0, SHEET)  # a wide line, its number white in a full ring


class Moment(NamedTuple):
    """What is shown of a plan: the place of the next step (-1: no order is shown), the keys that
    are ticked, the names picked, and the one under the mouse.
    """

    step: int = -1
    ticked: Collection[str] = ()
    picked: Collection[str] = ()
    pointed: str = ""


def lights(sawn: SawnPlan, moment: Moment) -> dict[str, Light]:
    """How each thing on the drawings is lit."""
    found: dict[str, Light] = {}
    if moment.step >= 0:
        found |= _order(sawn, moment)
    for name in moment.picked:
        found[f"piece/{name}"] = Light(INK, PICKED_PALE)
    if moment.pointed and moment.pointed not in moment.picked:
        found[f"piece/{moment.pointed}"] = Light(PICKED, "#e9f4f5")
    return found


def _order(sawn: SawnPlan, moment: Moment) -> dict[str, Light]:
    found: dict[str, Light] = {}
    for place, step in enumerate(sawn.steps):
        is_ticked = step.key in moment.ticked
        if step.number and is_ticked:
            found[f"cut/{step.number}"] = Light(SPRUCE, SPRUCE_PALE)
        elif step.number and place < moment.step:
            found[f"cut/{step.number}"] = Light(FAINT, FREE)
    ticked = {step.key for step in sawn.steps} & set(moment.ticked)
    for name, place in freed_by(sawn.steps).items():
        if place < moment.step or sawn.steps[place].key in ticked:
            found[f"piece/{name}"] = Light(INK, FREE)
    if moment.step < len(sawn.steps):
        found |= _next(sawn, moment.step)
    return found


def _next(sawn: SawnPlan, place: int) -> dict[str, Light]:
    step = sawn.steps[place]
    if not step.number:
        return {f"piece/{name}": Light(INK, SPRUCE_PALE) for name in step.frees}
    return {
        f"blank/{step.number}": Light(INK, SPRUCE_PALE),
        f"cut/{step.number}": NEXT,
    }
