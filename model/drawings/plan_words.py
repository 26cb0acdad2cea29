"""A cutting plan in sentences: what it takes, how few any plan could take, what it leaves."""

from __future__ import annotations

import math
from collections.abc import Iterable

from model.brief.words import in_unit
from model.cutting.record import Layout, Measure, Plan
from model.drawings.cut_steps import SawnPlan
from model.drawings.cut_told import about_size_words
from model.units import INCH, Mm2

_DIGITS = 1e-6  # a bound this near to a whole number is that number


def counted(count: int, word: str) -> str:
    """`1 sheet`, `3 sheets`."""
    return f"{count} {word}" if count == 1 else f"{count} {word}s"


def runs_words(numbers: Iterable[int]) -> str:
    """`1–4, 7`: numbers that follow each other are told by the first and the last."""
    found = sorted(set(numbers))
    starts = [n for n in found if n - 1 not in found]
    ends = [n for n in found if n + 1 not in found]
    return ", ".join(f"{a}" if a == b else f"{a}–{b}" for a, b in zip(starts, ends, strict=True))


def stock_words(plan: Plan, word: str) -> str:
    """`3 sheets`, or `3 sheets, 1 of them on hand`."""
    count, on_hand = len(plan.layouts), sum(each.stock.on_hand for each in plan.layouts)
    told = counted(count, word)
    if not on_hand:
        return told
    return f"{told}, on hand" if on_hand == count else f"{told}, {on_hand} of them on hand"


def bound_words(plan: Plan, word: str, unit: str) -> str:
    """`3 sheets; no plan can need fewer`; a plan that is not proven is never called best."""
    told = stock_words(plan, word)
    if not plan.layouts:
        return "Nothing is cut."
    is_owned = all(each.stock.on_hand for each in plan.layouts)
    if is_owned and plan.measure not in ("area", "length"):
        return f"{told}: nothing is bought."
    if is_owned:
        told = f"{told}, so nothing is bought"
    bound = _bound(plan.measure, plan, unit)
    if plan.covers == "any plan":
        return f"{told}; no plan can {bound}."
    return f"{told}; no such plan can {bound}. That is said of {plan.covers}."


def _bound(measure: Measure, plan: Plan, unit: str) -> str:
    verb = {"stock": "need fewer", "price": "cost less"}.get(measure, "take less")
    has_own = any(each.stock.on_hand for each in plan.layouts)
    if measure == "stock" and has_own:
        verb = "buy fewer"
    if plan.is_proven:
        return verb
    least = _amount(measure, plan.lower_bound, unit)
    if measure == "stock":
        return f"{verb} than {least}"
    return f"{verb} than {least}, and this one takes {_amount(measure, plan.value, unit)}"


def _amount(measure: Measure, value: float, unit: str) -> str:
    if measure == "stock":
        return str(math.ceil(value - _DIGITS))
    if measure == "price":
        return f"{value:.2f}"
    if measure == "area":
        return area_words(value, unit)
    return f"{value / (12 * INCH):.1f} ft" if unit == "inch" else f"{value / 1000:.2f} m"


def proof_words(sawn: SawnPlan) -> str:
    """How near to the bound a plan is, in a word or two."""
    plan = sawn.cut.plan
    if sawn.is_begun:
        return "begun"
    if not plan.layouts:
        return "–"
    if plan.is_proven:
        said = {"stock": "fewest", "price": "cheapest"}.get(plan.measure, "least")
        return said if plan.covers == "any plan" else f"{said} of its kind"
    if plan.measure == "stock":
        return f"at least {math.ceil(plan.lower_bound - _DIGITS)}"
    return f"within {plan.gap:.1%}"


def area_words(area: Mm2, unit: str) -> str:
    """An area of wood in square feet or square metres."""
    if unit == "inch":
        return f"{area / (12 * INCH) ** 2:.1f} sq ft"
    return f"{area / 1e6:.2f} m²"


def used_share(plan: Plan) -> float:
    """How much of the stock that is cut up becomes pieces."""
    whole = sum(each.stock.length * each.stock.width for each in plan.layouts)
    pieces = sum(p.length * p.width for each in plan.layouts for p in each.placed)
    return pieces / whole if whole else 0.0


def kept_share(plan: Plan) -> float:
    """How much of it is left in offcuts that are worth keeping."""
    whole = sum(each.stock.length * each.stock.width for each in plan.layouts)
    kept = sum(offcut.area for each in plan.layouts for offcut in each.offcuts)
    return kept / whole if whole else 0.0


def settings_count(sawn: SawnPlan) -> int:
    """How often fence or stop is set."""
    return len({step.batch for step in sawn.steps if step.number})


def settings_words(sawn: SawnPlan) -> str:
    """`12 settings for 40 cuts; no order of them has fewer than 11.`"""
    cuts = sum(step.number > 0 for step in sawn.steps)
    settings = settings_count(sawn)
    if not cuts:
        return "No cuts."
    told = f"{counted(settings, 'setting')} for {counted(cuts, 'cut')}"
    if settings <= sawn.floor:
        return f"{told}; no order of them has fewer."
    return f"{told}; no order of them has fewer than {sawn.floor}."


def offcut_words(plan: Plan, unit: str) -> str:
    """The largest offcut that is worth keeping, or that there is none."""
    offcuts = [offcut for each in plan.layouts for offcut in each.offcuts]
    if not offcuts:
        return "No offcut is worth keeping."
    largest = max(offcuts, key=lambda each: each.area)
    return f"Largest offcut {about_size_words(largest, unit)}."


def left_out_words(plan: Plan, unit: str) -> tuple[str, ...]:
    """What no plan can hold, each with a sentence."""
    return tuple(
        f"{each.mark}{f' ({each.quantity})' if each.quantity > 1 else ''} is left out. "
        f"{in_unit(each.sentence, unit)}"
        for each in plan.left_out
    )


def plan_sentences(sawn: SawnPlan, unit: str) -> tuple[str, ...]:
    """All that is to say of a plan, what is left out first, then what it takes."""
    plan = sawn.cut.plan
    if sawn.is_begun:
        told = stock_words(plan, sawn.stock_word)
        return (f"Begun before the bed was changed: {told}, as far as it was cut.",)
    return (
        *left_out_words(plan, unit),
        bound_words(plan, sawn.stock_word, unit),
        settings_words(sawn),
        offcut_words(plan, unit),
        *(in_unit(note, unit) for note in sawn.cut.notes),
    )


def title_words(sawn: SawnPlan, layout: Layout) -> str:
    """What stands above the drawing of one board or sheet."""
    number = f"{sawn.stock_word.capitalize()} {layout.number} of {len(sawn.layouts)}"
    stock = layout.stock
    is_one_of_its_kind = stock.on_hand or stock.quantity is not None
    return f"{number} · {stock.key}" if is_one_of_its_kind else number
