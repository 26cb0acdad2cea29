"""Settings and places as sentences of the shop, in the unit that the maker reads."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence

from model.part import Face, Part
from model.shop.order.bits import bit
from model.shop.order.record import Distance, Spot
from model.units import INCH, Mm, show_length, tape_grid

CAUL: Mm = 19.05  # 3/4 in: what lies between clamp and work; common practice, no source
_HAIR: Mm = 1e-6


def size(mm: Mm, unit: str) -> str:
    """A length as the maker reads it."""
    return show_length(mm, unit)


def rough(mm: Mm, unit: str) -> str:
    """A length on a rough board, on the nearest sixteenth or mm: nobody saws it closer."""
    return show_length(tape_grid(unit).near(mm), unit)


def rest(mm: Mm, unit: str) -> str:
    """A side of what is left of a sheet, by which it is known again: nothing is set to it, so what
    no tape shows is told to the nearest sixteenth or mm.
    """
    told = size(mm, unit)
    return show_length(mm, unit, tape_grid(unit).step) if told.startswith("~") else told


def rough_or_less(mm: Mm, unit: str) -> str:
    """A difference on a rough board; what is finer than its grid is told by the grid's step."""
    return rough(max(mm, tape_grid(unit).step), unit)


def clamp_size(span: Mm, unit: str) -> str:
    """How far a clamp opens for a span with a caul at each end, to the next half inch or cm up:
    nobody buys clamps by the mm.
    """
    step = INCH / 2 if unit == "inch" else 10.0
    return size(math.ceil((span + 2 * CAUL) / step - 1e-6) * step, unit)


def listed(words: Sequence[str], last: str = "and") -> str:
    """`H1, H2 and H3`."""
    if len(words) < 2:
        return "".join(words)
    return f"{', '.join(words[:-1])} {last} {words[-1]}"


def setting(
    kind: str, way: str, figures: tuple[Distance, ...], spots: Sequence[Spot], unit: str
) -> str:
    """What a machine is set to for a cut or hole; `spots` are all that it is made at."""
    against = spots[0].against
    told = {each.what: size(each.size, unit) for each in figures if each.what != "angle"}
    if way == "pocket":
        return (
            f"Jig for stock {told['stock']} thick; bore {told['diameter']}, {told['depth']} deep "
            f"along the bit, its pilot {told['pilot']}; mouth {told['from end']} from the end"
        )
    if way == "hole":
        deep = (
            f"{told['depth']} deep from the {_kinds(spot.face for spot in spots)}"
            if "depth" in told
            else "through"
        )
        drill = bit(kind, next(each.size for each in figures if each.what == "diameter"), unit)
        fence = _kinds(spot.against for spot in spots)
        return f"Bit {drill}, {deep}; centre {told['fence']} from the {fence}"
    if kind in ("tenon cheek", "tenon shoulder"):
        return f"{told['depth']} deep, stop for {told['width']} from the end"
    if kind == "dovetail allowance":
        far = f"{told['fence']} from the {edge(against)}"
        return f"{told['depth']} in from the end, {told['width']} wide, {far}"
    sizes = f"{told['width']} wide, {told['depth']} deep"
    if next(each.size for each in figures if each.what == "fence") <= _HAIR:
        return f"{sizes}, along the {edge(against)}"
    return f"{sizes}, {told['fence']} from the {'stop' if against.axis == 0 else 'fence'}"


def _kinds(faces: Iterable[Face]) -> str:
    """`face`, or `edge or face` where one setting serves both."""
    return listed(sorted({edge(face) for face in faces}), "or")


def edge(face: Face) -> str:
    """The kind of a face: it can be either of two."""
    return ("end", "edge", "face")[face.axis]


def places(part: Part, spots: Sequence[Spot], way: str, unit: str) -> str:
    """Where the cuts or holes of one batch lie in a part; alike ones are told together."""
    runs: dict[tuple[Face, Face], list[Spot]] = {}
    for spot in spots:
        runs.setdefault((spot.face, spot.against), []).append(spot)
    told: dict[tuple[Face, str], list[Face]] = {}
    for (face, against), own in runs.items():
        told.setdefault((against, _along(part, own, way, unit)), []).append(face)
    ends: dict[tuple[tuple[Face, ...], str], list[Face]] = {}
    for (against, along), faces in told.items():
        ends.setdefault((tuple(sorted(faces)), along), []).append(against)
    return "; ".join(
        f"{_faces(faces)}, {_fence(against, way)}{along}"
        for (faces, along), against in ends.items()
    )


_BOTH = {
    frozenset((Face.NEAR, Face.FAR)): "both ends",
    frozenset((Face.LOWER, Face.UPPER)): "both edges",
    frozenset((Face.BACK, Face.FACE)): "both faces",
}


def _faces(faces: Sequence[Face]) -> str:
    return _BOTH.get(frozenset(faces), listed([str(face) for face in faces]))


def _fence(against: Sequence[Face], way: str) -> str:
    if way == "pocket":
        return f"at {_faces(against)}: " if len(against) > 1 else f"at the {against[0]}: "
    word = "stop" if against[0].axis == 0 else "fence"
    return f"{word} at {'' if len(against) > 1 else 'the '}{_faces(against)}: "


def _along(part: Part, spots: Sequence[Spot], way: str, unit: str) -> str:
    if way in ("hole", "pocket"):
        return _centres(spots, unit)
    return ", ".join(_run(part, spot, unit) for spot in spots)


def _centres(spots: Sequence[Spot], unit: str) -> str:
    by_end: dict[Face, list[Mm]] = {}
    for spot in spots:
        by_end.setdefault(spot.end, []).append(spot.start)
    ends: dict[str, list[Face]] = {}
    for end, starts in by_end.items():
        ends.setdefault(listed([size(at, unit) for at in sorted(starts)]), []).append(end)
    return ", ".join(
        f"{starts} from {'' if len(own) > 1 else 'the '}{_faces(own)}"
        for starts, own in ends.items()
    )


def _run(part: Part, spot: Spot, unit: str) -> str:
    along = part.size[spot.end.axis]
    if spot.start <= _HAIR and spot.stop >= along - _HAIR:
        return "right through"
    first, last = size(spot.start, unit), size(spot.stop, unit)
    if spot.start <= _HAIR:
        return f"from the {spot.end}, stopped at {last}"
    return f"{first} to {last} from the {spot.end}"
