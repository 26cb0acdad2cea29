"""A cutting plan as a design file holds it, so short that a person can still read the file.

A task is a record. A cut tree is a list of its regions, a parent before its parts and low before
high, each a row of figures: `[x, y, length, width, ...]`, then for a cut `way, at, kerf, parts`
(`low high`, `low` or `high`, with `trim` after them where it is one), for a leaf `use`, and for a
piece its `mark, number, x, y, length, width, turned`. A region of a row of pieces ends with the
row's name and whether it stays whole.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import asdict
from typing import Any, cast, get_args

from model.cutting.record import (
    Box,
    Grain,
    Kind,
    Layout,
    LeftOut,
    Measure,
    Piece,
    Placed,
    Plan,
    Region,
    Stock,
    Task,
    Trim,
    Use,
    Way,
    Wishes,
)
from model.stock.given import LARGEST, Given, spare

PLAN = (
    "task", "layouts", "left_out", "measure", "value", "lower_bound", "covers", "notes",
)  # fmt: skip
_TASK = ("name", "kind", "kerf", "wishes", "pieces", "stock")
_PIECE = ("mark", "length", "width", "quantity", "first", "grain", "row", "stays_whole")
_STOCK = (
    "key", "length", "width", "quantity", "price", "on_hand", "has_grain", "trim", "bad",
    "kg_per_m2", "is_assumed",
)  # fmt: skip
_WISHES = (
    "least_offcut", "largest_share", "heaviest_kg", "offcut_before_settings", "strips",
)  # fmt: skip
_LAYOUT = ("number", "stock", "tree")
_LONGEST_SENTENCE = 600
_DEEPEST = 200  # cuts inside cuts: no sheet is cut finer
_MOST_REGIONS = 20_000

_USUAL_PIECE = {"quantity": 1, "first": 1, "grain": "length", "row": "", "stays_whole": False}
_USUAL_STOCK = {
    "quantity": None, "price": None, "on_hand": False, "has_grain": True,
    "trim": [0.0, 0.0, 0.0, 0.0], "bad": [], "kg_per_m2": 0.0, "is_assumed": False,
}  # fmt: skip


# ---------------------------------------------------------------- writing


def plan_record(plan: Plan) -> dict[str, Any]:
    """A plan in the form of a design file."""
    record = {
        "task": _task_record(plan.task),
        "layouts": [_layout_record(layout, plan.task) for layout in plan.layouts],
        "left_out": [list(each) for each in plan.left_out],
        "measure": plan.measure,
        "value": plan.value,
        "lower_bound": plan.lower_bound,
        "covers": plan.covers,
        "notes": list(plan.notes),
    }
    return spare(record, {"left_out": [], "covers": "any plan", "notes": []})


def _task_record(task: Task) -> dict[str, Any]:
    return {
        "name": task.name,
        "kind": task.kind,
        "kerf": task.kerf,
        "wishes": asdict(task.wishes),
        "pieces": [spare(asdict(piece), _USUAL_PIECE) for piece in task.pieces],
        "stock": [_stock_record(stock) for stock in task.stock],
    }


def _stock_record(stock: Stock) -> dict[str, Any]:
    record = asdict(stock) | {"trim": list(stock.trim), "bad": [list(box) for box in stock.bad]}
    return spare(record, _USUAL_STOCK)


def _layout_record(layout: Layout, task: Task) -> dict[str, Any]:
    """Its stock is told by its place in the task, from 1."""
    stock = task.stock.index(layout.stock) + 1
    tree = [_region_row(region) for region in layout.tree.all()]
    return {"number": layout.number, "stock": stock, "tree": tree}


def _region_row(region: Region) -> list[Any]:
    row: list[Any] = [region.x, region.y, region.length, region.width]
    if region.cut is not None:
        parts = [side for side in ("low", "high") if getattr(region, side) is not None]
        words = [*parts, "trim"] if region.is_trim else parts
        row += [region.cut, region.at, region.kerf, " ".join(words)]
    elif region.placed is not None:
        row += [region.use, *region.placed]
    else:
        row.append(region.use)
    return row + ([region.row, region.stays_whole] if region.row or region.stays_whole else [])


# ---------------------------------------------------------------- reading


def plan_of(given: Given) -> Plan:
    """The plan in a record with the names of `PLAN`; refused with BadInput: what is none."""
    task = _task(given.record("task", _TASK))
    return Plan(
        task=task,
        layouts=tuple(_layout(each, task) for each in given.records("layouts", _LAYOUT)),
        left_out=tuple(_left_out(given, row) for row in given.listed("left_out")),
        measure=cast(Measure, given.word("measure", get_args(Measure), "stock")),
        value=given.number("value", 0.0, most=1e15),
        lower_bound=given.number("lower_bound", 0.0, most=1e15),
        covers=given.text("covers", "any plan", _LONGEST_SENTENCE),
        notes=tuple(_sentence(given, each) for each in given.listed("notes", 100)),
    )


def _task(given: Given) -> Task:
    wishes = given.record("wishes", _WISHES)
    return Task(
        name=given.text("name", None),
        kind=cast(Kind, given.word("kind", get_args(Kind), "")),
        kerf=given.length("kerf", None, 0.0, 100.0),
        wishes=Wishes(
            least_offcut=wishes.length("least_offcut", Wishes.least_offcut),
            largest_share=wishes.number("largest_share", Wishes.largest_share, 0.0, 1.0),
            heaviest_kg=wishes.number("heaviest_kg", Wishes.heaviest_kg, 0.0, 1000.0),
            offcut_before_settings=wishes.flag("offcut_before_settings"),
            strips=wishes.flag("strips"),
        ),
        pieces=tuple(_piece(each) for each in given.records("pieces", _PIECE)),
        stock=tuple(_stock(each) for each in given.records("stock", _STOCK)),
    )


def _piece(given: Given) -> Piece:
    return Piece(
        mark=given.text("mark", None, 20),
        length=given.length("length", None),
        width=given.length("width", None),
        quantity=given.whole("quantity", 1, 0, 10_000),
        first=given.whole("first", 1, 1, 10_000),
        grain=cast(Grain, given.word("grain", get_args(Grain), "length")),
        row=given.text("row"),
        stays_whole=given.flag("stays_whole"),
    )


def _stock(given: Given) -> Stock:
    return Stock(
        key=given.text("key", None),
        length=given.length("length", None),
        width=given.length("width", None),
        quantity=given.whole("quantity", 1, 0, 100_000) if given.has("quantity") else None,
        price=given.maybe("price"),
        on_hand=given.flag("on_hand"),
        has_grain=given.flag("has_grain", True),
        trim=Trim(*_figures(given, "trim", given.listed("trim") or [0.0] * 4)),
        bad=tuple(Box(*_figures(given, "bad", box)) for box in given.listed("bad", 100)),
        kg_per_m2=given.number("kg_per_m2", 0.0),
        is_assumed=given.flag("is_assumed"),
    )


def _figures(given: Given, name: str, row: Any) -> tuple[float, ...]:
    if not isinstance(row, list) or len(row) != 4:
        raise given.refused(f"{name} must be four figures in brackets [].")
    return tuple(given.checked(name, each, 0.0, LARGEST) for each in row)


def _left_out(given: Given, row: Any) -> LeftOut:
    if not isinstance(row, list) or len(row) != 3 or type(row[1]) is not int:
        raise given.refused("left_out must be rows of a mark, how many, and why.")
    return LeftOut(_sentence(given, row[0]), row[1], _sentence(given, row[2]))


def _sentence(given: Given, text: Any) -> str:
    if not isinstance(text, str) or len(text) > _LONGEST_SENTENCE or not text.isprintable():
        raise given.refused("it holds a sentence that cannot be printed.")
    return text


def _layout(given: Given, task: Task) -> Layout:
    stock = given.whole("stock", None, 1, max(len(task.stock), 1))
    if not task.stock:
        raise given.refused("its task has no stock.")
    rows = iter(given.listed("tree", _MOST_REGIONS))
    tree = _region(given, rows, 0)
    if next(rows, None) is not None:
        raise given.refused("its tree has more regions than its cuts leave.")
    return Layout(
        number=given.whole("number", None, 1, 10_000), stock=task.stock[stock - 1], tree=tree
    )


def _region(given: Given, rows: Iterator[Any], depth: int) -> Region:
    row = next(rows, None)
    if not isinstance(row, list) or len(row) < 5 or depth > _DEEPEST:
        raise given.refused("its tree ends too early, or holds what is no region.")
    sides = zip(_BOX, row[:4], strict=True)
    box: dict[str, Any] = {n: given.checked(n, side, 0.0, LARGEST) for n, side in sides}
    kind, rest = row[4], row[5:]
    if kind in get_args(Way) and len(rest) >= 3:
        return _cut(given, box, kind, rest, rows, depth)
    if kind == "piece" and len(rest) >= 7:
        return Region(**box, use="piece", placed=_placed(given, rest[:7]), **_row(given, rest[7:]))
    if kind in get_args(Use) and kind != "piece":
        return Region(**box, use=kind, **_row(given, rest))
    raise given.refused("its tree holds what is neither a cut nor a piece nor an offcut.")


_BOX = ("x", "y", "length", "width")


def _cut(
    given: Given, box: dict[str, Any], way: Way, rest: list[Any], rows: Iterator[Any], depth: int
) -> Region:
    words = rest[2].split() if isinstance(rest[2], str) else ["?"]
    if not set(words) <= {"low", "high", "trim"}:
        raise given.refused("a cut of its tree leaves what is neither low nor high.")
    low = _region(given, rows, depth + 1) if "low" in words else None
    high = _region(given, rows, depth + 1) if "high" in words else None
    return Region(
        **box,
        cut=way,
        at=given.checked("at", rest[0], 0.0, LARGEST),
        kerf=given.checked("kerf", rest[1], 0.0, 100.0),
        low=low,
        high=high,
        is_trim="trim" in words,
        **_row(given, rest[3:]),
    )


def _row(given: Given, rest: list[Any]) -> dict[str, Any]:
    if not rest:
        return {}
    if len(rest) != 2 or not isinstance(rest[0], str) or not isinstance(rest[1], bool):
        raise given.refused("a region of its tree ends with what is no row.")
    return {"row": _sentence(given, rest[0]), "stays_whole": rest[1]}


def _placed(given: Given, rest: list[Any]) -> Placed:
    mark, piece, *figures, turned = rest
    if not isinstance(mark, str) or type(piece) is not int or not isinstance(turned, bool):
        raise given.refused("a piece of its tree lacks its mark, its number or how it lies.")
    x, y, length, width = (given.checked("piece", each, 0.0, LARGEST) for each in figures)
    return Placed(_sentence(given, mark), piece, x, y, length, width, turned)
