"""Published cutting problems whose least count of sheets or lengths is proven, as plain facts.

None has a unit, a kerf or a trim; sizes are taken as mm here. The small ones are typed in; a folder
of more, in a plain JSON schema, is read where BEDWRIGHT_CUTTING_INSTANCES names it.
"""

from __future__ import annotations

import json
import os
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from model.cutting.record import Grain, Piece, Stock, Task

FOLDER = "BEDWRIGHT_CUTTING_INSTANCES"
WIDE = 10.0  # a stick's width: any will do

MACEDO = (
    "Macedo, Alves, Valerio de Carvalho, Computers & OR 37(6):991-1001, 2010 (a furniture maker's)"
)
MARTELLO = "Martello, Vigo, Management Science 44(3):388-399, 1998"
FALKENAUER = "Falkenauer, Journal of Heuristics 2(1):5-30, 1996"
CHRISTOFIDES = "Christofides, Whitlock, Operations Research 25:30-44, 1977"
BEASLEY = "Beasley, Journal of the Operational Research Society 36:297-306, 1985"


@dataclass(frozen=True, kw_only=True)
class Published:
    """Pieces (length, width, how many, value) from one size of stock. `fewest` and, where pieces
    may be turned, `fewest_turned` are proven; or `most`, the greatest value of a single sheet.
    """

    name: str
    source: str
    length: float
    width: float = WIDE
    pieces: tuple[tuple[float, float, int, int], ...]
    fewest: int | None = None
    fewest_turned: int | None = None
    most: int | None = None
    is_sticks: bool = False

    def task(self, grain: Grain = "length") -> Task:
        """The question as our planners take it; a grain of "free" lets pieces turn."""
        asked = tuple(
            Piece(mark=f"i{at}", length=length, width=width, quantity=demand, grain=grain)
            for at, (length, width, demand, _) in enumerate(self.pieces, 1)
        )
        stock = Stock(key="S1", length=self.length, width=self.width)
        kind = "lengths" if self.is_sticks else "sheets"
        return Task(kind=kind, pieces=asked, stock=(stock,), kerf=0.0, name=self.name)


def _sheets(*pieces: tuple[int, int, int]) -> tuple[tuple[float, float, int, int], ...]:
    return tuple((float(w), float(h), demand, 0) for w, h, demand in pieces)


def _sticks(*lengths: int) -> tuple[tuple[float, float, int, int], ...]:
    return tuple((float(each), WIDE, lengths.count(each), 0) for each in dict.fromkeys(lengths))


# Optima of A5, A43, cgcut1, gcut1: as collected in Furini, Malaguti, Thomopoulos, INFORMS Journal
# on Computing 28(4), 2016, and as proven by the works named beside them; of t60_00: the bounds that
# BPPLib lists (Delorme, Iori, Martello, Optimization Letters 12, 2018; from memory).
TYPED_IN = (
    Published(
        name="A5",
        source=MACEDO,
        length=2470,
        width=2080,
        pieces=_sheets(
            (623, 986, 10), (623, 486, 16), (736, 310, 32), (486, 310, 16), (706, 286, 28),
            (728, 210, 16), (2357, 975, 12), (303, 386, 8),
        ),
        fewest=13,
    ),
    Published(
        name="A43",
        source=MACEDO,
        length=2750,
        width=1220,
        pieces=_sheets(
            (987, 705, 1), (1903, 486, 2), (1120, 486, 2), (986, 433, 4), (623, 426, 1),
            (228, 210, 2), (2357, 935, 2), (1181, 733, 4), (2040, 320, 1), (1236, 143, 2),
            (1780, 740, 1),
        ),
        fewest=7,
        fewest_turned=6,
    ),
    Published(
        name="cl_09_020_01",
        source=MARTELLO,
        length=100,
        width=100,
        pieces=_sheets(
            (56, 75, 1), (97, 77, 1), (62, 73, 1), (98, 84, 1), (71, 50, 1), (76, 93, 1),
            (83, 55, 2), (97, 88, 1), (67, 71, 1), (64, 99, 1), (80, 89, 1), (85, 87, 1),
            (70, 60, 1), (57, 53, 1), (89, 85, 1), (84, 98, 1), (85, 61, 1), (62, 70, 1),
            (10, 42, 1),
        ),
        fewest=19,
        fewest_turned=19,
    ),
    Published(
        name="t60_00",
        source=FALKENAUER,
        length=1000,
        pieces=_sticks(
            495, 474, 473, 472, 466, 450, 445, 444, 439, 430, 419, 414, 410, 395, 372, 370, 366,
            366, 366, 363, 361, 357, 355, 351, 350, 350, 347, 320, 315, 307, 303, 299, 298, 298,
            292, 288, 287, 283, 275, 275, 274, 273, 273, 272, 272, 271, 269, 269, 268, 263, 262,
            261, 259, 258, 255, 254, 252, 252, 252, 251,
        ),
        fewest=20,
        is_sticks=True,
    ),
    Published(
        name="cgcut1",
        source=CHRISTOFIDES,
        length=15,
        width=10,
        pieces=(
            (8, 4, 2, 66), (3, 7, 1, 35), (8, 2, 3, 24), (3, 4, 5, 17), (3, 3, 2, 11),
            (3, 2, 2, 8), (2, 1, 1, 2),
        ),
        most=244,
    ),
    Published(
        name="gcut1",
        source=BEASLEY,
        length=250,
        width=250,
        pieces=tuple(
            (w, h, 1, w * h)
            for w, h in (
                (167, 184), (114, 118), (167, 152), (83, 140), (70, 86), (143, 166), (120, 160),
                (66, 148), (87, 141), (69, 165),
            )
        ),
        most=48368,
    ),
)  # fmt: skip


def in_folder() -> tuple[Published, ...]:
    """Those in the folder that the environment names, by file name; none where it names none."""
    folder = os.environ.get(FOLDER, "")
    files = sorted(Path(folder).glob("*.json")) if folder else []
    return tuple(_read(json.loads(file.read_text("utf-8"))) for file in files)


def _read(found: dict[str, Any]) -> Published:
    """Schema `cutting-instance/1`: one stock, no kerf, no trim."""
    (stock,) = found["stock"]
    assert found["schema"] == "cutting-instance/1" and not found["kerf"] and not found["trim"]
    if found["problem"] == "1d-min-stock":
        return Published(
            name=found["id"].removeprefix("Falkenauer_"),
            source=found["citation"],
            length=stock["length"],
            pieces=tuple((i["length"], WIDE, i["demand"], 0) for i in found["items"]),
            fewest=found["result"]["best_known"],
            is_sticks=True,
        )
    best = {way: result["best_known"] for way, result in found["result"].items()}
    is_most = found["problem"] == "2d-guillotine-max-value"
    return Published(
        name=found["id"].removeprefix("Falkenauer_"),
        source=found["citation"],
        length=stock["w"],
        width=stock["h"],
        pieces=tuple((i["w"], i["h"], i["demand"], i.get("value", 0)) for i in found["items"]),
        fewest=None if is_most else best["no_rotation"],
        fewest_turned=best.get("rotation"),
        most=best["no_rotation"] if is_most else None,
    )
