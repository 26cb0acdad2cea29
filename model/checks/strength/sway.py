"""Does the bed stand still when it is pushed? Wobble is what owners complain of most."""

from dataclasses import replace

from model.checks.record import Finding, advice, at_most, check
from model.structure.record import Strength, Unjudged
from model.structure.sway import sway
from model.units import Mm

SWAY_MOST: Mm = 10.0  # at the rail; more is felt as a wobble; common practice, no source
LOOSE = ("connector", "joint_play", "bottom_rail_width", "frame_stock")


@check(
    "strength",
    "Pushed lengthwise the bed hardly sways",
    source=(
        "slip of screws and bolts: EN 1995-1-1:2004, table 7.1, from memory; the limit of 10 mm, "
        "the push and the play: common practice, no source"
    ),
    remedies=LOOSE,
)
def sways_lengthwise(strength: Strength, joint_play: Mm) -> Finding | None:
    """The knock-down joints alone keep a bed from racking along its length."""
    return _swayed(strength, "push along", joint_play)


@check(
    "strength",
    "Pushed sideways the bed hardly sways",
    source="one elastic frame; the limit of 10 mm and the push: common practice, no source",
    remedies=("frame_stock", "post_width"),
)
def sways_sideways(strength: Strength, joint_play: Mm) -> Finding | None:
    """Headboard and footboard keep a bed from racking across."""
    return _swayed(strength, "push across", joint_play)


def _swayed(strength: Strength, key: str, joint_play: Mm) -> Finding | None:
    found = None if isinstance(strength, Unjudged) else sway(strength, key, joint_play)
    if isinstance(strength, Unjudged) or found is None:
        return None
    case = next(case for case in strength.cases if case.key == key)
    play = f", {found.play:.1f} mm of it play" if found.play else ""
    return replace(
        advice(at_most(found.bends + found.play, SWAY_MOST)),
        reason=(
            f"{case.reason} The rail goes {found.bends + found.play:.1f} mm{play}; the knock-down "
            f"joint turned hardest bears {found.moment:.0f} N m and gives {found.gives:.2f} mm."
        ),
        pieces=(found.piece,),
    )
