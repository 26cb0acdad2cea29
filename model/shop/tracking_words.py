"""What is said of pieces that are cut: why one fits no more, what can become of it."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from model.shop.tracking_need import Need, finished, present, wanted
from model.shop.tracking_parts import SAME
from model.stock.progress import CutPart
from model.units import Mm, show_length, tape_grid


def called(part: CutPart) -> str:
    """`H3-1 (end rail)`."""
    return f"{part.mark}-{part.piece} ({part.name})"


def why(
    part: CutPart, needs: Sequence[Need], has_its_work: Callable[[CutPart, Need], bool], unit: str
) -> str:
    """Why a piece serves nowhere: judged by the part of its name that it is nearest to."""
    own = [n for n in needs if n.name == part.name and n.material == part.material]
    if not own:
        named = [need for need in needs if need.name == part.name]
        if named:
            return f"{called(part)} was cut from another material than the bed now takes."
        return f"{called(part)} is no part of the bed any more."
    near = min(own, key=lambda need: (need.mark != part.mark, _distance(part, need), need.piece))
    if _distance(part, near) <= SAME:
        if has_its_work(part, near):
            return f"{called(part)} is one more than the bed now takes."
        return f"The joints or holes of {called(part)} are now elsewhere."
    return f"{called(part)} was cut as {_shown(finished(part), unit)}; {near.name} {near.mark} " + (
        f"is now {_shown(near.size, unit)}: {_difference(part, near, unit)}."
    )


def _distance(part: CutPart, need: Need) -> Mm:
    return max(abs(a - b) for a, b in zip(finished(part), need.size, strict=True))


def _shown(size: Sequence[Mm], unit: str, is_rough: bool = False) -> str:
    """Sides of a piece; of a rough one no closer than it is sawn."""
    grid = tape_grid(unit)
    return " x ".join(show_length(grid.near(side) if is_rough else side, unit) for side in size)


def _difference(part: CutPart, need: Need, unit: str) -> str:
    words = (("longer", "shorter"), ("wider", "narrower"), ("thicker", "thinner"))
    told = []
    for (more, less), new, old in zip(words, need.size, finished(part), strict=True):
        if abs(new - old) > SAME:
            told.append(f"{show_length(abs(new - old), unit)} {more if new > old else less}")
    return " and ".join(told)


def recut_sentence(part: CutPart, need: Need, unit: str) -> str:
    """What a piece that no longer fits can be cut down to, and from what size."""
    is_rough = bool(part.rough_length)
    have = _shown(present(part)[:2], unit, is_rough)
    return (
        f"{called(part)}, {have} as it is, can be cut down to {need.mark}-{need.piece} "
        f"({need.name}), {_shown(wanted(part, need)[:2], unit, is_rough)}."
    )
