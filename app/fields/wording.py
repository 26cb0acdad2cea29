"""What the window says about a choice: its value, its range and why it ends, what lies outside."""

from __future__ import annotations

from typing import Any

from model.brief.declare import Choice
from model.brief.words import ENDS, full_label, in_unit, row_name, value_text


def range_text(choice: Choice, unit: str) -> str:
    """From where to where the choice goes, and why it ends there."""
    if choice.least is None or choice.most is None:
        return ""
    low, high = _ends_text(choice, choice.least, choice.most, unit)
    reasons = f"{_ends(low, choice.why_least)} {_ends(high, choice.why_most)}".strip()
    return f"From {low} to {high}. {reasons}".strip()


def _ends(end: str, reason: str) -> str:
    return f"{end}: {reason[:1].lower()}{reason[1:]}" if reason else ""


def within(choice: Choice, low: float, high: float, unit: str) -> tuple[float, float]:
    """The ends of a range, rounded inwards; as they are where no step lies between them."""
    if not choice.is_length:
        return low, high
    grid = ENDS[unit]
    inner = grid.up(low), grid.down(high)
    return inner if inner[0] <= inner[1] else (low, high)


def _ends_text(choice: Choice, low: float, high: float, unit: str) -> tuple[str, str]:
    inner = within(choice, low, high, unit)
    return value_text(choice, inner[0], unit), value_text(choice, inner[1], unit)


def help_text(choice: Choice, unit: str) -> str:
    """The help line of a field: what it is, its range, its default."""
    default = value_text(choice, choice.default, unit)
    usual = f"Default: {default}." if default else ""
    told = in_unit(choice.help, unit)
    return " ".join(filter(None, (told, range_text(choice, unit), usual)))


def outside_text(choice: Choice, number: float, unit: str) -> str:
    """Why a number lies outside the range of its field; empty when it does not."""
    hair = 1e-6  # a typed 24" is 609.6 mm, give or take floating-point dust
    if choice.least is not None and number < choice.least - hair:
        end, limit, why = "least", choice.least, choice.why_least
    elif choice.most is not None and number > choice.most + hair:
        end, limit, why = "most", choice.most, choice.why_most
    else:
        return ""
    ends = within(choice, choice.least or limit, choice.most or limit, unit)
    shown = value_text(choice, ends[0] if end == "least" else ends[1], unit)
    given = value_text(choice, number, unit)
    return f"{given} is outside the range: the {end} is {shown}. {why}".strip()


def works_text(choice: Choice, works: Any, unit: str) -> str:
    """What would build: `Drawer depth from 12" to 24" would work.`"""
    name = full_label(choice)
    if all(isinstance(each, str) for each in works):
        return f"{name}: {', '.join(row_name(choice, each) for each in works)} would work."
    low, high = _ends_text(choice, *works, unit)
    return (
        f"{name} of {low} would work."
        if low == high
        else f"{name} from {low} to {high} would work."
    )
