"""The exact solver of short lists against cutting out every plan, by the bands of one board."""

from itertools import product
from random import Random

import pytest

from model.cutting.boards.plan import board_plan
from model.cutting.record import Effort, Piece, Stock, Task
from tests.checkers.plans import faults

KERF = 3


def fits_in_bands(parts: list[tuple[int, int]], room: int, width: int) -> bool:
    """Whether parts (along, across) go into bands, each part tried in each band."""
    for chosen in product(range(len(parts)), repeat=len(parts)):
        bands: dict[int, list[tuple[int, int]]] = {}
        for part, band in zip(parts, chosen, strict=True):
            bands.setdefault(band, []).append(part)
        long = all(sum(p[0] + KERF for p in b) - KERF <= room for b in bands.values())
        wide = sum(max(p[1] for p in b) + KERF for b in bands.values()) - KERF <= width
        if long and wide:
            return True
    return False


def fits(parts: list[tuple[int, int]], board: tuple[int, int]) -> bool:
    turned = [(across, along) for along, across in parts]
    return fits_in_bands(parts, *board) or fits_in_bands(turned, board[1], board[0])


@pytest.mark.parametrize("seed", range(8))
def test_no_less_board_would_do(seed: int) -> None:
    random = Random(seed)
    parts = [(random.randint(200, 900), random.randint(40, 110)) for _ in range(4)]
    boards = [(random.randint(900, 1600), random.randint(110, 200)) for _ in range(3)]
    areas = [
        sum(boards[b][0] * boards[b][1] for b in set(chosen))
        for chosen in product(range(len(boards)), repeat=len(parts))
        if all(
            fits([p for p, c in zip(parts, chosen, strict=True) if c == b], boards[b])
            for b in set(chosen)
        )
    ]

    found = board_plan(_task(parts, boards), Effort(), lambda _: None, lambda: False)

    assert faults(found) == []
    assert found.left_out == () if areas else found.left_out != ()
    if areas:
        assert found.value == pytest.approx(min(areas)) and found.is_proven


def _task(parts: list[tuple[int, int]], boards: list[tuple[int, int]]) -> Task:
    return Task(
        kind="boards",
        pieces=tuple(
            Piece(mark=f"A{at}", length=float(along), width=float(across))
            for at, (along, across) in enumerate(parts)
        ),
        stock=tuple(
            Stock(key=f"B{at}", length=float(length), width=float(width), quantity=1)
            for at, (length, width) in enumerate(boards)
        ),
        kerf=float(KERF),
    )
