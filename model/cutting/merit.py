"""What makes one plan of a task better than another, in the order in which the shop cares."""

from __future__ import annotations

from model.cutting.order import setting_changes
from model.cutting.record import Plan

_ALIKE = 6  # digits: what two plans take is the same up to floating-point dust

Merit = tuple[float, ...]


def merit(plan: Plan) -> Merit:
    """Less is better: pieces left out, what it takes, then settings and the largest offcut, in the
    order that the maker wishes.
    """
    left_out = sum(each.quantity for each in plan.left_out)
    largest = max((each.area for layout in plan.layouts for each in layout.offcuts), default=0.0)
    ease = (float(setting_changes(plan)), -round(largest, 3))
    wanted = ease[::-1] if plan.task.wishes.offcut_before_settings else ease
    return (float(left_out), float(f"{plan.value:.{_ALIKE}e}"), *wanted)


def is_better(one: Plan, other: Plan) -> bool:
    """Whether a plan is better than another one of the same task."""
    return merit(one) < merit(other)


def gain_words(one: Plan, other: Plan) -> str:
    """In what a better plan is better first: `takes less`, `fewer settings`, `a larger offcut`."""
    better, worse = merit(one), merit(other)
    first = next((k for k, (a, b) in enumerate(zip(better, worse, strict=True)) if a != b), -1)
    ease = ["needs fewer settings", "leaves a larger offcut"]
    if one.task.wishes.offcut_before_settings:
        ease.reverse()
    said = ["leaves fewer pieces out", _takes_less(one, other), *ease]
    return said[first] if first >= 0 and better < worse else ""


def _takes_less(one: Plan, other: Plan) -> str:
    if one.measure == "stock":
        fewer = round(other.value - one.value)
        stock = "sheet" if one.task.kind == "sheets" else "board"
        return f"takes {fewer} {stock if fewer == 1 else f'{stock}s'} fewer"
    return {"price": "costs less"}.get(one.measure, f"takes {1 - one.value / other.value:.1%} less")
