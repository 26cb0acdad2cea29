"""Rough parts drawn by lot, to be cut from a rack of boards or from sold lengths."""

from __future__ import annotations

from random import Random

from model.cutting.record import Box, Piece, Stock, Task, Trim

INCH = 25.4


def rack(seed: int) -> Task:
    """Rough parts of a bed (50 to 85 of 13 to 16 sizes) from a rack of random boards, with knots.

    Boards 4 to 10 in wide, 6 to 12 ft long, 25 mm off both ends, kerf 3.2; some have a bad span.
    """
    lot = Random(seed)
    pieces = tuple(
        Piece(mark=f"R{at}", length=length, width=width, quantity=quantity)
        for at, (length, width, quantity) in enumerate(_rough(lot), 1)
    )
    net = sum(each.length * each.width * each.quantity for each in pieces)
    boards: list[Stock] = []
    while sum(each.length * each.width for each in boards) < 1.7 * net:
        boards.append(_board(lot, len(boards) + 1))
    return Task(kind="boards", pieces=pieces, stock=tuple(boards), kerf=3.2, name=f"rack {seed}")


def small_rack(seed: int) -> Task:
    """A few rough parts (some fifteen of five sizes), and boards for them with a knot here and
    there.
    """
    lot = Random(seed)
    pieces = tuple(
        Piece(mark=f"R{at}", length=length, width=width, quantity=lot.randint(1, 4))
        for at, (length, width, _) in enumerate(_rough(lot)[:5], 1)
    )
    net = sum(each.length * each.width * each.quantity for each in pieces)
    boards: list[Stock] = []
    while sum(each.length * each.width for each in boards) < 2 * net:
        boards.append(_board(lot, len(boards) + 1))
    return Task(kind="boards", pieces=pieces, stock=tuple(boards), kerf=3.2, name=f"few {seed}")


def _rough(lot: Random) -> list[tuple[float, float, int]]:
    """Rails, posts' layers, stiles, cleats, slats: rough sizes, on whole millimetres."""
    sizes = [
        (round(lot.uniform(1950, 2100)), round(lot.uniform(70, 150)), lot.randint(2, 4)),
        (round(lot.uniform(1450, 1700)), round(lot.uniform(70, 150)), lot.randint(2, 4)),
        (round(lot.uniform(350, 1100)), round(lot.uniform(80, 110)), lot.randint(4, 8)),
    ]
    for _ in range(lot.randint(10, 13)):
        longest = lot.choice((500, 800, 1200))
        length, width = round(lot.uniform(250, longest)), round(lot.uniform(45, 120))
        sizes.append((length, width, lot.randint(2, 7)))
    return sizes


def _board(lot: Random, number: int) -> Stock:
    length = round(lot.uniform(6, 12) * 12 * INCH)
    width = round(lot.triangular(4, 10, 6.5) * INCH)
    bad: tuple[Box, ...] = ()
    if lot.random() < 0.2:
        x, y = round(lot.uniform(200, length - 400)), round(lot.uniform(0, width - 40))
        across = lot.random() < 0.5
        bad = (Box(x, 0 if across else y, x + 120, width if across else y + 40),)
    ends = Trim(left=25.0, right=25.0)
    return Stock(
        key=f"board {number}", length=length, width=width, quantity=1, trim=ends, bad=bad,
        on_hand=True,
    )  # fmt: skip


def sticks(seed: int, *, several: bool = False) -> Task:
    """40 to 120 parts of 6 to 15 lengths, from one length or from four."""
    lot = Random(seed)
    sizes = lot.randint(6, 15)
    pieces = tuple(
        Piece(
            mark=f"L{at}",
            length=round(lot.uniform(200, 2000)),
            width=90.0,
            quantity=max(1, lot.randint(40, 120) // sizes),
        )
        for at in range(1, sizes + 1)
    )
    lengths = (2440.0, 3050.0, 3660.0, 4880.0) if several else (lot.choice((2440.0, 3660.0)),)
    stock = tuple(Stock(key=f"{each:.0f}", length=each, width=90.0) for each in lengths)
    return Task(kind="lengths", pieces=pieces, stock=stock, kerf=3.2, name=f"sticks {seed}")
