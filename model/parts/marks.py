"""Marks: the letter and number that pieces cut alike share, as in a parts list.

Two pieces are alike when one can be turned so that it lies on the other: same name, material, size,
cuts and holes. Mirror images cannot, so they are different marks that name each other.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from itertools import combinations
from typing import Any, NamedTuple, cast

import numpy as np

from model.materials import Material
from model.part import Cut, Hole, Part, Point
from model.parts.pieces import Floats, Parts, Pieces, as_cut
from model.units import Mm

# In order of building: ends first, then what joins them, then what goes in.
LETTERS = {
    "headboard": "H",
    "footboard": "F",
    "left side": "S",
    "right side": "S",
    "deck": "D",
    "under the bed": "U",
    "drawers": "B",
    "fronts": "R",
}
_ORDER = "HFSDUBR"

# Positions are compared in steps of about 0.3 µm. The odd factor keeps sums that differ by
# floating-point dust (a hole centred on 1/64 in) from falling to two sides of a step.
_STEPS_PER_MM = 3141.59265


@dataclass(frozen=True, kw_only=True)
class Mark:
    """All pieces that are cut alike.

    `length`, `width` and `thickness` still know the dimensions they came from. `part` is in the
    axes in which it is cut (never mirrored); `matrices` (quantity, 4, 4) take these to bed axes,
    mm, one for each of `pieces`, which index the bed's `Pieces`. `handed` names a mirror image;
    `made_of` is the row of its material, where the bed has told it.
    """

    mark: str
    name: str
    assembly: str
    quantity: int
    length: Mm
    width: Mm
    thickness: Mm
    material: str
    grain: str
    part: Part
    features: tuple[Cut | Hole, ...]
    layers: int
    pieces: tuple[int, ...]
    matrices: Floats = field(compare=False, repr=False)
    handed: str = ""
    made_of: Material | None = None

    @property
    def material_name(self) -> str:
        """The material as its table names it, or its key."""
        return self.made_of.name if self.made_of is not None else self.material


@dataclass(frozen=True, kw_only=True)
class HardwareCount:
    """How many of a bought thing the bed takes; `size` is that of its simple solid, mm."""

    code: str
    name: str
    quantity: int
    size: Point
    pieces: tuple[int, ...]


# ---------------------------------------------------------------- turning a part over


class _Turn(NamedTuple):
    """A turn of a stock box on itself: each new axis takes an old one, forwards or backwards."""

    axes: tuple[int, int, int]
    signs: tuple[int, int, int]

    def point(self, p: Point, size: Point) -> list[float]:
        """Where a point of the box goes; `size` is the box's."""
        signed = zip(self.axes, self.signs, strict=True)
        return [p[axis] if sign > 0 else size[axis] - p[axis] for axis, sign in signed]

    def vector(self, v: Point) -> list[float]:
        """Where a direction goes."""
        return [v[axis] * sign for axis, sign in zip(self.axes, self.signs, strict=True)]

    def matrix(self, size: Point) -> Floats:
        """(4, 4): the same turn, mm."""
        m = np.zeros((4, 4))
        m[3, 3] = 1.0
        for row, (axis, sign) in enumerate(zip(self.axes, self.signs, strict=True)):
            m[row, axis] = sign
            m[row, 3] = 0.0 if sign > 0 else size[axis]
        return m


def _all_turns() -> Iterator[tuple[_Turn, bool]]:
    """The sixteen ways a square bar fits its own box, each with whether it is a mere turn."""
    signs = [(x, y, z) for x in (1, -1) for y in (1, -1) for z in (1, -1)]
    for axes, parity in (((0, 1, 2), 1), ((0, 2, 1), -1)):
        for sign in signs:
            yield _Turn(axes, sign), sign[0] * sign[1] * sign[2] * parity > 0


_TURNS = tuple(turn for turn, is_proper in _all_turns() if is_proper)
_MIRRORS = tuple(turn for turn, is_proper in _all_turns() if not is_proper)


