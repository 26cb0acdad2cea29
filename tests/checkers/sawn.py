"""One sheet or board replayed cut by cut, whoever planned it: what lies where, and what is wrong.

Shares no code with the planners and trusts nothing that they worked out: the places of all pieces
of wood follow from the cuts alone, and are then held against what the plan says.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import combinations
from typing import NamedTuple

# mm: sums of a few hundred doubles below 1e5 are good to 1e-8, and no saw knows a nanometre.
NEAR = 1e-6


class Rect(NamedTuple):
    """Lower left and upper right corner, mm."""

    x0: float
    y0: float
    x1: float
    y1: float

    @property
    def area(self) -> float:
        return (self.x1 - self.x0) * (self.y1 - self.y0)

    def is_near(self, other: Rect) -> bool:
        return all(abs(a - b) <= NEAR for a, b in zip(self, other, strict=True))

    def is_inside(self, other: Rect) -> bool:
        lower = self.x0 >= other.x0 - NEAR and self.y0 >= other.y0 - NEAR
        return lower and self.x1 <= other.x1 + NEAR and self.y1 <= other.y1 + NEAR

    def apart(self, other: Rect) -> float:
        """The wider of the two gaps, along and across; below zero where both overlap."""
        along = max(other.x0 - self.x1, self.x0 - other.x1)
        return max(along, other.y0 - self.y1, self.y0 - other.y1)


class Lying(NamedTuple):
    """A piece where the plan says that it lies."""

    mark: str
    piece: int
    x: float
    y: float
    length: float
    width: float
    turned: bool

    @property
    def name(self) -> str:
        return f"{self.mark}-{self.piece}"

    @property
    def rect(self) -> Rect:
        along, across = (self.width, self.length) if self.turned else (self.length, self.width)
        return Rect(self.x, self.y, self.x + along, self.y + across)


@dataclass(frozen=True)
class Node:
    """Wood as the plan says it is while it is cut; `low` and `high` are what the cut leaves."""

    rect: Rect
    cut: str | None = None
    at: float = 0.0
    kerf: float = 0.0
    low: Node | None = None
    high: Node | None = None
    use: str | None = None
    lying: Lying | None = None
    is_trim: bool = False
    row: str = ""
    stays_whole: bool = False

    @property
    def parts(self) -> tuple[Node, ...]:
        return tuple(each for each in (self.low, self.high) if each is not None)

    def all(self) -> Iterator[Node]:
        yield self
        for part in self.parts:
            yield from part.all()

    @property
    def leaves(self) -> tuple[Node, ...]:
        return tuple(each for each in self.all() if each.cut is None)


@dataclass(frozen=True)
class Sawn:
    """A sheet or board and how it is cut. `trim`: lower, upper, left, right."""

    name: str
    length: float
    width: float
    kerf: float
    trim: tuple[float, float, float, float]
    bad: tuple[Rect, ...]
    tree: Node
    is_length: bool = False  # a stick: whatever is cut from it is as wide as it is

    @property
    def whole(self) -> Rect:
        return Rect(0.0, 0.0, self.length, self.width)

    @property
    def clear(self) -> Rect:
        """What the trims leave; sticks are trimmed at their ends only."""
        lower, upper, left, right = self.trim
        if self.is_length:
            lower = upper = 0.0
        return Rect(left, lower, self.length - right, self.width - upper)

    @property
    def pieces(self) -> tuple[Lying, ...]:
        return tuple(each.lying for each in self.tree.all() if each.lying is not None)


def faults(sawn: Sawn) -> Iterator[str]:
    """What is wrong with one sheet or board, in sentences that begin with its name."""
    whole = sawn.tree.rect
    if not whole.is_near(sawn.whole):
        yield f"{sawn.name}: the tree begins with {whole}, not with the whole stock"
    for found in (
        _cut_faults(sawn.tree, sawn), _leaf_faults(sawn), _place_faults(sawn), _area_faults(sawn),
    ):  # fmt: skip
        yield from (f"{sawn.name}: {each}" for each in found)


# ---------------------------------------------------------------- every cut


def _cut_faults(node: Node, sawn: Sawn) -> Iterator[str]:
    if node.cut is None:
        return
    if node.cut not in ("rip", "crosscut"):
        yield f"a cut is called {node.cut}"
        return
    low, high = behind_and_before(node)
    yield from _blade_faults(node, low, high, sawn.kerf)
    for part, rect, side in ((node.low, low, "low"), (node.high, high, "high")):
        yield from _part_faults(node, part, rect, side)
    for part in node.parts:
        yield from _cut_faults(part, sawn)


def behind_and_before(node: Node) -> tuple[Rect, Rect]:
    """What a cut leaves below (or left of) the blade, and beyond it."""
    x0, y0, x1, y1 = node.rect
    if node.cut == "rip":
        return Rect(x0, y0, x1, node.at), Rect(x0, node.at + node.kerf, x1, y1)
    return Rect(x0, y0, node.at, y1), Rect(node.at + node.kerf, y0, x1, y1)


def _blade_faults(node: Node, low: Rect, high: Rect, kerf: float) -> Iterator[str]:
    if node.kerf > kerf + NEAR or node.kerf < -NEAR:
        yield f"the blade takes {node.kerf} at {node.at}, and is {kerf} thick"
    runs_out = node.low is None or node.high is None
    if node.kerf < kerf - NEAR and not runs_out:
        yield f"the blade takes only {node.kerf} of {kerf} at {node.at}, with wood on both sides"
    for rect, side in ((low, "low"), (high, "high")):
        if rect.x1 - rect.x0 < -NEAR or rect.y1 - rect.y0 < -NEAR:
            yield f"a {node.cut} at {node.at} lies outside of what it cuts, on its {side} side"


def _part_faults(node: Node, part: Node | None, rect: Rect, side: str) -> Iterator[str]:
    if part is None:
        if rect.area > NEAR:
            yield f"a {node.cut} at {node.at} loses {rect}: low, kerf and high are not the whole"
    elif not part.rect.is_near(rect):
        yield f"a {node.cut} at {node.at} leaves {rect} on its {side} side, not {part.rect}"
    elif rect.area <= NEAR:
        yield f"a {node.cut} at {node.at} leaves nothing on its {side} side, yet it is kept"


# ---------------------------------------------------------------- what is left


def _leaf_faults(sawn: Sawn) -> Iterator[str]:
    for node in sawn.tree.all():
        if node.cut is not None:
            if node.use is not None or node.lying is not None:
                yield f"{node.rect} is sawn on, and yet it is {node.use or 'a piece'}"
        elif node.use not in ("piece", "offcut", "waste"):
            yield f"the leaf {node.rect} has no use ({node.use})"
        elif (node.use == "piece") != (node.lying is not None):
            yield f"the leaf {node.rect} is {node.use}, yet holds {node.lying}"
        elif node.lying is not None and not _fills(node, node.lying, sawn):
            yield f"{node.lying.name} does not fill its leaf: {node.lying.rect} in {node.rect}"


def _fills(node: Node, lying: Lying, sawn: Sawn) -> bool:
    if not sawn.is_length:
        return node.rect.is_near(lying.rect)
    along = abs(node.rect.x0 - lying.x) + abs(node.rect.x1 - lying.x - lying.length)
    return along <= 2 * NEAR


def _place_faults(sawn: Sawn) -> Iterator[str]:
    taken = [(each, _rect(each, sawn)) for each in sawn.pieces]
    for lying, rect in taken:
        if not rect.is_inside(sawn.whole):
            yield f"{lying.name} lies outside of the stock: {rect}"
        elif not rect.is_inside(sawn.clear):
            yield f"{lying.name} lies in the trim: {rect}, and the trims leave {sawn.clear}"
        for bad in sawn.bad:
            if rect.apart(bad) < -NEAR:
                yield f"{lying.name} lies on the bad span {bad}"
    for (one, here), (other, there) in combinations(taken, 2):
        apart = here.apart(there)
        if apart < -NEAR:
            yield f"{one.name} and {other.name} overlap"
        elif apart < sawn.kerf - NEAR:
            yield f"{one.name} and {other.name} are {apart} apart, less than a kerf of {sawn.kerf}"


def _rect(lying: Lying, sawn: Sawn) -> Rect:
    """Where a piece lies; from a stick it is as wide as the stick."""
    if sawn.is_length:
        return Rect(lying.x, 0.0, lying.x + lying.length, sawn.width)
    return lying.rect


def _area_faults(sawn: Sawn) -> Iterator[str]:
    """Pieces, offcuts, waste and sawdust add up to the whole; both sides counted on their own."""
    kept = sum(each.rect.area for each in sawn.tree.leaves)
    dust = sum(_blade_area(each) for each in sawn.tree.all() if each.cut is not None)
    missing = sawn.whole.area - kept - dust
    if abs(missing) > 2 * NEAR * (sawn.length + sawn.width):  # its sides are good to NEAR
        yield f"pieces, offcuts, waste and sawdust are {missing} mm2 short of the whole"


def _blade_area(node: Node) -> float:
    x0, y0, x1, y1 = node.rect
    return node.kerf * ((x1 - x0) if node.cut == "rip" else (y1 - y0))
