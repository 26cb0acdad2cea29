"""A written `cutting.json` held against `parts.json` of the same package: nothing but the two files
is read, every piece of wood is followed from the stock to its part.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from typing import Any

from tests.checkers.sawn import NEAR, Lying, Node, Rect, Sawn, faults

Json = dict[str, Any]
Size = tuple[float, float]


def file_faults(cutting: Json, parts: Json) -> list[str]:
    """All that is wrong with what is written, in sentences."""
    found: list[str] = []
    for plan in cutting["plans"]:
        for stock in plan["stock"]:
            # What is not listed lies nowhere, so nothing more can be said of that sheet.
            found += list(_list_faults(stock)) or faults(sawn_of(plan, stock))
        found += [
            f"{plan['key']}: {each}" for each in (*_number_faults(plan), *_bound_faults(plan))
        ]
    return [*found, *_demand_faults(cutting, parts)]


def sawn_of(plan: Json, stock: Json) -> Sawn:
    """A sheet or board in the checker's own terms."""
    where = {(each["mark"], each["piece"]): each for each in stock["pieces"]}
    trim = stock["trim"]
    return Sawn(
        name=f"{plan['key']} {stock['number']}",
        length=stock["length"],
        width=stock["width"],
        kerf=stock["kerf"],
        trim=(trim["lower"], trim["upper"], trim["left"], trim["right"]),
        bad=tuple(Rect(*each) for each in stock["bad"]),
        tree=_node(stock["cuts"], where),
        is_length=plan["kind"] == "lengths",
    )


def _node(written: Json, where: dict[tuple[str, int], Json]) -> Node:
    x, y = written["x"], written["y"]
    rect = Rect(x, y, x + written["length"], y + written["width"])
    if "cut" not in written:
        lying = None
        if written["use"] == "piece":
            piece = where[written["mark"], written["piece"]]
            lying = Lying(*(piece[name] for name in Lying._fields))
        return Node(rect=rect, use=written["use"], lying=lying)
    low, high = (written[side] and _node(written[side], where) for side in ("low", "high"))
    return Node(rect, written["cut"], written["at"], written["kerf"], low, high)


def _list_faults(stock: Json) -> Iterator[str]:
    """The list of pieces and the leaves of the tree name the same."""
    listed = Counter((each["mark"], each["piece"]) for each in stock["pieces"])
    cut = Counter(
        (each["mark"], each["piece"]) for each in regions(stock["cuts"]) if "mark" in each
    )
    if listed != cut:
        yield f"{stock['key']}: pieces listed are not those cut: {listed} and {cut}"


def regions(written: Json | None) -> Iterator[Json]:
    """A region and all inside it."""
    if written is not None:
        yield written
        yield from regions(written.get("low"))
        yield from regions(written.get("high"))


def _number_faults(plan: Json) -> Iterator[str]:
    """Cuts are numbered in the order of sawing; a strip that stays whole is cut after milling."""
    numbers: list[int] = []
    for stock in plan["stock"]:
        yield from _order_faults(stock["cuts"], 0, False, numbers)
    if sorted(numbers) != list(range(1, len(numbers) + 1)):
        yield f"the cuts are numbered {sorted(numbers)}"
    made = [number for setting in plan["settings"] for number in setting["cuts"]]
    if made != sorted(numbers):
        yield f"the settings make {made}, not every cut in order"


def _order_faults(
    written: Json | None, parent: int, is_whole: bool, numbers: list[int]
) -> Iterator[str]:
    if written is None or "cut" not in written:
        return
    is_whole = is_whole or written["stays_whole"]
    number = written["number"]
    if is_whole != (number is None):
        yield f"a cut that {'stays whole' if is_whole else 'is sawn'} has number {number}"
    elif number is not None:
        numbers.append(number)
        if number <= parent:
            yield f"cut {number} is made before cut {parent}, which frees its wood"
    for side in ("low", "high"):
        yield from _order_faults(written[side], number or parent, is_whole, numbers)


def _bound_faults(plan: Json) -> Iterator[str]:
    value, bound = plan["value"], plan["lower_bound"]
    if bound > value + NEAR * max(1.0, value):
        yield f"the bound {bound} is above {value}"
    if plan["proven"] != (value <= bound * (1 + 1e-6) + NEAR):
        yield f"proven is {plan['proven']} at {value} against {bound}"


# ---------------------------------------------------------------- every piece of every part


def _demand_faults(cutting: Json, parts: Json) -> Iterator[str]:
    wanted = dict(wanted_pieces(parts))
    found: Counter[str] = Counter()
    for plan in cutting["plans"]:
        for left in plan["left_out"]:
            found[left["mark"]] += left["quantity"]
        for stock in plan["stock"]:
            for piece in stock["pieces"]:
                found[piece["mark"]] += 1
                yield from _size_faults(piece, plan, wanted)
    for mark in sorted({*found, *wanted}):
        quantity = wanted[mark][0] if mark in wanted else 0
        if found[mark] != quantity:
            yield f"{found[mark]} of {mark} are cut or left out, and the parts need {quantity}"
    once = Counter(
        (piece["mark"], piece["piece"])
        for plan in cutting["plans"]
        for stock in plan["stock"]
        for piece in stock["pieces"]
    )
    yield from (f"{mark}-{piece} is cut {n} times" for (mark, piece), n in once.items() if n > 1)


def wanted_pieces(parts: Json) -> Iterator[tuple[str, tuple[int, Size, Size, float, str]]]:
    """By mark: how many, finished and rough size (length, width), rough thickness, material.

    What is glued up is cut as its layers or strips, counted for the whole bed.
    """
    for part in parts["parts"]:
        for each in part["made_of"] or [part]:
            yield (
                each["mark"],
                (
                    each["quantity"],
                    (each["length"], each["width"]),
                    (each["rough_length"], each["rough_width"]),
                    each["rough_thickness"],
                    part["material"],
                ),
            )


def _size_faults(piece: Json, plan: Json, wanted: dict[str, Any]) -> Iterator[str]:
    """Finished size on sheets, rough size on boards; on lengths the width is the stock's."""
    name = f"{piece['mark']}-{piece['piece']}"
    if piece["mark"] not in wanted:
        yield f"{name} is no part"
        return
    _, finished, rough, thickness, material = wanted[piece["mark"]]
    size = finished if plan["kind"] == "sheets" else rough
    off = abs(piece["length"] - size[0]), abs(piece["width"] - size[1])
    if off[0] > NEAR or (off[1] > NEAR and plan["kind"] != "lengths"):
        yield f"{name} is cut {piece['length']} x {piece['width']}, and needs {size}"
    if plan["material"] != material:
        yield f"{name} is cut from {plan['material']}, and is of {material}"
    if abs(plan["thickness"] - thickness) > NEAR:
        yield f"{name} is cut from {plan['thickness']} mm, and needs {thickness}"
