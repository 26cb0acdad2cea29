"""Is the bed so high that it counts as a bunk or high bed?"""

from dataclasses import replace

from model.brief.loads import SleepersAre
from model.checks.record import HAIR, Finding, advice, at_most, check
from model.materials.high_bed import HighBed, high_beds
from model.units import Mm

NOT_COVERED = "Such beds need guard rails and a ladder, which are not covered here."


@check(
    "safety",
    "Low enough to be no bunk or high bed",
    about="deck_top",
    source="16 CFR 1213.2 and EN 747-1, scopes",
    remedies=("rail_height",),
)
def not_a_high_bed(deck_bottom: Mm, deck_top: Mm, sleepers_are: SleepersAre) -> Finding:
    """Whoever rolls out of a high bed falls far: from 600 mm (EN 747-1) or 30 in (16 CFR 1213)
    it wants guard rails.
    """
    for rule in high_beds().values():
        height = _height(rule, deck_bottom, deck_top)
        if height > rule.from_mm + HAIR:
            found = at_most(height, rule.from_mm)
            counts = rule.is_law == "yes" or sleepers_are != "adults"
            return replace(
                found if counts else advice(found), source=rule.source, reason=_reason(rule),
                about="deck_bottom" if rule.measured_to == "underside" else "deck_top",
            )  # fmt: skip
    return at_most(_height(rule, deck_bottom, deck_top), rule.from_mm)  # the lowest comes last


def _height(rule: HighBed, deck_bottom: Mm, deck_top: Mm) -> Mm:
    return deck_bottom if rule.measured_to == "underside" else deck_top


def _reason(rule: HighBed) -> str:
    binds = "" if rule.is_law == "yes" else " It is a standard, no law."
    return f"{rule.standard[:1].upper()}{rule.standard[1:]}.{binds} {NOT_COVERED}"
