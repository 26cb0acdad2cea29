"""`cutting.json` sawn again from its own figures, and held against `parts.json`.

Nothing is taken from the program: what is read here is what a maker would read. Lengths are in mm;
a thousandth is what figures in a file may differ by.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from itertools import combinations
from typing import Any

Record = dict[str, Any]
Box = tuple[float, float, float, float]  # x0, y0, x1, y1

NEAR = 1e-3


def faults(cutting: Record, parts: Record) -> list[str]:
    """All that is wrong, in sentences."""
    wanted = _wanted(parts)
    found: list[str] = []
    counted: Counter[tuple[str, int]] = Counter()
    for plan in cutting["plans"]:
        for stock in plan["stock"]:
            found += [f"{plan['material']}, {stock['key']}: {f}" for f in _stock_faults(stock)]
            found += _size_faults(plan, stock, wanted)
            counted.update((each["mark"], each["piece"]) for each in stock["pieces"])
        found += _number_faults(plan)
    return [*found, *_count_faults(counted, wanted, cutting)]


# ---------------------------------------------------------------- against the parts list


def _wanted(parts: Record) -> dict[str, Record]:
    """What is to be sawn, by mark: layers and strips of glued-up parts, all other parts whole."""
    found: dict[str, Record] = {}
    for part in parts["parts"]:
        for each in part["made_of"] or [part]:
            found[each["mark"]] = each | {"grain": part["grain"], "material": part["material"]}
    return found


def _count_faults(
    counted: Counter[tuple[str, int]], wanted: dict[str, Record], cutting: Record
) -> Iterator[str]:
    left = Counter[str]()
    for plan in cutting["plans"]:
        for each in plan["left_out"]:
            left[each["mark"]] += each["quantity"]
            if not each["sentence"].endswith("."):
                yield f"{each['mark']} is left out without a sentence"
    for mark, part in wanted.items():
        numbers = sorted(n for name, n in counted if name == mark)
        if len(numbers) + left[mark] != part["quantity"]:
            yield f"{mark}: {len(numbers)} are cut and {left[mark]} left out of {part['quantity']}"
        if not left[mark] and numbers != list(range(1, part["quantity"] + 1)):
            yield f"{mark}: its pieces are numbered {numbers}"
    yield from (f"{each} is cut {n} times" for each, n in counted.items() if n > 1)
    yield from (f"{mark} is no part" for mark in {name for name, _ in counted} - set(wanted))


def _size_faults(plan: Record, stock: Record, wanted: dict[str, Record]) -> Iterator[str]:
    for each in stock["pieces"]:
        part = wanted.get(each["mark"], {})
        size = (part.get("rough_length"), part.get("rough_width"))
        if (each["length"], each["width"]) != size:
            yield f"{each['mark']} is sawn {each['length']} x {each['width']}, not {size}"
        if part.get("material") != plan["material"]:
            yield f"{each['mark']} is sawn from {plan['material']}"
        if abs(plan["thickness"] - part.get("rough_thickness", 0)) > NEAR:
            yield f"{each['mark']} is sawn from {plan['thickness']} mm"
        if each["turned"] and stock["grain"] == "length" and part.get("grain") == "length":
            yield f"{each['mark']} lies across the grain"


# ---------------------------------------------------------------- each sheet and board


def _stock_faults(stock: Record) -> Iterator[str]:
    whole = (0.0, 0.0, stock["length"], stock["width"])
    clear = _clear(stock)
    boxes = {f"{each['mark']}-{each['piece']}": _box(each) for each in stock["pieces"]}
    for name, box in boxes.items():
        if not _inside(box, clear):
            yield f"{name} reaches into the trim or over the edge"
        if any(_shared(box, tuple(bad)) for bad in stock["bad"]):
            yield f"{name} holds a bad span"
    for (one, box), (other, its) in combinations(boxes.items(), 2):
        if _shared(box, its):
            yield f"{one} and {other} overlap"
        elif _apart(box, its) < stock["kerf"] - NEAR:
            yield f"{one} and {other} are {_apart(box, its):.3f} mm apart, less than a kerf"
    sawn: dict[str, Box] = {}
    yield from _sawn(stock["cuts"], whole, stock["kerf"], sawn)
    for name in set(sawn) ^ set(boxes):
        yield f"{name} is not both placed and sawn"
    for name in set(sawn) & set(boxes):
        if any(abs(a - b) > NEAR for a, b in zip(sawn[name], boxes[name], strict=True)):
            yield f"{name} is sawn as {sawn[name]} and placed as {boxes[name]}"


def _clear(stock: Record) -> Box:
    trim = stock["trim"]
    return (
        trim["left"],
        trim["lower"],
        stock["length"] - trim["right"],
        stock["width"] - trim["upper"],
    )


def _box(piece: Record) -> Box:
    sides = (piece["length"], piece["width"])
    along, across = sides[::-1] if piece["turned"] else sides
    return (piece["x"], piece["y"], piece["x"] + along, piece["y"] + across)


def _inside(box: Box, outer: Box) -> bool:
    low = box[0] >= outer[0] - NEAR and box[1] >= outer[1] - NEAR
    return low and box[2] <= outer[2] + NEAR and box[3] <= outer[3] + NEAR


def _shared(one: Box, other: Any) -> bool:
    return (
        min(one[2], other[2]) - max(one[0], other[0]) > NEAR
        and min(one[3], other[3]) - max(one[1], other[1]) > NEAR
    )


def _apart(one: Box, other: Box) -> float:
    """How far two boxes are apart along the axis on which they are farthest."""
    return max(
        max(one[0], other[0]) - min(one[2], other[2]),
        max(one[1], other[1]) - min(one[3], other[3]),
    )


def _sawn(region: Record, box: Box, kerf: float, sawn: dict[str, Box]) -> Iterator[str]:
    """Saw a rectangle as its record says, from edge to edge, and collect the pieces."""
    told = (region["x"], region["y"], region["x"] + region["length"], region["y"] + region["width"])
    if any(abs(a - b) > NEAR for a, b in zip(told, box, strict=True)):
        yield f"a region is told as {told}, and {box} is left of its parent"
    if "cut" not in region:
        if region["use"] == "piece":
            sawn[f"{region['mark']}-{region['piece']}"] = box
        return
    axis = 1 if region["cut"] == "rip" else 0
    at, far = region["at"], box[2 + axis]
    if region["kerf"] > kerf + NEAR or (region["kerf"] < kerf - NEAR and at + kerf < far - NEAR):
        yield f"a cut at {at} takes {region['kerf']} mm"
    if not box[axis] - kerf - NEAR <= at <= far + NEAR:
        yield f"a cut at {at} does not meet the wood from {box[axis]} to {far}"
    low, high = list(box), list(box)
    low[2 + axis], high[axis] = at, at + region["kerf"]
    for part, wood in ((region["low"], low), (region["high"], high)):
        if part is not None:
            yield from _sawn(part, (wood[0], wood[1], wood[2], wood[3]), kerf, sawn)
        elif wood[2 + axis] - wood[axis] > NEAR:
            yield f"what a cut at {at} leaves is not told"


def _number_faults(plan: Record) -> Iterator[str]:
    """Every cut before milling has a number of its own, and a parent has one before its parts."""
    numbers: list[int] = []
    for stock in plan["stock"]:
        yield from _order_faults(stock["cuts"], 0, False, numbers)
    if sorted(numbers) != list(range(1, len(numbers) + 1)):
        yield f"{plan['key']}: its cuts are numbered {sorted(numbers)}"
    listed = [n for setting in plan["settings"] for n in setting["cuts"]]
    if listed != sorted(numbers):
        yield f"{plan['key']}: its settings do not hold every cut in order"


def _order_faults(region: Record, parent: int, whole: bool, numbers: list[int]) -> Iterator[str]:
    if "cut" not in region:
        return
    number, whole = region["number"], whole or region["stays_whole"]
    if (number is None) != whole:
        yield f"a cut at {region['at']} is numbered {number}"
    if number is not None:
        numbers.append(number)
        if number <= parent:
            yield f"cut {number} is made before cut {parent}, which frees its wood"
    for part in (region["low"], region["high"]):
        if part is not None:
            yield from _order_faults(part, number or parent, whole, numbers)
