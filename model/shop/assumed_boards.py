"""Boards that stand for what a yard might have, until the maker types in real ones.

Random widths and lengths, as hardwood is sold by the board foot, with the bad wood that the grade
allows; and beside these the long and wide boards that have to be asked for. Drawn by fixed lots:
the same bed has the same boards.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from functools import lru_cache

from model.bed import Design
from model.cutting.plan import plan
from model.cutting.racks import Recipe, longest_clear, rack_odds, sample_rack
from model.cutting.record import Effort, Piece, Stock, Task, Trim
from model.materials.lumber_grade import lumber_grades
from model.units import INCH, Count, Mm

_EIGHTH = INCH / 8  # to what widths are measured
# How much is drawn, of the pieces' area over the clear share: at first, each time more, at most.
_FIRST, _MORE, _MOST = 1.25, 1.15, 8.0
_QUICK = Effort(tries=4, moves=0, nodes=0, racks=0)
_NO_RACKS = Effort(tries=0, moves=0, nodes=0, racks=0)


@dataclass(frozen=True, kw_only=True)
class Asked:
    """Boards that have to be asked for: clear for at least this length and width. `length` is that
    of such a board with its ends, as a yard has it.

    `side_by_side` are the strips that share such a board, mark and width of each kind: narrower
    boards of the same length do as well, each at least as wide as its strip. Empty where a board is
    for one strip alone. `least_width` is what the strips take, `width` that as a tape in inches
    reads it; 0 where only the latter is known.
    """

    clear: Mm
    width: Mm
    length: Mm
    boards: Count
    marks: tuple[str, ...]
    side_by_side: tuple[tuple[str, Mm], ...] = ()
    least_width: Mm = field(default=0.0, compare=False)  # follows from the strips


def recipe_of(design: Design, thickness: Mm) -> Recipe:
    """What comes off a yard's pile, as the maker knows it."""
    grade = lumber_grades()[design.value("lumber_grade")]
    shortest, longest = sorted((design.value("yard_shortest"), design.value("yard_longest")))
    widths = sorted(design.value(f"yard_{each}") for each in ("narrowest", "usual_width", "widest"))
    return Recipe(
        thickness=thickness,
        narrowest=widths[0],
        usual=widths[1],
        widest=widths[2],
        shortest=shortest,
        longest=longest,
        clear_share=grade.clear_share,
        least_clear=grade.least_clear_mm,
        end_trim=design.value("board_end_trim"),
    )


@lru_cache(maxsize=256)
def assumed_boards(task: Task, recipe: Recipe) -> tuple[Stock, ...]:
    """Boards from which a quick plan cuts all pieces of a task; `task.stock` is left out.

    What no board of a yard can hold stays without: the plan says so.
    """
    asked = [
        _asked_board(each, recipe) for each in asked_for(task, recipe) for _ in range(each.boards)
    ]
    net = sum(piece.quantity * piece.length * piece.width for piece in task.pieces)
    rest = max(net / recipe.clear_share - sum(each.length * each.width for each in asked), 0.0)
    hopeless = {piece.mark for piece in strips(task) if not _can_be_asked(piece, recipe)}
    share = _FIRST
    while True:
        drawn = sample_rack(recipe, share * rest, seed=1)
        stock = tuple(
            replace(each, key=f"yard board {n}") for n, each in enumerate((*asked, *drawn), 1)
        )
        left_out = plan(replace(task, stock=stock), _QUICK).left_out
        if share > _MOST or all(each.mark in hopeless for each in left_out):
            return stock
        share *= _MORE
        rest = max(rest, net / 10)


def _asked_board(asked: Asked, recipe: Recipe) -> Stock:
    """One that is just as it must be."""
    return Stock(
        key="",
        length=asked.length,
        width=asked.width,
        quantity=1,
        trim=Trim(left=recipe.end_trim, right=recipe.end_trim),
        is_assumed=True,
    )


# ---------------------------------------------------------------- what has to be asked for