def _fits(turn: _Turn, part: Part) -> bool:
    """Whether a turn brings the part's stock box on itself (and a tapered end to its place)."""
    is_square = _steps(part.width) == _steps(part.thickness)
    return (is_square or turn.axes[1] == 1) and (not part.taper or turn.signs[0] > 0)


Work = frozenset[tuple[Any, ...]]


def _work(part: Part, turn: _Turn = _TURNS[0]) -> Work:
    """All cuts and holes of a turned part, to be compared; kept on the part."""
    kept = cast(dict[_Turn, Work], part.__dict__.setdefault("_work", {}))
    if turn not in kept:
        kept[turn] = frozenset([*_cuts(part, turn), *_holes(part, turn)])
    return kept[turn]


def work_digest(part: Part) -> str:
    """A short text for all that is cut into a part: the same for parts that can be turned so that
    one lies on the other, another for mirror images; empty when nothing is cut.
    """
    turned = (_work(part, turn) for turn in _TURNS if _fits(turn, part))
    least = min("\n".join(sorted(map(repr, work))) for work in turned)
    return hashlib.sha256(least.encode()).hexdigest()[:12] if least else ""


def _cuts(part: Part, turn: _Turn) -> Iterator[tuple[Any, ...]]:
    size = part.size
    for cut in part.cuts:
        low = [max(x, 0.0) for x in cut.low]
        high = [min(x, side) for x, side in zip(cut.high, size, strict=True)]
        if all(a < b for a, b in zip(low, high, strict=True)):
            a = turn.point((low[0], low[1], low[2]), size)
            b = turn.point((high[0], high[1], high[2]), size)
            ends = zip(a, b, strict=True)
            yield tuple((_steps(min(end)), _steps(max(end))) for end in ends)


def _holes(part: Part, turn: _Turn) -> Iterator[tuple[Any, ...]]:
    size = part.size
    for hole in part.holes:
        at = tuple(_steps(x) for x in turn.point(hole.at, size))
        toward = tuple(_steps(x) for x in turn.vector(hole.toward))
        yield hole.kind, at, toward, _steps(hole.diameter), _steps(hole.depth)


def _steps(mm: float) -> int:
    return round(mm * _STEPS_PER_MM)


# ---------------------------------------------------------------- the parts list


@dataclass
class _Family:
    """Pieces found alike so far: the part they are all cut as, and each piece's way to the bed."""

    form: Part
    pieces: list[int]
    matrices: list[Floats]


def marks(parts: Parts, pieces: Pieces | None = None) -> tuple[Mark, ...]:
    """One mark for all pieces that are cut alike, in order of building.

    `pieces` are those of the same parts, where they are at hand.
    """
    pieces = Pieces.of(parts) if pieces is None else pieces
    by_part = _pieces_by_part(pieces)
    kinds: dict[tuple[Any, ...], list[_Family]] = {}
    for k, part in enumerate(pieces.parts):
        if not part.hardware and by_part[k]:
            _join(kinds.setdefault(_kind(part), []), as_cut(part), by_part[k], pieces)
    families = [family for kind in kinds.values() for family in kind]
    families.sort(key=lambda family: (_ORDER.index(_letter(family.form)), family.pieces[0]))
    named = _named(families)
    return tuple(_handed(named, kinds))


def piece_names(parts: Parts, pieces: Pieces | None = None) -> tuple[str, ...]:
    """A name for every piece: `S2-1` for wood, `HW-slide-1` for hardware."""
    pieces = Pieces.of(parts) if pieces is None else pieces
    names = [""] * len(pieces)
    called = [(mark.mark, mark.pieces) for mark in marks(parts, pieces)]
    bought = [(f"HW-{each.code}", each.pieces) for each in hardware_counts(parts, pieces)]
    for name, own in (*called, *bought):
        for k, piece in enumerate(own, 1):
            names[piece] = f"{name}-{k}"
    return tuple(names)


