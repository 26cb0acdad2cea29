"""Every piece of the bed as numbers: how it stands on the bed and which boxes its wood fills.

A part's own axes can be a mirror image of the bed's, because left and right share their rules. A
real piece of wood is only ever turned, so such a part is looked at from its other face (`as_cut`):
its thickness runs the other way and the way it is placed becomes a proper rotation.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cached_property, lru_cache
from typing import NamedTuple, cast

import numpy as np
import numpy.typing as npt

from model.frame import Frame
from model.part import Cut, Face, Hole, Part, Point, Screw
from model.parts.wood import SNAP, wood_boxes
from model.rules import OPPOSITE

Floats = npt.NDArray[np.float64]
Ints = npt.NDArray[np.intp]
Bools = npt.NDArray[np.bool_]
Parts = Mapping[str, tuple[Part, ...]]  # filed under the full name of the rule that made them

# ---------------------------------------------------------------- how one part is laid


class _Turn(NamedTuple):
    """How a part's axes run on the bed, as arrays that lay it in a few steps.

    `turn` (4, 4) takes the axes in which it is cut to bed axes, `behind` (3,) is where its reversed
    thickness begins, for each mm (0 for a part that is no mirror image). For each bed axis:
    `frame_axis` and `part_axis` that run along it, `sign` (3,) the way, `origin` (3,) of the frame.
    `corners` (6,) picks both corners of a box in rising order on the bed.
    """

    turn: Floats
    behind: Floats
    frame_axis: Ints
    part_axis: Ints
    sign: Floats
    origin: Floats
    corners: Ints

    @property
    def is_proper(self) -> bool:
        """Whether the part's own axes are a mere turn of the bed's."""
        return not self.behind.any()


@lru_cache(maxsize=1024)
def _turn(lies: str, frame: Frame) -> _Turn:
    if sorted(lies) != ["u", "v", "z"]:
        raise ValueError(f"lies must name u, v and z once each, not {lies!r}")
    matrix = np.eye(4)
    matrix[:3, :3] = frame.matrix[:3, ["uvz".index(letter) for letter in lies]]
    part_axis = np.abs(matrix[:3, :3]).argmax(axis=1)
    sign = matrix[:3, :3].sum(axis=1)
    behind = np.zeros(3)
    if np.linalg.det(matrix) < 0:
        behind = matrix[:3, 2].copy()
        matrix[:3, 2] *= -1.0
    low, high = np.where(sign > 0, 0, 3), np.where(sign > 0, 3, 0)
    return _Turn(
        turn=matrix,
        behind=behind,
        frame_axis=np.abs(frame.matrix[:3, :3]).argmax(axis=1),
        part_axis=part_axis,
        sign=sign,
        origin=frame.matrix[:3, 3].copy(),
        corners=np.concatenate([part_axis + low, part_axis + high]),
    )


def is_turned_over(part: Part) -> bool:
    """Whether the part's own axes mirror the bed's, so that it has to be seen from behind."""
    return not _turn(part.lies, part.frame).is_proper


_BEHIND = {Face.BACK: Face.FACE, Face.FACE: Face.BACK}


def as_cut(part: Part) -> Part:
    """The part in the axes in which its pieces are cut and turned, never mirrored.

    The same record for most; with thickness reversed for parts whose axes mirror the bed's. All
    matrices of `Pieces` start from these axes. Made once, and kept on the part.
    """
    found = part.__dict__.get("_as_cut")
    if found is None:
        found = _from_behind(part) if is_turned_over(part) else part
        part.__dict__["_as_cut"] = found
    return cast(Part, found)


def _from_behind(part: Part) -> Part:
    deep = float(part.thickness)

    def at(point: Point) -> Point:
        return (point[0], point[1], deep - point[2])

    def toward(way: Point) -> Point:
        return (way[0], way[1], 0.0 - way[2])

    def cut(c: Cut) -> Cut:
        low, high = (*c.low[:2], deep - c.high[2]), (*c.high[:2], deep - c.low[2])
        return Cut(c.kind, _BEHIND.get(c.face, c.face), low, high)

    def hole(h: Hole) -> Hole:
        face = _BEHIND.get(h.face, h.face)
        return Hole(h.kind, face, at(h.at), toward(h.toward), h.diameter, h.depth)

    def screw(s: Screw) -> Screw:
        return Screw(s.kind, at(s.at), toward(s.toward), s.length, s.diameter, s.into, s.cover)

    return replace(
        part,
        cuts=tuple(cut(c) for c in part.cuts),
        holes=tuple(hole(h) for h in part.holes),
        screws=tuple(screw(s) for s in part.screws),
    )


class _Laid(NamedTuple):
    """What pieces of one part share, in bed axes; kept on the part, for parts outlive a solve."""

    boxes: Floats  # (b, 6): both corners, first piece
    shifts: Floats  # (k, 3): each piece from the first
    matrix: Floats  # (4, 4): first piece
    drawers: tuple[int, ...]


def _laid(part: Part, rule: str) -> _Laid:
    found = part.__dict__.get("_laid")
    if found is None:
        found = part.__dict__["_laid"] = _lay(part, rule)
    return cast(_Laid, found)


def _lay(part: Part, rule: str) -> _Laid:
    turn = _turn(part.lies, part.frame)
    wood = wood_boxes(part.size, part.cuts, part.name, rule).reshape(-1, 6)
    # Row 0 is the lower corner of the first piece, the others the steps from it to each piece.
    in_frame = np.array([part.at, *(place[:3] for place in part.places)], float)
    on_bed = in_frame[:, turn.frame_axis] * turn.sign
    start = turn.origin + on_bed[0]
    boxes = wood[:, turn.corners]
    boxes[:, :3] = boxes[:, :3] * turn.sign + start
    boxes[:, 3:] = boxes[:, 3:] * turn.sign + start
    matrix = turn.turn.copy()
    matrix[:3, 3] = start + turn.behind * part.thickness
    return _Laid(boxes, on_bed[1:], matrix, tuple(place.drawer for place in part.places))


# ---------------------------------------------------------------- all pieces of a bed


@dataclass(frozen=True, kw_only=True, eq=False)
class Pieces:
    """Every piece of a bed, hardware included, in the order of the rules, parts and places.

    `rules`: full names of the rules that made parts. `parts`: their parts, as the rules gave them.
    Per piece (n): `rule` and `part` index these, `place` the part's places, `group` the `groups`:
    "" (0) for the bed itself, else a drawer such as `left-1`. `matrices` (n, 4, 4) take the part's
    own axes, as cut (see `as_cut`), to bed axes: proper, mm.
    Per box (b): `lo`, `hi` (b, 3), bed axes, mm, snapped to 1 nm, and the `piece` it belongs to,
    rising. Boxes of piece i are rows `first[i]` to `first[i + 1]`.
    """

    rules: tuple[str, ...]
    parts: tuple[Part, ...]
    rule: Ints
    part: Ints
    place: Ints
    groups: tuple[str, ...]
    group: Ints
    matrices: Floats
    lo: Floats
    hi: Floats
    piece: Ints
    first: Ints

    @classmethod
    def of(cls, parts: Parts) -> Pieces:
        """The pieces of all parts.

        Refused: a part whose cuts leave it in pieces or hanging by an edge (see `wood_boxes`).
        """
        rules = tuple(parts)
        made = [(k, rule, part) for k, rule in enumerate(rules) for part in parts[rule]]
        laid = [_laid(part, rule) for _, rule, part in made]
        groups, group = _grouped(made, laid)

        pieces_of = np.array([len(each.shifts) for each in laid], np.intp)
        boxes_of = np.array([len(each.boxes) for each in laid], np.intp)
        part = np.repeat(np.arange(len(laid)), pieces_of)
        place = np.arange(len(part)) - np.repeat(np.cumsum(pieces_of) - pieces_of, pieces_of)
        shifts = np.concatenate([each.shifts for each in laid] or [np.zeros((0, 3))])
        matrices = np.array([each.matrix for each in laid]).reshape(-1, 4, 4)[part]
        matrices[:, :3, 3] = np.round(matrices[:, :3, 3] + shifts, SNAP)

        each_has = boxes_of[part]
        first = np.concatenate([[0], np.cumsum(each_has)]).astype(np.intp)
        piece = np.repeat(np.arange(len(part)), each_has)
        begins = (np.cumsum(boxes_of) - boxes_of)[part]
        row = np.arange(len(piece)) + np.repeat(begins - first[:-1], each_has)
        wood = np.concatenate([each.boxes for each in laid] or [np.zeros((0, 6))])[row]
        corners = np.round(wood.reshape(-1, 2, 3) + shifts[piece][:, None], SNAP)
        return cls(
            rules=rules,
            parts=tuple(each for _, _, each in made),
            rule=np.array([k for k, _, _ in made], np.intp)[part],
            part=part,
            place=place,
            groups=groups,
            group=np.array(group, np.intp),
            matrices=matrices,
            lo=np.ascontiguousarray(corners[:, 0]),
            hi=np.ascontiguousarray(corners[:, 1]),
            piece=piece,
            first=first,
        )

    def __len__(self) -> int:
        return len(self.part)

    @cached_property
    def bounds(self) -> tuple[Floats, Floats]:
        """Lower and upper corner of what each piece fills: (n, 3) each, bed axes, mm."""
        if not len(self):
            return np.zeros((0, 3)), np.zeros((0, 3))
        at = self.first[:-1]
        return np.minimum.reduceat(self.lo, at), np.maximum.reduceat(self.hi, at)

    @cached_property
    def forms(self) -> tuple[Part, ...]:
        """The parts as they are cut (see `as_cut`), one for each of `parts`."""
        return tuple(as_cut(part) for part in self.parts)

    def form(self, piece: int) -> Part:
        """The part of one piece, in the axes that its matrix starts from."""
        return as_cut(self.parts[self.part[piece]])

    def made_by(self, *pieces: int) -> tuple[str, ...]:
        """Full names of the rules that made some pieces."""
        return tuple(self.rules[self.rule[piece]] for piece in pieces)

    def rules_named(self, owner: str, by: str) -> tuple[int, ...]:
        """The rules (indices) that a name in another part's hold or screw stands for.

        Looked up as a rule's need is: in the owner's own scope first, then bed-wide, then as
        `left_rails` for `left.rails`. `a | b` stands for both. Empty when there is no such rule.
        """
        return self._names.find(owner.rpartition(".")[0], by)

    @cached_property
    def _names(self) -> _Names:
        return _names_of(self.rules)

    @cached_property
    def labels(self) -> tuple[str, ...]:
        """A name for each piece that a maker can find it by: `box side 2 of drawer left-1`."""
        named: dict[tuple[str, str], int] = {}
        plain = []
        for piece in range(len(self)):
            part, group = self.parts[self.part[piece]], self.groups[self.group[piece]]
            key = (part.name, f"of drawer {group}" if group else _where(part.assembly))
            named[key] = named.get(key, 0) + 1
            plain.append((key, named[key]))
        return tuple(f"{key[0]}{f' {k}' if named[key] > 1 else ''} {key[1]}" for key, k in plain)


def _where(assembly: str) -> str:
    return assembly if assembly.startswith("under ") else f"of the {assembly}"


class _Names:
    """The places of rules by name; what was looked up once is kept, for a bed asks often."""

    def __init__(self, rules: tuple[str, ...]) -> None:
        self._at = {name: k for k, name in enumerate(rules)}
        self._found: dict[tuple[str, str], tuple[int, ...]] = {}

    def find(self, scope: str, by: str) -> tuple[int, ...]:
        """The rules that a name, or several with `|` between, stands for in a scope."""
        if (scope, by) not in self._found:
            names = (self._full_name(scope, name.strip()) for name in by.split("|"))
            self._found[scope, by] = tuple(self._at[name] for name in names if name is not None)
        return self._found[scope, by]

    def _full_name(self, scope: str, need: str) -> str | None:
        side, _, rest = need.partition("_")
        side = OPPOSITE.get(scope, side) if side == "opposite" else side
        candidates = ([f"{scope}.{need}"] if scope else []) + [need, f"{side}.{rest}"]
        return next((name for name in candidates if name in self._at), None)


@lru_cache(maxsize=16)
def _names_of(rules: tuple[str, ...]) -> _Names:
    return _Names(rules)


def _grouped(
    made: list[tuple[int, str, Part]], laid: list[_Laid]
) -> tuple[tuple[str, ...], list[int]]:
    """The drawers there are, and the one each piece moves with; 0 is the bed itself."""
    groups: dict[str, int] = {"": 0}
    group: list[int] = []
    for (_, rule, part), each in zip(made, laid, strict=True):
        row = part.row or rule.rpartition(".")[0]
        for drawer in each.drawers:
            name = f"{row}-{drawer}" if drawer else ""
            group.append(groups.setdefault(name, len(groups)))
    return tuple(groups), group
