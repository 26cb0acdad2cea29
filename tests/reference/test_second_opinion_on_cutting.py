"""Small tasks against OR-tools 9.15, a general solver: what it proves to be least, our plans take.

Its sheets allow any layout, ours are cut from edge to edge: so it can only need as few or fewer.
In all tasks drawn here both need the same. Its boards and strips are cut in two stages, as ours.
"""

from __future__ import annotations

from dataclasses import replace
from random import Random

import pytest

from model.cutting.plan import plan
from model.cutting.record import Kind, Piece, Stock, Task, Trim, Wishes
from tests.checkers.plans import faults
from tests.reference.in_cp_sat import is_impossible, least_area, least_length


def some_pieces(lot: Random, sizes: int, longest: int, widest: int) -> tuple[Piece, ...]:
    return tuple(
        Piece(
            mark=f"P{at}",
            length=lot.randint(120, longest),
            width=lot.randint(60, widest),
            quantity=lot.randint(1, 3),
            grain=lot.choice(("length", "length", "width", "free")),
        )
        for at in range(1, sizes + 1)
    )


def drawn(seed: int, kind: Kind, pieces: tuple[Piece, ...], *stock: Stock) -> Task:
    kerf = Random(seed).choice((0.0, 2.4, 3.2))
    return Task(kind=kind, pieces=pieces, stock=stock, kerf=kerf)


def sheets(seed: int) -> Task:
    lot = Random(seed)
    pieces = some_pieces(lot, lot.randint(3, 5), 800, 480)
    trim = Trim(lower=lot.choice((0.0, 6.0)), left=lot.choice((0.0, 6.0)))
    return drawn(seed, "sheets", pieces, Stock(key="S", length=1200.0, width=800.0, trim=trim))


@pytest.mark.parametrize("seed", range(16))
def test_no_fewer_sheets_would_do(seed: int) -> None:
    task = sheets(seed)

    found = plan(task)

    assert faults(found) == [] and found.left_out == ()
    assert is_impossible(task, len(found.layouts) - 1)
    assert found.value == len(found.layouts)


def test_the_second_opinion_may_cut_in_ways_that_no_saw_can() -> None:
    """A pinwheel of four around a hole fits one sheet, but no cut goes through: we need two."""
    pinwheel = Piece(mark="W", length=60.0, width=40.0, quantity=4, grain="free")
    sheet = Stock(key="S", length=100.0, width=100.0)
    task = Task(kind="sheets", pieces=(pinwheel,), stock=(sheet,), kerf=0.0)

    assert not is_impossible(task, 1)
    assert plan(task).value == plan(task).lower_bound == 2


def along(pieces: tuple[Piece, ...]) -> tuple[Piece, ...]:
    """The same pieces, none of which may be turned."""
    return tuple(replace(each, grain="length") for each in pieces)


def strips(seed: int) -> Task:
    lot = Random(seed)
    unturned = along(some_pieces(lot, lot.randint(3, 4), 700, 300))
    stock = Stock(key="S", length=1200.0, width=500.0, quantity=4)
    return replace(drawn(seed, "sheets", unturned, stock), wishes=Wishes(strips=True))


@pytest.mark.parametrize("seed", range(8))
def test_no_fewer_sheets_would_do_in_strips_that_are_crosscut(seed: int) -> None:
    task = strips(seed)
    (stock,) = task.stock

    found = plan(task)

    assert faults(found) == [] and found.left_out == ()
    boards = replace(task, stock=tuple(replace(stock, key=str(at)) for at in range(4)))
    proven = least_area(boards, only_rips_first=True)
    assert proven is not None
    fewest = proven / (stock.length * stock.width)
    assert found.lower_bound <= found.value == pytest.approx(fewest)


def boards(seed: int) -> Task:
    lot = Random(seed)
    unturned = along(some_pieces(lot, lot.randint(3, 5), 900, 130))
    ends = Trim(left=25.0, right=25.0)
    rack = [
        Stock(
            key=f"B{at}",
            length=lot.randint(1000, 2000),
            width=lot.randint(140, 260),
            quantity=1,
            on_hand=True,
            trim=ends,
        )
        for at in range(6)
    ]
    return drawn(seed, "boards", unturned, *rack)


@pytest.mark.parametrize("seed", range(12))
def test_no_less_area_of_boards_would_do(seed: int) -> None:
    task = boards(seed)

    found = plan(task)

    assert faults(found) == [] and found.left_out == ()
    proven = least_area(task)
    assert proven is not None
    assert found.lower_bound <= proven * (1 + 1e-9)
    assert found.value == pytest.approx(proven)


def lengths(seed: int) -> Task:
    lot = Random(seed)
    pieces = along(some_pieces(lot, lot.randint(4, 6), 1500, 90))
    short = Stock(key="short", length=1830.0, width=90.0, quantity=lot.choice((1, 2, None)))
    return drawn(seed, "lengths", pieces, short, Stock(key="long", length=2440.0, width=90.0))


@pytest.mark.parametrize("seed", range(12))
def test_no_less_length_would_do(seed: int) -> None:
    task = lengths(seed)

    found = plan(task)

    assert faults(found) == [] and found.left_out == ()
    assert found.measure == "length"
    proven = least_length(task, len(found.layouts))
    assert proven is not None
    assert found.lower_bound <= found.value == pytest.approx(proven / 10)
