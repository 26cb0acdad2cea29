"""Plans with random cut trees: sheets sawn edge to edge at random places."""

from __future__ import annotations

import random

from model.cutting.record import (
    Box,
    Layout,
    LeftOut,
    Piece,
    Placed,
    Plan,
    Region,
    Stock,
    Task,
    Trim,
    Way,
    Wishes,
)


def random_plan(seed: int, name: str = "ply-12") -> Plan:
    """A plan of one to three sheets; sizes are floats with all their digits."""
    draw = random.Random(seed)
    stock = tuple(
        Stock(
            key=f"sheet {n}", length=draw.uniform(500, 2500), width=draw.uniform(300, 1300),
            quantity=draw.choice([None, 1, 7]), price=draw.choice([None, 12.5]),
            on_hand=draw.random() < 0.3, has_grain=draw.random() < 0.5,
            trim=Trim(lower=draw.uniform(0, 9)), bad=(Box(1.5, 0.0, 2.25, draw.uniform(1, 9)),),
            kg_per_m2=draw.uniform(1, 20), is_assumed=draw.random() < 0.3,
        )
        for n in range(draw.randint(1, 3))
    )  # fmt: skip
    task = Task(
        name=name, kind=draw.choice(["sheets", "boards", "lengths"]), kerf=draw.uniform(1, 5),
        pieces=(
            Piece(mark="B1", length=draw.uniform(100, 400), width=120.0, quantity=3, grain="free"),
            Piece(
                mark="H1/1", length=300.0, width=0.1 + 0.2, first=4, row="a row", stays_whole=True
            ),
        ),
        stock=stock, wishes=Wishes(least_offcut=99.9, strips=draw.random() < 0.5),
    )  # fmt: skip
    layouts = tuple(
        Layout(number=n, stock=each, tree=_tree(draw, 0.0, 0.0, each.length, each.width, 0))
        for n, each in enumerate(stock, 1)
    )
    return Plan(
        task=task, layouts=layouts, measure="area", value=draw.uniform(1, 9e6), lower_bound=1.25,
        left_out=(LeftOut("B9", 2, "It is too wide; glue it up."),), covers="a kind of plan",
        notes=("Measure before you cut.",),
    )  # fmt: skip


def _tree(draw: random.Random, x: float, y: float, a: float, b: float, depth: int) -> Region:
    if depth == 5 or draw.random() < 0.25:
        return _leaf(draw, x, y, a, b)
    way: Way = draw.choice(["rip", "crosscut"])
    whole = b if way == "rip" else a
    low, kerf = draw.uniform(0, whole * 0.8), draw.uniform(1, 4)
    high = max(whole - low - kerf, 0.0)
    if way == "rip":
        parts = ((x, y, a, low), (x, y + low + kerf, a, high))
    else:
        parts = ((x, y, low, b), (x + low + kerf, y, high, b))
    made = [_tree(draw, *part, depth + 1) if min(part[2:]) > 0 else None for part in parts]
    row = draw.choice(["", "a row"])
    return Region(
        x=x, y=y, length=a, width=b, cut=way, at=(y if way == "rip" else x) + low, kerf=kerf,
        low=made[0], high=made[1], is_trim=draw.random() < 0.3, row=row,
        stays_whole=bool(row) and draw.random() < 0.5,
    )  # fmt: skip


def _leaf(draw: random.Random, x: float, y: float, a: float, b: float) -> Region:
    use = draw.choice(["piece", "offcut", "waste"])
    if use != "piece":
        return Region(x=x, y=y, length=a, width=b, use=use)
    turned = draw.random() < 0.5
    sides = (b, a) if turned else (a, b)
    placed = Placed("H1/1", draw.randint(1, 40), x, y, *sides, turned)
    return Region(x=x, y=y, length=a, width=b, use="piece", placed=placed)
