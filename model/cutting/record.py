"""What is to be cut, from what, and a plan of it: plain records, lengths in mm.

Axes of a sheet or board: x along its length (and its grain), y across, origin at the lower left
corner of the whole piece. Every cut runs from edge to edge of what it cuts.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from typing import Literal, NamedTuple

from model.units import KgPerM2, Mm, Mm2, Share

Kind = Literal["sheets", "boards", "lengths"]
Grain = Literal["length", "width", "free"]
Way = Literal["rip", "crosscut"]
Use = Literal["piece", "offcut", "waste"]
Measure = Literal["stock", "price", "length", "area"]


class Box(NamedTuple):
    """A rectangle: lower left and upper right corner."""

    x0: Mm
    y0: Mm
    x1: Mm
    y1: Mm


class Trim(NamedTuple):
    """What is cut off each edge before anything else, the kerf of that cut included."""

    lower: Mm = 0.0
    upper: Mm = 0.0
    left: Mm = 0.0
    right: Mm = 0.0


# ---------------------------------------------------------------- the question


@dataclass(frozen=True, kw_only=True)
class Piece:
    """Pieces that are cut alike: `quantity` of them, numbered from `first`.

    `grain` says what of the piece runs along the grain of the stock; on stock without grain, or
    with "free", it may lie either way. Pieces of one `row` are cut from one strip end to end, in
    the order in which they are listed, a kerf between them: fronts whose grain runs on, or short
    parts that are milled as one long piece (`stays_whole`: the strip leaves the saw in one, and
    is cut apart after milling). They share width and grain.
    """

    mark: str
    length: Mm
    width: Mm
    quantity: int = 1
    first: int = 1
    grain: Grain = "length"
    row: str = ""
    stays_whole: bool = False


@dataclass(frozen=True, kw_only=True)
class Stock:
    """A sheet, board or length to cut from; `quantity` None is as many as needed.

    `price` is that of one, None where nobody knows; what is `on_hand` costs nothing more. `bad` are
    spans that no piece may touch (knots, splits). `is_assumed` tells boards that stand for what a
    yard might have from those that somebody measured.
    """

    key: str
    length: Mm
    width: Mm
    quantity: int | None = None
    price: float | None = None
    on_hand: bool = False
    has_grain: bool = True
    trim: Trim = Trim()
    bad: tuple[Box, ...] = ()
    kg_per_m2: KgPerM2 = 0.0
    is_assumed: bool = False


@dataclass(frozen=True, kw_only=True)
class Wishes:
    """What makes one plan better than another of the same price, and what is worth keeping.

    A first cut should leave no part over `largest_share` of the sheet or `heaviest_kg`, unless it
    is a single piece. An offcut is worth keeping when its shorter side is `least_offcut`. `strips`
    allows only rips into strips that are then crosscut (and trimmed).
    """

    least_offcut: Mm = 150.0
    largest_share: Share = 0.5
    heaviest_kg: float = 20.0
    offcut_before_settings: bool = False
    strips: bool = False


@dataclass(frozen=True, kw_only=True)
class Task:
    """One material in one thickness: all pieces and all stock they may come from.

    `kind`: "sheets" are cut by any guillotine cuts; "boards" by rips then crosscuts or crosscuts
    then rips, board by board, nothing turned; "lengths" by crosscuts only (every piece as wide as
    its stock, widths ignored).
    """

    kind: Kind
    pieces: tuple[Piece, ...]
    stock: tuple[Stock, ...]
    kerf: Mm
    wishes: Wishes = Wishes()
    name: str = ""

    @cached_property
    def _hash(self) -> int:  # plans are looked up by their task
        return hash((self.kind, self.pieces, self.stock, self.kerf, self.wishes, self.name))

    def __hash__(self) -> int:
        return self._hash


@dataclass(frozen=True, kw_only=True)
class Effort:
    """How far a search may go. Counted, never timed: the same task gives the same plan.

    `tries` whole plans made from scratch, `moves` small changes of a plan, `nodes` of an exact
    solver; `racks` drawn at random.
    """

    tries: int = 400
    moves: int = 6000
    nodes: int = 2000
    racks: int = 50


# ---------------------------------------------------------------- the answer


class Placed(NamedTuple):
    """A piece on its stock: lower left corner, own length and width; `turned` when its length
    lies across the stock. `piece` counts those of one mark from 1.
    """

    mark: str
    piece: int
    x: Mm
    y: Mm
    length: Mm
    width: Mm
    turned: bool

    @property
    def name(self) -> str:
        """Such as `B1-3`."""
        return f"{self.mark}-{self.piece}"

    @property
    def box(self) -> Box:
        """Where it lies on the stock."""
        along, across = (self.width, self.length) if self.turned else (self.length, self.width)
        return Box(self.x, self.y, self.x + along, self.y + across)


@dataclass(frozen=True, kw_only=True)
class Region:
    """A rectangle of wood while it is cut: a node of the cut tree, in the axes of its stock.

    `length` runs along x, `width` along y. With a `cut` it is sawn from edge to edge: a rip at y =
    `at`, a crosscut at x = `at`; the blade takes `kerf` from there on (less where it runs out over
    the edge), `low` lies before it and `high` behind; either is None where the blade leaves
    nothing. Without a cut it is a leaf, and `use` says what it is good for. `row` names the strip
    of pieces that a region holds, `stays_whole` that the cuts inside wait until it is milled;
    `is_trim` a cut that takes an edge or a bad span away.
    """

    x: Mm
    y: Mm
    length: Mm
    width: Mm
    cut: Way | None = None
    at: Mm = 0.0
    kerf: Mm = 0.0
    low: Region | None = None
    high: Region | None = None
    use: Use | None = None
    placed: Placed | None = None
    row: str = ""
    stays_whole: bool = False
    is_trim: bool = False

    @property
    def area(self) -> Mm2:
        return self.length * self.width

    @property
    def parts(self) -> tuple[Region, ...]:
        """What the cut leaves, low before high."""
        return tuple(each for each in (self.low, self.high) if each is not None)

    def all(self) -> Iterator[Region]:
        """This region and all inside it, a parent before its parts, low before high."""
        waiting = [self]
        while waiting:
            region = waiting.pop()
            yield region
            waiting.extend(reversed(region.parts))


@dataclass(frozen=True, kw_only=True)
class Layout:
    """One sheet or board as it is cut; `number` counts from 1 over the plan."""

    number: int
    stock: Stock
    tree: Region

    @cached_property
    def placed(self) -> tuple[Placed, ...]:
        """The pieces on it, in the order of the tree."""
        return tuple(each.placed for each in self.tree.all() if each.placed is not None)

    @cached_property
    def offcuts(self) -> tuple[Region, ...]:
        """What is left and worth keeping, the largest first."""
        left = (each for each in self.tree.all() if each.use == "offcut")
        return tuple(sorted(left, key=lambda each: (-each.area, each.x, each.y)))


class LeftOut(NamedTuple):
    """Pieces that no plan can hold, and a sentence: why, and what would do."""

    mark: str
    quantity: int
    sentence: str


@dataclass(frozen=True, kw_only=True)
class Plan:
    """How a task is cut. `value` is what the plan takes in its `measure`: pieces of stock bought,
    price, length (mm) or area (mm2) of stock used; no plan can take less than `lower_bound`.

    `covers` says of which plans the bound speaks: "any plan", or a kind of plan. `notes` are
    sentences for the maker about the task as a whole.
    """

    task: Task
    layouts: tuple[Layout, ...] = ()
    left_out: tuple[LeftOut, ...] = ()
    measure: Measure = "stock"
    value: float = 0.0
    lower_bound: float = 0.0
    covers: str = "any plan"
    notes: tuple[str, ...] = ()

    @property
    def is_proven(self) -> bool:
        """Whether no plan (of those covered) takes less."""
        return self.value <= self.lower_bound * (1 + 1e-9) + 1e-9

    @property
    def gap(self) -> Share:
        """How much more than the bound it takes at most, as a share of the plan."""
        return max(0.0, (self.value - self.lower_bound) / self.value) if self.value else 0.0
