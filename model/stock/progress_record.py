"""How far the work is, as a design file holds it."""

from __future__ import annotations

from dataclasses import asdict
from typing import Any

from model.stock.given import Given, spare
from model.stock.plan_record import PLAN, plan_of, plan_record
from model.stock.progress import CutPart, Progress

NAMES = ("plans", "cuts_done", "bought", "steps_done", "parts")
_PART = (
    "mark", "piece", "name", "material", "length", "width", "thickness", "rough_length",
    "rough_width", "rough_thickness", "steps", "work", "cut",
)  # fmt: skip
_USUAL_PART = {
    "rough_length": 0.0, "rough_width": 0.0, "rough_thickness": 0.0, "steps": [], "work": "",
    "cut": "",
}  # fmt: skip


def record_of(progress: Progress) -> dict[str, Any]:
    """Progress in the form of a design file; empty while nothing is begun."""
    record = {
        "plans": [plan_record(plan) for plan in progress.plans],
        "cuts_done": sorted(progress.cuts_done),
        "bought": sorted(progress.bought),
        "steps_done": sorted(progress.steps_done),
        "parts": [_part_record(part) for part in progress.parts],
    }
    return {name: rows for name, rows in record.items() if rows}


def _part_record(part: CutPart) -> dict[str, Any]:
    return spare(asdict(part) | {"steps": list(part.steps)}, _USUAL_PART)


def progress_of(record: Any, place: str = "progress") -> Progress:
    """The progress that a design file gives; refused with BadInput: what is no sound one."""
    given = Given(record, place, NAMES)
    plans = tuple(plan_of(each) for each in given.records("plans", PLAN, 200))
    names = [plan.task.name for plan in plans]
    if twice := next((name for name in names if names.count(name) > 1), ""):
        raise given.refused(f"it holds two plans of {twice}.")
    return Progress(
        plans=plans,
        cuts_done=frozenset(given.texts("cuts_done")),
        bought=frozenset(given.texts("bought")),
        steps_done=frozenset(given.texts("steps_done")),
        parts=tuple(_part(each) for each in given.records("parts", _PART, 10_000)),
    )


def _part(given: Given) -> CutPart:
    return CutPart(
        mark=given.text("mark", None, 20),
        piece=given.whole("piece", None, 1, 10_000),
        name=given.text("name"),
        material=given.text("material", None, 60),
        length=given.length("length", None),
        width=given.length("width", None),
        thickness=given.length("thickness", None),
        rough_length=given.length("rough_length", 0.0),
        rough_width=given.length("rough_width", 0.0),
        rough_thickness=given.length("rough_thickness", 0.0),
        steps=given.texts("steps", 500),
        work=given.text("work"),
        cut=given.text("cut"),
    )
