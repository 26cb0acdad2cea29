"""Can a gap about the mattress, in the deck or at a pull hold a head, a limb or a finger?"""

from dataclasses import replace

from model.brief.deck import DeckKind
from model.brief.loads import SleepersAre
from model.checks.record import Finding, Verdict, check
from model.checks.safety.banded import banded, worst
from model.units import Count, Mm

PROBES = "FDA guidance 2006, AS/NZS 4220, 16 CFR 1213, EN 747: yardsticks for an ordinary bed"


@check("safety", "Gap about a small mattress pushed aside", source=PROBES)
def mattress_gap_pushed(
    well_width: Mm,
    well_length: Mm,
    mattress_across: Mm,
    mattress_along: Mm,
    mattress_tolerance: Mm,
    sleepers_are: SleepersAre,
) -> tuple[Finding, ...]:
    """A small mattress pushed into a corner leaves all the room at the other side and end.

    Both gaps where both fail; else the worse one speaks for both.
    """
    beside = banded(
        well_width - mattress_across + mattress_tolerance, "mattress", sleepers_are,
        "the gap beside a small mattress pushed aside",
    )  # fmt: skip
    behind = banded(
        well_length - mattress_along + mattress_tolerance, "mattress", sleepers_are,
        "the gap behind a short mattress pushed up",
    )  # fmt: skip
    found = (
        replace(
            beside, id="beside", title="Gap beside a mattress pushed aside", about="well_width",
            remedies=("side_fit",),
        ),
        replace(
            behind, id="behind", title="Gap behind a mattress pushed up", about="well_length",
            remedies=("end_fit",),
        ),
    )  # fmt: skip
    failing = tuple(each for each in found if each.verdict is Verdict.FAILS)
    return failing or (worst(found, "mattress"),)


@check(
    "safety",
    "Gaps of the deck hold no head",
    about="slat_spacer",
    source=PROBES,
    remedies=("slat_gap_most", "slat_count"),
)
def slats_hold_no_head(
    deck: DeckKind, slat_spacer: Mm, slat_end_gap: Mm, sleepers_are: SleepersAre
) -> Finding | None:
    """A child crawls under the bed or lifts the mattress; what is narrower, the mattress covers."""
    if deck != "slats":
        return None
    return banded(max(slat_spacer, slat_end_gap), "slats", sleepers_are, "a gap of the deck")


@check(
    "safety",
    "Vents of the deck hold no finger",
    about="vent_diameter",
    source=PROBES,
    remedies=("vent_diameter",),
)
def vents_hold_no_finger(
    deck: DeckKind, vent_rows: Count, vent_diameter: Mm, sleepers_are: SleepersAre
) -> Finding | None:
    """A finger goes into a hole of 7 to 12 mm and swells in it."""
    if deck != "panels" or not vent_rows:
        return None
    return banded(vent_diameter, "hole", sleepers_are, "a vent")
