"""Every piece of the bed as numbers: the boxes its wood fills and how it stands on the bed.

A part's own axes can be a mirror image of the bed's, because left and right share their rules. A
real piece of wood is only ever turned, so such a part is looked at from its other face (`as_cut`):
its thickness runs the other way and the way it is placed becomes a proper rotation.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from functools import cached_property, lru_cache
from typing import NamedTuple, cast

import numpy as np
import numpy.typing as npt

from model.errors import CannotBuild
from model.frame import Frame
from model.part import Cut, Face, Hole, Part, Point, Screw
from model.rules import OPPOSITE

Floats = npt.NDArray[np.float64]
Ints = npt.NDArray[np.intp]
Bools = npt.NDArray[np.bool_]
Parts = Mapping[str, tuple[Part, ...]]  # filed under the full name of the rule that made them
Corners = tuple[tuple[Point, Point], ...]
_Box = tuple[float, float, float, float, float, float]

_SNAP = 6  # decimals: 1 nm, so that faces that touch are equal
_MANY = 8  # cuts: above this, cells and a greedy merge leave fewer boxes than cut by cut


# ---------------------------------------------------------------- the wood of one part


def wood_boxes(size: Point, cuts: Iterable[Cut], name: str = "part", field: str = "") -> Floats:
    """Boxes that share no space and together fill a stock box less its cuts: (k, 2, 3), mm.

    Corners are snapped to 1 nm. Refused with a sentence that names the part: cuts that leave
    nothing, that part it in two, or that leave two parts of it meeting along a mere edge.
    """
    boxes, flaw = _wood(size, tuple((cut.low, cut.high) for cut in cuts))
    if flaw:
        raise CannotBuild(field or name, flaw.format(name=name))
    return boxes


@lru_cache(maxsize=4096)
def _wood(size: Point, cuts: Corners) -> tuple[Floats, str]:
    """The boxes, and a sentence on what is wrong with them ("" when nothing is)."""
    x, y, z = (round(side, _SNAP) for side in size)
    if min(x, y, z) <= 0:
        return np.zeros((0, 2, 3)), "The {name} has no size: one of its sides is not above zero."
    stock = (0.0, 0.0, 0.0, x, y, z)
    snapped = [_within(stock, low, high) for low, high in cuts]
    real = [cut for cut in snapped if cut[0] < cut[3] and cut[1] < cut[4] and cut[2] < cut[5]]
    boxes = [stock]
    if len(real) > _MANY:
        boxes = _merged_cells(stock, real)
    else:
        for cut in real:
            boxes = _less(boxes, cut)
        boxes = _joined(boxes) if len(real) > 1 else boxes
    return np.array(boxes).reshape(-1, 2, 3), _flaw(boxes, stock, real) if real else ""


def _within(stock: _Box, low: Point, high: Point) -> _Box:
    """A cut snapped and clipped to the stock."""
    a, b, c = (max(round(x, _SNAP), 0.0) for x in low)
    d, e, f = (min(round(x, _SNAP), side) for x, side in zip(high, stock[3:], strict=True))
    return (a, b, c, d, e, f)


def _less(boxes: list[_Box], cut: _Box) -> list[_Box]:
    """Take one cut away. Thickness and width are split off first: wood stays in long boxes."""
    a, b, c, d, e, f = cut
    left: list[_Box] = []
    for box in boxes:
        x0, y0, z0, x1, y1, z1 = box
        if a >= x1 or d <= x0 or b >= y1 or e <= y0 or c >= z1 or f <= z0:
            left.append(box)
            continue
        if z0 < c:
            left.append((x0, y0, z0, x1, y1, c))
            z0 = c
        if f < z1:
            left.append((x0, y0, f, x1, y1, z1))
            z1 = f
        if y0 < b:
            left.append((x0, y0, z0, x1, b, z1))
            y0 = b
        if e < y1:
            left.append((x0, e, z0, x1, y1, z1))
            y1 = e
        if x0 < a:
            left.append((x0, y0, z0, a, y1, z1))
        if d < x1:
            left.append((d, y0, z0, x1, y1, z1))
    return left


def _joined(boxes: list[_Box]) -> list[_Box]:
    """Join boxes that continue each other, along thickness, then width, then length."""
    for axis in (2, 1, 0):
        p, q = (axis + 1) % 3, (axis + 2) % 3
        boxes.sort(key=lambda box: (box[p], box[q], box[p + 3], box[q + 3], box[axis]))
        kept = [boxes[0]] if boxes else []
        for box in boxes[1:]:
            last = kept[-1]
            goes_on = last[axis + 3] == box[axis]
            if goes_on and all(last[k] == box[k] for k in (p, q, p + 3, q + 3)):
                kept[-1] = cast(_Box, (*last[: axis + 3], box[axis + 3], *last[axis + 4 :]))
            else:
                kept.append(box)
        boxes = kept
    return boxes


def cells(size: Point, cuts: Corners) -> tuple[list[Floats], Bools]:
    """Grid lines on each axis, mm, and which cells between them hold wood, for stock less cuts."""
    far = np.round(np.asarray(size, float), _SNAP)
    box = np.clip(np.round(np.reshape(np.asarray(cuts, float), (-1, 2, 3)), _SNAP), 0, far)
    seen = [{0.0, float(far[a]), *box[:, :, a].ravel().tolist()} for a in range(3)]
    lines = [np.array(sorted(each)) for each in seen]
    wood = np.ones([len(line) - 1 for line in lines], bool)
    ends = [np.searchsorted(lines[a], box[:, :, a]).tolist() for a in range(3)]
    for (a, d), (b, e), (c, f) in zip(*ends, strict=True):
        wood[a:d, b:e, c:f] = False
    return lines, wood


def _merged_cells(stock: _Box, cuts: list[_Box]) -> list[_Box]:
    """Cells of wood, each grown as far as it goes along the length, then width and thickness."""
    lines, wood = cells(stock[3:], tuple((cut[:3], cut[3:]) for cut in cuts))
    x, y, z = (line.tolist() for line in lines)
    boxes: list[_Box] = []
    for a, b, c in np.argwhere(wood).tolist():
        if not wood[a, b, c]:
            continue
        d = a + _run(wood[a:, b, c])
        e = b + _run(np.all(wood[a:d, b:, c], axis=0))
        f = c + _run(np.all(wood[a:d, b:e, c:], axis=(0, 1)))
        wood[a:d, b:e, c:f] = False
        boxes.append((x[a], y[b], z[c], x[d], y[e], z[f]))
    return boxes


def _run(wood: Bools) -> int:
    """How many cells from the first on hold wood."""
    return int(np.append(wood, False).argmin())


def _flaw(boxes: list[_Box], stock: _Box, cuts: list[_Box]) -> str:
    """A sentence on wood that no maker could hold in one hand; "" for a sound part."""
    if not boxes:
        return "The cuts leave nothing of the {name}."
    reached, waiting, has_edges = {0}, [0], False
    while waiting:
        a, b, c, d, e, f = boxes[waiting.pop()]
        for k, (x0, y0, z0, x1, y1, z1) in enumerate(boxes):
            if x0 > d or x1 < a or y0 > e or y1 < b or z0 > f or z1 < c:
                continue
            flat = (x0 == d or x1 == a) + (y0 == e or y1 == b) + (z0 == f or z1 == c)
            if flat == 1 and k not in reached:
                reached.add(k)
                waiting.append(k)
            has_edges |= flat == 2
    if len(reached) < len(boxes):
        return "The cuts go right through the {name} and leave it in two pieces."
    if has_edges and _has_bare_edge(stock, cuts):
        return "The cuts of the {name} meet, so that parts of it hang together by a mere edge."
    return ""


def _has_bare_edge(stock: _Box, cuts: list[_Box]) -> bool:
    """Whether two cells of wood share an edge whose two other neighbours hold none."""
    _, wood = cells(stock[3:], tuple((cut[:3], cut[3:]) for cut in cuts))
    for axis in range(3):
        w = np.moveaxis(wood, axis, 0)
        one, other, beside, above = w[:, :-1, :-1], w[:, 1:, 1:], w[:, 1:, :-1], w[:, :-1, 1:]
        if np.any((one == other) & (beside == above) & (one != beside)):
            return True
    return False


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
        matrices[:, :3, 3] = np.round(matrices[:, :3, 3] + shifts, _SNAP)

        each_has = boxes_of[part]
        first = np.concatenate([[0], np.cumsum(each_has)]).astype(np.intp)
        piece = np.repeat(np.arange(len(part)), each_has)
        begins = (np.cumsum(boxes_of) - boxes_of)[part]
        row = np.arange(len(piece)) + np.repeat(begins - first[:-1], each_has)
        wood = np.concatenate([each.boxes for each in laid] or [np.zeros((0, 6))])[row]
        corners = np.round(wood.reshape(-1, 2, 3) + shifts[piece][:, None], _SNAP)
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