def hardware_counts(parts: Parts, pieces: Pieces | None = None) -> tuple[HardwareCount, ...]:
    """What is bought and not cut, by code, in the order in which the bed first needs it."""
    pieces = Pieces.of(parts) if pieces is None else pieces
    found: dict[str, HardwareCount] = {}
    for part, own in zip(pieces.parts, _pieces_by_part(pieces), strict=True):
        if part.hardware and own:
            code = part.hardware
            one = found.get(code) or HardwareCount(
                code=code, name=part.name, quantity=0, size=part.size, pieces=()
            )
            quantity = one.quantity + len(own)
            found[code] = replace(one, quantity=quantity, pieces=(*one.pieces, *own))
    return tuple(found.values())


def _pieces_by_part(pieces: Pieces) -> list[list[int]]:
    own: list[list[int]] = [[] for _ in pieces.parts]
    for piece, part in enumerate(pieces.part.tolist()):
        own[part].append(piece)
    return own


def _letter(part: Part) -> str:
    letter = LETTERS.get(part.assembly)
    if letter is None:
        raise ValueError(f"{part.name} belongs to no assembly that has a letter: {part.assembly!r}")
    return letter


def _kind(part: Part) -> tuple[Any, ...]:
    """What parts must share before their cuts are worth comparing."""
    size = tuple(_steps(side) for side in part.size)
    glued = (part.layers, _steps(part.layer_thickness)) if part.layers > 1 else (1, 0)
    taper = (_steps(part.taper), _steps(part.taper_length)) if part.taper else (0, 0)
    form = (part.is_round, part.grain, *glued, *taper)
    return (_letter(part), part.name, part.material, size, len(part.holes), form)


def _join(kind: list[_Family], form: Part, own: list[int], pieces: Pieces) -> None:
    """Add pieces to the family they are alike to, or found a new one.

    The turn that brings the family's part onto this one goes before each piece's own matrix.
    """
    for family in kind:
        turn = _alike(family.form, form, _TURNS)
        if turn is not None:
            first = turn.matrix(form.size)
            family.pieces += own
            family.matrices += [pieces.matrices[piece] @ first for piece in own]
            return
    kind.append(_Family(form, list(own), [pieces.matrices[piece] for piece in own]))


def _alike(one: Part, other: Part, turns: tuple[_Turn, ...]) -> _Turn | None:
    """The first turn that brings one part onto the other."""
    if turns is _TURNS and one.cuts == other.cuts and one.holes == other.holes:
        return _TURNS[0]  # cut for cut the same: no need to turn anything
    wanted = _work(other)
    if len(wanted) != len(_work(one)):
        return None
    fitting = (turn for turn in turns if _fits(turn, one))
    return next((turn for turn in fitting if _work(one, turn) == wanted), None)


def _named(families: list[_Family]) -> dict[int, Mark]:
    """Marks by the identity of the part they are cut as; numbers run within each letter."""
    numbers = dict.fromkeys(_ORDER, 0)
    named: dict[int, Mark] = {}
    for family in families:
        form, letter = family.form, _letter(family.form)
        numbers[letter] += 1
        named[id(form)] = Mark(
            mark=f"{letter}{numbers[letter]}",
            name=form.name,
            assembly=form.assembly,
            quantity=len(family.pieces),
            length=form.length,
            width=form.width,
            thickness=form.thickness,
            material=form.material,
            grain=form.grain,
            part=form,
            features=(*form.cuts, *form.holes),
            layers=form.layers,
            pieces=tuple(family.pieces),
            matrices=np.array(family.matrices),
        )
    return named


def _handed(named: dict[int, Mark], kinds: dict[tuple[Any, ...], list[_Family]]) -> list[Mark]:
    """The marks, with a note where one is the mirror image of another."""
    notes: dict[int, str] = {}
    for kind in kinds.values():
        for one, other in combinations((family.form for family in kind), 2):
            if _alike(one, other, _MIRRORS) is not None:
                notes.setdefault(id(one), f"mirror image of {named[id(other)].mark}")
                notes.setdefault(id(other), f"mirror image of {named[id(one)].mark}")
    return [replace(mark, handed=notes[k]) if k in notes else mark for k, mark in named.items()]