@lru_cache(maxsize=256)
def asked_for(task: Task, recipe: Recipe) -> tuple[Asked, ...]:
    """The boards that a yard has few of, the longest first, and as few of them as one may hope for.

    Pieces that hardly any board is long enough for lie side by side; each that is wider than a
    usual board has one of its own. Without the length of these boards, or the width of such a
    piece, no plan can do; side by side may as well be on narrower boards.
    """
    boards: list[_Board] = []
    for piece in sorted(seldom(task, recipe), key=lambda each: (-each.length, -each.width)):
        fits = (b for b in boards if b.used + task.kerf + piece.width <= recipe.widest)
        board = next(fits, None) if piece.width <= recipe.usual else None
        if board is None:
            boards.append(_Board(piece.length, piece.width, [(piece.mark, piece.width)]))
        else:
            board.used += task.kerf + piece.width
            board.strips.append((piece.mark, piece.width))
    return tuple(_counted(boards, recipe))


@dataclass
class _Board:
    clear: Mm
    used: Mm  # of its width
    strips: list[tuple[str, Mm]]


def _counted(boards: Sequence[_Board], recipe: Recipe) -> Iterator[Asked]:
    """Like boards together, their widths as a tape reads them."""
    sizes = [(b.clear, math.ceil(b.used / _EIGHTH - 1e-9) * _EIGHTH) for b in boards]
    for size in dict.fromkeys(sizes):
        own = [board for board, each in zip(boards, sizes, strict=True) if each == size]
        strips = dict.fromkeys(strip for board in own for strip in board.strips)
        is_shared = any(len(board.strips) > 1 for board in own)
        yield Asked(
            clear=size[0],
            width=round(size[1], 4),
            length=_as_sold(size[0], recipe),
            boards=len(own),
            marks=tuple(dict.fromkeys(mark for mark, _ in strips)),
            side_by_side=tuple(strips) if is_shared else (),
            least_width=max(board.used for board in own),
        )


def _as_sold(clear: Mm, recipe: Recipe) -> Mm:
    """A clear length with the ends that are cut off, in whole steps of a yard's lengths."""
    over = max(clear + 2 * recipe.end_trim - recipe.shortest, 0.0)
    return round(recipe.shortest + math.ceil(over / recipe.step - 1e-9) * recipe.step, 4)


def longest_asked(recipe: Recipe) -> Mm:
    """The longest clear length that one may ask a yard for."""
    return recipe.longest - 2 * recipe.end_trim


def seldom(task: Task, recipe: Recipe) -> tuple[Piece, ...]:
    """The strips that few boards of a yard are long or wide enough for; what none can hold is not
    asked for.
    """
    return tuple(each for each in strips(task) if _is_seldom(each, task, recipe))


def usual(task: Task, recipe: Recipe) -> tuple[Piece, ...]:
    """The strips that any board may give."""
    return tuple(
        each
        for each in strips(task)
        if _can_be_asked(each, recipe) and not _is_seldom(each, task, recipe)
    )


def _is_seldom(strip: Piece, task: Task, recipe: Recipe) -> bool:
    if not _can_be_asked(strip, recipe):
        return False
    is_large = strip.width > recipe.usual or strip.length > longest_clear(recipe)
    return is_large or strip.mark in _lone(task, recipe)


@lru_cache(maxsize=256)
def _lone(task: Task, recipe: Recipe) -> frozenset[str]:
    """Marks that only a long board yields, and no two of them end to end."""
    odds = rack_odds(replace(task, stock=()), recipe, _NO_RACKS)
    return frozenset(mark for needed in odds.needed for mark in needed.marks)


def _can_be_asked(piece: Piece, recipe: Recipe) -> bool:
    return piece.length <= longest_asked(recipe) and piece.width <= recipe.widest


def strips(task: Task) -> tuple[Piece, ...]:
    """Every piece of a task on its own, those of a row as one strip under the first one's mark."""
    rows: dict[str, list[Piece]] = {}
    found: list[Piece] = []
    for piece in task.pieces:
        if piece.row:
            rows.setdefault(piece.row, []).append(piece)
        else:
            found += [replace(piece, quantity=1)] * piece.quantity
    return (*found, *(_strip(row, task.kerf) for row in rows.values()))


def _strip(row: Sequence[Piece], kerf: Mm) -> Piece:
    count = sum(piece.quantity for piece in row)
    length = sum(piece.quantity * piece.length for piece in row) + (count - 1) * kerf
    return replace(row[0], length=length, quantity=1, row="", stays_whole=False)
