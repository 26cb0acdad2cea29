"""What the record says of the screws of a joint: in their places, or set out in a step."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import numpy as np

from model.building.fastening import Fastening, Fixing
from model.materials import wood_screw
from model.planset.details.alike import Pair, Shot
from model.planset.details.fasteners import Bar
from model.planset.details.kinds import BRACKETS, Kind, brackets, joined
from model.planset.kept import kept
from model.planset.setting import Setting
from model.units import Mm

BITE: Mm = 2.0  # a screw that goes in no deeper is no straight one
PIN: Mm = 1.2  # diameter of a panel pin; common practice, no source
CALLED = {"wood screw": "Screws", "pocket screw": "Pocket screws", "pin": "Pins"}
# What a joint is called whose screws belong to another one, or that has none.
UNSCREWED = {
    "glued and screwed": "Glued",
    "screwed and glued": "Glued",
    "screwed": "Bearing",
    "rests, screwed": "Bearing",
    "screwed from behind": "Laid on",
    BRACKETS: "Bearing",
}


def title_of(setting: Setting, shot: Shot) -> str:
    """The trade's name of a joint, "screwed" only where a screw goes from one to the other."""
    kind = shot.kind
    is_held = any(_between(setting, pair) for pair in shot.pairs)
    if kind.joint == BRACKETS:
        is_held = bool(brackets(joined(setting), kind.one))
    return kind.title if is_held else UNSCREWED.get(kind.joint, kind.title)


def set_by_eye(setting: Setting, shot: Shot) -> str:
    """What is told of screws that have no place on the drawing; "" where there are none."""
    for pair in shot.pairs:
        found = [each for each in _between(setting, pair) if not each.is_placed]
        if found:
            is_straight = _is_straight(setting, found[0], shot.kind.along)
            return f"{_how(found, is_straight)}{_step(setting, pair)}"
    return ""


def _how(found: Sequence[Fixing], is_straight: bool) -> str:
    kind = found[0].driven.kind
    if kind == "pocket screw":
        return CALLED[kind]
    if not is_straight:
        return f"{CALLED[kind]} at a slant"
    return f"{CALLED[kind]} spread evenly"


def _step(setting: Setting, pair: Pair) -> str:
    """Where they are driven first: `, see step 13`."""
    for number, step in enumerate(setting.steps, 1):
        for each in step.screws:
            if not each.is_placed and _is_of((*each.through, *each.into), pair):
                return f", see step {number}"
    return ""


def _is_of(marks: Sequence[str], pair: Pair) -> bool:
    return all(mark in marks for mark in pair)


def reckoned_bars(setting: Setting, kind: Kind, axis: int, at: Mm) -> Iterator[Bar]:
    """The screw that goes straight from one piece of a joint into the other in a plane across its
    run: one of those that are spread along it.
    """
    own = {kind.one, kind.other}
    found = [each for each in _between(setting, kind.pair) if {each.one, each.other} == own]
    for each in found if axis == kind.run else ():
        if not each.is_placed and _is_straight(setting, each, kind.along):
            yield _straight(setting, each, kind, at)


def _is_straight(setting: Setting, each: Fixing, along: int) -> bool:
    """Whether a screw reaches through what it holds; others are driven at a slant."""
    low, high = (bound[each.one, along] for bound in setting.bed.pieces.bounds)
    return each.driven.kind != "pocket screw" and bool(high - low < each.driven.length - BITE)


def _straight(setting: Setting, each: Fixing, kind: Kind, at: Mm) -> Bar:
    """From the outer face of what it holds, in the middle of where the two meet."""
    low, high = setting.bed.pieces.bounds
    k = kind.along
    start = (kind.low + kind.high) / 2
    start[kind.run] = at
    one, other = ((low + high)[piece, k] for piece in (each.one, each.other))
    way = np.zeros(3)
    way[k] = np.sign(other - one)
    start[k] = (low if way[k] > 0 else high)[each.one, k]
    driven = each.driven
    wide = wood_screw(driven.gauge).shank_mm if driven.gauge else PIN
    return Bar(
        piece=each.one, kind=f"{driven.kind} {driven.gauge}".strip(), start=start,
        end=start + way * driven.length, diameter=wide, is_screw=True,
    )  # fmt: skip


def _between(setting: Setting, pair: Pair) -> list[Fixing]:
    return _by_pair(setting).get(frozenset(pair), [])


@kept
def _by_pair(setting: Setting) -> dict[frozenset[str], list[Fixing]]:
    """All screws of the bed by the marks of what they go through and into."""
    all_of = joined(setting)
    found: dict[frozenset[str], list[Fixing]] = {}
    for each in Fastening(all_of).all:
        marks = frozenset(all_of.mark_of.get(piece, "") for piece in (each.one, each.other))
        found.setdefault(marks, []).append(each)
    return found
