"""What is too short, too narrow or too wide to be fed by hand as it is, and what to do instead.

The tool makers' manuals rule; these figures are common practice, from memory.
"""

from __future__ import annotations

from collections.abc import Sequence

from model.parts.marks import Mark
from model.shop.order import say
from model.shop.order.operations import Operation
from model.units import Mm

SHORTEST: Mm = 300.0  # 12 in: jointers and planers lose a shorter piece between their rollers
NARROWEST: Mm = 75.0  # 3 in between blade and fence: no room for a hand
WIDEST_SLED: Mm = 610.0  # 24 in: what a crosscut sled or mitre gauge steadies
LONGEST_SLED: Mm = 1220.0  # 48 in: a longer sheet tips off the sled, unless it is a narrow strip
STRIP: Mm = 300.0  # 12 in: what passes for a narrow strip
WIDEST_FENCE: Mm = 1270.0  # 50 in: how far from the blade a rip fence goes
SHORTEST_HELD: Mm = 150.0  # 6 in: a shorter piece brings the hand too near to the blade
THINNEST: Mm = 6.0  # 1/4 in: thinner lifts in the planer; it goes through on a carrier board
SMALL: Mm = 200.0  # 8 in: too short to hold beside a cutter


def narrow_rip(width: Mm, unit: str) -> tuple[str, ...]:
    """The piece between blade and fence is narrow."""
    if width >= NARROWEST:
        return ()
    return (
        f"Only {say.size(width, unit)} between blade and fence: push block, featherboard before "
        "the blade, riving knife in.",
    )


def fence_guides(along: Mm, width: Mm) -> bool:
    """Whether a sheet may be ripped against the fence: what is wider than long turns and kicks."""
    return width <= min(along, WIDEST_FENCE)


def sled_steadies(along: Mm, width: Mm) -> bool:
    """Whether a crosscut sled steadies a sheet of that size."""
    return width <= WIDEST_SLED and (along <= LONGEST_SLED or width <= STRIP)


def short_crosscut(length: Mm, unit: str) -> tuple[str, ...]:
    """The piece between blade and stop is short."""
    if length >= SHORTEST_HELD:
        return ()
    return (
        f"Only {say.size(length, unit)} long: held by a clamp and not by hand, and taken away when "
        "the blade stands still.",
    )


def wide_crosscut(width: Mm, unit: str) -> tuple[str, ...]:
    """The piece is wider than what a sled steadies."""
    if width <= WIDEST_SLED:
        return ()
    return (
        f"{say.size(width, unit)} across is more than a sled steadies: crosscut with a guided saw, "
        "the piece supported on both sides.",
    )


def short_feed(pieces: Sequence[tuple[str, Mm]], unit: str) -> tuple[str, ...]:
    """Pieces (name, length) that jointer and planer cannot hold."""
    short = [name for name, length in pieces if length < SHORTEST]
    if not short:
        return ()
    return (
        f"Shorter than {say.size(SHORTEST, unit)}: {say.listed(short)}. Not through jointer or "
        "planer alone: mill them as one long piece, or true them with a hand plane.",
    )


def thin_feed(thickness: Mm, unit: str) -> tuple[str, ...]:
    """Stock that lifts in the planer."""
    if thickness >= THINNEST:
        return ()
    return (f"Thinner than {say.size(THINNEST, unit)}: through the planer on a carrier board.",)


def is_small(mark: Mark) -> bool:
    """Whether a part cut to length is too short to hold beside a cutter."""
    return float(mark.length) < SMALL


def joinery_cautions(at: Operation, own: Sequence[Mark], unit: str) -> tuple[str, ...]:
    """Small parts at a turning cutter, and end cuts that stand upright."""
    if "jig" in at.machine or "drill" in at.machine:
        return ()
    small = [mark.mark for mark in own if is_small(mark)]
    if not small:
        return ()
    return (
        f"{say.listed(small)}: too short to hold by hand at the cutter. Clamp to a larger board or "
        "a jig.",
    )
