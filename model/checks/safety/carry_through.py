"""Does everything that is carried go through the doors, round the corners and up the stairs?"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

import numpy as np

from model.brief.mattress import MattressKind
from model.checks.record import Finding, advice, at_most, check
from model.mechanics.carry import Floats
from model.mechanics.obstacles import Corner, Door, Flight, Landing, Obstacle, would_do
from model.parts.pieces import Pieces
from model.solids.carried import Assembly, joints_of, loosened
from model.solids.holding import Holding
from model.units import Mm

HANDS: Mm = 25.0  # room for hands and wrapping; common practice, no source
BENDING = ("foam", "latex")  # such a mattress bends; springs do not: common practice, no source
SOURCE = (
    "geometry: the corner rule for a long thing, and a box through an opening; the way as entered, "
    "at first the least of IRC R311"
)


@check("safety", "Everything else goes through", source=SOURCE)
def carry_through(
    carried: tuple[Assembly, ...],
    door: Door,
    corner: Corner | None,
    flight: Flight | None,
    landing: Landing | None,
    mattress_kind: MattressKind,
    pieces: Pieces,
    holding: Holding,
) -> tuple[Finding, ...]:
    """What is glued up in the shop must still go through the house, piece by piece.

    One finding for each piece or assembly that fails or is tight at its worst obstacle, and one for
    all the others.
    """
    way = tuple(each for each in (door, corner, flight, landing) if each is not None)
    sizes = np.array([each.size for each in carried])
    passages = [obstacle.passage(sizes) for obstacle in way]
    room = np.array([passage.room for passage in passages])
    worst, least = room.argmin(axis=0), room.min(axis=0)

    def judged(k: int) -> Finding:
        passage = passages[worst[k]]
        return at_most(float(passage.size[k]), float(passage.limit[k]), tight=HANDS)

    told = [
        _told(carried[k], way[worst[k]], judged(k), way, mattress_kind, pieces, holding)
        for k in np.flatnonzero(least < HANDS).tolist()
    ]
    if least.max(initial=0.0) >= HANDS:
        k = int(np.where(least < HANDS, np.inf, least).argmin())
        title = "" if told else "Everything that is carried goes through"
        said = _nearest(carried[k], way[worst[k]], float(least[k]), way)
        told.append(replace(judged(k), id="rest", title=title, reason=said))
    return tuple(told)


def _nearest(assembly: Assembly, at: Obstacle, room: Mm, way: tuple[Obstacle, ...]) -> str:
    name, told = assembly.called, ", ".join(each.told() for each in way)
    stairs = "" if any(isinstance(each, Flight) for each in way) else "; no stairs were entered"
    return (
        f"{name[:1].upper()}{name[1:]} has the least room, {room:.0f} mm {at.passed}. "
        f"On the way: {told}{stairs}."
    )


def _told(
    assembly: Assembly,
    at: Obstacle,
    found: Finding,
    way: tuple[Obstacle, ...],
    mattress_kind: MattressKind,
    pieces: Pieces,
    holding: Holding,
) -> Finding:
    size = " by ".join(f"{side:.0f} mm" for side in reversed(assembly.size))
    bends = assembly.is_mattress and mattress_kind in BENDING
    if found.margin >= 0:
        said = (
            f"{size}, it passes {at.told()} with {found.margin:.0f} mm to spare; hands and "
            f"wrapping want {HANDS:.0f} mm."
        )
    else:
        what = " or ".join(f"{words} of {need} mm" for words, need in would_do(at, _row(assembly)))
        said = f"{size}, it is {-found.margin:.0f} mm too large for {at.told()}."
        said += f" It would pass with {what}." if what else ""
        said += " It bends: ask its maker how far it may be folded." if bends else ""
        said += "".join(f" {each}" for each in _apart(assembly, way, pieces, holding))
    return replace(
        advice(found) if bends else found, id=assembly.key, reason=said, pieces=assembly.pieces,
        title=f"{assembly.called[:1].upper()}{assembly.called[1:]} {at.passed}",
    )  # fmt: skip


def _apart(
    assembly: Assembly, way: tuple[Obstacle, ...], pieces: Pieces, holding: Holding
) -> Iterator[str]:
    """What would go through if one joint of the assembly were left loose, or another be bought."""
    if assembly.is_mattress:
        low, middle, high = assembly.size
        halves = np.sort(np.array([[low, middle / 2, high]]), axis=1)
        if _passes(halves, way):
            yield "Two mattresses of half the width would pass."
        return
    for joint, is_glued in sorted(joints_of(assembly, holding).items(), key=lambda each: each[1]):
        if _passes(loosened(assembly, pieces, holding, joint), way):
            done = "left unglued until it is inside" if is_glued else "taken apart"
            yield f"With its joints ({joint}) {done} its pieces would pass."
            return


def _passes(sizes: Floats, way: tuple[Obstacle, ...]) -> bool:
    return all(float(each.passage(sizes).room.min()) >= 0 for each in way)


def _row(assembly: Assembly) -> Floats:
    return np.array([assembly.size])
